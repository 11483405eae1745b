import { pchip, piecewiseLinear } from "../model/base";
import { phiOfStation } from "../model/shape";
import type { ShapeSpec } from "../model/shape";
import type { Scenario, ScenarioBait } from "./schema";

/**
 * Edits of the drawn body: each gives a new document from the one it gets, and changes only what it names. A result may be
 * one that the checks refuse (an edge that crosses another): whoever edits shows it, and asks the checks.
 */

/** The curves along the bait that a maker draws. `above` and `below` are the section's exponents. */
export const CURVES = ["top", "bottom", "halfBreadth", "widest", "above", "below"] as const;
export type CurveKey = (typeof CURVES)[number];

/** [station, value] in the units of the file, from nose to tail. */
export type CurvePoint = readonly [number, number];
export type CurvePoints = readonly CurvePoint[];

/** Exponents do not have to reach the ends: beyond their first and last point they stay as they are there. */
const isExponent = (key: CurveKey): key is "above" | "below" => key === "above" || key === "below";

/** Thousandths: finer than any knife, and no tails of binary digits in the file. Adding 0 turns −0 into 0. */
export const tidy = (value: number): number => Number(value.toFixed(3)) + 0;

/** Where a curve stands in the document. */
export const curveSteps = (key: CurveKey): readonly string[] =>
  isExponent(key) ? ["bait", "roundover", key] : ["bait", key];

/** The points of a curve; where the file leaves the curve out, the points that say the same. */
export function pointsOf(bait: ScenarioBait, key: CurveKey): CurvePoints {
  const L = bait.length_mm;
  if (isExponent(key))
    return (
      bait.roundover?.[key] ?? [
        [0, 2],
        [L, 2],
      ]
    );
  if (key !== "widest") return bait[key];
  if (bait.widest !== undefined) return bait.widest;
  // Midway between the edges, at every station where one of them has a point.
  const stations = [...new Set([...bait.top, ...bait.bottom].map(([s]) => s))].sort((a, b) => a - b);
  const middle = curveOf(bait, key);
  return stations.flatMap((s): CurvePoint[] => {
    const z = middle(s);
    return z === null ? [] : [[s, tidy(z)]];
  });
}

/**
 * A curve's value at a station, by the model's own curves: monotone cubics in φ for the edges, straight lines in φ for the
 * exponents (docs/model.md §2). Null where the points make no curve, or off the bait.
 */
export const valueOn = (bait: ScenarioBait, key: CurveKey, station: number): number | null =>
  curveOf(bait, key)(station);

/** The same for many stations of one curve. */
function curveOf(bait: ScenarioBait, key: CurveKey): (station: number) => number | null {
  const L = bait.length_mm;
  const nowhere = (): null => null;
  if (!(L > 0)) return nowhere;
  if (key === "widest" && bait.widest === undefined) {
    const [above, below] = [curveOf(bait, "top"), curveOf(bait, "bottom")];
    return (s) => {
      const [top, bottom] = [above(s), below(s)];
      return top === null || bottom === null ? null : (top + bottom) / 2;
    };
  }
  const points = pointsOf(bait, key);
  const last = points.length - 1;
  const phis = points.map(([s], i) =>
    isExponent(key) ? phiOfStation(s, L) : i === 0 ? 0 : i === last ? Math.PI : phiOfStation(s, L),
  );
  if (phis.some((phi, i) => i > 0 && !(phi > (phis[i - 1] ?? 0)))) return nowhere;
  const values = points.map(([, v]) => v);
  if (!isExponent(key) && points.length < 2) return nowhere;
  const line = isExponent(key) ? piecewiseLinear(phis, values) : pchip(phis, values);
  const at = typeof line === "function" ? line : (phi: number): number => line.at(phi);
  return (s) => (s >= 0 && s <= L ? at(phiOfStation(s, L)) : null);
}

export const hasCurve = ({ widest, roundover }: ScenarioBait, key: CurveKey): boolean =>
  key === "widest" ? widest !== undefined : isExponent(key) ? roundover !== undefined : true;

