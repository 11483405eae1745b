import { firstPlace, flipped, perPx } from "./place";
import type { PictureSize, Placement, Px } from "./place";

/** What lies this near an end, as a share of the length, is its tip: of a blunt tail the middle of its face is taken. */
const TIP = 0.003;
/** The line between the tips turns toward the last one found until it stands still, rad; at most so often. */
const STILL = 1e-4;
const TURNS = 60;

export interface Ends {
  readonly nose: Px;
  readonly tail: Px;
}

/** Direction in which a closed outline is long: the eigenvector of its area's second moments. */
function longWay(ring: readonly Px[]): Px {
  let [area, mu, mv, uu, uv, vv] = [0, 0, 0, 0, 0, 0];
  const o = ring[0] ?? { u: 0, v: 0 };
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    const [a, b, c, d] = [p.u - o.u, p.v - o.v, q.u - o.u, q.v - o.v];
    const cross = a * d - c * b;
    area += cross / 2;
    mu += (cross * (a + c)) / 6;
    mv += (cross * (b + d)) / 6;
    uu += (cross * (a * a + a * c + c * c)) / 12;
    vv += (cross * (b * b + b * d + d * d)) / 12;
    uv += (cross * (2 * a * b + a * d + c * b + 2 * c * d)) / 24;
  });
  const [su, sv, suv] = [uu - (mu * mu) / area, vv - (mv * mv) / area, uv - (mu * mv) / area];
  const sign = Math.sign(area);
  const angle = Math.atan2(2 * sign * suv, sign * (su - sv)) / 2;
  return { u: Math.cos(angle), v: Math.sin(angle) };
}

/** The tip of a closed outline in a direction: as far as it goes, in the middle of what lies there. */
function tipOf(ring: readonly Px[], way: Px, length: number): Px {
  const along = ({ u, v }: Px): number => u * way.u + v * way.v;
  const across = ({ u, v }: Px): number => v * way.u - u * way.v;
  const far = Math.max(...ring.map(along));
  const near = ring.filter((p) => along(p) > far - TIP * length).map(across);
  const middle = (Math.max(...near) + Math.min(...near)) / 2;
  return { u: far * way.u - middle * way.v, v: far * way.v + middle * way.u };
}

/** Nose and tail of a silhouette: its two tips, by the line between them. The nose looks to the right, as the picture is shown. */
export function endsOf(ring: readonly Px[], mirrored: boolean): Ends | null {
  if (ring.length < 3) return null;
  const first = longWay(ring);
  const side = (first.u < 0 ? -1 : 1) * (mirrored ? -1 : 1);
  let way: Px = { u: side * first.u, v: side * first.v };
  for (let turn = 0; turn < TURNS; turn++) {
    const along = ring.map(({ u, v }) => u * way.u + v * way.v);
    const length = Math.max(...along) - Math.min(...along);
    const nose = tipOf(ring, way, length);
    const tail = tipOf(ring, { u: -way.u, v: -way.v }, length);
    const apart = Math.hypot(nose.u - tail.u, nose.v - tail.v);
    if (!(apart > 0)) return null;
    const next = { u: (nose.u - tail.u) / apart, v: (nose.v - tail.v) / apart };
    const turned = Math.abs(next.u * way.v - next.v * way.u);
    way = next;
    if (turned < STILL) return { nose, tail };
  }
  return null;
}

const same = (a: Px, b: Px): boolean => a.u === b.u && a.v === b.v;

export const standsOn = (place: Ends, { nose, tail }: Ends): boolean =>
  same(place.nose, nose) && same(place.tail, tail);

/** How far nose and tail stand from the tips of an outline, mm: the farther of the two. */
export const offTips = (place: Placement, { nose, tail }: Ends): number =>
  perPx(place) *
  Math.max(
    Math.hypot(place.nose.u - nose.u, place.nose.v - nose.v),
    Math.hypot(place.tail.u - tail.u, place.tail.v - tail.v),
  );

/** Whether nose and tail stand where the program put them: no hand has moved them. `put`: its last proposal. */
export function isUntouched(place: Placement, size: PictureSize, put: Placement | null): boolean {
  const first = firstPlace(size, place.apart);
  return [first, flipped(first, size), ...(put === null ? [] : [put, flipped(put, size)])].some(
    (one) => one.mirrored === place.mirrored && standsOn(place, one),
  );
}
