import { fingerprint, History, NO_TRAIL, readScenario, serialize } from "../../document";
import type { Compiled, Problem, Scenario, Trail } from "../../document";
import { staticsOf } from "../../model/statics";
import type { Statics } from "../../model/statics";
import type { Language, Saying } from "../words/base";
import { FIGURES } from "../words/figures";
import { FILE } from "../words/file";
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

/** A drawing that the checks refuse. It waits to be mended, and the document stays as it was meanwhile. */
export interface Tried {
  readonly label: string;
  readonly scenario: Scenario;
  readonly problems: readonly Problem[];
}

type Outcome =
  | { readonly ok: true; readonly worked: Worked }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Checks a document and works it out; the problems where it cannot be one. `before`: what it was edited from; what an edit
 * has left alone is taken over.
 */
export function workOut(scenario: Scenario, before: Worked | null = null): Outcome {
  const read = readScenario(scenario, undefined, before);
  if (!read.ok) return read;
  const { compiled } = read;
  const { bait, around } = compiled;
  const still =
    before?.compiled.bait === bait && before.compiled.around.density === around.density
      ? before.statics
      : staticsOf(bait, around.density);
  // The document as it was given, not its copy: branches that an edit left alone stay the same objects.
  return { ok: true, worked: { scenario, compiled, statics: still } };
}

/** The same for a move of a hand: a fault of the model is no reason to lose the drawing. It is said at the drawing. */
function attempt(scenario: Scenario, before: Worked): Outcome {
  try {
    return workOut(scenario, before);
  } catch (fault) {
    const allowed = `a fault of this program: ${faultText(fault)}`;
    const remedy = "Move it back.";
    return { ok: false, problems: [{ path: "bait", found: "", allowed, remedy, message: allowed }] };
  }
}

/** Works out a document that has passed its checks before. */
function worked(scenario: Scenario): Worked {
  const outcome = workOut(scenario);
  if (!outcome.ok) throw new Error(outcome.problems.map((one) => one.message).join("\n"));
  return outcome.worked;
}

/** An edit beside the bait itself, as of its name or the water: a drawing that waits to be mended goes along with it. */
const beside = (from: Scenario, to: Scenario): boolean => from.bait === to.bait;

/** How a document is opened. */
export interface Opening {
  /** The steps of undo that belong to it; absent: none. */
  readonly trail?: Trail;
  /** Fingerprint of its text in a file; absent: as it is now; null: it is in no file. */
  readonly inFile?: string | null;
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
  /** What the last move came to, where it was refused; null: the document is what is drawn. */
  tried = $state.raw<Tried | null>(null);
  /** Refused drawings that led to it, and those that were taken back, the next to come first: each is a step of undo. */
  #earlier: readonly Tried[] = [];
  #later: readonly Tried[] = [];
  /** It is not as it is in its file. */
  changed = $state(false);
  undoLabel = $state.raw<string | null>(null);
  redoLabel = $state.raw<string | null>(null);
  /** Rises when another document is opened, stays while one is edited: views start anew when it changes. */
  lineage = $state(0);
  #refused = $state.raw<{ readonly id: string; readonly say: Saying } | null>(null);
  readonly #language: () => Language;
  #turning: string | null = null;
  #inFile: string | null;
  /** What waited when a running turn began. */
  #waited: readonly Tried[] = [];
  /** What a running move began with. */
  #start: { readonly now: Worked; readonly tried: Tried | null } | null = null;

  /** `language`: the one that is read, for what is told of a refusal. */
  constructor(scenario: Scenario, opening: Opening = {}, language: () => Language = () => "en") {
    this.#language = language;
    this.#history = new History<Scenario>(scenario, opening.trail);
    this.now = worked(scenario);
    this.base = scenario;
    this.#inFile = opening.inFile === undefined ? this.#print() : opening.inFile;
    this.settle();
  }

  get scenario(): Scenario {
    return this.now.scenario;
  }

