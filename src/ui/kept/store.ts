import { emptyBox, mergeBoxes, parseBox, readHead, readKept, serializeBox, settle } from "../../document";
import type { BaitHead, Box, KeptBait, ReadBait, Settled } from "../../document";
import { fromSI } from "../../units";
import type { Base, Shelf } from "./base";

/** One entry of the list of baits. What cannot be read is listed too: it is not ours to throw away. */
export type Listed =
  | { readonly ok: true; readonly head: BaitHead }
  | { readonly ok: false; readonly id: string; readonly text: string };

/** The box as it is kept: who writes says which revision the edit was made on. */
export interface KeptBox {
  readonly revision: number;
  readonly box: Box;
  /** What came of two tabs' edits when this was written, in words: whoever reads it is to know. */
  readonly told: readonly string[];
}

export type ReadBox =
  | { readonly ok: true; readonly kept: KeptBox | null }
  | { readonly ok: false; readonly why: string; readonly text: string };

const LAST = "last";
const BOX = "box";
/** Ready baits that nobody touched are forgotten after this time. */
const UNTOUCHED_MS = fromSI(2 * 24 * 3600, "ms");

/** A name that no other bait has. It needs no secure context, unlike the browser's own `randomUUID`. */
export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The baits and the box that this browser keeps. Every write looks at what is kept within its own transaction. */
export class BaitStore {
  readonly #base: Base;

  /** List entries as they were read, by their key: a record that has not been written since is not read again. */
  readonly #read = new Map<string, BaitHead>();

  constructor(base: Base) {
    this.#base = base;
  }

  /** False: what is kept ends with the page. */
  get lasting(): boolean {
    return this.#base.lasting;
  }

  async list(): Promise<readonly Listed[]> {
    const all = await this.#base.run("readonly", (shelf) => shelf.all("heads"));
    return all.map(([id, value]): Listed => {
      const head = this.#headOf(id, value);
      return head === null ? { ok: false, id, text: JSON.stringify(value, null, 1) } : { ok: true, head };
    });
  }

