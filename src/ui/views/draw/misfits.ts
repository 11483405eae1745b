import { fileEntries, readScenario, removePart } from "../../../document";
import type { Scenario } from "../../../document";
import { nameOf } from "./parts.svelte";

export interface Misfit {
  readonly path: string;
  readonly name: string;
  /** The reason, without its full stop. */
  readonly text: string;
}

/**
 * The parts that cannot be built into this body, each with the reason. The checks stop at the first one, so each part is
 * tried alone, without bench readings: those may speak of the others.
 */
export function misfits(scenario: Scenario): readonly Misfit[] {
  const alone: Scenario = { ...scenario, bench: [], tub: [], corrections: [], cadence: [], expect: [] };
  return fileEntries(scenario.bait).flatMap((entry): Misfit[] => {
    // From the last to the first, so that the places of those that are still there stay right.
    const others = fileEntries(scenario.bait)
      .filter((one) => one.key !== entry.key || one.index !== entry.index)
      .reverse();
    const read = readScenario(
      others.reduce<Scenario>((from, { key, index }) => removePart(from, key, index), alone),
    );
    if (read.ok) return [];
    const [problem] = read.problems;
    return problem === undefined ? [] : [{ path: entry.path, name: nameOf(entry), text: problem.allowed }];
  });
}