  /** The last edit that was not taken, and why; null: all were. */
  get refusal(): Refusal | null {
    const refused = this.#refused;
    return refused === null ? null : { id: refused.id, text: refused.say(this.#language()) };
  }

  /** One move of a slider or a step of a field; the first begins a step of undo, `settle` ends it. */
  turn(input: Pick<Input, "id" | "label" | "write">, value: number): void {
    if (this.#turning !== input.id) {
      this.settle();
      this.#turning = input.id;
      this.base = this.scenario;
      this.#waited = this.#waiting;
    }
    const write = (from: Scenario): Scenario => input.write(from, value);
    const next = this.#check(input.id, write(this.base));
    if (next === null) return;
    const along = beside(this.base, next.scenario);
    if (!this.#history.dragging) this.#history.begin(input.label);
    this.#history.move(next.scenario);
    this.#take(next);
    if (along) this.#carry(this.#waited, write);
  }

  /** The move that is under way, by its id; null: the hand rests. */
  get moving(): string | null {
    return this.#turning;
  }

  /**
   * One move of a hand on the drawing. Like `turn`, but a drawing that is refused is kept in `tried`: the hand goes on,
   * and the next move begins from there. `write` gets what was drawn when the move began. False where it was refused.
   */
  move(id: string, label: string, write: (from: Scenario) => Scenario): boolean {
    if (this.#turning !== id || this.#start === null) {
      this.settle();
      this.#turning = id;
      this.#start = { now: this.now, tried: this.tried };
    }
    const { now, tried } = this.#start;
    const next = write(tried?.scenario ?? now.scenario);
    const outcome = attempt(next, this.now);
    this.#refused = null;
    if (!outcome.ok) {
      this.tried = { label, scenario: next, problems: outcome.problems };
      return false;
    }
    if (!this.#history.dragging) this.#history.begin(label);
    this.#history.move(next);
    this.#take(outcome.worked);
    return true;
  }

  /** A drawing that was refused and kept comes back: it waits to be mended, or it is one that can be made by now. */
  resume(label: string, scenario: Scenario): void {
    this.move("draft", label, () => scenario);
    this.settle();
  }

  /** Takes a running move back: all is as it was when it began. Where none runs, what a refused move did is taken back. */
  drop(): void {
    const { tried } = this;
    const start = this.#start;
    if (start !== null) {
      if (this.#history.dragging) this.#history.cancel();
      this.now = start.now;
      this.tried = start.tried;
      this.#start = null;
    } else if (tried !== null) {
      this.#later = [tried, ...this.#later];
      this.tried = this.#earlier.at(-1) ?? null;
      this.#earlier = this.#earlier.slice(0, -1);
    }
    this.settle();
  }

  /** Ends a running drag: all of it is one step of undo. One that ends refused leaves the document as it was. */
  settle(): void {
    if (this.#history.dragging) {
      if (this.tried !== null && this.#start !== null) {
        this.#history.cancel();
        this.now = this.#start.now;
      } else this.#history.commit();
      this.#later = [];
    }
    const before = this.#start?.tried ?? null;
    if (this.tried === null) this.#earlier = [];
    else if (this.#start !== null && this.tried !== before) {
      if (before !== null) this.#earlier = [...this.#earlier, before];
      this.#later = [];
    }
    this.#turning = null;
    this.#start = null;
    if (this.base !== this.scenario) this.base = this.scenario;
    this.undoLabel = this.tried?.label ?? this.#history.undoLabel;
    this.redoLabel = this.#later[0]?.label ?? (this.tried === null ? this.#history.redoLabel : null);
    this.changed = this.#print() !== this.#inFile;
  }

  /** One change that is a step of its own. False where it was refused. */
  edit(id: string, label: string, write: (from: Scenario) => Scenario): boolean {
    this.settle();
    const next = this.#check(id, write(this.scenario));
    if (next === null) return false;
    const along = beside(this.scenario, next.scenario);
    const waited = this.#waiting;
    if (this.#history.edit(label, next.scenario)) {
      this.#take(next);
      this.#later = [];
      if (along) this.#carry(waited, write);
    }
    this.settle();
    return true;
  }

  /** Another document in this one's place, with its own steps of undo. */
  open(scenario: Scenario, opening: Opening = {}): void {
    this.settle();
    const next = worked(scenario);
    this.#history = new History<Scenario>(scenario, opening.trail);
    this.lineage += 1;
    this.#take(next);
    this.#later = [];
    this.#inFile = opening.inFile === undefined ? this.#print() : opening.inFile;
    this.settle();
  }

  /** The same document as another tab has left it, with the steps that lead there. */
  adopt(
    scenario: Scenario,
    { trail, inFile }: { readonly trail: Trail; readonly inFile: string | null },
  ): void {
    this.settle();
    const next = scenario === this.scenario ? this.now : worked(scenario);
    this.#history = new History<Scenario>(scenario, trail);
    this.#inFile = inFile;
    this.#take(next);
    this.#later = [];
    this.settle();
  }

  /** The steps of undo, to be kept with the document. */
  get trail(): Trail {
    return this.#history.trail;
  }

  /** Fingerprint of the document's text as it is in a file; null: it is in none. */
  get inFile(): string | null {
    return this.#inFile;
  }

  undo(): void {
    this.settle();
    if (this.tried !== null) {
      this.drop();
      return;
    }
    this.#travel(() => this.#history.undo());
  }

  redo(): void {
    this.settle();
    const [next, ...rest] = this.#later;
    if (next === undefined) {
      // What waits to be mended would be gone.
      if (this.tried === null) this.#travel(() => this.#history.redo());
      return;
    }
    if (this.tried !== null) this.#earlier = [...this.#earlier, this.tried];
    this.tried = next;
    this.#later = rest;
    this.settle();
  }

  forgetRefusal(): void {
    this.#refused = null;
  }

  /** The text of the file as it would be saved. */
  text(): string {
    return serialize(this.scenario);
  }

  markSaved(): void {
    this.settle();
    this.#inFile = this.#print();
    this.changed = false;
  }

  /** The refused drawings that wait to be mended: what they are, and what they were before. */
  get #waiting(): readonly Tried[] {
    return this.tried === null ? [] : [...this.#earlier, this.tried];
  }

  /** What waits takes an edit along that is none of the bait itself. */
  #carry(waited: readonly Tried[], write: (from: Scenario) => Scenario): void {
    const all = waited.map((one): Tried => ({ ...one, scenario: write(one.scenario) }));
    this.tried = all.at(-1) ?? null;
    this.#earlier = all.slice(0, -1);
  }

  #print(): string {
    return fingerprint(this.text());
  }

  #travel(step: () => string | null): void {
    this.settle();
    try {
      if (step() === null) return;
      this.#take(worked(this.#history.document));
      this.#later = [];
    } catch (fault) {
      // Steps come back from what the browser has kept. One that does not fit is no reason to lose the document.
      this.#history = new History<Scenario>(this.scenario, NO_TRAIL);
      const why = faultText(fault);
      this.#refused = { id: "undo", say: (to) => FIGURES.in(to).tell("undoDamaged", { why }) };
    }
    this.settle();
  }

  #check(id: string, next: Scenario): Worked | null {
    let outcome: Outcome;
    try {
      outcome = workOut(next, this.now);
    } catch (fault) {
      // A fault of the model is no reason to lose the document: it is said where the number was turned.
      const why = faultText(fault);
      this.#refused = { id, say: (to) => FIGURES.in(to).tell("refusedFault", { why }) };
      return null;
    }
    if (outcome.ok) {
      this.#refused = null;
      return outcome.worked;
    }
    this.#refused = { id, say: refusalOf(outcome.problems) };
    return null;
  }

  #take(next: Worked): void {
    this.now = next;
    this.#refused = null;
    this.tried = null;
    this.changed = true;
  }
}

/** The first problem says it best; a message at a field has room for one. */
function refusalOf(problems: readonly Problem[]): Saying {
  const [first] = problems;
  if (first === undefined) throw new Error("A refusal has at least one problem.");
  return (language) => {
    const file = FILE.in(language);
    const allowed = file.of(first.allowed);
    return FIGURES.in(language).tell("refused", {
      allowed: /[.!?]$/.test(allowed) ? allowed : `${allowed}.`,
      remedy: file.of(first.remedy),
    });
  };
}
