import { random, square } from "../base";
import type { Bait } from "../bait";
import { LEAST_BG, wrap } from "./rest";
import { noDraw, Uncertain } from "./uncertain";

export interface BandOptions {
  /** Draws, default 10 000. */
  readonly samples?: number;
  /** Whole number, default 1: the same seed gives the same band. */
  readonly seed?: number;
}

/** What one input's standard uncertainty causes alone. */
export interface Contribution {
  /** "belly hook: mass", "body: density", "weighing reading 1" … */
  readonly input: string;
  /** The standard deviation that it causes in the net buoyancy (kg) and in the rest trim (rad; null where undefined). */
  readonly netBuoyancy: number;
  readonly restTrim: number | null;
  /** Its share of the variance of the net buoyancy and of the rest trim, 0–1. */
  readonly share: number;
  readonly trimShare: number | null;
}

export interface Band {
  readonly samples: number;
  readonly seed: number;
  /** Central 95 % of the draws, kg. */
  readonly netBuoyancy: readonly [number, number];
  /** Standard deviation of the draws, kg. */
  readonly netDeviation: number;
  /**
   * Central 95 %, rad, read on from the bait's own rest trim (so it may pass ±π); null where that is undefined, or where
   * BG falls under 0.1 mm in more than 5 % of the draws.
   */
  readonly restTrim: readonly [number, number] | null;
  /** Share of the draws that sink, 0–1. */
  readonly chanceOfSinking: number;
  /** Inputs by their share in the net buoyancy, greatest first. */
  readonly contributions: readonly Contribution[];
}

/** Value below which a share of the sorted values lies; a straight line between two of them. */
function quantile(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const i = Math.floor(at);
  const a = sorted[i] ?? NaN;
  return a + (at - i) * ((sorted[i + 1] ?? a) - a);
}

/**
 * Bands of net buoyancy and rest trim in water of a density (kg/m³), and the chance of sinking: seeded Monte Carlo over
 * every uncertain input, with the bench readings reconciled anew in each draw (docs/model.md §3, Uncertainty).
 */
export function band(bait: Bait, density: number, options: BandOptions = {}): Band {
  const { samples = 10_000, seed = 1 } = options;
  if (!(Number.isInteger(samples) && samples >= 100))
    throw new RangeError(`${samples} draws are too few for a band: use 100 or more`);
  const model = new Uncertain(bait, density);
  const normals = new Float64Array(model.size);
  const draw = noDraw();

  model.draw(normals, draw);
  const own = draw.pitch;
  const defined = draw.BG >= LEAST_BG;

  const net0 = draw.netBuoyancy;
  const contributions = model.labels.map((input, k) => {
    // One standard deviation up and down: half of the difference, or one side alone where the other leaves no bait.
    const sides = [1, -1].flatMap((x) => {
      normals[k] = x;
      model.draw(normals, draw);
      normals[k] = 0;
      return draw.possible ? [{ net: draw.netBuoyancy, trim: wrap(draw.pitch - own) }] : [];
    });
    const [a = { net: net0, trim: 0 }, b = { net: 2 * net0 - a.net, trim: -a.trim }] = sides;
    return {
      input,
      netBuoyancy: Math.abs(a.net - b.net) / 2,
      restTrim: Math.abs(a.trim - b.trim) / 2,
    };
  });
  const variance = contributions.reduce((s, c) => s + square(c.netBuoyancy), 0);
  const trimVariance = contributions.reduce((s, c) => s + square(c.restTrim), 0);

  const normal = random(seed);
  const nets = new Float64Array(samples);
  const trims: number[] = [];
  let sinks = 0;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < samples; i++) {
    model.next(normal, normals, draw);
    nets[i] = draw.netBuoyancy;
    if (draw.netBuoyancy < 0) sinks++;
    sum += draw.netBuoyancy;
    squares += square(draw.netBuoyancy);
    if (draw.BG >= LEAST_BG) trims.push(own + wrap(draw.pitch - own));
  }
  nets.sort();
  const mean = sum / samples;
  const sortedTrims = Float64Array.from(trims).sort();
  const trimDefined = defined && trims.length >= 0.95 * samples;
  return {
    samples,
    seed,
    netBuoyancy: [quantile(nets, 0.025), quantile(nets, 0.975)],
    netDeviation: Math.sqrt(Math.max(0, squares / samples - mean * mean)),
    restTrim: trimDefined ? [quantile(sortedTrims, 0.025), quantile(sortedTrims, 0.975)] : null,
    chanceOfSinking: sinks / samples,
    contributions: contributions
      .map((c) => ({
        ...c,
        restTrim: trimDefined ? c.restTrim : null,
        share: variance > 0 ? square(c.netBuoyancy) / variance : 0,
        trimShare: trimDefined && trimVariance > 0 ? square(c.restTrim) / trimVariance : null,
      }))
      .sort((a, b) => b.share - a.share),
  };
}
