import { untrack } from "svelte";
import { eventsOf, summaryOf } from "../../model/motion";
import type { GrowingRecording, RunEvent, RunSummary } from "../../model/motion";
import type { ModelClient } from "../../runner";
import { CadenceEditor } from "./cadence-editor.svelte";
import type { Compare } from "./compare.svelte";
import { Rivals } from "./rivals.svelte";
import type { Rival } from "./rivals.svelte";
import type { Session } from "./session.svelte";
import type { Workspace } from "./workspace.svelte";

/** Depths of the strike zone, m, the upper one first. */
export interface Zone {
  readonly from: number;
  readonly to: number;
}

/** What is told of a recording as far as it had come when it was looked through. */
export interface Told {
  readonly recording: GrowingRecording;
  readonly frames: number;
  readonly events: readonly RunEvent[];
  readonly summary: RunSummary;
}

const LONG = 3600; // frames: a minute; of longer runs curves and events follow in steps
const STEP_MS = 300;

export type Panel = "track" | "curves" | "compare";

/** The bait on the line: the session with its cadence, its events and figures, and the variants beside it. */
export class Swim {
  readonly session: Session;
  readonly editor: CadenceEditor;
  readonly rivals: Rivals;
  /** What stands under the clock. */
  panel = $state<Panel>("track");
  /** Of the open document's run; null until something is recorded. */
  told = $state.raw<Told | null>(null);
  readonly #rivalsTold = new WeakMap<GrowingRecording, { readonly key: string; readonly told: Told }>();
  readonly #work: Workspace;

  constructor(session: Session, client: ModelClient, work: Workspace, compare: Compare) {
    this.session = session;
    this.#work = work;
    this.editor = new CadenceEditor(work);
    this.rivals = new Rivals(client, work, compare, session);
  }

  readonly weed = $derived.by((): number | null => this.#work.scenario.water.weed_m ?? null);
  readonly zone = $derived.by((): Zone | null => {
    const { strikeZone } = this.#work.scenario.water;
    return strikeZone === undefined ? null : { from: strikeZone.from_m, to: strikeZone.to_m };
  });

  /** Follows the run for the life of the component that calls it. */
  follow(): void {
    this.session.follow();
    this.rivals.follow();
    let last = 0;
    $effect(() => {
      const { recording, frames, busy } = this.session.run;
      const { weed, zone } = this;
      if (recording === null || frames === 0) {
        this.told = null;
        return;
      }
      const look = (): void => {
        last = performance.now();
        this.told = tell(recording, weed, zone);
      };
      const wait = busy && recording.meta.frames > LONG ? STEP_MS - (performance.now() - last) : 0;
      if (wait <= 0) {
        untrack(look);
        return;
      }
      const timer = setTimeout(look, wait);
      return () => clearTimeout(timer);
    });
  }

  /** Events and figures of a variant's run, once it is whole. */
  toldOf({ run }: Rival): Told | null {
    const { recording, frames } = run;
    if (recording === null || frames === 0 || !recording.complete) return null;
    const key = JSON.stringify([this.weed, this.zone]);
    const known = this.#rivalsTold.get(recording);
    if (known?.key === key) return known.told;
    const told = tell(recording, this.weed, this.zone);
    this.#rivalsTold.set(recording, { key, told });
    return told;
  }
}

function tell(recording: GrowingRecording, weed: number | null, zone: Zone | null): Told {
  const events = eventsOf(recording, weed);
  return { recording, frames: recording.frames, events, summary: summaryOf(recording, events, zone) };
}
