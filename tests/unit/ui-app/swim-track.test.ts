import { describe, expect, it, test } from "vitest";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { approachWords } from "../../../src/ui/views/swim/figures";
import { SWIM } from "../../../src/ui/words/swim";
import { axisDepth, nearestFrame, trackPath } from "../../../src/ui/views/swim/track";

const same = (value: number): number => value;

test("beside a place that is deeper than its depth a retrieve is not told to reel on", () => {
  const units = new Units(new Prefs(null, 1200, "en"));
  const told = (deepest: number | null): string =>
    approachWords({ more: 3.84, depth: 1.61 }, units, SWIM.in("en"), deepest);
  expect(told(1.2)).toMatch(/^not yet at depth: reel 3\.8\sm more, then about 1\.61\sm$/);
  expect(told(null)).toBe(told(1.2));
  expect(told(1.64)).toBe("");
});

describe("the depth track", () => {
  it("draws ten minutes with few points, none farther off than can be seen, and keeps both ends", () => {
    const n = 36_001;
    const xs = Float64Array.from({ length: n }, (_, i) => (25 * i) / (n - 1));
    const ds = Float64Array.from({ length: n }, (_, i) => 2 + 0.3 * Math.sin(i / 300));
    const x = (m: number): number => 30 * m;
    const y = (m: number): number => 40 * m;
    const points = trackPath(xs, ds, x, y)
      .slice(1)
      .split("L")
      .map((pair) => pair.split(" ").map(Number));
    expect(points.length).toBeLessThan(4000);
    expect(points[0]).toEqual([0, 80]);
    expect(points.at(-1)?.[0]).toBeCloseTo(750, 1);
    // Each sample lies within 0.6 px (in each direction) and rounding of a point that is drawn.
    let j = 0;
    for (let i = 0; i < n; i += 7) {
      const [px, py] = [x(xs[i] ?? NaN), y(ds[i] ?? NaN)];
      while (j + 1 < points.length && (points[j + 1]?.[0] ?? NaN) <= px + 0.05) j++;
      expect(Math.abs((points[j]?.[0] ?? NaN) - px)).toBeLessThan(0.75);
      expect(Math.abs((points[j]?.[1] ?? NaN) - py)).toBeLessThan(0.75);
    }
  });

  it("a press finds the nearest moment", () => {
    const xs = [0, 1, 2, 3];
    const ds = [0, 5, 5, 0];
    expect(nearestFrame(xs, ds, same, same, { x: 2.2, y: 4 })).toBe(2);
    expect(nearestFrame([], [], same, same, { x: 0, y: 0 })).toBe(-1);
  });

  it("shows the floor where it is near, else what matters", () => {
    expect(axisDepth(3, 1.2)).toEqual({ depth: 3, floor: true });
    expect(axisDepth(60, 2)).toEqual({ depth: 2.7, floor: false });
    expect(axisDepth(Infinity, 0)).toEqual({ depth: 0.5, floor: false });
  });
});
