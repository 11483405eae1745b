import { BARE_TEST, MOMENTS, planKinds } from "../../../document";
import type { Box, Moment, Scenario } from "../../../document";
import { isPlanned } from "../../maker";
import type { Job } from "./state.svelte";

/** Where a step is done: a job of this view, or a section of the tub's. */
export type Place =
  | { readonly job: Job }
  /** `as`: the bait that goes into the tub. */
  | { readonly tub: "readings" | "swaps"; readonly as: Moment };

/** The steps by name; the catalogue has what each is called under this key. */
export type StepKey =
  | "target"
  | "box"
  | "blank"
  | "under"
  | "plan"
  | "lay out"
  | "close"
  | "first test"
  | "coats"
  | "final test"
  | "swaps";

/** One step of the trade's order. What is done follows from the document, the box and how far the bait has been made. */
export interface Step {
  readonly key: StepKey;
  readonly place: Place;
  readonly done: boolean;
}

/** What the steps are judged by. */
export interface Made {
  readonly scenario: Scenario;
  readonly box: Box;
  /** How far the bait has been made. */
  readonly stage: Moment;
  /** The coats by their names, and as the account calls them. */
  readonly coats: readonly string[];
  /** The finished bait is within its target's tolerance; null: no target. */
  readonly met: boolean | null;
}

const isCoated = (coats: readonly string[], without: readonly string[] | undefined): boolean =>
  !(without ?? []).some((word) => word === "coats" || coats.includes(word));

/** The steps in the order in which a bait is made. None has to be done before another. */
export function stepsOf({ scenario, box, stage, coats, met }: Made): readonly Step[] {
  const as = (reached: Moment): boolean => MOMENTS.indexOf(stage) >= MOMENTS.indexOf(reached);
  const read = (kind: Scenario["bench"][number]["kind"]): boolean =>
    scenario.bench.some((one) => one.kind === kind && one.with.includes("body"));
  const tests = scenario.corrections.map(({ without }) => isCoated(coats, without));
  const final = tests.includes(true);
  return [
    { key: "target", place: { job: "target" }, done: scenario.target !== undefined },
    { key: "box", place: { job: "box" }, done: planKinds(box).length > 0 },
    { key: "blank", place: { job: "weighings" }, done: read("weighing") },
    { key: "under", place: { job: "volume" }, done: read("displacement") },
    { key: "plan", place: { job: "plan" }, done: isPlanned(scenario) },
    { key: "lay out", place: { job: "lay out" }, done: as("laid out") },
    { key: "close", place: { job: "close" }, done: as("closed") },
    {
      key: "first test",
      place: { tub: "readings", as: BARE_TEST },
      done: tests.includes(false),
    },
    { key: "coats", place: { job: "coats" }, done: as("clear-coated") },
    { key: "final test", place: { tub: "readings", as: "dressed" }, done: final },
    { key: "swaps", place: { tub: "swaps", as: "dressed" }, done: final && met === true },
  ];
}

/** The first step that is not done after the last one that is; else the first that is not; null: all are. */
export function nextOf(steps: readonly Step[]): Step | null {
  const last = steps.reduce((found, one, i) => (one.done ? i : found), -1);
  return steps.find((one, i) => i > last && !one.done) ?? steps.find((one) => !one.done) ?? null;
}
