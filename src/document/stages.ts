import { correctionsKept, withOnly } from "../model/bait";
import type { Bait, Item } from "../model/bait";
import { byStage, stageOf } from "./parts";
import type { ScenarioBait } from "./schema";
import { STAGES } from "./schema-bench";
import type { Stage } from "./schema-bench";

/**
 * The stage of each row of the account. Parts come on as the file says, or as is usual for them. A correction stands at the
 * stage that was tested: the first one at which everything is on the bait that its tub test had.
 */
export function rowStages(file: ScenarioBait, bait: Pick<Bait, "spec" | "items">): readonly Stage[] {
  const own = bait.items.map((row) => stageOf(file, row));
  const of = new Map<Item, Stage>(bait.items.map((row, i) => [row, own[i] ?? "dressed"]));
  const first = (bait.spec.corrections ?? []).map((): Stage => "dressed");
  for (const stage of [...STAGES].reverse()) {
    const kept = correctionsKept(bait, (row) => byStage(of.get(row) ?? "dressed", stage));
    kept.forEach((stays, i) => {
      if (stays) first[i] = stage;
    });
  }
  return bait.items.map((row, i) =>
    row.group === "corrections" ? (first[row.index] ?? "dressed") : (own[i] ?? "dressed"),
  );
}

/** The bait at a stage of making; its body is as the bench readings gave it. */
export function baitAt(scenario: { readonly bait: ScenarioBait }, bait: Bait, stage: Stage): Bait {
  if (stage === "dressed") return bait;
  return withOnly(bait, (item) => byStage(stageOf(scenario.bait, item), stage));
}

/** Names of the parts that are not yet on the bait at a stage. */
export function notYetAt(
  scenario: { readonly bait: ScenarioBait },
  bait: Bait,
  stage: Stage,
): readonly string[] {
  return bait.items
    .filter((item) => item.group !== "corrections" && !byStage(stageOf(scenario.bait, item), stage))
    .map((item) => item.item);
}
