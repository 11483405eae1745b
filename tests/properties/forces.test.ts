import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { wrench, type Sym3 } from "../../src/model/base";
import {
  createEvaluator,
  prepareSwimmer,
  VISCOUS,
  type Swimmer,
  type Evaluator,
  type State,
  type Surroundings,
} from "../../src/model/forces";
import { Waterline } from "../../src/model/hydrostatics";
import { Momentum } from "../../src/model/motion/momentum";
import { ellipsoidBait, freshWater, minnow, openWater } from "../lib/towed";
import { advance } from "../unit/forces/rk4";

/** Every run draws the same examples. */
const SEED = { seed: 20, numRuns: 200 } as const;

const bare = prepareSwimmer(minnow(null));
const lipped = prepareSwimmer(minnow(40));

/** Even over the range: `fc.double` is even over the floating-point numbers, so that most of what it draws is next to 0. */
const number = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const motion = (Z: fc.Arbitrary<number>): fc.Arbitrary<State> =>
  fc.record({
    u: number(-1.5, 1.5),
    w: number(-1, 1),
    q: number(-15, 15),
    pitch: number(-Math.PI, Math.PI),
    X: fc.constant(0),
    Z,
  });
const deep = motion(fc.constant(-2));
const near = motion(number(-0.06, 0.05));

const power = (f: { x: number; z: number; m: number }, s: State): number => f.x * s.u + f.z * s.w + f.m * s.q;

/** Rates of all six, for a state. */
function rates(evaluator: Evaluator, s: State): [number, number, number, number, number, number] {
  evaluator.evaluate(s);
  const [du, dw, dq] = evaluator.accelerate(null, [0, 0, 0]);
  const [sin, cos] = [Math.sin(s.pitch), Math.cos(s.pitch)];
  return [du, dw, dq, s.q, s.u * cos - s.w * sin, s.u * sin + s.w * cos];
}

/** Slope of the energy along the motion, W. */
function energySlope(evaluator: Evaluator, s: State, h: number): number {
  const r = rates(evaluator, s);
  const along = (t: number): number => {
    evaluator.evaluate({
      u: s.u + t * r[0],
      w: s.w + t * r[1],
      q: s.q + t * r[2],
      pitch: s.pitch + t * r[3],
      X: s.X + t * r[4],
      Z: s.Z + t * r[5],
    });
    return evaluator.energy();
  };
  return (along(h) - along(-h)) / (2 * h);
}

