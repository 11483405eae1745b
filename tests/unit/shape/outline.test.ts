import { describe, expect, it } from "vitest";
import { insideOutline, makeShape, outline, outlineCrossings, shapeOf } from "../../../src/model/shape";
import { block, ellipsoid, minnow, round } from "../../lib/bodies";

const area = (points: readonly { x: number; z: number }[]): number =>
  points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!;
    return sum + (p.x * q.z - q.x * p.z) / 2;
  }, 0);

describe("polygons for drawing", () => {
  it("runs from the nose over the top to the tail and back", () => {
    const points = outline(shapeOf(block), 200);
    expect(points[0]).toEqual({ x: -0, z: 0.009 });
    const tail = points.findIndex((p) => p.x === -0.08);
    expect(points[tail]!.z).toBeCloseTo(0.003, 12);
    expect(points[tail + 1]!.z).toBeCloseTo(-0.002, 12);
    expect(points.at(-1)!.z).toBeCloseTo(-0.006, 12);
    // with x forward this is counter-clockwise: positive area
    expect(area(points)).toBeGreaterThan(0);
  });

  it("encloses an ellipse's area", () => {
    const body = makeShape(ellipsoid(0.05, 0.01, 0.012));
    expect(area(outline(body, 400))).toBeCloseTo(Math.PI * 0.05 * 0.012, 7);
  });

  it("repeats no point where the ends are closed", () => {
    const points = outline(
      shapeOf({
        ...minnow,
        top: minnow.top.map((k) => (k.s === 0.092 ? { s: k.s, v: 0 } : k)),
        bottom: minnow.bottom.map((k) => (k.s === 0.092 ? { s: k.s, v: 0 } : k)),
      }),
    );
    const keys = points.map((p) => `${p.x} ${p.z}`);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe("crossings with the side outline", () => {
  const [a, c] = [0.05, 0.012];
  const body = makeShape(ellipsoid(a, 0.01, c));

  it("meets an ellipse where algebra says so", () => {
    // from (−0.02, 0.03) straight down: z = ±c·√(1 − ((x + a)/a)²)
    const x = -0.02;
    const z = c * Math.sqrt(1 - ((x + a) / a) ** 2);
    const t = outlineCrossings(body, { x, z: 0.03 }, { x, z: -0.03 });
    expect(t).toHaveLength(2);
    expect(t[0]).toBeCloseTo((0.03 - z) / 0.06, 10);
    expect(t[1]).toBeCloseTo((0.03 + z) / 0.06, 10);
    // slanting through the centre: both at the same distance from it
    const s = outlineCrossings(body, { x: 0.05, z: 0.04 }, { x: -0.15, z: -0.04 });
    expect(s).toHaveLength(2);
    expect(s[0]! + s[1]!).toBeCloseTo(1, 10);
    const p = { x: 0.05 - 0.2 * s[0]!, z: 0.04 - 0.08 * s[0]! };
    expect(((p.x + a) / a) ** 2 + (p.z / c) ** 2).toBeCloseTo(1, 10);
  });

  it("passes through both tips along the datum line", () => {
    const t = outlineCrossings(body, { x: 0.01, z: 0 }, { x: -0.11, z: 0 });
    expect(t[0]).toBeCloseTo(1 / 12, 10);
    expect(t.at(-1)).toBeCloseTo(11 / 12, 10);
  });

  it("meets blunt ends", () => {
    const tube = makeShape(round(0.06, () => 0.01));
    const t = outlineCrossings(tube, { x: 0.02, z: 0.003 }, { x: -0.1, z: 0.003 });
    expect(t).toHaveLength(2);
    expect(t[0]).toBeCloseTo(2 / 12, 12);
    expect(t[1]).toBeCloseTo(8 / 12, 12);
    // above it: none; along its top edge: none of the edge's
    expect(outlineCrossings(tube, { x: 0.02, z: 0.011 }, { x: -0.1, z: 0.011 })).toEqual([]);
  });

  it("finds none for pieces wholly inside, outside or without length", () => {
    expect(outlineCrossings(body, { x: -0.04, z: 0 }, { x: -0.06, z: 0.002 })).toEqual([]);
    expect(outlineCrossings(body, { x: 0.01, z: 0.02 }, { x: -0.1, z: 0.02 })).toEqual([]);
    expect(outlineCrossings(body, { x: -0.05, z: 0 }, { x: -0.05, z: 0 })).toEqual([]);
  });

  it("sees a wire that just grazes the back", () => {
    // 1 µm below the ridge: a lens of 2·√(2·1e-6/…) metres
    const t = outlineCrossings(body, { x: 0, z: c - 1e-6 }, { x: -0.1, z: c - 1e-6 });
    expect(t).toHaveLength(2);
    const half = a * Math.sqrt(1 - (1 - 1e-6 / c) ** 2);
    expect((t[1]! - t[0]!) * 0.1).toBeCloseTo(2 * half, 9);
  });

  it("agrees with insideOutline between any two crossings", () => {
    const shape = shapeOf(minnow);
    for (let i = 0; i < 200; i++) {
      const from = { x: 0.02 - 0.13 * ((i * 0.618) % 1), z: 0.03 * Math.sin(i) };
      const to = { x: 0.02 - 0.13 * ((i * 0.382) % 1), z: 0.03 * Math.cos(2 * i) };
      const t = [0, ...outlineCrossings(shape, from, to), 1];
      for (let k = 0; k + 1 < t.length; k++) {
        const at = (share: number) => {
          const u = t[k]! + share * (t[k + 1]! - t[k]!);
          return insideOutline(shape, { x: from.x + u * (to.x - from.x), z: from.z + u * (to.z - from.z) });
        };
        if (t[k + 1]! - t[k]! < 1e-9) continue;
        const middle = at(0.5);
        for (const share of [0.001, 0.2, 0.8, 0.999]) expect(at(share)).toBe(middle);
      }
    }
  });
});
