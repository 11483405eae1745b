import { produce } from "immer";
import type { Draft } from "immer";

interface Entry<T> {
  readonly label: string;
  readonly before: T;
  readonly after: T;
  /** Edits of one kind in a row, such as arrow keys on one slider, become one step while this is the same. */
  readonly merge: string | null;
}

/** How many steps are kept. */
const MOST_STEPS = 500;

/**
 * Undo and redo of one immutable document. Steps keep the documents before and after them, which share all
 * that did not change. A drag is one step: it recomputes from the snapshot taken at its start, so
 * that rounding on the way leaves no trace. Nothing changes but by the verbs below.
 */
export class History<T extends object> {
  private now: T;
  private saved: T;
  private readonly past: Entry<T>[] = [];
  private future: Entry<T>[] = [];
  private drag: { readonly label: string; readonly snapshot: T } | null = null;

  constructor(document: T) {
    this.now = document;
    this.saved = document;
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
  /** True where the document is not the one last saved or opened. */
  get changed(): boolean {
    return this.now !== this.saved;
  }

  /** Remembers the document as saved. */
  markSaved(): void {
    this.saved = this.now;
  }

  /**
   * One step. The recipe changes a draft. With `merge`, edits in a row that carry the same word are one
   * step, until `settle`. Returns false where nothing changed.
   */
  edit(label: string, recipe: (draft: Draft<T>) => void, merge: string | null = null): boolean {
    this.noDrag("edit");
    return this.step(label, this.apply(this.now, recipe), merge);
  }

  /** Puts another document in this one's place, as one step that can be undone. */
  replace(label: string, document: T): boolean {
    this.noDrag("replace");
    return this.step(label, document, null);
  }

  /** Ends the merging of edits: the next edit is a step of its own. */
  settle(): void {
    const last = this.past.at(-1);
    if (last !== undefined) this.past[this.past.length - 1] = { ...last, merge: null };
  }

  /** Starts a drag: takes the snapshot from which every `move` begins. */
  begin(label: string): void {
    this.noDrag("begin");
    this.drag = { label, snapshot: this.now };
  }

  /** The document of the drag so far: the recipe applied to the snapshot, not to the last move. */
  move(recipe: (draft: Draft<T>) => void): T {
    this.now = this.apply(this.needDrag("move").snapshot, recipe);
    return this.now;
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

  /** Takes the last step back; its label, or null where there was none. */
  undo(): string | null {
    this.noDrag("undo");
    const entry = this.past.pop();
    if (entry === undefined) return null;
    this.now = entry.before;
    this.future.push({ ...entry, merge: null });
    return entry.label;
  }

  /** Takes the last undone step again; its label, or null where there was none. */
  redo(): string | null {
    this.noDrag("redo");
    const entry = this.future.pop();
    if (entry === undefined) return null;
    this.now = entry.after;
    this.past.push(entry);
    return entry.label;
  }

  private apply(document: T, recipe: (draft: Draft<T>) => void): T {
    // A block body: what the recipe returns must not replace the document.
    return produce(document, (draft) => {
      recipe(draft);
    });
  }

  private step(label: string, after: T, merge: string | null): boolean {
    const before = this.now;
    if (after === before) return false;
    const last = this.past.at(-1);
    if (last !== undefined && merge !== null && last.merge === merge) {
      this.past[this.past.length - 1] = { label, before: last.before, after, merge };
    } else {
      this.past.push({ label, before, after, merge });
      if (this.past.length > MOST_STEPS) this.past.shift();
    }
    this.future = [];
    this.now = after;
    return true;
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
