import type { Scenario } from "../../src/document";
import { USUAL_WALL } from "../../src/model/checks";
import type { PlanResult } from "../../src/model/plan";
import { planFor } from "../../src/runner/weigh";
import type { PlanJob } from "../../src/runner/weigh";
import { usualAnswers, usualSizes } from "../../src/ui/maker";
import type { Answers } from "../../src/ui/maker";
import { Prefs } from "../../src/ui/state/prefs.svelte";
import { Units } from "../../src/ui/state/units";
import { Workspace } from "../../src/ui/state/workspace.svelte";
import { lookAt, remarksOf } from "../../src/ui/views/draw/remarks";

/** What a maker says of a bait of this form and length (mm) and of the usual sizes for it, but for what is given. */
export const sized = (form: string, length: number, more: Partial<Answers> = {}): Answers => ({
  ...usualAnswers(),
  form,
  length,
  ...usualSizes(form, length),
  ...more,
});

/** Plans here, where the page has a worker for it. */
export const here = (job: PlanJob): Promise<PlanResult> => Promise.resolve(planFor(job));

/** What Draw says of a bait. */
export const remarks = (made: Scenario): readonly string[] =>
  remarksOf(lookAt(new Workspace(made).now), USUAL_WALL, new Units(new Prefs(null, 1200)), "en").map(
    (one) => one.text,
  );
