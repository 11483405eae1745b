import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { emptyBox } from "../../../src/document";
import type { BoxThing, KeptBait } from "../../../src/document";
import { BaitStore, MemoryBase } from "../../../src/ui/kept";
import type { Tabs } from "../../../src/ui/kept";
import { aText } from "../../../src/ui/state/readers";
import { BoxState } from "../../../src/ui/state/box.svelte";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { scenario } from "../ui-app/scenario";
import { kept, page } from "./page";

describe("the open bait", () => {
  it("is kept as it is where an edit was taken back before it was written", async () => {
    const one = page(new BaitStore(new MemoryBase()), null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    one.set("temperature_C", 10);
    // As the page has it, once it has seen the edit.
    one.baits.safe = false;
    one.work.undo();
    await one.baits.flush();
    expect(one.baits.safe).toBe(true);
  });

  it("is kept as it is where an edit was taken back while it was being written", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    one.set("temperature_C", 10);
    const writing = one.baits.flush();
    one.work.undo();
    await writing;
    await vi.waitFor(() => expect(one.baits.safe).toBe(true));
    expect((await kept(store, one.baits.id)).scenario.water.temperature_C).toBe(9);
  });

  it("comes back with its undo, and with what a hand had entered", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    one.set("salinity_g_kg", 30);
    one.work.undo();
    one.hand.times = [1.2, 1.3];
    await one.baits.flush();
    const again = page(store, await kept(store, one.baits.id));
    expect(again.work.scenario).toEqual(one.work.scenario);
    expect(again.hand.times).toEqual([1.2, 1.3]);
    again.work.redo();
    expect(again.work.scenario.water).toMatchObject({ temperature_C: 9, salinity_g_kg: 30 });
    again.work.undo();
    again.work.undo();
    expect(again.work.text()).toBe(new Workspace(scenario()).text());
    expect(again.work.changed).toBe(false);
  });

  it("leaves no record while nobody has touched it, and none of a ready bait that was only looked at", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    await one.baits.flush();
    expect(await store.list()).toEqual([]);
    one.baits.start(scenario((plain) => (plain.name = "An example")));
    await one.baits.flush();
    expect(await store.list()).toMatchObject([{ ok: true, head: { own: false } }]);
    one.baits.start(scenario());
    one.set("temperature_C", 9);
    await one.baits.flush();
    await vi.waitFor(async () =>
      expect(await store.list()).toMatchObject([{ ok: true, head: { own: true } }]),
    );
  });

  it("stays kept when another is opened in its place, the last edit included", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    const { id } = one.baits;
    const writing = one.baits.flush();
    // Another edit while the first is being written, then a new bait at once.
    one.set("salinity_g_kg", 12);
    one.baits.start(scenario((plain) => (plain.name = "Next")));
    await writing;
    await vi.waitFor(async () => expect((await kept(store, id)).scenario.water.salinity_g_kg).toBe(12));
    expect(one.work.scenario.name).toBe("Next");
    expect(await one.baits.open(id)).toBeNull();
    expect(one.work.scenario.water).toMatchObject({ temperature_C: 9, salinity_g_kg: 12 });
    expect(one.work.undoLabel).toBe("set salinity_g_kg");
  });

  it("leaves a last word that the next page takes up, and a second time it changes nothing", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    one.set("temperature_C", 10);
    one.baits.leave();
    const [word] = [...one.slips.held.values()];
    const { base, mine } = JSON.parse(word ?? "") as { base: KeptBait; mine: KeptBait };
    for (let i = 0; i < 2; i++) {
      await store.write(base, mine);
      expect((await kept(store, one.baits.id)).scenario.water.temperature_C).toBe(10);
    }
    expect(await store.list()).toHaveLength(1);
    await vi.waitFor(() => expect(one.slips.held.size).toBe(0));
  });

  it("says what stands in the way where nothing can be kept, and goes on", async () => {
    const full = Object.assign(new Error("full"), { name: "QuotaExceededError" });
    const base = new MemoryBase();
    const run = base.run.bind(base);
    const broken = vi.spyOn(base, "run").mockRejectedValue(full);
    const one = page(new BaitStore(base), null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    expect(one.baits.trouble).toMatch(/no room left.+Empty the bin/);
    expect(one.baits.wouldBeLost).toBe(true);
    broken.mockImplementation(run);
    one.set("temperature_C", 10);
    await one.baits.flush();
    expect((await kept(one.baits.store, one.baits.id)).scenario.water.temperature_C).toBe(10);
  });
});

