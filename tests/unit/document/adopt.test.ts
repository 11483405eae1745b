import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  adoptPlan,
  adoptSwap,
  compile,
  correctionEntry,
  parseScenario,
  serialize,
  stageOf,
} from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { netOf, swaps } from "../../../src/model/bench";
import { ballastPlan } from "../../../src/model/plan";
import { restTrim } from "../../../src/model/statics";

const file = JSON.parse(readFileSync("scenarios/suspender-90.json", "utf8")) as { bait: object };
const scenario = (more: object = {}): Scenario => {
  const parsed = parseScenario(
    JSON.stringify({ ...file, expect: [], bait: { ...file.bait, ballast: [] }, ...more }),
  );
  if (!parsed.ok) throw new Error(parsed.problems.map((p) => p.message).join("\n"));
  return parsed.scenario;
};
const blank = {
  kind: "weighing",
  reading_g: 3.3,
  resolution_g: 0.01,
  with: ["body"],
  before: ["wires", "bib"],
};
const WHOLE = {
  kind: "weighing",
  resolution_g: 0.01,
  with: ["body", "wires", "bib", "hangers", "fittings", "coats"],
};
const tin = { name: "tin", density: 7310, kind: "metal", given: false } as const;
const planOf = (s: Scenario) => {
  const { spec, bait, water } = compile(s);
  const kinds = [3, 4, 5].map((d) => ({
    name: `tin ${d}`,
    stuff: tin,
    mass: (Math.PI / 6) * (d * 1e-3) ** 3 * 7310,
    count: 12,
    lead: false,
    across: d * 1e-3,
    along: d * 1e-3,
    inside: true,
    outside: false,
  }));
  const zone = { from: 0.015, to: 0.07, lowest: null, highest: null, wall: 1e-3, clearance: 0.5e-3 };
  const target = {
    net: netOf(bait, water.density) - 0.6e-3,
    netTolerance: 0.1e-3,
    trim: null,
    trimTolerance: 0.1,
    leastBG: 0,
  };
  return ballastPlan(spec, water.density, target, kinds, zone, {
    drills: [0.003, 0.004, 0.005],
    filler: 1100,
    samples: 100,
  });
};

describe("a plan adopted", () => {
  it("does what it promised, through the file and back, for a blank weighed before it was drilled too", () => {
    for (const s of [scenario(), scenario({ bench: [blank] })]) {
      const plan = planOf(s).plans[0];
      if (!plan) throw new Error("no plan");
      const text = serialize(adoptPlan(s, plan));
      const again = parseScenario(text);
      if (!again.ok) throw new Error(again.problems.map((p) => p.message).join("\n"));
      const { bait, water } = compile(again.scenario);
      // 12 digits in the file.
      expect(Math.abs(netOf(bait, water.density) - plan.net)).toBeLessThan(1e-10);
      expect(restTrim(bait).pitch).toBeCloseTo(plan.trim ?? NaN, 7);
    }
  });
  it("a hole cut after the weighing takes its wood along", () => {
    const weighed = scenario({ bench: [blank] });
    const { bait } = compile(weighed);
    const plan = planOf(weighed).plans[0];
    if (!plan) throw new Error("no plan");
    const after = compile(adoptPlan(weighed, plan)).bait;
    expect(after.bodyDensity).toBeCloseTo(bait.bodyDensity, 9);
    // 3.3 g over the whole outline: the slot and the wire's way were not cut yet.
    expect(bait.bodyDensity).toBeCloseTo(3.3e-3 / bait.shape.volume, 6);
    const body = (b: typeof bait) => b.items.find((i) => i.group === "body")?.mass ?? NaN;
    const holes = plan.loads.reduce((v, l) => v + (l.hole?.volume ?? 0), 0);
    expect(body(bait) - body(after)).toBeCloseTo(holes * bait.bodyDensity, 12);
    expect(after.bench[0]?.residual).toBeCloseTo(0, 12);
  });
  it("refuses a word that names nothing, and one thing in both lists", () => {
    const refused = (bench: object) => {
      const parsed = parseScenario(JSON.stringify({ ...file, bench: [bench] }));
      return parsed.ok ? "" : (parsed.problems[0]?.path ?? "");
    };
    expect(refused({ ...blank, before: ["nothing"] })).toContain("bench[0].before");
    expect(refused({ ...blank, with: ["body", "wires"], before: ["harness"] })).toContain("bench[0].before");
  });
});

