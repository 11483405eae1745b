import { tick } from "svelte";
import { fromSI } from "../../../units";
import { wantedOf } from "../../maker";
import type { App } from "../../state";
import { onePress } from "../parts/press";
import { leftOf } from "./left";
import type { WeighState } from "./state.svelte";
import { stepsOf } from "./steps";
import type { Step } from "./steps";

/** The steps of the open bait, with what is done of them. */
export function stepsNow({ work, figures }: App, weigh: WeighState): readonly Step[] {
  const target = wantedOf(work.now, figures.goal.value);
  const met =
    target === undefined
      ? null
      : Math.abs(leftOf(fromSI(work.now.statics.netBuoyancy, "g"), target)) <= target.netTolerance_g;
  const { scenario } = work;
  const coats = [
    ...scenario.bait.coats.map(({ name }) => name),
    ...work.now.compiled.bait.items.filter(({ group }) => group === "coats").map(({ item }) => item),
  ];
  return stepsOf({ scenario, box: weigh.box.now, stage: weigh.stage, coats, met });
}

/** The step that follows the open one: the first after it that is not done; null: there is none. */
export function following(steps: readonly Step[], { job }: WeighState): Step | null {
  const here = steps.findIndex(({ place }) => "job" in place && place.job === job);
  return here < 0 ? null : (steps.find((one, i) => i > here && !one.done) ?? null);
}

/** Its upper edge can be seen: nothing that stays in sight above lies over it. */
function inSight(one: Element): boolean {
  const { left, top } = one.getBoundingClientRect();
  const there = document.elementFromPoint(left + 24, top + 2);
  return there !== null && one.contains(there);
}

/** All steps and the step's own beginning, however far the one before was scrolled; where they are in sight, nothing moves. */
function showBeginning(): void {
  const steps = document.querySelector("[data-bench-steps]");
  const step = document.querySelector("[data-bench-step]");
  if (steps === null || step === null) return;
  const { top } = step.getBoundingClientRect();
  if (!inSight(steps) || top > 0.7 * innerHeight) steps.scrollIntoView({ block: "start" });
}

/** Opens a step: a job of this view, or a section of the tub's. */
export async function go(app: App, weigh: WeighState, { place }: Step): Promise<void> {
  const { prefs, view } = app;
  onePress();
  if ("job" in place) {
    weigh.job = place.job;
    await tick();
    showBeginning();
    return;
  }
  prefs.setOpen(place.tub, true);
  const { putIn } = await import("../float/door");
  putIn(app, place.as);
  view.show("float");
  await tick();
  // The view's parts may have to be fetched first.
  const find = (): Element | null => document.querySelector(`[data-section="${place.tub}"] > summary`);
  for (let tries = 0; tries < 40 && find() === null; tries++)
    await new Promise((later) => setTimeout(later, 50));
  const section = find();
  section?.scrollIntoView({ block: "start" });
  if (section instanceof HTMLElement) section.focus({ preventScroll: true });
}
