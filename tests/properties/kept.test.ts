import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BaitStore, MemoryBase } from "../../src/ui/kept";
import { kept, page } from "../unit/kept/page";

describe("tabs on one bait", () => {
  /** What a hand does in one of three tabs; each edit sets a value that no other edit sets. */
  const action = fc.record({
    tab: fc.nat(2),
    what: fc.constantFrom(
      "temperature_C",
      "salinity_g_kg",
      "depth_m",
      "time",
      "write",
      "write",
      "look",
      "undo",
    ),
  });

  it("lose nothing in any order of edits and writes (property)", async () => {
    let parted = 0;
    let merged = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(action, { minLength: 4, maxLength: 24 }), async (actions) => {
        const store = new BaitStore(new MemoryBase());
        const first = page(store, null);
        first.set("temperature_C", 1);
        await first.baits.flush();
        const pages = [
          first,
          page(store, await kept(store, first.baits.id)),
          page(store, await kept(store, first.baits.id)),
        ];
        let value = 1;
        for (const { tab, what } of actions) {
          const { baits, work, hand, set } = pages[tab] as (typeof pages)[number];
          value += 0.25;
          if (what === "write") void baits.flush();
          else if (what === "look") void baits.look();
          else if (what === "undo") work.undo();
          else if (what === "time") hand.times = [...hand.times, value];
          else set(what, value);
          // Writes end sooner or later: some actions fall into the middle of one.
          if (value % 1 === 0) await new Promise((then) => setTimeout(then));
        }
        for (let round = 0; round < 3; round++)
          for (const { baits } of pages) {
            await baits.flush();
            await baits.look();
          }
        const list = await store.list();
        const all = await Promise.all(list.map((one) => kept(store, one.ok ? one.head.id : "")));
        // What stands on a tab's screen is kept, in the record of its id.
        for (const { baits, work, hand } of pages) {
          const mine = all.find(({ id }) => id === baits.id);
          expect(mine?.scenario).toEqual(work.scenario);
          expect(mine?.beside).toEqual(
            baits.own && hand.times.length > 0 ? { "work/times": { times: hand.times } } : {},
          );
          // Its steps of undo lead back without a gap.
          const again = page(store, mine ?? null);
          while (again.work.undoLabel !== null) again.work.undo();
          expect(again.work.refusal).toBeNull();
        }
        if (all.length > 1) parted += 1;
        else merged += 1;
      }),
      { seed: 31, numRuns: 60 },
    );
    expect(Math.min(parted, merged)).toBeGreaterThan(5);
  });
});
