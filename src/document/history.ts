import { back, deltaOf, forth } from "./kept/delta";
import type { Delta } from "./kept/delta";

/** One step of undo: its name, and what it changed. */
export interface Step {
  readonly label: string;
  readonly delta: Delta;
}

/** The steps that lie behind a document, and those that were taken back. The newest is the last of each. */
export interface Trail {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export const NO_TRAIL: Trail = { past: [], future: [] };

interface Entry<T extends object> extends Step {
  /** Edits of one kind in a row, such as arrow keys on one slider, become one step while this is the same. */
  readonly merge: string | null;
  /** How long the delta is as text. */
  readonly size: number;
  /**
   * The documents on both sides, as long as somebody else holds them: so that figures computed from a document belong to it
   * again after undo.
   */
  readonly before: WeakRef<T> | null;
  readonly after: WeakRef<T> | null;
}

/** Greatest number of steps that are kept, and their greatest length together, as text. The oldest are dropped first. */
const MOST_STEPS = 500;
const MOST_SIZE = 1_000_000;

/**
 * Undo and redo of one immutable document. A step holds only what it changed. A drag is one step: each of its
 * documents is made from the one at its start, so that rounding on the way leaves no trace.
 */
export class History<T extends object> {
  private now: T;
  private past: Entry<T>[] = [];
  private future: Entry<T>[] = [];
  private drag: { readonly label: string; readonly snapshot: T } | null = null;

  constructor(document: T, trail: Trail = NO_TRAIL) {
    this.now = document;
    this.past = trail.past.map((step) => entryOf<T>(step));
    this.future = trail.future.map((step) => entryOf<T>(step));
  }

  /** The document as it is now, a drag in progress included. */
  get document(): T {
    return this.now;
  }
  get dragging(): boolean {
    return this.drag !== null;
  }
  get canUndo(): boolean {
    return this.drag === null && this.past.length > 0;
  }
  get canRedo(): boolean {
    return this.drag === null && this.future.length > 0;
  }
  /** What undo would take back, in words; null where there is nothing. */
  get undoLabel(): string | null {
    return this.past.at(-1)?.label ?? null;
  }
  get redoLabel(): string | null {
    return this.future.at(-1)?.label ?? null;
  }

  /** All steps, to be kept with the document. A drag in progress stands there as a step that has been made. */
  get trail(): Trail {
    const plain = ({ label, delta }: Step): Step => ({ label, delta });
    const past = this.past.map(plain);
    const future = this.future.map(plain);
    if (this.drag === null) return { past, future };
    const delta = deltaOf(this.drag.snapshot, this.now);
    return delta.length === 0
      ? { past, future }
      : { past: [...past, { label: this.drag.label, delta }], future: [] };
  }

  /**
   * One step to the next document. With `merge`, edits in a row that carry the same word are one step, until
   * `settle`. Returns false where nothing changed.
   */
  edit(label: string, next: T, merge: string | null = null): boolean {
    this.noDrag("edit");
    return this.step(label, next, merge);
  }

  /** Ends the merging of edits: the next edit is a step of its own. */
  settle(): void {
    const last = this.past.at(-1);
    if (last !== undefined) this.past[this.past.length - 1] = { ...last, merge: null };
  }

  /** Starts a drag: takes the snapshot that the drag returns to when it is cancelled. */
  begin(label: string): void {
    this.noDrag("begin");
    this.drag = { label, snapshot: this.now };
  }

  /** The document of the drag so far. The caller makes it from the document at the drag's start. */
  move(next: T): void {
    this.needDrag("move");
    this.now = next;
  }

  /** Ends the drag as one step; false where it changed nothing. */
  commit(): boolean {
    const { label, snapshot } = this.needDrag("commit");
    const reached = this.now;
    this.drag = null;
    this.now = snapshot;
    return this.step(label, reached, null);
  }

  /** Ends the drag and puts the snapshot back. */
  cancel(): void {
    this.now = this.needDrag("cancel").snapshot;
    this.drag = null;
  }

  /** Undoes the last step; its label, or null where there was none. Throws where the step does not fit. */
  undo(): string | null {
    this.noDrag("undo");
    const entry = this.past.at(-1);
    if (entry === undefined) return null;
    const reached = this.now;
    this.now = entry.before?.deref() ?? (back(this.now, entry.delta) as T);
    this.past.pop();
    this.future.push({ ...entry, merge: null, after: new WeakRef(reached) });
    return entry.label;
  }

  /** Redoes the step that was undone last; its label, or null where there was none. Throws where it does not fit. */
  redo(): string | null {
    this.noDrag("redo");
    const entry = this.future.at(-1);
    if (entry === undefined) return null;
    const reached = this.now;
    this.now = entry.after?.deref() ?? (forth(this.now, entry.delta) as T);
    this.future.pop();
    this.past.push({ ...entry, before: new WeakRef(reached) });
    return entry.label;
  }

  private step(label: string, after: T, merge: string | null): boolean {
    const last = this.past.at(-1);
    const joins = last !== undefined && merge !== null && last.merge === merge;
    if (deltaOf(this.now, after).length === 0) return false;
    const before = joins ? (last.before?.deref() ?? (back(this.now, last.delta) as T)) : this.now;
    if (joins) this.past.pop();
    const delta = deltaOf(before, after);
    // Merged edits that lead back to the start leave no step.
    if (delta.length > 0)
      this.past.push({
        ...entryOf<T>({ label, delta }),
        merge,
        before: new WeakRef(before),
        after: new WeakRef(after),
      });
    this.future = [];
    this.now = after;
    this.bound();
    return true;
  }

  /** Drops the oldest steps where there are too many, or where they have become too long. */
  private bound(): void {
    let size = 0;
    let first = this.past.length;
    while (first > 0 && this.past.length - first < MOST_STEPS) {
      size += this.past[first - 1]?.size ?? 0;
      // The newest step stays, however long it is.
      if (size > MOST_SIZE && first < this.past.length) break;
      first--;
    }
    if (first > 0) this.past = this.past.slice(first);
  }

  private noDrag(verb: string): void {
    if (this.drag === null) return;
    throw new Error(`History.${verb} during the drag "${this.drag.label}": commit or cancel it first`);
  }

  private needDrag(verb: string): { readonly label: string; readonly snapshot: T } {
    if (this.drag === null) throw new Error(`History.${verb} without a drag: begin one first`);
    return this.drag;
  }
}

const entryOf = <T extends object>({ label, delta }: Step): Entry<T> => ({
  label,
  delta,
  merge: null,
  size: JSON.stringify(delta).length,
  before: null,
  after: null,
});
