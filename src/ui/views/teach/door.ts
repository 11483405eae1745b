import type { App } from "../../state";
import { forcesOf } from "./forces.svelte";
import { teachOf } from "./state.svelte";

/** From Swim: the open bait's retrieve, force by force, at the moment that is looked at there. */
export function openForces(app: App, time: number): void {
  const forces = forcesOf(app);
  forces.source = "swim";
  forces.from = time;
  teachOf(app).show("forces");
  app.view.show("teach");
}
