import { GrowingRecording, slimChunk, slimMeta } from "../../model/motion";
import type { RecordingMeta } from "../../model/motion";
import type { ModelClient, RunJob } from "../../runner";
import { faultText } from "./fault";
import type { Worked } from "./workspace.svelte";

/** What a recording was made of, and how far it has come. */
export interface Shown {
  readonly recording: GrowingRecording;
  readonly worked: Worked;
}

/**
 * One run that follows what is asked of it: the newest request wins, and what was shown stays until the
 * new recording has come as far as the moment that is being looked at.
 */
export class RunSlot {
  shown = $state.raw<Shown | null>(null);
  /** Frames of `shown` that have arrived; rises at most once a drawn frame. */
  frames = $state(0);
  busy = $state(false);
  failure = $state.raw<string | null>(null);
  readonly #client: ModelClient;
  readonly #lane: string;
  readonly #looking: () => number;
  readonly #slim: boolean;
  #latest: RunJob | null = null;
  #beat = 0;

  /** `looking`: the moment, s, that is on the screen. `slim`: keeps neither the line nor the forces. */
  constructor(client: ModelClient, lane: string, looking: () => number, slim = false) {
    this.#slim = slim;
    this.#client = client;
    this.#lane = lane;
    this.#looking = looking;
  }

  get recording(): GrowingRecording | null {
    return this.shown?.recording ?? null;
  }

  /** Seconds that can be seen, and that there will be. */
  get available(): number {
    return this.recording === null || this.frames === 0 ? 0 : (this.frames - 1) / this.recording.frameRate;
  }
  get duration(): number {
    return this.recording === null ? 0 : (this.recording.meta.frames - 1) / this.recording.frameRate;
  }

  async record(job: RunJob, worked: Worked): Promise<void> {
    this.#latest = job;
    this.busy = true;
    let growing: GrowingRecording | null = null;
    let whole: RecordingMeta | null = null;
    try {
      const done = await this.#client.run(
        job,
        {
          meta: (meta) => {
            whole = meta;
            growing = new GrowingRecording(this.#slim ? slimMeta(meta) : meta);
          },
          chunk: (chunk) => {
            if (growing === null || whole === null) return;
            growing.append(this.#slim ? slimChunk(whole, chunk) : chunk);
            this.#came(growing, worked);
          },
        },
        this.#lane,
      );
      // Null: a newer request has taken the lane, and speaks for itself.
      if (done === null || this.#latest !== job) return;
      this.failure = null;
      this.busy = false;
      this.#count();
    } catch (fault) {
      if (this.#latest !== job) return;
      this.busy = false;
      this.failure = faultText(fault);
    }
  }

  /** Shows a finished recording that is there already. */
  adopt(shown: Shown): void {
    this.#stop();
    this.shown = shown;
    this.#count();
  }

  /** Forgets what is shown and stops what is under way: another document is open, or nothing is pinned. */
  clear(): void {
    this.#stop();
    this.shown = null;
    this.frames = 0;
    this.failure = null;
  }

  #stop(): void {
    if (this.busy) this.#client.cancel(this.#lane);
    this.#latest = null;
    this.busy = false;
  }

  #came(recording: GrowingRecording, worked: Worked): void {
    if (this.shown?.recording !== recording) {
      const far = recording.complete || recording.duration >= this.#looking();
      if (this.shown !== null && !far) return;
      this.shown = { recording, worked };
      this.failure = null;
      this.#count();
    } else if (this.#beat === 0) {
      this.#beat = requestAnimationFrame(() => this.#count());
    }
  }

  #count(): void {
    cancelAnimationFrame(this.#beat);
    this.#beat = 0;
    this.frames = this.recording?.frames ?? 0;
  }
}

/** A figure that takes a while: the last answer stays, marked stale, until the next is there. */
export class Later<T> {
  value = $state.raw<T | null>(null);
  stale = $state(false);
  failure = $state.raw<string | null>(null);
  #latest = 0;

  /** Takes the answer of `ask` unless a newer one has been asked for meanwhile; null answers were cancelled. */
  async ask(ask: () => Promise<T | null>): Promise<void> {
    const number = ++this.#latest;
    this.stale = true;
    try {
      const answer = await ask();
      if (number !== this.#latest || answer === null) return;
      this.value = answer;
      this.failure = null;
      this.stale = false;
    } catch (fault) {
      if (number !== this.#latest) return;
      this.value = null;
      this.failure = faultText(fault);
      this.stale = false;
    }
  }

  clear(): void {
    this.#latest += 1;
    this.value = null;
    this.failure = null;
    this.stale = false;
  }
}
