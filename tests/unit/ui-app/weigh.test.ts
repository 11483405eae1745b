import { describe, expect, it } from "vitest";
import { compile, readBox } from "../../../src/document";
import type { BoxThing, Scenario } from "../../../src/document";
import { staticsOf } from "../../../src/model/statics";
import { accountByStage, otherwise, withStage, withWeighed } from "../../../src/ui/views/weigh/account";
import { drawnVolume, tidyMean } from "../../../src/ui/views/weigh/readings";
import { withoutBallast } from "../../../src/ui/views/weigh/plan";
import { draftOf, emptyDraft, thingOf } from "../../../src/ui/views/weigh/things";
import { FILE } from "../../../src/ui/words/file";
import { WEIGH } from "../../../src/ui/words/weigh";
import { scenarioOf, SCENARIOS } from "../../lib/scenarios";

function workedOf(scenario: Scenario) {
  const compiled = compile(scenario);
  return { scenario, compiled, statics: staticsOf(compiled.bait, compiled.around.density) };
}

const suspender = scenarioOf("suspender-90");

describe("the account by stage", () => {
  it.each(SCENARIOS)("ends with the finished bait, and what is to come closes it: %s", (file) => {
    const worked = workedOf(scenarioOf(file));
    const stages = accountByStage(worked);
    const last = stages.at(-1);
    expect(last?.mass).toBeCloseTo(worked.statics.mass, 12);
    expect(last?.displaced).toBeCloseTo(worked.statics.displaced, 14);
    expect(last?.net).toBeCloseTo(worked.statics.netBuoyancy, 12);
    for (const one of stages)
      expect(one.net + one.coatsToCome + one.restToCome).toBeCloseTo(worked.statics.netBuoyancy, 12);
  });

  it("has the blank whole: volume times density, by Archimedes", () => {
    const worked = workedOf(suspender);
    const [blank] = accountByStage(worked);
    const { bait } = worked.compiled;
    expect(blank?.mass).toBeCloseTo(bait.bodyDensity * bait.drawn.volume, 12);
    expect(blank?.net).toBeCloseTo((worked.statics.density - bait.bodyDensity) * bait.drawn.volume, 12);
  });

  it("says what the other side of the skin does: m(ρ − ρ_wood)/ρ_metal for a slug that fills its hole", () => {
    const worked = workedOf(suspender);
    const [slug] = worked.compiled.spec.ballast;
    if (slug === undefined) throw new Error("The scenario has no ballast.");
    expect(slug.hole).toBeNull();
    const other = otherwise(worked, { list: "ballast", index: 0, where: "inside" });
    if (!other.ok) throw new Error(other.why);
    // Outside it displaces its volume V of water, and the wood of V is back: net changes by V(ρ − ρ_wood).
    const volume = slug.mass / slug.stuff.density;
    expect(other.net).toBeCloseTo(volume * (worked.statics.density - worked.compiled.bait.bodyDensity), 12);
  });
});

describe("stages and what was weighed", () => {
  const lineOf = (scenario: Scenario, item: string) => {
    const found = accountByStage(workedOf(scenario)).flatMap(({ stage, lines }) =>
      lines.filter((one) => one.item === item).map((line) => ({ stage, line })),
    )[0];
    if (found === undefined) throw new Error(`no ${item} in the account`);
    return found;
  };

  it("puts a part at a stage and back at its usual one, and moves nothing else", () => {
    const { stage, line } = lineOf(suspender, "belly hook");
    expect(stage).toBe("dressed");
    if (line.staged === null) throw new Error("A hanger has a stage.");
    const early = withStage(suspender, line.staged, "closed");
    expect(lineOf(early, "belly hook").stage).toBe("closed");
    expect(lineOf(early, "belly ring").stage).toBe("closed");
    expect(lineOf(early, "tail hook").stage).toBe("dressed");
    expect(workedOf(early).statics.netBuoyancy).toBe(workedOf(suspender).statics.netBuoyancy);
    expect(withStage(early, line.staged, null)).toEqual(suspender);
    const { staged } = lineOf(suspender, "bib").line;
    if (staged === null) throw new Error("A bib has a stage.");
    expect(lineOf(withStage(suspender, staged, "painted"), "bib").stage).toBe("painted");
  });

  it("marks a hook as weighed and unmarks it; the body has neither stage nor mark", () => {
    const { line } = lineOf(suspender, "tail hook");
    if (line.scaled === null) throw new Error("A hook can be weighed.");
    expect(line.unweighed).toBe(true);
    const done = withWeighed(suspender, line.scaled, true);
    expect(done.bait.hangers[1]?.hook?.weighed).toBe(true);
    expect(lineOf(done, "tail hook").line.unweighed).toBe(false);
    expect(lineOf(done, "tail ring").line.unweighed).toBe(true);
    expect(withWeighed(done, line.scaled, false)).toEqual(suspender);
    expect(lineOf(suspender, "body, uncut").line).toMatchObject({ staged: null, scaled: null });
  });
});

