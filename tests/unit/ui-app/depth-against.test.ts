import { describe, expect, it } from "vitest";
import { targetWords } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { depthWanted } from "../../../src/model/bench";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { depthAgainst } from "../../../src/ui/views/parts/depth-against";
import { scenario } from "./scenario";

const units = new Units(new Prefs(null, 1200));
const wanted = (more: Partial<NonNullable<Scenario["target"]>>) => {
  const words = targetWords(
    scenario((one) => Object.assign(one, { target: { net_g: 0.3, netTolerance_g: 0.05, ...more } })),
  );
  const found = words === null ? null : depthWanted(words);
  if (found === null) throw new Error("A depth is wanted.");
  return found;
};
const said = (asked: ReturnType<typeof wanted>, depth: number | null, why: string | null = null) => {
  const { met, text } = depthAgainst(asked, { runs: depth !== null, why, depth }, 0.9, units, "en");
  return { met, text: text.replaceAll("\u202f", " ") };
};

describe("the depth wanted", () => {
  it("is met within the target's tolerance, and missed by what lies between", () => {
    const asked = wanted({ depth_m: 2, depthTolerance_m: 0.3, speed_m_s: 0.9 });
    expect(said(asked, 1.75)).toEqual({
      met: true,
      text: "Runs 1.75 m deep at 0.90 m/s, as wanted: 2.00 m ± 0.30 m",
    });
    expect(said(asked, 1.65)).toEqual({
      met: false,
      text: "Runs 0.35 m too shallow at 0.90 m/s: 1.65 m; wanted: 2.00 m ± 0.30 m",
    });
    expect(said(asked, 2.5).text).toContain("0.50 m too deep");
  });

  it("without a tolerance may be off by a fifth: the model's own depth is no better", () => {
    const asked = wanted({ depth_m: 2 });
    expect(said(asked, 1.61).met).toBe(true);
    expect(said(asked, 1.59).met).toBe(false);
  });

  it("is not met by a bait that does not run, and says why; while it is worked out it says what is wanted", () => {
    const asked = wanted({ depth_m: 2 });
    expect(said(asked, null, "nose lifts")).toEqual({
      met: false,
      text: "Does not run at 0.90 m/s (nose lifts); wanted: 2.00 m ± 0.40 m deep",
    });
    expect(depthAgainst(asked, null, 0.9, units, "en").met).toBeNull();
  });
});
