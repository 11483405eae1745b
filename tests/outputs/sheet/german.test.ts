import { beforeAll, describe, expect, it } from "vitest";
import { emptyBox } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { pagesOf, sheetJob } from "../../../src/sheet";
import { cutsOf } from "../../../src/sheet/solid/cuts";
import { SHEET } from "../../../src/ui/words/file";
import { english, saidIn } from "../../lib/said";
import { ALL, baits, jobOf } from "./baits";
import { faults, overLines, texts } from "./faults";
import { fonts } from "./fonts";

beforeAll(() => SHEET.ready("de"));
const german = (text: string): string => SHEET.in("de").of(text);

/** Without what a person has written: that stays as it is. */
const nameless = ({ notes: _, ...one }: Scenario): Scenario => ({ ...one, name: "Köder" });
const germanPages = (scenario: Scenario, choice = {}) =>
  pagesOf(sheetJob(nameless(scenario), fonts, { ...ALL, ...choice }, emptyBox(), undefined, german));

describe.each(["A4", "Letter"] as const)("German sheets on %s", (paper) => {
  it.each(baits)(
    "of %s hold every word apart from all others, within the page, and no English",
    (_, scenario) => {
      const pages = germanPages(scenario, { paper });
      expect(pages.flatMap(faults)).toEqual([]);
      expect(pages.flatMap(overLines)).toEqual([]);
      const said = pages.flatMap((page) => [page.label, ...texts(page).map(({ words }) => words)]);
      expect(said.filter(english)).toEqual([]);
      expect(said.filter((text) => /\d\.\d/.test(text))).toEqual([]);
    },
  );
});

it("a name and notes stay as they were given, also where they are words of the trade", () => {
  const [, scenario] = baits[1]!;
  const notes = "The bait is inside it: belly";
  const job = sheetJob({ ...scenario, name: "belly", notes }, fonts, ALL, null, undefined, german);
  const said = pagesOf(job).flatMap((page) => texts(page).map(({ words }) => words));
  for (const kept of ["belly", notes, "Baublatt: belly"]) expect(said).toContain(kept);
});

it("what is cut into the solid halves, and how far they are, is told in German", () => {
  const cuts = baits.flatMap(([, scenario]) => {
    const { compiled, drills } = jobOf(scenario);
    return cutsOf(compiled.bait, drills).map(({ what }) => what);
  });
  expect(cuts.length).toBeGreaterThan(40);
  const steps = ["the outline", "its triangles", "After the outline the solid is not closed (NotManifold)."];
  const told = [...new Set([...cuts, ...steps])].map(german);
  expect(told.filter((text) => /[‘’']|\b(?:chamber|hole|channel|slot|outline|the|its)\b/.test(text))).toEqual(
    [],
  );
});

it("every text of the sheets is told in German", () => {
  const all = saidIn(["src/sheet/build", "src/sheet/templates", "src/sheet/paper", "src/sheet/sheets.ts"]);
  // A piece of a sentence that is found whole, a drawing's own label, which nobody reads, and what is no text.
  const apart =
    /^(?:The slot opens 7\.5 |Corrected for one printer.* drawn 7\.5 across|section 7\.5 from the nose|bait\.\w+\[|TRIMWRIGHT SHA|7\.5 \(7\.5\)|side outline|top outline|drill map)/;
  const said = all.map(({ text }) => text).filter((text) => !apart.test(text));
  expect(said.length).toBeGreaterThan(90);
  expect(said.filter((text) => german(text) === text || english(german(text)))).toEqual([]);
});
