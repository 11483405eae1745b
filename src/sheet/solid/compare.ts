import { scale, sub, add, type Vec } from "../../model/base";
import { MID } from "../../model/bait";
import type { Bait } from "../../model/bait";
import { toSI } from "../../units";
import type { SolvedHalf } from "./solve";

/** A figure by the solid and by the model. SI, body frame. */
export interface Pair<T> {
  readonly solid: T;
  readonly model: T;
}

/** The solid beside the model: two ways to one figure that share nothing but the drawing. */
export interface SolidFigures {
  /** Volume of the outline, m³. */
  readonly volume: Pair<number>;
  /** Wood that is left after all cuts, m³. */
  readonly wood: Pair<number>;
  /** Centres of the whole bait: buoyancy with the solid's outline, gravity with the solid's wood in the body's place. */
  readonly B: Pair<Vec>;
  readonly G: Pair<Vec>;
}

export function solidFigures(bait: Bait, { outer, wood }: Pick<SolvedHalf, "outer" | "wood">): SolidFigures {
  const place = ({ aft, up }: { readonly aft: number; readonly up: number }): Vec => ({
    x: -toSI(aft, "mm"),
    z: toSI(up, "mm"),
  });
  const body = bait.items.find((row) => row.group === "body");
  if (body === undefined) throw new Error("A bait has a body.");
  // The bench may have found the blank larger than it is drawn, in its breadth: the solid is as drawn.
  const drawn = toSI(outer.volume, "mL");
  const left = toSI(wood.volume, "mL");
  const removed = bait.items.reduce((sum, row) => sum + row.removed, 0);
  const rigid = bait.rigid(MID);
  const outline = drawn * bait.volumeFactor;
  const woodNow = left + outline - drawn;
  const swap = (centre: Vec, weight: number, own: Vec, was: number, other: Vec, is: number): Vec =>
    scale(add(sub(scale(centre, weight), scale(own, was)), scale(other, is)), 1 / (weight - was + is));
  const density = body.mass / (bait.shape.volume - removed);
  return {
    volume: { solid: drawn, model: bait.drawn.volume },
    wood: { solid: woodNow, model: bait.shape.volume - removed },
    B: {
      solid: swap(rigid.B, rigid.displaced, body.displacedCentre, body.displaced, place(outer), outline),
      model: rigid.B,
    },
    G: {
      solid: swap(rigid.G, rigid.mass, body.massCentre, body.mass, place(wood), density * woodNow),
      model: rigid.G,
    },
  };
}
