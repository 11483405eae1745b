import { cos, gaussLegendre, sin } from "../base";
import { type Section, sectionArea, type Shape } from "../shape";
import { sectionFactor } from "./coefficients";

/** Where a strip stands along the body: φ (s = L(1 − cos φ)/2), half its panel's width in φ, and its Gauss weight there. */
export interface StripNode {
  readonly phi: number;
  readonly half: number;
  readonly weight: number;
}

/** Strips of a smooth body, and the error (share of the whole) that volume, added mass and drag area may have. */
const USUAL = 32;
const TOLERANCE = 1e-4;

/** Where the number of strips is given, panels with fewer nodes than this are joined to a neighbour. */
const NODES_PER_PANEL = 4;

/**
 * Ends of the quadrature panels in φ: the shape's breaks (its knots). Of breaks that stand close together some are left
 * out, until at most `most` panels are left. Between two breaks every curve is smooth.
 */
function panels(breaks: readonly number[], most: number): number[] {
  const ends = [...breaks];
  while (ends.length - 1 > most) {
    let drop = 1;
    let least = Infinity;
    for (let i = 1; i + 1 < ends.length; i++) {
      const span = (ends[i + 1] ?? 0) - (ends[i - 1] ?? 0);
      if (span < least) {
        least = span;
        drop = i;
      }
    }
    ends.splice(drop, 1);
  }
  return ends;
}

/** Nodes per panel, `total` in all, at least two each, the rest where nodes are farthest apart. */
function share(ends: readonly number[], total: number): number[] {
  const spans = ends.slice(1).map((e, i) => e - (ends[i] ?? 0));
  const counts = spans.map(() => 2);
  for (let left = total - 2 * spans.length; left > 0; left--) {
    let widest = 0;
    spans.forEach((span, i) => {
      if (span / (counts[i] ?? 1) > (spans[widest] ?? 0) / (counts[widest] ?? 1)) widest = i;
    });
    counts[widest] = (counts[widest] ?? 0) + 1;
  }
  return counts;
}

/** Gauss nodes of one panel. */
function gaussNodes(from: number, to: number, n: number): StripNode[] {
  const half = (to - from) / 2;
  const { x, w } = gaussLegendre(n);
  return Array.from({ length: n }, (_, i) => ({
    phi: from + half * (1 + (x[i] ?? 0)),
    half,
    weight: w[i] ?? 0,
  }));
}

/** A given number of strips. */
export function evenNodes(shape: Shape, count: number): StripNode[] {
  const ends = panels(shape.edges.breaks, Math.max(1, Math.floor(count / NODES_PER_PANEL)));
  return share(ends, count).flatMap((n, panel) => gaussNodes(ends[panel] ?? 0, ends[panel + 1] ?? 0, n));
}

/** The section at a node, and its thickness ds, m. */
export function sectionAtNode(
  shape: Shape,
  { phi, half, weight }: StripNode,
): { at: Section; s: number; ds: number } {
  const L = shape.length;
  const s = (L * (1 - cos(phi))) / 2;
  return { at: shape.section(Math.min(L, Math.max(0, s))), s, ds: (L / 2) * sin(phi) * half * weight };
}

/** f(r) of a section's cross-flow drag; where a section has no height left, that of an edge across the flow. */
export function dragFactor(at: Section): number {
  const height = at.top - at.bottom;
  return at.halfBreadth > 0 ? sectionFactor(height > 0 ? (2 * at.halfBreadth) / height : Infinity) : 0;
}

/**
 * The sums that strips have to give: volume, ∫hw² ds (heave added mass) and ∫f 2hw ds (drag area), each also times x and
 * times x². Here x is the distance from the middle of the body over half its length.
 */
type Sums = Float64Array;
const SUMS = 9;

function addSection(sums: Sums, at: Section, ds: number, x: number): void {
  const parts = [
    sectionArea(at) * ds,
    at.halfBreadth * at.halfBreadth * ds,
    dragFactor(at) * 2 * at.halfBreadth * ds,
  ];
  for (let i = 0; i < 3; i++) {
    const part = parts[i] as number;
    sums[i] = (sums[i] as number) + part;
    sums[i + 3] = (sums[i + 3] as number) + part * x;
    sums[i + 6] = (sums[i + 6] as number) + part * x * x;
  }
}

function sumsOf(shape: Shape, nodes: readonly StripNode[]): Sums {
  const sums = new Float64Array(SUMS);
  for (const node of nodes) {
    const { at, s, ds } = sectionAtNode(shape, node);
    addSection(sums, at, ds, (2 * s) / shape.length - 1);
  }
  return sums;
}

