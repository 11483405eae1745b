import { readScenario } from "../../document";
import type { Scenario } from "../../document";
import type { Input } from "./inputs";
import { workOut } from "./workspace.svelte";
import type { Workspace, Worked } from "./workspace.svelte";

/** Letters of pinned variants: as many as can be told apart. */
export const LETTERS = ["A", "B", "C", "D"] as const;
export type Letter = (typeof LETTERS)[number];

/** Letters of a variant's name at most. */
export const LONGEST_NAME = 40;

/** A pinned document as it is kept with the bait. */
export interface Pin {
  readonly letter: Letter;
  readonly scenario: Scenario;
  /** What the maker calls it; empty: its letter alone. */
  readonly name: string;
}

/** Reads a pin of what the browser has kept. */
export function aPin(value: unknown): Pin | undefined {
  const { letter, scenario, name } = (value ?? {}) as {
    readonly letter?: unknown;
    readonly scenario?: unknown;
    readonly name?: unknown;
  };
  const known = LETTERS.find((one) => one === letter);
  const read = readScenario(scenario);
  return known === undefined || !read.ok
    ? undefined
    : {
        letter: known,
        scenario: read.scenario,
        name: typeof name === "string" ? name.slice(0, LONGEST_NAME) : "",
      };
}

/** A state of the document that is kept for comparison. */
export interface Variant {
  readonly letter: Letter;
  readonly worked: Worked;
  readonly name: string;
}

/** Up to four pinned variants: what the present one is compared with. Letters stay with their variants. */
export class Compare {
  variants = $state.raw<readonly Variant[]>([]);
  readonly #work: Workspace;
  #lineage = -1;

  constructor(work: Workspace) {
    this.#work = work;
  }

  /** The variant pinned last: what single numbers are compared with. */
  get pinned(): Worked | null {
    return this.variants.at(-1)?.worked ?? null;
  }

  /** The pinned documents, to be kept with the bait. */
  get pins(): readonly Pin[] {
    return this.variants.map(({ letter, worked, name }) => ({ letter, scenario: worked.scenario, name }));
  }
  set pins(pins: readonly Pin[]) {
    this.variants = pins.flatMap(({ letter, scenario, name }): readonly Variant[] => {
      const outcome = workOut(scenario);
      return outcome.ok ? [{ letter, worked: outcome.worked, name }] : [];
    });
    this.#lineage = this.#work.lineage;
  }

  /** The letter that the next pinned variant gets; null where there is none left. */
  get next(): Letter | null {
    return LETTERS.find((letter) => this.variants.every((one) => one.letter !== letter)) ?? null;
  }

  /** The letter under which the document is pinned just as it is now; null where it is not. */
  get same(): Letter | null {
    return this.variants.find((one) => one.worked === this.#work.now)?.letter ?? null;
  }

  /** Pins the document as it is; nothing happens where it is pinned already, or four others are. */
  pin(): void {
    this.#work.settle();
    const letter = this.next;
    if (letter === null || this.same !== null) return;
    this.variants = [...this.variants, { letter, worked: this.#work.now, name: "" }];
    this.#lineage = this.#work.lineage;
  }

  /** Gives a variant a name. */
  rename(letter: Letter, name: string): void {
    const short = name.trim().slice(0, LONGEST_NAME);
    this.variants = this.variants.map((one) => (one.letter === letter ? { ...one, name: short } : one));
  }

  /** Lets one variant go; without a letter all of them. */
  unpin(letter?: Letter): void {
    this.variants = letter === undefined ? [] : this.variants.filter((one) => one.letter !== letter);
  }

  /** Pins the document as it is, or unpins that variant. */
  toggle(): void {
    this.#work.settle();
    if (this.same === null) this.pin();
    else this.unpin(this.same);
  }

  /** The pinned variant's value of an input; null where there is none to compare. */
  valueOf(input: Input): number | null {
    if (this.pinned === null || this.#lineage !== this.#work.lineage) return null;
    try {
      return input.read(this.pinned.scenario);
    } catch {
      // What one variant has another need not have: a move of its cadence, a hanger.
      return null;
    }
  }
}
