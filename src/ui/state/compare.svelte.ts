import type { Input } from "./inputs";
import type { Workspace, Worked } from "./workspace.svelte";

/** Letters of pinned variants: as many as can be told apart. */
export const LETTERS = ["A", "B", "C", "D"] as const;
export type Letter = (typeof LETTERS)[number];

/** A state of the document that is kept for comparison. */
export interface Variant {
  readonly letter: Letter;
  readonly worked: Worked;
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
    this.variants = [...this.variants, { letter, worked: this.#work.now }];
    this.#lineage = this.#work.lineage;
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
