import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compile, parseScenario, targetWords } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { netOf, resolveTarget, SUSPENDS_WITHIN } from "../../../src/model/bench";
import type { TargetWords } from "../../../src/model/bench";
import { assemble } from "../../../src/model/bait";
import { restTrim } from "../../../src/model/statics";
import { terminalRise } from "../../../src/model/tow";
import { water } from "../../../src/model/water";
import { resolvedTarget } from "../../../src/runner/weigh";

const file = JSON.parse(readFileSync("scenarios/suspender-90.json", "utf8")) as object;
const scenario = (target: object): Scenario => {
  const parsed = parseScenario(JSON.stringify({ ...file, expect: [], target }));
  if (!parsed.ok) throw new Error(parsed.problems.map((p) => p.message).join("\n"));
  return parsed.scenario;
};
const NONE: TargetWords = {
  behaves: null,
  rise: null,
  net: null,
  netTolerance: null,
  trim: null,
  trimTolerance: null,
  leastBG: null,
  depth: null,
  depthTolerance: null,
  speed: null,
  coldest: null,
  warmest: null,
  salinity: null,
};
const { bait, around } = compile(scenario({ net_g: 0, netTolerance_g: 0.05 }));
const resolve = (words: Partial<TargetWords>) => resolveTarget(bait, around, { ...NONE, ...words });

describe("a target in words", () => {
  it("a rise becomes the grams with which this bait, hanging as wanted, rises so fast", () => {
    for (const trim of [-10, 0, 8]) {
      const rad = (trim * Math.PI) / 180;
      const { net, problems } = resolve({ behaves: "floats", rise: 0.075, trim: rad });
      expect(problems).toEqual([]);
      if (!net) throw new Error("no net");
      // Put together by itself: the bait made so heavy at its G, with G moved so that it hangs at that trim.
      const { G, B } = restTrim(bait);
      const BG = Math.max(2e-3, Math.hypot(B.x - G.x, B.z - G.z));
      const shift = { x: B.x - G.x - BG * Math.sin(rad), z: B.z - G.z - BG * Math.cos(rad) };
      const none = { mass: null, x: null, z: null };
      const whole = assemble({
        ...bait.spec,
        corrections: [
          {
            name: "hang",
            mass: netOf(bait, around.density) - net.value,
            shift,
            deviation: none,
            without: [],
          },
        ],
      });
      expect(netOf(whole, around.density)).toBeCloseTo(net.value, 9);
      expect(restTrim(whole).pitch).toBeCloseTo(rad, 6);
      expect(terminalRise(whole, around).speed).toBeCloseTo(0.075, 5);
      expect(net.why).toMatch(/^Rising at 75 mm\/s \(300 mm in 4\.0 s\) needs \+0\.\d\d g/);
    }
  });
  it("faster takes more, and sinking is the other way about", () => {
    const at = (rise: number): number => resolve({ rise }).net?.value ?? NaN;
    expect(at(0.1)).toBeGreaterThan(at(0.05));
    expect(at(-0.05)).toBeLessThan(0);
    // Drag grows about as the square of the speed: between 1.5 and 2.2 of its logarithm.
    const power = Math.log(at(0.1) / at(0.05)) / Math.log(2);
    expect(power).toBeGreaterThan(1.4);
    expect(power).toBeLessThan(2.3);
  });
  it("suspends: nought, to hundredths of a gram", () => {
    expect(resolve({ behaves: "suspends" }).net).toMatchObject({ value: 0, tolerance: SUSPENDS_WITHIN });
  });
  it("nothing is taken from what the bait does now", () => {
    const { net, problems } = resolve({ behaves: "floats" });
    expect(net).toBeNull();
    expect(problems[0]).toMatch(/how fast or by how many grams/);
    expect(resolve({}).net).toBeNull();
  });
  it("words that contradict one another are told of", () => {
    expect(resolve({ behaves: "sinks", rise: 0.05 }).problems[0]).toMatch(/sinks, but rising/);
    expect(resolve({ behaves: "suspends", net: 1e-3 }).problems[0]).toMatch(/suspends/);
    expect(resolve({ behaves: "floats", net: -1e-3 }).problems[0]).toMatch(/floats/);
    expect(resolve({ net: 0, coldest: 20, warmest: 5 }).problems[0]).toMatch(/colder/);
  });
  it("a speed that no net buoyancy gives is an honest failure", () => {
    const { net, problems } = resolve({ rise: 40 });
    expect(net).toBeNull();
    expect(problems[0]).toMatch(/No net buoyancy was found/);
  });
  it("between waters the lift changes by their densities", () => {
    const { waters, notes } = resolve({ behaves: "suspends", coldest: 4, warmest: 25, salinity: 0 });
    const { displaced } = bait.rigid({ end: "mid", face: "floor" });
    waters.forEach((w) => {
      const more = displaced * (water(0, w.temperature).density - around.density);
      expect(w.net).toBeCloseTo(more, 12);
    });
    // 25 °C takes 9 mL · 3 kg/m³ = 0.027 g of its lift: within 0.03 g.
    expect(notes).toEqual([]);
    expect(resolve({ behaves: "suspends", coldest: 4, salinity: 35 }).notes[0]).toMatch(/without a swap/);
    // 90 °F, and nought, which has no sign.
    expect(resolve({ behaves: "suspends", warmest: (90 - 32) / 1.8, salinity: 35 }).notes[0]).toMatch(
      /^At 32\.2 °C and .* from 0\.00 g: /,
    );
  });
});

describe("the file's target", () => {
  it("says grams, unless it says that they follow a rise", () => {
    const grams = scenario({ net_g: 0.2, netTolerance_g: 0.05, rise_mm_s: 80 });
    expect(resolvedTarget(grams)?.net).toMatchObject({ value: 0.2e-3, tolerance: 0.05e-3 });
    const rise = { net_g: 0.2, netTolerance_g: 0.05, netFrom: "rise", behaves: "floats", secondsPer300mm: 4 };
    const words = targetWords(scenario(rise));
    expect(words?.rise).toBeCloseTo(0.075, 12);
    expect(words?.net).toBeNull();
    expect(targetWords(scenario({ ...rise, behaves: "sinks" }))?.rise).toBeCloseTo(-0.075, 12);
    expect(targetWords(scenario({ ...rise, secondsPer300mm: undefined, rise_mm_s: -20 }))?.rise).toBe(-0.02);
  });
  it("kinds of water have the salinities of the season's presets; absent, the scenario's own counts", () => {
    const of = (more: object) => targetWords(scenario({ net_g: 0, netTolerance_g: 0.1, ...more }))?.salinity;
    expect([
      of({}),
      of({ water: "brackish" }),
      of({ water: "salt" }),
      of({ water: "salt", salinity_g_kg: 30 }),
    ]).toEqual([0, 10, 35, 30]);
  });
  it("depth: tolerance and speed", () => {
    const s = scenario({ net_g: 0, netTolerance_g: 0.1, depth_m: 2, depthTolerance_m: 0.3, speed_m_s: 0.9 });
    expect(resolvedTarget(s)?.depth).toMatchObject({ value: 2, tolerance: 0.3, speed: 0.9 });
  });
});
