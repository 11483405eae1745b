import { describe, expect, it } from "vitest";
import { random } from "../../../src/model/base";
import { edgesFromKnots, halfBreadthAt, makeShape, sectionAt, shapeOf } from "../../../src/model/shape";
import type { Shape } from "../../../src/model/shape";
import { immersion } from "../../../src/model/hydrostatics";
import { block, ellipsoid, minnow, round, station, surface } from "../../lib/bodies";

/** The part of an ellipsoid under a plane: the plane at signed distance d of the unit sphere that it is scaled from. */
function ellipsoidUnder(a: number, b: number, c: number, pitch: number, d: number) {
  const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
  const n = Math.hypot(a * sin, c * cos); // distance of the tangent plane from the centre
  const cap = Math.PI * (2 / 3 + d - d ** 3 / 3);
  const deep = ((-Math.PI / 4) * (1 - d * d) ** 2) / cap; // centroid of the unit sphere's part along the normal
  const area = ((a * b * c) / n) * Math.PI * (1 - d * d);
  return {
    level: -a * sin + d * n, // the centre is at (−a, 0)
    volume: a * b * c * cap,
    x: -a + (a * deep * a * sin) / n,
    z: (c * deep * c * cos) / n,
    area,
    IT: (area * b * b * (1 - d * d)) / 4, // ellipse, semi-axis across b√(1 − d²)
  };
}

describe("an ellipsoid at any trim", () => {
  const [a, b, c] = [0.05, 0.01, 0.012];
  const body = makeShape(ellipsoid(a, b, c));
  const r = random(2);
  const pitches = [
    ...Array.from({ length: 60 }, () => 2 * Math.PI * r.uniform()),
    // standing on its nose or tail, within 1e-2 to 1e-13 rad and exactly
    ...[1e-2, 1e-3, 1e-5, 1e-8, 1e-13, 0].flatMap((e) => [
      Math.PI / 2 + e,
      Math.PI / 2 - e,
      -Math.PI / 2 + e,
    ]),
    ...[0, Math.PI, -Math.PI, 1e-9, Math.PI - 1e-9],
  ];

  it.each([-0.999, -0.7, -0.2, 0, 0.31, 0.8, 0.99])("is right with the surface at %f", (d) => {
    // Reached: 5e-9 of the whole volume, 1e-7 of the greatest waterplane at that trim, 5e-7 of its I_T; promised is 1e-5.
    for (const pitch of pitches) {
      const want = ellipsoidUnder(a, b, c, pitch, d);
      const got = immersion(body, surface(pitch, want.level));
      expect(Math.abs(got.volume - want.volume)).toBeLessThan(5e-9 * body.volume);
      expect(Math.abs(got.centroid.x - want.x) * want.volume).toBeLessThan(5e-9 * body.volume * a);
      expect(Math.abs(got.centroid.z - want.z) * want.volume).toBeLessThan(5e-9 * body.volume * a);
      const greatest = want.area / (1 - d * d);
      expect(Math.abs(got.waterplaneArea - want.area)).toBeLessThan(1e-7 * greatest);
      expect(Math.abs(got.waterplaneIT - want.IT)).toBeLessThan(5e-7 * greatest * ((b * b) / 4));
    }
  });

  it("is nothing above and all of it below", () => {
    for (const pitch of pitches) {
      const dry = immersion(body, surface(pitch, ellipsoidUnder(a, b, c, pitch, -1.01).level));
      expect(dry.volume).toBe(0);
      expect(dry.waterplaneArea).toBe(0);
      expect(dry.skinFraction).toBe(0);
      expect(Number.isFinite(dry.centroid.x + dry.centroid.z + dry.skinCentroid.x)).toBe(true);
      const wet = immersion(body, surface(pitch, ellipsoidUnder(a, b, c, pitch, 1.01).level));
      expect(wet.volume).toBe(body.volume);
      expect(wet.centroid).toEqual(body.centroid);
      expect(wet.waterplaneIT).toBe(0);
      expect(wet.skinFraction).toBeCloseTo(1, 14);
      expect(wet.skinCentroid.x).toBeCloseTo(body.skinCentroid.x, 14);
    }
  });

  it("puts the centroid of nothing on the surface", () => {
    const dry = immersion(body, surface(0.3, -1));
    expect(dry.centroid.x * Math.sin(0.3) + dry.centroid.z * Math.cos(0.3)).toBeCloseTo(-1, 14);
  });

  it("refuses what is no surface", () => {
    expect(() => immersion(body, { sin: 1, cos: 1, level: 0 })).toThrow(/sine and cosine of one angle/);
    expect(() => immersion(body, { sin: 0, cos: 1, level: NaN })).toThrow(/finite level/);
  });
});

