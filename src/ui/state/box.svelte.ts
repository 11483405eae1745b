import { decodeText, emptyBox, mergeBoxes, parseBox, readBox, serializeBox, usualFor } from "../../document";
import type { Box, BoxThing, Problem } from "../../document";
import type { BaitStore, KeptBox, Tabs } from "../kept";
import { download } from "../plots";
import type { Language, Saying } from "../words/base";
import { FIGURES } from "../words/figures";
import { FILE } from "../words/file";
import { faultText } from "./fault";
import { keptWith } from "./kept.svelte";
import { Telling } from "./telling.svelte";

const BOX = "box";
/** From then on a person is told that the browser's database does not answer, ms. */
const LONG_MS = 4000;

/**
 * The maker's own box: what has been weighed, kept with this browser and, when asked, in a file. It is no part of the
 * document. Nothing that the box's schema refuses comes in: `trouble` says what was refused, `told` what came of another tab's edits.
 */
export class BoxState extends Telling {
  now = $state.raw<Box>(emptyBox());
  /** Before the last change; null where there is none to go back on. */
  before = $state.raw<Box | null>(null);
  #unkept = $state.raw<Saying | null>(null);
  ready = $state(false);
  readonly #store: BaitStore;
  readonly #tabs: Tabs;
  /** The text of a box that is kept and cannot be read; null where it can. Nothing is written in its place unasked. */
  damaged = $state.raw<string | null>(null);
  /** The box as this page last read or wrote it. */
  #base: KeptBox | null = null;
  /** Reading and writing go one after the other. */
  #turn: Promise<void> = Promise.resolve();

  /** `language`: the one that is read. */
  constructor(store: BaitStore, tabs: Tabs, language: () => Language = () => "en") {
    super(language);
    this.#store = store;
    this.#tabs = tabs;
    tabs.listen(({ about, revision }) => {
      if (about === BOX && revision > (this.#base?.revision ?? 0)) void this.look();
    });
    void this.look().then(() => (this.ready = true));
  }

  /** Why the box is not kept with the browser, in words; null where it is. */
  get unkept(): string | null {
    return this.#unkept?.(this.language) ?? null;
  }

  /** Takes a box where nothing speaks against it; false, and why in `trouble`, otherwise. */
  put(next: Box): boolean {
    const read = readBox(next);
    if (!read.ok) {
      this.setTrouble(firstOf(read.problems));
      return false;
    }
    this.setTrouble(null);
    this.setTold(null);
    this.before = this.now;
    this.now = read.box;
    void this.#next(() => this.#keep());
    return true;
  }

  /** A thing at its place in the list, or one more where `index` is null. */
  putThing(index: number | null, thing: BoxThing): boolean {
    const { things } = this.now;
    return this.put({
      ...this.now,
      things: index === null ? [...things, thing] : things.map((one, i) => (i === index ? thing : one)),
    });
  }

  removeThing(index: number): void {
    this.put({ ...this.now, things: this.now.things.filter((_, i) => i !== index) });
  }

  /** Back to the box before the last change; once more brings the change back. */
  undo(): void {
    if (this.before !== null) this.put(this.before);
  }

  /** Adds weights and drills that are usual for a bait whose ballast weighs so much (g), and are not in it yet. */
  addUsual(load_g: number): void {
    const { things, drills_mm: drills } = this.now;
    const usual = usualFor(load_g);
    this.put({
      ...this.now,
      things: [...things, ...usual.things.filter((one) => !things.some((other) => other.name === one.name))],
      drills_mm: [...drills, ...usual.drills_mm.filter((one) => !drills.includes(one))].sort((a, b) => a - b),
    });
  }

  save(): void {
    download(serializeBox(this.now), "box.json", "application/json");
  }

  async openFile(file: File): Promise<void> {
    try {
      const decoded = decodeText(new Uint8Array(await file.arrayBuffer()));
      const parsed = decoded.ok ? parseBox(decoded.text) : decoded;
      if (parsed.ok) this.put(parsed.box);
      else {
        const why = firstOf(parsed.problems);
        this.setTrouble((to) => FIGURES.in(to).tell("box.notOpened", { file: file.name, why: why(to) }));
      }
    } catch (fault) {
      this.setTrouble((to) =>
        FIGURES.in(to).tell("box.notRead", { file: file.name, why: faultText(fault, to) }),
      );
    }
  }

  /** Takes over what other tabs have put into the box. What was changed here and is not kept yet stays. */
  look(): Promise<void> {
    return this.#next(() => this.#read());
  }

  #next(work: () => Promise<void>): Promise<void> {
    this.#turn = this.#turn.then(work);
    return this.#turn;
  }

  async #read(): Promise<void> {
    try {
      const read = await this.#store.readBox();
      if (!read.ok) {
        const { why } = read;
        this.setTrouble((to) => FIGURES.in(to).tell("box.damaged", { why: FILE.in(to).of(why) }));
        this.damaged = read.text;
      } else if (read.kept !== null && read.kept.revision !== this.#base?.revision) {
        const { kept } = read;
        this.#take(this.#base?.box ?? emptyBox(), kept.box, kept.told);
        this.#base = kept;
      }
    } catch (fault) {
      this.#unkept = unkept(fault);
    }
  }

