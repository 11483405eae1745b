import { parseScenario } from "../../document";
import type { Problem, Scenario } from "../../document";
import { download } from "../plots";
import { starter } from "./starter";
import type { Workspace } from "./workspace.svelte";

/** What stands in the way of opening a file, shown as a dialog. */
export type Asking =
  | { readonly kind: "problems"; readonly file: string; readonly problems: readonly Problem[] }
  | { readonly kind: "replace"; readonly next: Next };

/** A document about to be opened. */
interface Next {
  readonly scenario: Scenario;
  /** What was carried forward from an older version, in words. */
  readonly notes: readonly string[];
  /** False: it is in no file yet (work that the browser kept). */
  readonly saved: boolean;
  /** Called when it is open. */
  readonly then: () => void;
}

/** The largest file that is read at all; a scenario with hundreds of points is below 100 kB. */
const MOST_BYTES = 4_000_000;

const NOTICE_MS = 6000;

/** A file name made of a document's name: letters and digits of any script, the rest as one dash. */
export function fileName(name: string): string {
  const plain = name
    .trim()
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "");
  return `${plain === "" ? "scenario" : plain}.json`;
}

/** Opening and saving: nothing of a refused file reaches the document, nothing unsaved goes without a question. */
export class Files {
  asking = $state.raw<Asking | null>(null);
  /** Said once, politely, after something was done. */
  notice = $state.raw<string | null>(null);
  readonly #work: Workspace;
  #going: ReturnType<typeof setTimeout> | undefined;

  constructor(work: Workspace) {
    this.#work = work;
  }

  /** A file that the user picked or dropped. */
  async openFile(file: File): Promise<void> {
    if (file.size > MOST_BYTES) {
      this.#refuse(file.name, {
        path: "",
        found: `${Math.round(file.size / 1e6)} MB`,
        allowed: `a scenario file of at most ${MOST_BYTES / 1e6} MB`,
        remedy: "Open a scenario that Trimwright saved, or one written after its file format.",
        message: "The file is too large for a scenario.",
      });
      return;
    }
    let text: string;
    try {
      text = await file.text();
    } catch {
      this.#refuse(file.name, {
        path: "",
        found: "a file that the browser cannot read",
        allowed: "a readable text file",
        remedy: "See whether it is still there and whether you may read it, then open it again.",
        message: "The file could not be read.",
      });
      return;
    }
    this.openText(file.name, text);
  }

  /** Opens a text: asks first where unsaved changes would go, and refuses what is no scenario. */
  openText(file: string, text: string, options: Partial<Pick<Next, "saved" | "then">> = {}): void {
    const parsed = parseScenario(text);
    if (!parsed.ok) {
      this.asking = { kind: "problems", file, problems: parsed.problems };
      return;
    }
    this.#offer({
      scenario: parsed.scenario,
      notes: parsed.notes,
      saved: options.saved ?? true,
      then: options.then ?? (() => undefined),
    });
  }

  /** Starts a plain bait of one's own: asks first where unsaved changes would go. Untouched, it needs no saving. */
  newBait(): void {
    this.#offer({ scenario: starter(), notes: [], saved: true, then: () => undefined });
  }

  /** The answer to 'replace': go ahead. */
  replace(): void {
    if (this.asking?.kind === "replace") this.#put(this.asking.next);
  }

  saveThenReplace(): void {
    this.save();
    this.replace();
  }

  dismiss(): void {
    this.asking = null;
  }

  save(): void {
    const name = fileName(this.#work.scenario.name);
    download(this.#work.text(), name, "application/json");
    this.#work.markSaved();
    this.say(`Saved as ${name} in your downloads.`);
  }

  /** Says something once; it goes by itself. */
  say(text: string): void {
    this.notice = text;
    clearTimeout(this.#going);
    this.#going = setTimeout(() => (this.notice = null), NOTICE_MS);
  }

  #offer(next: Next): void {
    this.#work.settle();
    if (this.#work.changed) this.asking = { kind: "replace", next };
    else this.#put(next);
  }

  #put({ scenario, notes, saved, then }: Next): void {
    this.asking = null;
    this.#work.replace(`open ${scenario.name}`, scenario, saved);
    this.say([`${scenario.name} is open.`, ...notes].join(" "));
    then();
  }

  #refuse(file: string, problem: Problem): void {
    this.asking = { kind: "problems", file, problems: [problem] };
  }
}
