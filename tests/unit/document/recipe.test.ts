import { describe, expect, it } from "vitest";
import {
  asSetDown,
  buildAnew,
  exchanges,
  noteDown,
  parseScenario,
  readScenario,
  serialize,
  setDown,
} from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { sideBySide } from "../../../src/runner";
import { scenario } from "../ui-app/scenario";

const heavier = (one: Scenario, by: number): Scenario => ({
  ...one,
  bait: {
    ...one.bait,
    ballast: one.bait.ballast.map((b, i) => (i === 0 ? { ...b, mass_g: b.mass_g + by } : b)),
  },
});

describe("the recipe", () => {
  it("keeps design, built and tested apart: an edit of the bait or of one of them changes no other", () => {
    const design = setDown(scenario(), "design", "2026-01-05");
    const built = setDown(heavier(design, 0.3), "built", "2026-02-01");
    const tested = noteDown(setDown(heavier(built, 0.2), "tested", "2026-03-01"), "tested", "a bit slow");
    const edited = heavier(tested, 1);
    expect(edited.recipe).toEqual(tested.recipe);
    expect(edited.recipe?.design).toEqual(design.recipe?.design);
    expect(edited.recipe?.built).toEqual(built.recipe?.built);
    const [at, then] = [edited, asSetDown(edited, "built")].map((one) => one?.bait.ballast[0]?.mass_g ?? NaN);
    expect((at ?? 0) - (then ?? 0)).toBeCloseTo(1.2, 9);
    expect(edited.recipe?.tested?.notes).toBe("a bit slow");
    expect(noteDown(edited, "tested", "").recipe?.tested).not.toHaveProperty("notes");
  });

  it("goes into the file and comes back, and its empty lists stay out of it", () => {
    const one = setDown(scenario(), "design", "2026-01-05");
    const text = serialize(one);
    const parsed = parseScenario(text);
    expect(parsed.ok && parsed.scenario).toEqual(one);
    expect(parsed.ok && serialize(parsed.scenario)).toBe(text);
    expect(text).not.toContain("[]");
  });

  it("is refused with a day that is none, and with a bait that is none, by the place", () => {
    const one = setDown(scenario(), "design", "2026-13-05");
    const read = readScenario(one);
    expect(read.ok ? [] : read.problems.map(({ path, allowed }) => [path, allowed])).toEqual([
      ["recipe.design.on", "a day such as 2026-11-29"],
    ]);
    const two = JSON.parse(JSON.stringify(setDown(scenario(), "design", "2026-01-05"))) as {
      recipe: { design: { bait: { length_mm: number } } };
    };
    two.recipe.design.bait.length_mm = -1;
    expect(readScenario(two)).toMatchObject({
      ok: false,
      problems: [{ path: "recipe.design.bait.length_mm" }],
    });
  });

  it("another build begins at the design, without readings and corrections", () => {
    const design = setDown(scenario(), "design", "2026-01-05");
    const next = buildAnew(heavier(design, 0.3), "Second");
    expect(next.bait).toEqual(design.bait);
    expect([next.bench, next.tub, next.corrections]).toEqual([[], [], []]);
    expect(next.recipe).toMatchObject({ from: design.name, design: { on: "2026-01-05" } });
    expect(next.recipe).not.toHaveProperty("built");
    expect(readScenario(next).ok).toBe(true);
  });
});

describe("two baits side by side", () => {
  const bare = (one: Scenario): Scenario => ({ ...one, bench: [], corrections: [] });

  it("0.3 g more of tin in a hole costs 0.3 g less the glue that it takes the place of", () => {
    const own = bare(scenario());
    const name = own.bait.ballast[0]?.name ?? "";
    expect(own.bait.ballast[0]).toMatchObject({ where: "inside" });
    const withHole = {
      ...own,
      bait: {
        ...own.bait,
        ballast: own.bait.ballast.map((b) => ({ ...b, density_g_ml: 7.29, hole_ml: 0.9, filler_g_ml: 1.1 })),
      },
    };
    const { ranked, all } = sideBySide(withHole, heavier(withHole, 0.3));
    expect(ranked.map(({ exchange }) => exchange.what)).toEqual([`${name}, mass`]);
    expect(all.ok && all.net).toBeCloseTo(-0.3e-3 * (1 - 1.1 / 7.29), 9);
  });

  it("ranks the larger effect first, and each is that of a bait with this one thing changed", () => {
    const own = bare(scenario());
    const other: Scenario = {
      ...heavier(own, 0.5),
      water: { ...own.water, temperature_C: own.water.temperature_C + 1 },
    };
    const { ranked } = sideBySide(own, other);
    expect(ranked.map(({ exchange }) => exchange.of)).toEqual(["ballast", "water"]);
    for (const { exchange, effect } of ranked) {
      const alone = sideBySide(own, exchange.scenario);
      expect(alone.all).toEqual(effect);
    }
  });

  it("tells what comes on and what goes by its name, and what does not go with the rest by itself", () => {
    const own = bare(scenario());
    const { bib: _, ...bait } = own.bait;
    const other: Scenario = {
      ...own,
      bait: {
        ...bait,
        hangers: own.bait.hangers.slice(1),
        fittings: [{ name: "rattle plate", at_mm: [30, 3], mass_g: 0.2, density_g_ml: 2, where: "outside" }],
      },
    };
    const found = exchanges(own, other).map(({ what, kind }) => `${what}: ${kind}`);
    expect(found).toContain(`hanger ‘${own.bait.hangers[0]?.name ?? ""}’: gone`);
    expect(found).toContain("fitting ‘rattle plate’: added");
    expect(exchanges(own, own)).toEqual([]);
    // Half as long: the parts of the first bait do not fit into it.
    const short: Scenario = {
      ...own,
      bait: {
        ...own.bait,
        length_mm: own.bait.length_mm / 2,
        top: own.bait.top.map(([s, h]) => [s / 2, h]),
        bottom: own.bait.bottom.map(([s, h]) => [s / 2, h]),
        halfBreadth: own.bait.halfBreadth.map(([s, h]) => [s / 2, h]),
      },
    };
    const outline = sideBySide(own, short).ranked.find(({ exchange }) => exchange.of === "outline");
    expect(outline?.effect).toMatchObject({ ok: false, why: expect.stringMatching(/\S/) as string });
  });
});
