import { untrack } from "svelte";
import type { Scenario } from "../../../document";
import type { Palette } from "../../../drawing";
import { readPalette, watchPalette } from "../../stage";
import { keptWith, quietly } from "../../state";
import type { GlancesAsked, GlanceTold } from "./glance";

/** A bait as a list has it. */
export interface Glanced {
  readonly id: string;
  readonly revision: number;
  readonly scenario: Scenario;
}

const stateOf = ({ id, revision }: Glanced): string => `${id}/${String(revision)}`;

/** The last answer for one bait: a signal of its own, so that an answer changes one row of hundreds. */
class Answer {
  told = $state.raw<GlanceTold | null>(null);
}

/** How many baits the worker is asked for in one message: each message and each answer takes the page some of its time. */
const AT_ONCE = 8;

/**
 * What a list shows of each bait at a glance: its small picture and its net buoyancy. A worker of its own works them out, a
 * few at a time, so that a list of hundreds scrolls meanwhile; it ends when no list is shown any longer.
 */
class Glances {
  readonly #answers = new Map<string, Answer>();
  /** Rises as signals of further baits are made. */
  #made = $state(0);
  /** What is still to be asked, the next one last: what has come into sight goes before what is out of it again. */
  readonly #waiting = new Map<string, Glanced>();
  /** What may come into sight later: asked in its order, when nothing else is. */
  readonly #later = new Map<string, Glanced>();
  readonly #asked = new Map<string, Glanced>();
  #worker: Worker | null = null;
  #busy = false;
  #palette: Palette | null = null;
  #lists = 0;

  /** What is known of a bait in its present state. */
  of(one: Glanced): GlanceTold | null {
    const answer = this.#answers.get(one.id);
    // A signal that is made while a value is derived would not count for it: so `want` makes it, and `#made` tells.
    if (answer === undefined) {
      void this.#made;
      return null;
    }
    return answer.told?.of === stateOf(one) ? answer.told : null;
  }

  /**
   * What is asked as a list comes into sight does not hang on what the answers are. `later`: it is not in sight yet, and
   * may wait for what is.
   */
  want(baits: readonly Glanced[], later = false): void {
    untrack(() => {
      let fresh = false;
      for (const one of [...baits].reverse()) {
        this.#asked.set(one.id, one);
        if (!this.#answers.has(one.id)) {
          this.#answers.set(one.id, new Answer());
          fresh = true;
        }
        if (this.of(one) !== null) continue;
        if (!later) {
          this.#later.delete(one.id);
          this.#waiting.delete(one.id);
          this.#waiting.set(one.id, one);
        } else if (!this.#waiting.has(one.id)) this.#later.set(one.id, one);
      }
      if (fresh) this.#made += 1;
    });
    this.#next();
  }

  /** The place of a list on the page, whose colours the pictures have. */
  readonly shownAt = (place: Element): (() => void) => {
    this.#lists += 1;
    this.#colours(readPalette(place));
    const end = watchPalette(place, (next) => this.#colours(next));
    return () => {
      end();
      this.#lists -= 1;
      if (this.#lists === 0) this.#rest();
    };
  };

  /** In other colours all pictures are made anew. */
  #colours(palette: Palette): void {
    const other = JSON.stringify(palette) !== JSON.stringify(this.#palette);
    this.#palette = palette;
    if (other) {
      for (const one of this.#answers.values()) one.told = null;
      this.want([...this.#asked.values()]);
    } else this.#next();
  }

  #next(): void {
    const palette = this.#palette;
    const from = this.#waiting.size > 0 ? this.#waiting : this.#later;
    if (this.#busy || from.size === 0 || palette === null || this.#lists === 0) return;
    const all = [...from.values()];
    const some = from === this.#later ? all.slice(0, AT_ONCE) : all.slice(-AT_ONCE).reverse();
    for (const one of some) from.delete(one.id);
    this.#busy = true;
    const baits = some.map((one) => ({ id: one.id, of: stateOf(one), scenario: one.scenario }));
    this.#running().postMessage({ baits, palette } satisfies GlancesAsked);
  }

  #running(): Worker {
    if (this.#worker !== null) return this.#worker;
    const worker = new Worker(new URL("./glance-worker.ts", import.meta.url), {
      type: "module",
      name: "glances",
    });
    // While a hand scrolls, answers are shown and the next are asked for between two pictures.
    worker.onmessage = ({ data }: MessageEvent<readonly GlanceTold[]>) =>
      quietly(() => {
        if (this.#worker !== worker) return;
        for (const told of data) {
          const answer = this.#answers.get(told.id);
          if (answer !== undefined) answer.told = told;
        }
        this.#busy = false;
        this.#next();
      });
    this.#worker = worker;
    return worker;
  }

  #rest(): void {
    this.#worker?.terminate();
    [this.#worker, this.#busy] = [null, false];
    this.#waiting.clear();
    this.#later.clear();
    this.#asked.clear();
  }
}

export const glancesOf = keptWith(() => new Glances());
