import { describe, expect, test } from "vitest";
import { newton, random } from "../../../src/model/base";
import { assemble, type Bait } from "../../../src/model/bait";
import { createEvaluator, prepareSwimmer } from "../../../src/model/forces";
import { immersion } from "../../../src/model/hydrostatics";
import { HalfSection } from "../../../src/model/hydrostatics/halfsection";
import { Waterline } from "../../../src/model/hydrostatics/waterline";
import { hookLength } from "../../../src/model/parts";
import { World } from "../../../src/model/motion/engine/planck";
import { HookDrive } from "../../../src/model/motion/hook-drive";
import { hangingHooks } from "../../../src/model/motion/hooks";
import { sectionArea } from "../../../src/model/shape";
import { floating } from "../../../src/model/statics";

import { at, ellipsoidBait, minnow, minnowShape, openWater, tin } from "../../lib/towed";
import { bare } from "../../lib/si";

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
    ["minnow's bare body", assemble(bare(minnowShape))],
    ["ellipsoid", ellipsoidBait(0.05, 0.008, 0.012)],
  ];

  test.each(bodies)("%s: volume and first moments against exact immersion", (_, bait) => {
    const swimmer = prepareSwimmer(bait);
    const { G } = swimmer.rigid;
    const water = new Waterline(swimmer);
    const { volume: V, length, maxHeight } = bait.shape;
    for (const { Z, pitch } of poses(400, 1)) {
      const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
      water.cut(Z, sin, cos);
      const exact = immersion(bait.shape, { sin, cos, level: G.x * sin + G.z * cos - Z });
      // Slabs of one section each: second order in their length, worst for a bait on its head.
      const tolerance = Math.abs(cos) > 0.5 ? 8e-4 : 2e-3;
      expect(Math.abs(water.volume - exact.volume) / V).toBeLessThan(tolerance);
      expect(Math.abs(water.x - exact.volume * (exact.centroid.x - G.x)) / V / length).toBeLessThan(4e-4);
      expect(Math.abs(water.z - exact.volume * (exact.centroid.z - G.z)) / V / maxHeight).toBeLessThan(4e-4);
    }
  });

  test.each(poses(60, 2))(
    "lift and its moment are the slopes of the energy (a whole minnow): %o",
    ({ Z, pitch }) => {
      const water = new Waterline(prepareSwimmer(minnow(40)));
      const depth = (z: number, p: number): number => {
        water.cut(z, Math.sin(p), Math.cos(p));
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

  test("all under by parts is the account; all out is nothing", () => {
    const swimmer = prepareSwimmer(minnow(40));
    for (const pitch of [0, 0.3, Math.PI / 2, 2.5, -1.2, Math.PI]) {
      const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
      const parts = new Waterline(swimmer);
      const whole = new Waterline(swimmer);
      parts.cut(-0.3, sin, cos);
      whole.under(-0.3, sin, cos);
      expect(Math.abs(parts.volume / whole.volume - 1)).toBeLessThan(1e-12);
      expect(Math.abs(parts.moment - whole.moment) / whole.volume).toBeLessThan(1e-12);
      expect(Math.abs(parts.depth / whole.depth - 1)).toBeLessThan(1e-12);
      expect(Math.min(...parts.share, parts.bodyShare, parts.bladeShare, ...parts.hookShare)).toBeGreaterThan(
        1 - 1e-12,
      );
      parts.cut(0.3, sin, cos);
      whole.dry();
      expect(parts.volume).toBe(0);
      expect(Math.abs(parts.depth - whole.depth)).toBeLessThan(1e-18);
      expect(Math.max(...parts.share, parts.bladeShare, ...parts.hookShare)).toBe(0);
    }
  });

  test("hooks are all under until their eye is a fifth of their length out of the water, and out at a whole length", () => {
    const swimmer = prepareSwimmer(minnow(40));
    const water = new Waterline(swimmer);
    const belly = swimmer.hooks[0];
    if (!belly) throw new Error("the minnow has a belly hook");
    const length = hookLength(belly.mass);
    const shareWithEyeAt = (lengths: number): number => {
      water.cut(lengths * length - belly.at.z, 0, 1);
      return water.hookShare[0] ?? NaN;
    };
    for (const [lengths, share] of [
      [-1, 1],
      [0.2, 1],
      [0.4, 0.75],
      [0.6, 0.5],
      [1, 0],
      [3, 0],
    ] as const)
      expect(shareWithEyeAt(lengths)).toBeCloseTo(share, 12);
  });

  test("a hook that swings as a body of its own leaves the water as one that is part of the swimmer", () => {
    const hook = hangingHooks(minnow(40))[0];
    if (!hook) throw new Error("the minnow has a belly hook");
    const swimmer = prepareSwimmer(minnow(40));
    const water = new Waterline(swimmer);
    const body = new World().createBody();
    const drive = new HookDrive([hook], [body], openWater, 1e-3);
    for (let k = -5; k <= 25; k++) {
      const height = (k / 20) * hook.length; // of the eye
      body.setPosition({ x: 0, y: height - hook.centre });
      water.cut(height - (swimmer.hooks[0]?.at.z ?? NaN), 0, 1);
      expect(drive.underWater(0)).toBeCloseTo(water.hookShare[0] ?? NaN, 12);
    }
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
    const swimmer = prepareSwimmer(bait);
    const { G } = swimmer.rigid;
    const evaluator = createEvaluator(swimmer, openWater, ["weight", "buoyancy"]);
    const mg = swimmer.rigid.mass * openWater.gravity;
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
    // 0.3° asked of a whole run; half of that here, 0.1 mm in height. The statics count hooks as wholly under: where one is
    // partly out of the water, by as much more as its lost lift turns the bait.
    const water = new Waterline(swimmer);
    water.cut(root.x[0] ?? NaN, Math.sin(root.x[1] ?? NaN), Math.cos(root.x[1] ?? NaN));
    const wholly = Math.min(1, ...water.hookShare) === 1;
    expect(Math.abs((root.x[1] ?? NaN) - pitch) / DEG).toBeLessThan(wholly ? 0.15 : 0.5);
    expect(Math.abs((root.x[0] ?? NaN) - Z)).toBeLessThan(wholly ? 1e-4 : 2e-4);
  });
});
