import fc from "fast-check";
import { expect, test } from "vitest";
import { assemble, MID } from "../../src/model/bait";
import type { BaitSpec } from "../../src/model/bait";
import { Floater } from "../../src/model/statics";
import { deg } from "../lib/si";
import { baitSpecs, real } from "../lib/random-baits";

/** How many random baits: `TRIMWRIGHT_TRIMS=500 npm test -- properties`. `TRIMWRIGHT_SEED`: other ones. */
const COUNT = Number(process.env["TRIMWRIGHT_TRIMS"] ?? 30);
const SEED = Number(process.env["TRIMWRIGHT_SEED"] ?? 1);
const STEPS = 720;
const FINER = 50;

/** The bait with its G moved. */
const moved = (spec: BaitSpec, x: number, z: number): BaitSpec => ({
  ...spec,
  corrections: [
    {
      name: "moved",
      mass: 0,
      shift: { x, z },
      deviation: { mass: null, x: null, z: null },
      without: [],
    },
  ],
});

/** A hollow or a hump less deep than this fraction of the length may be missed. */
const SHALLOW = 1e-5;

interface Fall {
  readonly pitch: number;
  /** How far the lever goes from zero between this fall and the neighbouring rises, m: the lesser of both sides. */
  readonly deep: number;
}

/** Where the lever falls through zero, by a walk round the circle in steps of 0.5°, and of 0.01° where it comes near zero. */
function walked(floater: Floater): Fall[] {
  const lever = (pitch: number): number => floater.at(pitch)?.lever ?? NaN;
  const step = (2 * Math.PI) / STEPS;
  // no trim of the walk is level, upright or between two quarters, where loose balls run over
  const trims = Array.from({ length: STEPS + 1 }, (_, i) => -Math.PI + (i + 0.3) * step);
  const coarse = trims.map(lever);
  const pitches: number[] = [];
  const levers: number[] = [];
  for (let i = 1; i <= STEPS; i++) {
    const [from, a, b] = [trims[i - 1], coarse[i - 1], coarse[i]] as [number, number, number];
    const ways = [a - b, (coarse[i - 2] ?? a) - a, (coarse[i + 1] ?? b) - b].map(Math.abs);
    const near = Math.min(Math.abs(a), Math.abs(b)) <= 2 * Math.max(...ways);
    for (let k = 0; k < (near ? FINER : 1); k++) {
      pitches.push(from + (k * step) / FINER);
      levers.push(k === 0 ? a : lever(from + (k * step) / FINER));
    }
  }
  const count = levers.length;
  /** The farthest from zero of the levers that keep their sign from a place on. */
  const far = (from: number, way: 1 | -1): number => {
    const at = (k: number): number => levers[(from + k * way + 2 * count) % count] ?? NaN;
    let most = 0;
    for (let k = 0; k < count && at(k) > 0 === at(0) > 0; k++) most = Math.max(most, Math.abs(at(k)));
    return most;
  };
  return levers.flatMap((here, i) => {
    const next = (i + 1) % count;
    if (!(here > 0 && (levers[next] ?? NaN) <= 0)) return [];
    const [p, q] = [pitches[i], pitches[next]] as [number, number];
    return [{ pitch: next > i ? (p + q) / 2 : p, deep: Math.min(far(i, -1), far(next, 1)) }];
  });
}

test(`all stable trims afloat of ${COUNT} random baits are listed, with a shallow hollow at any trim`, () => {
  const nearLevel = real(-12, 12);
  const trim = fc.oneof(
    nearLevel,
    nearLevel.map((d) => d + 180),
    real(-180, 180),
  );
  let hollows = 0;
  fc.assert(
    fc.property(
      baitSpecs,
      // share of the volume above water, and depth of the hollow as a fraction of the length: both even in their logarithms
      real(-2, -0.3).map((x) => 10 ** x),
      real(-4.5, -3).map((x) => 10 ** x),
      trim.map((d) => d * deg),
      (spec, share, depth, pitch) => {
        const own = assemble(spec);
        const L = spec.shape.length;
        const { mass, displaced, G } = own.rigid(MID);
        const density = mass / displaced / (1 - share);
        const held = new Floater(own, density);
        // where loose balls run over, the lever has no slope
        fc.pre(Math.min(Math.abs(Math.sin(pitch)), Math.abs(Math.cos(pitch))) > 0.5 * deg);
        const lever = (p: number): number => held.at(p)?.lever ?? NaN;
        const e = 0.1 * deg;
        const [l, before, after] = [lever(pitch), lever(pitch - e), lever(pitch + e)];
        const slope = (after - before) / (2 * e);
        const curvature = (after + before - 2 * l) / (e * e) + l;
        // Moved by (x, z), the lever is less by x·cos − z·sin: so that it turns at this trim, as far beyond zero.
        const beyond = -Math.sign(curvature) * depth * L;
        const [cos, sin] = [Math.cos(pitch), Math.sin(pitch)];
        const x = (l - beyond) * cos - slope * sin;
        const z = -(l - beyond) * sin - slope * cos;
        const high = Math.max(...spec.shape.top.map(({ v }) => v));
        fc.pre(Math.abs(x) < 0.4 * L && Math.abs(G.z + z) < high);
        hollows++;
        const floater = new Floater(assemble(moved(spec, x, z)), density);
        const found = floater.equilibrium();
        const listed = found ? [found, ...found.others].map((at) => at.pitch) : [];
        const walk = walked(floater);
        const near = (a: number, b: number): boolean =>
          Math.abs(a - b - 2 * Math.PI * Math.round((a - b) / (2 * Math.PI))) < 0.02 * deg;
        const missed = walk.filter(
          ({ pitch: p, deep }) => deep > SHALLOW * L && !listed.some((q) => near(p, q)),
        );
        const more = listed.filter((p) => !walk.some((q) => near(p, q.pitch)));
        const degrees = (p: number): string => `${(p / deg).toFixed(3)}°`;
        const words = (list: readonly Fall[]): string =>
          list.map((f) => `${degrees(f.pitch)} (${(f.deep / L).toExponential(1)})`).join(", ");
        if (missed.length + more.length > 0)
          throw new Error(
            `missed ${words(missed)}, more ${more.map(degrees).join(", ")}; the walk finds ${words(walk)}`,
          );
      },
    ),
    { seed: SEED, numRuns: COUNT, endOnFailure: true },
  );
  expect(hollows).toBeGreaterThanOrEqual(COUNT);
});
