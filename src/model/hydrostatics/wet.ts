import { heightAbove, type SurfacePlane, type Vec } from "../base";
import type { Bait, BallSide, RigidSet } from "../bait";
import type { Shape } from "../shape";
import { pieceVolume, sphereDepth, sphereVolume } from "./going-under";
import { immersion } from "./immersion";
import { add, type Sum } from "./sum";
import { type Ball, type Piece, waysOf } from "./ways";

/** What is under water at one trim and level, and what the surface cuts there. Body frame. */
export interface Under extends Sum {
  /** Bare body's waterline. */
  waterplaneIT: number;
  waterplaneArea: number;
  /**
   * Of everything that the surface cuts: area A (m²), ∫X dA (m³) and ∫X² dA (m⁴), X forward along the surface. When the
   * surface rises by dl, A·dl more is under water; when the bait turns nose-up by dp, ∫X dA·dp less is. The coats' part is
   * right within a few per cent.
   */
  cut: number;
  cutMoment: number;
  cutSecond: number;
}

/** Adds an area (m²) that the surface cuts at X forward along it. */
function addCut(sum: Under, area: number, X: number): void {
  sum.cut += area;
  sum.cutMoment += area * X;
  sum.cutSecond += area * X * X;
}

/** A bait made ready to float: its items sorted by how they go under (docs/model.md §5). For one side of the loose balls. */
export class Wettable {
  readonly rigid: RigidSet;
  readonly shape: Shape;
  readonly pieces: readonly Piece[];
  /** The pieces by their middles, and from there to b. */
  readonly #rods: readonly {
    readonly x: number;
    readonly z: number;
    readonly dx: number;
    readonly dz: number;
    readonly volume: number;
  }[];
  readonly spheres: readonly Ball[];
  /** Volume that goes under with the skin, m³. */
  readonly coats: number;
  /** Hooks and rings, always under at rest: their volume and its first moments. */
  readonly always: Readonly<Sum>;

  constructor(
    bait: Bait,
    readonly side: BallSide,
  ) {
    const ways = waysOf(bait.itemsWith(side));
    this.rigid = bait.rigid(side);
    this.shape = bait.shape;
    this.pieces = ways.pieces;
    this.#rods = ways.pieces.map(({ a, b, volume }) => ({
      x: (a.x + b.x) / 2,
      z: (a.z + b.z) / 2,
      dx: (b.x - a.x) / 2,
      dz: (b.z - a.z) / 2,
      volume,
    }));
    this.spheres = ways.spheres;
    this.coats = ways.coats.volume;
    const always = { volume: 0, x: 0, z: 0 };
    for (const { at, volume } of ways.hanging) add(always, volume, at.x, at.z);
    this.always = always;
  }

  /** What lies under a surface. */
  under(surface: SurfacePlane): Under {
    const body = immersion(this.shape, surface, { skin: this.coats > 0 });
    const { sin, cos, level } = surface;
    const { waterplaneIT, waterplaneArea } = body;
    const sum: Under = {
      volume: this.always.volume,
      x: this.always.x,
      z: this.always.z,
      waterplaneIT,
      waterplaneArea,
      cut: waterplaneArea,
      cutMoment: body.waterplaneMoment,
      cutSecond: body.waterplaneSecond,
    };
    add(sum, body.volume, body.centroid.x, body.centroid.z);
    for (const { x, z, dx, dz, volume: whole } of this.#rods) {
      const rise = dx * sin + dz * cos;
      const depth = level - x * sin - z * cos;
      const v = pieceVolume(whole, depth, Math.abs(rise));
      if (v === whole) add(sum, v, x, z);
      else if (v > 0) {
        // the middle of the part under water, as a share of the way from the piece's middle to b
        const towards = (1 - v / whole) * (rise > 0 ? -1 : 1);
        add(sum, v, x + towards * dx, z + towards * dz);
        const t = depth / rise;
        addCut(sum, whole / (2 * Math.abs(rise)), (x + t * dx) * cos - (z + t * dz) * sin);
      }
    }
    for (const { at, radius, volume: whole } of this.spheres) {
      const depth = -heightAbove(surface, at);
      const v = sphereVolume(whole, depth, radius);
      if (v === 0) continue;
      // the centroid of what is under lies U/V below the surface, that much below the sphere's own centre:
      const below = sphereDepth(whole, depth, radius) / v - depth;
      add(sum, v, at.x - below * sin, at.z - below * cos);
      if (v < whole) addCut(sum, Math.PI * (radius * radius - depth * depth), at.x * cos - at.z * sin);
    }
    if (this.coats > 0) {
      add(sum, this.coats * body.skinFraction, body.skinCentroid.x, body.skinCentroid.z);
      const thickness = this.coats / this.shape.skinArea;
      sum.cut += thickness * body.skinCut;
      sum.cutMoment += thickness * body.skinCutMoment;
      sum.cutSecond += thickness * body.skinCutSecond;
    }
    return sum;
  }

  /** Heights along the world's vertical (m, from the nose tip) between which everything lies. */
  reach(sin: number, cos: number): { low: number; high: number } {
    let low = Infinity;
    let high = -Infinity;
    const take = (p: Vec, r: number): void => {
      const h = p.x * sin + p.z * cos;
      low = Math.min(low, h - r);
      high = Math.max(high, h + r);
    };
    for (const s of this.shape.stations) {
      take({ x: -s.s, z: s.top }, 0);
      take({ x: -s.s, z: s.bottom }, 0);
    }
    for (const s of [0, this.shape.length]) {
      const end = this.shape.section(s);
      take({ x: -s, z: end.top }, 0);
      take({ x: -s, z: end.bottom }, 0);
    }
    for (const p of this.pieces) {
      take(p.a, 0);
      take(p.b, 0);
    }
    for (const s of this.spheres) take(s.at, s.radius);
    // An edge can rise a little between two stations.
    const margin = 1e-3 * (high - low) + 1e-6;
    return { low: low - margin, high: high + margin };
  }
}
