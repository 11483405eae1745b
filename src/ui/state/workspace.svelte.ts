import { History, readScenario, serialize } from "../../document";
import type { Compiled, Problem, Scenario } from "../../document";
import { staticsOf } from "../../model/statics";
import type { Statics } from "../../model/statics";
import { faultText } from "./fault";
import type { Input } from "./inputs";

/** A document with everything that follows from it at once: the bait in SI and its statics. */
export interface Worked {
  readonly scenario: Scenario;
  readonly compiled: Compiled;
  readonly statics: Statics;
}

/** An edit that was not taken, at the input that asked for it. */
export interface Refusal {
  readonly id: string;
  readonly text: string;
}

type Outcome =
  | { readonly ok: true; readonly worked: Worked }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Checks a document and works it out; the problems where it cannot be one. */
function workOut(scenario: Scenario): Outcome {
  const read = readScenario(scenario);
  if (!read.ok) return read;
  const { compiled } = read;
  // The document as it was given, not its copy: branches that an edit left alone stay the same objects.
  return {
    ok: true,
    worked: { scenario, compiled, statics: staticsOf(compiled.bait, compiled.around.density) },
  };
}

/** Works out a document that has passed its checks before. */
function worked(scenario: Scenario): Worked {
  const outcome = workOut(scenario);
  if (!outcome.ok) throw new Error(outcome.problems.map((one) => one.message).join("\n"));
  return outcome.worked;
}

/**
 * The open document: read, changed, undone and saved here and nowhere else. Everything shown follows from
 * `now`. A change that the schema, the rules or the model refuses leaves all as it was and says why.
 */
export class Workspace {
  #history: History<Scenario>;
  now = $state.raw() as Worked;
  /** The document from which a running drag recomputes; the document itself when none runs. */
  base = $state.raw() as Scenario;
  refusal = $state.raw<Refusal | null>(null);
  changed = $state(false);
  undoLabel = $state.raw<string | null>(null);
  redoLabel = $state.raw<string | null>(null);
  /** Differs between documents, stays while one is edited: views start anew when it changes. */
  lineage = $state(0);
  #turning: string | null = null;
  /** Which document each state belongs to: undoing 'open' goes back to the one before. */
  readonly #lineage = new WeakMap<Scenario, number>();
  #opened = 0;
  #savedText: string;

  constructor(scenario: Scenario) {
    this.#history = new History<Scenario>(scenario);
    this.now = worked(scenario);
    this.base = scenario;
    this.#lineage.set(scenario, 0);
    this.#savedText = serialize(scenario);
  }

  get scenario(): Scenario {
    return this.now.scenario;
  }

  /** One move of a slider or a step of a field; the first begins a step of undo, `settle` ends it. */
  turn(input: Input, value: number): void {
    if (this.#turning !== input.id) {
      this.settle();
      this.#turning = input.id;
      this.base = this.scenario;
    }
    const next = this.#check(input.id, input.write(this.base, value));
    if (next === null) return;
    if (!this.#history.dragging) this.#history.begin(input.label);
    this.#history.move((draft) => void assign(draft, next.scenario));
    this.#take({ ...next, scenario: this.#history.document });
  }

  /** Ends a running drag: all of it is one step of undo. */
  settle(): void {
    if (this.#history.dragging) this.#history.commit();
    this.#turning = null;
    if (this.base !== this.scenario) this.base = this.scenario;
    this.undoLabel = this.#history.undoLabel;
    this.redoLabel = this.#history.redoLabel;
    this.changed = this.text() !== this.#savedText;
  }

  /** One change that is a step of its own. False where it was refused. */
  edit(id: string, label: string, write: (from: Scenario) => Scenario): boolean {
    this.settle();
    const next = this.#check(id, write(this.scenario));
    if (next === null) return false;
    this.#history.edit(label, (draft) => void assign(draft, next.scenario));
    this.#take({ ...next, scenario: this.#history.document });
    this.settle();
    return true;
  }

  /** Another document in this one's place; undo brings this one back. `saved`: it is in a file already. */
  replace(label: string, scenario: Scenario, saved: boolean): void {
    this.settle();
    const next = worked(scenario);
    this.#history.replace(label, scenario);
    this.#opened += 1;
    this.#lineage.set(scenario, this.#opened);
    this.#savedText = saved ? serialize(scenario) : "";
    this.#take(next);
    this.settle();
  }

  undo(): void {
    this.#travel(() => this.#history.undo());
  }

  redo(): void {
    this.#travel(() => this.#history.redo());
  }

  forgetRefusal(): void {
    this.refusal = null;
  }

  /** The text of the file as it would be saved. */
  text(): string {
    return serialize(this.scenario);
  }

  markSaved(): void {
    this.settle();
    this.#savedText = this.text();
    this.changed = false;
  }

  #travel(step: () => string | null): void {
    this.settle();
    if (step() === null) return;
    this.#take(worked(this.#history.document));
    this.settle();
  }

  #check(id: string, next: Scenario): Worked | null {
    let outcome: Outcome;
    try {
      outcome = workOut(next);
    } catch (fault) {
      // A fault of the model is no reason to lose the document: it is said where the number was turned.
      this.refusal = { id, text: `Not taken, by a fault of this program: ${faultText(fault)}` };
      return null;
    }
    if (outcome.ok) {
      this.refusal = null;
      return outcome.worked;
    }
    this.refusal = { id, text: refusalText(outcome.problems) };
    return null;
  }

  #take(next: Worked): void {
    const known = this.#lineage.get(next.scenario);
    if (known === undefined) this.#lineage.set(next.scenario, this.lineage);
    else this.lineage = known;
    this.now = next;
    this.refusal = null;
    this.changed = true;
  }
}

/** The first problem says it best; a message at a field has room for one. */
function refusalText(problems: readonly Problem[]): string {
  const [first] = problems;
  if (first === undefined) throw new Error("A refusal has at least one problem.");
  return `Not taken: ${first.allowed}${/[.!?]$/.test(first.allowed) ? "" : "."} ${first.remedy}`;
}

/** Makes a draft equal to `next` and touches only the branches that differ. */
function assign(draft: object, next: object): void {
  const [to, from] = [draft as Record<string, unknown>, next as Record<string, unknown>];
  for (const key of Object.keys(to)) if (!(key in from)) delete to[key];
  for (const [key, value] of Object.entries(from)) if (to[key] !== value) to[key] = value;
}
