import { untrack } from "svelte";
import { freeBody, FREE_SCALES, sceneOf, scaleFor } from "../../../drawing";
import type { FreeBody } from "../../../drawing";
import { fromSI, toSI } from "../../../units";
import type { RunJob } from "../../../runner";
import { Player } from "../../stage";
import { keptWith, RunSlot } from "../../state";
import type { App, Worked } from "../../state";
import { teachOf } from "./state.svelte";

export const SOURCES = ["lesson", "tub", "swim"] as const;
export type Source = (typeof SOURCES)[number];

/** How long a bait is watched that is let go under water, s, and how deep as a share of the water. */
const WATCHED = 8;
const DEEP = 0.6;

/** A run whose moments are looked at force by force, and the point about which they turn. */
export class Forces {
  readonly app: App;
  source = $state<Source>("tub");
  readonly player = new Player();
  readonly slot: RunSlot;
  /** N for each 10 mm of the bait; null: chosen for the run, once. */
  scale = $state<number | null>(null);
  /** The point for the moments: behind the nose and above the datum line, mm. */
  point = $state.raw<readonly [number, number]>([0, 0]);
  /** The moment to begin with, s. */
  from = 0;
  #asked: Worked | null = null;
  #from: Source | null = null;

  constructor(app: App) {
    this.app = app;
    this.slot = new RunSlot(app.runs, "free-body", () => this.player.time);
  }

  /** The lesson that was open last; null: none. */
  get lesson() {
    return teachOf(this.app).last;
  }

  readonly worked = $derived.by((): Worked => {
    const play = this.lesson;
    return (this.source === "lesson" ? play?.worked[play.front] : undefined) ?? this.app.work.now;
  });

  readonly scene = $derived(sceneOf(this.worked.compiled.bait, null, this.worked.compiled.around.depth));

  #job({ scenario, compiled }: Worked): RunJob {
    const run = this.source === "lesson" ? this.lesson?.lesson.run : undefined;
    if (this.source === "swim" || run?.kind === "cast") return { kind: "swim", scenario };
    const pitch = run?.kind === "still" ? 0 : "rest";
    return {
      kind: "tub",
      scenario,
      tub: { depth: DEEP * compiled.around.depth, pitch, duration: run?.for_s ?? WATCHED },
    };
  }

  /** Follows what is chosen for the life of the component that calls it. */
  follow(): void {
    $effect(() => {
      const { worked, source } = this;
      untrack(() => {
        if (this.#asked === worked && this.#from === source) return;
        this.#asked = worked;
        this.#from = source;
        this.slot.clear();
        this.player.pause();
        this.player.load(0, 0, false);
        this.scale = null;
        this.toPlace("G");
        void this.slot.record(this.#job(worked), worked);
      });
    });
    $effect(() => {
      const { duration, available } = this.slot;
      untrack(() => {
        this.player.load(duration, available, this.player.duration > 0);
        // The moment that was asked for, as soon as it has been worked out.
        if (this.from === 0 || available < Math.min(this.from, duration)) return;
        this.player.seek(this.from);
        this.from = 0;
      });
    });
    // The scale is chosen once, when the run is there in full: then it stays.
    $effect(() => {
      const { frames, busy, recording } = this.slot;
      const whole = frames > 0 && !busy && recording?.complete === true;
      untrack(() => {
        if (whole && this.scale === null) this.scale = this.#fitting();
      });
    });
    $effect(() => () => this.player.pause());
  }

  #fitting(): number {
    const { recording, frames } = this.slot;
    if (recording === null) return FREE_SCALES[0];
    let most = 0;
    for (let i = 0; i < frames; i += 15)
      for (const { x, z } of recording.wrench(i).values()) most = Math.max(most, Math.hypot(x, z));
    return scaleFor(most, this.worked.compiled.bait.shape.length);
  }

  /** The forces at the moment on the screen; null until it has come. */
  readonly now = $derived.by((): FreeBody | null => {
    const { shown, frames } = this.slot;
    if (shown === null || frames === 0) return null;
    const frame = Math.min(frames - 1, Math.round(this.player.time * shown.recording.frameRate));
    return freeBody(shown.recording, frame, shown.worked.compiled.bait, this.scene);
  });

  /** Body frame, m. */
  readonly pointAt = $derived({ x: 0 - toSI(this.point[0], "mm"), z: toSI(this.point[1], "mm") });

  move(station: number, height: number): void {
    const length = fromSI(this.worked.compiled.bait.shape.length, "mm");
    const inside = (value: number, least: number, most: number): number =>
      Number(Math.min(most, Math.max(least, value)).toFixed(1));
    this.point = [inside(station, -length, 2 * length), inside(height, -length, length)];
  }

  toPlace(which: "G" | "B" | "tie"): void {
    const { [which]: p } = this.scene;
    this.move(fromSI(0 - p.x, "mm"), fromSI(p.z, "mm"));
  }
}

export const forcesOf = keptWith((app) => new Forces(app));
