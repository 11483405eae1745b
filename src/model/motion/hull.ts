import type { Vec } from "../base";
import { cos, cross, sin, sub } from "../base";
import type { Bait, BibSpec } from "../bait";
import { outline } from "../shape";

/** Root and tip of the bib's outside part, body frame, m. */
export function bibEnds(bib: BibSpec): readonly [Vec, Vec] {
  const { root, length, angle } = bib;
  return [root, { x: root.x + length * cos(angle), z: root.z - length * sin(angle) }];
}

/** Corners of the smallest convex polygon round the points, counter-clockwise. (Andrew's monotone chain, 1979.) */
export function convexHull(points: readonly Vec[]): Vec[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.z - b.z);
  const half = (list: readonly Vec[]): Vec[] => {
    const chain: Vec[] = [];
    for (const p of list) {
      for (;;) {
        const b = chain.at(-1);
        const a = chain.at(-2);
        if (a === undefined || b === undefined || cross(sub(b, a), sub(p, b)) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/**
 * Leaves at most `corners` corners of a convex polygon: it removes, one after the other, the corner whose loss costs the
 * least area.
 */
export function fewerCorners(polygon: readonly Vec[], corners: number): Vec[] {
  const left = [...polygon];
  while (left.length > corners) {
    let least = 0;
    let leastArea = Infinity;
    left.forEach((p, i) => {
      const before = left.at(i - 1) ?? p;
      const after = left[(i + 1) % left.length] ?? p;
      const area = cross(sub(p, before), sub(after, p));
      if (area < leastArea) {
        leastArea = area;
        least = i;
      }
    });
    left.splice(least, 1);
  }
  return left;
}

/**
 * What touches floor and walls: the convex polygon round the side view and the bib, body frame, m. Floor and walls are
 * straight, so a hollow in the outline never meets them.
 */
export function contactHull(bait: Bait, corners: number): Vec[] {
  const { bib } = bait.spec;
  const points = [...outline(bait.drawn, 96), ...(bib === null ? [] : bibEnds(bib))];
  return fewerCorners(convexHull(points), corners);
}
