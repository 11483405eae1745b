import { describe, expect, it } from "vitest";
import { BaitStore, MemoryBase } from "../../../src/ui/kept";
import { aText } from "../../../src/ui/state/readers";
import { page } from "./page";

const DAY_MS = 24 * 3600 * 1000;

async function baitOver(store: BaitStore, picture: string) {
  const one = page(store, null);
  const trace = { side: "" };
  one.beside.keep("trace", "work", trace, { side: aText });
  trace.side = picture;
  await one.baits.flush(true);
  return one;
}

describe("a picture under a drawing", () => {
  it("stays while a bait lies over it, also over night, and is removed with the last one", async () => {
    const store = new BaitStore(new MemoryBase());
    const picture = { bytes: Uint8Array.of(1, 2, 3), type: "image/jpeg", width: 3, height: 1 };
    await store.putPicture("one", picture, 0);
    const [first, second] = [await baitOver(store, "one"), await baitOver(store, "one")];
    await store.tidy(30 * DAY_MS);
    expect(await store.picture("one")).toMatchObject(picture);
    await store.removePicture("one", first.baits.id);
    expect(await store.picture("one")).toBeDefined();
    const base = await read(store, second.baits.id);
    await store.write(base, { ...base, beside: {} });
    await store.removePicture("one", first.baits.id);
    expect(await store.picture("one")).toBeUndefined();
  });

  it("that no bait lies over is forgotten after days, not while a bait may still be being written", async () => {
    const store = new BaitStore(new MemoryBase());
    await store.putPicture("left", { bytes: Uint8Array.of(1) }, 0);
    await store.tidy(DAY_MS);
    expect(await store.picture("left")).toBeDefined();
    await store.tidy(3 * DAY_MS);
    expect(await store.picture("left")).toBeUndefined();
  });
});

async function read(store: BaitStore, id: string) {
  const found = await store.read(id);
  if (found?.ok !== true) throw new Error(`no bait ${id}`);
  return found.bait;
}
