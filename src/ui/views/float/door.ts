import type { Moment } from "../../../document";
import type { App } from "../../state";
import { floatOf } from "./state.svelte";

/** From the bench: the bait as it is at a moment of making goes into the tub; where that moment is none of this bait's, the finished one. */
export function putIn(app: App, at: Moment): void {
  const float = floatOf(app);
  const next = float.stages.includes(at) ? at : "dressed";
  if (float.stage !== next) float.choose(next);
}
