import { MOST_MOVES, valueAt, writtenOut } from "../../document";
import type { Scenario, ScenarioEntry, ScenarioMove, ScenarioRepeat } from "../../document";
import { LINE_IN, moveDuration } from "../../model/motion";
import { withValue } from "./inputs";
import type { Input, MoveSteps } from "./inputs";

/** The cadence as it is edited: kinds of moves, changes to the list, and rhythms to start from. Pure. */

export type MoveKind = ScenarioMove["do"];

/** In the order in which they are offered. */
export const KINDS: readonly MoveKind[] = ["reel", "pause", "twitch", "lift", "slack", "settle", "release"];

/** A new move of a kind; what it can take over from the cadence so far it does. */
export function newMove(kind: MoveKind, like: readonly ScenarioMove[]): ScenarioMove {
  const before = like.findLast((move) => move.do === kind);
  if (before !== undefined) return before;
  switch (kind) {
    case "reel":
      return { do: "reel", speed_m_s: 0.8, for_s: 3 };
    case "twitch":
      return { do: "twitch", travel_m: 0.35, in_s: 0.15, back_s: 0.3 };
    case "lift":
      return { do: "lift", height_m: 0.8, in_s: 0.8 };
    case "slack":
      return { do: "slack", for_s: 0.5 };
    case "pause":
    case "settle":
    case "release":
      return { do: kind, for_s: 2 };
  }
}

/** Time that a move asks for, s. */
export function asked(move: ScenarioMove): number {
  switch (move.do) {
    case "reel":
      return moveDuration({
        do: "reel",
        speed: move.speed_m_s,
        for: move.for_s ?? null,
        length: move.length_m ?? null,
      });
    case "twitch":
      return move.in_s + move.back_s;
    case "lift":
      return move.in_s;
    default:
      return move.for_s;
  }
}

/** Hundredths: a hand and a stop watch know no more, and the file gets no tails of binary digits. */
const tidy = (value: number): number => Number(value.toFixed(2));
/** The shortest move that can be dragged to, s. */
export const SHORTEST = 0.1;

/** Time that one round of a block asks for, s. */
export const roundLasts = (block: ScenarioRepeat): number =>
  block.moves.reduce((sum, move) => sum + asked(move), 0);

/** A move that takes `seconds`; a twitch keeps the ratio of its two ways. */
export function lasting(move: ScenarioMove, seconds: number): ScenarioMove {
  const time = Math.max(SHORTEST, tidy(seconds));
  switch (move.do) {
    case "reel":
      return move.length_m === undefined
        ? { ...move, for_s: time }
        : { ...move, length_m: Math.max(0.01, tidy(time * move.speed_m_s)) };
    case "twitch": {
      const out = Math.max(0.02, tidy((time * move.in_s) / (move.in_s + move.back_s)));
      return { ...move, in_s: out, back_s: Math.max(0.02, tidy(time - out)) };
    }
    case "lift":
      return { ...move, in_s: time };
    default:
      return { ...move, for_s: time };
  }
}

/** A reel that goes on for a time instead of a length of line, or the other way round; it takes as long as before. */
export function reelBy(move: ScenarioMove, by: "time" | "line"): ScenarioMove {
  if (move.do !== "reel") return move;
  const { speed_m_s } = move;
  const seconds = asked(move);
  return by === "time"
    ? { do: "reel", speed_m_s, for_s: tidy(seconds) }
    : { do: "reel", speed_m_s, length_m: Math.max(0.01, tidy(seconds * speed_m_s)) };
}

export const withCadence = (from: Scenario, cadence: readonly ScenarioEntry[]): Scenario => ({
  ...from,
  cadence: [...cadence],
});

/** From `first` to `last`, both included. */
export interface Chosen {
  readonly first: number;
  readonly last: number;
}

export const inserted = <T>(list: readonly T[], at: number, more: readonly T[]): T[] => [
  ...list.slice(0, at),
  ...more,
  ...list.slice(at),
];

export const without = <T>(list: readonly T[], { first, last }: Chosen): T[] => [
  ...list.slice(0, first),
  ...list.slice(last + 1),
];

/** The chosen entries taken out and put in before what stood at `to` (the length: at the end). */
export function shifted<T>(
  list: readonly T[],
  { first, last }: Chosen,
  to: number,
): { readonly list: T[]; readonly first: number } {
  const moved = list.slice(first, last + 1);
  const at = to > last ? to - moved.length : Math.min(to, first);
  return { list: inserted(without(list, { first, last }), at, moved), first: at };
}

/** The chosen entries once more after themselves. */
export const doubled = <T>(list: readonly T[], { first, last }: Chosen): T[] =>
  inserted(list, last + 1, list.slice(first, last + 1));

/** How often a block is done: so many times, or until the line is in. */
export type Often = number | "line in";

const block = (moves: readonly ScenarioMove[], often: Often): ScenarioRepeat => ({
  do: "repeat",
  ...(often === "line in" ? { until: often } : { times: often }),
  moves: [...moves],
});

/** The chosen entries as one block. A block that stands alone gets the new count; blocks among others are written out. */
export function gathered(scenario: Scenario, { first, last }: Chosen, often: Often): ScenarioEntry[] {
  const { cadence } = scenario;
  const alone = first === last ? cadence[first] : undefined;
  const moves =
    alone?.do === "repeat"
      ? alone.moves
      : writtenOut(scenario).flatMap(({ move, entry }) => (entry >= first && entry <= last ? [move] : []));
  return inserted(without(cadence, { first, last }), first, [block(moves, often)]);
}

