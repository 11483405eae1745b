import type { Vec } from "../base";
import { cos, sin } from "../base";
import { MotionError } from "./error";
import type { Tackle } from "../line";
import type { Leg, Mark, Move } from "./types";

/** The line is in when what is left reaches from the rod tip this far under the surface, m. Common practice, no source. */
export const LINE_IN = 0.3;

/** Time in which a hand brings the reel from one speed to another, s. Common practice, no source. */
const REEL_RAMP = 0.1;

/** The two lengths of the tackle (m) that a cadence depends on. */
export type LineReach = Pick<Tackle, "lineOut" | "rodTip">;

/** What rod and reel do at one moment. World frame, m, m/s. */
export interface RodState {
  x: number;
  z: number;
  vx: number;
  vz: number;
  /** Line wound in since the start, m, and how fast, m/s. */
  wound: number;
  winding: number;
  /** The reel gives line freely: it cannot pull. */
  free: boolean;
  /** The line is let go for good. */
  gone: boolean;
}

/** A cadence laid out in time: what rod and reel do at any moment, and the marks along the time axis. */
export interface Timeline {
  /** s */
  readonly duration: number;
  readonly marks: readonly Mark[];
  readonly legs: readonly Leg[];
  /** Rod and reel at `time` (s, not less than at the call before), written to `out`. */
  at(time: number, out: RodState): void;
}

/** Time that a move takes, s. */
export function moveDuration(move: Move): number {
  switch (move.do) {
    case "reel":
      return move.for ?? (move.length ?? 0) / move.speed;
    case "twitch":
      return move.in + move.back;
    case "lift":
      return move.in;
    default:
      return move.for;
  }
}

const figure = (value: number): string => String(Number(value.toPrecision(3)));

function words(move: Move): string {
  switch (move.do) {
    case "reel":
      return `reel ${figure(move.speed)} m/s`;
    case "twitch":
      return `twitch ${figure(move.travel)} m`;
    case "lift":
      return move.height < 0 ? `lower ${figure(-move.height)} m` : `lift ${figure(move.height)} m`;
    default:
      return move.do;
  }
}

/** Where a move stands, for messages: in the file if that has it at another place than the cadence. */
export const placeOf = (move: Move, index: number): string => move.place ?? `cadence[${index}]`;

function check(cadence: readonly Move[], tackle: LineReach | null): void {
  let gone = false;
  cadence.forEach((move, i) => {
    const place = (key: string): string => `${placeOf(move, i)}.${key}`;
    const need = (key: string, value: number, ok: boolean, allowed: string): void => {
      if (!ok || !Number.isFinite(value))
        throw new MotionError(place(key), value, null, `a ${move.do} needs ${allowed}`, "Correct this move");
    };
    switch (move.do) {
      case "reel":
        need("speed", move.speed, move.speed > 0, "a speed above 0 m/s");
        if ((move.for === null) === (move.length === null))
          throw new MotionError(
            place("for"),
            move.for,
            null,
            "a reel goes on for a time or for a length of line",
            "Give one of the two",
          );
        if (move.for !== null) need("for", move.for, move.for >= 0, "a time of 0 s or more");
        if (move.length !== null) need("length", move.length, move.length >= 0, "a length of 0 m or more");
        break;
      case "twitch":
        need("travel", move.travel, true, "a travel in m");
        need("in", move.in, move.in > 0, "a time above 0 s");
        need("back", move.back, move.back > 0, "a time above 0 s");
        break;
      case "lift":
        need("height", move.height, true, "a height in m");
        need("in", move.in, move.in > 0, "a time above 0 s");
        break;
      default:
        need("for", move.for, move.for >= 0, "a time of 0 s or more");
    }
    const pulls = move.do === "reel" || move.do === "twitch" || move.do === "lift";
    if (pulls && tackle === null)
      throw new MotionError(
        place("do"),
        move.do,
        null,
        "there is no tackle",
        "Give a tackle, or leave this move out",
      );
    if (pulls && gone)
      throw new MotionError(
        place("do"),
        move.do,
        null,
        "the line was let go in an earlier move",
        "Put the release after it",
      );
    gone ||= move.do === "release";
  });
}