/** The document with a curve's points replaced. */
export function withPoints(from: Scenario, key: CurveKey, points: CurvePoints): Scenario {
  const { bait } = from;
  // Points that stay where they are stay the same objects: the page then leaves their rows alone.
  const held = points.map((point) => point as [number, number]);
  if (!isExponent(key)) return { ...from, bait: { ...bait, [key]: held } };
  const other = key === "above" ? "below" : "above";
  const kept = pointsOf(bait, other).map(([s, v]): [number, number] => [s, v]);
  const roundover = key === "above" ? { above: held, below: kept } : { above: kept, below: held };
  return { ...from, bait: { ...bait, roundover } };
}

/** The document without an optional curve: its absence has a meaning of its own. */
export function withoutCurve(from: Scenario, key: CurveKey): Scenario {
  const { widest, roundover, ...rest } = from.bait;
  if (key === "widest")
    return { ...from, bait: { ...rest, ...(roundover === undefined ? {} : { roundover }) } };
  if (isExponent(key)) return { ...from, bait: { ...rest, ...(widest === undefined ? {} : { widest }) } };
  return from;
}

/** Some points moved together. The first and the last point of an edge keep their stations. */
export function movePoints(
  from: Scenario,
  key: CurveKey,
  which: readonly number[],
  [ds, dv]: CurvePoint,
): Scenario {
  const points = pointsOf(from.bait, key);
  const end = points.length - 1;
  return withPoints(
    from,
    key,
    points.map((point, i): CurvePoint => {
      if (!which.includes(i)) return point;
      const [s, v] = point;
      const fixed = !isExponent(key) && (i === 0 || i === end);
      return [fixed || ds === 0 ? s : tidy(s + ds), dv === 0 ? v : tidy(v + dv)];
    }),
  );
}

/** One point set by number. The last station of an edge is the bait's length: all edges end there. */
export function setPoint(from: Scenario, key: CurveKey, index: number, [s, v]: CurvePoint): Scenario {
  const points = pointsOf(from.bait, key);
  const last = index === points.length - 1 && !isExponent(key);
  const next = withPoints(
    from,
    key,
    points.map((one, i) => (i === index ? [last ? one[0] : s, v] : one)),
  );
  return last && s !== from.bait.length_mm ? withLength(next, s) : next;
}

/** Another length by moving the tail's end alone; every other point stays where it is. */
export function withLength(from: Scenario, length: number): Scenario {
  const { bait } = from;
  const ended = (points: CurvePoints): [number, number][] =>
    points.map(([s, v]) => [s === bait.length_mm ? length : s, v]);
  return {
    ...from,
    bait: {
      ...bait,
      length_mm: length,
      top: ended(bait.top),
      bottom: ended(bait.bottom),
      halfBreadth: ended(bait.halfBreadth),
      ...(bait.widest === undefined ? {} : { widest: ended(bait.widest) }),
      ...(bait.roundover === undefined
        ? {}
        : { roundover: { above: ended(bait.roundover.above), below: ended(bait.roundover.below) } }),
    },
  };
}

/** Two points of a curve stay at least this far apart, mm: nearer ones say the same. */
const APART = 0.05;

/** A curve with one point more, and that point's place; null where a point stands there already. */
export function addPoint(
  from: Scenario,
  key: CurveKey,
  at: CurvePoint,
): { readonly scenario: Scenario; readonly index: number } | null {
  const points = pointsOf(from.bait, key);
  const [s, v] = [tidy(at[0]), tidy(at[1])];
  if (s < 0 || s > from.bait.length_mm || points.some(([p]) => Math.abs(p - s) < APART)) return null;
  const index = points.filter(([p]) => p < s).length;
  return {
    scenario: withPoints(from, key, [...points.slice(0, index), [s, v], ...points.slice(index)]),
    index,
  };
}

/** A curve without some points; the two ends of an edge and the last point of the exponents stay. */
export function removePoints(from: Scenario, key: CurveKey, which: readonly number[]): Scenario {
  const points = pointsOf(from.bait, key);
  const end = points.length - 1;
  const left = points.filter((_, i) => !which.includes(i) || (!isExponent(key) && (i === 0 || i === end)));
  return withPoints(from, key, left.length > 0 ? left : points.slice(0, 1));
}

