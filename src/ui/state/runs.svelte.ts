import { untrack } from "svelte";
import { GrowingRecording, motionOnlyChunk, motionOnlyMeta } from "../../model/motion";
import type { RecordingMeta } from "../../model/motion";
import { secondsLeft, waitWords } from "../../runner";
import type { ModelClient, RunJob } from "../../runner";
import { toSI } from "../../units";
import { faultText } from "./fault";
import { atRest } from "./rest";
import type { Worked } from "./workspace.svelte";

/** What a recording was made of, and how far it has come. */
export interface Shown {
  readonly recording: GrowingRecording;
  readonly worked: Worked;
  readonly job: RunJob;
}

/** While a hand moves, what arrives of a run is shown this seldom, ms. */
const WHILE_MOVING_MS = 120;

/**
 * One run that follows what is asked of it. The newest request wins. What was shown stays until the new recording has come
 * as far as the moment that is being looked at.
 */
export class RunSlot {
  shown = $state.raw<Shown | null>(null);
  /** Frames of `shown` that have arrived; rises at most once a drawn frame. */
  frames = $state(0);
  busy = $state(false);
  failure = $state.raw<string | null>(null);
  /** s */
  #left = $state<number | null>(null);
  readonly #client: ModelClient;
  readonly #lane: string;
  readonly #looking: () => number;
  readonly #motionOnly: boolean;
  readonly #moving: () => boolean;
  #latest: RunJob | null = null;
  #beat = 0;
  #pause: ReturnType<typeof setTimeout> | undefined;

  /**
   * `looking`: the moment, s, that is on the screen. `motionOnly`: keeps neither the line nor the forces. `moving`: a hand is
   * turning something, and what it turns comes before what a run adds to its picture.
   */
  constructor(
    client: ModelClient,
    lane: string,
    looking: () => number,
    { motionOnly = false, moving = (): boolean => false } = {},
  ) {
    this.#motionOnly = motionOnly;
    this.#moving = moving;
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
  /** How much longer the run will take, in words; null where that is not known or soon over. */
  get wait(): string | null {
    return this.#left === null ? null : waitWords(this.#left);
  }
  get duration(): number {
    return this.recording === null ? 0 : (this.recording.meta.frames - 1) / this.recording.frameRate;
  }

  /** `begun`: what is there of this run already, after `take`; only the rest is asked for. */
  async record(job: RunJob, worked: Worked, begun: GrowingRecording | null = null): Promise<void> {
    this.#latest = job;
    this.busy = true;
    this.#left = null;
    const start = performance.now();
    let growing = begun;
    let whole: RecordingMeta | null = null;
    try {
      const done = await this.#client.run(
        begun === null ? job : { ...job, known: begun.frames },
        {
          meta: (meta) => {
            whole = meta;
            growing ??= new GrowingRecording(this.#motionOnly ? motionOnlyMeta(meta) : meta);
          },
          chunk: (chunk) => {
            if (growing === null || whole === null) return;
            growing.append(this.#motionOnly ? motionOnlyChunk(whole, chunk) : chunk);
            if (this.#latest === job)
              this.#left = secondsLeft(toSI(performance.now() - start, "ms"), growing.frames / whole.frames);
            this.#came({ recording: growing, worked, job });
          },
        },
        this.#lane,
      );
      // Null: a newer request has taken the lane, and brings its own answer.
      if (done === null || this.#latest !== job) return;
      this.failure = null;
      this.#rest();
      this.#count();
    } catch (fault) {
      if (this.#latest !== job) return;
      this.#rest();
      this.failure = faultText(fault);
    }
  }

  /** Shows a finished recording that is there already. */
  adopt(shown: Shown): void {
    this.#stop();
    this.shown = shown;
    this.#count();
  }

  /** Shows at once what is there of a run; where something is missing, `record` brings the rest. */
  take(shown: Shown): void {
    this.adopt(shown);
    this.failure = null;
    this.busy = !shown.recording.complete;
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
    this.#rest();
  }

  #rest(): void {
    this.busy = false;
    this.#left = null;
  }

  #came(come: Shown): void {
    const { recording } = come;
    if (this.shown?.recording !== recording) {
      const far = recording.complete || recording.duration >= this.#looking();
      if (this.shown !== null && !far) return;
      this.shown = come;
      this.failure = null;
      this.#count();
    } else if (this.#beat === 0) {
      if (!this.#moving()) this.#beat = requestAnimationFrame(() => this.#count());
      else this.#pause ??= setTimeout(() => this.#count(), WHILE_MOVING_MS);
    }
  }

  #count(): void {
    cancelAnimationFrame(this.#beat);
    clearTimeout(this.#pause);
    this.#beat = 0;
    this.#pause = undefined;
    this.frames = this.recording?.frames ?? 0;
  }
}

/** A figure that takes a while: the last answer stays, marked stale, until the next is there. */
export class Later<T> {
  value = $state.raw<T | null>(null);
  stale = $state(false);
  failure = $state.raw<string | null>(null);
  #latest = 0;
  /** The question has changed and has not been asked yet. */
  #due = false;

  /** The question has changed: until it is asked, what comes in of an earlier one is no answer to it. */
  outdate(): void {
    this.#due = true;
    this.stale = true;
  }

  /** Takes the answer of `ask` unless a newer one has been asked for meanwhile; null answers were cancelled. */
  async ask(ask: () => Promise<T | null>): Promise<void> {
    const number = ++this.#latest;
    this.#due = false;
    this.stale = true;
    try {
      const answer = await ask();
      if (number !== this.#latest || answer === null) return;
      this.value = answer;
      this.failure = null;
      this.stale = this.#due;
    } catch (fault) {
      if (number !== this.#latest) return;
      this.value = null;
      this.failure = faultText(fault);
      this.stale = this.#due;
    }
  }

  /**
   * Asks anew whenever what `read` reads changes, for the life of the component that calls it: at once where nothing is
   * shown yet, else when the hand rests. Where `read` returns null there is nothing to ask, and nothing is shown.
   */
  follow<Q>(read: () => Q | null, ask: (question: Q) => Promise<T | null>): void {
    $effect(() => {
      const question = read();
      if (question === null) {
        untrack(() => this.clear());
        return;
      }
      const waiting = untrack(() => this.value !== null || this.stale);
      this.outdate();
      return atRest(() => void this.ask(() => ask(question)), waiting);
    });
  }

  clear(): void {
    this.#latest += 1;
    this.#due = false;
    this.value = null;
    this.failure = null;
    this.stale = false;
  }
}