/** Line that is out and height of the rod tip, m, between two moves. */
interface Left {
  out: number;
  tip: number;
}

const atStart = (tackle: LineReach | null): Left => ({ out: tackle?.lineOut ?? 0, tip: tackle?.rodTip ?? 0 });

/** Line that a reel can still take in, m. */
const reelable = ({ out, tip }: Left): number => Math.max(0, out - Math.max(0, tip) - LINE_IN);

/** Does one move. Returns the line, m, that its reel asks for and that it gets; `left` is what is left after it. */
function takeIn(move: Move, left: Left): { readonly wanted: number; readonly length: number } {
  if (move.do === "lift") left.tip += move.height;
  if (move.do !== "reel") return { wanted: 0, length: 0 };
  const wanted = move.length ?? move.speed * (move.for ?? 0);
  const length = Math.min(wanted, reelable(left));
  left.out -= length;
  return { wanted, length };
}

/** Less line than this is no line, m: sums of lengths have an error of this order. */
const NO_LINE = 1e-9;

/**
 * How often a round of moves is done until the line is in: the round in which a reel finds no more line is the last, and is
 * done to its end. At least once. `before`: the moves that come earlier. Null where the line is not in after `most` rounds.
 */
export function roundsUntilIn(
  before: readonly Move[],
  round: readonly Move[],
  tackle: LineReach,
  most: number,
): number | null {
  const left = atStart(tackle);
  for (const move of before) takeIn(move, left);
  for (let rounds = 1; rounds <= most; rounds += 1) {
    let isIn = false;
    for (const move of round) {
      const { wanted, length } = takeIn(move, left);
      if (move.do === "reel" && (length < wanted || reelable(left) <= NO_LINE)) isIn = true;
    }
    if (isIn) return rounds;
  }
  return null;
}

/** A cadence whose reels end where the line is in, and the indices of the reels that were cut short. */
export interface TrimmedCadence {
  readonly moves: readonly Move[];
  readonly cut: readonly number[];
}

/**
 * The cadence as it can be done with this tackle (null: without): a reel ends where the line is in, that is when what is left
 * reaches from the rod tip 0.3 m under the surface, so that the bait stays in the water. Line drawn off in a settle or slack
 * is not counted: its amount depends on the run. Throws MotionError where a move has an impossible value or needs a line that
 * is not there.
 */
export function trimCadence(cadence: readonly Move[], tackle: LineReach | null): TrimmedCadence {
  check(cadence, tackle);
  const left = atStart(tackle);
  const cut: number[] = [];
  const moves = cadence.map((move, i): Move => {
    const { wanted, length } = takeIn(move, left);
    if (move.do !== "reel" || length === wanted) return move;
    cut.push(i);
    return { ...move, for: null, length };
  });
  return { moves, cut };
}

/** The moves in time as they can be done with this tackle (null: without), those of no duration too. Throws as `trimCadence`. */
export function legsOf(cadence: readonly Move[], tackle: LineReach | null): readonly Leg[] {
  const { moves, cut } = trimCadence(cadence, tackle);
  let start = 0;
  return moves.map((move, index) => {
    const end = start + moveDuration(move);
    const leg = { index, move, start, end, cut: cut.includes(index) };
    start = end;
    return leg;
  });
}

/** Share of a travel done at the share `f` of its time, and its rate: the velocity is a raised cosine, 1 − cos 2πf. */
const eased = (f: number): number => f - sin(2 * Math.PI * f) / (2 * Math.PI);
const easedRate = (f: number): number => 1 - cos(2 * Math.PI * f);

