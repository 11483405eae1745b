import type { Manifold, ManifoldToplevel } from "manifold-3d";
import type { Bait } from "../../model/bait";
import { sin } from "../../model/base";
import { holesOf } from "../templates/holes";
import { cutsOf, type Cut, type Place } from "./cuts";
import { enclosed, halfBody, openEdges, type Mesh } from "./mesh";

/** A body of triangles as it was measured: the whole bait, both halves. mL and mm. */
export interface Measured {
  readonly volume: number;
  /** Centroid: aft of the nose tip, and up from the datum line. */
  readonly aft: number;
  readonly up: number;
}

/** The right half of the wood with all that is cut into it, and what was measured on the way. Plain data. */
export interface SolvedHalf {
  readonly mesh: Mesh;
  /** The outline alone, before anything was cut. */
  readonly outer: Measured;
  readonly wood: Measured;
  /** Edges, and how many of them do not join exactly two triangles: 0. */
  readonly edges: number;
  readonly open: number;
  readonly cuts: readonly string[];
  /** Weights whose holes come out of the wood: there is no such half to be made of it. */
  readonly out: readonly string[];
}

/** Corners of a round bore. Its radius is made larger, so that the polygon has the circle's area. */
const CORNERS = 48;
const MICROLITRE = 1e-3;

const measured = (mesh: Mesh): Measured => {
  const { volume, x, z } = enclosed(mesh);
  return { volume: 2 * volume * MICROLITRE, aft: x, up: z };
};

/**
 * Makes the right half by a solid library: the half body less each cut. `heard` is told how far it is.
 *
 * @throws Error where the library finds that a solid is not closed
 */
export function solveHalf(
  kernel: ManifoldToplevel,
  bait: Bait,
  drills: readonly number[],
  heard: (done: number, of: number, what: string) => void = () => undefined,
): SolvedHalf {
  const cuts = cutsOf(bait, drills);
  const of = cuts.length + 2;
  heard(0, of, "the outline");
  const drawn = halfBody(bait.drawn);
  let solid = new kernel.Manifold(
    new kernel.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(drawn.points),
      triVerts: drawn.triangles,
    }),
  );
  check(solid, "the outline");
  cuts.forEach((cut, i) => {
    heard(i + 1, of, cut.what);
    const tool = toolOf(kernel, cut);
    const next = solid.subtract(tool);
    tool.delete();
    solid.delete();
    solid = next;
    check(solid, cut.what);
  });
  heard(of - 1, of, "its triangles");
  const made = solid.getMesh();
  const mesh: Mesh = { points: pointsOf(made), triangles: Uint32Array.from(made.triVerts) };
  solid.delete();
  const { edges, open } = openEdges(mesh);
  return {
    mesh,
    outer: measured(drawn),
    wood: measured(mesh),
    edges,
    open,
    cuts: cuts.map((cut) => cut.what),
    out: holesOf(bait, drills)
      .filter(({ wall }) => wall <= 0)
      .map(({ name }) => name),
  };
}

function check(solid: Manifold, after: string): void {
  const status = solid.status();
  if (status !== "NoError") throw new Error(`After ${after} the solid is not closed (${status}).`);
}

/** The three coordinates of each point: further properties, which the library may add, are left out. */
function pointsOf({
  numProp,
  vertProperties,
}: {
  numProp: number;
  vertProperties: Float32Array;
}): Float64Array {
  const count = vertProperties.length / numProp;
  return Float64Array.from({ length: 3 * count }, (_, i) => {
    const at = Math.floor(i / 3) * numProp + (i % 3);
    return vertProperties[at] ?? 0;
  });
}

function toolOf(kernel: ManifoldToplevel, cut: Cut): Manifold {
  switch (cut.is) {
    case "box": {
      const [a, b] = [cut.from, cut.to];
      const cube = kernel.Manifold.cube([b[0] - a[0], b[1] - a[1], b[2] - a[2]]);
      return moved(cube, [1, 0, 0], [0, 1, 0], [0, 0, 1], a);
    }
    case "bore": {
      const [a, b] = [cut.from, cut.to];
      const way: Place = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
      const length = Math.sqrt(dot(way, way));
      const turn = (2 * Math.PI) / CORNERS;
      const radius = (cut.diameter / 2) * Math.sqrt(turn / sin(turn));
      const z: Place = [way[0] / length, way[1] / length, way[2] / length];
      // Any direction across it; one that does not lie along it.
      const [across, other] = frameOf(z);
      return moved(kernel.Manifold.cylinder(length, radius, radius, CORNERS), across, other, z, a);
    }
    case "slot": {
      const { along, length, wide, thick, middle } = cut;
      const cube = kernel.Manifold.cube([length, wide, thick], true);
      return moved(cube, [along[0], 0, along[1]], [0, 1, 0], [-along[1], 0, along[0]], middle);
    }
  }
}

const dot = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

const cross = (a: Place, b: Place): Place => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Two directions across a unit vector; all three make a right-handed frame. */
function frameOf(z: Place): readonly [Place, Place] {
  const aside: Place = Math.abs(z[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0];
  const x = cross(aside, z);
  const size = Math.sqrt(dot(x, x));
  const unit: Place = [x[0] / size, x[1] / size, x[2] / size];
  return [unit, cross(z, unit)];
}

/** A tool in its place: its axes as these unit vectors, its origin at a place. Column by column, as the library reads it. */
function moved(tool: Manifold, x: Place, y: Place, z: Place, to: Place): Manifold {
  const next = tool.transform([...x, 0, ...y, 0, ...z, 0, ...to, 1]);
  tool.delete();
  return next;
}
