import { movePlace, movesOf, writtenOut } from "./cadence";
import { describe, problem } from "./problem";
import type { Problem } from "./problem";
import { MOST_MOVES } from "./schema-cadence";
import type { Scenario, ScenarioEntry, ScenarioMove, ScenarioRepeat } from "./schema";

/** What the moves of a cadence must be together. */

/** Longest cadence, s: an hour. */
const LONGEST_CADENCE = 3600;

export function cadenceRules(scenario: Scenario): Problem[] {
  const { cadence } = scenario;
  const alone = [
    ...cadence.flatMap((entry, i) => (entry.do === "repeat" ? repeats(entry, i) : [])),
    ...eachMove(cadence, reels),
  ];
  // How often a block is done is known only where its moves are right.
  return alone.length > 0 ? alone : together(scenario);
}

function eachMove(
  cadence: readonly ScenarioEntry[],
  rule: (move: ScenarioMove, path: string) => Problem[],
): Problem[] {
  return cadence.flatMap((entry, i) =>
    entry.do === "repeat"
      ? entry.moves.flatMap((move, inner) => rule(move, movePlace(i, inner)))
      : rule(entry, movePlace(i, null)),
  );
}

function reels(move: ScenarioMove, path: string): Problem[] {
  if (move.do !== "reel") return [];
  const count = Number(move.for_s !== undefined) + Number(move.length_m !== undefined);
  if (count === 1) return [];
  const found = count === 0 ? "neither for_s nor length_m" : "both for_s and length_m";
  const remedy = "Say how long to reel (for_s) or how much line to take in (length_m).";
  return [problem(path, found, "exactly one of the two", remedy)];
}

function repeats(block: ScenarioRepeat, entry: number): Problem[] {
  const path = movePlace(entry, null);
  const count = Number(block.times !== undefined) + Number(block.until !== undefined);
  if (count !== 1) {
    const found = count === 0 ? "neither times nor until" : "both times and until";
    const remedy = 'Say how often the moves are done (times), or "until": "line in".';
    return [problem(path, found, "exactly one of the two", remedy)];
  }
  const reelsIn = block.moves.some(
    (move) => move.do === "reel" && (move.length_m ?? move.speed_m_s * (move.for_s ?? 0)) > 0,
  );
  if (block.until === undefined || reelsIn) return [];
  const remedy = "Add a reel to the repeated moves, or say how often they are done (times).";
  return [problem(`${path}.until`, "no move that takes line in", "moves that take line in", remedy)];
}

const secondsOf = (move: ScenarioMove): number => {
  if (move.do === "reel") return move.for_s ?? (move.length_m ?? 0) / move.speed_m_s;
  if (move.do === "twitch") return move.in_s + move.back_s;
  return move.do === "lift" ? move.in_s : move.for_s;
};

function together(scenario: Scenario): Problem[] {
  const done = writtenOut(scenario);
  if (done.length > MOST_MOVES) {
    const found = `more than ${MOST_MOVES} moves`;
    const remedy =
      movesOf(scenario.cadence).length > MOST_MOVES ? "Take moves out." : "Repeat them less often.";
    return [problem("cadence", found, `up to ${MOST_MOVES} moves, repeated ones counted each time`, remedy)];
  }
  const out: Problem[] = [];
  const total = done.reduce((sum, { move }) => sum + secondsOf(move), 0);
  if (total > LONGEST_CADENCE) {
    const found = `${Math.round(total)} s in all`;
    out.push(problem("cadence", found, `up to ${LONGEST_CADENCE} s`, "Shorten the moves, or reel faster."));
  }
  const released = done.findIndex(({ move }) => move.do === "release");
  const named = new Set<string>();
  done.forEach(({ move, entry, inner }, i) => {
    const pulls = move.do === "reel" || move.do === "twitch" || move.do === "lift";
    const path = `${movePlace(entry, inner)}.do`;
    if (released < 0 || i < released || !pulls || named.has(path)) return;
    named.add(path);
    const remedy = "A release lets the line go for good: put it last.";
    out.push(problem(path, describe(move.do), "no pull on the line after a release", remedy));
  });
  return out;
}
