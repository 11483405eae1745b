import { distance } from "../base";
import type { Vec } from "../base";
import { insideOutline, outline } from "../shape";
import type { Shape } from "../shape";
import { BaitError, inMm } from "./error";
import type { Stuff, Warning } from "./types";

/** Checks of single numbers that several kinds of parts share. Each throws a BaitError that names the place. */

export function finite(path: string, value: number, unit: string): void {
  least(path, value, -Infinity, true, unit);
}
export const above0 = (path: string, value: number, unit: string): void => least(path, value, 0, true, unit);
export const atLeast0 = (path: string, value: number, unit: string): void =>
  least(path, value, 0, false, unit);

function least(path: string, value: number, bound: number, strict: boolean, unit: string): void {
  const ok = Number.isFinite(value) && (strict ? value > bound : value >= bound);
  if (!ok)
    throw new BaitError(
      path,
      `${value} ${unit} is not a possible value`,
      `Give a number ${strict ? "above" : "of at least"} ${bound}`,
    );
}

export function point(path: string, p: Vec): void {
  if (!Number.isFinite(p.x) || !Number.isFinite(p.z))
    throw new BaitError(path, `(${p.x}, ${p.z}) is not a point`, "Give a station and a height");
}

export function stuff(path: string, s: Stuff): void {
  if (!(Number.isFinite(s.density) && s.density > 0))
    throw new BaitError(
      path,
      `density ${s.density} kg/m³ of "${s.name}" is not possible`,
      "Give a density above 0",
    );
}

/**
 * Points of the outline to which a distance is measured: on a bait of 100 mm neighbours lie within a millimetre of each
 * other.
 */
const OUTLINE_POINTS = 240;

/**
 * Checks that something that counts as inside lies in the body, seen from the side. It is refused where nothing of it lies
 * within the outline: there is no wood for its hole. It is odd but possible where only its middle lies outside.
 *
 * @param radius of the ball of its volume, m
 */
export function within(what: string, path: string, at: Vec, radius: number, body: Shape): Warning[] {
  if (insideOutline(body, at)) return [];
  const away = Math.min(...outline(body, OUTLINE_POINTS).map((p) => distance(p, at)));
  if (away > radius + 0.5e-3)
    throw new BaitError(
      path,
      `this ${what} counts as inside, but it lies outside the body, ${inMm(Math.round(away * 1e4) / 1e4)} from its outline`,
      'Move it into the body, or choose "outside" for it',
    );
  return [{ path, text: `This ${what} counts as inside, but its middle is not within the outline.` }];
}
