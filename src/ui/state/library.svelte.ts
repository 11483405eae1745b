import {
  decodeText,
  fromBase64,
  joinBoxes,
  LARGEST_LIBRARY,
  NO_TRAIL,
  openLibrary,
  PHOTO_PLACES,
  readLibraryBait,
  serializeLibrary,
  toBase64,
} from "../../document";
import type { BaitHead, Box, KeptBait, LibraryBait, Problem } from "../../document";
import { freshId } from "../kept";
import type { Annexed, KeptPhoto } from "../kept";
import { download } from "../plots";
import type { Saying } from "../words/base";
import { FILE } from "../words/file";
import { KEEPING } from "../words/keeping";
import type { App } from "./app.svelte";
import { numbered } from "./kept-words";
import { boxOf } from "./box.svelte";
import { faultText } from "./fault";
import { fileName } from "./files.svelte";
import { keptWith } from "./kept.svelte";
import { Here } from "./here";
import { breath } from "./quiet";

/** What goes along in a file of baits. */
export interface Along {
  readonly versions: boolean;
  readonly photos: boolean;
  readonly box: boolean;
}

/** What came of a file of baits. */
export interface Taken {
  readonly file: string;
  readonly added: number;
  /** Baits that are here already, as they are in the file. */
  readonly known: number;
  readonly refused: readonly { readonly name: string; readonly why: string }[];
  /** The box that came along; it is put beside one's own only when asked. */
  readonly box: Box | null;
}

/** Work between two looks at the clock goes on for this long, ms. */
const PIECE_MS = 30;
/** Bytes of a file, at most three for each character. */
const LARGEST_BYTES = LARGEST_LIBRARY;
const MEGABYTE = 1e6;

/** Many baits in one file: out of this browser, and into it. */
export class Library {
  /** How far it is; null: nothing is under way. */
  progress = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  taken = $state.raw<Taken | null>(null);
  #trouble = $state.raw<Saying | null>(null);
  #boxTold = $state.raw<Saying | null>(null);
  readonly #app: App;

  constructor(app: App) {
    this.#app = app;
  }

  /** What stood in the way, in words. */
  get trouble(): string | null {
    return this.#trouble?.(this.#app.prefs.language) ?? null;
  }

  /** What came of the box in the last file, in words. */
  get boxTold(): string | null {
    return this.#boxTold?.(this.#app.prefs.language) ?? null;
  }

