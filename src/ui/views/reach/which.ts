import type { ReachCell } from "../../../runner";
import type { Units } from "../../state";
import type { ReachWords } from "../../words/reach";

/** Which bib angle gives a depth: read off a small field of angles and speeds. Pure. */

export interface AngleField {
  /** Degrees, rising. */
  readonly angles: readonly number[];
  /** m/s, rising; the tow's own is one of them. */
  readonly speeds: readonly number[];
  /** Speed by speed, within each angle by angle; null where it does not run. m. */
  readonly depths: readonly (number | null)[];
}

export interface WhichAngle {
  /** Angles that give the depth at the speed. */
  readonly angles: readonly number[];
  /** The angle whose depth comes nearest to it at that speed; null where none runs. */
  readonly nearest: { readonly angle: number; readonly depth: number } | null;
  /** The speed next to it at which some angle gives the depth; null where none does. */
  readonly other: { readonly speed: number; readonly angle: number } | null;
}

/** Angles from 15° to 87° in steps of 3°: what the map of this view runs over. */
export const ANGLES: readonly number[] = Array.from({ length: 25 }, (_, i) => 15 + 3 * i);

/** Speeds of the field: the tow's own, and round ones about it, m/s. */
export function speedsOf(speed: number): readonly number[] {
  const round = [-4, -3, -2, -1, 1, 2, 3, 4, 6, 8].map((i) => Math.round(speed * 10 + i) / 10);
  return [...new Set([speed, ...round.filter((one) => one > 0.15 && one !== speed)])].sort((a, b) => a - b);
}

/** `cells`: angle by angle, within each speed by speed, since a bait is assembled once for an angle. */
export const fieldOf = (speeds: readonly number[], cells: readonly ReachCell[]): AngleField => ({
  angles: ANGLES,
  speeds,
  depths: speeds.flatMap((_, i) => ANGLES.map((__, j) => cells[j * speeds.length + i]?.depth ?? null)),
});

/** Angles at which a row of depths passes through one; straight between neighbours that both run. */
function passes(angles: readonly number[], depths: readonly (number | null)[], wanted: number): number[] {
  const found: number[] = [];
  for (let i = 1; i < angles.length; i++) {
    const [a, b] = [depths[i - 1] ?? null, depths[i] ?? null];
    const [from, to] = [angles[i - 1] ?? NaN, angles[i] ?? NaN];
    if (a === null || b === null) continue;
    if (a === wanted) found.push(from);
    else if ((a - wanted) * (b - wanted) < 0) found.push(from + ((to - from) * (wanted - a)) / (b - a));
  }
  if (depths.at(-1) === wanted) found.push(angles.at(-1) ?? NaN);
  return found;
}

/** `present`: the angle that the bait has; of several that serve, the one nearest to it is told first. */
export function whichAngle(
  { angles, speeds, depths }: AngleField,
  wanted: number,
  speed: number,
  present: number,
): WhichAngle {
  const row = (i: number): readonly (number | null)[] =>
    depths.slice(i * angles.length, (i + 1) * angles.length);
  const near = (list: readonly number[]): number[] =>
    [...list].sort((a, b) => Math.abs(a - present) - Math.abs(b - present));
  const own = row(speeds.indexOf(speed));
  const at = near(passes(angles, own, wanted));
  let nearest: WhichAngle["nearest"] = null;
  own.forEach((depth, i) => {
    if (depth !== null && (nearest === null || Math.abs(depth - wanted) < Math.abs(nearest.depth - wanted)))
      nearest = { angle: angles[i] ?? NaN, depth };
  });
  const others = speeds
    .map((one, i) => ({ speed: one, angle: near(passes(angles, row(i), wanted))[0] }))
    .flatMap(({ speed: one, angle }) => (angle === undefined || one === speed ? [] : [{ speed: one, angle }]))
    .sort((a, b) => Math.abs(a.speed - speed) - Math.abs(b.speed - speed));
  return { angles: at, nearest, other: others[0] ?? null };
}

/** The answer as one sentence. */
export function whichWords(
  field: AngleField,
  wanted: number | null,
  speed: number,
  present: number,
  units: Units,
  words: ReachWords,
): string {
  const tow = units.show(speed, "m/s", 2);
  const degrees = (angle: number): string => units.show(angle, "°", 0);
  if (wanted === null) {
    const own = field.depths.slice(
      field.speeds.indexOf(speed) * field.angles.length,
      (field.speeds.indexOf(speed) + 1) * field.angles.length,
    );
    const runs = own.flatMap((depth) => (depth === null ? [] : [depth]));
    if (runs.length === 0) return words.tell("which.none", { tow });
    const [from, to] = [units.bare(Math.min(...runs), "m", 2), units.show(Math.max(...runs), "m", 2)];
    return words.tell("which.range", { tow, from, to });
  }
  const { angles, nearest, other } = whichAngle(field, wanted, speed, present);
  const goal = units.show(wanted, "m", 2);
  if (angles.length > 0) {
    const told = angles
      .slice(0, 3)
      .map(degrees)
      .reduce((one, next) => words.tell("which.or", { one, other: next }));
    return words.tell("which.gives", { goal, tow, angles: told });
  }
  const best =
    nearest === null
      ? words.tell("which.atNone")
      : words.tell("which.nearest", {
          angle: degrees(nearest.angle),
          depth: units.show(nearest.depth, "m", 2),
        });
  const elsewhere =
    other === null
      ? words.tell("which.nor")
      : words.tell("which.does", { speed: units.show(other.speed, "m/s", 2), angle: degrees(other.angle) });
  return words.tell("which.not", { goal, tow, best, elsewhere });
}
