// What holds for any swim, whatever the start: nothing gains energy, nothing is lost between the bodies, the listed forces
// are all there are. Starts are drawn at random with a fixed seed.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { energy, VISCOUS } from "../../src/model/forces";
import { minnow, rattler, water } from "../lib/swum";
import { wholeEnergy, wholeImpulse } from "../unit/motion/books";
import { free } from "../unit/motion/free";

/** Without shrinking: a smaller start says no more than the first. */
const seeded = (numRuns: number) => ({ seed: 20260, numRuns, endOnFailure: true });
const RATE = 960;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** A free start: violent tumbling included. m, rad, m/s, rad/s. */
const anyStart = fc.record({
  x: fc.constant(0),
  z: fc.constant(-5),
  pitch: between(-Math.PI, Math.PI),
  vx: between(-2, 2),
  vz: between(-1.5, 1.5),
  q: between(-15, 15),
});

/** Greatest rise of the energy above its lowest value so far over `seconds`, as a share of what was lost. */
function greatestRise(
  made: ReturnType<typeof free>,
  seconds: number,
  energyNow: () => number,
  rate = RATE,
): number {
  // the first two steps only find out how hooks and balls are held
  for (let k = 0; k < 3; k++) made.stepper.advance();
  const first = energyNow();
  let least = first;
  let rise = 0;
  for (let k = 3; k < seconds * rate; k++) {
    made.stepper.advance();
    const now = energyNow();
    rise = Math.max(rise, now - least);
    least = Math.min(least, now);
  }
  return rise / (first - least);
}

describe("energy in still water, without line", () => {
  it("a bait without a bib never gains any, under water", () => {
    const around = water(Infinity, false);
    const bait = minnow(4e-3, { hangers: [], bib: null });
    fc.assert(
      fc.property(anyStart, (start) => {
        const made = free(bait, around, start);
        // Drag takes more in a step than the step's own error gives back: nothing but round-off is left.
        expect(
          greatestRise(made, 2, () => energy(made.swimmer, made.stepper.bait.state, around)),
        ).toBeLessThan(1e-9);
      }),
      seeded(30),
    );
  });

  // Where a blunt part leaves the water within a step, the velocity at that moment is read with a force that is no longer
  // there: the reading (not the motion) is off by up to 0.3 %, and ever less with the step.
  it.each([
    [960, 4e-3, 25],
    [3840, 2e-4, 8],
  ])("nor when it leaps out of the water and falls back, %d steps/s", (rate, tolerance, numRuns) => {
    const around = water(Infinity, true);
    const bait = minnow(2.5e-3, { hangers: [], bib: null });
    const leap = fc.record({
      x: fc.constant(0),
      z: between(-0.2, 0),
      pitch: between(-Math.PI, Math.PI),
      vx: between(-2, 2),
      vz: between(-1.5, 2.5),
      q: between(-15, 15),
    });
    fc.assert(
      fc.property(leap, (start) => {
        const made = free(bait, around, start, { rate });
        expect(
          greatestRise(made, 2, () => energy(made.swimmer, made.stepper.bait.state, around), rate),
        ).toBeLessThan(tolerance);
      }),
      seeded(numRuns),
    );
  });

  it.each([
    ["hooks", minnow(3e-3, { bib: null }), 1e-7],
    // The engine parts balls that overlap by its slop, 0.02 mm; at most 0.02 mm × 10 mN = 2e-7 J, of some mJ that are lost.
    ["balls", rattler(3e-3, 4, { hangers: [], bib: null }), 2e-5],
    ["hooks and balls", rattler(3e-3, 4, { bib: null }), 2e-5],
  ] as const)("nor with %s of its own", (_, bait, tolerance) => {
    const around = water(Infinity, false);
    fc.assert(
      fc.property(anyStart, (start) => {
        const made = free(bait, around, start);
        expect(greatestRise(made, 2, () => wholeEnergy(made, around))).toBeLessThan(tolerance);
      }),
      seeded(20),
    );
  });

  it("with a bib, changes by the work of the listed forces, within 1e-3", () => {
    const around = water(Infinity, false);
    const bait = minnow(4e-3, { hangers: [] });
    fc.assert(
      fc.property(anyStart, (start) => {
        const { stepper, swimmer, dynamics } = free(bait, around, start);
        // weight and buoyancy are in the potential energy
        const power = (): number =>
          VISCOUS.reduce((sum, key) => {
            const { x, z, m } = dynamics.parts.get(key)!;
            const { u, w, q } = stepper.bait.state;
            return sum + x * u + z * w + m * q;
          }, 0);
        const first = energy(swimmer, stepper.bait.state, around);
        let work = 0;
        let turnover = 0;
        let last = power();
        for (let k = 0; k < 2 * RATE; k++) {
          stepper.advance();
          const now = power();
          const done = (last + now) / 2 / RATE; // trapezoid: second order, as the step is
          work += done;
          turnover += Math.abs(done);
          last = now;
        }
        const change = energy(swimmer, stepper.bait.state, around) - first;
        expect(Math.abs(change - work) / turnover).toBeLessThan(1e-3);
      }),
      seeded(20),
    );
  });
});

describe("impulse without gravity in an ideal fluid", () => {
  it.each([
    ["hooks", minnow(3e-3)],
    ["balls that fly about", rattler(3e-3, 4, { hangers: [] })],
    ["hooks and balls", rattler(3e-3)],
  ])("stays with the whole of bait, water and %s", (_, bait) => {
    const around = { ...water(Infinity, false), gravity: 0 };
    fc.assert(
      fc.property(anyStart, (start) => {
        const made = free(bait, around, start, { forces: [], drag: false });
        const first = wholeImpulse(made);
        const size = Math.hypot(first.x, first.z) + 1e-3;
        for (let k = 0; k < 2 * RATE; k++) {
          made.stepper.advance();
          const now = wholeImpulse(made);
          // 0.1 % is asked for; joints and contacts pass their impulses on whole, so that only rounding is left
          expect(Math.hypot(now.x - first.x, now.z - first.z) / size).toBeLessThan(1e-10);
        }
      }),
      seeded(8),
    );
  });
});
