import { describe, expect, it } from "vitest";
import { filmSize, lengthOf, momentsIn, PICTURES } from "../../../src/ui/views/swim/film";

describe("the pictures of a film", () => {
  it("stand a thirtieth of a second of film apart, from its beginning to before its end", () => {
    const cut = { from: 2, to: 5, rate: 0.5 };
    const moments = momentsIn(cut);
    expect(lengthOf(cut)).toBe(6);
    expect(moments).toHaveLength(6 * PICTURES);
    expect(moments[0]).toBe(2);
    expect(moments[1]).toBeCloseTo(2 + 0.5 / 30, 12);
    expect(moments.at(-1)).toBeCloseTo(5 - 0.5 / 30, 12);
  });

  it("are no more for a tail of binary digits, and one at least", () => {
    expect(momentsIn({ from: 0.1, to: 0.4, rate: 1 })).toHaveLength(9);
    expect(momentsIn({ from: 1, to: 1.001, rate: 4 })).toHaveLength(1);
  });

  it("need a stretch of time and a speed", () => {
    expect(() => momentsIn({ from: 2, to: 2, rate: 1 })).toThrow(RangeError);
    expect(() => momentsIn({ from: 1, to: 2, rate: 0 })).toThrow(RangeError);
  });

  it("have even numbers of pixels", () => {
    expect(filmSize({ width: 801, height: 450 })).toEqual({ width: 800, height: 450 });
  });
});
