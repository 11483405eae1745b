import { describe, expect, it } from "vitest";
import { compile, parseScenario, serialize } from "../../../src/document";
import { sample } from "../../lib/sample";

/** The sample with other keys in water and tackle, as text. */
const file = (water: object, tackle: object = {}): string => {
  const base = sample();
  return JSON.stringify({
    ...base,
    water: { ...base.water, ...water },
    tackle: { ...base.tackle, ...tackle },
  });
};

describe("weed, strike zone and reel", () => {
  it("are kept as they are, and change nothing of the run", () => {
    const keys = { weed_m: 1.5, strikeZone: { from_m: 0.8, to_m: 1.4 } };
    const parsed = parseScenario(file({ depth_m: 2, ...keys }, { reel: { ratio: 5.2, spool_mm: 140 } }));
    const plain = parseScenario(file({ depth_m: 2 }));
    if (!parsed.ok || !plain.ok) throw new Error("the sample is refused");
    expect(parsed.scenario.water).toMatchObject(keys);
    expect(parsed.scenario.tackle.reel).toEqual({ ratio: 5.2, spool_mm: 140 });
    const again = parseScenario(serialize(parsed.scenario));
    expect(again.ok && again.scenario).toEqual(parsed.scenario);
    expect(compile(parsed.scenario).around).toEqual(compile(plain.scenario).around);
    expect(compile(parsed.scenario).tackle).toEqual(compile(plain.scenario).tackle);
  });

  it.each([
    [{ depth_m: 2, weed_m: 2.5 }, {}, "water.weed_m", "at most the water's depth, 2 m"],
    [{ strikeZone: { from_m: 1, to_m: 1 } }, {}, "water.strikeZone.to_m", "above from_m, 1 m"],
    [{}, { reel: { ratio: 0, spool_mm: 140 } }, "tackle.reel.ratio", "0"],
  ])("%j %j is refused at %s", (water, tackle, path, allowed) => {
    const parsed = parseScenario(file(water, tackle));
    if (parsed.ok) throw new Error("it was taken");
    expect(parsed.problems.map((one) => one.path)).toEqual([path]);
    expect(parsed.problems[0]?.allowed).toContain(allowed);
  });
});