describe("bench figures", () => {
  it("rounds a mean two decimals beyond the scale", () => {
    expect(tidyMean([7.95, 7.97, 7.97], 0.01)).toBe(7.9633);
  });

  it("gives the drawn volume the error of its three measures", () => {
    const { bait } = workedOf(suspender).compiled;
    const { value, deviation } = drawnVolume(bait);
    // 0.2 mm on a length of 90 mm, and on the height and breadth of the outline.
    const share = Math.hypot(0.2 / 90, 2e-4 / bait.drawn.maxHeight, 1e-4 / bait.drawn.maxHalfBreadth);
    expect(deviation / value).toBeCloseTo(share, 12);
  });
});

describe("taking the ballast out for a plan", () => {
  const [words, file] = [WEIGH.in("en"), FILE.in("en")];
  const weighing = (more: object) => ({
    ...suspender,
    bench: [{ kind: "weighing" as const, reading_g: 3.41, resolution_g: 0.01, with: ["body"], ...more }],
  });

  it("keeps a blank that was weighed before its holes, and its density", () => {
    const before = suspender.bait.ballast.map((one) => one.name);
    const worked = workedOf(weighing({ before: ["ballast"] }));
    for (const cuts of [before, ["ballast"]]) {
      const out = withoutBallast(workedOf(weighing({ before: cuts })));
      if (!out.ok) throw new Error(out.why(words, file));
      expect(out.scenario.bait.ballast).toEqual([]);
      expect(out.scenario.bench[0]?.before).toBeUndefined();
      expect(compile(out.scenario).bait.bodyDensity).toBeCloseTo(worked.compiled.bait.bodyDensity, 9);
    }
  });

  it("refuses where a reading would come to mean something else", () => {
    const bored = withoutBallast(workedOf(weighing({})));
    expect(bored.ok ? "" : bored.why(words, file)).toContain("3.41 g weighed the body with the holes");
    const carried = withoutBallast(workedOf(weighing({ with: ["body", "ballast"] })));
    expect(carried.ok ? "" : carried.why(words, file)).toContain("on the scale");
  });
});

describe("things of the box", () => {
  const things: readonly BoxThing[] = [
    {
      kind: "hook",
      name: "treble",
      count: 4,
      weighed: { count: 10, together_g: 5.2, resolution_g: 0.01 },
      size: "6",
    },
    { kind: "shot", name: "ball", count: 3, material: "tungsten", diameter_mm: 4, where: "both" },
    { kind: "slug", name: "slug", count: 1, density_g_ml: 8.5, diameter_mm: 5, length_mm: 8 },
    { kind: "wire", name: "rod", count: 2, material: "brass", diameter_mm: 3, cut_mm: 5 },
    { kind: "sheet", name: "tin", count: 2, material: "tin", mass_g: 0.5, across_mm: 4 },
    { kind: "coat", name: "clear", count: 1, material: "epoxy", thickness_mm: 0.1 },
  ];
  it.each(things)("come back from the form as they were: $kind", (thing) => {
    const made = thingOf(draftOf(thing), []);
    if (!made.ok) throw new Error(made.lacks);
    // The form says the usual material in words where the box leaves it out.
    expect({ ...made.thing, material: undefined }).toEqual({ ...thing, material: undefined });
    expect(readBox({ format: "trimwright/box", version: 1, name: "b", things: [made.thing] }).ok).toBe(true);
  });

  it("ask for what is missing", () => {
    const said = (change: object): string => {
      const made = thingOf({ ...emptyDraft("wire"), ...change }, []);
      return made.ok ? "" : WEIGH.in("en").tell(`lacks.${made.lacks}`);
    };
    expect(said({})).toContain("name");
    expect(said({ name: "rod" })).toContain("diameter");
    expect(said({ name: "rod", together: 5, weighedCount: null })).toContain("how many");
  });
});
