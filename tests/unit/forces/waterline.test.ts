import { describe, expect, test } from "vitest";
import { newton, random } from "../../../src/model/base";
import { assemble, type Bait } from "../../../src/model/bait";
import { createEvaluator, prepareCraft } from "../../../src/model/forces";
import { HalfSection } from "../../../src/model/forces/halfsection";
import { Waterline } from "../../../src/model/forces/waterline";
import { sectionArea } from "../../../src/model/shape";
import { floating } from "../../../src/model/statics";
import { at, ellipsoidBait, minnow, minnowShape, openWater, spec, tin } from "./baits";

const DEG = Math.PI / 180;

/** Poses through the surface at all trims, seeded. */
function poses(count: number, seed: number): { Z: number; pitch: number }[] {
  const rng = random(seed);
  return Array.from({ length: count }, () => {
    const pitch = (rng.uniform() * 2 - 1) * Math.PI;
    const span = 0.05 * Math.abs(Math.sin(pitch)) + 0.012;
    return { pitch, Z: (rng.uniform() * 2 - 1) * span };
  });
}

describe("half sections", () => {
  test.each([1, 1.5, 2, 3, 10])("exponent %d: area to 1e-5, y, a, b, c each the next one's slope", (n) => {
    const half = new HalfSection(n);
    const exact = sectionArea({
      s: 0,
      top: 1,
      widest: 0,
      bottom: 0,
      halfBreadth: 0.5,
      exponentAbove: n,
      exponentBelow: n,
    });
    expect(Math.abs(half.a1 / exact - 1)).toBeLessThan(1e-6);
    const [lo, mid, hi] = [0, 0, 0].map(() => new Float64Array(5)) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    const d = 1e-6;
    for (let i = 1; i < 100; i++) {
      const t = (i + 0.37) / 100.5;
      half.at(t - d, lo);
      half.at(t, mid);
      half.at(t + d, hi);
      for (const k of [2, 3, 4])
        // central differences: rounding 1e-10, step 1e-11
        expect(Math.abs(((hi[k] ?? NaN) - (lo[k] ?? NaN)) / (2 * d) - (mid[k - 1] ?? NaN))).toBeLessThan(
          1e-8,
        );
    }
  });
});

