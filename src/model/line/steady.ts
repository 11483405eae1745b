import type { Vec } from "../base";
import { asinh, brent, cos, hypot, pow, sin } from "../base";
import { cylinderDrag } from "../forces";
import type { LineSpec, SteadyLine, Tackle } from "./types";

/**
 * Tangential drag coefficient, on the wetted area πd per metre of line. Cylinders of 0.89 and 2.5 mm, 30 to 150 m long, towed
 * along their axis at 2.4 to 17.4 m/s, had two to three times the friction of a flat plate of their length, and their boundary
 * layer was turbulent (ASME FEDSM 2002, Proc. vol. 36150, p. 1123, abstract). The plate's is 0.075/(log₁₀Re − 2)² (ITTC 1957):
 * 20 m of line at 1 m/s have Re = 2e7, so C_t is 0.0053 to 0.0080. The choice in that range is ours.
 */
export const TANGENTIAL_DRAG = 0.0075;

/** What the line runs through. SI; viscosity dynamic. */
export interface LineWater {
  readonly density: number;
  readonly viscosity: number;
  readonly gravity: number;
}

/** Overrides for comparison with published solutions; the program itself uses none. */
export interface LineModelOptions {
  /** C_n as a function of Re_n; default the cylinder curve. */
  readonly normalDrag?: (reynolds: number) => number;
  /** C_t on the wetted area; default TANGENTIAL_DRAG. */
  readonly tangentialDrag?: number;
  /** Wet weight N/m; default from the densities. */
  readonly wetWeight?: number;
  /** Relative tolerance of the integration. */
  readonly tolerance?: number;
}

/** Forces per metre on a line in a stream of speed U: normal(φ) without its sin φ|sin φ|, tangential, wet weight, weight in air. N/m. */
export interface LineLoads {
  normal(phi: number): number;
  readonly tangential: number;
  readonly wetWeight: number;
  readonly airWeight: number;
}

/**
 * Loads per metre: f_n = ½ρ C_n d U² with Re_n = U|sin φ|d/ν, f_t = ½ρ π d C_t U²,
 * w = (ρ_l − ρ) g π d²/4, in air ρ_l g π d²/4 (docs/model.md §7).
 */
export function lineLoads(
  line: LineSpec,
  water: LineWater,
  speed: number,
  options: LineModelOptions = {},
): LineLoads {
  const { diameter: d, density: rhoLine } = line;
  const { density: rho, gravity: g } = water;
  const nu = water.viscosity / rho;
  const q = 0.5 * rho * speed * speed * d;
  const section = (Math.PI * d * d) / 4;
  const normalDrag = options.normalDrag ?? cylinderDrag;
  return {
    normal(phi) {
      const vn = speed * Math.abs(sin(phi));
      return vn < 1e-9 ? 0 : q * normalDrag((vn * d) / nu);
    },
    tangential: q * Math.PI * (options.tangentialDrag ?? TANGENTIAL_DRAG),
    wetWeight: options.wetWeight ?? (rhoLine - rho) * g * section,
    airWeight: rhoLine * g * section,
  };
}

/**
 * Height (m) that a length l of line gains in air from a point with tension T (N) at angle φ. It is a catenary:
 * (H/w)[√(1+(t+wl/H)²) − √(1+t²)], written without a division by H or w, so that both may be 0.
 */
export function catenaryRise(tension: number, phi: number, airWeight: number, length: number): number {
  const h = tension * cos(phi);
  const v = tension * sin(phi);
  const top = v + airWeight * length;
  const sum = hypot(h, top) + tension;
  return sum > 0 ? (length * (v + top)) / sum : length;
}

/** Horizontal distance (m) of the same piece of line. */
export function catenaryRun(tension: number, phi: number, airWeight: number, length: number): number {
  const h = tension * cos(phi);
  const v = tension * sin(phi);
  if (h <= 0) return 0;
  const a = (airWeight * length) / h;
  // (H/w)[asinh(t + wl/H) − asinh(t)]; where the weight is 0, its series
  return a < 1e-8 ? length * cos(phi) : (length / a) * (asinh(v / h + a) - asinh(v / h));
}

/** State along the line: tension (N), angle above the horizontal (rad), height and distance from the eye (m). */
interface LinePoint {
  t: number;
  phi: number;
  z: number;
  x: number;
}

function slope(p: LinePoint, loads: LineLoads): LinePoint {
  const s = sin(p.phi);
  const c = cos(p.phi);
  // dT/ds = f_t cos φ|cos φ| + w sin φ;  T dφ/ds = −f_n sin φ|sin φ| + w cos φ
  return {
    t: loads.tangential * c * Math.abs(c) + loads.wetWeight * s,
    phi: (-loads.normal(p.phi) * s * Math.abs(s) + loads.wetWeight * c) / p.t,
    z: s,
    x: c,
  };
}

const KEYS = ["t", "phi", "z", "x"] as const;

// Dormand & Prince 1980, J. Comput. Appl. Math. 6:19–26, the 5(4) pair.
const DP: readonly (readonly number[])[] = [
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const DP_ERROR = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];

