import { heightAbove, lerp, pieceUnder, sphereUnder } from "../base";
import type { SurfacePlane, Vec } from "../base";
import type { Bait, BallSide, Item, RigidSet } from "../bait";
import type { Shape } from "../shape";

/** What is under water at one trim and level: volume (m³) and its first moments in the body frame (m⁴). */
export interface Under {
  volume: number;
  x: number;
  z: number;
  /** Bare body's waterline. */
  waterplaneIT: number;
  waterplaneArea: number;
  /**
   * Of everything that the surface cuts: area A (m²), ∫X dA (m³) and ∫X² dA (m⁴), X forward along the surface.
   * Raised by dl, A·dl more is under; turned nose-up by dp, ∫X dA·dp less. Right within a few per cent of the coats' part.
   */
  cut: number;
  cutMoment: number;
  cutSecond: number;
}

interface Ball {
  readonly at: Vec;
  readonly radius: number;
  readonly volume: number;
}

/**
 * A bait made ready to float: what goes under by sections, by skin, by length, as spheres, and always
 * (docs/model.md §5). Fixed for one side of the loose balls.
 */
export class Wettable {
  readonly rigid: RigidSet;
  readonly shape: Shape;
  readonly pieces: readonly { readonly a: Vec; readonly b: Vec; readonly volume: number }[];
  readonly spheres: readonly Ball[];
  /** Volume that goes under with the skin, m³. */
  readonly coats: number;
  /** Always under: volume and first moments. */
  readonly always: { readonly volume: number; readonly x: number; readonly z: number };

  constructor(
    bait: Bait,
    readonly side: BallSide,
  ) {
    const items = bait.itemsWith(side);
    this.rigid = bait.rigid(side);
    this.shape = bait.shape;
    const pieces: { a: Vec; b: Vec; volume: number }[] = [];
    const spheres: Ball[] = [];
    const always = { volume: 0, x: 0, z: 0 };
    let coats = 0;
    const sort = (item: Item): void => {
      const how = item.immersing;
      if (!how || how.as === "body") return;
      if (how.as === "skin") coats += item.displaced;
      else if (how.as === "pieces") pieces.push(...how.pieces);
      else if (how.as === "sphere")
        spheres.push({ at: how.at, volume: how.volume, radius: Math.cbrt((3 * how.volume) / (4 * Math.PI)) });
      else {
        always.volume += how.volume;
        always.x += how.volume * how.at.x;
        always.z += how.volume * how.at.z;
      }
    };
    items.forEach(sort);
    this.pieces = pieces;
    this.spheres = spheres.filter((s) => s.volume > 0);
    this.coats = coats;
    this.always = always;
  }

  /** What lies under a surface. */
  under(surface: SurfacePlane): Under {
    const body = this.shape.immersion(surface, { skin: this.coats > 0 });
    let volume = body.volume + this.always.volume;
    let x = body.volume * body.centroid.x + this.always.x;
    let z = body.volume * body.centroid.z + this.always.z;
    const { sin, cos } = surface;
    let cut = body.waterplaneArea;
    let cutMoment = body.waterplaneMoment;
    let cutSecond = body.waterplaneSecond;
    const addCut = (area: number, X: number): void => {
      cut += area;
      cutMoment += area * X;
      cutSecond += area * X * X;
    };
    for (const { a, b, volume: whole } of this.pieces) {
      const { share, middle } = pieceUnder(surface, a, b);
      const v = share * whole;
      volume += v;
      x += v * middle.x;
      z += v * middle.z;
      if (share > 0 && share < 1) {
        const ha = heightAbove(surface, a);
        const hb = heightAbove(surface, b);
        const at = lerp(a, b, ha / (ha - hb));
        addCut(whole / Math.abs(ha - hb), at.x * cos - at.z * sin);
      }
    }
    for (const { at, radius, volume: whole } of this.spheres) {
      const h = heightAbove(surface, at);
      const { share, below } = sphereUnder(h, radius);
      const v = share * whole;
      volume += v;
      x += v * (at.x - below * sin);
      z += v * (at.z - below * cos);
      if (share > 0 && share < 1) addCut(Math.PI * (radius * radius - h * h), at.x * cos - at.z * sin);
    }
    if (this.coats > 0) {
      const coat = this.coats * body.skinFraction;
      volume += coat;
      x += coat * body.skinCentroid.x;
      z += coat * body.skinCentroid.z;
      const thickness = this.coats / this.shape.skinArea;
      cut += thickness * body.skinCut;
      cutMoment += thickness * body.skinCutMoment;
      cutSecond += thickness * body.skinCutSecond;
    }
    const { waterplaneIT, waterplaneArea } = body;
    return { volume, x, z, waterplaneIT, waterplaneArea, cut, cutMoment, cutSecond };
  }

  /** Heights along the world's vertical (m, from the nose tip) between which all lies that can be under or above. */
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
