import { untrack } from "svelte";
import { eventsOf, summaryOf } from "../../../model/motion";
import type { GrowingRecording, RunEvent, RunSummary } from "../../../model/motion";
import { aCount, CadenceEditor, keptWith, Later, listOf, oneOf, retrieveSpeed, Session } from "../../state";
import type { ModelClient } from "../../../runner";
import type { App, Workspace } from "../../state";
import { Rivals } from "./rivals.svelte";
import { following, movedTo, zoomed } from "./span";
import type { Span } from "./span";
import { approachIn, lengthsOf, pointsOf } from "./steady";
import type { SteadyPoint } from "./steady";
import type { Rival } from "./rivals.svelte";
import type { Here, look } from "./here";

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

export type Panel = "track" | "curves" | "forces" | "compare";

/** The bait on the line: the session with its cadence, its events and figures, and the variants beside it. */
export class Swim {
  readonly session: Session;
  readonly editor: CadenceEditor;
  readonly rivals: Rivals;
  /** What stands under the clock. */
  panel = $state<Panel>("track");
  /** Of the open document's run; null until something is recorded. */
  told = $state.raw<Told | null>(null);
  /** The last run that came to its end: its figures are of all of it. Null until there is one. */
  whole = $state.raw<Told | null>(null);
  /** Depths of the steady tow at the retrieve's speed, by the line that is out: what Reach tells of this bait. */
  readonly steady = new Later<readonly SteadyPoint[]>();
  /** The last of them, with all the line out, and what it was worked out for: on the spot, so it follows a hand at once. */
  #here = $state.raw<Here | null>(null);
  #look = $state.raw<typeof look | null>(null);
  /** What strip and curves show of the run, s; null: all of it. */
  #span = $state.raw<Span | null>(null);
  readonly #runs: ModelClient;
  readonly #rivalsTold = new WeakMap<GrowingRecording, { readonly key: string; readonly told: Told }>();
  readonly #work: Workspace;

  constructor({ runs, work, compare, calm, beside }: App) {
    beside.keep<Pick<Swim, "panel">>("swim", "place", this, {
      panel: oneOf("track", "curves", "forces", "compare"),
    });
    this.session = new Session("swim", runs, work, compare, calm);
    this.#work = work;
    this.#runs = runs;
    this.editor = new CadenceEditor(work);
    beside.keep<Pick<CadenceEditor, "ends">>("swim/cadence", "place", this.editor, { ends: listOf(aCount) });
    this.rivals = new Rivals(runs, work, compare, this.session);
  }

  /** The move in which the run went beyond the model and stopped: its place in the cadence; null: it did not. */
  readonly stoppedIn = $derived.by((): number | null => {
    const named = /cadence\[(\d+)\]/.exec(this.session.run.failure ?? "")?.[1];
    return named === undefined ? null : Number(named);
  });

  readonly weed = $derived.by((): number | null => this.#work.scenario.water.weed_m ?? null);
  readonly zone = $derived.by((): Zone | null => {
    const { strikeZone } = this.#work.scenario.water;
    return strikeZone === undefined ? null : { from: strikeZone.from_m, to: strikeZone.to_m };
  });

  /** The stretch of time that strip and curves show together. */
  readonly span = $derived.by((): Span => {
    const { duration } = this.editor;
    const shown = this.#span;
    return shown === null || shown.to > duration ? { from: 0, to: duration } : shown;
  });
  /** How many times closer than the whole it is. */
  get zoom(): number {
    const { from, to } = this.span;
    return to > from ? this.editor.duration / (to - from) : 1;
  }

  /** `factor` times closer about the playhead. */
  zoomBy(factor: number): void {
    const { duration } = this.editor;
    const next = zoomed(this.span, duration, factor, this.session.player.time);
    this.#span = next.to - next.from >= duration ? null : next;
  }

  /** Shows the stretch that begins at a time. */
  showFrom(from: number): void {
    if (this.#span !== null) this.#span = movedTo(this.#span, this.editor.duration, from);
  }

  /** The speed of the steady tow, m/s. */
  readonly speed = $derived.by(() => retrieveSpeed(this.#work.scenario));
  /** The depth of the steady tow with all the line out; null: not worked out yet. */
  readonly deep = $derived.by(() => {
    const here = this.#here;
    if (here !== null)
      return { depth: here.depth, stale: here.of !== this.#work.now || here.speed !== this.speed };
    const { value, stale } = this.steady;
    return value === null ? null : { depth: value.at(-1)?.depth ?? null, stale };
  });
  /** The whole run is of the bait, or of the cadence, before the last change: its own is still to come. */
  readonly former = $derived.by(() => {
    const { shown, recording } = this.session.run;
    return shown !== null && (shown.worked !== this.#work.now || this.whole?.recording !== recording);
  });
  /** Where the run stands on its way to that depth; null: it has no such way; undefined while it is not known. */
  readonly approach = $derived.by(() => {
    const { whole } = this;
    const { value, stale } = this.steady;
    if (whole === null || value === null || stale || this.former) return undefined;
    return approachIn(whole.recording, value, this.#work.scenario.tackle.lineOut_m, this.speed);
  });

  /** Follows the run for the life of the component that calls it. */
  follow(): void {
    this.session.follow();
    this.rivals.follow();
    this.steady.follow(
      () => ({ scenario: this.#work.scenario, speed: this.speed, ready: !this.session.run.busy }),
      async ({ scenario, speed, ready }) => {
        // The run that is being watched comes first.
        if (!ready) return null;
        const lengths = lengthsOf(scenario.tackle.lineOut_m);
        const vary = [{ variable: "lineOut" as const, values: lengths }];
        const job = { scenario, speed, vary, bands: false, whole: true };
        const cells = await this.#runs.map(job, "swim-steady");
        return cells === null ? null : pointsOf(lengths, cells);
      },
    );
    const found = untrack(() => this.#work.now);
    $effect(() => {
      const { now } = this.#work;
      const { speed } = this;
      const look = this.#look;
      if (look !== null)
        return look(
          now,
          speed,
          untrack(() => this.#here),
          (here) => (this.#here = here),
        );
      // It comes with the first turn of a hand. Where it does not come, the worker's figure stays.
      if (now !== found) import("./here").then((code) => (this.#look = code.look)).catch(() => undefined);
      return undefined;
    });
    $effect(() => {
      const { time } = this.session.player;
      untrack(() => {
        if (this.#span !== null) this.#span = following(this.#span, this.editor.duration, time);
      });
    });
    let last = 0;
    $effect(() => {
      const { recording, frames, busy } = this.session.run;
      const { weed, zone } = this;
      if (recording === null || frames === 0) {
        this.told = this.whole = null;
        return;
      }
      const look = (): void => {
        last = performance.now();
        this.told = tell(recording, weed, zone);
        if (!busy) this.whole = this.told;
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

/** The state of this view, kept while the page lives. */
export const swimOf = keptWith((app) => new Swim(app));
