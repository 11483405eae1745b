// @vitest-environment jsdom
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parseScenario, STAGES } from "../../../src/document";
import { frameOf, lookedMarks, notYetOn, thumbnailFigures, thumbnailOf } from "../../../src/drawing";
import { whatOf } from "../../../src/model/parts";
import { boxOfMarks, placesOf, type Mark } from "../../../src/drawing/mark";
import { paletteFrom } from "../../../src/drawing/palette";
import { sceneOf } from "../../../src/drawing/scene";
import { heldStill, posedMarks } from "../../../src/drawing/still";
import { simplified, THUMBNAIL_LIMIT } from "../../../src/drawing/thumbnail";
import { assemble } from "../../../src/model/bait";
import { bait, spec } from "../../lib/drawn";

const palette = paletteFrom({}, false, "sans-serif");
const folder = join(import.meta.dirname, "../../../scenarios");
const scenarios = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((file) => {
    const read = parseScenario(readFileSync(join(folder, file), "utf8"));
    if (!read.ok) throw new Error(`${file} is not a scenario`);
    return { file, ...read };
  });

describe("thumbnails", () => {
  test.each(scenarios)("of $file: well-formed, small, with a body", ({ compiled }) => {
    const text = thumbnailOf(compiled.bait, palette);
    expect(text.length).toBeLessThanOrEqual(THUMBNAIL_LIMIT);
    expect(text).not.toMatch(/NaN|undefined/);
    const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
    expect(root.querySelector("parsererror")).toBeNull();
    expect(root.querySelectorAll("polygon").length).toBeGreaterThan(2);
  });

  test.each(scenarios)(
    "of $file as figures: the same as the SVG has, all within the frame",
    ({ compiled }) => {
      const { elements, left, top, width, height } = thumbnailFigures(compiled.bait, palette);
      const svg = new DOMParser().parseFromString(thumbnailOf(compiled.bait, palette), "image/svg+xml");
      const drawn = [...svg.documentElement.children].filter((one) => one.tagName !== "title");
      expect(drawn.length).toBeGreaterThan(2);
      const written = new Set(elements.map((one) => JSON.stringify([one.tag, one.attributes])));
      for (const one of drawn) {
        const attributes = Object.fromEntries([...one.attributes].map(({ name, value }) => [name, value]));
        expect(written).toContain(JSON.stringify([one.tagName, attributes]));
      }
      for (const { tag, attributes } of elements) {
        expect(["polygon", "polyline", "path", "circle"]).toContain(tag);
        const places = (attributes["points"] ?? attributes["d"] ?? `${attributes["cx"]},${attributes["cy"]}`)
          .split(/[ ML]/)
          .filter((one) => one !== "");
        for (const place of places) {
          const [x = NaN, y = NaN] = place.split(",").map(Number);
          expect(x).toBeGreaterThan(left);
          expect(x).toBeLessThan(left + width);
          expect(y).toBeGreaterThan(top);
          expect(y).toBeLessThan(top + height);
        }
      }
    },
  );

  test("a bait of 60 fittings and a name of 5,000 letters stays within the limit, and keeps its body", () => {
    const many = assemble({
      ...spec,
      name: "&".repeat(5000),
      fittings: Array.from({ length: 60 }, (_, i) => ({
        ...spec.fittings[0]!,
        name: `eye ${i}`,
        at: { x: -0.02 - 0.0008 * i, z: 0 },
      })),
    });
    const text = thumbnailOf(many, palette);
    expect(text.length).toBeLessThanOrEqual(THUMBNAIL_LIMIT);
    expect(text).toContain("<polygon");
  });

  test("a simplified line keeps its ends and stays near all of its points", () => {
    const points = Array.from({ length: 200 }, (_, i) => ({ x: i / 10, z: Math.sin(i / 10) }));
    const few = simplified(points, 0.05);
    expect(few[0]).toBe(points[0]);
    expect(few.at(-1)).toBe(points.at(-1));
    expect(few.length).toBeLessThan(40);
  });
});

