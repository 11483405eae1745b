import { untrack } from "svelte";
import type { Box } from "../../../document";
import {
  AS_PRINTED,
  cutterFile,
  measuredTrouble,
  pagesOf,
  pdfFile,
  sheetJob,
  stationsTrouble,
  TEMPLATES,
  usualStations,
} from "../../../sheet";
import type { MadeFile, Measured, Page, PaperKey, SheetChoice, SheetJob, TemplateKey } from "../../../sheet";
import { fromSI, parseIn } from "../../../units";
import { download } from "../../plots";
import {
  aFlag,
  aNumber,
  aText,
  boxOf,
  faultText,
  groupOf,
  keptWith,
  Later,
  listOf,
  oneOf,
  orNull,
} from "../../state";
import type { App, Worked } from "../../state";
import type { Told } from "../../words/base";
import { SHEET } from "../../words/file";
import { MAKE } from "../../words/make";
import { sheetFonts } from "./fonts";

const ALL: readonly TemplateKey[] = TEMPLATES.map((one) => one.key);

/** How much larger than its frame a page is shown. */
export const ZOOMS = [1, 1.5, 2, 3, 4, 6] as const;

/** Pages as they are shown, and the job that they were made of. */
interface Shown {
  readonly job: SheetJob;
  readonly pages: readonly Page[];
}

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

/** What a person prints of the open bait. */
export class MakeState {
  readonly #app: App;
  paper = $state<PaperKey>("A4");
  /** Templates that are left out: so that a new kind of template is printed until somebody takes it out. */
  without = $state.raw<readonly TemplateKey[]>([]);
  build = $state(true);
  /** Stations as typed, in the person's own unit; null: the usual ones. */
  stationsText = $state<string | null>(null);
  measured = $state.raw<Measured>(AS_PRINTED);
  page = $state(0);
  zoom = $state<number>(1);
  readonly shown = new Later<Shown>();
  /** A file is being written. */
  writing = $state(false);

  constructor(app: App) {
    this.#app = app;
    app.beside.keep<Pick<MakeState, "paper" | "without" | "build" | "stationsText" | "measured">>(
      "make",
      "place",
      this,
      {
        paper: oneOf("A4", "Letter"),
        without: listOf(oneOf(...ALL)),
        build: aFlag,
        stationsText: orNull(aText),
        measured: groupOf<Measured>({ across: aRuler, down: aRuler }),
      },
    );
  }

  get #words() {
    return MAKE.in(this.#app.prefs.language);
  }

  /** The own box, where there is something in it. */
  get #box(): Box | null {
    const { now } = boxOf(this.#app);
    return now.things.length > 0 ? now : null;
  }

  get #length(): number {
    return this.#app.work.now.compiled.bait.drawn.length;
  }

  /** The stations to be drawn, m. */
  get stations(): Read<readonly number[]> {
    if (this.stationsText === null) return { ok: true, value: usualStations(this.#length) };
    const unit = this.#app.units.lengths === "inches" ? "in" : "mm";
    const found: number[] = [];
    for (const word of this.stationsText.split(/[;\s]+|,\s+/u).filter((one) => one !== "")) {
      const read = parseIn(word, unit);
      if (!read.ok) return { ok: false, why: this.#words.tell("gap", { word, why: read.why }) };
      found.push(read.value);
    }
    const why = stationsTrouble(found, this.#length);
    return why === null ? { ok: true, value: found } : { ok: false, why };
  }

  /** What stands in the field of stations. */
  get stationsShown(): string {
    const unit = this.#app.units.lengths === "inches" ? "in" : "mm";
    const digits = unit === "in" ? 2 : 1;
    return (
      this.stationsText ??
      usualStations(this.#length)
        .map((s) => String(Number(fromSI(s, unit).toFixed(digits))))
        .join("  ")
    );
  }

  typeStations(text: string): void {
    this.stationsText = text.trim() === "" ? null : text;
  }

  tick(key: TemplateKey, on: boolean): void {
    this.without = on ? this.without.filter((one) => one !== key) : [...this.without, key];
  }

  measure(side: keyof Measured, value: number): void {
    this.measured = { ...this.measured, [side]: value };
  }

  turnTo(page: number): void {
    this.page = Math.min(Math.max(0, page), this.pages.length - 1);
  }

  closer(step: number): void {
    const at = ZOOMS.findIndex((one) => one === this.zoom);
    this.zoom = ZOOMS[Math.min(Math.max(0, at + step), ZOOMS.length - 1)] ?? 1;
  }

  get pages(): readonly Page[] {
    return this.shown.value?.pages ?? [];
  }

  /** The page that is shown: where there are fewer pages than before, the last one. */
  get at(): number {
    return Math.min(this.page, Math.max(0, this.pages.length - 1));
  }

  /** Follows the document and the choices for the life of the component that calls it. */
  follow(): void {
    this.shown.follow(
      () => {
        const { stations } = this;
        if (!stations.ok) return untrack(() => this.#last);
        const templates = ALL.filter((key) => !this.without.includes(key));
        const choice: SheetChoice = {
          paper: this.paper,
          measured: this.measured,
          stations: this.stationsText === null ? null : stations.value,
          templates,
          build: this.build,
        };
        const words = SHEET.in(this.#app.prefs.language);
        return (this.#last = { worked: this.#app.work.now, choice, box: this.#box, words });
      },
      async ({ worked, choice, box, words }) => {
        const told = (text: string): string => words.of(text);
        const job = sheetJob(worked.scenario, await sheetFonts(), choice, box, worked.compiled, told);
        return { job, pages: pagesOf(job) };
      },
    );
  }

  /** What was asked for last: it stays while stations are being typed. */
  #last: {
    readonly worked: Worked;
    readonly choice: SheetChoice;
    readonly box: Box | null;
    /** The language of the sheets: when it comes, they are made anew. */
    readonly words: Told;
  } | null = null;

  /** Writes a file of what is shown, and hands it to the person. */
  async save(make: (job: SheetJob) => Promise<MadeFile | null> | MadeFile | null): Promise<void> {
    const job = this.shown.value?.job;
    if (job === undefined || this.writing) return;
    this.writing = true;
    try {
      const file = await make(job);
      if (file === null) this.#app.files.say(this.#words.tell("noPart"));
      else {
        download(new Blob([new Uint8Array(file.bytes)], { type: file.type }), file.name);
        this.#app.files.say(this.#words.tell("saved", { name: file.name }));
      }
    } catch (fault) {
      this.#app.files.say(faultText(fault));
    } finally {
      this.writing = false;
    }
  }

  savePdf(): Promise<void> {
    return this.save(pdfFile);
  }

  saveCutter(key: TemplateKey, as: "svg" | "dxf"): Promise<void> {
    return this.save((job) => cutterFile(job, key, as));
  }
}

const aRuler = (value: unknown): number | undefined => {
  const read = aNumber(value);
  return read === undefined || measuredTrouble(read) !== null ? undefined : read;
};

/** The state of this view, kept while the page lives. */
export const makeOf = keptWith((app) => new MakeState(app));
