import type { Stage } from "../../../document";
import type { App } from "../../state";

/** The jobs of the bench, in the order of the work. */
export const JOBS = [{ key: "account", label: "Account" }] as const;
export type Job = (typeof JOBS)[number]["key"];

/** What the Weigh view shows and what has been typed into it; outlives a change of view. */
export class WeighState {
  job = $state<Job>("account");
  /** How far the bait has been made. */
  stage = $state<Stage>("blank");
  /** The target was just set: its fields are opened. */
  targetOpened = $state(false);
  readonly app: App;

  constructor(app: App) {
    this.app = app;
  }
}

const states = new WeakMap<App, WeighState>();

/** The one state of the view in this page. */
export function weighOf(app: App): WeighState {
  const known = states.get(app) ?? new WeighState(app);
  states.set(app, known);
  return known;
}
