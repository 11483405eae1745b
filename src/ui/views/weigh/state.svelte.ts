import type { Stage } from "../../../document";
import type { App } from "../../state";

/** The jobs of the bench, in the order of the work. */
export const JOBS = [
  { key: "account", label: "Account" },
  { key: "volume", label: "Under water" },
  { key: "weighings", label: "On the scale" },
] as const;
export type Job = (typeof JOBS)[number]["key"];

/** How a piece is brought under water. */
export type Way = "held" | "hung" | "sample";

/** A weighing under water as it is being done; nothing of it is in the document until it is taken. Units of the file. */
export class UnderWater {
  way = $state<Way>("held");
  /** Steps that have been seen to. */
  checked = $state.raw<readonly string[]>([]);
  readings = $state.raw<readonly number[]>([]);
  /** In air, of a piece hung on a thread or of a sample. */
  inAir = $state.raw<readonly number[]>([]);
  resolution = $state(0.01);
  tap = $state(20);
  pins = $state.raw({ diameter: 1, depth: 20, count: 0 });
  thread = $state.raw({ diameter: 0.2, depth: 20, count: 0 });
  air = $state(false);
  /** Items on the scale, by their labels in the account. */
  parts = $state.raw<readonly string[]>(["body"]);

  /** For the next one: same scale, same water, same pusher. */
  clear(): void {
    this.readings = [];
    this.inAir = [];
    this.checked = [];
  }
}

/** A weighing in air as it is being done. */
export class OnScale {
  readings = $state.raw<readonly number[]>([]);
  resolution = $state(0.01);
  air = $state(false);
  parts = $state.raw<readonly string[]>(["body"]);
  /** Items whose place had been cut into the body already. */
  cut = $state.raw<readonly string[]>([]);

  clear(): void {
    this.readings = [];
  }
}

/** What the Weigh view shows and what has been typed into it; outlives a change of view. */
export class WeighState {
  job = $state<Job>("account");
  /** How far the bait has been made. */
  stage = $state<Stage>("blank");
  /** The target was just set: its fields are opened. */
  targetOpened = $state(false);
  readonly under = new UnderWater();
  readonly scale = new OnScale();
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
