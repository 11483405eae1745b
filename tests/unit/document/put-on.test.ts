import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  adoptPlan,
  compile,
  onBait,
  parseScenario,
  piecesOf,
  planKinds,
  putOn,
  serialize,
  stageOf,
  startPlace,
  takeOff,
  USUAL_DRILLS,
  USUAL_WEIGHTS,
} from "../../../src/document";
import type { BoxThing, PutPlace, Scenario } from "../../../src/document";
import { staticsOf } from "../../../src/model/statics";
import { planFor, usualZone } from "../../../src/runner/weigh";

const FILES = readdirSync("scenarios").filter((name) => name.endsWith(".json"));
const read = (text: string): Scenario => {
  const parsed = parseScenario(text);
  if (!parsed.ok) throw new Error(parsed.problems.map((p) => p.message).join("\n"));
  return parsed.scenario;
};
const plain = read(readFileSync("scenarios/suspender-90.json", "utf8"));

/** Ten weighed together: one to a thousandth. Invented masses. */
const ten = (together_g: number) => ({ count: 10, weighed: { count: 10, together_g, resolution_g: 0.01 } });
const HOOK: BoxThing = { kind: "hook", name: "treble, fine", ...ten(6.23), material: "carbon steel" };
const RING: BoxThing = { kind: "ring", name: "ring 3", ...ten(0.91), material: "stainless steel" };
const SLUG: BoxThing = { kind: "slug", name: "brass slug", ...ten(3.3), diameter_mm: 3, material: "brass" };
const GUESS: BoxThing = { kind: "shot", name: "tin shot", count: 5, diameter_mm: 3, material: "tin" };
const STRIP: BoxThing = { kind: "strip", name: "strip", count: 4, mass_g: 0.1, material: "tin" };
const CLIP: BoxThing = { kind: "clip", name: "clip", ...ten(1.2) };
const SEALER: BoxThing = {
  kind: "coat",
  name: "thin sealer",
  count: 1,
  density_g_ml: 1.05,
  thickness_mm: 0.04,
};
const ALL = [HOOK, RING, SLUG, GUESS, STRIP, CLIP, SEALER];

const statics = (scenario: Scenario) => {
  const { bait, around } = compile(scenario);
  return staticsOf(bait, around.density);
};
/** The blank before drilling, the whole bait, the hooks alone; and what the whole did in the tub. */
const weighed = (from: Scenario): Scenario => {
  const { mass } = statics(from);
  const grams = Number((mass * 1e3).toFixed(2));
  return read(
    JSON.stringify({
      ...(JSON.parse(serialize(from)) as object),
      expect: [],
      bench: [
        {
          kind: "weighing",
          reading_g: 3.3,
          resolution_g: 0.01,
          with: ["body"],
          before: ["wires", "bib", "ballast"],
        },
        {
          kind: "weighing",
          reading_g: grams,
          resolution_g: 0.01,
          with: ["body", "ballast", "wires", "bib", "hangers", "fittings", "coats"],
        },
        { kind: "weighing", reading_g: 1.1, resolution_g: 0.01, with: ["belly hook", "tail hook"] },
      ],
      corrections: [{ name: "tub correction", mass_g: 0.05, shift_mm: [0.1, 0] }],
    }),
  );
};

