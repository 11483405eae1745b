import { describe, expect, it } from "vitest";
import { Compare } from "../../../src/ui/state/compare.svelte";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { withWeed } from "../../../src/ui/state/retrieve";
import { sampleScenario } from "../document/sample";

describe("pinned variants", () => {
  const start = () => {
    const work = new Workspace(sampleScenario());
    const compare = new Compare(work);
    let depth = 3;
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
