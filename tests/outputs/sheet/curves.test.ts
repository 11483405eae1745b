import { describe, expect, it } from "vitest";
import { pagesOf } from "../../../src/sheet";
import type { TemplateKey } from "../../../src/sheet";
import { phiOfStation, type Section } from "../../../src/model/shape";
import type { Page, PathItem, Point } from "../../../src/sheet/paper/page";
import { templateOf } from "../../../src/sheet/sheets";
import { scenarioOf } from "../../lib/scenarios";
import { baits, jobOf, sized } from "./baits";

/** The template may be off the model's curve by this much, mm. */
const OFF = 0.05;

const toSegment = (p: Point, a: Point, b: Point): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / size));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
};
const toRing = (p: Point, ring: readonly Point[]): number =>
  ring.reduce((least, b, i) => Math.min(least, toSegment(p, ring.at(i - 1)!, b)), Infinity);

const rings = (scenario: (typeof baits)[number][1], key: TemplateKey): (readonly Point[])[][] =>
  templateOf(jobOf(scenario), key)!.drawings.map(({ items }) =>
    items
      .filter((one): one is PathItem => one.kind === "path" && one.role === "cut" && one.closed)
      .map((one) => one.points),
  );

/** Half a section's points by the equation of docs/model.md §2, solved for the breadth; Math's own functions. mm */
function sectionPoints(s: Section): Point[] {
  return Array.from({ length: 199 }, (_, i) => {
    const z = s.bottom + ((i + 1) / 200) * (s.top - s.bottom);
    const up = z >= s.widest;
    const h = up ? s.top - s.widest : s.widest - s.bottom;
    const n = up ? s.exponentAbove : s.exponentBelow;
    const y = s.halfBreadth * (1 - Math.abs((z - s.widest) / h) ** n) ** (1 / n);
    return { x: 1e3 * y, y: -1e3 * z };
  });
}

describe.each(baits)("the templates of %s", (_, scenario) => {
  const { bait } = jobOf(scenario).compiled;
  const { edges, length } = bait.drawn;
  const stations = Array.from({ length: 401 }, (_, i) => (i / 400) * length);

  it("follow the model's side and top within 0.05 mm, and reach no further", () => {
    const [[side] = []] = rings(scenario, "side");
    const [[top] = []] = rings(scenario, "top");
    for (const s of stations) {
      const phi = phiOfStation(s, length);
      const x = -1e3 * s;
      for (const z of [edges.top(phi), edges.bottom(phi)])
        expect(toRing({ x, y: -1e3 * z }, side!)).toBeLessThan(OFF);
      for (const sign of [1, -1])
        expect(toRing({ x, y: sign * 1e3 * edges.halfBreadth(phi) }, top!)).toBeLessThan(OFF);
    }
    for (const ring of [side!, top!])
      for (const p of ring) {
        const phi = phiOfStation(Math.min(length, Math.max(0, -p.x / 1e3)), length);
        const bounds =
          ring === side
            ? [-1e3 * edges.top(phi), -1e3 * edges.bottom(phi)]
            : [-1e3 * edges.halfBreadth(phi), 1e3 * edges.halfBreadth(phi)];
        expect(p.y).toBeGreaterThan(bounds[0]! - OFF);
        expect(p.y).toBeLessThan(bounds[1]! + OFF);
      }
  });

  it("have two halves that are each other's mirror", () => {
    const [[upper, lower] = []] = rings(scenario, "halves");
    expect(lower).toHaveLength(upper!.length);
    const fold = (upper![0]!.y + lower![0]!.y) / 2;
    upper!.forEach((p, i) => {
      expect(lower![i]!.x).toBeCloseTo(p.x, 9);
      expect(lower![i]!.y - fold).toBeCloseTo(fold - p.y, 9);
    });
    expect(toRing(upper![3]!, rings(scenario, "side")[0]![0]!)).toBeLessThan(1e-9);
  });

  it("have gauges that are the model's sections", () => {
    const { stations: chosen } = jobOf(scenario);
    rings(scenario, "sections").forEach(([opening], i) => {
      for (const p of sectionPoints(bait.drawn.section(chosen[i]!)))
        for (const sign of [1, -1]) expect(toRing({ x: sign * p.x, y: p.y }, opening!)).toBeLessThan(OFF);
    });
  });
});

