import { describe, expect, it } from "vitest";
import { cos, random, sin } from "../../../src/model/base";
import { keptCos, keptSin } from "../../../src/model/motion/engine/turns";

describe("sine and cosine with the last few angles kept", () => {
  it("are base's, bit for bit, in any order and however often they are asked for", () => {
    const chance = random(5);
    const angles = Array.from({ length: 300 }, () => 20 * (chance.uniform() - 0.5));
    for (let k = 0; k < 5000; k++) {
      const angle = angles[Math.floor(300 * chance.uniform())] as number;
      if (chance.uniform() < 0.5) expect(keptSin(angle)).toBe(sin(angle));
      else expect(keptCos(angle)).toBe(cos(angle));
    }
  });

  it("keep the sign of zero, and NaN", () => {
    for (const angle of [0, -0, 0, NaN, NaN]) {
      expect(keptSin(angle)).toBe(sin(angle));
      expect(keptCos(angle)).toBe(cos(angle));
    }
  });

  it("refuse what base refuses, each time", () => {
    for (let k = 0; k < 2; k++) {
      expect(() => keptSin(1e9)).toThrow(RangeError);
      expect(() => keptCos(1e9)).toThrow(RangeError);
    }
  });
});
