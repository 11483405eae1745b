import type { Knot } from "../shape";
import { stationOfPhi } from "../shape";
import { fairEdge } from "./fair";
import type { FairEdge } from "./fair";

/** Stations at which a silhouette is read, closer together at its ends. */
const STATIONS = 240;
/** Least number of corners of a silhouette: fewer enclose nothing. */
const LEAST = 3;

/** What a closed silhouette says at one station: its highest and its lowest place. */
interface Span {
  readonly s: number;
  readonly high: number;
  readonly low: number;
}

interface Spans {
  readonly start: number;
  readonly length: number;
  readonly spans: readonly Span[];
  /** Height of the foremost and of the aftmost place. */
  readonly nose: number;
  readonly tail: number;
  /** Greatest height that is missing between the highest and the lowest place, m: a notch that no edge can follow. */
  readonly folded: number;
}

/** A body's side outline, fitted to a silhouette. Lengths m. */
export interface TracedOutline {
  /** Where the nose tip lies, in the silhouette's own stations. */
  readonly start: number;
  readonly length: number;
  readonly top: readonly Knot[];
  readonly bottom: readonly Knot[];
  /** Greatest distance of a traced point from the fitted curves, and the root of their mean square. */
  readonly worst: number;
  readonly rms: number;
  readonly folded: number;
}

/** Half-breadths, fitted to a silhouette from above. Lengths m. */
export interface TracedBreadth {
  readonly start: number;
  readonly length: number;
  readonly halfBreadth: readonly Knot[];
  readonly worst: number;
  readonly rms: number;
  readonly folded: number;
  /** Greatest distance between the two sides' middle and a straight line: a body is drawn with equal sides. */
  readonly uneven: number;
}

/** Cuts a closed line at stations that stand evenly in φ. */
function spansOf(ring: readonly Knot[]): Spans {
  if (ring.length < LEAST)
    throw new RangeError(`${ring.length} points of a silhouette: give ${LEAST} or more`);
  const fore = ring.reduce((best, p) => (p.s < best.s ? p : best));
  const aft = ring.reduce((best, p) => (p.s > best.s ? p : best));
  const length = aft.s - fore.s;
  if (!(length > 0)) throw new RangeError(`a silhouette ${length} m long: give one with a length`);
  let folded = 0;
  const spans = Array.from({ length: STATIONS - 1 }, (_, i): Span => {
    const s = stationOfPhi((Math.PI * (i + 1)) / STATIONS, length);
    const crossings = ring
      .flatMap((a, k) => {
        const b = ring[(k + 1) % ring.length] ?? a;
        const [p, q] = [a.s - fore.s - s, b.s - fore.s - s];
        return p < 0 === q < 0 ? [] : [a.v + ((b.v - a.v) * p) / (p - q)];
      })
      .sort((a, b) => a - b);
    // Inside and outside take turns: every second gap lies outside.
    crossings.forEach((v, k) => {
      if (k % 2 === 1 && k + 1 < crossings.length) folded = Math.max(folded, (crossings[k + 1] ?? v) - v);
    });
    const [low, high] = [crossings[0], crossings.at(-1)];
    if (low === undefined || high === undefined) throw new RangeError("a silhouette that is not closed");
    return { s, high, low };
  });
  return { start: fore.s, length, spans, nose: fore.v, tail: aft.v, folded };
}

/** An end that opens by less than this many tolerances runs out to a point or a round: there both edges meet. */
const MEETS = 2;

/**
 * Top and bottom edge with as few points as `tolerance` allows (`fairEdge`), from a closed silhouette seen from the side. The
 * foremost place is the nose, the aftmost the tail; between them the highest place at each station is the top edge, the lowest
 * the bottom edge. Where both edges come together at an end they end in one point there; a blunt end stays blunt.
 *
 * @param ring the silhouette's corners in order, stations aft positive, heights up, m; holes are not part of it
 */
export function tracedOutline(ring: readonly Knot[], tolerance: number): TracedOutline {
  const { start, length, spans, nose, tail, folded } = spansOf(ring);
  const [up, down] = [(p: Span): Knot => ({ s: p.s, v: p.high }), (p: Span): Knot => ({ s: p.s, v: p.low })];
  const meet = { nose: meets(spans, length, tolerance, false), tail: meets(spans, length, tolerance, true) };
  const given = { ...(meet.nose ? { nose } : {}), ...(meet.tail ? { tail } : {}) };
  const [top, bottom] = [up, down].map((side) => fairEdge(spans.map(side), length, tolerance, given));
  if (top === undefined || bottom === undefined) throw new Error("two edges were asked for");
  return { start, length, top: top.knots, bottom: bottom.knots, ...both([top, bottom]), folded };
}

/** Half-breadths from a closed silhouette seen from above: half of what lies between its two sides at each station. */
export function tracedBreadth(ring: readonly Knot[], tolerance: number): TracedBreadth {
  const { start, length, spans, nose, tail, folded } = spansOf(ring);
  const given = {
    ...(meets(spans, length, tolerance, false) ? { nose: 0 } : {}),
    ...(meets(spans, length, tolerance, true) ? { tail: 0 } : {}),
  };
  const edge = fairEdge(
    spans.map((p): Knot => ({ s: p.s, v: (p.high - p.low) / 2 })),
    length,
    tolerance,
    given,
  );
  const uneven = Math.max(
    ...spans.map((p) => Math.abs((p.high + p.low) / 2 - (nose + ((tail - nose) * p.s) / length))),
  );
  // Least squares may leave a sharp end a hair's breadth below nothing.
  const halfBreadth = edge.knots.map(({ s, v }) => ({ s, v: Math.max(0, v) }));
  return { start, length, halfBreadth, ...both([edge]), folded, uneven };
}

const both = (edges: readonly FairEdge[]): Pick<FairEdge, "worst" | "rms"> => ({
  worst: Math.max(...edges.map((e) => e.worst)),
  rms: Math.sqrt(edges.reduce((sum, e) => sum + e.rms * e.rms, 0) / edges.length),
});

/**
 * True where both edges come together at an end. A round end opens like √s, and a cut one is open at once: the opening is
 * carried on to the end by the straight line in φ, in which a round end is straight, through its values at 3 % and 12 % of φ.
 */
function meets(spans: readonly Span[], length: number, tolerance: number, aft: boolean): boolean {
  const at = (share: number): number => {
    const i = Math.round(share * STATIONS) - 1;
    const span = spans[aft ? spans.length - 1 - i : i];
    return span === undefined ? 0 : span.high - span.low;
  };
  const [near, far] = [0.03, 0.12];
  const open = at(near) - ((at(far) - at(near)) * near) / (far - near);
  return open < Math.max(MEETS * tolerance, at(0.5) / 20) || length <= 0;
}