describe("a database that hangs", () => {
  it("is told within seconds, and the word goes when it answers after all", async () => {
    vi.useFakeTimers();
    try {
      const base = new MemoryBase();
      const run = base.run.bind(base);
      let answer = (): void => undefined;
      vi.spyOn(base, "run").mockImplementation(async (mode, work) => {
        await new Promise<void>((then) => (answer = then));
        return run(mode, work);
      });
      const one = page(new BaitStore(base), null);
      one.set("temperature_C", 9);
      const writing = one.baits.flush();
      await vi.advanceTimersByTimeAsync(3000);
      expect(one.baits.trouble).toBeNull();
      await vi.advanceTimersByTimeAsync(2000);
      expect(one.baits.trouble).toMatch(/has not answered for some seconds.+Save the bait to a file/);
      vi.mocked(base.run).mockImplementation(run);
      // The store in memory does not last, so its own word stays there: only the hanging is looked at.
      one.baits.setTrouble(null);
      answer();
      await writing;
      await vi.advanceTimersByTimeAsync(10_000);
      expect(one.baits.trouble).toBeNull();
      expect((await kept(one.baits.store, one.baits.id)).scenario.water.temperature_C).toBe(9);
    } finally {
      vi.useRealTimers();
    }
  });
});

describe("two tabs on one bait", () => {
  it("tell each other what they entered in one place beside it: one stands, the other is said", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    const two = page(store, await kept(store, one.baits.id));
    const fields = [one, two].map(({ beside }) => {
      const field = { text: "" };
      beside.keep("field", "work", field, { text: aText });
      return field;
    });
    const [first, second] = fields as [{ text: string }, { text: string }];
    first.text = "5.2";
    await one.baits.flush();
    second.text = "5.4";
    await two.baits.flush();
    expect(two.baits.told).toBe("Two tabs entered ‘5.4’ and ‘5.2’ in one place: ‘5.4’ stands.");
    await one.baits.look();
    expect(first.text).toBe("5.4");
  });

  it("put edits of different places together, and undo takes back one's own", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    const two = page(store, await kept(store, one.baits.id));
    one.set("temperature_C", 11);
    one.hand.times = [1];
    two.set("salinity_g_kg", 30);
    two.hand.times = [2];
    await one.baits.flush();
    await two.baits.flush();
    await one.baits.look();
    for (const { work, hand } of [one, two]) {
      expect(work.scenario.water).toMatchObject({ temperature_C: 11, salinity_g_kg: 30 });
      expect([...hand.times].sort()).toEqual([1, 2]);
    }
    expect(await store.list()).toHaveLength(1);
    two.work.undo();
    two.work.undo();
    expect(two.work.scenario.water).toMatchObject({ temperature_C: 9, salinity_g_kg: 0 });
  });

  it("part where they changed the same place: both are kept, and it is told", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = page(store, null);
    one.set("temperature_C", 9);
    await one.baits.flush();
    const two = page(store, await kept(store, one.baits.id));
    one.set("temperature_C", 11);
    two.set("temperature_C", 12);
    await one.baits.flush();
    await two.baits.flush();
    await two.baits.flush();
    expect(two.baits.told).toMatch(/Both are kept/);
    expect(two.baits.id).not.toBe(one.baits.id);
    expect((await kept(store, one.baits.id)).scenario.water.temperature_C).toBe(11);
    const mine = await kept(store, two.baits.id);
    expect([mine.scenario.water.temperature_C, mine.scenario.name]).toEqual([12, `${scenario().name} (2)`]);
  });
});

