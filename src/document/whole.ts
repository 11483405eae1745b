import { CURVES, hasCurve, pointsOf, tidy, withPoints } from "./outline";
import type { CurveKey, CurvePoints } from "./outline";
import { stretchParts } from "./parts";
import type { Stretch } from "./parts/types";
import type { Scenario } from "./schema";

/** Moves of the whole bait: each gives a new document from the one it gets. The checks may refuse the result. */

/** The whole bait larger or smaller in each direction; plates, hooks and weights keep their own size. */
export function scaled(
  from: Scenario,
  by: { readonly length: number; readonly height: number; readonly breadth: number },
): Scenario {
  const { bait } = from;
  const length = tidy(bait.length_mm * by.length);
  const stretch: Stretch = {
    station: (s) => (s === bait.length_mm ? length : tidy(s * by.length)),
    height: (z) => tidy(z * by.height),
    tall: (size) => tidy(size * by.height),
    wide: (size) => tidy(size * by.breadth),
  };
  const curve = (points: CurvePoints, value: (v: number) => number): [number, number][] =>
    points.map(([s, v]) => [stretch.station(s), value(v)]);
  const same = (v: number): number => v;
  return {
    ...from,
    bait: {
      ...stretchParts(bait, stretch),
      length_mm: length,
      top: curve(bait.top, stretch.height),
      bottom: curve(bait.bottom, stretch.height),
      halfBreadth: curve(bait.halfBreadth, stretch.wide),
      ...(bait.widest === undefined ? {} : { widest: curve(bait.widest, stretch.height) }),
      ...(bait.roundover === undefined
        ? {}
        : {
            roundover: { above: curve(bait.roundover.above, same), below: curve(bait.roundover.below, same) },
          }),
      tie_mm: [stretch.station(bait.tie_mm[0]), stretch.height(bait.tie_mm[1])],
    },
  };
}

/** What is shifted: the outline under its parts, all parts in their outline, or both together. */
export type Shifted = "outline" | "parts" | "bait";

const same = (value: number): number => value;
const above = ([s, z]: readonly [number, number], up: number): [number, number] => [s, tidy(z + up)];

/**
 * Outline or parts moved aft and up (mm). Stations count from the nose tip: where the outline moves aft, the stations of the
 * parts become smaller by as much, and both together have nothing to move along. Heights count from the datum line: that
 * line stays. Water marks of the tub lie on the outline and go with it.
 */
export function shifted(
  from: Scenario,
  what: Shifted,
  { aft, up }: { readonly aft: number; readonly up: number },
): Scenario {
  const along = what === "outline" ? 0 - aft : what === "parts" ? aft : 0;
  const lift = what === "outline" ? 0 : up;
  const place: Stretch = {
    station: (s) => (along === 0 ? s : tidy(s + along)),
    height: (z) => (lift === 0 ? z : tidy(z + lift)),
    tall: same,
    wide: same,
  };
  const bait = {
    ...stretchParts(from.bait, place),
    tie_mm: [place.station(from.bait.tie_mm[0]), place.height(from.bait.tie_mm[1])] as [number, number],
  };
  if (what === "parts" || up === 0) return { ...from, bait };
  const raised = (points: CurvePoints): [number, number][] => points.map((one) => above(one, up));
  return {
    ...from,
    bait: {
      ...bait,
      top: raised(bait.top),
      bottom: raised(bait.bottom),
      ...(bait.widest === undefined ? {} : { widest: raised(bait.widest) }),
    },
    tub: from.tub.map((one) =>
      one.kind === "waterline"
        ? { ...one, nose_mm: above(one.nose_mm, up), tail_mm: above(one.tail_mm, up) }
        : one,
    ),
  };
}

/** One curve the other way round: what was at the nose is at the tail. `all` turns every curve; parts stay where they are. */
export function reversed(from: Scenario, which: CurveKey | "all"): Scenario {
  const L = from.bait.length_mm;
  const keys = which === "all" ? CURVES.filter((key) => hasCurve(from.bait, key)) : [which];
  return keys.reduce(
    (next, key) =>
      withPoints(
        next,
        key,
        [...pointsOf(from.bait, key)].reverse().map(([s, v]) => [s === L ? 0 : s === 0 ? L : tidy(L - s), v]),
      ),
    from,
  );
}
