import { untrack } from "svelte";
import { same } from "../../document";
import type { Beside } from "../../document";

/**
 * `work`: what a hand has entered (a reading half typed, a tick): it makes the bait one's own, and other tabs get it.
 * `place`: where on the page one is: it stays with this tab.
 */
type Kind = "work" | "place";

/** Reads one value out of what the browser has kept; undefined where it is not what it should be. */
type Reader<T> = (value: unknown) => T | undefined;

/** Readers for the fields of a state class that survive. */
type Readers<T> = { readonly [K in keyof T]?: Reader<T[K]> };

interface Survivor {
  readonly kind: Kind;
  /** The values that differ from those at the start; undefined where none does. */
  get(): Readonly<Record<string, unknown>> | undefined;
  /** Takes what was kept; what is missing or odd in it begins anew. */
  set(kept: unknown): void;
}

/**
 * What views keep beside the document: it is written with the bait, and comes back with it. A view's state class names
 * its fields once, as it is made; all else happens here.
 */
export class BesideState {
  /** What was kept for views that have not been opened on this page yet. */
  #waiting = $state.raw<Beside>({});
  #survivors = $state.raw<readonly (readonly [key: string, one: Survivor])[]>([]);

  /** Texts that are being typed and not taken yet, by the place of their field. */
  typed = $state.raw<Readonly<Record<string, string>>>({});

  /** A text is being typed at a place; null: it has been taken, or dropped. */
  type(place: string, text: string | null): void {
    const { [place]: _, ...others } = this.typed;
    this.typed = text === null ? others : { ...others, [place]: text };
  }

  /** Lets fields of a state object survive. Its values now are those that a new bait begins with. */
  keep<T extends object>(name: string, kind: Kind, state: T, readers: Readers<T>): void {
    const key = `${kind}/${name}`;
    const names = Object.keys(readers) as (keyof T & string)[];
    const start = untrack(() => Object.fromEntries(names.map((name) => [name, state[name]]))) as Partial<T>;
    const survivor: Survivor = {
      kind,
      get: () => {
        const differing = names.filter((name) => !same(state[name], start[name]));
        return differing.length === 0
          ? undefined
          : Object.fromEntries(differing.map((name) => [name, state[name]]));
      },
      set: (kept) => {
        const from = (typeof kept === "object" && kept !== null ? kept : {}) as Record<string, unknown>;
        for (const name of names) {
          const read = from[name] === undefined ? undefined : readers[name]?.(from[name]);
          const next = (read === undefined ? start[name] : read) as T[typeof name];
          if (!same(state[name], next)) state[name] = next;
        }
      },
    };
    untrack(() => {
      const waiting = this.#waiting[key];
      this.#survivors = [...this.#survivors, [key, survivor]];
      if (waiting !== undefined) survivor.set(waiting);
    });
  }

  /** All that is to be kept, by key. */
  get now(): Beside {
    const entries = this.#survivors.map(([key, one]): [string, unknown] => [key, one.get()]);
    const waiting = Object.entries(this.#waiting).filter(([key]) =>
      this.#survivors.every(([known]) => known !== key),
    );
    return Object.fromEntries([...waiting, ...entries].filter(([, value]) => value !== undefined));
  }

  /** A hand has entered something. */
  worked(beside: Beside): boolean {
    return Object.keys(beside).some((key) => key.startsWith("work/"));
  }

  /** Another bait is open: everything as it was kept with it. Where nothing was, one stays where one is on the page. */
  open(beside: Beside): void {
    this.#waiting = beside;
    for (const [key, one] of this.#survivors)
      if (one.kind === "work" || beside[key] !== undefined) one.set(beside[key]);
  }

  /** Another tab has gone on: what hands entered comes over, where one is on the page stays. */
  adopt(beside: Beside): void {
    this.#waiting = beside;
    for (const [key, one] of this.#survivors) if (one.kind === "work") one.set(beside[key]);
  }
}
