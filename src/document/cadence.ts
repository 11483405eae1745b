import { roundsUntilIn } from "../model/motion";
import type { Move } from "../model/motion";
import { MOST_MOVES } from "./schema-cadence";
import type { Scenario, ScenarioEntry, ScenarioMove } from "./schema";

/** The cadence of a scenario as it is done: what is repeated is written out. Pure. */

/** A move as it is done, and where it stands in the file. */
export interface DoneMove {
  readonly move: ScenarioMove;
  /** Its place in the cadence, or that of the block that repeats it. */
  readonly entry: number;
  /** Its place in that block, and the round that it belongs to, from 0; null and 0 of a move that stands alone. */
  readonly inner: number | null;
  readonly round: number;
}

/** Where a move of a cadence stands, e.g. cadence[2] or cadence[2].moves[1]. */
export const movePlace = (entry: number, inner: number | null): string =>
  inner === null ? `cadence[${entry}]` : `cadence[${entry}].moves[${inner}]`;

/** Each move once, in the order of the file. */
export const movesOf = (cadence: readonly ScenarioEntry[]): readonly ScenarioMove[] =>
  cadence.flatMap((entry) => (entry.do === "repeat" ? entry.moves : [entry]));

/** The cadence with each of its moves changed, those of blocks too. */
export const withMoves = (
  cadence: readonly ScenarioEntry[],
  change: (move: ScenarioMove) => ScenarioMove,
): Scenario["cadence"] =>
  cadence.map((entry) =>
    entry.do === "repeat" ? { ...entry, moves: entry.moves.map(change) } : change(entry),
  );

/**
 * The moves in the order in which they are done. How often a block is done that goes on until the line is in follows from the
 * tackle and from what comes before. More than `MOST_MOVES` are not written out to their end: the checks refuse them.
 */
export function writtenOut({ cadence, tackle }: Pick<Scenario, "cadence" | "tackle">): readonly DoneMove[] {
  const done: DoneMove[] = [];
  cadence.forEach((entry, i) => {
    if (entry.do !== "repeat") {
      done.push({ move: entry, entry: i, inner: null, round: 0 });
      return;
    }
    const { moves } = entry;
    const most = Math.max(1, Math.ceil((MOST_MOVES + 1 - done.length) / moves.length));
    const rounds =
      entry.until === undefined
        ? (entry.times ?? 1)
        : roundsUntilIn(
            done.map(({ move }) => moveOf(move)),
            moves.map(moveOf),
            { lineOut: tackle.lineOut_m, rodTip: tackle.rodTip_m },
            most,
          );
    for (let round = 0; round < Math.min(rounds ?? most, most); round += 1)
      moves.forEach((move, inner) => done.push({ move, entry: i, inner, round }));
  });
  return done;
}

/** The moves in SI, as a run does them. */
export const movesDone = (scenario: Pick<Scenario, "cadence" | "tackle">): readonly Move[] =>
  writtenOut(scenario).map(({ move, entry, inner }) => {
    const done = moveOf(move);
    // Without blocks before it a move stands in the file where it stands in the run.
    return scenario.cadence.some((one) => one.do === "repeat")
      ? { ...done, place: movePlace(entry, inner) }
      : done;
  });

function moveOf(move: ScenarioMove): Move {
  switch (move.do) {
    case "reel":
      return { do: "reel", speed: move.speed_m_s, for: move.for_s ?? null, length: move.length_m ?? null };
    case "twitch":
      return { do: "twitch", travel: move.travel_m, in: move.in_s, back: move.back_s };
    case "lift":
      return { do: "lift", height: move.height_m, in: move.in_s };
    default:
      return { do: move.do, for: move.for_s };
  }
}
