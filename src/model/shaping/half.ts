import { acos, cos, pow, tan } from "../base";

/** A point of a half: φ from its own end, and the share of the way from the end's depth to the greatest. */
export interface HalfPoint {
  readonly phi: number;
  readonly share: number;
}

/** Exponents of one half by its fullness. */
function powers(fullness: number): { readonly a: number; readonly p: number } {
  return fullness >= 0.5
    ? { a: 2 + 4 * (fullness - 0.5), p: 0.5 }
    : { a: 2, p: 0.5 + 1.5 * (0.5 - fullness) };
}

/** True where the half of this fullness is hollow towards its end. */
export const isHollow = (fullness: number): boolean => powers(fullness).p > 1;

/** The aim at the share u of the way from the greatest depth to the end: (1 − uᵃ)ᵖ. */
export function aimOf(fullness: number, u: number): number {
  const { a, p } = powers(fullness);
  return pow(Math.max(0, 1 - pow(Math.min(1, Math.max(0, u)), a)), p);
}

/**
 * Where the points of a half stand, as shares of its φ from the end to the greatest depth, by its exponent p: in a full half and
 * in a hollow one, in each from the fullest to the slimmest. A round half wants them spread, a slim one wants one long piece in
 * its middle: there a single cubic follows the form, and many would each bend. A hollow half is level up to its first point: this
 * is kept short. Found by trial for a small greatest distance between curve and form at every place of the peak.
 */
const PLACES = {
  full: [
    { p: 0.5, at: [0.1, 0.29, 0.49, 0.7, 0.86] },
    { p: 1, at: [0.07, 0.14, 0.8, 0.88, 0.93] },
  ],
  hollow: [
    { p: 1, at: [0.05, 0.13, 0.8, 0.88, 0.93] },
    { p: 1.25, at: [0.08, 0.22, 0.83, 0.88, 0.93] },
  ],
} as const;

function placesOf(p: number): readonly number[] {
  const [from, to] = p > 1 ? PLACES.hollow : PLACES.full;
  const way = (p - from.p) / (to.p - from.p);
  return [0, ...from.at.map((t, i) => t + way * ((to.at[i] ?? 1) - t)), 1];
}

/** By this share a slope keeps off the bound at which its piece would bend the other way: far more than round-off. */
const SURE = 1e-3;

/**
 * The points of a half that falls from its greatest depth to its end without a wave.
 *
 * The curve through them is the monotone cubic in φ (`pchip`), and straight through points of the form it would bend to and fro
 * in slim halves. A piece from φ₀ to φ₁ (width h, secant d, slopes m₀ and m₁) is nowhere hollow in the plane of the drawing,
 * where v″ ≤ v′·cot φ, if m₀ ≥ (6d − 2m₁)/(4 + h·cot φ₀) and m₀ ≤ 3d − 2m₁ + h·m₁·cot φ₁/2. At the greatest depth the slope is
 * 0; from there outward each piece so bounds the slope at its outer point, hence the secant of the next piece. The one that is
 * nearest to the form within these bounds is taken; at last all is stretched to end at the end. A hollow half begins level: the
 * cubic's own end would be round. Its second piece has the one change of curvature, and what lies further in is as in a full half.
 * The bounds are our own, by differentiating the cubic; s = L(1 − cos φ)/2.
 *
 * @param reach share of the length from the end to the greatest depth, above 0 and below 1
 * @returns from the end (0, 0) to the greatest depth (φ, 1)
 */
export function halfPoints(fullness: number, reach: number): readonly HalfPoint[] {
  const { p } = powers(fullness);
  const whole = acos(1 - 2 * reach);
  const phi = placesOf(p).map((t) => t * whole);
  const n = phi.length - 1;
  const level = isHollow(fullness) ? 1 : 0;
  const at = (list: readonly number[], i: number): number => list[i] ?? 0;
  const wide = (i: number): number => at(phi, i) - at(phi, i - 1);
  const aim = (i: number): number =>
    i <= level ? 0 : aimOf(fullness, 1 - (1 - cos(at(phi, i))) / (2 * reach));

  const secants = phi.map(() => 0);
  let slope = 0;
  let v = aim(n - 1);
  secants[n] = (1 - v) / wide(n);
  for (let i = n; i > level + 1; i--) {
    const [h, d, next] = [wide(i), at(secants, i), wide(i - 1)];
    const least = ((6 * d - 2 * slope) / (4 + h / tan(at(phi, i - 1)))) * (1 + SURE);
    const most = 3 * d - 2 * slope + (h * slope) / tan(at(phi, i)) / 2;
    // The slope at the point between two pieces is (w + w′)/(w/outer + w′/inner), as `pchip` has it.
    const [w, w1] = [2 * h + next, h + 2 * next];
    const outer = (m: number): number => {
      const inverse = ((w + w1) / m - w1 / d) / w;
      return inverse > 0 ? 1 / inverse : Infinity;
    };
    const wanted = (v - aim(i - 2)) / next;
    const taken = Math.max(outer(least), Math.min(outer(most), wanted));
    secants[i - 1] = taken;
    slope = (w + w1) / (w / taken + w1 / d);
    v -= taken * next;
  }
  let share = 0;
  return phi.map((angle, i) => {
    share += i > level ? (at(secants, i) * wide(i)) / (1 - v) : 0;
    return { phi: angle, share: i === n ? 1 : share };
  });
}
