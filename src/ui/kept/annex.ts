import { PHOTO_PLACES, readVersion } from "../../document";
import type { BaitVersion, PhotoPlace } from "../../document";
import { MemoryRooms, MORE_ROOMS } from "./base";
import type { Base, MoreRoom } from "./base";
import { openMore } from "./database";
import { freshId } from "./store";

/** A state of a bait as it is kept. */
export interface KeptVersion extends BaitVersion {
  /** Its key, which is its alone. */
  readonly key: string;
}

/** A photo as it is kept: JPEG, made small by this page. */
export interface KeptPhoto {
  readonly place: PhotoPlace;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** What comes along with one bait. */
export interface Annexed {
  readonly bait: string;
  readonly versions: readonly BaitVersion[];
  readonly photos: readonly KeptPhoto[];
}

/** Bounds for one bait. */
const MOST_VERSIONS = 200;
const LARGEST_PHOTO = 1_500_000;

/** What belongs to baits and is seldom asked for: their states under names, their photos, the files they are saved in. */
export class Annex {
  readonly #base: Base<MoreRoom>;

  constructor(base: Base<MoreRoom>) {
    this.#base = base;
  }

  /** The states kept of a bait, the newest first. What cannot be read is left out, and stays kept. */
  async versions(bait: string): Promise<readonly KeptVersion[]> {
    const all = await this.#base.run("readonly", (shelf) => shelf.all("versions", `${bait}/`));
    return all
      .flatMap(([key, value]) => {
        const read = readVersion(value);
        return read === null ? [] : [{ ...read, key }];
      })
      .sort((a, b) => b.made - a.made);
  }

  /** Keeps states of a bait; false where there are too many. */
  addVersions(bait: string, versions: readonly BaitVersion[]): Promise<boolean> {
    return this.#base.run("readwrite", async (shelf) => {
      const held = await shelf.all("versions", `${bait}/`);
      if (held.length + versions.length > MOST_VERSIONS) return false;
      for (const one of versions) await shelf.put("versions", `${bait}/${freshId()}`, one);
      return true;
    });
  }

  /**
   * Keeps what came along with baits that nobody has kept yet, all in one transaction. Gives the baits of photos that were none,
   * or were too large: these photos are left out.
   */
  async addAll(all: readonly Annexed[]): Promise<readonly string[]> {
    const unfit: string[] = [];
    await this.#base.run("readwrite", async (shelf) => {
      const writes: Promise<void>[] = [];
      for (const { bait, versions, photos } of all) {
        for (const one of versions.slice(0, MOST_VERSIONS))
          writes.push(shelf.put("versions", `${bait}/${freshId()}`, one));
        for (const { place, bytes } of photos)
          if (isPhoto(bytes)) writes.push(shelf.put("photos", `${bait}/${place}`, bytes));
          else unfit.push(bait);
      }
      await Promise.all(writes);
    });
    return unfit;
  }

  async removeVersion(key: string): Promise<void> {
    await this.#base.run("readwrite", (shelf) => shelf.remove("versions", key));
  }

  async photos(bait: string): Promise<readonly KeptPhoto[]> {
    const all = await this.#base.run("readonly", (shelf) => shelf.all("photos", `${bait}/`));
    return all.flatMap(([key, value]) => {
      const place = PHOTO_PLACES.find((one) => key === `${bait}/${one}`);
      return place !== undefined && isPhoto(value) ? [{ place, bytes: value }] : [];
    });
  }

  /** Keeps a photo in the place of an earlier one; false where it is none, or is too large. */
  async putPhoto(bait: string, { place, bytes }: KeptPhoto): Promise<boolean> {
    if (!isPhoto(bytes)) return false;
    await this.#base.run("readwrite", (shelf) => shelf.put("photos", `${bait}/${place}`, bytes));
    return true;
  }

  async removePhoto(bait: string, place: PhotoPlace): Promise<void> {
    await this.#base.run("readwrite", (shelf) => shelf.remove("photos", `${bait}/${place}`));
  }

  /** The file on the disk that a bait is saved in; null where there is none. */
  async file(bait: string): Promise<FileSystemFileHandle | null> {
    const held = await this.#base.run("readonly", (shelf) => shelf.get("files", bait));
    return typeof FileSystemFileHandle !== "undefined" && held instanceof FileSystemFileHandle ? held : null;
  }

  async setFile(bait: string, file: FileSystemFileHandle): Promise<void> {
    await this.#base.run("readwrite", (shelf) => shelf.put("files", bait, file));
  }

  /** Forgets all that belongs to baits. */
  async forget(baits: readonly string[]): Promise<void> {
    await this.#base.run("readwrite", async (shelf) => {
      for (const bait of baits) {
        await shelf.remove("files", bait);
        for (const room of ["versions", "photos"] as const)
          for (const [key] of await shelf.all(room, `${bait}/`)) await shelf.remove(room, key);
      }
    });
  }
}

/** The bytes of a JPEG (its first two are FF D8) within the bound. */
const isPhoto = (value: unknown): value is Uint8Array<ArrayBuffer> =>
  value instanceof Uint8Array &&
  value.length > 4 &&
  value.length <= LARGEST_PHOTO &&
  value[0] === 0xff &&
  value[1] === 0xd8;

/** Opens it; where the browser gives no database, it ends with the page. */
export async function openAnnex(): Promise<Annex> {
  try {
    return new Annex(await openMore());
  } catch {
    return new Annex(new MemoryRooms(MORE_ROOMS));
  }
}
