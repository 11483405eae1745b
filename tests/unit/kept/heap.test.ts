import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { expect, it } from "vitest";
import { BaitStore, MemoryBase } from "../../../src/ui/kept";
import { kept, page } from "./page";

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

/** Bytes in use once nothing is left to be collected. References that are weak are let go between two turns. */
async function inUse(): Promise<number> {
  for (let i = 0; i < 3; i++) {
    await new Promise((then) => setTimeout(then));
    collect();
  }
  return process.memoryUsage().heapUsed;
}

it("five hundred edits cost little memory each, and undo still leads back through all of them", async () => {
  const store = new BaitStore(new MemoryBase());
  const one = page(store, null);
  const edit = (from: number, to: number): void => {
    for (let i = from; i < to; i++) one.set("temperature_C", 1 + i / 100);
  };
  edit(1, 50);
  const before = await inUse();
  edit(50, 500);
  const each = ((await inUse()) - before) / 450;
  // Measured: 2,200. What is worked out from a document is more than a hundred times as much.
  expect(each).toBeLessThan(8000);
  await one.baits.flush();
  const { trail } = await kept(store, one.baits.id);
  expect(trail.past).toHaveLength(499);
  expect(JSON.stringify(trail).length / 499).toBeLessThan(200);
  for (let i = 0; i < 499; i++) one.work.undo();
  expect([one.work.undoLabel, one.work.changed]).toEqual([null, false]);
});