describe("energy, still water, no line", () => {
  test("under water its slope is the power of the forces but weight and lift, bib or none", () => {
    for (const swimmer of [bare, lipped]) {
      const evaluator = createEvaluator(swimmer, freshWater);
      fc.assert(
        fc.property(deep, (s) => {
          const slope = energySlope(evaluator, s, 1e-6);
          evaluator.evaluate(s);
          let sum = 0;
          let size = 1e-3; // W
          for (const [key, f] of evaluator.parts) {
            if (key === "weight" || key === "buoyancy") continue;
            sum += power(f, s);
            size += Math.abs(power(f, s));
          }
          // differences of 1e-6 s: step error 1e-6, rounding 1e-9 of the energy over the step
          expect(Math.abs(slope - sum)).toBeLessThan(1e-5 * size);
        }),
        SEED,
      );
    }
  });

  /** Energy lost in a step of t seconds by the growth and the loss of added mass alone, J, and what the parts say of it. */
  function crossing(
    evaluator: Evaluator,
    water: Waterline,
    s: State,
    t: number,
  ): { lost: number; said: number } {
    const shares = (at: State): number[] => {
      water.cut(at.Z, Math.sin(at.pitch), Math.cos(at.pitch));
      return [...water.share, water.bodyShare, water.bladeShare];
    };
    const [sin, cos] = [Math.sin(s.pitch), Math.cos(s.pitch)];
    const after = { ...s, pitch: s.pitch + t * s.q, Z: s.Z + t * (s.u * sin + s.w * cos) };
    const kinetic = (m: Sym3, { u, w, q }: { u: number; w: number; q: number }): number =>
      (m.a11 * u * u + m.a33 * w * w + m.a55 * q * q) / 2 + m.a13 * u * w + m.a15 * u * q + m.a35 * w * q;
    const momentum = new Momentum();
    evaluator.evaluate(s);
    const before = kinetic(evaluator.mass, s);
    momentum.start(evaluator.mass, sin, cos, s);
    evaluator.evaluate(after);
    momentum.change(evaluator.mass, evaluator.entered, sin, cos);
    const nu = { u: 0, w: 0, q: 0 };
    momentum.velocity(sin, cos, momentum.x, momentum.z, momentum.l, nu);
    const lost = before - kinetic(evaluator.mass, nu);

    const { strips, hull, blade } = evaluator.swimmer;
    const [was, is] = [shares(s), shares(after)];
    const change = (i: number): number => Math.abs((is[i] ?? NaN) - (was[i] ?? NaN));
    let said = hull.surge * change(strips.length) * (s.u - s.q * hull.centroid.z) ** 2;
    strips.forEach((p, i) => (said += p.added * change(i) * (s.w + s.q * p.addedX) ** 2));
    if (blade)
      said +=
        blade.added *
        change(strips.length + 1) *
        (s.u * blade.normal.x + s.w * blade.normal.z + s.q * blade.lever) ** 2;
    return { lost, said: (openWater.density * said) / 2 };
  }

  test("through the surface it loses half of each part's changing added mass: ½ρ Σ a|Δf|(h·ν)², the bib's too", () => {
    for (const swimmer of [bare, lipped]) {
      const evaluator = createEvaluator(swimmer, openWater);
      const water = new Waterline(swimmer);
      fc.assert(
        fc.property(near, (s) => {
          const { lost, said } = crossing(evaluator, water, s, 1e-7);
          // of second order in the share that changes, some 1e-5; rounding of an energy of 0.01 J
          expect(Math.abs(lost - said)).toBeLessThan(1e-3 * said + 1e-15);
        }),
        { ...SEED, numRuns: 1000 },
      );
    }
  });

  test("in no step, however long, does going under or coming out gain any", () => {
    for (const swimmer of [bare, lipped]) {
      const evaluator = createEvaluator(swimmer, openWater);
      const water = new Waterline(swimmer);
      fc.assert(
        fc.property(near, number(1e-5, 5e-3), (s, t) => {
          expect(crossing(evaluator, water, s, t).lost).toBeGreaterThan(-1e-15);
        }),
        { ...SEED, numRuns: 1000 },
      );
    }
  });

  test("every drag takes energy, whatever the motion", () => {
    // not the bib: in its moment is what takes back the added mass's couple (docs/model.md §6.4), and that may give some
    const drags = VISCOUS.filter((key) => key !== "bib");
    expect(drags.length).toBeGreaterThan(0);
    for (const around of [freshWater, openWater]) {
      const evaluator = createEvaluator(lipped, around);
      fc.assert(
        fc.property(near, (s) => {
          evaluator.evaluate(s);
          for (const key of drags) {
            const f = evaluator.parts.get(key);
            expect(f && power(f, s)).toBeLessThanOrEqual(0);
          }
        }),
        SEED,
      );
    }
  });

  test("Kirchhoff's terms do no work", () => {
    const evaluator = createEvaluator(lipped, freshWater);
    fc.assert(
      fc.property(deep, (s) => {
        evaluator.evaluate(s);
        const { x, z, m } = evaluator.inertia;
        const size = Math.abs(x * s.u) + Math.abs(z * s.w) + Math.abs(m * s.q);
        expect(Math.abs(power({ x, z, m }, s))).toBeLessThanOrEqual(1e-12 * size + 1e-18);
      }),
      SEED,
    );
  });

  test("with a bib the change of energy over a run is the work of the listed forces within 1e-3", () => {
    const evaluator = createEvaluator(lipped, freshWater);
    fc.assert(
      fc.property(deep, (start) => {
        const s = { ...start };
        const h = 2.5e-4;
        evaluator.evaluate(s);
        const first = evaluator.energy();
        let work = 0;
        let turnover = 0;
        const watts = (): number => {
          let sum = 0;
          for (const [key, f] of evaluator.parts)
            if (key !== "weight" && key !== "buoyancy") sum += power(f, s);
          return sum;
        };
        let before = watts();
        for (let i = 0; i < 2000; i++) {
          advance(s, h, (p) => {
            evaluator.evaluate(p);
            return evaluator.accelerate(null, [0, 0, 0]);
          });
          evaluator.evaluate(s);
          const now = watts();
          work += (h * (before + now)) / 2; // trapezium: second order in h
          turnover += h * Math.abs(now);
          before = now;
        }
        evaluator.evaluate(s);
        expect(Math.abs(evaluator.energy() - first - work)).toBeLessThan(1e-3 * turnover);
      }),
      { ...SEED, numRuns: 15 },
    );
  });
});

