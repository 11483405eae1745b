import { deltaOf, ELSEWHERE, mergeBeside, mergeScenarios, same } from "../../document";
import type { Beside, Clash, KeptBait, Scenario, Trail } from "../../document";
import { clashWords, dropWords, freshId, leaveWords } from "../kept";
import type { BaitStore } from "../kept";
import type { BesideState } from "./beside.svelte";
import type { Language } from "../words/base";
import { FIGURES } from "../words/figures";
import { FILE } from "../words/file";
import { faultText } from "./fault";
import type { Keeping, Seen, Written } from "./keeping";
import { late, numbered, unkept } from "./kept-words";
import { Telling } from "./telling.svelte";
import type { Opening, Workspace } from "./workspace.svelte";

/** After an edit the hand may go on for this long, ms, before it is written; but never longer than the second. */
const REST_MS = 250;
const LATEST_MS = 700;
/** From then on a person is told that the browser's database does not answer, ms. It may still do so. */
const LONG_MS = 4000;

/**
 * The open bait as the browser keeps it: written after each edit, put together with what other tabs write. Where nothing
 * is kept, `trouble` says why.
 */
export class Baits extends Telling {
  /** All that is open is kept. */
  safe = $state(true);
  /** Rises when anything in the list may have changed. */
  news = $state(0);
  id = $state.raw("");
  readonly store: BaitStore;
  readonly #keeping: Keeping;
  readonly #work: Workspace;
  readonly #beside: BesideState;
  readonly #page = freshId();
  /** The record as this page last read or wrote it. */
  #base: KeptBait | null = null;
  #made = 0;
  #changed = 0;
  #own = $state(false);
  /** What was open when it was last written or read. */
  #seen: Seen;
  #writing: Promise<Written | null> | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #since = 0;
  #asked = false;

  /** `language`: the one that is read. */
  constructor(
    keeping: Keeping,
    work: Workspace,
    beside: BesideState,
    kept: KeptBait | null,
    language: () => Language = () => "en",
  ) {
    super(language);
    this.store = keeping.store;
    this.#keeping = keeping;
    this.#work = work;
    this.#beside = beside;
    this.#seen = this.#begin(kept);
  }

  /** The bait is one's own: it stands in the list. */
  get own(): boolean {
    return this.#own;
  }

  /** Now, in ms since 1970. */
  get time(): number {
    return this.#keeping.now();
  }

  /** If the page went now, work would go with it. */
  get wouldBeLost(): boolean {
    const kept = this.store.lasting && this.trouble === null;
    return !kept && this.#work.changed;
  }

  /**
   * Opens a scenario as a bait of its own: a new one, an example, a file. What was open stays kept.
   *
   * @param own it stands in the list from the beginning: somebody has made it
   */
  start(scenario: Scenario, opening: Opening = {}, own = false): void {
    this.#leaveOpen();
    this.#work.open(scenario, opening);
    this.#beside.open({});
    this.#seen = this.#begin(null);
    this.#own = own;
    // Even untouched it is the bait that a reload must show.
    void this.flush(true);
  }

  /** Opens a bait that is kept; what stands in the way, in words, or null. */
  async open(id: string): Promise<string | null> {
    if (id === this.id) return null;
    const words = FIGURES.in(this.language);
    let read;
    try {
      read = await this.store.read(id);
    } catch (fault) {
      return words.tell("kept.notFetched", { why: faultText(fault, words.language) });
    }
    if (read === null) return words.tell("kept.gone");
    if (!read.ok) return words.tell("kept.unreadable", { why: FILE.in(words.language).of(read.why) });
    this.#leaveOpen();
    const { bait } = read;
    this.#work.open(bait.scenario, { trail: bait.trail, inFile: bait.inFile });
    this.#beside.open(bait.beside);
    this.#seen = this.#begin(bait);
    const { notes } = read;
    if (notes.length > 0) this.setTold((language) => notes.map((one) => FILE.in(language).of(one)).join(" "));
    void this.store.setLast(id).catch(() => undefined);
    return null;
  }

