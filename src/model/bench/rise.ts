import { cos as cosine, exp, expm1, log, log1p, pow, random, sin as sine, square } from "../base";
import type { Bait } from "../bait";
import { massMatrix, prepareSwimmer } from "../forces";
import type { SwimmerOptions, Surroundings } from "../forces";
import { draws, restTrim } from "../statics";
import { terminalRise } from "../tow";
import { netOf } from "./net";
import { quantile } from "./repeats";
import type { RiseBand } from "./types";
import { shifted } from "./with";

export type RiseOptions = Partial<SwimmerOptions>;

/** The bait with another net buoyancy (kg), G and B where they are. */
export const withNet = (bait: Bait, density: number, net: number): Bait =>
  shifted(bait, netOf(bait, density) - net, { x: 0, z: 0 });

/** Standard uncertainty of the drag: ± 20 % as a central 95 %; common practice, no source. */
export const DRAG_DEVIATION = 0.2 / 1.96;

/** G less B, m (x forward, z up), at rest. */
export function offsetOf(bait: Bait): { readonly x: number; readonly z: number } {
  const { G, B } = restTrim(bait);
  return { x: G.x - B.x, z: G.z - B.z };
}

/** Least net force with which a rise is worked out, kg: below it a release takes minutes to settle. */
const LEAST_NET = 0.02e-3;

/** Net forces and speeds of one side of neutral, rising: v is a straight line in log v against log net between two of them. */
type Arm = readonly { readonly net: number; readonly speed: number }[];

/** Speed at a net force (kg, above 0) on an arm; beyond its ends the last line goes on. */
function onArm(arm: Arm, net: number): number {
  let i = 1;
  while (i < arm.length - 1 && (arm[i]?.net ?? Infinity) < net) i++;
  const a = arm[i - 1];
  const b = arm[i];
  if (!a || !b) throw new Error("an arm needs two points");
  const q = log(b.speed / a.speed) / log(b.net / a.net);
  return net > 0 ? a.speed * pow(net / a.net, q) : 0;
}

/**
 * Steady rise as a function of net buoyancy and the offset of G from B, near a bait: on each side of neutral through terminal
 * rises at a quarter, once and four times its net force, or as much as it can have (v ~ √net for a steady attitude, less where it turns as it goes
 * faster), and relative slopes with the offset.
 */
export class RiseCurve {
  readonly #up: Arm;
  readonly #down: Arm;
  readonly #slope: { readonly x: number; readonly z: number };
  readonly #offset: { readonly x: number; readonly z: number };
  readonly net: number;

  constructor(
    readonly bait: Bait,
    readonly around: Surroundings,
    options: RiseOptions = {},
  ) {
    const { density } = around;
    this.net = netOf(bait, density);
    const speedOf = (b: Bait): number => Math.abs(terminalRise(b, around, options).speed);
    const size = Math.max(Math.abs(this.net), LEAST_NET);
    const sign = this.net < 0 ? -1 : 1;
    const arm = (side: 1 | -1, shares: readonly number[]): Arm => {
      const points = shares.map((share) => ({
        net: share * size,
        speed: speedOf(withNet(bait, density, side * share * size)),
      }));
      points.forEach((p, i) => {
        const before = points[i - 1];
        if (!(p.speed > (before?.speed ?? 0)))
          throw new RangeError(
            `"${bait.spec.name}" does not move faster with ${(p.net * 1e3).toFixed(2)} g of net force (${p.speed} m/s) than with less: its rise cannot be read from a curve`,
          );
      });
      return points;
    };
    // A rising bait cannot float by more than what it displaces weighs: a light one has less than four times its net to try.
    const most = sign > 0 ? (0.98 * density * bait.rigid({ end: "mid", face: "floor" }).displaced) / size : 4;
    const own = arm(sign, most > 1.1 ? [0.25, 1, Math.min(4, most)] : [0.25, 1]);
    const other = arm(sign > 0 ? -1 : 1, [0.25, 1]);
    this.#up = sign > 0 ? own : other;
    this.#down = sign > 0 ? other : own;
    this.#offset = offsetOf(bait);
    const away = withNet(bait, density, sign * size);
    const step = 5e-5;
    const slope = (x: number, z: number): number => {
      const a = speedOf(shifted(away, 0, { x, z }));
      const b = speedOf(shifted(away, 0, { x: -x, z: -z }));
      return log(a / b) / (2 * step);
    };
    this.#slope = { x: slope(step, 0), z: slope(0, step) };
  }