describe("the box in two tabs", () => {
  const ring = (name: string, count = 1): BoxThing => ({ kind: "ring", name, count, mass_g: 0.1 });
  const silent = { tell: () => undefined, listen: () => () => undefined } as unknown as Tabs;
  const open = async (store: BaitStore): Promise<BoxState> => {
    const box = new BoxState(store, silent);
    await vi.waitFor(() => expect(box.ready).toBe(true), { interval: 1 });
    return box;
  };
  const names = (box: BoxState): readonly string[] => box.now.things.map((one) => one.name).sort();

  it("a stale tab's one tick leaves what the other has put in", async () => {
    const store = new BaitStore(new MemoryBase());
    const [one, stale] = [await open(store), await open(store)];
    for (let i = 0; i < 11; i++) one.putThing(null, ring(`ring ${i}`));
    await one.look();
    stale.put({ ...stale.now, leadAllowed: false });
    await stale.look();
    expect(stale.now.things).toHaveLength(11);
    await one.look();
    expect([one.now.things.length, one.now.leadAllowed]).toEqual([11, false]);
    // Undo takes back the tick alone.
    stale.undo();
    await stale.look();
    expect([stale.now.things.length, stale.now.leadAllowed]).toEqual([11, undefined]);
  });

  it("keeps both of a thing that two tabs changed, and says so", async () => {
    const store = new BaitStore(new MemoryBase());
    const one = await open(store);
    one.put({ ...emptyBox(), things: [ring("small"), ring("large")] });
    await one.look();
    const two = await open(store);
    one.putThing(0, ring("small", 5));
    two.putThing(0, ring("small", 7));
    two.removeThing(1);
    await one.look();
    await two.look();
    await one.look();
    for (const box of [one, two]) expect(names(box)).toEqual(["small", "small (2)"]);
    expect(two.now.things.map((thing) => thing.count).sort()).toEqual([5, 7]);
    for (const box of [one, two]) expect(box.told).toMatch(/Two tabs changed ‘small’ at the same time/);
    // Who opens the page later reads why a thing stands there twice, too.
    expect((await open(store)).told).toMatch(/Two tabs changed ‘small’/);
  });

  it("says both values where two tabs changed one of the box itself", async () => {
    const store = new BaitStore(new MemoryBase());
    const [one, two] = [await open(store), await open(store)];
    one.put({ ...emptyBox(), name: "Winter" });
    two.put({ ...emptyBox(), name: "Summer" });
    await one.look();
    await two.look();
    expect(two.now.name).toBe("Summer");
    expect(two.told).toBe(`Two tabs changed the box's name: "Summer" stands, the other had "Winter".`);
  });

  it("leaves one that cannot be read as it is until it is told to begin anew, and offers its text", async () => {
    const base = new MemoryBase();
    const spoiled = { revision: 3, text: '{"format":"trimwright/box","version":99}' };
    await base.run("readwrite", (shelf) => shelf.put("box", "box", spoiled));
    const box = await open(new BaitStore(base));
    expect([box.damaged, box.trouble]).toEqual([spoiled.text, expect.stringMatching(/is not readable/)]);
    box.putThing(null, ring("new"));
    await box.look();
    expect(await base.run("readonly", (shelf) => shelf.get("box", "box"))).toEqual(spoiled);
    await box.beginAnew();
    expect(box.damaged).toBeNull();
    expect(names(await open(new BaitStore(base)))).toEqual(["new"]);
  });

  it("loses no thing in any order of changes (property)", async () => {
    const action = fc.record({ tab: fc.nat(1), look: fc.boolean() });
    await fc.assert(
      fc.asyncProperty(fc.array(action, { maxLength: 20 }), async (actions) => {
        const store = new BaitStore(new MemoryBase());
        const boxes = [await open(store), await open(store)];
        const put: string[] = [];
        for (const [i, { tab, look }] of actions.entries()) {
          const box = boxes[tab] as BoxState;
          box.putThing(null, ring(`ring ${i}`));
          put.push(`ring ${i}`);
          if (look) await box.look();
        }
        for (const box of [...boxes, ...boxes]) await box.look();
        for (const box of boxes) expect(names(box)).toEqual(put.sort());
      }),
      { seed: 32, numRuns: 60 },
    );
  });
});