/** The value of a curve at one station: the point that stands there takes it, else a point is added. */
export function setAt(from: Scenario, key: CurveKey, station: number, value: number): Scenario {
  const s = tidy(station);
  const found = pointsOf(from.bait, key).findIndex(([p]) => Math.abs(p - s) < APART);
  if (found < 0) return addPoint(from, key, [s, value])?.scenario ?? from;
  return withPoints(
    from,
    key,
    pointsOf(from.bait, key).map(([p, v], i) => [p, i === found ? tidy(value) : v]),
  );
}

/** Outline and sections of another body (m) in place of the bait's own; everything else stays. */
export function withBody(from: Scenario, { length, ...shape }: ShapeSpec): Scenario {
  const L = tidy(length * 1e3);
  type Knots = ShapeSpec["top"];
  const points = (knots: Knots, unit: number): [number, number][] =>
    knots.map(({ s, v }) => [s === length ? L : tidy(s * 1e3), tidy(v * unit)]);
  const { widest: _, ...bait } = from.bait;
  return {
    ...from,
    bait: {
      ...bait,
      length_mm: L,
      top: points(shape.top, 1e3),
      bottom: points(shape.bottom, 1e3),
      halfBreadth: points(shape.halfBreadth, 1e3),
      ...(shape.widest === undefined ? {} : { widest: points(shape.widest, 1e3) }),
      roundover: { above: points(shape.exponentAbove, 1), below: points(shape.exponentBelow, 1) },
    },
  };
}

const inMm = (metres: number): number => metres * 1e3;

/** A curve's points as the file has them, of knots in m. The last one stands at the length. */
const filed = (knots: ShapeSpec["top"], length: number): [number, number][] =>
  knots.map(({ s, v }) => [tidy(s === length ? inMm(length) : inMm(s)), tidy(inMm(v))]);

/**
 * Another side outline (m) in place of the bait's own. The stations of its other curves go with the length, and the widest line
 * keeps its share of the height between the edges; parts stay where they are.
 */
export function withOutline(
  from: Scenario,
  { length, top, bottom }: Pick<ShapeSpec, "length" | "top" | "bottom">,
): Scenario {
  const { bait } = from;
  const L = tidy(inMm(length));
  const by = L / bait.length_mm;
  const along = (s: number): number => (s === bait.length_mm ? L : tidy(s * by));
  const moved = (points: CurvePoints): [number, number][] => points.map(([s, v]) => [along(s), v]);
  const next = { ...bait, length_mm: L, top: filed(top, length), bottom: filed(bottom, length) };
  const { widest, roundover } = bait;
  const between = (of: ScenarioBait, s: number): readonly [number, number] => {
    const [up, down] = [valueOn(of, "top", s) ?? 0, valueOn(of, "bottom", s) ?? 0];
    return [down, up - down];
  };
  return {
    ...from,
    bait: {
      ...next,
      halfBreadth: moved(bait.halfBreadth),
      ...(widest === undefined
        ? {}
        : {
            widest: widest.map(([s, v]): [number, number] => {
              const [low, height] = between(bait, s);
              const [newLow, newHeight] = between(next, along(s));
              return [along(s), tidy(newLow + newHeight * (height > 0 ? (v - low) / height : 0.5))];
            }),
          }),
      ...(roundover === undefined
        ? {}
        : { roundover: { above: moved(roundover.above), below: moved(roundover.below) } }),
    },
  };
}

/** Other half-breadths (m), stretched along to the bait's own length. */
export function withBreadth(
  from: Scenario,
  { length, halfBreadth }: Pick<ShapeSpec, "length" | "halfBreadth">,
): Scenario {
  const L = from.bait.length_mm;
  const by = L / inMm(length);
  return withPoints(
    from,
    "halfBreadth",
    halfBreadth.map(({ s, v }) => [s === length ? L : tidy(by * inMm(s)), tidy(inMm(v))]),
  );
}
