import { toSI } from "../../units";
import {
  loaded,
  paused,
  played,
  rateBeside,
  RATES,
  sought,
  stepped,
  ticked,
  waiting,
  type Playback,
} from "./playback";

/** Where the clock's beats come from; the browser's own by default. */
export interface Beats {
  request(callback: (nowMs: number) => void): number;
  cancel(handle: number): void;
}

const browserBeats: Beats = {
  request: (callback) => requestAnimationFrame(callback),
  cancel: (handle) => cancelAnimationFrame(handle),
};

/** Plays a recording that may still be growing. Components read the fields and call the verbs. */
export class Player {
  #state = $state.raw<Playback>({ time: 0, playing: false, rate: 1, duration: 0, available: 0 });
  #handle: number | null = null;
  #last: number | null = null;
  readonly #beats: Beats;
  /** The clock stands, though it is set to run: a window lies over the picture. */
  #held = false;
  /** Frames a second of the recording, for single steps. */
  frameRate = 60;

  constructor(beats: Beats = browserBeats) {
    this.#beats = beats;
  }

  get time(): number {
    return this.#state.time;
  }
  get playing(): boolean {
    return this.#state.playing;
  }
  get rate(): number {
    return this.#state.rate;
  }
  get duration(): number {
    return this.#state.duration;
  }
  get available(): number {
    return this.#state.available;
  }
  /** Playing, but at the end of what is computed so far. */
  get waiting(): boolean {
    return waiting(this.#state);
  }

  /** A new recording of `duration` s, of which `available` s exist. Keeps the time where `keepTime`, else starts at 0. */
  load(duration: number, available = 0, keepTime = false): void {
    this.#set(loaded(this.#state, duration, available, keepTime));
  }
  /** More of the recording has been computed. */
  extend(available: number): void {
    this.#set(loaded(this.#state, this.#state.duration, available, true));
  }
  play(): void {
    this.#set(played(this.#state));
  }
  pause(): void {
    this.#set(paused(this.#state));
  }
  toggle(): void {
    if (this.playing) this.pause();
    else this.play();
  }
  seek(time: number): void {
    this.#set(sought(this.#state, time));
  }
  /** Whole frames on or back, paused. */
  step(count: number): void {
    this.#set(stepped(this.#state, count, this.frameRate));
  }
  setRate(rate: number): void {
    if (!(RATES as readonly number[]).includes(rate))
      throw new RangeError(`Player: rate ${rate} is none of ${RATES.join(", ")}`);
    this.#set({ ...this.#state, rate });
  }
  slower(): void {
    this.setRate(rateBeside(this.rate, -1));
  }
  faster(): void {
    this.setRate(rateBeside(this.rate, 1));
  }
  /** Stops the clock while a window lies over the picture; after it the clock runs again, where it was running. */
  hold(held: boolean): void {
    this.#held = held;
    this.#set(this.#state);
  }
  /** Ends the clock; the last picture stays. */
  destroy(): void {
    this.pause();
  }

  #set(next: Playback): void {
    this.#state = next;
    const runs = next.playing && !this.#held;
    if (runs && this.#handle === null) {
      this.#last = null;
      this.#handle = this.#beats.request(this.#beat);
    } else if (!runs && this.#handle !== null) {
      this.#beats.cancel(this.#handle);
      this.#handle = null;
    }
  }

  #beat = (nowMs: number): void => {
    this.#handle = null;
    const dt = this.#last === null ? 0 : toSI(nowMs - this.#last, "ms");
    const next = ticked(this.#state, dt);
    this.#state = next;
    this.#last = nowMs;
    if (next.playing) this.#handle = this.#beats.request(this.#beat);
  };
}
