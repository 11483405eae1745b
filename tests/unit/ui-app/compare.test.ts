import { describe, expect, it } from "vitest";
import { aPin, Compare } from "../../../src/ui/state/compare.svelte";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { changesSince } from "../../../src/ui/views/swim/changes";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { withWeed } from "../../../src/ui/state/retrieve";
import { sampleScenario } from "../../lib/sample";

describe("pinned variants", () => {
  const start = () => {
    const work = new Workspace(sampleScenario());
    const compare = new Compare(work);
    let depth = 4;
    const change = (): void => {
      depth += 1;
      work.edit("water.depth_m", "depth", (from) => ({ ...from, water: { ...from.water, depth_m: depth } }));
    };
    return { work, compare, change };
  };
  const letters = (compare: Compare): string => compare.variants.map(({ letter }) => letter).join("");

  it("are four at most, and keep their letters when others go", () => {
    const { compare, change } = start();
    for (let i = 0; i < 6; i++) {
      compare.pin();
      change();
    }
    expect(letters(compare)).toBe("ABCD");
    expect(compare.next).toBeNull();
    compare.unpin("B");
    expect(letters(compare)).toBe("ACD");
    expect(compare.next).toBe("B");
    compare.pin();
    expect(letters(compare)).toBe("ACDB");
    expect(compare.pinned).toBe(compare.variants[3]?.worked);
    compare.unpin();
    expect(compare.pinned).toBeNull();
  });

  it("the same state is pinned once; the key unpins it again", () => {
    const { compare, change } = start();
    compare.pin();
    compare.pin();
    expect(letters(compare)).toBe("A");
    expect(compare.same).toBe("A");
    change();
    compare.toggle();
    expect(letters(compare)).toBe("AB");
    compare.toggle();
    expect(letters(compare)).toBe("A");
  });

  it("tells what was changed since, by name and by how much; names stay with their variant", () => {
    const { work, compare, change } = start();
    compare.pin();
    compare.rename("A", "  shallow water  ");
    change();
    const [a] = compare.variants;
    if (a === undefined) throw new Error("nothing is pinned");
    expect(a.name).toBe("shallow water");
    const units = new Units(new Prefs(null, 1200));
    const from = a.worked.scenario.water.depth_m;
    expect(changesSince(work.scenario, a.worked.scenario, units, (text) => text)).toEqual([
      `water depth ${from} → 5\u202fm (${from < 5 ? "+" : "\u2212"}${Math.abs(5 - from)}\u202fm)`,
    ]);
    // The retrieve is everybody's.
    work.edit("cadence", "cadence", (doc) => ({ ...doc, cadence: [{ do: "pause", for_s: 1 }] }));
    expect(changesSince(work.scenario, a.worked.scenario, units, (text) => text)).toHaveLength(1);
    // What the browser keeps has the name, and what an older page has kept is read without.
    const [pin] = compare.pins;
    expect(aPin(JSON.parse(JSON.stringify(pin)))?.name).toBe("shallow water");
    expect(aPin({ letter: "B", scenario: JSON.parse(JSON.stringify(pin?.scenario)) as unknown })?.name).toBe(
      "",
    );
  });

  it("a key that only one variant has is not compared", async () => {
    const { work, compare } = start();
    compare.pin();
    work.edit("water.weed_m", "weed", (from) => withWeed(from, true));
    const { columnInputs } = await import("../../../src/ui/state/retrieve");
    const [weed] = columnInputs(work.scenario);
    if (weed === undefined) throw new Error("no weed");
    expect(compare.valueOf(weed)).toBeNull();
  });
});
