import { fromSI, toSI } from "../../../../units";
import type { CurvePoint } from "../../../../document";
import type { Told } from "../../../words/trace";

/** A picture lies under the side view, or under the view from above. */
export const SIGHTS = ["side", "above"] as const;
export type Sight = (typeof SIGHTS)[number];

/**
 * Where a picture lies under the drawing. Points of the picture count in its own px, u to the right and v down from its upper
 * left corner; places of the bait are [station, height] in mm (from above: [station, breadth]).
 */
export interface Px {
  readonly u: number;
  readonly v: number;
}

/** The four places in the picture that a hand sets: two on the datum line, and two whose distance is known. */
export const MARKS = ["nose", "tail", "from", "to"] as const;
export type MarkKey = (typeof MARKS)[number];

export interface Placement extends Readonly<Record<MarkKey, Px>> {
  /** `nose` is station 0 on the datum line, `tail` is farther aft on it. True: their distance is the known one. */
  readonly whole: boolean;
  /** The known distance, mm. */
  readonly apart: number;
  /** The picture is shown as in a mirror: its bait looks to the left. */
  readonly mirrored: boolean;
}

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** A first place: the bait lies level and fills most of the picture. */
export function firstPlace({ width, height }: PictureSize, length: number): Placement {
  const v = height / 2;
  const [nose, tail] = [
    { u: 0.92 * width, v },
    { u: 0.08 * width, v },
  ];
  const low = { u: nose.u, v: 0.8 * height };
  return {
    nose,
    tail,
    from: low,
    to: { u: tail.u, v: low.v },
    whole: true,
    apart: length,
    mirrored: false,
  };
}

/** A first place of an outline: its ends to left and right are tail and nose. The datum line lies level between their heights. */
export function aroundRing(ring: readonly Px[], size: PictureSize, length: number): Placement {
  const first = firstPlace(size, length);
  const ends = [...ring].sort((a, b) => a.u - b.u);
  const [tail, nose] = [ends[0], ends.at(-1)];
  if (tail === undefined || nose === undefined) return first;
  const v = (tail.v + nose.v) / 2;
  return { ...first, nose: { u: nose.u, v }, tail: { u: tail.u, v } };
}

const gap = (a: Px, b: Px): number => Math.hypot(b.u - a.u, b.v - a.v);

/** Points that are nearer than this are one, px. */
const LEAST = 2;

/** Why a place is none, in words; null where it is one. */
export const placeTrouble = ({ nose, tail, from, to, whole }: Placement): Told | null =>
  gap(nose, tail) < LEAST
    ? (words) => words.tell("place.ends")
    : !whole && gap(from, to) < LEAST
      ? (words) => words.tell("place.known")
      : null;

/** mm to a px of the picture. */
export const perPx = ({ nose, tail, from, to, whole, apart }: Placement): number =>
  apart / (whole ? gap(nose, tail) : gap(from, to));

/** One step along the picture's u, and one along its v, as [aft, up] in mm. */
function axes(place: Placement): { readonly u: CurvePoint; readonly v: CurvePoint } {
  const { nose, tail, mirrored } = place;
  const k = perPx(place);
  const length = gap(nose, tail);
  const side = mirrored ? -1 : 1;
  // The datum line's way aft, with v counted upward and u as it is shown.
  const [c, s] = [(side * (tail.u - nose.u)) / length, (nose.v - tail.v) / length];
  // aft = p·(c, s), up = p·(s, −c), for p = (±u, −v).
  return { u: [side * k * c, side * k * s], v: [-k * s, k * c] };
}

/** A place of the picture on the bait, mm. */
export function onBait(place: Placement, { u, v }: Px): CurvePoint {
  const { u: eu, v: ev } = axes(place);
  const [du, dv] = [u - place.nose.u, v - place.nose.v];
  return [eu[0] * du + ev[0] * dv, eu[1] * du + ev[1] * dv];
}

/** A place of the bait in the picture. */
export function inPicture(place: Placement, [s, z]: CurvePoint): Px {
  const { u: eu, v: ev } = axes(place);
  // The axes are square to each other and equally long.
  const square = eu[0] ** 2 + eu[1] ** 2;
  return {
    u: place.nose.u + (eu[0] * s + eu[1] * z) / square,
    v: place.nose.v + (ev[0] * s + ev[1] * z) / square,
  };
}

/** Half a turn, degrees. */
const HALF = 180;

/** By how much the picture is turned so that the datum line lies level, degrees, counter-clockwise as shown; −180 to 180. */
export function turnOf({ nose, tail, mirrored }: Placement): number {
  const side = mirrored ? -1 : 1;
  const aft = Math.atan2(nose.v - tail.v, side * (tail.u - nose.u));
  const turn = fromSI(Math.PI - aft, "deg");
  return turn > HALF ? turn - 2 * HALF : turn;
}

/** Turned about the nose. */
export function turned(place: Placement, degrees: number): Placement {
  const { nose, tail, mirrored } = place;
  const length = gap(nose, tail);
  const aft = Math.PI - toSI(degrees, "deg");
  const side = mirrored ? -1 : 1;
  return {
    ...place,
    tail: { u: nose.u + side * length * Math.cos(aft), v: nose.v - length * Math.sin(aft) },
  };
}

/** The picture moved under the bait by [aft, up], mm. */
export function shifted(place: Placement, [ds, dz]: CurvePoint): Placement {
  const nose = inPicture(place, [-ds, -dz]);
  const [du, dv] = [nose.u - place.nose.u, nose.v - place.nose.v];
  return { ...place, nose, tail: { u: place.tail.u + du, v: place.tail.v + dv } };
}

/** Flipped left to right: every mark stays where it is on the screen. */
export function flipped(place: Placement, { width }: PictureSize): Placement {
  const other = ({ u, v }: Px): Px => ({ u: width - u, v });
  const { nose, tail, from, to } = place;
  return {
    ...place,
    mirrored: !place.mirrored,
    nose: other(nose),
    tail: other(tail),
    from: other(from),
    to: other(to),
  };
}

/** Set to a known length between other marks: the picture keeps its size on the bait. */
export const between = (place: Placement, whole: boolean): Placement => ({
  ...place,
  whole,
  apart: Number(
    (perPx(place) * (whole ? gap(place.nose, place.tail) : gap(place.from, place.to))).toFixed(2),
  ),
});
