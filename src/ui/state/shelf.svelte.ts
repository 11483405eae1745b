import { deltaOf, NO_TRAIL, tidyTag } from "../../document";
import type { KeptBait, Scenario, Trail } from "../../document";
import { freshId } from "../kept";
import type { Annex, Listed } from "../kept";
import type { Language } from "../words/base";
import { numbered } from "./kept-words";
import type { Baits } from "./baits.svelte";
import type { Workspace } from "./workspace.svelte";

const MOST_TAGS = 20;
const MEGABYTE = 1e6;

/** The list of baits that this browser keeps, and what can be done with each. */
export class Shelf {
  readonly #baits: Baits;
  readonly #work: Workspace;
  readonly #annex: () => Promise<Annex>;
  readonly #language: () => Language;

  /** `language`: the one that is read. */
  constructor(baits: Baits, work: Workspace, annex: () => Promise<Annex>, language: () => Language) {
    this.#language = language;
    this.#baits = baits;
    this.#work = work;
    this.#annex = annex;
  }

  /** Whether the browser may drop what it keeps, in words, and how much room is taken. */
  async promise(): Promise<{ readonly words: string; readonly promised: boolean }> {
    // Read before anything is waited for: who asks here again when it changes, asks for the words too.
    const language = this.#language();
    if (!this.#baits.store.lasting) return { words: "", promised: true };
    const { KEEPING } = await import("../words/keeping");
    await KEEPING.ready(language).catch(() => undefined);
    const words = KEEPING.in(language);
    try {
      const promised = await navigator.storage.persisted();
      const promise = words.tell(promised ? "promise.given" : "promise.none");
      // Browsers tell it roughly on purpose.
      const { usage, quota } = await navigator.storage.estimate();
      if (usage === undefined || quota === undefined || quota === 0) return { words: promise, promised };
      const megabytes = (bytes: number): string => words.number(bytes / MEGABYTE, 1);
      const room = { usage: megabytes(usage), quota: megabytes(quota) };
      return { words: words.tell("promise.room", { promise, ...room }), promised };
    } catch {
      return { words: words.tell("promise.unknown"), promised: true };
    }
  }

  list(): Promise<readonly Listed[]> {
    return this.#baits.store.list();
  }

  /** A copy of a kept bait, with a name of its own. */
  async duplicate(id: string): Promise<void> {
    const read = await this.#settled(id);
    if (read === null) return;
    const now = this.#baits.time;
    const scenario = { ...read.scenario, name: numbered(read.scenario.name) };
    await this.#baits.change(null, {
      ...read,
      id: freshId(),
      revision: 0,
      scenario,
      trail: NO_TRAIL,
      own: true,
      made: now,
      changed: now,
      binned: null,
      inFile: null,
    });
  }

  async rename(id: string, name: string): Promise<void> {
    if (id === this.#baits.id) {
      this.#work.edit("name", "rename", (from) => ({ ...from, name }));
      await this.#baits.flush();
      return;
    }
    const read = await this.#settled(id);
    if (read === null) return;
    const scenario = { ...read.scenario, name };
    await this.#baits.change(read, {
      ...read,
      scenario,
      trail: renamed(read, scenario),
      changed: this.#baits.time,
    });
  }

  /** Asks the browser once more for its promise; browsers give it by their own rules. */
  async askPromise(): Promise<boolean> {
    try {
      return await navigator.storage.persist();
    } catch {
      return false;
    }
  }

  /** Other tags for a bait; `words` as typed, with commas between them. False where there are too many. */
  async tag(id: string, words: string): Promise<boolean> {
    const tags = words
      .split(",")
      .map(tidyTag)
      .filter((one, i, all) => one !== "" && all.indexOf(one) === i);
    if (tags.length > MOST_TAGS) return false;
    const read = await this.#settled(id);
    if (read !== null) await this.#baits.change(read, { ...read, tags });
    return true;
  }

  /** Puts a bait into the bin, or takes it out again. */
  async bin(id: string, into: boolean): Promise<void> {
    const read = await this.#settled(id);
    if (read === null) return;
    await this.#baits.change(read, { ...read, binned: into ? this.#baits.time : null });
  }

  /** Forgets for ever what is in the bin. */
  async empty(ids: readonly string[]): Promise<void> {
    await this.#baits.store.remove(ids);
    await (await this.#annex()).forget(ids);
    this.#baits.tellList();
  }

  /** A record as it is kept now; of the open bait what is on the page is written first. */
  async #settled(id: string): Promise<KeptBait | null> {
    if (id === this.#baits.id) await this.#baits.flush();
    const read = await this.#baits.store.read(id);
    return read?.ok === true ? read.bait : null;
  }
}

/** The steps of a bait after it has got another name. */
const renamed = ({ scenario, trail }: KeptBait, next: Scenario): Trail => ({
  past: [...trail.past, { label: "rename", delta: deltaOf(scenario, next) }],
  future: [],
});
