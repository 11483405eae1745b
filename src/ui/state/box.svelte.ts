import { createStore, get, set } from "idb-keyval";
import type { UseStore } from "idb-keyval";
import { emptyBox, parseBox, readBox, serializeBox } from "../../document";
import type { Box, BoxThing, Problem } from "../../document";
import { download } from "../plots";
import { faultText } from "./fault";
import { keptWith } from "./kept.svelte";

const KEY = "box";

/** Weights of usual sizes by their measures and the table's densities: a place to start from, all unweighed. */
const USUAL: readonly BoxThing[] = [
  ...[3, 4, 5, 6].map((d): BoxThing => ({
    kind: "shot",
    name: `tungsten ball ${d} mm`,
    count: 6,
    material: "tungsten",
    diameter_mm: d,
  })),
  ...[3, 4, 5, 6].map((d): BoxThing => ({
    kind: "shot",
    name: `steel ball ${d} mm`,
    count: 6,
    material: "carbon steel",
    diameter_mm: d,
  })),
  ...[3, 4, 5].map((d): BoxThing => ({
    kind: "wire",
    name: `brass rod ${d} mm, 5 mm long`,
    count: 6,
    material: "brass",
    diameter_mm: d,
    cut_mm: 5,
  })),
];
const USUAL_DRILLS = [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5];

/**
 * The maker's own box: what has been weighed, kept with this browser and, when asked, in a file. It is no part of the
 * document. Nothing that the box's schema refuses comes in.
 */
export class BoxState {
  now = $state.raw<Box>(emptyBox());
  /** Before the last change; null where there is none to go back on. */
  before = $state.raw<Box | null>(null);
  /** What stands in the way of the last change, in words. */
  trouble = $state.raw<string | null>(null);
  /** Why the box is not kept with the browser; null where it is. */
  unkept = $state.raw<string | null>(null);
  ready = $state(false);
  #store: UseStore | null = null;
  #touched = false;

  constructor() {
    void this.#start();
  }

  /** Takes a box where nothing speaks against it; false, and why in `trouble`, otherwise. */
  put(next: Box): boolean {
    const read = readBox(next);
    if (!read.ok) {
      this.trouble = words(read.problems);
      return false;
    }
    this.trouble = null;
    this.before = this.now;
    this.now = read.box;
    this.#touched = true;
    void this.#keep();
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

  /** Adds weights and drills of usual sizes that are not in it yet. */
  addUsual(): void {
    const { things, drills_mm: drills } = this.now;
    this.put({
      ...this.now,
      things: [...things, ...USUAL.filter((one) => !things.some((other) => other.name === one.name))],
      drills_mm: [...drills, ...USUAL_DRILLS.filter((one) => !drills.includes(one))].sort((a, b) => a - b),
    });
  }

  save(): void {
    download(serializeBox(this.now), "box.json", "application/json");
  }

  async openFile(file: File): Promise<void> {
    try {
      const parsed = parseBox(await file.text());
      if (parsed.ok) this.put(parsed.box);
      else this.trouble = `${file.name} was not opened. ${words(parsed.problems)}`;
    } catch (fault) {
      this.trouble = `${file.name} could not be read: ${faultText(fault)}`;
    }
  }

  async #start(): Promise<void> {
    try {
      const store = createStore("trimwright-box", "box");
      const kept = await get<unknown>(KEY, store);
      this.#store = store;
      if (typeof kept === "string" && !this.#touched) {
        const parsed = parseBox(kept);
        if (parsed.ok) this.now = parsed.box;
        else this.trouble = `The box that this browser kept is not readable. ${words(parsed.problems)}`;
      }
    } catch (fault) {
      this.unkept = `This browser does not keep the box (${faultText(fault)}): save it to a file.`;
    }
    this.ready = true;
  }

  async #keep(): Promise<void> {
    if (this.#store === null) return;
    try {
      await set(KEY, serializeBox(this.now), this.#store);
      this.unkept = null;
    } catch (fault) {
      this.unkept = `This browser does not keep the box (${faultText(fault)}): save it to a file.`;
    }
  }
}

const words = (problems: readonly Problem[]): string => {
  const [first] = problems;
  if (first === undefined) throw new Error("A refused box has at least one problem.");
  return first.message;
};

/** The one box of this page. */
export const boxOf = keptWith(() => new BoxState());