  /** Saves baits as one file. */
  async save(heads: readonly BaitHead[], along: Along): Promise<void> {
    this.#trouble = null;
    try {
      const annex = await this.#app.annex();
      const baits: LibraryBait[] = [];
      for (const { id, scenario, tags = [] } of heads) {
        this.progress = { done: baits.length, of: heads.length };
        const versions = along.versions ? await annex.versions(id) : [];
        const photos = along.photos ? await annex.photos(id) : [];
        baits.push({
          scenario,
          tags,
          versions: versions.map(({ name, made, scenario: then }) => ({ name, made, scenario: then })),
          photos: Object.fromEntries(photos.map(({ place, bytes }) => [place, toBase64(bytes)])),
        });
      }
      const box = along.box ? boxOf(this.#app).now : null;
      const [only] = heads;
      const words = KEEPING.in(this.#app.prefs.language);
      const name =
        heads.length === 1 && only !== undefined
          ? words.tell("library.one", { name: only.scenario.name })
          : words.tell("library.all");
      download(serializeLibrary(baits, box), fileName(name), "application/json");
    } catch (fault) {
      this.#trouble = failed("library.notMade", fault);
    } finally {
      this.progress = null;
    }
  }

  async openFile(file: File): Promise<void> {
    [this.#trouble, this.taken, this.#boxTold] = [null, null, null];
    if (file.size > LARGEST_BYTES) {
      const size = Math.round(file.size / MEGABYTE);
      const most = LARGEST_BYTES / MEGABYTE;
      this.#trouble = (to) => KEEPING.in(to).tell("library.large", { file: file.name, size, most });
      return;
    }
    try {
      const decoded = decodeText(new Uint8Array(await file.arrayBuffer()), LARGEST_BYTES);
      if (decoded.ok) await this.take(file.name, decoded.text);
      else this.#trouble = refused(file.name, decoded.problems);
    } catch (fault) {
      this.#trouble = failedOf("library.notRead", file.name, fault);
    }
  }

  /** Takes over the baits of a text, beside those that are here. What is here stays as it is. */
  async take(file: string, text: string): Promise<void> {
    const opened = openLibrary(text);
    if (!opened.ok) {
      this.#trouble = refused(file, opened.problems);
      return;
    }
    try {
      await this.#takeAll(file, opened.baits, opened.box);
    } catch (fault) {
      this.#trouble = failedOf("library.nothing", file, fault);
    } finally {
      this.progress = null;
    }
  }

  async #takeAll(file: string, values: readonly unknown[], box: Box | null): Promise<void> {
    const { baits } = this.#app;
    await baits.flush();
    const heads = (await baits.store.list()).flatMap((one) => (one.ok && one.head.own ? [one.head] : []));
    const here = new Here();
    for (const { scenario } of heads) here.add(scenario);

    const fresh: { readonly bait: KeptBait; readonly from: LibraryBait }[] = [];
    const refused: { name: string; why: string }[] = [];
    let known = 0;
    let since = performance.now();
    for (const [done, value] of values.entries()) {
      if (performance.now() - since > PIECE_MS) {
        this.progress = { done, of: values.length };
        await breath();
        since = performance.now();
      }
      const read = readLibraryBait(value);
      if (!read.ok) {
        refused.push({ name: read.name, why: read.why });
        continue;
      }
      const { scenario } = read.bait;
      if (here.has(scenario)) {
        known++;
        continue;
      }
      let { name } = scenario;
      while (here.named(name)) name = numbered(name);
      here.add(scenario);
      if (name !== scenario.name) here.add({ ...scenario, name });
      fresh.push({ bait: this.#record({ ...scenario, name }, read.bait.tags), from: read.bait });
    }
    await baits.store.add(fresh.map(({ bait }) => bait));
    const along = fresh.filter(({ from }) => from.versions.length > 0 || Object.keys(from.photos).length > 0);
    if (along.length > 0) {
      const left = await this.#addAlong(
        along.map(({ bait, from }) => ({ bait: bait.id, versions: from.versions, photos: photosOf(from) })),
      );
      for (const one of left)
        refused.push({
          name: fresh.find(({ bait }) => bait.id === one)?.bait.scenario.name ?? "",
          why: KEEPING.in(this.#app.prefs.language).tell("library.noPhoto"),
        });
    }
    baits.tellList();
    this.taken = { file, added: fresh.length, known, refused, box };
  }

  /** Versions and photos, all in one transaction. Gives the baits of photos that are none. */
  async #addAlong(along: readonly Annexed[]): Promise<readonly string[]> {
    try {
      return await (await this.#app.annex()).addAll(along);
    } catch (fault) {
      this.#trouble = failed("library.alone", fault);
      return [];
    }
  }

  #record(scenario: KeptBait["scenario"], tags: readonly string[]): KeptBait {
    const now = this.#app.baits.time;
    return {
      id: freshId(),
      revision: 0,
      scenario,
      trail: NO_TRAIL,
      beside: {},
      own: true,
      made: now,
      changed: now,
      binned: null,
      inFile: null,
      tags,
    };
  }

  /** Puts what the file's box holds beside what one's own box holds. */
  takeBox(): void {
    const other = this.taken?.box;
    if (this.taken === null || other === null || other === undefined) return;
    const box = boxOf(this.#app);
    try {
      this.#boxTold = box.put(joinBoxes(box.now, other))
        ? (to) => KEEPING.in(to).tell("library.boxHas")
        : () => box.trouble ?? "";
    } catch (fault) {
      this.#boxTold = (to) => faultText(fault, to);
    }
    this.taken = { ...this.taken, box: null };
  }
}

const failed =
  (key: "library.notMade" | "library.alone", fault: unknown): Saying =>
  (language) =>
    KEEPING.in(language).tell(key, { why: faultText(fault, language) });

const failedOf =
  (key: "library.notRead" | "library.nothing", file: string, fault: unknown): Saying =>
  (language) =>
    KEEPING.in(language).tell(key, { file, why: faultText(fault, language) });

const refused =
  (file: string, problems: readonly Problem[]): Saying =>
  (language) =>
    KEEPING.in(language).tell("library.notOpened", {
      file,
      why: FILE.in(language).of(problems[0]?.message ?? ""),
    });

/** The photos that came along. What is no base64 has no bytes, and so is no photo. */
const photosOf = ({ photos }: LibraryBait): readonly KeptPhoto[] =>
  PHOTO_PLACES.flatMap((place) => {
    const text = photos[place];
    if (text === undefined) return [];
    try {
      return [{ place, bytes: fromBase64(text) }];
    } catch {
      return [{ place, bytes: new Uint8Array(0) }];
    }
  });

export const libraryOf = keptWith((app) => new Library(app));
