import { cos, pow, sin } from "../../model/base";
import { sectionAt } from "../../model/shape";
import type { Section, Shape } from "../../model/shape";

/** Triangles that enclose a solid. Lengths in mm; each triangle's corners turn anticlockwise seen from outside. */
export interface Mesh {
  /** x, y, z of each point. */
  readonly points: Float64Array;
  /** Three places in the list of points for each triangle. */
  readonly triangles: Uint32Array;
}

/** Rings along the body and corners round half a section: fine enough for 2e-4 of the volume. */
const RINGS = 180;
const CORNERS = 72;
/** Points nearer than this are one, mm: what is left where an end closes in a point or an edge. */
const SAME = 1e-7;
const MM = 1e3;

/** Collects points, each place once. */
class Points {
  readonly #known = new Map<string, number>();
  readonly list: number[] = [];

  at(x: number, y: number, z: number): number {
    const key = [x, y, z].map((v) => String(Math.round(v / SAME))).join();
    const found = this.#known.get(key);
    if (found !== undefined) return found;
    const place = this.list.length / 3;
    this.#known.set(key, place);
    this.list.push(x, y, z);
    return place;
  }
}

/**
 * The half of a body on the side y ≥ 0, closed by its face in the plane of symmetry. Axes: x aft of the nose tip, y away from the
 * plane of symmetry to the right (as seen by the bait), z up from the datum line.
 */
export function halfBody(shape: Shape): Mesh {
  const points = new Points();
  const triangles: number[] = [];
  const face = (a: number, b: number, c: number): void => {
    if (a !== b && b !== c && c !== a) triangles.push(a, c, b);
  };
  const rings = phis(shape).map((phi) => ring(sectionAt(shape.edges, phi), points));
  rings.forEach((here, i) => {
    const next = rings[i + 1];
    if (next === undefined) return;
    for (let k = 0; k < CORNERS; k++) {
      const [a, b, c, d] = [here[k] ?? 0, here[k + 1] ?? 0, next[k + 1] ?? 0, next[k] ?? 0];
      // Skin, seen from outside (y > 0): aft is to the right of forward, up is up.
      face(a, d, c);
      face(a, c, b);
    }
    // The inner face, seen from the other side.
    const [low, high, high2, low2] = [here[0] ?? 0, here[CORNERS] ?? 0, next[CORNERS] ?? 0, next[0] ?? 0];
    face(low, high, high2);
    face(low, high2, low2);
  });
  const [nose, tail] = [rings[0] ?? [], rings.at(-1) ?? []];
  // Blunt ends: a fan from the lowest point.
  for (let k = 1; k < CORNERS; k++) {
    face(nose[0] ?? 0, nose[k] ?? 0, nose[k + 1] ?? 0);
    face(tail[0] ?? 0, tail[k + 1] ?? 0, tail[k] ?? 0);
  }
  return { points: Float64Array.from(points.list), triangles: Uint32Array.from(triangles) };
}

/** Even steps of φ, which stand close at both ends, and the places where the drawn curves have their points. */
function phis(shape: Shape): number[] {
  const steps = Array.from({ length: RINGS + 1 }, (_, i) => (Math.PI * i) / RINGS);
  const all = [...steps, ...shape.edges.breaks].sort((a, b) => a - b);
  return all.filter((phi, i) => i === 0 || phi - (all[i - 1] ?? 0) > 1e-4);
}

/** Half a section from its lowest point round the side to its highest: superellipses that meet at the greatest breadth. */
function ring(section: Section, points: Points): number[] {
  const { s, top, bottom, widest, halfBreadth, exponentAbove, exponentBelow } = section;
  return Array.from({ length: CORNERS + 1 }, (_, k) => {
    const t = (Math.PI * k) / CORNERS - Math.PI / 2;
    const above = 2 * k >= CORNERS;
    const p = 2 / (above ? exponentAbove : exponentBelow);
    const height = above ? top - widest : widest - bottom;
    const up = pow(Math.abs(sin(t)), p) * (above ? 1 : -1);
    const out = k === 0 || k === CORNERS ? 0 : pow(Math.abs(cos(t)), p);
    return points.at(MM * s, MM * halfBreadth * out, MM * (widest + height * up));
  });
}

/** Volume (mm³) and centroid (mm) of what a mesh encloses: sums of tetrahedra with the origin (the divergence theorem). */
export function enclosed({ points, triangles }: Mesh): { volume: number; x: number; y: number; z: number } {
  let [volume, x, y, z] = [0, 0, 0, 0];
  const p = (i: number): readonly [number, number, number] => {
    const at = 3 * (triangles[i] ?? 0);
    return [points[at] ?? 0, points[at + 1] ?? 0, points[at + 2] ?? 0];
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [p(i), p(i + 1), p(i + 2)];
    const v =
      (a[0] * (b[1] * c[2] - b[2] * c[1]) +
        a[1] * (b[2] * c[0] - b[0] * c[2]) +
        a[2] * (b[0] * c[1] - b[1] * c[0])) /
      6;
    volume += v;
    x += (v * (a[0] + b[0] + c[0])) / 4;
    y += (v * (a[1] + b[1] + c[1])) / 4;
    z += (v * (a[2] + b[2] + c[2])) / 4;
  }
  return { volume, x: x / volume, y: y / volume, z: z / volume };
}

/** Edges of a mesh, and how many of them are not passed exactly once each way: 0 where it is closed. */
export function openEdges({ triangles }: Mesh): { readonly edges: number; readonly open: number } {
  const count = new Map<number, number>();
  const most = 2 ** 26;
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const [a, b] = [triangles[i + k] ?? 0, triangles[i + ((k + 1) % 3)] ?? 0];
      const key = a * most + b;
      count.set(key, (count.get(key) ?? 0) + 1);
    }
  let open = 0;
  for (const [key, times] of count) {
    const [a, b] = [Math.floor(key / most), key % most];
    if (times !== 1 || count.get(b * most + a) !== 1) open++;
  }
  return { edges: count.size / 2, open };
}

/** The same solid laid on its inner face, for a printer's plate: z is the height above it. `left`: the other half, mirrored. */
export function laid({ points, triangles }: Mesh, half: "right" | "left"): Mesh {
  const next = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    next[i] = points[i] ?? 0;
    // Right: a quarter turn about the datum line. Left: the same of the mirrored half, whose y is below 0.
    next[i + 1] = (half === "right" ? -1 : 1) * (points[i + 2] ?? 0);
    next[i + 2] = points[i + 1] ?? 0;
  }
  if (half === "right") return { points: next, triangles };
  const turned = triangles.slice();
  for (let i = 0; i < turned.length; i += 3) {
    const b = turned[i + 1] ?? 0;
    turned[i + 1] = turned[i + 2] ?? 0;
    turned[i + 2] = b;
  }
  return { points: next, triangles: turned };
}
