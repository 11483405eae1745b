import { describe, expect, test } from "vitest";
import { movePoints } from "../../../src/document";
import { svgElements } from "../../../src/drawing";
import { paletteFrom } from "../../../src/drawing";
import { sameValues, steady } from "../../../src/ui/stage/steady";
import { LineKeeper } from "../../../src/ui/views/draw/marks";
import { scenario } from "../ui-app/scenario";

/** What does not change under a moving hand stays the same object: the page looks at nothing else. */

describe("a steady list", () => {
  const list = () => steady<{ at: number; name: string }>(sameValues);

  test("keeps what is the same, takes what is not, and is itself where nothing has changed", () => {
    const kept = list();
    const first = kept([
      { at: 1, name: "a" },
      { at: 2, name: "b" },
    ]);
    expect(
      kept([
        { at: 1, name: "a" },
        { at: 2, name: "b" },
      ]),
    ).toBe(first);
    const next = kept([
      { at: 1, name: "a" },
      { at: 3, name: "b" },
    ]);
    expect(next).not.toBe(first);
    expect(next[0]).toBe(first[0]);
    expect(next[1]).toEqual({ at: 3, name: "b" });
  });

  test("follows a list that becomes longer and shorter", () => {
    const kept = list();
    const one = { at: 1, name: "a" };
    expect(kept([one, { at: 2, name: "b" }])).toHaveLength(2);
    expect(kept([one])).toEqual([one]);
    expect(kept([])).toEqual([]);
  });

  test("values are the same under the same keys alone", () => {
    expect(sameValues({ a: 1 }, { a: 1 })).toBe(true);
    expect(sameValues({ a: 1 }, { a: 1, b: 2 })).toBe(false);
    expect(sameValues({ a: undefined }, { b: undefined })).toBe(false);
  });
});

describe("while one point of an edge moves", () => {
  const before = scenario();
  const after = movePoints(before, "top", [2], [0, 0.5]);

  test("the other points stay the same objects", () => {
    expect(after.bait.top[2]).not.toEqual(before.bait.top[2]);
    for (const i of [0, 1, 3]) expect(after.bait.top[i]).toBe(before.bait.top[i]);
    expect(after.bait.bottom).toBe(before.bait.bottom);
  });

  test("only its own line is made anew", () => {
    const keeper = new LineKeeper();
    const [top, bottom] = [keeper.of(before, "top"), keeper.of(before, "bottom")];
    expect(keeper.of(after, "bottom")).toBe(bottom);
    expect(keeper.of(after, "top")).not.toEqual(top);
    const longer = { ...after, bait: { ...after.bait, length_mm: after.bait.length_mm + 1 } };
    expect(keeper.of(longer, "bottom")).not.toBe(bottom);
  });
});

test("numbers of a picture have the digits of toFixed, without zeros at the end", () => {
  const palette = paletteFrom({}, false, "sans-serif");
  for (const v of [0, -0, 0.004, -0.004, 0.1, -0.1, 12.5, -12.345, 99.999, 1234.56, -7, 3e9 + 0.25]) {
    const [circle] = svgElements(
      [{ kind: "circle", what: null, at: { x: v, z: 0 }, radius: 5, fill: { role: "ink" } }],
      { palette, scale: 1 },
    );
    expect(circle?.attributes["cx"]).toBe(String(Math.round(v * 100) / 100 + 0));
  }
});
