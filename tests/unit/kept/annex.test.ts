import { describe, expect, it } from "vitest";
import { joinBoxes, settle } from "../../../src/document";
import { emptyBox } from "../../../src/document";
import type { BoxThing, KeptBait } from "../../../src/document";
import { Annex, BaitStore, MemoryBase } from "../../../src/ui/kept";
import { MemoryRooms, MORE_ROOMS } from "../../../src/ui/kept/base";
import { scenario } from "../ui-app/scenario";
import { kept, page } from "./page";

const annex = (): Annex => new Annex(new MemoryRooms(MORE_ROOMS));
const version = (name: string, made: number) => ({ name, made, scenario: scenario() });

describe("what belongs to a bait", () => {
  it("gives the versions of one bait alone, the newest first, and forgets those of one alone", async () => {
    const one = annex();
    await one.addVersions("a", [version("first", 1), version("second", 2)]);
    await one.addVersions("ab", [version("another bait's", 3)]);
    expect((await one.versions("a")).map(({ name }) => name)).toEqual(["second", "first"]);
    await one.forget(["a"]);
    expect(await one.versions("a")).toEqual([]);
    expect(await one.versions("ab")).toHaveLength(1);
  });

  it("keeps at most 200 versions, and says so", async () => {
    const one = annex();
    const many = Array.from({ length: 200 }, (_, i) => version(`${i}`, i));
    expect(await one.addVersions("a", many)).toBe(true);
    expect(await one.addVersions("a", [version("one more", 1000)])).toBe(false);
    expect(await one.versions("a")).toHaveLength(200);
  });

  it("keeps a photo that begins as a JPEG does and is not too large, and nothing else", async () => {
    const one = annex();
    const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 1]);
    expect(await one.putPhoto("a", { place: "design", bytes: jpeg })).toBe(true);
    const script = new TextEncoder().encode("<svg onload='x'/>");
    expect(await one.putPhoto("a", { place: "built", bytes: script })).toBe(false);
    const large = new Uint8Array(2_000_000);
    large.set(jpeg);
    expect(await one.putPhoto("a", { place: "built", bytes: large })).toBe(false);
    expect(await one.photos("a")).toEqual([{ place: "design", bytes: jpeg }]);
  });
});

describe("what came along with many baits", () => {
  it("is kept all at once; a photo that is none is left out and told", async () => {
    const one = annex();
    const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 1]);
    const unfit = await one.addAll([
      { bait: "a", versions: [version("first", 1)], photos: [{ place: "bait", bytes: jpeg }] },
      { bait: "b", versions: [], photos: [{ place: "built", bytes: new Uint8Array(0) }] },
    ]);
    expect(unfit).toEqual(["b"]);
    expect((await one.versions("a")).map(({ name }) => name)).toEqual(["first"]);
    expect(await one.photos("a")).toEqual([{ place: "bait", bytes: jpeg }]);
    expect(await one.photos("b")).toEqual([]);
  });
});

describe("tags", () => {
  it("stay with the bait over its edits, and two tabs' tags stand together", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    const first = await kept(store, one.baits.id);
    await store.write(first, { ...first, tags: ["pond"] });
    one.set("temperature_C", 10);
    await one.baits.flush();
    expect(await kept(store, one.baits.id)).toMatchObject({ tags: ["pond"] });

    const base: KeptBait = { ...first, tags: ["pond", "old"] };
    const settled = settle(
      base,
      { ...base, tags: ["pond", "mine"] },
      { ...base, revision: base.revision + 1, tags: ["pond", "old", "theirs"] },
      () => "x",
    );
    expect([...(settled.bait.tags ?? [])].sort()).toEqual(["mine", "pond", "theirs"]);
  });
});

describe("a box that comes along", () => {
  const shot = (name: string, diameter_mm: number): BoxThing => ({
    kind: "shot",
    name,
    count: 3,
    material: "tungsten",
    diameter_mm,
  });
  it("stands beside one's own: the same once, what only the name has in common under another", () => {
    const mine = { ...emptyBox(), drills_mm: [3], things: [shot("ball 3", 3), shot("ball 4", 4)] };
    const other = { ...emptyBox(), drills_mm: [3, 5], things: [shot("ball 3", 3), shot("ball 4", 4.5)] };
    const joined = joinBoxes(mine, other);
    expect(joined.things.map(({ name }) => name)).toEqual(["ball 3", "ball 4", "ball 4 (2)"]);
    expect(joined.drills_mm).toEqual([3, 5]);
    expect(mine.things).toHaveLength(2);
  });
});
