import type { Vec } from "../../model/base";
import type { Recording, Snapshot } from "../../model/motion";

const TRACE_SECONDS = 3;
const TRACE_STEP = 1 / 20;

/** The recent path of G in one recording, on a fixed grid of times so that old points do not move. */
export class Trace {
  readonly #known = new Map<number, Vec>();
  readonly #recording: Recording;

  constructor(recording: Recording) {
    this.#recording = recording;
  }

  follows(recording: Recording): boolean {
    return recording === this.#recording;
  }

  until(now: Snapshot): readonly Vec[] {
    const path: Vec[] = [];
    const last = Math.ceil(now.time / TRACE_STEP) - 1;
    for (let i = Math.max(0, last - TRACE_SECONDS / TRACE_STEP); i <= last; i++) path.push(this.#at(i));
    path.push(now.G);
    return path;
  }

  #at(i: number): Vec {
    const known = this.#known.get(i);
    if (known !== undefined) return known;
    const { G } = this.#recording.at(i * TRACE_STEP);
    this.#known.set(i, G);
    return G;
  }
}
