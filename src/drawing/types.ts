import type { Vec } from "../model/base";
import type { Snapshot } from "../model/motion";
import type { Figure } from "../model/parts";

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
  /** Coats over the body, the first put on first; thickness in m, null where the file gives a mass instead. */
  readonly coats: readonly { readonly name: string; readonly thickness: number | null }[];
  /** Shading of the skin by its slope: bands from roof to belly, each with its brightness 0–1. */
  readonly tones: readonly { readonly polygon: readonly Vec[]; readonly light: number }[];
  /** The parts seen from the side, in the order in which they are drawn. */
  readonly figures: readonly SceneFigure[];
  /** The same parts by their kinds, for views that show them otherwise. */
  readonly bib: { readonly plate: readonly Vec[]; readonly tongue: readonly Vec[] } | null;
  readonly wires: readonly SceneWire[];
  readonly ballast: readonly SceneBallast[];
  readonly chambers: readonly { readonly name: string; readonly box: readonly Vec[] }[];
  /** Radius of every loose ball, in the order of the snapshot's balls, and where it lies without a snapshot. */
  readonly balls: readonly { readonly radius: number; readonly at: Vec }[];
  readonly hangers: readonly SceneHanger[];
  readonly fittings: readonly SceneFitting[];
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

export interface SceneWire {
  readonly name: string;
  readonly diameter: number;
  readonly inside: readonly (readonly Vec[])[];
  readonly outside: readonly (readonly Vec[])[];
}

export interface SceneBallast {
  readonly name: string;
  readonly at: Vec;
  /** Radius of the sphere of the slug's volume, m. */
  readonly radius: number;
  /** Width and depth of the hole where one is given, m: a cylinder as deep as wide. */
  readonly hole: number | null;
  readonly where: "inside" | "outside";
}

export interface SceneHanger {
  readonly name: string;
  readonly at: Vec;
  readonly ringRadius: number | null;
  /** Drawn length of the hook from eye to bend, m; null without a hook. */
  readonly hookLength: number | null;
  /** Between shank and point, m, where the file says it. */
  readonly gape: number | null;
}

export interface SceneFitting {
  readonly name: string;
  readonly at: Vec;
  /** Radius of the sphere of its volume, m. */
  readonly radius: number;
  readonly where: "inside" | "outside";
  readonly looksLikeEye: boolean;
}

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
