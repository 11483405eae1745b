import { untrack } from "svelte";
import { RESULTS_FORMAT, RESULTS_VERSION } from "../../../lesson";
import type { Lesson, LessonResult, Results, Student } from "../../../lesson";
import { faultText, keptWith, oneOf } from "../../state";
import type { App } from "../../state";
import { TEACH } from "../../words/teach";
import type { Language } from "../../words/base";
import { loadLessons } from "./collection";
import type { Loaded } from "./collection";
import { readDevice, writeDevice } from "./device";
import { Play } from "./play.svelte";

export const PAGES = ["lessons", "forces", "teacher", "class", "editor", "glossary"] as const;
export type Page = (typeof PAGES)[number];

/** Everything that the view Teach holds: lessons, who learns, and what was done on this device. */
export class Teach {
  readonly app: App;
  page = $state<Page>("lessons");
  /** The lesson that is open on the page of lessons; null: the list is. */
  open = $state.raw<string | null>(null);
  loaded = $state.raw<Loaded | null>(null);
  failure = $state.raw<string | null>(null);
  group = $state("");
  name = $state("");
  done = $state.raw<readonly LessonResult[]>([]);
  /** The student counts once the hand has left the field. */
  student = $state.raw<Student | null>(null);
  /** The lesson that was open last, as it is played. */
  last = $state.raw<Play | null>(null);

  #plays = new WeakMap<Lesson, Play>();

  constructor(app: App) {
    this.app = app;
    const { group, name, done } = readDevice();
    this.group = group;
    this.name = name;
    this.done = done;
    this.#takeStudent();
    app.beside.keep<Pick<Teach, "page">>("teach", "place", this, { page: oneOf(...PAGES) });
    void this.load();
  }

  readonly words = $derived.by(() => TEACH.in(this.app.prefs.language));
  /** The language that is read now. */
  get language(): Language {
    return this.words.language;
  }

  async load(): Promise<void> {
    try {
      this.failure = null;
      this.loaded = await loadLessons();
    } catch (fault) {
      this.failure = faultText(fault);
    }
  }

  get lessons(): readonly Lesson[] {
    return this.loaded?.lessons ?? [];
  }

  show(page: Page): void {
    this.last = this.play ?? this.last;
    this.page = page;
    this.open = null;
  }

  openLesson(id: string | null): void {
    this.page = "lessons";
    this.open = id;
  }

  /** The open lesson as it is played; null: none is open. */
  readonly play = $derived.by((): Play | null => {
    const lesson = this.lessons.find(({ id }) => id === this.open);
    if (lesson === undefined || this.loaded === null) return null;
    const { student } = this;
    const { collection } = this.loaded;
    return untrack(() => {
      const known = this.#plays.get(lesson);
      if (known !== undefined && known.student === student) return known;
      const made = new Play(this.app, lesson, collection, student, this.resultOf(lesson.id));
      this.#plays.set(lesson, made);
      return made;
    });
  });

  /** Other numbers for another student: what was done with the earlier ones is theirs. */
  signIn(group: string, name: string): void {
    const [g, n] = [group.trim().slice(0, 60), name.trim().slice(0, 60)];
    if (g === this.group && n === this.name) return;
    this.group = g;
    this.name = n;
    this.done = [];
    this.#takeStudent();
    this.#keep();
  }

  #takeStudent(): void {
    this.student = this.group === "" || this.name === "" ? null : { group: this.group, name: this.name };
  }

  resultOf(id: string): LessonResult | null {
    return this.done.find(({ lesson }) => lesson === id) ?? null;
  }

  /** Keeps what was done in a lesson; null: it begins anew. */
  record(id: string, result: LessonResult | null): void {
    const others = this.done.filter(({ lesson }) => lesson !== id);
    this.done = result === null ? others : [...others, result];
    this.#keep();
  }

  forget(): void {
    this.done = [];
    this.#plays = new WeakMap();
    this.last = null;
    this.open = null;
    this.#keep();
  }

  /** What is handed in; null where nobody has signed in or nothing is done. */
  readonly results = $derived.by((): Results | null =>
    this.student === null || this.done.length === 0
      ? null
      : {
          format: RESULTS_FORMAT,
          version: RESULTS_VERSION,
          group: this.student.group,
          student: this.student.name,
          lessons: this.done,
        },
  );

  #keep(): void {
    const { group, name, done } = this;
    writeDevice({ group, name, done });
  }
}

export const teachOf = keptWith((app) => new Teach(app));
