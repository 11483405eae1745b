import type { Vec } from "../model/base";
import type { Snapshot } from "../model/motion";
import type { Ball, Figure, Hanging } from "../model/parts";

/**
 * Geometry for drawing one bait: body frame (x forward, z up, origin at the nose tip), metres. Plain data, made once for
 * each edit by `sceneOf`; the stage draws it and does not know how it was made.
 */
export interface Scene {
  readonly name: string;
  /** m of water; Infinity where the bottom plays no part. */
  readonly depth: number;
  /** Depth up to which weed grows, m; null: none. */
  readonly weed: number | null;
  /** Depths in which the bait is wanted, m, the upper one first; null: none said. */
  readonly zone: { readonly from: number; readonly to: number } | null;
  /** Height of the rod tip above the still surface and line out, m; null without tackle. */
  readonly rod: { readonly tip: number; readonly lineOut: number; readonly lineDiameter: number } | null;
  readonly length: number;
  /** Side outline, closed, without a repeated first point. */
  readonly outline: readonly Vec[];
  /** What the body is made of, as it looks. */
  readonly body: "wood" | "other";
  /** Covers over the whole skin, the first put on first; thickness in m, null where it is not known. */
  readonly coats: readonly { readonly what: string; readonly thickness: number | null }[];
  /** Shading of the skin by its slope: bands from roof to belly, each with its brightness 0–1. */
  readonly tones: readonly { readonly polygon: readonly Vec[]; readonly light: number }[];
  /** The parts seen from the side, in the order in which they are drawn. */
  readonly figures: readonly SceneFigure[];
  /** Every loose ball, in the order of the snapshot's balls, where it lies without a snapshot. */
  readonly balls: readonly Ball[];
  /** What hangs from the eyes, in their order. */
  readonly hangers: readonly Hanging[];
  readonly tie: Vec;
  readonly G: Vec;
  readonly B: Vec;
  /** Box round the level bait with its hooks hanging straight down. */
  readonly extent: Box;
  /** Height that a close picture must show in full, m: for example of a bait that stands on end at the surface. */
  readonly whole?: number;
}

export interface Box {
  readonly minX: number;
  readonly maxX: number;
  readonly minZ: number;
  readonly maxZ: number;
}

/** A figure of a part, and what a pointer finds there. */
export type SceneFigure = Figure & { readonly what: string };

/** A bait at one moment: what is drawn and where it is. */
export interface Posed {
  readonly scene: Scene;
  readonly snapshot: Snapshot;
}

/** Another variant at the same moment, known by its letter, its colour and its dashes. */
export interface Rival extends Posed {
  readonly letter: "A" | "B" | "C" | "D";
}

/** Dashes of the variants, px: what tells them apart without colour, on the stage and in the plots. */
export const RIVAL_DASH: Readonly<Record<Rival["letter"], readonly [number, number]>> = {
  A: [7, 4],
  B: [2.5, 3],
  C: [14, 4],
  D: [5, 8],
};

/** A place on the screen or on paper, px or mm, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}
