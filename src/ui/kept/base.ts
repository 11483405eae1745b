/**
 * The rooms of the browser's database: list entries, what belongs to each beside, the box, where one was last, and pictures
 * that lie under drawings.
 */
export const ROOMS = ["heads", "sides", "box", "marks", "pictures"] as const;
export type Room = (typeof ROOMS)[number];

/**
 * Rooms of a second database: states of baits under names, photos, and the files that baits are saved in. They stand apart,
 * so that a page of an earlier release, which may still be open, goes on with the first as it is.
 */
export const MORE_ROOMS = ["versions", "photos", "files"] as const;
export type MoreRoom = (typeof MORE_ROOMS)[number];

/** What can be done within one transaction. Nothing else happens to the rooms meanwhile. */
export interface Shelf<R extends string = Room> {
  get(room: R, key: string): Promise<unknown>;
  /** All entries; where `under` is given, those whose key begins so. */
  all(room: R, under?: string): Promise<readonly (readonly [key: string, value: unknown])[]>;
  put(room: R, key: string, value: unknown): Promise<void>;
  remove(room: R, key: string): Promise<void>;
}

/** A place that keeps values under keys, in transactions: all of one takes effect, or nothing of it. */
export interface Base<R extends string = Room> {
  /** False: it ends with the page. */
  readonly lasting: boolean;
  run<T>(mode: "readonly" | "readwrite", work: (shelf: Shelf<R>) => Promise<T>): Promise<T>;
}

/** Rooms that end with the page, where the browser gives no database. Tests use them too. */
export class MemoryRooms<R extends string> implements Base<R> {
  readonly lasting = false;
  #rooms: Map<R, Map<string, unknown>>;
  #last: Promise<unknown> = Promise.resolve();

  constructor(rooms: readonly R[]) {
    this.#rooms = new Map(rooms.map((room) => [room, new Map<string, unknown>()]));
  }

  run<T>(_mode: "readonly" | "readwrite", work: (shelf: Shelf<R>) => Promise<T>): Promise<T> {
    // One after the other; a refused one keeps none of the others waiting.
    const turn = this.#last.then(() => this.#alone(work));
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  async #alone<T>(work: (shelf: Shelf<R>) => Promise<T>): Promise<T> {
    const rooms = new Map([...this.#rooms].map(([room, held]) => [room, new Map(held)]));
    const room = (name: R): Map<string, unknown> => {
      const found = rooms.get(name);
      if (found === undefined) throw new Error(`There is no room ${name}.`);
      return found;
    };
    // A copy each way, as a database gives it: nobody shares an object with what is kept.
    const out = await work({
      get: (name, key) => Promise.resolve(structuredClone(room(name).get(key))),
      all: (name, under = "") =>
        Promise.resolve(structuredClone([...room(name)].filter(([key]) => key.startsWith(under)))),
      put: (name, key, value) => {
        room(name).set(key, structuredClone(value));
        return Promise.resolve();
      },
      remove: (name, key) => {
        room(name).delete(key);
        return Promise.resolve();
      },
    });
    this.#rooms = rooms;
    return out;
  }
}

export class MemoryBase extends MemoryRooms<Room> {
  constructor() {
    super(ROOMS);
  }
}
