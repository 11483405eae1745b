import { decodeText } from "../../../document";
import type { Problem } from "../../../document";
import { outcomeAgrees, parseLesson, readLesson, serializeLesson, variantsOf } from "../../../lesson";
import type { Lesson, Outcome } from "../../../lesson";
import { download } from "../../plots";
import { keptWith, Later } from "../../state";
import type { App } from "../../state";
import { Play } from "./play.svelte";
import { teachOf } from "./state.svelte";
import type { Teach } from "./state.svelte";

/** Where a lesson that is being written is kept on this device. */
const KEY = "trimwright/lesson";
const LONGEST = 300_000;

/** A lesson while it is written: what stands on the form, what is wrong with it, and how it comes out. */
export class LessonEditor {
  readonly app: App;
  readonly teach: Teach;
  /** What stands on the form; null: nothing is begun. */
  draft = $state.raw<unknown>(null);
  /** Problems of a file that was refused. */
  refused = $state.raw<readonly Problem[]>([]);
  trying = $state.raw<Play | null>(null);
  readonly outcome = new Later<Outcome>();

  constructor(app: App) {
    this.app = app;
    this.teach = teachOf(app);
    try {
      const text = localStorage.getItem(KEY);
      if (text !== null && text.length < LONGEST) this.draft = JSON.parse(text);
    } catch {
      // Nothing was begun, or it cannot be read.
    }
  }

  readonly read = $derived(this.draft === null ? null : readLesson(this.draft));
  readonly lesson = $derived.by((): Lesson | null => (this.read?.ok === true ? this.read.lesson : null));
  readonly built = $derived.by(() => {
    const { lesson } = this;
    const { loaded } = this.teach;
    if (lesson === null || loaded === null) return null;
    const draws = Object.fromEntries(lesson.draws.map(({ name, usual }) => [name, usual]));
    return { lesson, draws, made: variantsOf(lesson, loaded.collection, draws) };
  });
  readonly problems = $derived.by((): readonly Problem[] => {
    if (this.read === null) return [];
    if (!this.read.ok) return this.read.problems;
    const made = this.built?.made;
    return made?.ok === false ? made.problems : [];
  });
  readonly agrees = $derived.by((): boolean | null => {
    const { value, stale } = this.outcome;
    return this.lesson === null || value === null || stale ? null : outcomeAgrees(this.lesson, value);
  });

  /** Works the lesson out whenever the hand rests, for the life of the component that calls it. */
  follow(): void {
    this.outcome.follow(
      () => (this.built?.made.ok === true ? { ...this.built, scenarios: this.built.made.scenarios } : null),
      ({ lesson, scenarios, draws }) => this.app.runs.lesson(lesson, scenarios, draws, "editor"),
    );
  }

  change(draft: unknown): void {
    this.draft = draft;
    this.trying = null;
    this.refused = [];
    try {
      localStorage.setItem(KEY, JSON.stringify(draft));
    } catch {
      // Then it lasts as long as the page.
    }
  }

  copy(lesson: Lesson): void {
    this.change({ ...lesson, id: `${lesson.id}-2`.slice(0, 40) });
  }

  async open(file: File): Promise<void> {
    const decoded = decodeText(new Uint8Array(await file.arrayBuffer()));
    const read = decoded.ok ? parseLesson(decoded.text) : decoded;
    if (read.ok) this.change(read.lesson);
    else this.refused = read.problems;
  }

  save(): void {
    if (this.lesson !== null)
      download(serializeLesson(this.lesson), `${this.lesson.id}.json`, "application/json");
  }

  try(): void {
    const { lesson } = this;
    const { loaded } = this.teach;
    if (lesson !== null && loaded !== null)
      this.trying = new Play(this.app, lesson, loaded.collection, null, null);
  }
}

export const editorOf = keptWith((app) => new LessonEditor(app));
