import type { Scenario, ScenarioMove } from "../../document";
import { LINE_IN, moveDuration } from "../../model/motion";
import { toSI } from "../../units";
import { inputAt, withValue } from "./inputs";
import type { Input } from "./inputs";

/** The cadence as it is edited: kinds of moves, changes to the list, and rhythms to start from. Pure. */

export type MoveKind = ScenarioMove["do"];

export interface KindWords {
  readonly kind: MoveKind;
  readonly label: string;
  /** What a hand does. */
  readonly help: string;
}

/** In the order in which they are offered. */
export const KINDS: readonly KindWords[] = [
  { kind: "reel", label: "Reel", help: "Line comes in at a speed." },
  { kind: "pause", label: "Pause", help: "The reel stands still; the line stays as it is." },
  { kind: "twitch", label: "Twitch", help: "The rod tip is pulled back and let forward again." },
  { kind: "lift", label: "Lift", help: "The rod tip rises (or drops) and stays there." },
  { kind: "slack", label: "Slack", help: "Line is given freely; nothing pulls." },
  {
    kind: "settle",
    label: "Settle",
    help: "Nothing is done, line is free: the bait comes to rest or sinks.",
  },
  { kind: "release", label: "Let go", help: "The line is let go for good." },
];

export const kindLabel = (kind: MoveKind): string => KINDS.find((one) => one.kind === kind)?.label ?? kind;

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

export const withCadence = (from: Scenario, cadence: readonly ScenarioMove[]): Scenario => ({
  ...from,
  cadence: [...cadence],
});

/** From `first` to `last`, both included. */
export interface Chosen {
  readonly first: number;
  readonly last: number;
}

export const inserted = (
  cadence: readonly ScenarioMove[],
  at: number,
  moves: readonly ScenarioMove[],
): ScenarioMove[] => [...cadence.slice(0, at), ...moves, ...cadence.slice(at)];

export const without = (cadence: readonly ScenarioMove[], { first, last }: Chosen): ScenarioMove[] => [
  ...cadence.slice(0, first),
  ...cadence.slice(last + 1),
];

/** The chosen moves taken out and put in before what stood at `to` (the length: at the end). */
export function shifted(
  cadence: readonly ScenarioMove[],
  { first, last }: Chosen,
  to: number,
): { readonly cadence: ScenarioMove[]; readonly first: number } {
  const moves = cadence.slice(first, last + 1);
  const at = to > last ? to - moves.length : Math.min(to, first);
  return { cadence: inserted(without(cadence, { first, last }), at, moves), first: at };
}

/** Most moves of a cadence that the file takes. */
export const MOST_MOVES = 1000;

/** The chosen moves `times` times in a row. */
export function repeated(
  cadence: readonly ScenarioMove[],
  { first, last }: Chosen,
  times: number,
): ScenarioMove[] {
  const moves = cadence.slice(first, last + 1);
  return inserted(cadence, last + 1, Array.from({ length: times - 1 }, () => moves).flat());
}

