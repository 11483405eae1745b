import type { Vec } from "../../model/base";
import type { Snapshot } from "../../model/motion";

/**
 * Geometry for drawing one bait: body frame (x forward, z up, origin at the nose tip), metres. Plain data,
 * made once an edit by `sceneOf`; the stage draws it and knows nothing of how it came about.
 */
export interface Scene {
  readonly name: string;
  /** m of water; Infinity where the bottom plays no part. */
  readonly depth: number;
  /** Height of the rod tip above the still surface and line out, m; null without tackle. */
  readonly rod: { readonly tip: number; readonly lineOut: number; readonly lineDiameter: number } | null;
  readonly length: number;
  /** Side outline, closed, without a repeated first point. */
  readonly outline: readonly Vec[];
  /** Shading of the skin by its slope: bands from roof to belly, each with its brightness 0–1. */
  readonly tones: readonly { readonly polygon: readonly Vec[]; readonly light: number }[];
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
  /** Height that a close picture has to hold wholly, m: of a bait that stands on end at the surface, say. */
  readonly whole?: number;
}

export interface Box {
  readonly minX: number;
  readonly maxX: number;
  readonly minZ: number;
  readonly maxZ: number;
}

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
  /** Radius of the sphere of the hole's volume where a hole is given, m. */
  readonly hole: number | null;
  readonly where: "inside" | "outside";
}

export interface SceneHanger {
  readonly name: string;
  readonly at: Vec;
  readonly ringRadius: number | null;
  /** Drawn length of the hook from eye to bend, m; null without a hook. */
  readonly hookLength: number | null;
}

export interface SceneFitting {
  readonly name: string;
  readonly at: Vec;
  /** Radius of the sphere of its volume, m. */
  readonly radius: number;
  readonly where: "inside" | "outside";
  readonly looksLikeEye: boolean;
}

export interface StageOptions {
  /** Force arrows with their letters. */
  readonly forces: boolean;
  /** Words and numbers beside the marks. */
  readonly labels: boolean;
  /** See into the body. */
  readonly xray: boolean;
  /** Camera keeps the bait in view. */
  readonly follow: boolean;
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

/** How the water is framed: the bait filling the stage, the water column, or out to the rod tip. */
export type Framing = "close" | "water" | "cast";
