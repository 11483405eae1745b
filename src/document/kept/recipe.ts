import type { Scenario } from "../schema";
import type { SetDownKey } from "../schema-recipe";

/** What has been set down of a bait. */
export type SetDown = NonNullable<NonNullable<Scenario["recipe"]>["design"]>;

/** The scenario with its bait and readings of now set down. `on`: the day. Notes that stood there stay. */
export function setDown(scenario: Scenario, key: SetDownKey, on: string): Scenario {
  const { bait, bench, tub, corrections, recipe } = scenario;
  const notes = recipe?.[key]?.notes;
  const now: SetDown = { on, bait, bench, tub, corrections, ...(notes === undefined ? {} : { notes }) };
  return { ...scenario, recipe: { ...recipe, [key]: now } };
}

/** The scenario with other notes to what was set down. Empty ones go. */
export function noteDown(scenario: Scenario, key: SetDownKey, notes: string): Scenario {
  const held = scenario.recipe?.[key];
  if (held === undefined) return scenario;
  const { notes: _, ...rest } = held;
  return {
    ...scenario,
    recipe: { ...scenario.recipe, [key]: notes === "" ? rest : { ...rest, notes } },
  };
}

/** The bait as it was set down, in the water and on the line of now; null where nothing was. */
export function asSetDown(scenario: Scenario, key: SetDownKey): Scenario | null {
  const held = scenario.recipe?.[key];
  if (held === undefined) return null;
  const { bait, bench, tub, corrections } = held;
  return { ...scenario, bait, bench, tub, corrections };
}

/**
 * Where another build of a bait begins: the design (where none was set down, the bait as it is drawn now), with no
 * weighings, readings and corrections: those belong to the piece that they were taken of.
 */
export function buildAnew(scenario: Scenario, name: string): Scenario {
  const { recipe, ...rest } = scenario;
  const design = recipe?.design;
  return {
    ...rest,
    name,
    bait: design?.bait ?? scenario.bait,
    bench: [],
    tub: [],
    corrections: [],
    recipe: {
      ...(design === undefined ? {} : { design: { ...design, bench: [], tub: [], corrections: [] } }),
      from: scenario.name,
    },
  };
}