  /** Steady rise, m/s, up positive, for a net buoyancy (kg) and an offset of G from B (m). */
  speed(net: number, offset: { readonly x: number; readonly z: number } = this.#offset): number {
    const turned = this.#slope.x * (offset.x - this.#offset.x) + this.#slope.z * (offset.z - this.#offset.z);
    // A slope taken at the bait does not reach far: a half and twice are taken as the end of it (common practice, no source).
    const share = exp(Math.max(-Math.LN2, Math.min(Math.LN2, turned)));
    return Math.sign(net) * onArm(net < 0 ? this.#down : this.#up, Math.abs(net)) * share;
  }
}

/**
 * Net buoyancy (kg) with which a bait rises (above 0) or sinks (below 0) steadily at a speed (m/s), all else as it is: the
 * inverse of the terminal rise by secant steps in log net against log speed. `exponent`: p of net ~ speed^p there.
 *
 * @throws RangeError where no net buoyancy within a kilogram gives that speed
 */
export function netForSpeed(
  bait: Bait,
  around: Surroundings,
  speed: number,
  options: RiseOptions = {},
): { readonly net: number; readonly exponent: number } {
  if (!(Number.isFinite(speed) && speed !== 0))
    throw new RangeError(`speed ${speed} m/s: give the speed of a rise or sink`);
  const sign = Math.sign(speed);
  const at = (net: number): number => {
    const v = sign * terminalRise(withNet(bait, around.density, sign * net), around, options).speed;
    return v > 0 ? log(v) : -Infinity;
  };
  const wanted = log(Math.abs(speed));
  let net = 0.2e-3;
  let v = at(net);
  let exponent = 2;
  for (let k = 0; k < 25; k++) {
    const step = Math.max(-3, Math.min(3, exponent * (wanted - v)));
    const next = net * exp(step);
    // No bait floats by more than the water that it displaces weighs; and a kilogram sinks everything here.
    if (
      !(next < (sign > 0 ? 0.98 * around.density * bait.rigid({ end: "mid", face: "floor" }).displaced : 1))
    )
      break;
    const vNext = at(next);
    if (Number.isFinite(vNext - v) && Math.abs(step) > 1e-5) {
      const p = step / (vNext - v);
      if (p > 0.5 && p < 4) exponent = p;
    }
    net = next;
    v = vNext;
    if (Math.abs(v - wanted) < 1e-6) return { net: sign * net, exponent };
  }
  throw new RangeError(
    `no net buoyancy moves "${bait.spec.name}" at ${Number(speed.toPrecision(3))} m/s: check the time and the height of the marks`,
  );
}

/**
 * Length λ (m) over which a bait released from rest comes up to speed: v² = v∞²(1 − e^(−2x/λ)), λ = m_eff v∞²/(|net| g), m_eff
 * its mass with the water that moves with it along the vertical (quadratic drag, G and attitude steady).
 */
export function runUpLength(bait: Bait, around: Surroundings, speed: number, net: number): number {
  const pitch = restTrim(bait).pitch ?? 0;
  const M = massMatrix(
    prepareSwimmer(bait),
    { u: 0, w: 0, q: 0, pitch, X: 0, Z: 0 },
    { ...around, surface: false, current: { x: 0, z: 0 }, depth: Infinity },
  );
  const sin = sine(pitch);
  const cos = cosine(pitch);
  const effective = M.a11 * sin * sin + 2 * M.a13 * sin * cos + M.a33 * cos * cos;
  return (effective * speed * speed) / (Math.abs(net) * around.gravity);
}

/** acosh(e^y), without overflow. */
const acoshExp = (y: number): number => y + log1p(Math.sqrt(-expm1(-2 * y)));

/** Steady speed (m/s) from a time (s) over a height (m) that begins a run-up (m) after a release from rest: x = λ ln cosh(v∞t/λ). */
export const steadySpeed = (height: number, time: number, runUp: number, lambda: number): number =>
  (lambda / time) * (acoshExp((runUp + height) / lambda) - acoshExp(runUp / lambda));

/** Run-up after which a share of the steady speed is reached, m. */
export const runUpFor = (share: number, lambda: number): number => (-lambda / 2) * log1p(-share * share);

/**
 * Band of the steady rise, and what each input brings to it: the draws of net buoyancy and of G's offset from B
 * (docs/model.md §3, Uncertainty), each read off the rise curve, with the drag's own ± 20 %.
 */
export function riseBand(
  bait: Bait,
  around: Surroundings,
  options: {
    readonly samples?: number;
    readonly seed?: number;
    readonly curve?: RiseCurve;
  } & RiseOptions = {},
): RiseBand {
  const { samples = 10_000, seed = 1, curve: given, ...calibrated } = options;
  if (!(Number.isInteger(samples) && samples >= 100))
    throw new RangeError(`${samples} draws are too few for a band: use 100 or more`);
  const curve = given ?? new RiseCurve(bait, around, calibrated);
  const drawn = draws(bait, around.density, samples, seed);
  const normal = random(seed + 1);
  // More drag in all directions: the same attitude and forces at a lower dynamic pressure, v ~ 1/√(1 + e).
  const dragged = (e: number): number => 1 / Math.sqrt(Math.max(0.05, 1 + DRAG_DEVIATION * e));
  const speeds = drawn.all.map((d) => curve.speed(d.net, d) * dragged(normal.normal()));
  const sorted = [...speeds].sort((a, b) => a - b);
  const mean = speeds.reduce((s, v) => s + v, 0) / samples;
  const own = drawn.own;
  const single = [
    ...drawn.inputs.map(({ input, up, down }) => ({
      input,
      speed: Math.abs(curve.speed(up.net, up) - curve.speed(down.net, down)) / 2,
    })),
    {
      input: "drag",
      speed: (Math.abs(curve.speed(own.net, own)) * (dragged(-1) - dragged(1))) / 2,
    },
  ];
  const variance = single.reduce((s, c) => s + square(c.speed), 0);
  return {
    samples,
    seed,
    speed: [quantile(sorted, 0.025), quantile(sorted, 0.975)],
    deviation: Math.sqrt(speeds.reduce((s, v) => s + square(v - mean), 0) / samples),
    contributions: single
      .map((c) => ({ ...c, share: variance > 0 ? square(c.speed) / variance : 0 }))
      .sort((a, b) => b.share - a.share),
  };
}