/** The cadence with one of its blocks written out as single moves. */
export function spelledOut(scenario: Scenario, at: number): ScenarioEntry[] {
  const moves = writtenOut(scenario).flatMap(({ move, entry }) => (entry === at ? [move] : []));
  return inserted(without(scenario.cadence, { first: at, last: at }), at, moves);
}

export type RhythmKey =
  "steady" | "stop-and-go" | "twitch-twitch-pause" | "lift-and-drop" | "sink-then-reel" | "fast-and-stop";

interface Rhythm {
  readonly key: RhythmKey;
  /** Names the step of undo. */
  readonly name: string;
  /** Once, before the rhythm. */
  readonly before: readonly ScenarioMove[];
  /** Again and again until the line is in. */
  readonly beat: readonly ScenarioMove[];
}

const settle = (seconds: number): ScenarioMove => ({ do: "settle", for_s: seconds });
const reel = (speed: number, seconds: number): ScenarioMove => ({
  do: "reel",
  speed_m_s: speed,
  for_s: seconds,
});
const pause = (seconds: number): ScenarioMove => ({ do: "pause", for_s: seconds });
const twitch: ScenarioMove = { do: "twitch", travel_m: 0.35, in_s: 0.15, back_s: 0.3 };

/** Rhythms in the order in which they are offered; speeds and times are common practice, no source. */
export const RHYTHMS: readonly Rhythm[] = [
  {
    key: "steady",
    name: "steady",
    before: [settle(1.5)],
    beat: [],
  },
  {
    key: "stop-and-go",
    name: "stop and go",
    before: [settle(1.5)],
    beat: [reel(0.8, 3), pause(2)],
  },
  {
    key: "twitch-twitch-pause",
    name: "twitch, twitch, pause",
    before: [settle(1.5), reel(0.9, 4)],
    beat: [twitch, twitch, reel(0.6, 1.2), pause(2.5)],
  },
  {
    key: "lift-and-drop",
    name: "lift and drop",
    before: [settle(3)],
    beat: [
      { do: "lift", height_m: 0.9, in_s: 0.9 },
      { do: "lift", height_m: -0.9, in_s: 0.7 },
      reel(0.7, 1.2),
      pause(2),
    ],
  },
  {
    key: "sink-then-reel",
    name: "let it sink, then reel",
    before: [settle(10)],
    beat: [],
  },
  {
    key: "fast-and-stop",
    name: "fast and stop",
    before: [settle(1.5)],
    beat: [reel(2, 1.2), pause(1.5)],
  },
];

/** A rhythm never lasts longer than this, s. Common practice, no source. */
const LONGEST = 600;

/** A rhythm as a cadence: its beat until the line is in, and no longer than ten minutes. */
export function rhythm(key: string, scenario: Scenario): ScenarioEntry[] {
  const found = RHYTHMS.find((one) => one.key === key);
  if (found === undefined)
    throw new Error(`No rhythm "${key}": it is one of ${RHYTHMS.map((one) => one.key).join(", ")}.`);
  const { before, beat } = found;
  if (beat.length === 0) {
    const { lineOut_m, rodTip_m } = scenario.tackle;
    const line = Math.max(1, lineOut_m - Math.max(0, rodTip_m) - LINE_IN);
    return [...before, { do: "reel", speed_m_s: 0.8, length_m: tidy(line) }];
  }
  const again = block(beat, "line in");
  const whole = [...before, again];
  const most = Math.floor(
    Math.min(LONGEST / roundLasts(again), (MOST_MOVES - before.length) / again.moves.length),
  );
  const rounds = (writtenOut(withCadence(scenario, whole)).length - before.length) / again.moves.length;
  return rounds <= most ? whole : [...before, block(again.moves, most)];
}

/** The move at a place of the document. */
export function moveAt(scenario: Scenario, at: MoveSteps): ScenarioMove {
  const move = valueAt(scenario, at);
  if (typeof move !== "object" || move === null || !("do" in move) || move.do === "repeat")
    throw new Error(`The cadence has no move at ${at.join(".")}.`);
  return move as ScenarioMove;
}

/** How long a move or a block takes, as an input: what a drag of its end turns. Of a block it turns the count. */
export function lengthInput(index: number): Input {
  const at = (from: Scenario): ScenarioEntry => {
    const entry = from.cadence[index];
    if (entry === undefined) throw new Error(`The cadence has no move ${index + 1}.`);
    return entry;
  };
  return {
    id: `cadence[${index}] lasts`,
    label: "length of a move",
    unit: "s",
    slider: { min: SHORTEST, max: 20, step: 0.1 },
    min: SHORTEST,
    max: 3600,
    above: false,
    help: "",
    read: (from) => {
      const entry = at(from);
      return entry.do === "repeat" ? (entry.times ?? 1) * roundLasts(entry) : asked(entry);
    },
    write: (from, value) => {
      const entry = at(from);
      if (entry.do !== "repeat") return withValue(from, ["cadence", index], lasting(entry, value));
      const times = Math.max(1, Math.min(MOST_MOVES, Math.round(value / roundLasts(entry))));
      return withValue(from, ["cadence", index], block(entry.moves, times));
    },
  };
}
