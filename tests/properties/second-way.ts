import type { BaitSpec } from "../../src/model/bait";
import type { Knot } from "../../src/model/shape";

/*
 * A plain, slow second way to a bait's statics, from docs/model.md §2, §3 and §5 alone: nothing of the model's code is used
 * but the types of the spec. The body is cut into small level bars at even steps of φ, its skin into flat patches; sums run
 * over all of them. No bench readings, no corrections.
 */

const STATIONS = 300;
const SLICES = 24;

type Curve = (phi: number) => number;

/** Monotone cubic in φ through knots (Fritsch & Butland 1984, docs/model.md §2). */
function edge(knots: readonly Knot[], L: number): Curve {
  const x = knots.map((k) => Math.acos(Math.min(1, Math.max(-1, 1 - (2 * k.s) / L))));
  const y = knots.map((k) => k.v);
  const n = x.length;
  const at = (list: readonly number[], i: number): number => list[i] ?? NaN;
  const h = x.slice(1).map((v, i) => v - at(x, i));
  const d = h.map((step, i) => (at(y, i + 1) - at(y, i)) / step);
  const end = (h0: number, h1: number, d0: number, d1: number): number => {
    const m = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (Math.sign(m) !== Math.sign(d0)) return 0;
    return Math.sign(d0) !== Math.sign(d1) && Math.abs(m) > 3 * Math.abs(d0) ? 3 * d0 : m;
  };
  const m = y.map((_, i) => {
    if (n === 2) return at(d, 0);
    if (i === 0) return end(at(h, 0), at(h, 1), at(d, 0), at(d, 1));
    if (i === n - 1) return end(at(h, n - 2), at(h, n - 3), at(d, n - 2), at(d, n - 3));
    const [before, after] = [at(d, i - 1), at(d, i)];
    if (before * after <= 0) return 0;
    const w1 = 2 * at(h, i) + at(h, i - 1);
    const w2 = at(h, i) + 2 * at(h, i - 1);
    return (w1 + w2) / (w1 / before + w2 / after);
  });
  return (phi) => {
    let i = 0;
    while (i < n - 2 && phi > at(x, i + 1)) i++;
    const t = (phi - at(x, i)) / at(h, i);
    const u = 1 - t;
    return (
      at(y, i) * u * u * (1 + 2 * t) +
      at(y, i + 1) * t * t * (3 - 2 * t) +
      at(h, i) * t * u * (at(m, i) * u - at(m, i + 1) * t)
    );
  };
}

/** Piecewise linear in φ, constant beyond the ends. */
function line(knots: readonly Knot[], L: number): Curve {
  const points = knots.map((k) => ({ x: Math.acos(1 - (2 * k.s) / L), y: k.v }));
  return (phi) => {
    const after = points.findIndex((p) => p.x >= phi);
    const b = points[after];
    const a = points[after - 1];
    if (!b) return points.at(-1)?.y ?? NaN;
    if (!a) return b.y;
    return a.y + ((b.y - a.y) * (phi - a.x)) / (b.x - a.x);
  };
}

/** Something that displaces: its volume, its place, and how far it reaches along x and z to both sides. */
interface Bit {
  readonly v: number;
  readonly x: number;
  readonly z: number;
  readonly dx: number;
  readonly dz: number;
}

export interface SecondWay {
  readonly mass: number;
  readonly displaced: number;
  readonly skinArea: number;
  readonly G: { readonly x: number; readonly z: number };
  readonly B: { readonly x: number; readonly z: number };
  /** Volume under a surface, and its centroid's distance forward of G. */
  under(sin: number, cos: number, level: number): { volume: number; lever: number };
  /** Lowest height of the side outline over the nose tip. */
  lowest(sin: number, cos: number): number;
  /** ∫(2/3)y³ dl over the body's waterline, by stations. */
  waterlineIT(sin: number, cos: number, level: number): number;
}