describe("what lies under the surface", () => {
  const bodies: readonly (readonly [string, Bait])[] = [
    ["minnow's bare body", assemble(spec(minnowShape))],
    ["ellipsoid", ellipsoidBait(0.05, 0.008, 0.012)],
  ];

  test.each(bodies)("%s: volume and first moments against exact immersion", (_, bait) => {
    const craft = prepareCraft(bait);
    const { G } = craft.rigid;
    const water = new Waterline(craft);
    const { volume: V, length, maxHeight } = bait.shape;
    for (const { Z, pitch } of poses(400, 1)) {
      const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
      water.cut(Z, sin, cos, 0, 0);
      const exact = bait.shape.immersion({ sin, cos, level: G.x * sin + G.z * cos - Z });
      // Slabs of one section each: second order in their length, worst for a bait on its head.
      const tolerance = Math.abs(cos) > 0.5 ? 8e-4 : 2e-3;
      expect(Math.abs(water.volume - exact.volume) / V).toBeLessThan(tolerance);
      expect(Math.abs(water.firstX - exact.volume * (exact.centroid.x - G.x)) / V / length).toBeLessThan(
        4e-4,
      );
      expect(Math.abs(water.firstZ - exact.volume * (exact.centroid.z - G.z)) / V / maxHeight).toBeLessThan(
        4e-4,
      );
    }
  });

  test.each(poses(60, 2))(
    "lift and its moment are the slopes of the energy (a whole minnow): %o",
    ({ Z, pitch }) => {
      const water = new Waterline(prepareCraft(minnow(40)));
      const depth = (z: number, p: number): number => {
        water.cut(z, Math.sin(p), Math.cos(p), 0, 0);
        return water.depth;
      };
      const h = 2e-7;
      const byZ = -(depth(Z + h, pitch) - depth(Z - h, pitch)) / (2 * h);
      const byPitch = -(depth(Z, pitch + h) - depth(Z, pitch - h)) / (2 * h);
      depth(Z, pitch);
      // of 13 mL: rounding of the differences is 1e-10 of the whole
      expect(Math.abs(byZ - water.volume)).toBeLessThan(13e-6 * 1e-8);
      expect(Math.abs(byPitch - water.moment)).toBeLessThan(13e-6 * 0.05 * 1e-7);
    },
  );

  test("shares' rates are the slopes of the shares", () => {
    const craft = prepareCraft(minnow(40));
    const water = new Waterline(craft);
    const [rising, turning, h] = [0.3, 4, 1e-7];
    let near = 0;
    let all = 0;
    for (const { Z, pitch } of poses(200, 3)) {
      const shares = (t: number): number[] => {
        const p = pitch + turning * t;
        water.cut(Z + rising * t, Math.sin(p), Math.cos(p), rising, turning);
        return [...water.share, water.bodyShare, water.bladeShare];
      };
      const before = shares(-h);
      const after = shares(h);
      shares(0);
      [...water.rate, water.bodyRate, water.bladeRate].forEach((rate, i) => {
        const slope = ((after[i] ?? NaN) - (before[i] ?? NaN)) / (2 * h);
        all += 1;
        if (Math.abs(slope - rate) < 1e-4 * (1 + Math.abs(rate))) near += 1;
      });
    }
    // a share that begins or ends between the two states has a kink there: a few in a thousand
    expect(near / all).toBeGreaterThan(0.997);
  });

  test("all under by parts is the account; all out is nothing", () => {
    const craft = prepareCraft(minnow(40));
    for (const pitch of [0, 0.3, Math.PI / 2, 2.5, -1.2, Math.PI]) {
      const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
      const parts = new Waterline(craft);
      const whole = new Waterline(craft);
      parts.cut(-0.3, sin, cos, 0.2, 1);
      whole.under(-0.3, sin, cos);
      expect(Math.abs(parts.volume / whole.volume - 1)).toBeLessThan(1e-12);
      expect(Math.abs(parts.moment - whole.moment) / whole.volume).toBeLessThan(1e-12);
      expect(Math.abs(parts.depth / whole.depth - 1)).toBeLessThan(1e-12);
      expect(Math.min(...parts.share, parts.bodyShare, parts.bladeShare, ...parts.hookShare)).toBeGreaterThan(
        1 - 1e-12,
      );
      parts.cut(0.3, sin, cos, 0.2, 1);
      whole.dry();
      expect(parts.volume).toBe(0);
      expect(Math.abs(parts.depth - whole.depth)).toBeLessThan(1e-18);
      expect(Math.max(...parts.share, parts.bladeShare, ...parts.hookShare)).toBe(0);
    }
  });

  test("hooks hang under until their eye is a third of their length out of the water", () => {
    const craft = prepareCraft(minnow(40));
    const water = new Waterline(craft);
    const belly = craft.hooks[0];
    if (!belly) throw new Error("the minnow has a belly hook");
    const eyeAt = (height: number): number => {
      water.cut(height - belly.at.z, 0, 1, 0, 0);
      return water.hookShare[0] ?? NaN;
    };
    expect(eyeAt(0.004)).toBe(1);
    expect(eyeAt(0.05)).toBe(0);
    expect(eyeAt(0.013)).toBeGreaterThan(0.2);
    expect(eyeAt(0.013)).toBeLessThan(0.8);
  });
});

describe("afloat: weight and lift vanish where the statics say", () => {
  const ballast = (station: number, grams: number) => ({
    ballast: [
      {
        name: "belly",
        at: { x: -station / 1e3, z: -0.0062 },
        mass: grams / 1e3,
        stuff: tin,
        where: "inside" as const,
        hole: null,
        filler: 0,
      },
    ],
  });
  const cases = [0.5, 2, 3, 4, 4.7].flatMap((grams) =>
    [25, 36, 50].flatMap((station) =>
      [40, null].map((bib) => ({ grams, station, bib, bait: minnow(bib, ballast(station, grams)) })),
    ),
  );
  test.each(cases)("$grams g at $station mm, bib $bib", ({ bait }) => {
    const found = floating(bait, openWater.density);
    if (!found) throw new Error("this one floats");
    const craft = prepareCraft(bait);
    const { G } = craft.rigid;
    const evaluator = createEvaluator(craft, openWater, ["weight", "buoyancy"]);
    const mg = craft.rigid.mass * openWater.gravity;
    const { pitch, surface } = found;
    const Z = G.x * Math.sin(pitch) + G.z * Math.cos(pitch) - surface.level;
    const root = newton(
      ([z, p]) => {
        evaluator.evaluate(at({ Z: z ?? NaN, pitch: p ?? NaN }));
        const { x, z: up, m } = evaluator.force;
        return [(x * Math.sin(p ?? NaN) + up * Math.cos(p ?? NaN)) / mg, m / mg / 0.01];
      },
      [Z, pitch],
      [1e-4, 1e-3],
      [1e-6, 1e-6],
      1e-6,
    );
    expect(root.converged).toBe(true);
    // 0.3° asked of a whole run; half of that here, 0.1 mm in height
    expect(Math.abs((root.x[1] ?? NaN) - pitch) / DEG).toBeLessThan(0.15);
    expect(Math.abs((root.x[0] ?? NaN) - Z)).toBeLessThan(1e-4);
  });
});
