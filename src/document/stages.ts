import type { Item } from "../model/bait";
import type { ScenarioBait } from "./schema";
import { STAGES } from "./schema-bench";

export type Stage = (typeof STAGES)[number];

/**
 * Stage at which a row of the account comes onto the bait: as the file says, else as is usual (common practice, no source):
 * a coat by its name (sealer or primer, clear or top coat, else paint); chambers, ballast, wires and bib laid
 * out; balls in when it is closed; eyes and the like with the paint; hooks and rings last. Corrections belong to the blank.
 */
export function stageOf(bait: ScenarioBait, item: Pick<Item, "group" | "index" | "part">): Stage {
  const { group, index } = item;
  switch (group) {
    case "body":
    case "corrections":
      return "blank";
    case "chambers":
      return bait.chambers[index]?.stage ?? "laid out";
    case "balls":
      return "closed";
    case "ballast":
      return bait.ballast[index]?.stage ?? "laid out";
    case "wires":
      return bait.wires[index]?.stage ?? "laid out";
    case "bib":
      return bait.bib?.stage ?? "laid out";
    case "hangers":
      return bait.hangers[index]?.stage ?? "dressed";
    case "fittings":
      return bait.fittings[index]?.stage ?? "painted";
    case "coats": {
      const coat = bait.coats[index];
      if (coat?.stage) return coat.stage;
      if (/seal|primer|prime/i.test(coat?.name ?? "") && !/paint/i.test(coat?.name ?? "")) return "sealed";
      return /clear|top ?coat/i.test(coat?.name ?? "") ? "clear-coated" : "painted";
    }
  }
}

/** Whether `stage` is `at` or comes before it. */
export const byStage = (stage: Stage, at: Stage): boolean => STAGES.indexOf(stage) <= STAGES.indexOf(at);
