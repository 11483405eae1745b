import type { Clash, KeptBait } from "../../document";
import type { Saying } from "../words/base";
import { FIGURES } from "../words/figures";
import { FILE } from "../words/file";
import { MemoryBase } from "./base";
import type { Base } from "./base";
import { openDatabase, within } from "./database";
import { BaitStore } from "./store";
import { dropWords, hearWords } from "./words";
import type { Slips } from "./words";

/** How long what an earlier release kept may take, ms: it stays where it is then, for the next start. */
const PATIENCE_MS = 4000;
/** How long all of the start may take, ms: a database that opens and then does not answer must not keep the page back. */
const LONGEST_MS = 8000;

/** What the page starts with. */
export interface Started {
  readonly store: BaitStore;
  /** The bait to go on with; null: there is none. */
  readonly kept: KeptBait | null;
  /** Why nothing is kept; null where it is. */
  readonly trouble: Saying | null;
  /** What a person should know of how it went. */
  readonly told: Saying | null;
}

/**
 * Opens what this browser keeps, and finds the bait that was open: in this tab, else the last one in any. `mine` is the
 * bait that this tab showed before it was loaded again. Never rejects: without a database the page works too.
 */
export async function startKept(slips: Slips, mine: string | null, now: number): Promise<Started> {
  let base: Base;
  try {
    base = await openDatabase();
  } catch (fault) {
    return { store: new BaitStore(new MemoryBase()), kept: null, trouble: unkept(fault), told: null };
  }
  const store = new BaitStore(base);
  try {
    const { kept, told } = await within(LONGEST_MS, begin(store, slips, mine));
    // Later, when the page stands: nobody waits for it.
    setTimeout(() => void store.tidy(now).catch(() => undefined), 5000);
    return { store, kept, trouble: null, told: told.length === 0 ? null : together(told) };
  } catch (fault) {
    return { store, kept: null, trouble: unkept(fault), told: null };
  }
}

/** Takes up what earlier pages have left, then finds the bait to go on with. */
async function begin(
  store: BaitStore,
  slips: Slips,
  mine: string | null,
): Promise<{ readonly kept: KeptBait | null; readonly told: readonly Saying[] }> {
  const told: Saying[] = [];
  for (const { slip, base, mine: left } of hearWords(slips)) {
    const settled = await store.write(base, left);
    if (settled.kind === "merged" && settled.clashes.length > 0) told.push(clashWords(settled.clashes));
    if (settled.kind === "parted") {
      const { name } = settled.other.scenario;
      told.push((language) => FIGURES.in(language).tell("kept.ended", { name }));
    }
    dropWords(slips, slip);
  }
  await within(PATIENCE_MS, earlier(store)).then(
    (words) => told.push(...(words === null ? [] : [words])),
    (fault: unknown) => told.push(untaken(fault)),
  );
  return { kept: await find(store, mine, told), told };
}

/** Names of the databases of releases before this store. */
const EARLIER: readonly (string | undefined)[] = ["trimwright", "trimwright-box"];

/** Takes over what such a release has left. Its code loads only where one of its databases may be there. */
async function earlier(store: BaitStore): Promise<Saying | null> {
  const { databases } = indexedDB as Partial<IDBFactory>;
  const all = await databases?.call(indexedDB);
  if (all !== undefined && !all.some(({ name }) => EARLIER.includes(name))) return null;
  const { takeEarlier } = await import("./earlier");
  return takeEarlier(store);
}

async function find(store: BaitStore, mine: string | null, told: Saying[]): Promise<KeptBait | null> {
  for (const id of [mine, await store.last()]) {
    const read = id === null ? null : await store.read(id);
    if (read === null) continue;
    if (read.ok && read.bait.binned !== null) continue;
    if (read.ok) {
      told.push(
        ...read.notes.map(
          (note): Saying =>
            (language) =>
              FILE.in(language).of(note),
        ),
      );
      return read.bait;
    }
    const { why } = read;
    told.push((language) => FIGURES.in(language).tell("kept.notAgain", { why: FILE.in(language).of(why) }));
  }
  return newest(store);
}

/** The own bait that was changed last and is not in the bin. */
async function newest(store: BaitStore): Promise<KeptBait | null> {
  const heads = (await store.list()).flatMap((one) =>
    one.ok && one.head.own && one.head.binned === null ? [one.head] : [],
  );
  heads.sort((a, b) => b.changed - a.changed);
  const [first] = heads;
  const read = first === undefined ? null : await store.read(first.id);
  return read?.ok === true ? read.bait : null;
}

/** One after the other. */
const together =
  (all: readonly Saying[]): Saying =>
  (language) =>
    all.map((one) => one(language)).join(" ");

/** What two tabs have entered in one place beside a bait. */
export const clashWords = (clashes: readonly Clash[]): Saying =>
  together(
    clashes.map(({ stands, other }): Saying => {
      const places = { stands: plain(stands), other: plain(other) };
      return (language) => FIGURES.in(language).tell("kept.clash", places);
    }),
  );

const plain = (value: unknown): string => (typeof value === "string" ? value : JSON.stringify(value));

const untaken =
  (fault: unknown): Saying =>
  (language) =>
    FIGURES.in(language).tell("kept.untaken", { why: FILE.in(language).of(faultText(fault)) });

const unkept =
  (fault: unknown): Saying =>
  (language) =>
    FIGURES.in(language).tell("kept.never", { why: FILE.in(language).of(faultText(fault)) });

const faultText = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));
