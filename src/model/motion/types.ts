import type { Vec, Wrench } from "../base";
import type { Bait } from "../bait";
import type { ForceKey, Surroundings } from "../forces";
import type { Tackle } from "../line";

/** One move of a cadence. SI. */
export type Move =
  | { readonly do: "settle"; readonly for: number }
  /** Reel at a speed, for a time or for a length (the other is null). */
  | { readonly do: "reel"; readonly speed: number; readonly for: number | null; readonly length: number | null }
  | { readonly do: "pause"; readonly for: number }
  /** The rod tip travels `travel` m away from the bait in `in` s, and comes back in `back` s. */
  | { readonly do: "twitch"; readonly travel: number; readonly in: number; readonly back: number }
  /** Line given freely: the tether cannot pull. */
  | { readonly do: "slack"; readonly for: number }
  /** Rod tip raised by `height` m in `in` s, and stays there. */
  | { readonly do: "lift"; readonly height: number; readonly in: number }
  /** The line is let go for good; the bait is free from here. */
  | { readonly do: "release"; readonly for: number };

export interface RunSetup {
  readonly bait: Bait;
  readonly around: Surroundings;
  readonly tackle: Tackle | null;
  readonly cadence: readonly Move[];
  /** Where and how it starts. "afloat": at the rest pose on the surface or, for a sinker, just under it; a pose otherwise. */
  readonly start: "afloat" | { readonly depth: number; readonly pitch: number | "rest" };
  readonly bibFactor: number;
  /** Steps per second, default 960. */
  readonly rate: number;
  /** Frames kept per second, default 60; divides `rate`. */
  readonly frameRate: number;
  /** Seed of the only randomness (where balls lie when they start); default 1. */
  readonly seed: number;
}

/** What a stage draws at one moment: places in the world frame, m, rad, N. Knows nothing of how it came about. */
export interface Snapshot {
  readonly time: number;
  /** Nose tip (origin of the body frame) in the world, and pitch. */
  readonly nose: Vec;
  readonly pitch: number;
  readonly G: Vec;
  readonly B: Vec;
  /** Velocity of G in the world, m/s. */
  readonly velocity: Vec;
  readonly eye: Vec;
  readonly hooks: readonly { readonly at: Vec; readonly angle: number }[];
  readonly balls: readonly Vec[];
  /** From the tie eye to the rod tip; empty where there is no line. `slack` where it carries nothing. */
  readonly line: readonly Vec[];
  readonly slack: boolean;
  readonly tension: number;
  /** Force vectors in the world with their point of attack. */
  readonly forces: readonly { readonly key: ForceKey; readonly at: Vec; readonly force: Vec }[];
}

/** Names of the plotted channels, one number a frame. */
export type Channel = "depth" | "pitch" | "speed" | "tension";

/** A finished or growing recording. Frame i is at time i / frameRate. */
export interface Recording {
  readonly frameRate: number;
  readonly frames: number;
  readonly duration: number;
  /** Starts of the cadence's moves, s, with their words, for marks along the time axis. */
  readonly marks: readonly { readonly time: number; readonly label: string }[];
  /** depth of the tie eye (m, down positive), pitch (rad), speed of G (m/s), tension (N). */
  channel(name: Channel): Float64Array;
  /** Wrench by force at a frame, body axes about G. */
  wrench(frame: number): ReadonlyMap<ForceKey, Wrench>;
  /** Blended between frames; time clamped to [0, duration]. */
  at(time: number): Snapshot;
  /** FNV-1a hash of all stored numbers' bits: equal for equal recordings. */
  hash(): string;
}