  async #keep(): Promise<void> {
    const sent = this.now;
    if (sent === this.#base?.box) return;
    try {
      const written = await this.#answered(this.#store.writeBox(this.#base, sent));
      const { revision, box, told } = written;
      this.#take(sent, box, told);
      this.#base = written;
      this.#unkept = this.#store.lasting ? null : (to) => FIGURES.in(to).tell("box.never");
      this.#tabs.tell({ about: BOX, revision });
    } catch (fault) {
      this.#unkept = unkept(fault);
    }
  }

  /** Says so where the browser takes long; it may still answer. */
  async #answered<T>(work: Promise<T>): Promise<T> {
    const timer = setTimeout(() => (this.#unkept = late), LONG_MS);
    return work.finally(() => clearTimeout(timer));
  }

  /** The text that could not be read, as a file. */
  saveDamaged(): void {
    if (this.damaged !== null) download(this.damaged, "kept-box.json", "application/json");
  }

  /** Leaves what could not be read behind: from here on what stands on the page is the box. */
  async beginAnew(): Promise<void> {
    await this.#next(async () => {
      try {
        this.#base = await this.#answered(this.#store.replaceBox(this.now));
        this.#take(this.now, this.#base.box, []);
        [this.damaged, this.#unkept] = [null, null];
        this.setTrouble(null);
        this.#tabs.tell({ about: BOX, revision: this.#base.revision });
      } catch (fault) {
        this.#unkept = unkept(fault);
      }
    });
  }

  /**
   * What another tab did since `from` comes under what has been done here since. Undo takes back only what was done
   * here.
   */
  #take(from: Box, theirs: Box, told: readonly string[]): void {
    const now = mergeBoxes(from, this.now, theirs);
    if (this.before !== null) this.before = mergeBoxes(this.now, this.before, now.box).box;
    if (now.box !== this.now) this.now = now.box;
    const all = [...told, ...now.told];
    if (all.length > 0) this.setTold((to) => all.map((one) => FILE.in(to).of(one)).join(" "));
  }
}

const unkept =
  (fault: unknown): Saying =>
  (language) =>
    FIGURES.in(language).tell("box.notNow", { why: faultText(fault, language) });

/** The browser's database takes long; it may still answer. */
const late: Saying = (language) => {
  const words = FIGURES.in(language);
  return words.tell("box.notNow", { why: words.tell("box.late") });
};

const firstOf = (problems: readonly Problem[]): Saying => {
  const [first] = problems;
  if (first === undefined) throw new Error("A refused box has at least one problem.");
  return (language) => FILE.in(language).of(first.message);
};

/** The one box of this page. */
export const boxOf = keptWith((app) => new BoxState(app.baits.store, app.tabs, () => app.prefs.language));
