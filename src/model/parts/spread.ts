import { exp, log, square } from "../base";
import type { MaterialClass, Stuff, UncertaintySpec } from "./types";

/**
 * Standard uncertainty of a material's density, as a fraction. It is that of its class, or the published spread of the
 * material where this is wider: balsa, tooling board and primers vary more than woods and plastics do. A value in the file
 * for the class is the maker's own, and holds as it is.
 *
 * @param as the class that counts for a material of no named class
 */
export function densitySpread(uncertainty: UncertaintySpec, stuff: Stuff, as: "wood" | "plastic"): number {
  const named: MaterialClass = stuff.kind === "other" ? as : stuff.kind;
  const usual =
    named === "wood" ? uncertainty.wood : named === "metal" ? uncertainty.metal : uncertainty.plastic;
  if (stuff.spread === undefined || uncertainty.given?.includes(named) === true) return usual;
  return Math.max(usual, stuff.spread);
}

/**
 * Where the uncertainty is below this share of the value, a normal error makes it negative in no draw that matters: 4
 * standard deviations.
 */
const NORMAL_UP_TO = 0.25;

/**
 * A size, mass or density in one draw: its value in the file, its standard uncertainty (in the same unit), and the draw's
 * error in standard deviations. Where the uncertainty is a small share of the value, the error is normal. Where it is a
 * large share, the draw is lognormal with the same mean and standard deviation, because none of these can be negative: ln x
 * has the variance s² = ln(1 + σ²/μ²) and the mean ln μ − s²/2 (Aitchison & Brown 1957, The Lognormal Distribution, §2.3).
 */
export function drawn(value: number, sigma: number, error: number): number {
  if (sigma <= NORMAL_UP_TO * value) return value + sigma * error;
  if (!(value > 0)) return 0;
  const s2 = log(1 + square(sigma / value));
  return value * exp(Math.sqrt(s2) * error - s2 / 2);
}
