import type { App } from "../../state";
import { go, stepsNow } from "./going";
import { weighOf } from "./state.svelte";

/** From another view: on to a step of the bench. */
export async function onTo(app: App, key: string): Promise<void> {
  const weigh = weighOf(app);
  const step = stepsNow(app, weigh).find((one) => one.key === key);
  if (step === undefined) throw new Error(`The bench has no step ‘${key}’.`);
  if ("job" in step.place) app.view.show("weigh");
  await go(app, weigh, step);
}
