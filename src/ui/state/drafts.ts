import { createStore, del, entries, set } from "idb-keyval";
import type { UseStore } from "idb-keyval";

/** Unsaved work that the browser keeps, one entry an open page. */
export interface Draft {
  readonly key: string;
  readonly name: string;
  readonly text: string;
  /** Milliseconds since 1970. */
  readonly kept: number;
}

const LOCK = "trimwright/page/";

function isDraft(value: unknown): value is Draft {
  if (typeof value !== "object" || value === null) return false;
  const { key, name, text, kept } = value as Record<string, unknown>;
  return (
    typeof key === "string" &&
    typeof name === "string" &&
    typeof text === "string" &&
    typeof kept === "number"
  );
}

/**
 * Keeps unsaved work in the browser's database, so that a closed page or a crash loses nothing. Each page
 * has a key of its own and holds a lock of that name while it lives: a draft whose lock nobody holds was
 * left behind, and only such drafts are offered. Where the browser has no database or no locks, nothing is
 * kept and `keep` says so by rejecting; the page then warns before it closes.
 */
export class Drafts {
  readonly #key: string;
  #store: UseStore | null = null;

  constructor(key: string) {
    this.#key = key;
  }

  /** Takes this page's lock and gives the drafts that earlier pages left, newest first. */
  async start(): Promise<readonly Draft[]> {
    if (!("locks" in navigator))
      throw new Error(
        "This browser has no locks: a living page's draft could not be told from one left behind.",
      );
    const store = createStore("trimwright", "drafts");
    const { locks } = navigator;
    // Held until the page goes; the promise of the lock never settles by design.
    void locks.request(LOCK + this.#key, () => new Promise<never>(() => undefined));
    const [kept, held] = await Promise.all([entries<string, unknown>(store), locks.query()]);
    this.#store = store;
    const living = new Set((held.held ?? []).map((lock) => lock.name));
    return kept
      .map(([, value]) => value)
      .filter(isDraft)
      .filter((draft) => draft.key !== this.#key && !living.has(LOCK + draft.key))
      .sort((a, b) => b.kept - a.kept);
  }

  /** Keeps the text as this page's draft. */
  async keep(name: string, text: string, now: number): Promise<void> {
    if (this.#store === null) throw new Error("This browser keeps no drafts.");
    const draft: Draft = { key: this.#key, name, text, kept: now };
    await set(this.#key, draft, this.#store);
  }

  /** Forgets this page's draft (saved, or nothing changed), or one left behind. */
  async drop(key: string = this.#key): Promise<void> {
    if (this.#store !== null) await del(key, this.#store);
  }
}