describe("a steady current", () => {
  const flow: fc.Arbitrary<{ x: number; z: number }> = fc.record({
    x: number(-0.8, 0.8),
    z: number(-0.5, 0.5),
  });

  test("a bait that drifts with it behaves as in still water", () => {
    fc.assert(
      fc.property(deep, flow, (start, current) => {
        const still = createEvaluator(lipped, freshWater);
        const moving = createEvaluator(lipped, { ...freshWater, current });
        const a = { ...start };
        const [sin, cos] = [Math.sin(start.pitch), Math.cos(start.pitch)];
        const b = {
          ...start,
          u: start.u + current.x * cos + current.z * sin,
          w: start.w - current.x * sin + current.z * cos,
        };
        const step = (evaluator: Evaluator) => (p: State) => {
          evaluator.evaluate(p);
          return evaluator.accelerate(null, [0, 0, 0]);
        };
        const h = 5e-4;
        for (let i = 0; i < 600; i++) {
          advance(a, h, step(still));
          advance(b, h, step(moving));
        }
        const t = 600 * h;
        // both runs have their own step errors, the current's body components turn fast: 1e-6 relative to 1 m/s, 1 rad
        expect(Math.abs(b.pitch - a.pitch)).toBeLessThan(2e-6);
        expect(Math.abs(b.X - current.x * t - a.X)).toBeLessThan(2e-6);
        expect(Math.abs(b.Z - current.z * t - a.Z)).toBeLessThan(2e-6);
        still.evaluate(a);
        moving.evaluate(b);
        expect(
          Math.abs(
            still.energy() - freshWaterHead(lipped, a) - (moving.energy() - freshWaterHead(lipped, b)),
          ),
        ).toBeLessThan(1e-6);
      }),
      { ...SEED, numRuns: 20 },
    );
  });

  /** Weight's and lift's part of the energy, which does depend on the height. */
  function freshWaterHead(swimmer: Swimmer, s: State): number {
    const { rigid } = swimmer;
    const bx = rigid.B.x - rigid.G.x;
    const bz = rigid.B.z - rigid.G.z;
    const ZB = s.Z + bx * Math.sin(s.pitch) + bz * Math.cos(s.pitch);
    return freshWater.gravity * (rigid.mass * s.Z - freshWater.density * rigid.displaced * ZB);
  }

  test("moving with it, it feels weight and lift alone", () => {
    fc.assert(
      fc.property(flow, number(-3, 3), (current, pitch) => {
        const evaluator = createEvaluator(lipped, { ...freshWater, current });
        const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
        evaluator.evaluate({
          u: current.x * cos + current.z * sin,
          w: current.z * cos - current.x * sin,
          q: 0,
          pitch,
          X: 0,
          Z: -2,
        });
        for (const [key, f] of evaluator.parts)
          if (key !== "weight" && key !== "buoyancy")
            expect(Math.abs(f.x) + Math.abs(f.z) + Math.abs(f.m)).toBeLessThan(1e-12);
      }),
      SEED,
    );
  });
});

describe("symmetry", () => {
  test("a body alike above and below, belly-up and mirrored: the same with w, q, pitch and moments turned round", () => {
    const even = prepareSwimmer(ellipsoidBait(0.05, 0.008, 0.012));
    const water: Surroundings = openWater;
    const evaluator = createEvaluator(even, water);
    fc.assert(
      fc.property(near, (s) => {
        // the mirror image: nose to the other side, so u → −u, X → −X; by fore-and-aft symmetry of the ellipsoid
        evaluator.evaluate(s);
        const f = { ...evaluator.force };
        const k = { ...evaluator.inertia };
        evaluator.evaluate({ ...s, u: -s.u, q: -s.q, pitch: -s.pitch });
        const sum = wrench();
        sum.x = evaluator.force.x + evaluator.inertia.x;
        sum.z = evaluator.force.z + evaluator.inertia.z;
        sum.m = evaluator.force.m + evaluator.inertia.m;
        const size = Math.abs(f.x) + Math.abs(f.z) + Math.abs(k.x) + Math.abs(k.z) + 1e-6;
        expect(Math.abs(f.x + k.x + sum.x)).toBeLessThan(1e-9 * size);
        expect(Math.abs(f.z + k.z - sum.z)).toBeLessThan(1e-9 * size);
        expect(Math.abs(f.m + k.m + sum.m)).toBeLessThan(1e-9 * size * 0.05);
      }),
      SEED,
    );
  });
});
