import { add, asin, cos, curvePoints, pow, scale, sin, vec } from "../base";
import type { Vec } from "../base";
import type { Piece, Stuff } from "./types";

/** A flat plate that dives the bait: a part outside the body, and a tongue in a slot. */
export interface BibSpec {
  readonly root: Vec;
  /** β, rad: 0 straight ahead along the datum line, opening downward. */
  readonly angle: number;
  /** Length outside the body, m. */
  readonly length: number;
  readonly width: number;
  /** Length in the slot, m. */
  readonly slot: number;
  /** Of a bent bib: the tongue's angle, counted as the plate's, rad. Absent: the tongue runs straight on from the plate. */
  readonly slotAngle?: number;
  readonly thickness: number;
  readonly outline: "square" | "round";
  readonly stuff: Stuff;
}

/** The bib as a plate: the part outside the body and the tongue in its slot. Body frame; m, m², m³. */
export interface BibPlate {
  /** From root to tip along the plate, (cos β, −sin β); and the normal of its front face, (sin β, cos β). */
  readonly along: Vec;
  readonly normal: Vec;
  readonly tip: Vec;
  /** Area of the outline outside the body, its centroid, and the middle of its length. */
  readonly area: number;
  readonly centroid: Vec;
  readonly middle: Vec;
  readonly volume: number;
  /** Pieces that go under one by one; volume and first moment are the plate's. */
  readonly pieces: readonly Piece[];
  readonly tongue: {
    /** From the slot's end to the root: the plate's own direction, unless the bib is bent at its root. */
    readonly along: Vec;
    readonly width: number;
    readonly volume: number;
    readonly middle: Vec;
  };
}

/** The tongue's angle: its own where the bib is bent at the root, else the plate's. rad. */
export const slotAngle = (bib: BibSpec): number => bib.slotAngle ?? bib.angle;

/** From the slot's end to the root. */
export const tongueAlong = (bib: BibSpec): Vec => vec(cos(slotAngle(bib)), -sin(slotAngle(bib)));

/** Strips that stand for the half ellipse of a round bib when it is partly under. */
const ROUND_STRIPS = 8;

/** Area and first moment (about the root's edge, along the plate) of the outline's parts, from root to tip. */
function strips(bib: BibSpec): { from: number; to: number; area: number; centroid: number }[] {
  const { length, width } = bib;
  if (bib.outline === "square") return [{ from: 0, to: length, area: width * length, centroid: length / 2 }];
  // Round: full width, closed by a half ellipse with semi-axes width/2 across and c = min(width/2, length) along.
  const c = Math.min(width / 2, length);
  const straight = length - c;
  const parts =
    straight > 0 ? [{ from: 0, to: straight, area: width * straight, centroid: straight / 2 }] : [];
  // Half ellipse up to ξ = c·u: area (w c/2)(asin u + u√(1−u²)), first moment (w c²/3)(1 − (1−u²)^(3/2)).
  const area = (u: number): number => ((width * c) / 2) * (asin(u) + u * Math.sqrt(Math.max(0, 1 - u * u)));
  const moment = (u: number): number => ((width * c * c) / 3) * (1 - pow(Math.max(0, 1 - u * u), 1.5));
  for (let i = 0; i < ROUND_STRIPS; i++) {
    const u0 = sin((Math.PI / 2) * (i / ROUND_STRIPS));
    const u1 = i + 1 === ROUND_STRIPS ? 1 : sin((Math.PI / 2) * ((i + 1) / ROUND_STRIPS));
    const a = area(u1) - area(u0);
    parts.push({
      from: straight + c * u0,
      to: straight + c * u1,
      area: a,
      centroid: straight + (moment(u1) - moment(u0)) / a,
    });
  }
  return parts;
}

/**
 * Geometry of a bib (docs/model.md §3): the outside part runs from the root by `length` along the angle β, and the
 * tongue from the root into the slot, straight on or bent, as wide as the body at the slot's middle.
 *
 * @param halfBreadthAt the body's half-breadth (m) at a station (m); asked once, at the slot's middle
 */
export function bibPlate(bib: BibSpec, halfBreadthAt: (station: number) => number): BibPlate {
  const along = vec(cos(bib.angle), -sin(bib.angle));
  const normal = vec(sin(bib.angle), cos(bib.angle));
  const at = (distance: number): Vec => add(bib.root, scale(along, distance));
  const parts = strips(bib);
  const area = parts.reduce((sum, p) => sum + p.area, 0);
  const centroid = parts.reduce((sum, p) => sum + p.area * p.centroid, 0) / area;
  const back = tongueAlong(bib);
  const middleOfSlot = add(bib.root, scale(back, -bib.slot / 2));
  const tongueWidth = bib.slot > 0 ? Math.min(bib.width, 2 * halfBreadthAt(-middleOfSlot.x)) : 0;
  return {
    along,
    normal,
    tip: at(bib.length),
    area,
    centroid: at(centroid),
    middle: at(bib.length / 2),
    volume: area * bib.thickness,
    pieces: parts.map((p) => {
      const half = (p.to - p.from) / 2;
      return {
        a: at(p.centroid - half),
        b: at(p.centroid + half),
        volume: p.area * bib.thickness,
      };
    }),
    tongue: {
      along: back,
      width: tongueWidth,
      volume: tongueWidth * bib.slot * bib.thickness,
      middle: middleOfSlot,
    },
  };
}

/**
 * The bib's outline in its own plane: x along the plate from the root, z across. A round bib has its full width up to a
 * half ellipse with semi-axes width/2 across and min(width/2, length) along (docs/model.md §3).
 */
export function bibOutline({ length, width, outline }: BibSpec): Vec[] {
  const half = width / 2;
  if (outline === "square")
    return [
      { x: 0, z: half },
      { x: length, z: half },
      { x: length, z: -half },
      { x: 0, z: -half },
    ];
  const c = Math.min(half, length);
  const end = curvePoints(
    (t) => ({ x: length - c + c * cos(t), z: half * sin(t) }),
    [Math.PI / 2, 0, -Math.PI / 2],
  );
  return length > c ? [{ x: 0, z: half }, ...end, { x: 0, z: -half }] : end;
}

/** Half of the bib's width at a distance from its root along the plate, m. */
export function halfWidth({ length, width, outline }: BibSpec, distance: number): number {
  const c = Math.min(width / 2, length);
  const u = (distance - (length - c)) / c;
  return outline === "square" || u <= 0 ? width / 2 : (width / 2) * Math.sqrt(Math.max(0, 1 - u * u));
}
