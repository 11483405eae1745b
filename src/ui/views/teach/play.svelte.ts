import { untrack } from "svelte";
import { answersRight, cameTrue, drawn, variantsOf } from "../../../lesson";
import type { Built, Collection, Lesson, LessonResult, Outcome, Student, Values } from "../../../lesson";
import type { Snapshot } from "../../../model/motion";
import type { RunJob } from "../../../runner";
import { Player } from "../../stage";
import { Later, RunSlot, workOut } from "../../state";
import type { App, Worked } from "../../state";

/** How deep a bait is let go, as a share of the water. */
const DEEP = 0.6;

/** One lesson as it is played with the numbers of one student: predict, run, answer. Its baits are its own. */
export class Play {
  readonly app: App;
  readonly lesson: Lesson;
  readonly student: Student | null;
  readonly draws: Values;
  readonly built: Built;
  readonly worked: readonly Worked[];
  /** An option's place in the list, or a number; null: not said yet. */
  predicted = $state.raw<number | null>(null);
  answers = $state.raw<LessonResult["answers"]>([]);
  /** Which variant is drawn in front. */
  front = $state(0);
  readonly outcome = new Later<Outcome>();
  readonly player = new Player();
  readonly slots: readonly RunSlot[];
  #started = false;

  constructor(
    app: App,
    lesson: Lesson,
    collection: Collection,
    student: Student | null,
    before: LessonResult | null,
  ) {
    this.app = app;
    this.lesson = lesson;
    this.student = student;
    this.draws = drawn(lesson, student);
    this.built = variantsOf(lesson, collection, this.draws);
    const tried = this.built.ok ? this.built.scenarios.map((one) => workOut(one)) : [];
    this.worked = tried.flatMap((one) => (one.ok ? [one.worked] : []));
    this.slots = this.worked.map(
      (_, i) => new RunSlot(app.runs, `lesson ${"ABC"[i] ?? ""}`, () => this.player.time),
    );
    if (before !== null) {
      this.predicted = before.predicted;
      this.answers = before.answers;
    }
  }

  /** Asks for the figures: what is told in the question, and what decides. */
  ask(): void {
    const { built } = this;
    if (!built.ok || this.outcome.value !== null) return;
    void this.outcome.ask(() => this.app.runs.lesson(this.lesson, built.scenarios, this.draws, "lesson"));
  }

  predict(value: number): void {
    this.predicted = value;
    this.start();
  }

  /** Starts the runs that show it. */
  start(): void {
    if (this.#started) return;
    this.#started = true;
    this.worked.forEach((worked, i) => void this.slots[i]?.record(this.#job(worked), worked));
  }

  #job({ scenario, compiled }: Worked): RunJob {
    const { run } = this.lesson;
    return run.kind === "cast"
      ? { kind: "swim", scenario }
      : {
          kind: "tub",
          scenario,
          tub: {
            depth: DEEP * compiled.around.depth,
            pitch: run.kind === "still" ? 0 : "rest",
            duration: run.for_s,
          },
        };
  }

  /** Follows the runs for the life of the component that calls it. */
  follow(): void {
    $effect(() => {
      const available = Math.max(0, ...this.slots.map((one) => one.available));
      const duration = Math.max(0, ...this.slots.map((one) => one.duration));
      untrack(() => {
        if (duration === 0) return;
        const first = this.player.duration === 0;
        this.player.load(duration, available, !first);
        if (first && !this.app.calm) this.player.play();
      });
    });
    $effect(() => () => this.player.pause());
  }

  /** A variant's moment; null until its first frame has come. */
  at(index: number): Snapshot | null {
    const slot = this.slots[index];
    return slot?.shown && slot.frames > 0 ? slot.shown.recording.at(this.player.time) : null;
  }

  readonly right = $derived(this.answers.some(({ right }) => right));
  /** The prediction came true; null while nobody knows. */
  get cameTrue(): boolean | null {
    const { value } = this.outcome;
    return this.predicted === null || value === null
      ? null
      : cameTrue(this.lesson.prediction, value.happens, this.predicted);
  }

  answer(value: number): boolean {
    const { value: outcome } = this.outcome;
    if (outcome === null) return false;
    const right = answersRight(this.lesson.exercise, outcome, value);
    this.answers = [...this.answers.slice(-48), { value, right }];
    return right;
  }

  /** What is kept of it; null while nothing was predicted. */
  get result(): LessonResult | null {
    const { predicted, answers, lesson } = this;
    const { value } = this.outcome;
    return predicted === null || value === null
      ? null
      : {
          lesson: lesson.id,
          predicted,
          happened: value.happens,
          cameTrue: cameTrue(lesson.prediction, value.happens, predicted),
          answers,
        };
  }

  anew(): void {
    this.predicted = null;
    this.answers = [];
    this.player.seek(0);
  }
}
