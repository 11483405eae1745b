import type { Vec } from "../base";
import type { Edges, Section, ShapeSpec, Station } from "./types";
import { edgesFromKnots, phiOfStation, sectionAt, ShapeError } from "./edges";
import { peak, scanGrid } from "./grid";
import { makePrefix, type Prefix } from "./integrals";
import type { SectionIntegrals } from "./section";
import { Skin } from "./skin";
import type { Shape, Solid } from "./solid";
import { SectionTable } from "./table";

/** The body that these knots draw: `makeShape(edgesFromKnots(spec))`. */
export const shapeOf = (spec: ShapeSpec): Shape => makeShape(edgesFromKnots(spec));

/**
 * The geometry of a body from its edges. The edges may be exact functions; they must be finite on [0, π], with
 * top ≥ bottom and half-breadth ≥ 0. Throws `ShapeError` where they enclose no volume or are not finite.
 */
export const makeShape = (edges: Edges): Shape => new Body(edges);

class Body implements Shape, Solid {
  readonly breadthFactor = 1;
  readonly length: number;
  readonly volume: number;
  readonly centroid: Vec;
  readonly secondMomentX: number;
  readonly secondMomentZ: number;
  readonly maxHalfBreadth: number;
  readonly maxHeight: number;
  readonly stations: readonly Station[];
  readonly table: SectionTable;
  readonly prefix: Prefix;
  private madeSkin: Skin | null = null;

  constructor(readonly edges: Edges) {
    checkEdges(edges);
    this.length = edges.length;
    this.table = new SectionTable(edges);
    this.prefix = makePrefix(this.table);
    const last = this.table.panels;
    this.volume = this.prefix.volume[last] as number;
    if (!(this.volume > 0))
      throw new ShapeError(
        "halfBreadth",
        `the body encloses ${this.volume} m³`,
        "give breadth and height at the same stations",
      );
    this.centroid = {
      x: (this.prefix.momentX[last] as number) / this.volume,
      z: (this.prefix.momentZ[last] as number) / this.volume,
    };
    const { stations, secondX, secondZ } = makeStations(this.table, this.centroid);
    this.stations = stations;
    this.secondMomentX = secondX;
    this.secondMomentZ = secondZ;
    this.maxHalfBreadth = greatest(edges, (phi) => edges.halfBreadth(phi));
    this.maxHeight = greatest(edges, (phi) => edges.top(phi) - edges.bottom(phi));
  }

  get solid(): Solid {
    return this;
  }

  get skin(): Skin {
    return (this.madeSkin ??= new Skin(this.table));
  }

  get skinArea(): number {
    return this.skin.area;
  }

  get skinCentroid(): Vec {
    const { area, momentX, momentZ } = this.skin;
    return { x: momentX / area, z: momentZ / area };
  }

  section(s: number): Section {
    const slack = 1e-9 * this.length;
    if (!(s >= -slack && s <= this.length + slack))
      throw new RangeError(`station ${s} m: stations lie between 0 and ${this.length} m`);
    return sectionAt(this.edges, phiOfStation(s, this.length));
  }

  withBreadthFactor(factor: number): Shape {
    return new Broadened(this, factor);
  }
}

/** A body with every half-breadth multiplied by a factor: whatever depends on breadth changes by a power of the factor. */
class Broadened implements Shape {
  readonly edges: Edges;
  readonly length: number;
  readonly volume: number;
  readonly centroid: Vec;
  readonly secondMomentX: number;
  readonly secondMomentZ: number;
  readonly maxHalfBreadth: number;
  readonly maxHeight: number;
  readonly stations: readonly Station[];

  constructor(
    private readonly drawn: Shape,
    readonly breadthFactor: number,
  ) {
    const factor = breadthFactor;
    if (!(factor > 0 && Number.isFinite(factor)))
      throw new RangeError(`breadth factor ${factor}: use a number above 0`);
    const { edges } = drawn;
    this.edges = { ...edges, halfBreadth: (phi) => factor * edges.halfBreadth(phi) };
    this.length = drawn.length;
    this.volume = factor * drawn.volume;
    this.centroid = drawn.centroid;
    this.secondMomentX = factor * drawn.secondMomentX;
    this.secondMomentZ = factor * drawn.secondMomentZ;
    this.maxHalfBreadth = factor * drawn.maxHalfBreadth;
    this.maxHeight = drawn.maxHeight;
    this.stations = drawn.stations.map((s) => ({
      ...s,
      halfBreadth: factor * s.halfBreadth,
      area: factor * s.area,
    }));
  }

  get solid(): Solid {
    return this.drawn.solid;
  }

  get skinArea(): number {
    return this.drawn.skinArea;
  }

  get skinCentroid(): Vec {
    return this.drawn.skinCentroid;
  }

  section(s: number): Section {
    const drawn = this.drawn.section(s);
    return { ...drawn, halfBreadth: this.breadthFactor * drawn.halfBreadth };
  }

  withBreadthFactor(factor: number): Shape {
    return new Broadened(this.drawn, this.breadthFactor * factor);
  }
}

function checkEdges(edges: Edges): void {
  const { breaks, length } = edges;
  if (!(Number.isFinite(length) && length > 0))
    throw new ShapeError("length", `found ${length}`, "give a length above 0");
  if (
    breaks[0] !== 0 ||
    breaks.at(-1) !== Math.PI ||
    breaks.some((b, i) => i > 0 && !(b > (breaks[i - 1] ?? 0)))
  )
    throw new ShapeError("breaks", `found ${breaks.join(", ")}`, "breaks rise from 0 to π");
  const grid = scanGrid(edges);
  for (const curve of ["top", "widest", "bottom"] as const) {
    const at = grid[curve].findIndex((v) => !Number.isFinite(v));
    if (at >= 0)
      throw new ShapeError(
        curve,
        `found ${grid[curve][at]} at φ = ${grid.phi[at]}`,
        "edges are finite everywhere",
      );
  }
}

function makeStations(
  table: SectionTable,
  centroid: Vec,
): { stations: Station[]; secondX: number; secondZ: number } {
  let secondX = 0;
  let secondZ = 0;
  const stations = table.sections.map((section, i): Station => {
    const ds = table.ds[i] as number;
    const { area, momentZ, secondZ: second } = table.integrals[i] as SectionIntegrals;
    const dx = -section.s - centroid.x;
    secondX += area * dx * dx * ds;
    secondZ += (second - 2 * centroid.z * momentZ + centroid.z * centroid.z * area) * ds;
    return {
      s: section.s,
      top: section.top,
      bottom: section.bottom,
      widest: section.widest,
      halfBreadth: section.halfBreadth,
      exponentAbove: section.exponentAbove,
      exponentBelow: section.exponentBelow,
      ds,
      area,
      centroidZ: area > 0 ? momentZ / area : section.widest,
    };
  });
  return { stations, secondX, secondZ };
}

/** Greatest value of a curve along the body. */
function greatest(edges: Edges, f: (phi: number) => number): number {
  const { phi } = scanGrid(edges);
  return peak(phi, phi.map(f), f);
}