describe("blunt and upright bodies", () => {
  it("a cone standing on its apex", () => {
    const [R, H] = [0.01, 0.04];
    const cone = makeShape(round(H, (phi) => (R * station(phi, H)) / H));
    const t = 0.7;
    const nose = immersion(cone, { sin: -1, cos: 0, level: t * H }); // nose down, apex at level 0
    expect(nose.volume / cone.volume).toBeCloseTo(t ** 3, 9);
    expect(nose.centroid.x).toBeCloseTo(-0.75 * t * H, 10);
    expect(nose.waterplaneArea / (Math.PI * (t * R) ** 2)).toBeCloseTo(1, 8);
    expect(nose.waterplaneIT / ((Math.PI * (t * R) ** 4) / 4)).toBeCloseTo(1, 8);
    const lateral = Math.PI * R * Math.hypot(R, H);
    expect(nose.skinFraction).toBeCloseTo((lateral * t * t) / (lateral + Math.PI * R * R), 6);
    // and tail down, where the face is wet
    const tail = immersion(cone, { sin: 1, cos: 0, level: -t * H });
    expect(tail.volume / cone.volume).toBeCloseTo(1 - t ** 3, 9);
    expect(tail.skinFraction).toBeCloseTo(
      (lateral * (1 - t * t) + Math.PI * R * R) / (lateral + Math.PI * R * R),
      6,
    );
  });

  it("a cylinder that floats level, half under", () => {
    const [R, L] = [0.01, 0.06];
    const log = makeShape(round(L, () => R));
    const half = immersion(log, surface(0, 0));
    expect(half.volume / log.volume).toBeCloseTo(0.5, 12);
    // published: BM of a half-immersed round log 0.4244131816 R
    expect(half.waterplaneIT / half.volume / R).toBeCloseTo(
      (2 * L * R ** 3) / 3 / ((Math.PI * R * R * L) / 2) / R,
      10,
    );
    expect(half.centroid.z).toBeCloseTo((-4 * R) / (3 * Math.PI), 12);
    expect(half.skinFraction).toBeCloseTo(0.5, 9);
    expect(log.skinArea).toBeCloseTo(2 * Math.PI * R * L + 2 * Math.PI * R * R, 12);
  });

  it("a diamond section, its widest line on the surface", () => {
    const box = makeShape({
      ...round(0.05, () => 0.01),
      exponentAbove: () => 1,
      exponentBelow: () => 1,
    });
    const half = immersion(box, surface(0, 0));
    expect(half.volume).toBeCloseTo(0.05 * 0.01 * 0.01, 15);
    expect(half.waterplaneIT).toBeCloseTo((2 / 3) * 0.01 ** 3 * 0.05, 15);
    // four sides of √2·0.01, two faces
    // Simpson's rule on a quarter whose contour has its kinks at the ends: 1e-6
    expect(box.skinArea).toBeCloseTo(4 * Math.SQRT2 * 0.01 * 0.05 + 2 * 2 * 0.01 * 0.01, 8);
  });
});

/** Volume, moments and waterplane by plain midpoint sums over stations and heights: slow, and nothing in common with the model. */
function brute(shape: Shape, pitch: number, level: number) {
  const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
  const [N, M] = [2000, 400];
  let [volume, x, z] = [0, 0, 0];
  for (let i = 0; i < N; i++) {
    const phi = (Math.PI * (i + 0.5)) / N;
    const section = sectionAt(shape.edges, phi);
    const ds = ((shape.length / 2) * Math.sin(phi) * Math.PI) / N;
    // the heights under water, between the section's ends
    const cut = (level + section.s * sin) / cos;
    const low = cos > 0 ? section.bottom : Math.max(section.bottom, cut);
    const high = cos > 0 ? Math.min(section.top, cut) : section.top;
    if (!(high > low)) continue;
    for (let j = 0; j < M; j++) {
      // nodes drawn to both ends, where the breadth goes like a root
      const t = (j + 0.5) / M;
      const height = low + (high - low) * t * t * (3 - 2 * t);
      const dA = (2 * halfBreadthAt(section, height) * (high - low) * 6 * t * (1 - t)) / M;
      volume += dA * ds;
      x -= dA * ds * section.s;
      z += dA * ds * height;
    }
  }
  return { volume, x: x / volume, z: z / volume };
}

