import type { Vec } from "../base";

/** Small changes in a maker's words. */
export type ChangeWords =
  "0.1 g more" | "1 mm aft" | "1 mm up" | "one coat more" | "one hook size up" | "one hook size down";

/** One small change of an entry. */
export interface SmallChange<Spec, Piece extends string = string> {
  /** The thing in the entry that changes; null for the whole entry. */
  readonly piece: Piece | null;
  readonly change: ChangeWords;
  /** Where it acts, body frame; null: all over the skin. */
  readonly at: Vec | null;
  /** What stands in the place of the entry. */
  readonly entries: readonly Spec[];
}

/** 0.1 g, in kg. */
export const LITTLE_MASS = 1e-4;
const MILLIMETRE = 1e-3;

export const aft = (p: Vec): Vec => ({ x: p.x - MILLIMETRE, z: p.z });
export const up = (p: Vec): Vec => ({ x: p.x, z: p.z + MILLIMETRE });

/** An entry that stands at one place, 1 mm aft and 1 mm up. */
export const moved = <Spec extends { readonly at: Vec }, Piece extends string>(
  spec: Spec,
  piece: Piece | null,
): SmallChange<Spec, Piece>[] => [
  { piece, change: "1 mm aft", at: spec.at, entries: [{ ...spec, at: aft(spec.at) }] },
  { piece, change: "1 mm up", at: spec.at, entries: [{ ...spec, at: up(spec.at) }] },
];

/** A weight or fitting at one place: 0.1 g more, then moved. */
export const heavierOrMoved = <Spec extends { readonly at: Vec; readonly mass: number }>(
  spec: Spec,
): SmallChange<Spec, "item">[] => [
  {
    piece: "item",
    change: "0.1 g more",
    at: spec.at,
    entries: [{ ...spec, mass: spec.mass + LITTLE_MASS }],
  },
  ...moved<Spec, "item">(spec, "item"),
];
