import { describe, expect, it } from "vitest";
import { axisDepth, nearestFrame, trackPath } from "../../../src/ui/views/swim/track";

const same = (value: number): number => value;

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