describe("drawn bodies at odd trims", () => {
  const poses: [number, number][] = [
    [0.03, 0.001],
    [-0.6, 0.015],
    [1.2, -0.03],
    [2.9, -0.002],
    [-2.2, 0.03],
  ];

  it.each([
    ["minnow", minnow],
    ["block", block],
  ] as const)(
    "%s: agrees with plain sums",
    (_, spec) => {
      const shape = shapeOf(spec);
      for (const [pitch, level] of poses) {
        const want = brute(shape, pitch, level);
        const got = immersion(shape, surface(pitch, level));
        // The sums are good to about 3e-6 of the whole: the surface meets the edges between two of 2000 stations.
        expect(Math.abs(got.volume - want.volume)).toBeLessThan(5e-6 * shape.volume);
        expect(Math.abs(got.centroid.x - want.x) * want.volume).toBeLessThan(
          5e-6 * shape.volume * shape.length,
        );
        expect(Math.abs(got.centroid.z - want.z) * want.volume).toBeLessThan(
          5e-6 * shape.volume * shape.length,
        );
      }
    },
    30_000,
  );

  it("volumes agree with plain sums when all is under", () => {
    for (const spec of [minnow, block]) {
      const shape = shapeOf(spec);
      const want = brute(shape, 0, 1);
      expect(shape.volume / want.volume).toBeCloseTo(1, 5);
      expect(shape.centroid.x).toBeCloseTo(want.x, 7);
      expect(shape.centroid.z).toBeCloseTo(want.z, 7);
    }
  }, 30_000);
});

describe("a broader copy", () => {
  it("scales what depends on breadth, and keeps the skin as drawn", () => {
    const drawn = shapeOf(minnow);
    const k = 1.07;
    const broad = drawn.withBreadthFactor(k);
    const anew = makeShape({
      ...edgesFromKnots(minnow),
      halfBreadth: (phi) => k * drawn.edges.halfBreadth(phi),
    });
    expect(broad.volume / anew.volume).toBeCloseTo(1, 12);
    expect(broad.centroid.z).toBeCloseTo(anew.centroid.z, 14);
    expect(broad.secondMomentX / anew.secondMomentX).toBeCloseTo(1, 12);
    expect(broad.maxHalfBreadth).toBeCloseTo(anew.maxHalfBreadth, 14);
    expect(broad.section(0.03).halfBreadth).toBeCloseTo(anew.section(0.03).halfBreadth, 14);
    expect(broad.skinArea).toBe(drawn.skinArea);
    const s = surface(0.2, -0.004);
    const [p, q] = [immersion(broad, s), immersion(anew, s)];
    expect(p.volume / q.volume).toBeCloseTo(1, 12);
    expect(p.waterplaneIT / q.waterplaneIT).toBeCloseTo(1, 12);
    expect(p.waterplaneArea / q.waterplaneArea).toBeCloseTo(1, 12);
    expect(p.waterplaneMoment / q.waterplaneMoment).toBeCloseTo(1, 12);
    expect(p.waterplaneSecond / q.waterplaneSecond).toBeCloseTo(1, 12);
    expect(p.centroid.x).toBeCloseTo(q.centroid.x, 14);
    expect(p.skinFraction).toBe(immersion(drawn, s).skinFraction);
    expect(broad.stations.reduce((v, t) => v + t.area * t.ds, 0)).toBeCloseTo(broad.volume, 15);
    expect(broad.withBreadthFactor(1 / k).volume / drawn.volume).toBeCloseTo(1, 12);
    expect(() => drawn.withBreadthFactor(0)).toThrow(/above 0/);
  });
});

