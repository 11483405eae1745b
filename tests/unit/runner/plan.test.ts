import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { emptyBox, parseScenario, serializeBox, USUAL_DRILLS, USUAL_WEIGHTS } from "../../../src/document";
import { material } from "../../../src/model/materials";
import type { Answer } from "../../../src/runner/answer";
import { parseOptions, UsageError } from "../../../src/runner/options";
import { command } from "../../lib/command";

/** The demo bait with its ballast out and a target, and a box of usual weights. */
const demo = JSON.parse(readFileSync("scenarios/suspender-90.json", "utf8")) as { bait: object };
const target = { net_g: 0.03, netTolerance_g: 0.05, trim_deg: -5, trimTolerance_deg: 5 };
const bare = (more: object = {}) => ({
  ...demo,
  expect: [],
  cadence: [],
  bait: { ...demo.bait, ballast: [] },
  target,
  ...more,
});
const box = serializeBox({ ...emptyBox(), drills_mm: [...USUAL_DRILLS], things: [...USUAL_WEIGHTS] });

const json = (scenario: object, args: readonly string[]): Answer => {
  const { exit, out, err } = command(["a.json", ...args, "--json"], {
    "a.json": JSON.stringify(scenario),
    "box.json": box,
  });
  expect({ exit, err }).toEqual({ exit: 0, err: "" });
  return JSON.parse(out) as Answer;
};

/** g/mL, of the table of materials. */
const DENSITY = Object.fromEntries(
  ["tungsten", "carbon steel", "brass"].map((name) => [name, (material(name)?.density ?? NaN) / 1e3]),
);