interface Rhythm {
  readonly key: string;
  readonly label: string;
  readonly help: string;
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

/** Rhythms by their plain names; speeds and times are common practice, no source. */
export const RHYTHMS: readonly Rhythm[] = [
  {
    key: "steady",
    label: "Steady",
    help: "Reel evenly until the line is in.",
    before: [settle(1.5)],
    beat: [],
  },
  {
    key: "stop-and-go",
    label: "Stop and go",
    help: "Reel three seconds, pause two.",
    before: [settle(1.5)],
    beat: [reel(0.8, 3), pause(2)],
  },
  {
    key: "twitch-twitch-pause",
    label: "Twitch, twitch, pause",
    help: "Down on the reel, then two twitches, a little line, and a pause.",
    before: [settle(1.5), reel(0.9, 4)],
    beat: [twitch, twitch, reel(0.6, 1.2), pause(2.5)],
  },
  {
    key: "lift-and-drop",
    label: "Lift and drop",
    help: "The rod tip rises, drops while the line is taken in, and the bait falls or rises.",
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
    label: "Let it sink, then reel",
    help: "Ten seconds to sink on free line, then evenly in.",
    before: [settle(10)],
    beat: [],
  },
  {
    key: "fast-and-stop",
    label: "Fast and stop",
    help: "A quick pull of two metres a second, then a dead stop.",
    before: [settle(1.5)],
    beat: [reel(2, 1.2), pause(1.5)],
  },
];

/** A rhythm as a cadence: its beat as often as there is line for, and no longer than ten minutes. */
export function rhythm(key: string, lineOut: number, rodTip: number): ScenarioMove[] {
  const found = RHYTHMS.find((one) => one.key === key);
  if (found === undefined)
    throw new Error(`No rhythm "${key}": it is one of ${RHYTHMS.map((one) => one.key).join(", ")}.`);
  const wound = (moves: readonly ScenarioMove[]): number =>
    moves.reduce((sum, move) => sum + (move.do === "reel" ? move.speed_m_s * asked(move) : 0), 0);
  // Of a beat a little more than there is line for: the run ends the last reel where the line is in.
  const line = Math.max(1, lineOut - Math.max(0, rodTip) - LINE_IN);
  if (found.beat.length === 0) return [...found.before, { do: "reel", speed_m_s: 0.8, length_m: tidy(line) }];
  const seconds = found.beat.reduce((sum, move) => sum + asked(move), 0);
  const beats = Math.ceil(Math.max(0, line - wound(found.before)) / wound(found.beat));
  const most = Math.min(
    Math.floor(600 / seconds),
    Math.floor((MOST_MOVES - found.before.length) / found.beat.length),
  );
  return [
    ...found.before,
    ...Array.from({ length: Math.max(1, Math.min(beats, most)) }, () => found.beat).flat(),
  ];
}

/** The numbers of one move, as inputs. */
export function moveInputs(scenario: Scenario, index: number): readonly Input[] {
  const move = scenario.cadence[index];
  if (move === undefined) return [];
  const keys: readonly string[] = {
    reel: ["speed_m_s", move.do === "reel" && move.length_m !== undefined ? "length_m" : "for_s"],
    twitch: ["travel_m", "in_s", "back_s"],
    lift: ["height_m", "in_s"],
    pause: ["for_s"],
    slack: ["for_s"],
    settle: ["for_s"],
    release: ["for_s"],
  }[move.do];
  return keys.map((key) => {
    const id = `cadence[${index}].${key}`;
    return inputAt(scenario, ["cadence", index, key], {
      read: (from: Scenario): number => {
        const value = (from.cadence[index] as Readonly<Record<string, unknown>> | undefined)?.[key];
        if (typeof value !== "number")
          throw new Error(`No number at ${id}: the document changed under its inputs.`);
        return value;
      },
    });
  });
}

/** How long a move takes, as an input: what a drag of its end turns. */
export function lengthInput(index: number): Input {
  const at = (from: Scenario): ScenarioMove => {
    const move = from.cadence[index];
    if (move === undefined) throw new Error(`The cadence has no move ${index + 1}.`);
    return move;
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
    read: (from) => asked(at(from)),
    write: (from, value) => withValue(from, ["cadence", index], lasting(at(from), value)),
  };
}

/** Line that one turn of the handle takes in, m; null where the reel is not told. */
export function lineTurn({ tackle: { reel: one } }: Scenario): number | null {
  return one === undefined ? null : toSI(one.ratio * one.spool_mm, "mm");
}

/** The speed of a reel told in turns of the handle a minute; null where it cannot be. */
export function turnsInput(scenario: Scenario, index: number): Input | null {
  const turn = lineTurn(scenario);
  const speed = moveInputs(scenario, index).find((one) => one.id.endsWith(".speed_m_s"));
  if (turn === null || speed === undefined) return null;
  const perMinute = 60 / turn;
  return {
    ...speed,
    // The same number as the speed: a refusal shows there.
    id: `${speed.id} turns`,
    label: "Handle turns / min",
    unit: "",
    help: `One turn takes in ${turn.toFixed(2)} m of line: gear ratio × spool circumference.`,
    slider: { min: 5, max: 200, step: 1 },
    max: speed.max * perMinute,
    read: (from) => Number((speed.read(from) * perMinute).toFixed(1)),
    write: (from, value) => speed.write(from, Number((value / perMinute).toFixed(4))),
  };
}
