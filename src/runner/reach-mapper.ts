import { compile } from "../document";
import type { Scenario } from "../document";
import { calibrate } from "../model/tow";
import type { Calibration } from "../model/tow";
import { ReachCells } from "./reach-cells";
import type { MeasuredDepth, ReachLimit, ReachMapJob } from "./reach-map";
import type { ReachVariable } from "./vary";

/** The cells of a map of documents that are not compiled yet. */
export class ReachMapper extends ReachCells {
  constructor(job: ReachMapJob) {
    super(job, compile);
  }
}

/** Shares of the interval to which a limit is closed in. */
const LIMIT_STEPS = 10;

/** Closes in, by halving, on the limit between a value that runs and one that does not (1/1024 of their distance). */
export function reachLimit(
  mapper: ReachMapper,
  variable: ReachVariable,
  runs: number,
  fails: number,
): ReachLimit {
  let limit: ReachLimit | null = null;
  let [good, bad] = [runs, fails];
  for (let i = 0; i < LIMIT_STEPS; i++) {
    const middle = (good + bad) / 2;
    const cell = mapper.at([{ variable, value: middle }]);
    if (cell.runs) good = middle;
    else {
      bad = middle;
      limit = { runs: good, fails: bad, why: cell.why ?? "" };
    }
  }
  return { runs: good, fails: bad, why: limit?.why ?? mapper.at([{ variable, value: fails }]).why ?? "" };
}

/** The interference factor of a document's bib by a measured run. */
export function calibrateBy(scenario: Scenario, measured: MeasuredDepth): Calibration {
  const { bait, around, tackle } = compile(scenario);
  return calibrate(bait, around, tackle, measured);
}