/** All cut lines of a page that are no gauge's card. */
const cuts = (pages: readonly Page[]): PathItem[] =>
  pages.flatMap((page) =>
    page.items.filter((one): one is PathItem => one.kind === "path" && one.role === "cut"),
  );

it("a print is stretched by what its rulers were off, in each direction by its own", () => {
  const scenario = baits.find(([name]) => name === "suspender-90")![1];
  const plain = cuts(pagesOf(jobOf(scenario, { templates: ["side"] })))[0]!.points;
  const mended = cuts(
    pagesOf(jobOf(scenario, { templates: ["side"], measured: { across: 98, down: 99 } })),
  )[0]!.points;
  const size = (points: readonly Point[], of: (p: Point) => number): number =>
    Math.max(...points.map(of)) - Math.min(...points.map(of));
  expect(size(mended, (p) => p.x)).toBeCloseTo(size(plain, (p) => p.x) / 0.98, 6);
  expect(size(mended, (p) => p.y)).toBeCloseTo(size(plain, (p) => p.y) / 0.99, 6);
});

it("a bait that is longer than the page stands on sheets that meet in their crosses", () => {
  const scenario = baits.find(([name]) => name === "400 mm")![1];
  const pages = pagesOf(jobOf(scenario, { templates: ["top"] })).filter((page) =>
    page.items.some((one) => one.kind === "text" && /: sheet \d of 2$/.test(one.words)),
  );
  expect(pages.length).toBe(2);
  // The crosses with the letters A and B stand on both sheets, the same distance apart and turned alike.
  const at = pages.map((page) =>
    ["A", "B"].map((letter) => {
      const found = page.items.filter((one) => one.kind === "text" && one.words === letter);
      expect(found).toHaveLength(1);
      const [text] = found;
      return text?.kind === "text" ? text.at : { x: NaN, y: NaN };
    }),
  );
  const apart = at.map(([a, b]) => ({ x: b!.x - a!.x, y: b!.y - a!.y }));
  expect(apart[1]!.x).toBeCloseTo(apart[0]!.x, 9);
  expect(apart[1]!.y).toBeCloseTo(apart[0]!.y, 9);
  // Laid on each other by cross A, the sheets together hold the whole outline.
  const [one, two] = at.map((list) => list[0]!);
  const shift = { x: one!.x - two!.x, y: one!.y - two!.y };
  const points = [
    ...cuts([pages[0]!]).flatMap((item) => item.points),
    ...cuts([pages[1]!]).flatMap((item) => item.points.map((p) => ({ x: p.x + shift.x, y: p.y + shift.y }))),
  ];
  const ys = points.map((p) => p.y);
  expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(400, 6);
});

it("the notes of a long bait's template have no sheet to themselves: its first sheet stands below them", () => {
  const long = sized(scenarioOf("suspender-90"), 300);
  for (const templates of [["side"], ["top"], ["halves"], ["drill"]] as const) {
    const pages = pagesOf(jobOf(long, { templates, build: false }));
    const said = pages.map((page) =>
      page.items.flatMap((one) => (one.kind === "text" ? [one.words] : [])).join("\n"),
    );
    const sheets = said.filter((text) => /: sheet \d of \d$/m.test(text));
    expect(sheets.length).toBeGreaterThan(1);
    expect(said[0]).toMatch(/: sheet 1 of \d$/m);
    // The drill map's table may take one page more.
    expect(pages.length - sheets.length).toBe(templates[0] === "drill" ? 1 : 0);
  }
});