describe("sections and stations", () => {
  it("add up to the volume", () => {
    const shape = shapeOf(block);
    const sum = (f: (s: Shape["stations"][number]) => number) =>
      shape.stations.reduce((v, s) => v + f(s) * s.ds, 0);
    expect(sum((s) => s.area)).toBeCloseTo(shape.volume, 15);
    expect(sum((s) => -s.area * s.s) / shape.volume).toBeCloseTo(shape.centroid.x, 13);
    expect(sum((s) => s.area * s.centroidZ) / shape.volume).toBeCloseTo(shape.centroid.z, 13);
  });

  it("refuses stations beyond the body", () => {
    const shape = shapeOf(block);
    expect(shape.section(0.08 + 1e-14).s).toBeCloseTo(0.08, 12);
    expect(() => shape.section(0.081)).toThrow(/between 0 and 0.08 m/);
    expect(() => shape.section(-0.001)).toThrow(RangeError);
  });
});

describe("what the surface cuts", () => {
  const bodies = [
    ["minnow", shapeOf(minnow)],
    ["block", shapeOf(block)],
  ] as const;
  const trims = [0, 0.15, -0.4, 1.1, Math.PI - 0.2, -2.5];
  /** Volume, its moment ∫X dV, the bare skin and its ∫X dS under a surface; X forward along it. */
  const under = (body: Shape, pitch: number, level: number) => {
    const got = immersion(body, surface(pitch, level), { skin: true });
    const along = (p: { x: number; z: number }): number => p.x * Math.cos(pitch) - p.z * Math.sin(pitch);
    const S = got.skinFraction * body.skinArea;
    return {
      got,
      V: got.volume,
      M: got.volume * along(got.centroid),
      H: got.volume * (got.centroid.x * Math.sin(pitch) + got.centroid.z * Math.cos(pitch)),
      S,
      MS: S * along(got.skinCentroid),
    };
  };
  /** Levels through the body: shares of the way from its lowest point to its highest. */
  const levels = (body: Shape, pitch: number): number[] => {
    const heights = body.stations.flatMap(({ s, top, bottom }) =>
      [top, bottom].map((z) => -s * Math.sin(pitch) + z * Math.cos(pitch)),
    );
    const [low, high] = [Math.min(...heights), Math.max(...heights)];
    return [0.2, 0.45, 0.7, 0.93].map((share) => low + share * (high - low));
  };

  it.each(bodies)("%s: area and moments are the slopes of volume and moment", (_, body) => {
    const d = 1e-6;
    for (const pitch of trims)
      for (const level of levels(body, pitch)) {
        const { got, H } = under(body, pitch, level);
        const [above, below] = [under(body, pitch, level + d), under(body, pitch, level - d)];
        const [up, down] = [under(body, pitch + d, level), under(body, pitch - d, level)];
        const A = got.waterplaneArea;
        const L = body.length;
        expect(Math.abs((above.V - below.V) / (2 * d) - A)).toBeLessThan(2e-4 * A);
        expect(Math.abs((above.M - below.M) / (2 * d) - got.waterplaneMoment)).toBeLessThan(2e-4 * A * L);
        expect(Math.abs((up.V - down.V) / (2 * d) + got.waterplaneMoment)).toBeLessThan(2e-4 * A * L);
        expect(Math.abs((up.M - down.M) / (2 * d) + H + got.waterplaneSecond)).toBeLessThan(2e-4 * A * L * L);
      }
  });

  it.each(bodies)("%s: so are, roughly, those of the skin", (_, body) => {
    const d = 1e-5;
    for (const pitch of trims)
      for (const level of levels(body, pitch)) {
        const { got } = under(body, pitch, level);
        const [above, below] = [under(body, pitch, level + d), under(body, pitch, level - d)];
        const dS = (above.S - below.S) / (2 * d);
        expect(got.skinCut / dS).toBeGreaterThan(0.7);
        expect(got.skinCut / dS).toBeLessThan(1.02);
        const middle = (above.MS - below.MS) / (2 * d) / dS;
        expect(Math.abs(got.skinCutMoment / got.skinCut - middle)).toBeLessThan(0.05 * body.length);
      }
  });
});