describe("the bait in the making", () => {
  const scene = sceneOf(bait, null, Infinity);
  const still = heldStill(scene, { x: 0, z: 0 }, 0);

  test("every row of the account that has a place on the bait has a mark", () => {
    for (const { file, compiled } of scenarios) {
      const one = sceneOf(compiled.bait, null, Infinity);
      const drawn = new Set(posedMarks(one, heldStill(one, { x: 0, z: 0 }, 0), true).map((m) => m.what));
      for (const item of compiled.bait.items) {
        const what = whatOf(compiled.bait.spec, item);
        if (what === null) expect(item.group).toBe("corrections");
        else expect([...drawn], `${file}: ${item.item}`).toContain(what);
      }
    }
  });

  test("parts come on stage by stage, and all are on at the end", () => {
    for (const { scenario, compiled } of scenarios) {
      const counts = STAGES.map((stage) => notYetOn(scenario.bait, compiled.bait, stage).size);
      expect(counts.at(-1)).toBe(0);
      expect(counts).toEqual([...counts].sort((a, b) => b - a));
      expect(notYetOn(scenario.bait, compiled.bait, "blank").has("body")).toBe(false);
    }
  });

  test("what is not on yet is an outline without a fill; a coat not on yet leaves bare wood", () => {
    const marks = lookedMarks(scene, still, true, { notYet: new Set(["ballast:belly", "bib"]) });
    const waiting = marks.filter((m) => m.what === "ballast:belly" || m.what === "bib");
    expect(waiting.length).toBeGreaterThan(1);
    for (const m of waiting) expect([m.fill, m.stroke?.dash]).toEqual([undefined, [2.5, 3]]);
    const coated = { ...scene, coats: [{ what: "coat:paint", thickness: 1e-4 }] };
    const skin = (notYet: ReadonlySet<string>): unknown =>
      lookedMarks(coated, still, false, { notYet }).find((m) => m.what === "body" && m.fill)?.fill?.role;
    expect(skin(new Set())).toBe("coatDark");
    expect(skin(new Set(["coat:paint"]))).toBe("woodDark");
  });

  test("the lit part stands out: it is drawn last, in the accent's colour, and the rest steps back", () => {
    const marks = lookedMarks(scene, still, true, { lit: "ballast:belly" });
    expect(marks.at(-1)?.what).toBe("ballast:belly");
    for (const m of marks)
      if (m.what === "ballast:belly") expect(m.stroke?.role).toBe("accent");
      else if (m.stroke) expect(m.stroke.alpha).toBeLessThanOrEqual(0.4);
    // A row that is nowhere on the bait changes nothing.
    expect(lookedMarks(scene, still, true, { lit: "coat:none" })).toEqual(posedMarks(scene, still, true));
  });
});

describe("the frame of a saved picture", () => {
  const plain = (number: string): string => number;
  const barOf = (marks: readonly Mark[]): { px: number; words: string } => {
    const lines = marks.find((m) => m.kind === "lines");
    const [a, b] = lines?.kind === "lines" ? lines.paths[0]! : [];
    const words = marks
      .flatMap((m) => (m.kind === "text" && / ?(mm|m|in|ft)$/.test(m.words) ? [m.words] : []))
      .at(-1);
    return { px: b!.x - a!.x, words: words ?? "" };
  };

  test("the scale bar is as long as it says, at every scale, and fits", () => {
    const metres: Record<string, number> = { m: 1, mm: 1e-3, ft: 0.3048, in: 0.0254 };
    const cases = [3, 12, 80, 700, 5000, 9000, 60000].flatMap((scale) =>
      (["metric", "inches"] as const).map((lengths) => ({ scale, lengths })),
    );
    for (const { scale, lengths } of cases)
      for (const width of [320, 860, 1440]) {
        const caption = { title: "A bait", moment: "2.14 s", scale, lengths, number: plain };
        const { marks, size } = frameOf({ width, height: 400 }, caption);
        const { px, words } = barOf(marks);
        const [number, unit] = words.split("\u202f");
        expect(lengths === "inches" ? ["in", "ft"] : ["mm", "m"]).toContain(unit);
        expect(px).toBeCloseTo(Number(number) * metres[unit!]! * scale, 6);
        expect(px).toBeGreaterThanOrEqual(48 * (1 - 1e-9));
        expect(px).toBeLessThanOrEqual(Math.max(0.3 * width, 120));
        const box = boxOfMarks(marks);
        expect([box.minX, box.maxX, box.maxZ]).toEqual([0, width, 0]);
        expect(0 - box.minZ).toBe(size.height);
        for (const p of marks.flatMap(placesOf)) expect(Number.isFinite(p.x + p.z)).toBe(true);
      }
  });

  test("a long name is cut so that it does not run into the bar; without a scale there is no bar", () => {
    const texts = (title: string, scale: number | null): string[] =>
      frameOf(
        { width: 360, height: 300 },
        { title, moment: "1.00 s", scale, lengths: "metric", number: plain },
      ).marks.flatMap((m) => (m.kind === "text" ? [m.words] : []));
    const [title] = texts("An invented bait with a name that is much too long", 5000);
    expect(title).toMatch(/^An inv.*…$/);
    expect(texts("A bait", 5000)).toHaveLength(3);
    expect(texts("A bait", null)).toEqual(["A bait", "1.00 s"]);
  });
});