  #headOf(id: string, value: unknown): BaitHead | null {
    const known = this.#read.get(id);
    if (known !== undefined && isAs(value, known)) return known;
    const head = readHead(value);
    if (head !== null) this.#read.set(id, head);
    return head;
  }

  /** The whole record; null where there is none. */
  read(id: string): Promise<ReadBait | null> {
    return this.#base.run("readonly", (shelf) => readFrom(shelf, id));
  }

  /**
   * Writes a record. `base`: as this page last read or wrote it. Where another tab has written meanwhile, the two are
   * merged or told apart, and the answer says which.
   */
  write(base: KeptBait | null, mine: KeptBait): Promise<Settled> {
    return this.#base.run("readwrite", async (shelf) => {
      const read = await readFrom(shelf, mine.id);
      // What cannot be read stays where it is, and this bait goes on beside it.
      const settled: Settled =
        read !== null && !read.ok
          ? { kind: "kept", bait: { ...mine, id: freshId(), revision: 1 } }
          : settle(base, mine, read?.bait ?? null, freshId);
      await put(shelf, settled.bait);
      return settled;
    });
  }

  /** Keeps baits that nobody has kept yet: all of them, or none. */
  async add(baits: readonly KeptBait[]): Promise<void> {
    await this.#base.run("readwrite", async (shelf) => {
      for (const one of baits) await put(shelf, { ...one, revision: 1 });
    });
  }

  /** Keeps what no release can read now: the list shows it, and gives it out as it is. */
  async putUnreadable(id: string, value: unknown): Promise<void> {
    await this.#base.run("readwrite", (shelf) => shelf.put("heads", id, { unreadable: value }));
  }

  /** Forgets baits for ever: those that are still in the bin, and ready ones that nobody touched. */
  async remove(ids: readonly string[]): Promise<void> {
    await this.#base.run("readwrite", async (shelf) => {
      for (const id of ids) {
        const head = readHead(await shelf.get("heads", id));
        if (head !== null && (head.binned !== null || !head.own)) await forget(shelf, id);
      }
    });
  }

  /** Keeps a picture that lies under a drawing. A view that keeps its name beside the bait, as `work/trace`, holds it. */
  async putPicture(id: string, picture: object, now: number): Promise<void> {
    await this.#base.run("readwrite", (shelf) => shelf.put("pictures", id, { ...picture, kept: now }));
  }

  picture(id: string): Promise<unknown> {
    return this.#base.run("readonly", (shelf) => shelf.get("pictures", id));
  }

  /** Removes a picture, unless another bait than this one lies over it too. */
  async removePicture(id: string, bait: string): Promise<void> {
    await this.#base.run("readwrite", async (shelf) => {
      const sides = await shelf.all("sides");
      if (!sides.some(([key, side]) => key !== bait && traced(side).includes(id)))
        await shelf.remove("pictures", id);
    });
  }

  /** Forgets ready baits that were looked at days ago and never touched, and pictures that no bait lies over any longer. */
  async tidy(now: number): Promise<void> {
    await this.#base.run("readwrite", async (shelf) => {
      const held = (await shelf.all("sides")).map(([, side]) => traced(side)).join();
      for (const [id, picture] of await shelf.all("pictures")) {
        const { kept } = picture as { readonly kept?: unknown };
        const young = typeof kept === "number" && now - kept < UNTOUCHED_MS;
        if (!young && !held.includes(id)) await shelf.remove("pictures", id);
      }
    });
    const old = (await this.list()).flatMap((one) =>
      one.ok && !one.head.own && now - one.head.changed > UNTOUCHED_MS ? [one.head.id] : [],
    );
    if (old.length > 0) await this.remove(old);
  }

  /** The bait that was open last in this browser. */
  async last(): Promise<string | null> {
    const id = await this.#base.run("readonly", (shelf) => shelf.get("marks", LAST));
    return typeof id === "string" ? id : null;
  }

  async setLast(id: string): Promise<void> {
    await this.#base.run("readwrite", (shelf) => shelf.put("marks", LAST, id));
  }

  /** The box; `kept` is null where there is none yet. */
  readBox(): Promise<ReadBox> {
    return this.#base.run("readonly", boxFrom);
  }

  /** Writes the box: where another tab has written meanwhile, both edits are put together thing by thing. */
  writeBox(base: KeptBox | null, mine: Box): Promise<KeptBox> {
    return this.#base.run("readwrite", async (shelf) => {
      const read = await boxFrom(shelf);
      if (!read.ok) throw new Error(`the box that is kept cannot be read: ${read.why}`);
      const { kept } = read;
      const merged =
        kept === null || kept.revision === base?.revision
          ? { box: mine, told: [] }
          : mergeBoxes(base?.box ?? emptyBox(), mine, kept.box);
      const revision = (kept?.revision ?? 0) + 1;
      await shelf.put("box", BOX, { revision, text: serializeBox(merged.box), told: merged.told });
      return { revision, ...merged };
    });
  }

  /** Puts a box in the place of one that cannot be read. */
  replaceBox(mine: Box): Promise<KeptBox> {
    return this.#base.run("readwrite", async (shelf) => {
      const read = await boxFrom(shelf);
      if (read.ok && read.kept !== null) return read.kept;
      // A number that no tab has read or written: each looks again.
      const revision = Date.now();
      await shelf.put("box", BOX, { revision, text: serializeBox(mine), told: [] });
      return { revision, box: mine, told: [] };
    });
  }
}

/** A record is the one that was read: each write raises its revision, and a bait told apart has another time. */
const isAs = (value: unknown, { revision, changed, binned }: BaitHead): boolean => {
  const { revision: now, changed: then, binned: bin } = (value ?? {}) as Record<string, unknown>;
  return now === revision && then === changed && bin === binned;
};

async function readFrom(shelf: Shelf, id: string): Promise<ReadBait | null> {
  const [head, side] = await Promise.all([shelf.get("heads", id), shelf.get("sides", id)]);
  return head === undefined ? null : readKept(head, side);
}

async function put(shelf: Shelf, { trail, beside, ...head }: KeptBait): Promise<void> {
  await Promise.all([shelf.put("heads", head.id, head), shelf.put("sides", head.id, { trail, beside })]);
}

async function forget(shelf: Shelf, id: string): Promise<void> {
  await Promise.all([shelf.remove("heads", id), shelf.remove("sides", id)]);
}

/** What a bait's view keeps of its pictures, as a text in which their names stand. */
function traced(side: unknown): string {
  const { beside } = side as { readonly beside?: Readonly<Record<string, unknown>> };
  return JSON.stringify(beside?.["work/trace"] ?? null);
}

async function boxFrom(shelf: Shelf): Promise<ReadBox> {
  const value = await shelf.get("box", BOX);
  if (value === undefined) return { ok: true, kept: null };
  const { revision, text, told } = value as Readonly<Record<"revision" | "text" | "told", unknown>>;
  if (typeof text !== "string" || typeof revision !== "number")
    return { ok: false, why: "it is damaged", text: JSON.stringify(value) };
  const parsed = parseBox(text);
  return parsed.ok
    ? { ok: true, kept: { revision, box: parsed.box, told: wordsIn(told) } }
    : { ok: false, why: parsed.problems[0]?.message ?? "it is damaged", text };
}

const wordsIn = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((one) => typeof one === "string") : [];
