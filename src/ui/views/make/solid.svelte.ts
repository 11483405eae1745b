import type { Scenario } from "../../../document";
import type { MadeFile } from "../../../sheet";
import { download } from "../../plots";
import { boxOf, keptWith } from "../../state";
import type { App } from "../../state";
import { SHEET } from "../../words/file";
import { MAKE } from "../../words/make";
import type { SolidMade, SolidTold } from "./solid";

/** The solid halves of the open bait: made when asked, by a worker of their own that ends with the work. */
class SolidState {
  readonly #app: App;
  progress = $state.raw<{ readonly done: number; readonly of: number; readonly what: string } | null>(null);
  trouble = $state.raw<string | null>(null);
  #made = $state.raw<{ readonly of: Scenario; readonly made: SolidMade } | null>(null);
  #worker: Worker | null = null;

  constructor(app: App) {
    this.#app = app;
  }

  get #words() {
    return MAKE.in(this.#app.prefs.language);
  }

  /** What was made of the document as it is now; null: nothing yet. */
  get made(): SolidMade | null {
    return this.#made?.of === this.#app.work.scenario ? this.#made.made : null;
  }

  /** Something was made, and the document has changed since. */
  get stale(): boolean {
    return this.#made !== null && this.made === null;
  }

  make(): void {
    this.cancel();
    const { scenario } = this.#app.work;
    this.trouble = null;
    this.progress = { done: 0, of: 1, what: "library" };
    const worker = new Worker(new URL("./solid-worker.ts", import.meta.url), {
      type: "module",
      name: "solid",
    });
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<SolidTold>) => {
      if (this.#worker !== worker) return;
      if (data.kind === "progress") this.progress = data;
      else if (data.kind === "made") {
        this.#made = { of: scenario, made: data.made };
        this.cancel();
      } else this.#fail(data.why);
    };
    worker.onerror = (event) => {
      if (this.#worker === worker) this.#fail(event.message || this.#words.tell("notLoaded"));
    };
    worker.postMessage({ scenario, drills_mm: [...boxOf(this.#app).now.drills_mm] });
  }

  cancel(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.progress = null;
  }

  save(file: MadeFile): void {
    download(new Blob([new Uint8Array(file.bytes)], { type: file.type }), file.name);
    this.#app.files.say(this.#words.tell("saved", { name: file.name }));
  }

  #fail(why: string): void {
    this.cancel();
    this.trouble = this.#words.tell("solid.failed", {
      why: SHEET.in(this.#app.prefs.language).of(why),
    });
  }
}

export const solidOf = keptWith((app) => new SolidState(app));
