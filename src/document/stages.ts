import { correctionsKept, isHung, withOnly } from "../model/bait";
import type { Bait, Item } from "../model/bait";
import { byStage, stageOf } from "./parts";
import type { ScenarioBait } from "./schema";
import { STAGES } from "./schema-bench";
import type { Stage } from "./schema-bench";

/** The first tub test: the bait is closed and bare, and its hooks and rings hang on it for the test. They come off for the coats. */
export const BARE_TEST = "bare with hooks";

/** A moment of making: a stage, or the first tub test. Parts come on at stages alone. */
export type Moment = Stage | typeof BARE_TEST;

/** The moments in their order. */
export const MOMENTS: readonly Moment[] = STAGES.flatMap((stage): Moment[] =>
  stage === "closed" ? [stage, BARE_TEST] : [stage],
);

/** Whether a row of the account is on the bait at a moment of making. Not asked of corrections. */
export function isOnAt(file: ScenarioBait, row: Pick<Item, "group" | "index" | "part">, at: Moment): boolean {
  const stage = stageOf(file, row);
  return at === BARE_TEST ? byStage(stage, "closed") || isHung(row) : byStage(stage, at);
}

/** What hangs on the bait for the first tub test alone. */
export const hungForTest = (file: ScenarioBait, { items }: Pick<Bait, "items">): readonly Item[] =>
  items.filter(
    (row) =>
      row.group !== "corrections" && isOnAt(file, row, BARE_TEST) && !byStage(stageOf(file, row), "closed"),
  );

/** Whether the first tub test is of another bait than each stage: hooks hang on it that come off again, and coats are to come. */
export const hasBareTest = (file: ScenarioBait, bait: Pick<Bait, "items">): boolean =>
  hungForTest(file, bait).length > 0 &&
  bait.items.some((row) => row.group !== "corrections" && !isOnAt(file, row, BARE_TEST));

/** The moments at which this bait differs from what it was before, and the finished bait. */
export function momentsOf(file: ScenarioBait, bait: Pick<Bait, "spec" | "items">): readonly Moment[] {
  const used: readonly Moment[] = rowStages(file, bait);
  return MOMENTS.filter((at) =>
    at === BARE_TEST ? hasBareTest(file, bait) : at === "dressed" || used.includes(at),
  );
}

/**
 * The stage of each row of the account. Parts come on as the file says, or as is usual for them. A correction stands at the
 * stage that was tested: the first one at which everything is on the bait that its tub test had. The first tub test's
 * correction stands at `closed`: its hooks only hung on for the test.
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

/** The bait at a moment of making; its body is as the bench readings gave it. */
export function baitAt(scenario: { readonly bait: ScenarioBait }, bait: Bait, at: Moment): Bait {
  if (at === "dressed") return bait;
  return withOnly(bait, (item) => isOnAt(scenario.bait, item, at));
}

/** Names of the parts that are not on the bait at a moment of making. */
export function notYetAt(
  scenario: { readonly bait: ScenarioBait },
  bait: Bait,
  at: Moment,
): readonly string[] {
  return bait.items
    .filter((item) => item.group !== "corrections" && !isOnAt(scenario.bait, item, at))
    .map((item) => item.item);
}
