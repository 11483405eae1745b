import type { Input } from "./inputs";
import type { Workspace, Worked } from "./workspace.svelte";

/** The pinned variant: what the present one is compared with. */
export class Compare {
  pinned = $state.raw<Worked | null>(null);
  readonly #work: Workspace;
  #lineage = -1;

  constructor(work: Workspace) {
    this.#work = work;
  }

  pin(): void {
    this.#work.settle();
    this.pinned = this.#work.now;
    this.#lineage = this.#work.lineage;
  }

  unpin(): void {
    this.pinned = null;
  }

  /** The pinned variant's value of an input; null where there is none to compare. */
  valueOf(input: Input): number | null {
    if (this.pinned === null || this.#lineage !== this.#work.lineage) return null;
    return input.read(this.pinned.scenario);
  }
}