function step(from: LinePoint, h: number, loads: LineLoads): { to: LinePoint; error: LinePoint } {
  const k: LinePoint[] = [slope(from, loads)];
  let to = from;
  for (const row of DP) {
    const next: LinePoint = { ...from };
    for (const key of KEYS) {
      let sum = 0;
      for (let i = 0; i < row.length; i++) sum += (row[i] ?? 0) * (k[i]?.[key] ?? 0);
      next[key] += h * sum;
    }
    to = next;
    k.push(slope(next, loads));
  }
  const error: LinePoint = { t: 0, phi: 0, z: 0, x: 0 };
  for (const key of KEYS) {
    let sum = 0;
    for (let i = 0; i < DP_ERROR.length; i++) sum += (DP_ERROR[i] ?? 0) * (k[i]?.[key] ?? 0);
    error[key] = h * sum;
  }
  return { to, error };
}

/**
 * Follows the wet line up from the eye. Calls `visit` after each accepted step; integration ends at `length`,
 * or where `stop` (of arc length and point) first falls to zero, which is found inside its step.
 *
 * @param tension N at the eye, > 0
 * @param phi rad above the horizontal at the eye
 * @param length m
 * @returns arc length reached and the point there (height and distance from the eye, m)
 */
export function followLine(
  loads: LineLoads,
  tension: number,
  phi: number,
  length: number,
  stop: ((s: number, p: Readonly<LinePoint>) => number) | null,
  visit: ((s: number, p: Readonly<LinePoint>) => void) | null,
  tolerance = 1e-9,
): { s: number; point: LinePoint; stopped: boolean } {
  if (!(tension > 0) || !Number.isFinite(phi))
    throw new RangeError(
      `A towed line needs a tension above 0 and a finite angle, not ${tension} N at ${phi} rad.`,
    );
  let s = 0;
  let p: LinePoint = { t: tension, phi, z: 0, x: 0 };
  let h = Math.min(length, 0.01);
  for (let n = 0; n < 100_000 && s < length; n++) {
    h = Math.min(h, length - s);
    const { to, error } = step(p, h, loads);
    const size = Math.max(
      Math.abs(error.t) / (tolerance * (Math.abs(p.t) + 1e-6)),
      Math.abs(error.phi) / tolerance,
      Math.abs(error.z) / (tolerance * (1 + s)),
      Math.abs(error.x) / (tolerance * (1 + s)),
    );
    if (!(size <= 1) || !(to.t > 0)) {
      h *= Number.isFinite(size) ? Math.max(0.2, 0.9 * pow(size, -0.2)) : 0.2;
      if (h < 1e-12) throw new RangeError(`The line's tension falls to nothing ${s} m above the bait.`);
      continue;
    }
    if (stop && stop(s + h, to) <= 0) {
      const at = (part: number) => step(p, part, loads).to;
      const part = stop(s, p) <= 0 ? 0 : brent((x) => stop(s + x, at(x)), 0, h, 1e-12);
      const point = part > 0 ? at(part) : p;
      visit?.(s + part, point);
      return { s: s + part, point, stopped: true };
    }
    s += h;
    p = to;
    visit?.(s, p);
    h *= Math.min(5, 0.9 * pow(Math.max(size, 1e-10), -0.2));
  }
  return { s, point: p, stopped: false };
}

/**
 * Steady shape of a line that tows the bait at a speed, from the tie eye to the rod tip. The part in water follows its
 * differential equations, the rest is a catenary in air. The line leaves the water at the first point from the bait where
 * the rest of it would gain just the rod tip's height (docs/model.md §7).
 *
 * @param speed m/s through the water, > 0
 * @param tension N at the eye, > 0
 * @param phi rad above the horizontal at the eye
 */
export function steadyLine(
  tackle: Tackle,
  water: LineWater,
  speed: number,
  tension: number,
  phi: number,
  options: LineModelOptions = {},
): SteadyLine {
  const loads = lineLoads(tackle.line, water, speed, options);
  const above = (s: number, p: Readonly<LinePoint>) =>
    catenaryRise(p.t, p.phi, loads.airWeight, tackle.lineOut - s) - tackle.rodTip;
  const points: Vec[] = [{ x: 0, z: 0 }];
  const start: LinePoint = { t: tension, phi, z: 0, x: 0 };
  if (above(0, start) <= 0)
    return {
      depth: 0,
      wetLength: 0,
      reach: 0,
      tensionAtSurface: tension,
      tensionAtRod: tension,
      points,
      meetsRod: false,
    };
  const { s, point } = followLine(
    loads,
    tension,
    phi,
    tackle.lineOut,
    above,
    (_, p) => points.push({ x: p.x, z: p.z }),
    options.tolerance,
  );
  const rest = tackle.lineOut - s;
  const airPieces = 12;
  for (let i = 1; i <= airPieces; i++) {
    const l = (rest * i) / airPieces;
    points.push({
      x: point.x + catenaryRun(point.t, point.phi, loads.airWeight, l),
      z: point.z + catenaryRise(point.t, point.phi, loads.airWeight, l),
    });
  }
  return {
    depth: point.z,
    wetLength: s,
    reach: point.x + catenaryRun(point.t, point.phi, loads.airWeight, rest),
    tensionAtSurface: point.t,
    tensionAtRod: hypot(point.t * cos(point.phi), point.t * sin(point.phi) + loads.airWeight * rest),
    points,
    meetsRod: true,
  };
}