/** Greatest difference of two sums, each as a share of the whole body's; first moments as a share of the sum itself. */
function apart(a: Sums, b: Sums, whole: Sums): number {
  let worst = 0;
  for (let i = 0; i < SUMS; i++)
    worst = Math.max(
      worst,
      Math.abs((a[i] as number) - (b[i] as number)) / (whole[i < 6 ? i % 3 : i] as number),
    );
  return worst;
}

/** Most nodes in one panel: where it can still be split, and where it lies between two neighbouring knots. */
const MOST_NODES = { split: 8, last: 24 };

/** A stretch of the body between two knots, its true sums, and the error of n nodes in it. */
class Stretch {
  readonly truth = new Float64Array(SUMS);
  readonly #errors: number[] = [];
  #halves: readonly [Stretch, Stretch] | null = null;

  constructor(
    readonly shape: Shape,
    /** Sums of the whole body from the nose to each of its knots. */
    readonly run: readonly Sums[],
    readonly first: number,
    readonly last: number,
  ) {
    const [a, b] = [run[first], run[last]];
    if (a && b) for (let i = 0; i < SUMS; i++) this.truth[i] = (b[i] as number) - (a[i] as number);
  }

  get from(): number {
    return this.shape.edges.breaks[this.first] ?? 0;
  }

  get to(): number {
    return this.shape.edges.breaks[this.last] ?? Math.PI;
  }

  get whole(): Sums {
    return this.run.at(-1) ?? this.truth;
  }

  error(n: number): number {
    return (this.#errors[n] ??= apart(
      sumsOf(this.shape, gaussNodes(this.from, this.to, n)),
      this.truth,
      this.whole,
    ));
  }

  /** Divided at the knot nearest to its middle; null where it lies between two neighbouring knots. */
  get halves(): readonly [Stretch, Stretch] | null {
    if (this.last - this.first < 2) return null;
    if (!this.#halves) {
      const { breaks } = this.shape.edges;
      const middle = (this.from + this.to) / 2;
      let cut = this.first + 1;
      for (let i = cut; i < this.last; i++)
        if (Math.abs((breaks[i] ?? 0) - middle) < Math.abs((breaks[cut] ?? 0) - middle)) cut = i;
      this.#halves = [
        new Stretch(this.shape, this.run, this.first, cut),
        new Stretch(this.shape, this.run, cut, this.last),
      ];
    }
    return this.#halves;
  }

  /** The fewest nodes whose error is at most `density` times the stretch's width in φ, as one panel or as several. */
  choose(density: number): StripNode[] {
    const { halves } = this;
    const allowed = density * (this.to - this.from);
    const parts = halves && [...halves[0].choose(density), ...halves[1].choose(density)];
    const most = parts ? Math.min(MOST_NODES.split, parts.length - 1) : MOST_NODES.last;
    let n = 1;
    while (n <= most && this.error(n) > allowed) n++;
    if (parts && n > most) return parts;
    return gaussNodes(this.from, this.to, Math.min(n, most));
  }
}

/** Sums from the nose to each knot of the body, by the shape's own stations. */
function runningSums(shape: Shape): Sums[] {
  const { breaks } = shape.edges;
  const L = shape.length;
  const sums = new Float64Array(SUMS);
  const run = [sums.slice()];
  let next = 1;
  for (const at of shape.stations) {
    // a station lies between two knots, never on one
    while (next < breaks.length - 1 && at.s > (L * (1 - cos(breaks[next] ?? 0))) / 2) {
      run.push(sums.slice());
      next += 1;
    }
    addSection(sums, at, at.ds, (2 * at.s) / L - 1);
  }
  while (run.length < breaks.length) run.push(sums.slice());
  return run;
}

const chosen = new WeakMap<Shape, readonly StripNode[]>();

/**
 * As many strips as the shape needs. For a smooth body these are 32: they give volume, added mass and drag area, and how
 * each is spread along the body, to 1e-4 of the whole. Else nodes are set where knots and bends are, until they reach that.
 */
export function nodesFor(shape: Shape): readonly StripNode[] {
  let nodes = chosen.get(shape);
  if (!nodes) {
    nodes = choose(shape);
    chosen.set(shape, nodes);
  }
  return nodes;
}

function choose(shape: Shape): StripNode[] {
  const run = runningSums(shape);
  const body = new Stretch(shape, run, 0, run.length - 1);
  let nodes = evenNodes(shape, USUAL);
  // Errors of neighbours mostly cancel: so a loose limit for each is tried first.
  for (const limit of [10, 3, 1, 0.3, 0.1, 0.03]) {
    if (apart(sumsOf(shape, nodes), body.truth, body.truth) <= TOLERANCE) break;
    nodes = body.choose((limit * TOLERANCE) / Math.PI);
  }
  return nodes;
}
