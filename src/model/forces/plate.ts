import { atan2, exp, pow, square } from "../base";

/**
 * A flat plate at incidence, of one aspect ratio, 0–180°: fixed numbers of docs/model.md §9.
 * Branch A is Polhamus' suction analogy (NASA TN D-3767, 1966; Lamar & Gloss 1975, NASA TN D-8090), B the
 * Hoerner–Lindenburg post-stall form (ECN-C--03-025, 2003); the blend σ is fitted to Eiffel 1911, Lamar 1974 and
 * Pelletier & Mueller 2000 (rms 0.056).
 */
export interface FlatPlate {
  readonly aspect: number;
  /** Kp = 2π AR/[AR + 2(AR+4)/(AR+2)]; Kv = 2.87/√(1+(AR/2.22)²). */
  readonly kp: number;
  readonly kv: number;
  /** x_p = 0.25 [1 − 1/(1 + 1.136 AR + 0.759 AR²)]: centre of the attached-flow part, chords from the leading edge. */
  readonly xp: number;
  /** α_s = 13.9 + 41.1/[1+(AR/1.28)^2.71], degrees: where the blend is even. */
  readonly stall: number;
  /** 0.41 (1 − e^(−17/AR)). */
  readonly tip: number;
  /** C_N(90°). */
  readonly broadside: number;
}

/** What a plate feels at one incidence. Written to, so that the hot path allocates nothing. */
export interface PlateForce {
  /** Normal force over ½ρ S |v|². */
  cn: number;
  /** Centre of pressure in chords from the leading edge at 0°, the same edge for all angles. */
  xcp: number;
}

const DEGREES = 57.29577951308232;

/**
 * @param aspect span²/area, above 0
 */
export function flatPlate(aspect: number): FlatPlate {
  if (!(aspect > 0 && aspect < Infinity))
    throw new RangeError(`plate of aspect ratio ${aspect}: give width and length above 0`);
  const plate = {
    aspect,
    kp: (2 * Math.PI * aspect) / (aspect + (2 * (aspect + 4)) / (aspect + 2)),
    kv: 2.87 / Math.sqrt(1 + square(aspect / 2.22)),
    xp: 0.25 * (1 - 1 / (1 + 1.136 * aspect + 0.759 * aspect * aspect)),
    stall: 13.9 + 41.1 / (1 + pow(aspect / 1.28, 2.71)),
    tip: 0.41 * (1 - exp(-17 / aspect)),
    broadside: NaN,
  };
  const out = { cn: 0, xcp: 0 };
  plateAt({ ...plate, broadside: 1 }, 1, 0, out);
  plate.broadside = out.cn;
  return plate;
}

/**
 * C_N and x_cp at the incidence whose sine and cosine are given (sine ≥ 0; cosine below 0 beyond 90°): C_N = (1−σ)(Kp s c +
 * Kv s²) + σ B; x_cp is the mean of the parts' own centres, weighted by the parts; beyond 90° C_N(180° − α) and 1 −
 * x_cp(180° − α). Every part contains a factor s, which is taken out first: so at 0° the force is 0 and x_cp is its limit.
 */
export function plateAt(plate: FlatPlate, sine: number, cosine: number, out: PlateForce): void {
  const s = sine;
  const c = cosine < 0 ? -cosine : cosine;
  const degrees = atan2(s, c) * DEGREES;
  // σ = 1/{1 + exp[−(α − α_s)/2.73]}
  const sigma = 1 / (1 + exp((plate.stall - degrees) / 2.73));
  const attached = (1 - sigma) * plate.kp * c;
  const vortex = (1 - sigma) * plate.kv * s;
  // B = 1.98 [1/(0.56+0.44 s) − 0.41 (1 − e^(−17/AR))] s
  const stalled = sigma * 1.98 * (1 / (0.56 + 0.44 * s) - plate.tip);
  const sum = attached + vortex + stalled;
  const x = (attached * plate.xp + vortex * 0.5 + stalled * (0.5 - 0.175 * (1 - degrees / 90))) / sum;
  out.cn = sum * s;
  out.xcp = cosine < 0 ? 1 - x : x;
}

/**
 * A plate joined to a body does not show the isolated plate's overshoot (flume tests with lips: Nippon Suisan Gakkaishi
 * 68(6), 2002): C_N/(1 + (C_N/C_N(90°))⁸)^⅛. At 90° this is 2^−⅛ = 0.917 of the plate's value, by design.
 */
export function joined(cn: number, broadside: number): number {
  const r = cn / broadside;
  const r2 = r * r;
  const r4 = r2 * r2;
  return cn / Math.sqrt(Math.sqrt(Math.sqrt(1 + r4 * r4)));
}
