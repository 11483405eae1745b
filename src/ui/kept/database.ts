import { openDB } from "idb";
import type { IDBPDatabase } from "idb";
import { MORE_ROOMS, ROOMS } from "./base";
import type { Base, MoreRoom, Shelf } from "./base";

const NAME = "trimwright-kept";
/** Rises with each new room. */
const VERSION = 2;
const MORE = "trimwright-more";
const MORE_VERSION = 1;

/** How long the database may take to open: a browser that hangs here must not keep the page from showing. */
const PATIENCE_MS = 2500;
/** How long reading may take. Then the page says so, and what is kept stays as it is. */
const READING_MS = 7000;

/** The browser's database. Rejects where there is none, or where it may not be used. */
export const openDatabase = (): Promise<Base> => opened(new Database(NAME, VERSION, ROOMS));

/** The second one, of what belongs to baits and is seldom asked for. */
export const openMore = (): Promise<Base<MoreRoom>> => opened(new Database(MORE, MORE_VERSION, MORE_ROOMS));

async function opened<R extends string>(database: Database<R>): Promise<Base<R>> {
  // Where it is forbidden, even looking at the name throws in some browsers.
  if (typeof indexedDB === "undefined") throw new Error("this browser has no database");
  await within(PATIENCE_MS, database.open());
  return database;
}

/** The last key that begins with a text, in the order of keys. */
const LAST_KEY = "\uffff";

class Database<R extends string> implements Base<R> {
  readonly lasting = true;
  readonly #name: string;
  readonly #version: number;
  readonly #rooms: readonly R[];
  #db: IDBPDatabase | null = null;

  constructor(name: string, version: number, rooms: readonly R[]) {
    this.#name = name;
    this.#version = version;
    this.#rooms = rooms;
  }

  /** Opens it again where the browser has closed it, which it may do at any time. */
  async open(): Promise<IDBPDatabase> {
    this.#db ??= await openDB(this.#name, this.#version, {
      upgrade: (db) => {
        for (const room of this.#rooms) if (!db.objectStoreNames.contains(room)) db.createObjectStore(room);
      },
      // A page of a newer release waits for this one: let it through.
      blocking: () => this.#close(),
      terminated: () => this.#close(),
    });
    return this.#db;
  }

  async run<T>(mode: "readonly" | "readwrite", work: (shelf: Shelf<R>) => Promise<T>): Promise<T> {
    const db = await this.open();
    const transaction = db.transaction(this.#rooms, mode);
    const store = (room: R) => transaction.objectStore(room);
    const done = transaction.done;
    // Its failure is told by what is awaited below.
    done.catch(() => undefined);
    try {
      const working = work({
        get: (room, key) => store(room).get(key) as Promise<unknown>,
        all: async (room, under = "") => {
          const range = under === "" ? undefined : IDBKeyRange.bound(under, under + LAST_KEY);
          const [keys, values] = await Promise.all([
            store(room).getAllKeys(range),
            store(room).getAll(range),
          ]);
          return keys.flatMap((key, i) =>
            typeof key === "string" ? [[key, values[i] as unknown] as const] : [],
          );
        },
        // A reading transaction has no such methods.
        put: async (room, key, value) => void (await store(room).put?.(value, key)),
        remove: async (room, key) => store(room).delete?.(key),
      });
      // A write may still take effect however long it takes: giving it up would part a bait from itself.
      const out = await (mode === "readonly" ? within(READING_MS, working) : working);
      await done;
      return out;
    } catch (fault) {
      try {
        transaction.abort();
      } catch {
        // It has ended by itself.
      }
      throw fault;
    }
  }

  #close(): void {
    this.#db?.close();
    this.#db = null;
  }
}

/** The outcome of some work, or a refusal where it takes longer. */
export function within<T>(ms: number, work: Promise<T>): Promise<T> {
  return new Promise((settle, fail) => {
    const timer = setTimeout(() => fail(new Error("the browser's database does not answer")), ms);
    work.then(settle, fail).finally(() => clearTimeout(timer));
  });
}
