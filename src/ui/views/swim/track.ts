import type { Leg, RodState, Timeline } from "../../../model/motion";

/** A path as SVG draws it, of points at least `least` px apart: what lies nearer cannot be seen. */
export function trackPath(
  xs: ArrayLike<number>,
  depths: ArrayLike<number>,
  x: (metres: number) => number,
  y: (depth: number) => number,
  least = 0.6,
): string {
  const parts: string[] = [];
  let lastX = NaN;
  let lastY = NaN;
  const n = Math.min(xs.length, depths.length);
  for (let i = 0; i < n; i++) {
    const px = x(xs[i] ?? NaN);
    const py = y(depths[i] ?? NaN);
    if (i > 0 && i < n - 1 && Math.abs(px - lastX) < least && Math.abs(py - lastY) < least) continue;
    parts.push(`${parts.length === 0 ? "M" : "L"}${px.toFixed(1)} ${py.toFixed(1)}`);
    lastX = px;
    lastY = py;
  }
  return parts.join("");
}

/** Frame whose place on the screen is nearest to a point, or −1 where there is none. */
export function nearestFrame(
  xs: ArrayLike<number>,
  depths: ArrayLike<number>,
  x: (metres: number) => number,
  y: (depth: number) => number,
  at: { readonly x: number; readonly y: number },
): number {
  let best = -1;
  let least = Infinity;
  const n = Math.min(xs.length, depths.length);
  for (let i = 0; i < n; i++) {
    const dx = x(xs[i] ?? NaN) - at.x;
    const dy = y(depths[i] ?? NaN) - at.y;
    const square = dx * dx + dy * dy;
    if (square < least) {
      least = square;
      best = i;
    }
  }
  return best;
}

/** Where the greatest of some values stands. */
export function greatest(values: ArrayLike<number>): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) if ((values[i] ?? NaN) > (values[best] ?? NaN)) best = i;
  return best;
}

/** What a depth axis runs to, m: the floor, or where that lies far below everything of interest, a part of the water. */
export function axisDepth(
  floor: number,
  interest: number,
): { readonly depth: number; readonly floor: boolean } {
  const wanted = Math.max(0.5, 1.35 * interest);
  return Number.isFinite(floor) && floor <= 2.2 * wanted
    ? { depth: floor, floor: true }
    : { depth: wanted, floor: false };
}

/** Where the rod tip is at a time: s; m along the retrieve and up, as the timeline has it. */
export interface TipPoint {
  readonly time: number;
  readonly x: number;
  readonly z: number;
}

/** The rod tip's way through a cadence: ten points of each twitch and lift, one of what keeps it still, and the end. */
export function tipWay(timeline: Timeline, legs: readonly Leg[]): readonly TipPoint[] {
  const out: RodState = { x: 0, z: 0, vx: 0, vz: 0, wound: 0, winding: 0, free: false, gone: false };
  const points: TipPoint[] = [];
  const put = (time: number): void => {
    timeline.at(time, out);
    points.push({ time, x: out.x, z: out.z });
  };
  for (const { move, start, end } of legs) {
    const steps = (move.do === "twitch" || move.do === "lift") && end > start ? 10 : 1;
    for (let i = 0; i < steps; i++) put(start + ((end - start) * i) / steps);
  }
  put(legs.at(-1)?.end ?? 0);
  return points;
}
