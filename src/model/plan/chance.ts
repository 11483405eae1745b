import { atan2, cbrt, cos, exp, hypot, sin, square } from "../base";
import type { Vec } from "../base";
import { assemble } from "../bait";
import type { Bait, UncertaintySpec } from "../bait";
import { draws, LEAST_BG, wrap } from "../statics";
import type { Axes, Goal } from "./goal";
import type { Load, Seat } from "./seats";
import type { PlanChance } from "./types";

/** Half the width of a central 95 % of a normal distribution, in standard deviations. */
export const Z95 = 1.959964;

/**
 * Greatest half-width that a plan's 95 % trim band may have where there is a choice, rad. With a wider band the trim is a
 * matter of luck.
 */
export const SURE_TRIM = (15 * Math.PI) / 180;

/** Variances of the finished bait's net buoyancy (kg²) and of B − G in axes at the wanted trim (m²). */
export interface Spread {
  readonly net: number;
  readonly pp: number;
  readonly pq: number;
  readonly qq: number;
}

const PILOT = "ballast to come";

/**
 * Spread of everything but the plan's own ballast. The bait gets the mass that the plan will add as one exact point at `at`,
 * because that mass dilutes what the other errors do to G. Each input then errs by one standard deviation, up and down.
 */
export function spreadWithout(bait: Bait, density: number, mass: number, at: Vec | null, axes: Axes): Spread {
  const pilot =
    at === null || !(mass > 0)
      ? bait
      : assemble(
          {
            ...bait.spec,
            fittings: [
              ...bait.spec.fittings,
              {
                name: PILOT,
                at,
                mass,
                // The density is so great that the point takes next to no wood away.
                stuff: { name: PILOT, density: 1e6, kind: "metal", given: true },
                where: "inside",
              },
            ],
          },
          { drawn: bait.drawn },
        );
  let [net, pp, pq, qq] = [0, 0, 0, 0];
  for (const { input, up, down } of draws(pilot, density, 0, 1).inputs) {
    if (input.startsWith(`${PILOT}:`)) continue;
    const n = (up.net - down.net) / 2;
    const dx = (down.x - up.x) / 2;
    const dz = (down.z - up.z) / 2;
    const p = dx * axes.cos - dz * axes.sin;
    const q = dx * axes.sin + dz * axes.cos;
    net += n * n;
    pp += p * p;
    pq += p * q;
    qq += q * q;
  }
  return { net, pp, pq, qq };
}

/**
 * The spread with the errors of the plan's loads: their places, their holes and their filler, as `statics/inputs.ts` counts
 * them. A given hole counts there as a cylinder as deep as wide, whose volume errs by √5 σ/d.
 *
 * @param mass of the finished bait, kg
 */
export function withLoads(
  spread: Spread,
  placed: readonly { readonly load: Load; readonly seat: Seat }[],
  mass: number,
  filler: number,
  bodyDensity: number,
  u: UncertaintySpec,
): Spread {
  let { net, pp, qq } = spread;
  for (const { load, seat } of placed) {
    const place = square((u.drawnLength * seat.mass) / mass);
    pp += place;
    qq += place;
    net += square(load.massDeviation);
    if (!seat.bore) continue;
    const { volume } = seat.bore;
    const hole = (Math.sqrt(5) * u.drawnLength * volume) / cbrt((4 * volume) / Math.PI);
    const fill = Math.max(0, volume - load.own) * filler * u.plastic;
    net += square(hole * (filler - bodyDensity)) + square(fill);
  }
  return { net, pp, pq: spread.pq, qq };
}

/** Cumulative normal distribution. Error function: Abramowitz & Stegun (1964) 7.1.26, absolute error below 1.5e-7. */
export function normalBelow(x: number): number {
  const a = Math.abs(x) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * a);
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (poly * exp(-a * a)) / 2;
  return x < 0 ? tail : 1 - tail;
}

/**
 * Chance to meet a goal, linearised: net buoyancy and B − G are taken as normal, and net as independent of the trim. This
 * is good enough to compare many plans. What is told of a plan comes from draws.
 *
 * @param across P and Q of B − G, m (see `Axes`)
 */
export function linearChance(goal: Goal, s: Spread, net: number, across: number, along: number): number {
  const below = (margin: number, variance: number): number =>
    variance > 0 ? normalBelow(margin / Math.sqrt(variance)) : margin >= 0 ? 1 : 0;
  const off = net - goal.net;
  const inNet = below(goal.netTolerance - off, s.net) - (1 - below(goal.netTolerance + off, s.net));
  const margin = below(along - goal.leastBG, s.qq);
  if (goal.trim === null || !(goal.trimTolerance < Math.PI / 2)) return Math.max(0, inNet) * margin;
  // |P| ≤ Q tan τ means two half-planes. Only where Q < 0 can both be missed, and `margin` leaves that out.
  const tan = sin(goal.trimTolerance) / cos(goal.trimTolerance);
  const both = s.qq * tan * tan + s.pp;
  const inTrim =
    below(along * tan - across, both - 2 * tan * s.pq) +
    below(along * tan + across, both + 2 * tan * s.pq) -
    1;
  return Math.max(0, inNet) * Math.max(0, inTrim) * margin;
}

/** Value below which a share of the sorted values lies; a straight line between two of them. */
function quantile(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const i = Math.floor(at);
  const a = sorted[i] ?? NaN;
  return a + (at - i) * ((sorted[i + 1] ?? a) - a);
}

/** What a finished bait is like under the maker's uncertainties, by seeded draws (docs/model.md §3, Uncertainty). */
export function chanceOf(bait: Bait, goal: Goal, samples: number): PlanChance {
  const { own, all } = draws(bait, goal.density, samples, 1);
  const middle = atan2(-own.x, -own.z);
  const nets = new Float64Array(samples);
  const trims: number[] = [];
  let met = 0;
  let sinks = 0;
  all.forEach(({ net, x, z }, i) => {
    const trim = atan2(-x, -z);
    const BG = hypot(x, z);
    nets[i] = net;
    if (net < 0) sinks++;
    if (BG >= LEAST_BG) trims.push(middle + wrap(trim - middle));
    const right = goal.trim === null ? -z > 0 : Math.abs(wrap(trim - goal.trim)) <= goal.trimTolerance;
    if (right && BG >= goal.leastBG && Math.abs(net - goal.net) <= goal.netTolerance) met++;
  });
  nets.sort();
  const sorted = Float64Array.from(trims).sort();
  return {
    samples,
    chance: met / samples,
    net: [quantile(nets, 0.025), quantile(nets, 0.975)],
    trim: trims.length >= 0.95 * samples ? [quantile(sorted, 0.025), quantile(sorted, 0.975)] : null,
    chanceOfSinking: sinks / samples,
  };
}

/** Half the width of a plan's trim band, rad; π where there is none. */
export const trimHalfWidth = ({ trim }: PlanChance): number =>
  trim === null ? Math.PI : (trim[1] - trim[0]) / 2;
