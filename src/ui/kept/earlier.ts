import { openDB, deleteDB } from "idb";
import type { IDBPDatabase } from "idb";
import { fingerprint, NO_TRAIL, parseBox, parseScenario } from "../../document";
import type { Saying } from "../words/base";
import { KEEPING } from "../words/keeping";
import type { BaitStore } from "./store";

/** The databases of releases before this store: unsaved drafts, one an open page, and the box as the text of its file. */
const DRAFTS = { name: "trimwright", room: "drafts" } as const;
const BOX = { name: "trimwright-box", room: "box" } as const;
/** A page of such a release holds a lock whose name begins so, with the key of its draft behind. */
const LIVING = "trimwright/page/";

/** A draft as those releases kept it. */
interface Draft {
  readonly name: string;
  readonly text: string;
  readonly kept: number;
}

/**
 * Takes over what an earlier release has kept in this browser, and removes it there once it stands in the store. What
 * a page of such a release still works on is left to it. Gives what a person should know.
 */
export async function takeEarlier(store: BaitStore): Promise<Saying | null> {
  const living = await livingPages();
  const baits = await emptied(DRAFTS, living, (key, value) => takeDraft(store, key, value));
  const boxes = await emptied(BOX, living, (_, value) => takeBox(store, value));
  const count = (of: readonly boolean[], read: boolean): number => of.filter((one) => one === read).length;
  const [read, unread] = [count(baits, true), count([...baits, ...boxes], false)];
  const box = count(boxes, true) > 0;
  if (read === 0 && unread === 0 && !box) return null;
  return (language) => {
    const words = KEEPING.in(language);
    const what = [
      ...(read > 0 ? [words.tell("earlier.baits", { count: read })] : []),
      ...(box ? [words.tell("earlier.box")] : []),
      ...(unread > 0 ? [words.tell("earlier.unread")] : []),
    ];
    return words.tell("earlier.taken", { what: what.join("; ") });
  };
}

/** Keys of drafts whose page still lives; null where the browser cannot say. */
async function livingPages(): Promise<ReadonlySet<string> | null> {
  // Missing where the page is no secure context.
  const { locks } = navigator as { readonly locks?: LockManager };
  const { held = [] } = (await locks?.query()) ?? {};
  return locks === undefined ? null : new Set(held.flatMap(({ name }) => name?.split(LIVING)[1] ?? []));
}

/** Takes each entry of an old database, then lets it go there. Gives for each whether it could be read. */
async function emptied(
  { name, room }: { readonly name: string; readonly room: string },
  living: ReadonlySet<string> | null,
  take: (key: string, value: unknown) => Promise<boolean>,
): Promise<readonly boolean[]> {
  const db = await opened(name);
  if (db === null) return [];
  const taken: boolean[] = [];
  try {
    if (!db.objectStoreNames.contains(room)) return [];
    // Both kept nothing but texts as keys.
    for (const key of (await db.getAllKeys(room)).filter((one) => typeof one === "string")) {
      if (living?.has(key) === true) continue;
      const value: unknown = await db.get(room, key);
      taken.push(await take(key, value));
      const transaction = db.transaction(room, "readwrite");
      // A page that has written anew meanwhile keeps what it wrote.
      const now: unknown = await transaction.store.get(key);
      if (JSON.stringify(now) === JSON.stringify(value)) await transaction.store.delete(key);
      await transaction.done;
    }
  } finally {
    db.close();
  }
  // A page that has it open could still write: what it wrote would go with the database.
  if (living?.size === 0) await deleteDB(name);
  return taken;
}

/** A database that is there; null where there is none. Looking makes none. */
async function opened(name: string): Promise<IDBPDatabase | null> {
  const { databases } = indexedDB as Partial<IDBFactory>;
  if (databases !== undefined) {
    const all = await databases.call(indexedDB);
    if (!all.some((one) => one.name === name)) return null;
  }
  const found = { none: false };
  try {
    return await openDB(name, undefined, {
      upgrade: (_db, _old, _new, transaction) => {
        found.none = true;
        transaction.abort();
      },
      // A newer release on another page wants to remove it: let it.
      blocking: (_now, _wanted, event) => (event.target as IDBDatabase).close(),
    });
  } catch (fault) {
    if (found.none) return null;
    throw fault;
  }
}

async function takeDraft(store: BaitStore, key: string, value: unknown): Promise<boolean> {
  // The same draft has the same name each time: taken twice, by two pages or after a crash, it is kept once.
  const id = `earlier-${fingerprint(key + JSON.stringify(value))}`;
  const draft = readDraft(value);
  const parsed = draft === null ? null : parseScenario(draft.text);
  if (draft === null || parsed?.ok !== true) {
    await store.putUnreadable(id, value);
    return false;
  }
  if ((await store.read(id)) !== null) return true;
  await store.write(null, {
    id,
    revision: 0,
    scenario: parsed.scenario,
    trail: NO_TRAIL,
    beside: {},
    own: true,
    made: draft.kept,
    changed: draft.kept,
    binned: null,
    inFile: null,
  });
  return true;
}

async function takeBox(store: BaitStore, value: unknown): Promise<boolean> {
  const parsed = typeof value === "string" ? parseBox(value) : null;
  if (parsed?.ok === true) {
    await store.writeBox(null, parsed.box);
    return true;
  }
  await store.putUnreadable(`earlier-box-${fingerprint(JSON.stringify(value))}`, value);
  return false;
}

function readDraft(value: unknown): Draft | null {
  if (typeof value !== "object" || value === null) return null;
  const { name, text, kept } = value as Record<string, unknown>;
  return typeof name === "string" && typeof text === "string" && typeof kept === "number"
    ? { name, text, kept }
    : null;
}
