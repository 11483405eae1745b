import type { Scenario } from "../../../document";
import type { Workspace } from "../../state";

/** Who takes what a form of the document writes: the drawing board in Draw, the document itself elsewhere. */
export interface FormEditor {
  /** The document that the form shows. */
  readonly shown: Scenario;
  /** One move of a number; a run of moves with one `id` is one step of undo, `finish` ends it. */
  move(id: string, label: string, write: (from: Scenario) => Scenario): void;
  finish(): void;
  /** A change that is a step of its own. */
  edit(id: string, label: string, write: (from: Scenario) => Scenario): void;
  /** Esc: what was refused need not be told any longer. */
  back(): void;
  /** Why the last value at this place was not taken. */
  refusalAt(path: string): string | null;
}

/** Name of the step of undo at a place of the document. */
export const formId = (path: string): string => `form.${path}`;

/** Forms that write into the document at once. */
export const documentEditor = (work: Workspace): FormEditor => ({
  get shown() {
    return work.scenario;
  },
  move: (id, label, write) => work.turn({ id, label, write }, 0),
  finish: () => work.settle(),
  edit: (id, label, write) => void work.edit(id, label, write),
  back: () => work.forgetRefusal(),
  refusalAt: (path) => (work.refusal?.id === formId(path) ? work.refusal.text : null),
});
