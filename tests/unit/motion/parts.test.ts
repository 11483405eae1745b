import { describe, expect, it } from "vitest";
import { random } from "../../../src/model/base";
import { lowSide } from "../../../src/model/bait";
import { looseBalls } from "../../../src/model/motion/chamber";
import { hangingHooks } from "../../../src/model/motion/hooks";
import { bibEnds, contactHull, convexHull, fewerCorners } from "../../../src/model/motion/hull";
import { minnow, rattler } from "../../lib/swum";

const area = (polygon: readonly { x: number; z: number }[]): number =>
  polygon.reduce((sum, p, i) => {
    const q = polygon[(i + 1) % polygon.length]!;
    return sum + (p.x * q.z - q.x * p.z) / 2;
  }, 0);

describe("hull for floor and walls", () => {
  it("is the smallest convex polygon, counter-clockwise, without points on its sides", () => {
    const points = [
      { x: 0, z: 0 },
      { x: 2, z: 0 },
      { x: 1, z: 0 },
      { x: 1, z: 1 },
      { x: 2, z: 2 },
      { x: 0, z: 2 },
    ];
    const hull = convexHull(points);
    expect(hull).toHaveLength(4);
    expect(area(hull)).toBe(4);
  });

  it("gives up the corners that cost least: a circle keeps its shape", () => {
    const circle = Array.from({ length: 96 }, (_, i) => ({
      x: Math.cos((2 * Math.PI * i) / 96),
      z: Math.sin((2 * Math.PI * i) / 96),
    }));
    const twelve = fewerCorners(circle, 12);
    expect(twelve).toHaveLength(12);
    // a regular dodecagon has 3 r²
    expect(area(twelve)).toBeGreaterThan(2.95);
  });

  it("reaches to the bait's ends and the tip of its bib", () => {
    const bait = minnow(4e-3);
    const hull = contactHull(bait, 12);
    const [, tip] = bibEnds(bait.spec.bib!);
    expect(hull.length).toBeLessThanOrEqual(12);
    expect(area(hull)).toBeGreaterThan(0);
    expect(Math.min(...hull.map((p) => p.x))).toBeCloseTo(-0.09, 9);
    expect(Math.min(...hull.map((p) => p.z))).toBeCloseTo(tip.z, 9);
  });
});

describe("loose parts", () => {
  it("hooks carry hook and ring, and hang by their length's share", () => {
    const [belly, tail] = hangingHooks(minnow(4e-3));
    expect(belly!.mass).toBeCloseTo(0.72e-3, 12);
    expect(belly!.displaced).toBeCloseTo(0.62e-3 / 7820 + 0.1e-3 / 8000, 15);
    expect(belly!.at).toEqual({ x: -0.032, z: -0.0105 });
    // docs/model.md §6.8: 5e-5 m² (0.62/0.37)^⅔
    expect(belly!.dragArea).toBeCloseTo(5e-5 * (0.62 / 0.37) ** (2 / 3), 12);
    expect(tail!.length).toBe(belly!.length);
    expect(belly!.length).toBeGreaterThan(0.012);
    expect(belly!.length).toBeLessThan(0.03);
    expect(
      hangingHooks(minnow(4e-3, { hangers: [{ name: "bare", at: { x: 0, z: 0 }, ring: null, hook: null }] })),
    ).toEqual([]);
  });

  it("balls start packed at the low end, no farther apart than a tenth of their size, inside the chamber", () => {
    const bait = rattler(3e-3);
    for (const seed of [1, 2, 3]) {
      for (const side of [lowSide(-0.5, 0.8), lowSide(0.5, 0.8)]) {
        const balls = looseBalls(bait, side, random(seed));
        expect(balls).toHaveLength(4);
        const stations = balls.map((b) => -b.start.x);
        const from = side.end === "nose" ? 0.042 : 0.062;
        stations.forEach((s, i) => {
          const before = i === 0 ? from : stations[i - 1]!;
          const gap = Math.abs(s - before) - (i === 0 ? 0.002 : 0.004);
          expect(gap).toBeGreaterThan(-1e-12);
          expect(gap).toBeLessThan(0.0004 + 1e-12);
          expect(s).toBeGreaterThan(0.044 - 1e-12);
          expect(s).toBeLessThan(0.06 + 1e-12);
        });
      }
    }
    expect(lowSide(0.1, -0.9)).toEqual({ end: "tail", face: "roof" });
  });
});