describe("corrections, pins and swaps in the document", () => {
  it("a correction comes back from the file as it was", () => {
    const correction = {
      name: "tub",
      mass: -0.13e-3,
      shift: { x: -0.4e-3, z: 0 },
      deviation: { mass: 0.02e-3, x: 0.1e-3, z: null },
      without: ["coats"],
    };
    const s = scenario({ corrections: [correctionEntry(correction, "three times 4.2 s")] });
    const { spec, bait, water } = compile(s);
    const read = spec.corrections?.[0];
    expect(read).toMatchObject({ name: "tub", without: ["coats"] });
    // 12 digits in the file.
    expect(read?.mass).toBeCloseTo(correction.mass, 12);
    expect(read?.shift.x).toBeCloseTo(correction.shift.x, 12);
    expect(read?.deviation.mass).toBeCloseTo(correction.deviation.mass, 12);
    expect(read?.deviation.x).toBeCloseTo(correction.deviation.x, 12);
    expect(read?.deviation.z).toBeNull();
    expect(netOf(bait, water.density) - netOf(compile(scenario()).bait, water.density)).toBeCloseTo(
      0.13e-3,
      12,
    );
  });
  it("pins of the pusher are taken off the displacement", () => {
    const reading = { kind: "displacement", reading_g: 8.1, resolution_g: 0.01, tap_C: 20, with: ["body"] };
    const bare = compile(scenario({ bench: [reading] })).bait;
    const pins = compile(
      scenario({ bench: [{ ...reading, pusher: { diameter_mm: 1, depth_mm: 40, count: 2 } }] }),
    ).bait;
    expect((bare.shape.volume - pins.shape.volume) * 1e9).toBeCloseTo(20 * Math.PI, 3);
    expect(pins.bench[0]?.residual).toBeCloseTo(0, 9);
  });
  it.each([
    ["no reading", []],
    [
      "the blank and the finished bait weighed",
      [blank, { ...WHOLE, reading_g: 6.3, repeats_g: [6.29, 6.31] }],
    ],
    ["both in air that carries", [blank, { ...WHOLE, reading_g: 6.3, air: true }]],
    ["pushed under with its hooks", [{ ...WHOLE, kind: "displacement", reading_g: 9.1, tap_C: 20 }]],
    ["its hooks alone", [{ ...WHOLE, reading_g: 1.1, with: ["belly hook", "tail hook"] }]],
  ])("a swap adopted is the swap worked out: %s", (_, bench) => {
    const s = scenario({ bench });
    const { spec, bait, around } = compile(s);
    const goal = {
      net: netOf(bait, around.density) - 0.3e-3,
      netTolerance: 1e-5,
      trim: null,
      trimTolerance: 0.05,
    };
    const part = {
      use: "hook",
      mass: 0.8e-3,
      density: 7820,
      count: 2,
      weighed: true,
      lead: false,
      name: "treble 4",
    } as const;
    const found = swaps(bait, around, goal, [part, { ...part, use: "strip", mass: 0.1e-3, name: "strip" }], {
      rise: false,
    });
    for (const swap of found.swaps) {
      const adopted = compile(adoptSwap(s, spec, swap)).bait;
      expect(netOf(adopted, around.density)).toBeCloseTo(swap.net, 12);
      expect(restTrim(adopted).pitch).toBeCloseTo(swap.trim ?? NaN, 9);
    }
  });

  it("a swap comes on when the bait is dressed, also where the old hook came on before the paint", () => {
    const s = scenario({});
    const early: Scenario = {
      ...s,
      bait: { ...s.bait, hangers: s.bait.hangers.map((one) => ({ ...one, stage: "closed" as const })) },
    };
    const { spec, bait, around } = compile(early);
    const goal = {
      net: netOf(bait, around.density) - 0.3e-3,
      netTolerance: 1e-5,
      trim: null,
      trimTolerance: 0.05,
    };
    const part = { mass: 0.8e-3, density: 7820, count: 2, weighed: true, lead: false } as const;
    const found = swaps(
      bait,
      around,
      goal,
      [
        { ...part, use: "hook", name: "treble 4" },
        { ...part, use: "strip", mass: 0.1e-3, name: "strip" },
      ],
      { rise: false },
    );
    const stages = found.swaps.map((swap) => {
      const next = adoptSwap(early, spec, swap);
      const items = compile(next).bait.items;
      const stage = (label: string): string | null => {
        const row = items.find((one) => one.item === label);
        return row ? stageOf(next.bait, row) : null;
      };
      return {
        strips: next.bait.fittings.slice(early.bait.fittings.length).map((one) => one.stage),
        hooks: next.bait.hangers.flatMap((h, i) =>
          h.hook?.mass_g === early.bait.hangers[i]?.hook?.mass_g ? [] : [stage(`${h.name} hook`)],
        ),
      };
    });
    expect(new Set(stages.flatMap((one) => one.strips))).toEqual(new Set(["dressed"]));
    expect(new Set(stages.flatMap((one) => one.hooks))).toEqual(new Set(["dressed"]));
  });
});
