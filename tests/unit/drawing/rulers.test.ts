import { expect, test } from "vitest";
import { pictureWords } from "../../../src/ui/stage/words";
import { groundOf } from "../../../src/drawing/ground";
import { rulerMarks } from "../../../src/drawing/rulers";
import { sceneOf } from "../../../src/drawing/scene";
import { heldStill, restingPlace } from "../../../src/drawing/still";
import { bait } from "../../lib/drawn";

const scene = sceneOf(bait, null, Infinity);
const posed = { scene, snapshot: heldStill(scene, restingPlace(scene), 0) };

const words = (scale: number, lengths: "metric" | "inches") => {
  const ground = groundOf({ x: 0.3, z: -0.2, scale }, { width: 900, height: 500 });
  return rulerMarks(ground, posed, { lengths, words: pictureWords("en") }).flatMap((m) =>
    m.kind === "text" && m.bold !== true ? [{ text: m.words, at: m.at }] : [],
  );
};

test.each([
  ["metric", "m", 1, [40, 300]],
  ["inches", "ft", 0.3048, [40, 300]],
  // Close by: a picture of 500 px is 20 cm high.
  ["metric", "mm", 1e-3, [2500, 9000]],
  ["inches", "in", 0.0254, [2500, 9000]],
] as const)(
  "%s: the scales say %s, and each number stands where it says",
  (lengths, unit, metres, scales) => {
    for (const scale of scales) {
      const all = words(scale, lengths);
      expect(all.filter(({ text }) => /^[a-z]+$/.test(text)).map(({ text }) => text)).toEqual([
        ...["depth", unit, unit],
      ]);
      const ticks = all.filter(({ text }) => /\d/.test(text));
      expect(ticks.length).toBeGreaterThan(8);
      for (const { text, at } of ticks) {
        const value = Number(text.replace("−", "-")) * metres;
        const depth = -0.2 + (at.z + 250) / scale;
        const along = 0.3 + (at.x - 450) / scale;
        const off = Math.min(Math.abs(depth + value), Math.abs(along - value)) * scale;
        expect(off, `${text} at ${scale} px to a metre`).toBeLessThan(1e-6);
      }
    }
  },
);

test.each([
  [300, "metric", 1, 0.005],
  [2500, "metric", 1e-3, 0.5e-3],
  [9000, "metric", 1e-3, 0.5e-3],
  [60_000, "metric", 1e-3, 0.05e-3],
  [2500, "inches", 0.0254, 0.005 * 0.0254],
] as const)(
  "at %d px to a metre, %s, the flag tells the tie eye's depth",
  (scale, lengths, metres, within) => {
    const { eye } = posed.snapshot;
    const ground = groundOf({ ...eye, scale }, { width: 900, height: 500 });
    const flags = rulerMarks(ground, posed, { lengths, words: pictureWords("en") }).flatMap((m) =>
      m.kind === "text" && m.bold === true ? [Number(m.words.replace("−", "-")) * metres] : [],
    );
    expect(flags).toHaveLength(1);
    expect(Math.abs((flags[0] ?? NaN) + eye.z)).toBeLessThanOrEqual(within * 1.001);
  },
);
