import { cos as cosine } from "../base";
import type { SurfacePlane } from "../base";
import type { Edges } from "../shape";

const SCAN = 48;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Lowest height (m, along the world's vertical, from the nose tip) of the bare side outline at a pitch; blunt ends count by
 * their corners. A scan in φ between the breaks, then a golden-section search near the best point.
 */
function lowestOfOutline(edges: Edges, sin: number, cos: number): number {
  const edge = cos >= 0 ? edges.bottom : edges.top; // the underside, whichever way up
  const height = (phi: number): number =>
    -((edges.length * (1 - cosine(phi))) / 2) * sin + edge.call(edges, phi) * cos;
  let best = Infinity;
  let at = 0;
  const phis: number[] = [];
  edges.breaks.forEach((a, i) => {
    phis.push(a);
    const b = edges.breaks[i + 1];
    if (b === undefined) return;
    const steps = Math.max(2, Math.ceil((SCAN * (b - a)) / Math.PI));
    for (let k = 1; k < steps; k++) phis.push(a + ((b - a) * k) / steps);
  });
  phis.forEach((phi, i) => {
    const h = height(phi);
    if (h < best) {
      best = h;
      at = i;
    }
  });
  let a = phis[Math.max(0, at - 1)] ?? 0;
  let b = phis[Math.min(phis.length - 1, at + 1)] ?? Math.PI;
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let hc = height(c);
  let hd = height(d);
  while (b - a > 1e-7) {
    if (hc < hd) {
      b = d;
      d = c;
      hd = hc;
      c = b - GOLDEN * (b - a);
      hc = height(c);
    } else {
      a = c;
      c = d;
      hc = hd;
      d = a + GOLDEN * (b - a);
      hd = height(d);
    }
  }
  return Math.min(best, hc, hd);
}

/** Depth of that point under a surface, m (below 0: the outline hangs clear of the water). */
export const draftOf = (edges: Edges, surface: SurfacePlane): number =>
  surface.level - lowestOfOutline(edges, surface.sin, surface.cos);