  /** Follows the document, other tabs and the page's end, for the life of the component that calls it. */
  follow(): () => void {
    return $effect.root(() => this.#watch());
  }

  #watch(): void {
    $effect(() => {
      const { scenario } = this.#work;
      const beside = this.#beside.now;
      // Saving to a file changes this and nothing else.
      void this.#work.changed;
      if (!this.#same(scenario, beside)) this.#schedule();
    });
    $effect(() => this.#keeping.tabs.listen(({ about, revision }) => this.#hear(about, revision)));
  }

  /** Writes at once what is not kept yet. `anyway`: even where nothing has changed. */
  async flush(anyway = false): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    // One write at a time: the next one begins on what this one has made.
    while (this.#writing !== null) await this.#writing;
    if (!anyway && this.#same(this.#work.scenario, this.#beside.now)) {
      // An edit that was taken back before it was written: what is kept is what is here.
      this.safe = true;
      return;
    }
    this.#writing = this.#write();
    try {
      await this.#writing;
    } finally {
      this.#writing = null;
    }
  }

  /** Makes the open bait one's own, at once: something is to be kept beside it. */
  async hold(): Promise<void> {
    this.#own = true;
    await this.flush(true);
  }

  /** The page may go, now or soon: what is not written yet is left where it can be written at once. */
  leave(): void {
    if (this.safe && this.#same(this.#work.scenario, this.#beside.now)) return;
    leaveWords(this.#keeping.slips, this.#page, this.#base, this.#mine());
    void this.flush();
  }

  /** The page is seen again: other tabs may have written, and without a channel nobody has told. */
  async look(): Promise<void> {
    await this.#catchUp();
    this.news += 1;
  }

  #isWriting = (): boolean => this.#writing !== null;

  #begin(kept: KeptBait | null): Seen {
    this.#base = kept;
    this.id = kept?.id ?? freshId();
    this.#made = kept?.made ?? this.#keeping.now();
    this.#changed = kept?.changed ?? this.#made;
    this.#own = kept?.own ?? false;
    this.safe = true;
    this.#keeping.remember(this.id);
    return { scenario: this.#work.scenario, beside: this.#beside.now, inFile: this.#work.inFile };
  }

  #same(scenario: Scenario, beside: Beside): boolean {
    const { scenario: was, beside: stood, inFile } = this.#seen;
    return scenario === was && inFile === this.#work.inFile && same(beside, stood);
  }

  #mine(): KeptBait {
    const { scenario, trail, inFile } = this.#work;
    const beside = this.#beside.now;
    const edited = scenario !== this.#seen.scenario;
    if (edited) this.#changed = this.#keeping.now();
    this.#own ||= trail.past.length + trail.future.length > 0 || this.#beside.worked(beside);
    return {
      id: this.id,
      revision: this.#base?.revision ?? 0,
      scenario,
      trail,
      beside,
      own: this.#own,
      made: this.#made,
      changed: this.#changed,
      // Who edits a bait wants to keep it.
      binned: edited ? null : (this.#base?.binned ?? null),
      inFile,
      tags: this.#base?.tags ?? [],
    };
  }

  #schedule(): void {
    this.safe = false;
    const now = this.#keeping.now();
    if (this.#timer === undefined) this.#since = now;
    clearTimeout(this.#timer);
    const wait = Math.max(0, Math.min(REST_MS, this.#since + LATEST_MS - now));
    this.#timer = setTimeout(() => void this.flush(), wait);
  }

  async #write(): Promise<Written | null> {
    const mine = this.#mine();
    const base = this.#base;
    try {
      const slow = setTimeout(() => this.setTrouble(late), LONG_MS);
      const settled = await this.store.write(base, mine).finally(() => clearTimeout(slow));
      if (this.store.lasting) this.setTrouble(null);
      dropWords(this.#keeping.slips, this.#page);
      // Another bait has been opened meanwhile: what came of this one is in the list.
      const written = { sent: mine, settled };
      if (this.id !== mine.id) return written;
      this.#took(mine, settled.kind === "kept" ? null : settled.bait, settled.bait);
      if (settled.kind === "merged") this.#tell(settled.clashes);
      if (settled.kind === "parted") this.#part(settled.bait);
      // An edit that was taken back during the write is again what was there before it: no effect tells of that.
      if (this.#same(this.#work.scenario, this.#beside.now)) this.safe = true;
      else this.#schedule();
      this.#keeping.tabs.tell({ about: settled.bait.id, revision: settled.bait.revision });
      this.news += 1;
      if (this.#own && !this.#asked) {
        this.#asked = true;
        this.#keeping.persist();
      }
      if (base === null) await this.store.setLast(settled.bait.id);
      return written;
    } catch (fault) {
      this.setTrouble(unkept(fault));
      return null;
    }
  }

  /** Goes on from a record that has been written or read. `merged`: it holds edits of another tab too. */
  #took(mine: KeptBait, merged: KeptBait | null, written: KeptBait): void {
    this.#base = written;
    this.#own = written.own;
    this.#seen = { scenario: mine.scenario, beside: mine.beside, inFile: mine.inFile };
    if (written.id !== this.id) {
      this.id = written.id;
      this.#keeping.remember(this.id);
    }
    if (merged !== null) this.#rebase(mine, merged);
  }

  /** Takes another tab's edits over, under what was done here since `mine` was sent. */
  #rebase(mine: KeptBait, merged: KeptBait): void {
    this.#work.settle();
    const { scenario, trail } = this.#work;
    const untouched = scenario === mine.scenario;
    const next = untouched ? merged.scenario : mergeScenarios(mine.scenario, scenario, merged.scenario);
    if (next === null) {
      // The hand has gone on in the very place that the other tab changed: from here on they are two.
      this.#base = null;
      this.id = freshId();
      this.#keeping.remember(this.id);
      this.#part(merged);
      return;
    }
    const joined: Trail = untouched
      ? merged.trail
      : { past: [...trail.past, { label: ELSEWHERE, delta: deltaOf(scenario, next) }], future: [] };
    // Where the document is the same, its branches stay the same objects: nothing is computed again.
    const adopted = same(next, scenario) ? scenario : next;
    this.#work.adopt(adopted, { trail: joined, inFile: merged.inFile });
    const here = this.#beside.now;
    const joint = mergeBeside(mine.beside, here, merged.beside);
    this.#tell(joint.clashes);
    this.#beside.adopt(joint.beside);
    // Where one is on the page stays with each tab: it alone is no reason to write.
    const beside = same(here, mine.beside) ? this.#beside.now : merged.beside;
    this.#seen = untouched
      ? { scenario: this.#work.scenario, beside, inFile: this.#work.inFile }
      : { scenario: merged.scenario, beside, inFile: merged.inFile };
    if (!this.#same(this.#work.scenario, this.#beside.now)) this.#schedule();
  }

  /** What two tabs have entered in one place beside the bait. */
  #tell(clashes: readonly Clash[]): void {
    if (clashes.length > 0) this.setTold(clashWords(clashes));
  }

  /** Two tabs have changed the same: this tab's bait goes on under a name that tells them apart. */
  #part(mine: KeptBait): void {
    const name = numbered(mine.scenario.name);
    this.#work.edit("name", "part from another tab's", (from) => ({ ...from, name }));
    this.setTold((language) => FIGURES.in(language).tell("kept.parted", { name }));
  }

  #hear(about: string, revision: number): void {
    this.news += 1;
    if (about === this.id && revision > (this.#base?.revision ?? 0)) void this.#catchUp();
  }

  /** Reads what another tab has written of the open bait. What is not written here yet goes on top of it. */
  async #catchUp(): Promise<void> {
    if (this.#base === null || this.#writing !== null) return;
    if (!this.#same(this.#work.scenario, this.#beside.now)) return this.flush();
    const before = this.#base;
    try {
      const read = await this.store.read(this.id);
      // What this tab is writing meanwhile is no other tab's edit.
      if (read?.ok !== true || this.#isWriting() || this.#base !== before) return;
      if (read.bait.revision === before.revision) return;
      const mine = { ...before, scenario: this.#seen.scenario, beside: this.#seen.beside };
      this.#base = read.bait;
      this.#own = read.bait.own;
      this.#rebase(mine, read.bait);
    } catch {
      // The next write looks again.
    }
  }

  /**
   * Another bait takes the place of the open one: what is not written of that yet is written, and one that nobody
   * touched is forgotten. Nobody waits for it.
   */
  #leaveOpen(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#work.settle();
    const clean = this.#same(this.#work.scenario, this.#beside.now);
    const mine = this.#mine();
    void this.#finish(mine, this.#base, clean, this.#writing);
  }

  async #finish(
    mine: KeptBait,
    base: KeptBait | null,
    clean: boolean,
    writing: Promise<Written | null> | null,
  ): Promise<void> {
    const flight = await writing;
    if (!mine.own) {
      await this.store.remove([mine.id]).catch(() => undefined);
      return;
    }
    if (clean) return;
    if (flight === null) {
      await this.change(base, mine);
      return;
    }
    const { sent, settled } = flight;
    // What is written now was made from what was sent then, not from what became of it beside another tab's edits.
    if (settled.kind === "merged") await this.change({ ...sent, revision: -1 }, mine);
    else await this.change(settled.bait, { ...mine, id: settled.bait.id });
  }

  /** The list has changed: shows here and in other tabs. */
  tellList(): void {
    this.news += 1;
    this.#keeping.tabs.tell({ about: "list", revision: 0 });
  }

  /** Writes another record than the open one; gives what became of it, or null where it could not be written. */
  async change(base: KeptBait | null, mine: KeptBait): Promise<KeptBait | null> {
    try {
      const { bait } = await this.store.write(base, mine);
      this.#keeping.tabs.tell({ about: bait.id, revision: bait.revision });
      this.news += 1;
      if (bait.id === this.id && base === this.#base) this.#base = bait;
      return bait;
    } catch (fault) {
      this.setTrouble(unkept(fault));
      return null;
    }
  }
}
