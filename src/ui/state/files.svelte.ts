import { decodeText, LARGEST_FILE, parseScenario } from "../../document";
import type { Problem, Scenario } from "../../document";
import { download } from "../plots";
import type { Language, Saying } from "../words/base";
import { FIGURES } from "../words/figures";
import { FILE } from "../words/file";
import { faultText } from "./fault";
import type { Workspace } from "./workspace.svelte";

/** Why a file was not opened, shown as a dialog. */
export interface Asking {
  readonly kind: "problems";
  readonly file: string;
  readonly problems: readonly Problem[];
}

/** The file on the disk has another content than this page last read or wrote: a person decides. */
export interface Overwriting {
  readonly kind: "overwriting";
  readonly file: string;
}

/** Opens a scenario as a bait of its own. */
type Opener = (scenario: Scenario, own: boolean) => void;

/** The file on the disk that the open bait is saved in. Where a browser gives none, all is downloaded. */
interface Place {
  file(): Promise<FileSystemFileHandle | null>;
  setFile(file: FileSystemFileHandle): Promise<void>;
}

/** A file of many baits, as its first characters tell. */
const MANY = /^\uFEFF?\s*\{\s*"format"\s*:\s*"trimwright\/baits"/;
/** So much of a file is looked at to tell what it is. */
const BEGINNING = 200;

const NOTICE_MS = 6000;
const MEGABYTE = 1e6;

/** A file name made of a document's name: letters and digits of any script, the rest as one dash. */
export function fileName(name: string): string {
  const plain = name
    .trim()
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "");
  return `${plain === "" ? "scenario" : plain}.json`;
}

/** Opening and saving files. Nothing of a refused file reaches the document, and the bait that was open stays kept. */
export class Files {
  asking = $state.raw<Asking | Overwriting | null>(null);
  /** A file of many baits that was opened: the list takes it over. */
  many = $state.raw<{ readonly file: string; readonly text: string } | null>(null);
  /** Said once, politely, after something was done. */
  notice = $state.raw<string | null>(null);
  readonly #work: Workspace;
  readonly #open: Opener;
  readonly #place: Place | null;
  readonly #language: () => Language;
  #going: ReturnType<typeof setTimeout> | undefined;

  /** `language`: the one that is read. */
  constructor(
    work: Workspace,
    open: Opener,
    place: Place | null = null,
    language: () => Language = () => "en",
  ) {
    this.#language = language;
    this.#work = work;
    this.#open = open;
    this.#place = place;
  }

  /** A file that the user picked or dropped. */
  async openFile(file: File): Promise<void> {
    if (MANY.test(await beginning(file))) {
      this.many = { file: file.name, text: await file.text() };
      return;
    }
    const words = this.#words;
    if (file.size > LARGEST_FILE) {
      this.#refuse(file.name, {
        path: "",
        found: words.tell("file.megabytes", { count: Math.round(file.size / MEGABYTE) }),
        allowed: words.tell("file.atMost", { count: LARGEST_FILE / MEGABYTE }),
        remedy: words.tell("file.openOther"),
        message: words.tell("file.tooLarge"),
      });
      return;
    }
    let bytes: Uint8Array;
    try {
      bytes = new Uint8Array(await file.arrayBuffer());
    } catch {
      this.#refuse(file.name, {
        path: "",
        found: words.tell("file.unread"),
        allowed: words.tell("file.readable"),
        remedy: words.tell("file.look"),
        message: words.tell("file.notRead"),
      });
      return;
    }
    const decoded = decodeText(bytes);
    if (decoded.ok) this.openText(file.name, decoded.text);
    else this.asking = { kind: "problems", file: file.name, problems: decoded.problems };
  }

  /** Opens a text; refuses what is no scenario. */
  openText(file: string, text: string): void {
    const parsed = parseScenario(text);
    const below = FILE.in(this.#language());
    if (parsed.ok)
      this.#put(
        parsed.scenario,
        parsed.notes.map((one) => below.of(one)),
      );
    else this.asking = { kind: "problems", file, problems: parsed.problems };
  }

  /** Starts a bait of one's own, made of its maker's answers. `told`: what its maker should know of it. */
  newBait(scenario: Scenario, told: Saying | null = null): void {
    this.#put(scenario, told === null ? [] : [told(this.#language())], true);
  }

  get #words() {
    return FIGURES.in(this.#language());
  }

  dismiss(): void {
    this.asking = null;
  }

  /** Opens a file that a person chooses and may later save in place. False where this browser cannot. */
  async choose(): Promise<boolean> {
    const { openChosen } = await import("./disk");
    const chosen = await openChosen(this.#words.tell("file.kind"));
    if (chosen === false) return false;
    if (chosen === null) return true;
    const before = this.#work.lineage;
    await this.openFile(await chosen.getFile());
    if (this.#work.lineage !== before) await this.#place?.setFile(chosen);
    return true;
  }

  /**
   * Saves into the bait's own file where the browser can, else as a download. `as`: into another file; `over`: whatever
   * stands in it now.
   */
  async save({ as = false, over = false } = {}): Promise<void> {
    this.asking = null;
    const name = fileName(this.#work.scenario.name);
    try {
      const { canSaveInPlace, chooseFile, writeFile } = await import("./disk");
      if (!canSaveInPlace() || this.#place === null) {
        this.#download(name);
        return;
      }
      const held = as ? null : await this.#place.file();
      const file = held ?? (await chooseFile(name, this.#words.tell("file.kind")));
      if (file === null) return;
      const text = this.#work.text();
      const wrote = await writeFile(file, text, held === null || over ? null : this.#work.inFile);
      if (wrote.kind === "changed") this.asking = { kind: "overwriting", file: wrote.name };
      else if (wrote.kind === "left") this.say(this.#words.tell("file.notAllowed"));
      else {
        if (held === null) await this.#place.setFile(file);
        if (text === this.#work.text()) this.#work.markSaved();
        this.say(this.#words.tell("file.saved", { file: wrote.name }));
      }
    } catch (fault) {
      this.#download(name, fault);
    }
  }

  /** `fault`: why it is not in the bait's own file. */
  #download(file: string, fault: unknown = null): void {
    download(this.#work.text(), file, "application/json");
    this.#work.markSaved();
    const words = this.#words;
    const instead = words.tell("file.download", { file });
    const why = fault === null ? null : faultText(fault, words.language);
    this.say(why === null ? instead : words.tell("file.failed", { why, instead }));
  }

  /** Says something once; it goes by itself. */
  say(text: string): void {
    this.notice = text;
    clearTimeout(this.#going);
    this.#going = setTimeout(() => (this.notice = null), NOTICE_MS);
  }

  #put(scenario: Scenario, notes: readonly string[], own = false): void {
    this.asking = null;
    this.#open(scenario, own);
    this.say([this.#words.tell("file.open", { name: scenario.name }), ...notes].join(" "));
  }

  #refuse(file: string, problem: Problem): void {
    this.asking = { kind: "problems", file, problems: [problem] };
  }
}

/** The first characters of a file; nothing where it cannot be read. */
const beginning = (file: File): Promise<string> =>
  file
    .slice(0, BEGINNING)
    .text()
    .catch(() => "");
