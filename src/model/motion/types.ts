import type { Vec, Wrench } from "../base";
import type { Bait } from "../bait";
import type { ForceKey, Surroundings } from "../forces";
import type { Tackle } from "../line";

/** One move of a cadence. SI. */
export type Move = (
  | { readonly do: "settle"; readonly for: number }
  /** Reel at a speed, for a time or for a length (the other is null). */
  | {
      readonly do: "reel";
      readonly speed: number;
      readonly for: number | null;
      readonly length: number | null;
    }
  | { readonly do: "pause"; readonly for: number }
  /** The rod tip travels `travel` m away from the bait in `in` s, and comes back in `back` s. */
  | { readonly do: "twitch"; readonly travel: number; readonly in: number; readonly back: number }
  /** Line given freely: the tether cannot pull. */
  | { readonly do: "slack"; readonly for: number }
  /** Rod tip raised by `height` m in `in` s, and stays there. */
  | { readonly do: "lift"; readonly height: number; readonly in: number }
  /** The line is let go for good; the bait is free from here. */
  | { readonly do: "release"; readonly for: number }
) & {
  /** Where it stands in the file, for messages, e.g. "cadence[2].moves[1]"; absent: at its place in the cadence. */
  readonly place?: string;
};

export interface RunSetup {
  readonly bait: Bait;
  readonly around: Surroundings;
  readonly tackle: Tackle | null;
  readonly cadence: readonly Move[];
  /** Where and how it starts. "afloat": at the rest pose on the surface or, for a sinker, just under it; a pose otherwise. */
  readonly start: "afloat" | { readonly depth: number; readonly pitch: number | "rest" };
  readonly bibFactor: number;
  /** How the line is computed: in segments with weight and drag (default), or as a bare spring, for comparison. */
  readonly line?: "segments" | "tether";
  /** Steps per second, default 960. */
  readonly rate: number;
  /** Frames kept per second, default 60; divides `rate`. */
  readonly frameRate: number;
  /** Seed of the only randomness (where balls lie when they start); default 1. */
  readonly seed: number;
}

/** What a stage draws at one moment: places in the world frame, m, rad, N. It does not say how it was computed. */
export interface Snapshot {
  readonly time: number;
  /** Nose tip (origin of the body frame) in the world, and pitch. */
  readonly nose: Vec;
  readonly pitch: number;
  /** Of the whole bait: hooks at their eyes, balls where they are; B of what is under water. */
  readonly G: Vec;
  readonly B: Vec;
  /** Velocity of G in the world, m/s. */
  readonly velocity: Vec;
  readonly eye: Vec;
  /** Hanger eye, and the hook's angle from hanging straight down, rad, counter-clockwise (nose-up) positive. */
  readonly hooks: readonly { readonly at: Vec; readonly angle: number }[];
  /** Centres. */
  readonly balls: readonly Vec[];
  /** From the tie eye to the rod tip; empty where there is no line. `slack` where it carries nothing. */
  readonly line: readonly Vec[];
  readonly slack: boolean;
  readonly tension: number;
  /** Force vectors in the world with their point of attack. */
  readonly forces: readonly { readonly key: ForceKey; readonly at: Vec; readonly force: Vec }[];
}

/** Names of the channels, one number for each frame: those that are plotted, and those from which events are found. */
export type Channel = "depth" | "pitch" | "speed" | "tension" | "x" | "rise" | "top" | "low" | "slack";

/** One move of the cadence as it was done, in time. */
export interface Leg {
  /** Its place in the cadence. */
  readonly index: number;
  readonly move: Move;
  /** s */
  readonly start: number;
  readonly end: number;
  /** A reel that ended early because the line was in. */
  readonly cut: boolean;
}

/** A moment on the time axis with its words. */
export interface Mark {
  /** s */
  readonly time: number;
  readonly label: string;
}

/** A hook, with its ring, that swings at its hanger. */
export interface HangingHook {
  /** The hanger's name, and its eye in the body frame. */
  readonly name: string;
  readonly at: Vec;
  /** kg and m³ of hook and ring. */
  readonly mass: number;
  readonly displaced: number;
  /** From the eye to the lowest point and to the centre of mass as it hangs, m. */
  readonly length: number;
  readonly centre: number;
  /** Pitch inertia about the centre of mass, kg·m². */
  readonly inertia: number;
  /** Drag area C_d·A, m². */
  readonly dragArea: number;
}

/** What a recording must know besides its numbers. Plain data. */
export interface RecordingMeta {
  readonly rate: number;
  readonly frameRate: number;
  /** Of the whole run: frames (the first is at time 0) and s. */
  readonly frames: number;
  readonly duration: number;
  readonly marks: readonly Mark[];
  /** Numbers a frame. */
  readonly stride: number;
  /** Body frame: centre of gravity of what the engine moves as one rigid body, and the tie eye. */
  readonly centre: Vec;
  readonly tie: Vec;
  readonly hooks: readonly HangingHook[];
  /** Diameter of each loose ball, m. */
  readonly balls: readonly number[];
  /** Points of the line (0 without tackle). */
  readonly linePoints: number;
  /**
   * The forces in the order of their columns, each with the point (body frame) where its arrow usually stands. Weight and
   * buoyancy have their own, G and B.
   */
  readonly forces: readonly { readonly key: ForceKey; readonly anchor: Vec }[];
  /** Half the body's length, m: an arrow is drawn no farther than this from its usual place. */
  readonly arm: number;
  /** The moves as they are done, also those that take no time. */
  readonly legs: readonly Leg[];
  /** What touches the floor: the convex polygon round body and bib, body frame, m. */
  readonly hull: readonly Vec[];
  /** Of the water, m. */
  readonly floor: number;
}

/** Consecutive frames of a run. Plain data; `data` may be transferred. */
export interface RecordingChunk {
  readonly firstFrame: number;
  readonly frames: number;
  /** frames × stride numbers. */
  readonly data: Float64Array;
}

/** A run under way. */
export interface Run {
  readonly meta: RecordingMeta;
  /** True when the last frame has been given out. */
  readonly done: boolean;
  /** Computes at most `frames` further frames (fewer at the end). Throws MotionError. */
  advance(frames: number): RecordingChunk;
}

/** A finished or growing recording. Frame i is at time i / frameRate. */
export interface Recording {
  readonly frameRate: number;
  readonly frames: number;
  readonly duration: number;
  /** Starts of the cadence's moves, s, with their words, for marks along the time axis. */
  readonly marks: readonly { readonly time: number; readonly label: string }[];
  /**
   * depth of the tie eye (m, down positive), pitch (rad), speed of G (m/s), tension (N); x of the tie eye (m along the
   * retrieve, 0 at the start), rise of G (m/s, up positive), top and low: depth of the highest and lowest point of body
   * and bib (m, down positive), slack (1 where there is a line and it pulls nothing, else 0).
   */
  channel(name: Channel): Float64Array;
  /**
   * Wrench by force at a frame, body axes about the whole bait's G. Weight and buoyancy count hooks at their eyes and
   * balls where they are; "hooks" is what hooks pull beyond their weight in water, "contact" what balls, floor and walls
   * push beyond the balls' weight. Their sum is what acts on the bait.
   */
  wrench(frame: number): ReadonlyMap<ForceKey, Wrench>;
  /** Blended between frames; time clamped to [0, duration]. */
  at(time: number): Snapshot;
  /** FNV-1a hash of all stored numbers' bits: equal for equal recordings. */
  hash(): string;
}