describe("a thing of the box on the bait", () => {
  it.each(ALL)("weighs there what the box weighed, and is counted: $name", (thing) => {
    const place = startPlace(plain, thing);
    const before = statics(plain);
    const next = putOn(plain, thing, place);
    const after = statics(next);
    expect(piecesOf(onBait([thing], plain.bait)[0] ?? [])).toBe(0);
    const [taken] = onBait(
      ALL.filter((one) => one === thing),
      next.bait,
    );
    expect(piecesOf(taken ?? [])).toBe(1);
    // Through the file and back it is the same bait.
    expect(statics(read(serialize(next))).netBuoyancy).toBe(after.netBuoyancy);
    if (thing.kind === "coat") return;
    const old =
      place.on === "hanger" && (thing.kind === "hook" || thing.kind === "ring")
        ? (plain.bait.hangers[place.index]?.[thing.kind]?.mass_g ?? 0)
        : 0;
    const each = thing.weighed
      ? thing.weighed.together_g / thing.weighed.count
      : (thing.mass_g ?? (Math.PI / 6) * 3 ** 3 * 1e-3 * 7.31); // tin 7.31 g/mL, NIST; the shot by its diameter
    const wood =
      place.on === "body" && place.where === "inside" ? (each / densityOf(thing)) * woodOf(plain) : 0;
    expect((after.mass - before.mass) * 1e3).toBeCloseTo(each - old - wood, 2);
  });

  it("is weighed as it was weighed", () => {
    const hook = putOn(plain, HOOK, { on: "hanger", index: 0 }).bait.hangers[0]?.hook;
    expect(hook).toEqual({ mass_g: 0.623, density_g_ml: 7.82, weighed: true, size: "treble, fine" });
    const shot = putOn(plain, GUESS, startPlace(plain, GUESS)).bait.ballast.at(-1);
    expect(shot).toMatchObject({ name: "tin shot", weighed: false, material: "tin" });
    expect(putOn(plain, SLUG, startPlace(plain, SLUG)).bait.ballast.at(-1)).not.toHaveProperty("weighed");
  });

  it("comes on at its stage: a swapped hook, clip and strip when dressed, sealer when sealed", () => {
    const early = {
      ...plain,
      bait: {
        ...plain.bait,
        hangers: plain.bait.hangers.map((one) => ({ ...one, stage: "closed" as const })),
      },
    };
    const stage = (thing: BoxThing, place: PutPlace, label: string): string => {
      const next = putOn(early, thing, place);
      const row = compile(next).bait.items.find((one) => one.item.startsWith(label));
      if (row === undefined) throw new Error(`no row ${label}`);
      return stageOf(next.bait, row);
    };
    expect(stage(HOOK, { on: "hanger", index: 0 }, `${early.bait.hangers[0]?.name ?? ""} hook`)).toBe(
      "dressed",
    );
    expect(stage(CLIP, { on: "bait" }, "clip")).toBe("dressed");
    expect(stage(STRIP, startPlace(early, STRIP), "strip")).toBe("dressed");
    expect(stage(SEALER, { on: "bait" }, "thin sealer")).toBe("sealed");
  });

  it.each(FILES)("starts where %s has room for it, without a new warning", (name) => {
    const one = read(readFileSync(`scenarios/${name}`, "utf8"));
    const warnings = compile(one).bait.warnings.length;
    for (const thing of [HOOK, RING, SLUG, STRIP])
      expect(compile(putOn(one, thing, startPlace(one, thing))).bait.warnings).toHaveLength(warnings);
  });

  it("leaves what was read before as it was: blank, whole bait, hooks and the tub", () => {
    const before = weighed(plain);
    const own = compile(before).bait;
    for (const thing of ALL) {
      const next = compile(putOn(before, thing, startPlace(before, thing))).bait;
      expect(next.bodyDensity, thing.name).toBeCloseTo(own.bodyDensity, 6);
      expect(next.volumeFactor).toBe(own.volumeFactor);
    }
  });

  it.each(ALL)("comes off again, and the bait is what it was: $name", (thing) => {
    for (const from of [plain, weighed(plain)]) {
      // Where a hook hung before there is none now: so onto a place that was free.
      const free: Scenario =
        thing.kind === "hook" || thing.kind === "ring"
          ? takeOff(from, { group: "hangers", index: 0, part: thing.kind })
          : from;
      const on = putOn(free, thing, startPlace(free, thing));
      const last = onBait([thing], on.bait)[0]?.at(-1);
      if (last === undefined) throw new Error("it is not on the bait");
      const off = takeOff(on, last);
      expect(off.bait).toEqual(free.bait);
      const [a, b] = [statics(off), statics(free)];
      expect(a.netBuoyancy).toBeCloseTo(b.netBuoyancy, 12);
      expect(a.rest.pitch).toBeCloseTo(b.rest.pitch ?? NaN, 9);
    }
  });

  it("is found after a plan was taken, piece by piece", () => {
    const none: Scenario = { ...plain, bait: { ...plain.bait, ballast: [] } };
    // Half a gram of ballast and more: several pieces of the smallest sizes.
    const net_g = statics(none).netBuoyancy * 1e3 - 0.6;
    const bare: Scenario = { ...none, target: { net_g, netTolerance_g: 0.1 } };
    const box = {
      format: "trimwright/box",
      version: 1,
      name: "box",
      drills_mm: [...USUAL_DRILLS],
      things: [...USUAL_WEIGHTS],
    } as const;
    const { plans } = planFor({ scenario: bare, box: { ...box }, zone: usualZone(bare), places: 2 });
    const [plan] = plans;
    if (plan === undefined) throw new Error("no plan");
    const next = adoptPlan(bare, plan);
    const counts = onBait(box.things, next.bait).map(piecesOf);
    expect(counts.reduce((sum, one) => sum + one, 0)).toBe(plan.pieces);
    expect(planKinds({ ...box }).length).toBeGreaterThan(0);
  });
});

const densityOf = (thing: BoxThing): number => ({ slug: 8.53, shot: 7.31 })[thing.kind as string] ?? NaN;
const woodOf = (scenario: Scenario): number => compile(scenario).bait.bodyDensity / 1e3;