/** @param side where the loose balls lie */
export function secondWay(spec: BaitSpec, side: { readonly end: string; readonly face: string }): SecondWay {
  const { shape } = spec;
  const L = shape.length;
  const top = edge(shape.top, L);
  const bottom = edge(shape.bottom, L);
  const breadth = edge(shape.halfBreadth, L);
  const own = shape.widest ? edge(shape.widest, L) : null;
  const widest = (phi: number): number => (own ? own(phi) : (top(phi) + bottom(phi)) / 2);
  const above = line(shape.exponentAbove, L);
  const below = line(shape.exponentBelow, L);
  const phiOf = (s: number): number => Math.acos(1 - (2 * s) / L);
  const station = (phi: number): number => (L * (1 - Math.cos(phi))) / 2;
  const inside = (x: number, z: number): boolean =>
    x <= 0 && x >= -L && z <= top(phiOf(-x)) && z >= bottom(phiOf(-x));

  const bits: Bit[] = [];
  let bodyVolume = 0;
  let bodyX = 0;
  let bodyZ = 0;
  for (let i = 0; i < STATIONS; i++) {
    const phi = (Math.PI * (i + 0.5)) / STATIONS;
    const ds = ((L / 2) * Math.sin(phi) * Math.PI) / STATIONS;
    const s = station(phi);
    const middle = widest(phi);
    const y = breadth(phi);
    for (const up of [true, false]) {
      const h = up ? top(phi) - middle : middle - bottom(phi);
      const n = up ? above(phi) : below(phi);
      for (let k = 0; k < SLICES; k++) {
        // ζ = h(1 − r²): dense where the section closes
        const r = (k + 0.5) / SLICES;
        const zeta = 1 - r * r;
        const dz = (h * 2 * r) / SLICES;
        const v = 2 * y * (1 - zeta ** n) ** (1 / n) * dz * ds;
        if (!(v > 0)) continue;
        const z = middle + (up ? 1 : -1) * h * zeta;
        bits.push({ v, x: -s, z, dx: ds / 2, dz: dz / 2 });
        bodyVolume += v;
        bodyX -= v * s;
        bodyZ += v * z;
      }
    }
  }

  // the skin as flat patches between rims, each rim by the section's polar angle, both sides
  const RIMS = 160;
  const ROUND = 32;
  const rim = (phi: number): [number, number, number][] => {
    const [x, y, middle] = [-station(phi), Math.max(0, breadth(phi)), widest(phi)];
    const [up, down] = [top(phi) - middle, middle - bottom(phi)];
    const [nUp, nDown] = [above(phi), below(phi)];
    return Array.from({ length: ROUND + 1 }, (_, j) => {
      const angle = Math.PI * (0.5 - j / ROUND);
      const [c, s] = [Math.max(0, Math.cos(angle)), Math.sin(angle)];
      const n = s >= 0 ? nUp : nDown;
      const rho = (c ** n + Math.abs(s) ** n) ** (-1 / n);
      return [x, y * rho * c, middle + (s >= 0 ? up : down) * rho * s];
    });
  };
  const patches: Bit[] = [];
  let skinArea = 0;
  const triangle = (a: number[], b: number[], c: number[]): number => {
    const [p, q] = [b, c].map((to) => to.map((v, i) => v - (a[i] ?? 0))) as [number[], number[]];
    const [px = 0, py = 0, pz = 0] = p;
    const [qx = 0, qy = 0, qz = 0] = q;
    return Math.hypot(py * qz - pz * qy, pz * qx - px * qz, px * qy - py * qx) / 2;
  };
  const patch = (corners: readonly [number, number, number][]): void => {
    const [a, b, c, d] = corners;
    if (!a || !b || !c || !d) return;
    const v = 2 * (triangle(a, b, c) + triangle(a, c, d));
    const mean = (i: 0 | 2): number => (a[i] + b[i] + c[i] + d[i]) / 4;
    const reach = (i: 0 | 2): number =>
      (Math.max(a[i], b[i], c[i], d[i]) - Math.min(a[i], b[i], c[i], d[i])) / 2;
    skinArea += v;
    patches.push({ v, x: mean(0), z: mean(2), dx: reach(0), dz: reach(2) });
  };
  const rims = Array.from({ length: RIMS + 1 }, (_, i) => rim((Math.PI * i) / RIMS));
  for (let i = 0; i < RIMS; i++) {
    const [a, b] = [rims[i] ?? [], rims[i + 1] ?? []];
    for (let j = 0; j < ROUND; j++) patch([a[j], a[j + 1], b[j + 1], b[j]] as [number, number, number][]);
  }
  for (const phi of [0, Math.PI]) {
    // the blunt face: from the rim straight in to the plane of symmetry
    const face = rim(phi);
    for (let j = 0; j < ROUND; j++) {
      const [p, q] = [face[j], face[j + 1]];
      if (p && q) patch([p, q, [q[0], 0, q[2]], [p[0], 0, p[2]]]);
    }
  }
  const skinX = patches.reduce((sum, p) => sum + p.v * p.x, 0) / skinArea;
  const skinZ = patches.reduce((sum, p) => sum + p.v * p.z, 0) / skinArea;

  // everything fitted: mass, what it displaces, what it takes out of the body
  let mass = 0;
  let mx = 0;
  let mz = 0;
  let removed = 0;
  let rx = 0;
  let rz = 0;
  const weigh = (m: number, x: number, z: number): void => {
    mass += m;
    mx += m * x;
    mz += m * z;
  };
  const remove = (v: number, x: number, z: number): void => {
    removed += v;
    rx += v * x;
    rz += v * z;
  };
  const always: Bit[] = [];
  const ball = (v: number, x: number, z: number): void => {
    // level discs of a sphere
    const R = Math.cbrt((3 * v) / (4 * Math.PI));
    const N = 60;
    for (let k = 0; k < N; k++) {
      const t = -1 + (2 * k + 1) / N;
      // heights are along the world's vertical: a sphere looks the same from all sides, so its discs are turned with it
      spheres.push({ v: Math.PI * R ** 3 * (1 - t * t) * (2 / N), x, z, dx: 0, dz: t * R });
    }
  };
  const spheres: Bit[] = [];

  for (const c of spec.chambers) {
    remove((c.to - c.from) * c.tall * c.wide, -(c.from + c.to) / 2, c.height);
    if (!c.balls) continue;
    const d = c.balls.diameter;
    const across = Math.floor(c.wide / d + 1e-9);
    const ranks = Math.floor((c.to - c.from) / d + 1e-9);
    for (let i = 0; i < c.balls.count; i++) {
      const rank = Math.floor(i / across);
      const along = ((rank % ranks) + 0.5) * d;
      const s =
        side.end === "tail" ? c.to - along : side.end === "nose" ? c.from + along : (c.from + c.to) / 2;
      const up = (Math.floor(rank / ranks) + 0.5) * d - c.tall / 2;
      weigh((Math.PI / 6) * d ** 3 * c.balls.stuff.density, -s, c.height + (side.face === "roof" ? -up : up));
    }
  }
  for (const b of spec.ballast) {
    const slug = b.mass / b.stuff.density;
    const hole = b.where === "inside" ? (b.hole ?? slug) : 0;
    weigh(b.mass + Math.max(0, hole - slug) * b.filler, b.at.x, b.at.z);
    remove(hole, b.at.x, b.at.z);
    if (slug > hole) ball(slug - hole, b.at.x, b.at.z);
  }
  for (const w of spec.wires)
    for (let i = 1; i < w.path.length; i++) {
      const [a, b] = [w.path[i - 1], w.path[i]];
      if (!a || !b) continue;
      const N = 1000;
      const v = ((Math.PI / 4) * w.diameter ** 2 * Math.hypot(b.x - a.x, b.z - a.z)) / N;
      for (let k = 0; k < N; k++) {
        const t = (k + 0.5) / N;
        const [x, z] = [a.x + t * (b.x - a.x), a.z + t * (b.z - a.z)];
        weigh(v * w.stuff.density, x, z);
        if (inside(x, z)) remove(v, x, z);
        else bits.push({ v, x, z, dx: 0, dz: 0 });
      }
    }
  if (spec.bib) {
    const { root, angle, length, width, slot, thickness, outline, stuff } = spec.bib;
    const N = 2000;
    const round = Math.min(width / 2, length);
    for (let k = 0; k < N; k++) {
      const t = (length * (k + 0.5)) / N;
      const past = outline === "round" ? Math.max(0, (t - (length - round)) / round) : 0;
      const v = width * Math.sqrt(1 - past * past) * thickness * (length / N);
      const [x, z] = [root.x + t * Math.cos(angle), root.z - t * Math.sin(angle)];
      weigh(v * stuff.density, x, z);
      bits.push({ v, x, z, dx: 0, dz: 0 });
    }
    const [x, z] = [root.x - (slot / 2) * Math.cos(angle), root.z + (slot / 2) * Math.sin(angle)];
    const tongue = slot > 0 ? Math.min(width, 2 * breadth(phiOf(-x))) * slot * thickness : 0;
    weigh(tongue * stuff.density, x, z);
    remove(tongue, x, z);
  }
  for (const { at, ring, hook } of spec.hangers)
    for (const it of [ring, hook])
      if (it) {
        weigh(it.mass, at.x, at.z);
        always.push({ v: it.mass / it.density, x: at.x, z: at.z, dx: 0, dz: 0 });
      }
  for (const f of spec.fittings) {
    weigh(f.mass, f.at.x, f.at.z);
    const v = f.mass / f.stuff.density;
    if (f.where === "outside") ball(v, f.at.x, f.at.z);
    else remove(v, f.at.x, f.at.z);
  }
  for (const c of spec.coats) {
    const v = c.thickness === null ? (c.mass ?? 0) / c.stuff.density : skinArea * c.thickness;
    weigh(c.mass ?? v * c.stuff.density, skinX, skinZ);
    for (const p of patches) bits.push({ ...p, v: (p.v / skinArea) * v });
  }
  const { density } = spec.body;
  mass += density * (bodyVolume - removed);
  mx += density * (bodyX - rx);
  mz += density * (bodyZ - rz);
  const G = { x: mx / mass, z: mz / mass };
  const all = [...bits, ...always, ...spheres];
  const displaced = all.reduce((sum, p) => sum + p.v, 0);
  const B = {
    x: all.reduce((sum, p) => sum + p.v * p.x, 0) / displaced,
    z: all.reduce((sum, p) => sum + p.v * p.z, 0) / displaced,
  };
  return {
    mass,
    displaced,
    skinArea,
    G,
    B,
    under(sin, cos, level) {
      let volume = 0;
      let moment = 0;
      const put = (v: number, p: Bit): void => {
        volume += v;
        moment += v * (p.x * cos - p.z * sin);
      };
      for (const p of bits) {
        const depth = level - p.x * sin - p.z * cos;
        const half = Math.abs(p.dx * sin) + Math.abs(p.dz * cos);
        put(p.v * (depth >= half ? 1 : depth <= -half ? 0 : (depth + half) / (2 * half)), p);
      }
      for (const p of always) put(p.v, p);
      for (const p of spheres) if (level - p.x * sin - p.z * cos - p.dz > 0) put(p.v, p);
      return { volume, lever: moment / volume - (G.x * cos - G.z * sin) };
    },
    lowest(sin, cos) {
      let least = Infinity;
      for (let i = 0; i <= 6000; i++) {
        const phi = (Math.PI * i) / 6000;
        for (const z of [top(phi), bottom(phi)]) least = Math.min(least, -station(phi) * sin + z * cos);
      }
      return least;
    },
    waterlineIT(sin, cos, level) {
      let sum = 0;
      for (let i = 0; i < 2000; i++) {
        const phi = (Math.PI * (i + 0.5)) / 2000;
        const z = (level + station(phi) * sin) / cos;
        const middle = widest(phi);
        const up = z >= middle;
        const u = Math.abs(z - middle) / (up ? top(phi) - middle : middle - bottom(phi));
        if (!(u < 1)) continue;
        const n = up ? above(phi) : below(phi);
        const y = breadth(phi) * (1 - u ** n) ** (1 / n);
        sum += ((2 / 3) * y ** 3 * (L / 2) * Math.sin(phi) * (Math.PI / 2000)) / Math.abs(cos);
      }
      return sum;
    },
  };
}
