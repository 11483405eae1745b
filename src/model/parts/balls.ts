import { vec } from "../base";
import type { Vec } from "../base";
import type { BallSide, Stuff } from "./types";

/** Loose balls of one size in a chamber. */
export interface BallsSpec {
  readonly count: number;
  readonly diameter: number;
  readonly stuff: Stuff;
}

/** The box that the balls roll in: stations and heights as in a chamber, m. */
interface Box {
  readonly from: number;
  readonly to: number;
  readonly height: number;
  readonly tall: number;
  readonly wide: number;
}

/** ⌊a/b⌋, where a quotient that is whole but for round-off counts as whole (8 mm / 4 mm is 2). */
const fits = (a: number, b: number): number => Math.floor(a / b + 1e-9);

/** How many balls of a size a chamber's box takes: balls in a rank across, ranks in a layer, layers. */
export function ballRoom(
  chamber: Box,
  balls: BallsSpec,
): { readonly perRank: number; readonly ranks: number; readonly layers: number; readonly capacity: number } {
  const perRank = fits(chamber.wide, balls.diameter);
  const ranks = fits(chamber.to - chamber.from, balls.diameter);
  const layers = fits(chamber.tall, balls.diameter);
  return { perRank, ranks, layers, capacity: perRank * ranks * layers };
}

/**
 * Centres of a chamber's loose balls in the plane of symmetry, body frame, m (docs/model.md §3): ranks of
 * ⌊wide/d⌋ balls on the lower long face, rank j centred (j + ½)d from the lower end, a full layer of ⌊length/d⌋
 * ranks carries the next, d higher. At "mid" every ball is at the middle of the length, in its layer.
 */
export function ballPlaces(chamber: Box & { readonly balls: BallsSpec | null }, side: BallSide): Vec[] {
  const { balls } = chamber;
  if (!balls) return [];
  const d = balls.diameter;
  const { perRank, ranks } = ballRoom(chamber, balls);
  return Array.from({ length: balls.count }, (_, i) => {
    const rank = Math.floor(i / perRank);
    const along = ((rank % ranks) + 0.5) * d;
    const up = (Math.floor(rank / ranks) + 0.5) * d;
    const station =
      side.end === "nose"
        ? chamber.from + along
        : side.end === "tail"
          ? chamber.to - along
          : (chamber.from + chamber.to) / 2;
    const face = side.face === "floor" ? -chamber.tall / 2 + up : chamber.tall / 2 - up;
    return vec(-station, chamber.height + face);
  });
}

/**
 * Where loose balls lie at a pitch, given by its sine and cosine: at the lower end of the lower long face. At exactly level
 * they lie at the tail, upright on the floor. At rest, under tow and in the swim this one rule holds.
 */
export const lowSide = (sinPitch: number, cosPitch: number): BallSide => ({
  end: sinPitch < 0 ? "nose" : "tail",
  face: cosPitch < 0 ? "roof" : "floor",
});