describe("plans on the command line", () => {
  const answered = json(bare(), ["--box", "box.json", "--only", "plan"]);

  it("the demo bait finds plans from weights of usual sizes, and only plans are answered", () => {
    expect(Object.keys(answered).sort()).toEqual(
      ["format", "plan", "planLimits", "planNearest", "planNotes", "scenario", "version"].sort(),
    );
    expect(answered.plan?.length).toBeGreaterThan(0);
    expect(answered.planNearest).toBeNull();
    expect(answered.planLimits).toEqual([]);
  });
  it("put into the file, a plan's ballast gives the same net buoyancy and trim", () => {
    for (const plan of answered.plan ?? []) {
      const taken = bare({ bait: { ...demo.bait, ballast: plan.ballast } });
      // It stands there as the program itself would save it.
      expect(parseScenario(JSON.stringify(taken)).ok).toBe(true);
      const { statics } = json(taken, ["--only", "statics"]);
      expect(Math.abs((statics?.netBuoyancy_g ?? NaN) - plan.net_g)).toBeLessThan(1e-9);
      expect(Math.abs((statics?.restTrim_deg ?? NaN) - (plan.trim_deg ?? NaN))).toBeLessThan(1e-9);
      expect(Math.abs((statics?.BG_mm ?? NaN) - plan.BG_mm)).toBeLessThan(1e-9);
      expect(Math.abs((statics?.floating?.GM_mm ?? NaN) - (plan.GM_mm ?? NaN))).toBeLessThan(1e-6);
      expect(Math.abs(plan.net_g - target.net_g)).toBeLessThanOrEqual(target.netTolerance_g);
      expect(Math.abs((plan.trim_deg ?? NaN) - target.trim_deg)).toBeLessThanOrEqual(
        target.trimTolerance_deg,
      );
      expect(plan.chance).toBeGreaterThan(0);
      // The account's row tells pieces and filler as the plan told them.
      plan.ballast.forEach((b) => {
        const row = statics?.account.find((one) => one.item.startsWith(b.name));
        expect((row?.mass_g ?? NaN) - (row?.filler_g ?? 0)).toBeCloseTo(b.mass_g, 9);
        const own = b.mass_g / (DENSITY[b.material ?? ""] ?? NaN);
        expect(row?.filler_g).toBeCloseTo(((b.hole_ml ?? 0) - own) * (b.filler_g_ml ?? 0), 9);
      });
      expect(plan.holes.length).toBe(plan.ballast.length);
      expect(plan.holes[0]).toMatch(/at station [\d.]+ mm drill [\d.]+ mm, [\d.]+ mm deep/);
    }
  });
  it("put into the file, a plan's weights are no surer and no less sure than the plan was", () => {
    // All else is well known: what is left is the published spread of the metals, of which nothing was weighed.
    const known = { uncertainty: { wood: 0.001, coatThickness: 0.01, hook: 0.01, drawnLength_mm: 0.01 } };
    const { plan = [] } = json(bare(known), ["--box", "box.json", "--only", "plan"]);
    expect(plan.length).toBeGreaterThan(0);
    const width = ([from = NaN, to = NaN]: readonly number[] = []) => to - from;
    for (const { ballast, netBand_g } of plan) {
      const { statics } = json(bare({ ...known, bait: { ...demo.bait, ballast } }), ["--only", "statics"]);
      // Of 2000 draws a quantile of 2.5 % errs by 0.06 σ, two of them by 2 % of the width: four times that.
      expect(Math.abs(width(netBand_g) / width(statics?.band.netBuoyancy_g) - 1)).toBeLessThan(0.08);
    }
  });
  it("of a bait that may rest as it likes they are for one that hangs about level, and say so", () => {
    const { trim_deg: _, trimTolerance_deg: _t, ...open } = target;
    const { plan = [], planNotes = [] } = json(bare({ target: open }), [
      "--box",
      "box.json",
      "--only",
      "plan",
    ]);
    expect(plan.length).toBeGreaterThan(0);
    for (const { trim_deg } of plan) expect(Math.abs(trim_deg ?? NaN)).toBeLessThanOrEqual(15);
    expect(planNotes).toContain(
      "The target does not say how the bait rests: these plans are for level, ±15°.",
    );
    // Their chance is that of the target as it stands: of the same weights, level asked for is a part of it.
    const level = json(bare({ target: { ...open, trim_deg: 0, trimTolerance_deg: 15 } }), [
      "--box",
      "box.json",
      "--only",
      "plan",
    ]);
    const pairs = plan.flatMap((one) => {
      const asked = level.plan?.find(
        ({ ballast }) => JSON.stringify(ballast) === JSON.stringify(one.ballast),
      );
      return asked === undefined ? [] : [one.chance - asked.chance];
    });
    expect(pairs.length).toBeGreaterThan(0);
    for (const more of pairs) expect(more).toBeGreaterThanOrEqual(0);
    expect(Math.max(...pairs)).toBeGreaterThan(0);
  });
  it("where none fits it says what does nearest, and the limit", () => {
    const few = json(bare(), ["--box", "box.json", "--places", "1", "--only", "plan"]);
    expect(few.plan).toEqual([]);
    expect(few.planNearest?.ballast.length).toBe(1);
    expect(few.planLimits?.[0]).toMatch(/ g are missing/);
  });
  it("as a table, with drills and depths in words", () => {
    const { out, exit } = command(["a.json", "--box", "box.json", "--only", "plan"], {
      "a.json": JSON.stringify(bare()),
      "box.json": box,
    });
    expect(exit).toBe(0);
    expect(out).toContain("Plan 1");
    expect(out).toContain("deep from the bottom edge");
  });
  it("a box that is none, a missing file, a missing target, and a plan without a box are refused", () => {
    const files = {
      "a.json": JSON.stringify(bare()),
      "bad.json": "{}",
      "b.json": JSON.stringify(bare({ target: undefined })),
      "box.json": box,
    };
    expect(command(["a.json", "--box", "bad.json"], files)).toMatchObject({ exit: 2, out: "" });
    expect(command(["a.json", "--box", "none.json"], files).err).toMatch(/cannot read none.json/);
    expect(command(["b.json", "--box", "box.json"], files).err).toMatch(/has no target/);
    expect(() => parseOptions(["a.json", "--only", "plan"])).toThrow(UsageError);
    expect(() => parseOptions(["a.json", "--box", "b", "--places", "4"])).toThrow(/1, 2 or 3/);
    // Without --only, plans come beside the rest.
    expect(parseOptions(["a.json", "--box", "b"]).parts).toContain("plan");
  });
});
