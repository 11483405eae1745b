import { byStage, stageOf } from "../document";
import type { Scenario, Stage } from "../document";
import { withOnly } from "../model/bait";
import type { Bait } from "../model/bait";

/** The bait as it is at a stage of making, its body as the bench has found it. */
export function baitAt(scenario: Scenario, bait: Bait, stage: Stage): Bait {
  if (stage === "dressed") return bait;
  return withOnly(bait, (item) => byStage(stageOf(scenario.bait, item), stage));
}

/** Names of the rows that are not yet on the bait at a stage. */
export function notYetAt(scenario: Scenario, bait: Bait, stage: Stage): readonly string[] {
  return bait.items.filter((item) => !byStage(stageOf(scenario.bait, item), stage)).map((item) => item.item);
}
