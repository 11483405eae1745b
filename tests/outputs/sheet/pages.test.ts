import { describe, expect, it } from "vitest";
import { pagesOf } from "../../../src/sheet";
import { boxOf, LINES, textBox } from "../../../src/sheet/paper/page";
import { baits, jobOf } from "./baits";
import { faults, HAIR, overLines, texts } from "./faults";

describe.each(["A4", "Letter"] as const)("the pages on %s", (paper) => {
  it.each(baits)("of %s hold every word apart from all others, and within the page", (_, scenario) => {
    const pages = pagesOf(jobOf(scenario, { paper }));
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.flatMap(faults)).toEqual([]);
    expect(pages.flatMap(overLines)).toEqual([]);
  });

  it("still do where the printer is off", () => {
    for (const measured of [
      { across: 95, down: 105 },
      { across: 105, down: 95 },
    ])
      for (const [, scenario] of baits.slice(0, 4))
        expect(pagesOf(jobOf(scenario, { paper, measured })).flatMap(faults)).toEqual([]);
  });
});

it("every page has both rulers, the scale, the fingerprint and how to print", () => {
  for (const [, scenario] of baits) {
    const job = jobOf(scenario);
    for (const page of pagesOf(job)) {
      const all = texts(page)
        .map((one) => one.words)
        .join("\n");
      expect(all).toContain("Scale 1 : 1");
      expect(all).toContain(job.fingerprint.short);
      expect(all).toContain("Print at 100 %");
      const long = page.items.flatMap((one) =>
        one.kind === "path" && one.role === "ruler" && one.points.length === 2 ? [boxOf([one])] : [],
      );
      expect(long.some((box) => Math.abs(box.maxX - box.minX - 100) < HAIR)).toBe(true);
      expect(long.some((box) => Math.abs(box.maxY - box.minY - 100) < HAIR)).toBe(true);
    }
  }
});

it("the order of work glues what was laid in and tries it with its hooks, before the first coat", () => {
  let looked = 0;
  for (const [name, scenario] of baits) {
    const job = jobOf(scenario, { templates: [] });
    const { items } = job.compiled.bait;
    const laid = items.some(
      ({ group, item }) => group === "bib" || group === "wires" || /ballast/.test(item),
    );
    const hung = items.filter(({ group }) => group === "hangers");
    const coated = items.some(({ group }) => group === "coats");
    if (!laid || hung.length === 0 || !coated) continue;
    looked += 1;
    const said = pagesOf(job).flatMap((page) => texts(page).map(({ words }) => words));
    const at = ["Laid out", "Closed", "First tub test", "Painted"].map((one) => said.indexOf(one));
    expect({ name, at: at.includes(-1) ? at : [...at].sort((a, b) => a - b) }).toEqual({ name, at });
    expect(at).not.toContain(-1);
    expect(said.filter((text) => text.startsWith("Check that all is in. Glue"))).toHaveLength(1);
    // On the scale: all but the coats and what is put on with them.
    const mass = items
      .filter(({ group, item }) => group !== "coats" && item !== "eyes" && !item.startsWith("correction"))
      .reduce((sum, one) => sum + one.mass, 0);
    const scale = said.slice(at[2]).find((text) => / g ± /.test(text));
    expect(scale).toMatch(new RegExp(`^${(1e3 * mass).toFixed(2)} g ± `));
  }
  expect(looked).toBeGreaterThan(8);
});

it("says what of a weight is filler, and that it is not on the scale while all lies loose", () => {
  const [, from] = baits[1]!;
  const metal = { name: "weight", at_mm: [30, -3] as [number, number], mass_g: 1.46, density_g_ml: 7.3 };
  const ballast = [{ ...metal, where: "inside" as const, hole_ml: 0.3, filler_g_ml: 1.1 }];
  const job = jobOf({ ...from, bench: [], bait: { ...from.bait, ballast } }, { templates: [] });
  const said = pagesOf(job).flatMap((page) => texts(page).map(({ words }) => words));
  expect(said.some((text) => /, inside, with 0\.11.g of filler$/.test(text))).toBe(true);
  expect(said.join(" ")).toContain("The 0.11 g of filler in the holes are counted here");
});

it("the figures of a stage stand on the page on which its work begins", () => {
  const titles = /^(?:Blank|Sealed|Laid out|Closed|First tub test|Painted|Clear-coated|Dressed)$/;
  const parted = baits.flatMap(([name, scenario]) =>
    (["A4", "Letter"] as const).flatMap((paper) =>
      ["", "A line of notes more. ".repeat(20), "A line of notes more. ".repeat(40)].flatMap((notes) =>
        pagesOf(jobOf({ ...scenario, notes }, { paper, templates: [] })).flatMap((page) => {
          const said = texts(page).map(({ words }) => words);
          const begun = said.filter((one) => titles.test(one)).length;
          const figures = said.filter((one) => one === "On the scale").length;
          return begun === figures ? [] : [`${name}, ${paper}, ${page.label}`];
        }),
      ),
    ),
  );
  expect(parted).toEqual([]);
});

it("words that lie on each other or off the page are found", () => {
  const [page] = pagesOf(jobOf(baits[0]![1]));
  const [one] = texts(page!);
  const spoiled = { ...page!, items: [...page!.items, one!, { ...one!, at: { x: -1, y: 160 } }] };
  expect(faults(spoiled)).toHaveLength(2);
});

it("words over a line are found", () => {
  const [page] = pagesOf(jobOf(baits[0]![1]));
  const { minX, minY, maxX, maxY } = textBox(texts(page!)[0]!);
  const points = [
    { x: minX - 1, y: (minY + maxY) / 2 },
    { x: maxX + 1, y: (minY + maxY) / 2 },
  ];
  const line = { kind: "path", role: "mark", points, closed: false } as const;
  expect(overLines({ ...page!, items: [...page!.items, line] })).toHaveLength(1);
});

it("the cut line is thin", () => {
  expect(LINES.cut.width).toBeLessThanOrEqual(0.2);
  expect(LINES.cut.dash).toEqual([]);
});