interface Stretch {
  readonly start: number;
  readonly duration: number;
  readonly move: Move;
  /** Rod tip and wound line at the start, winding speed before and in this move. */
  readonly x: number;
  readonly z: number;
  readonly wound: number;
  readonly before: number;
  readonly speed: number;
  readonly ramp: number;
  readonly gone: boolean;
}

/** Line wound in over `s` seconds of a leg: speed from v₀ to v₁ by half a cosine over the ramp, then v₁. */
function woundAfter(leg: Stretch, s: number): number {
  const { before, speed, ramp } = leg;
  if (s >= ramp) return (ramp * (before + speed)) / 2 + speed * (s - ramp);
  return before * s + (speed - before) * (s / 2 - (ramp / (2 * Math.PI)) * sin((Math.PI * s) / ramp));
}

function windingAfter(leg: Stretch, s: number): number {
  const { before, speed, ramp } = leg;
  return s >= ramp ? speed : before + ((speed - before) * (1 - cos((Math.PI * s) / ramp))) / 2;
}

/**
 * Lays the moves out in time. The rod tip moves with finite acceleration: away from the bait is along +X, a lift along
 * +Z. The reel takes 0.1 s to change its speed, at the start of a move and, as it runs out, at the start of the next, so
 * that a reel of v m/s for t s winds in v·t metres.
 * `tip` is the rod tip's place at the start, world frame, m; `tackle` null: the bait is free from the start.
 */
export function timeline(cadence: readonly Move[], tackle: LineReach | null, tip: Vec): Timeline {
  const { moves, cut } = trimCadence(cadence, tackle);
  const stretches: Stretch[] = [];
  const marks: Mark[] = [];
  let start = 0;
  const { x } = tip;
  let { z } = tip;
  let wound = 0;
  let before = 0;
  let gone = tackle === null;
  moves.forEach((move, i) => {
    const duration = moveDuration(move);
    const speed = move.do === "reel" ? move.speed : 0;
    gone ||= move.do === "release";
    marks.push({ time: start, label: words(move) });
    if (cut.includes(i)) marks.push({ time: start + duration, label: "line is in" });
    if (duration === 0) return;
    const leg: Stretch = {
      start,
      duration,
      move,
      x,
      z,
      wound,
      before,
      speed,
      ramp: Math.min(REEL_RAMP, duration),
      gone,
    };
    stretches.push(leg);
    start += duration;
    if (move.do === "lift") z += move.height;
    wound += woundAfter(leg, duration);
    before = speed;
  });

  let current = 0;
  return {
    duration: start,
    marks,
    legs: legsOf(cadence, tackle),
    at(time, out) {
      let leg = stretches[current];
      let next = stretches[current + 1];
      while (next !== undefined && time >= next.start) {
        leg = next;
        next = stretches[++current + 1];
      }
      if (leg === undefined) {
        Object.assign(out, { x, z, vx: 0, vz: 0, wound: 0, winding: 0, free: false, gone });
        return;
      }
      const { move } = leg;
      const s = Math.min(time - leg.start, leg.duration);
      out.x = leg.x;
      out.z = leg.z;
      out.vx = 0;
      out.vz = 0;
      out.wound = leg.wound + woundAfter(leg, s);
      out.winding = windingAfter(leg, s);
      out.free = move.do === "settle" || move.do === "slack";
      out.gone = leg.gone;
      if (move.do === "twitch") {
        const out1 = s < move.in;
        const f = out1 ? s / move.in : (s - move.in) / move.back;
        out.x += move.travel * (out1 ? eased(f) : 1 - eased(f));
        out.vx = ((out1 ? 1 : -1) * move.travel * easedRate(f)) / (out1 ? move.in : move.back);
      } else if (move.do === "lift") {
        const f = s / move.in;
        out.z += move.height * eased(f);
        out.vz = (move.height * easedRate(f)) / move.in;
      }
    },
  };
}
