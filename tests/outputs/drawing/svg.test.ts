// @vitest-environment jsdom
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { FORCE_LEGEND } from "../../../src/model/forces";
import { FILE } from "../../../src/ui/words/file";
import { STAGE } from "../../../src/ui/words/stage";
import { pictureWords } from "../../../src/ui/stage/words";
import { parseScenario } from "../../../src/document";
import { groundOf } from "../../../src/drawing/ground";
import { boxOfMarks, placesOf, type Mark } from "../../../src/drawing/mark";
import { paletteFrom } from "../../../src/drawing/palette";
import { pictureMarks, type Picture } from "../../../src/drawing/picture";
import { sceneOf } from "../../../src/drawing/scene";
import { heldStill, posedMarks, restingPlace } from "../../../src/drawing/still";
import { escaped, svgElements, svgOf } from "../../../src/drawing/svg";
import type { Scene } from "../../../src/drawing/types";
import { bait } from "../../lib/drawn";

const palette = paletteFrom({}, false, "Gill Sans, sans-serif");
const folder = join(import.meta.dirname, "../../../scenarios");

/** The picture as a tree; an XML error is one of its elements. */
function parsed(text: string): Element {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  expect(root.querySelector("parsererror")).toBeNull();
  expect(root.tagName).toBe("svg");
  return root;
}

const scenes: { file: string; scene: Scene }[] = [];
beforeAll(() => {
  for (const file of readdirSync(folder).filter((name) => name.endsWith(".json"))) {
    const read = parseScenario(readFileSync(join(folder, file), "utf8"));
    if (!read.ok) throw new Error(`${file} is not a scenario`);
    const { bait: made, tackle, around } = read.compiled;
    scenes.push({
      file,
      scene: sceneOf(made, tackle, around.depth, { weed: 1, zone: { from: 0.5, to: 1.5 } }),
    });
  }
});

describe("marks of every scenario", () => {
  test("are finite, and inside the scene's box with a margin for the datum line and the hooks' bends", () => {
    expect(scenes.length).toBeGreaterThan(5);
    for (const { file, scene } of scenes) {
      const marks = posedMarks(scene, heldStill(scene, { x: 0, z: 0 }, 0), true);
      for (const p of marks.flatMap(placesOf)) expect(Number.isFinite(p.x + p.z), file).toBe(true);
      const box = boxOfMarks(marks);
      const { extent, length } = scene;
      const margin = 0.12 * length + 0.004;
      expect(box.minX, file).toBeGreaterThanOrEqual(extent.minX - margin);
      expect(box.maxX, file).toBeLessThanOrEqual(extent.maxX + margin);
      expect(box.minZ, file).toBeGreaterThanOrEqual(extent.minZ - margin);
      expect(box.maxZ, file).toBeLessThanOrEqual(extent.maxZ + margin);
    }
  });

  test("make a whole picture of the water that is well-formed SVG without NaN, in four framings", () => {
    for (const { file, scene } of scenes)
      for (const [scale, z] of [
        [5000, 0],
        [5000, -0.2],
        [60, -1],
        [200, -40],
      ] as const) {
        const snapshot = heldStill(scene, restingPlace(scene), 0.3);
        const line = [snapshot.eye, { x: 3, z: 0 }, { x: 9, z: 2 }];
        const force = { key: "weight", at: snapshot.G, force: { x: 0.1, z: -0.4 } } as const;
        const picture: Picture = {
          bait: { scene, snapshot: { ...snapshot, line, forces: [force] } },
          ghost: { scene, snapshot },
          rivals: [{ scene, snapshot, letter: "B" }],
          trace: [snapshot.G, { x: 1, z: -1 }, { x: 2, z: -2 }],
          lengths: scale > 100 ? "metric" : "inches",
          words: pictureWords("en"),
          shows: { forces: true, arrows: "linear", sum: false, labels: true, xray: scale > 100 },
        };
        for (const size of [
          { width: 1440, height: 700 },
          { width: 360, height: 300 },
        ]) {
          const marks = pictureMarks(picture, groundOf({ x: 0, z, scale }, size));
          const box = { minX: 0, maxX: size.width, minZ: -size.height, maxZ: 0 };
          const text = svgOf(marks, { palette, scale: 1, box, label: scene.name });
          expect(text, file).not.toMatch(/NaN|Infinity|undefined|null/);
          // The check for well-formed XML is slow: one size and one close framing tell as much as all.
          if (size.width < 400 && z < 0) parsed(text);
        }
      }
  });
});

test("a picture speaks the language that is read: its words, its decimal marks, and the names of its forces", async () => {
  await Promise.all([STAGE.ready("de"), FILE.ready("de")]);
  const { scene } = scenes[0] ?? { scene: null };
  if (scene === null) throw new Error("there are no scenes");
  const snapshot = heldStill(scene, { x: 0, z: -0.2 }, 0.3);
  const forces = [
    { key: "weight", at: snapshot.G, force: { x: 0.1, z: -0.4 } },
    { key: "hooks", at: snapshot.G, force: { x: 1e-4, z: 0 } },
  ] as const;
  const picture: Picture = {
    bait: {
      scene: { ...scene, weed: 0.21, zone: { from: 0.1, to: 0.3 }, depth: 4 },
      snapshot: { ...snapshot, forces },
    },
    ghost: { scene, snapshot: heldStill(scene, { x: 60, z: -0.2 }, 0) },
    rivals: [{ scene, snapshot, letter: "B" }],
    trace: [],
    lengths: "metric",
    words: pictureWords("de"),
    shows: { forces: true, arrows: "log", sum: true, labels: true, xray: true },
  };
  const ground = groundOf({ x: 0, z: -0.2, scale: 2000 }, { width: 1440, height: 700 });
  const marks = pictureMarks(picture, ground);
  const said = marks.flatMap((m) =>
    m.kind === "text" ? [m.words] : m.kind === "arrow" ? [m.title ?? ""] : [],
  );
  for (const words of [
    "Tiefe",
    "Kraut",
    "Fangzone",
    "Variante B",
    /^angeheftete Variante \d+,\d\sm entfernt$/,
  ])
    expect(said.filter((one) => (typeof words === "string" ? one === words : words.test(one)))).toHaveLength(
      1,
    );
  expect(said.filter((one) => /^Länge ∝ Kraft, Pfeil an Pfeil ab G$/.test(one))).toHaveLength(1);
  expect(said.filter((one) => /^zu klein zum Zeichnen: /.test(one))).toHaveLength(1);
  expect(said.some((one) => /^W: .*, 412\smN$/.test(one))).toBe(true);
  expect(said.some((one) => /^zu klein zum Zeichnen: .* \d,\d+\smN/.test(one))).toBe(true);
  // No decimal point and no English word is left.
  expect(said.filter((one) => /\d\.\d/.test(one))).toEqual([]);
  const english = FORCE_LEGEND.map(({ label }) => label).filter((label) =>
    said.some((one) => one.includes(label)),
  );
  expect(english).toEqual([]);
});

describe("the SVG writer", () => {
  const text = (words: string, title?: string): Mark => ({
    kind: "text",
    what: null,
    at: { x: 0, z: 0 },
    words,
    size: 12,
    anchor: { x: 0, y: 0 },
    fill: { role: "ink" },
    ...(title === undefined ? {} : { title }),
  });
  const box = { minX: 0, maxX: 10, minZ: 0, maxZ: 10 };

  test("keeps any words as words: nothing in a name becomes an element or an attribute", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), fc.string(), (words, label) => {
        const root = parsed(svgOf([text(words, words)], { palette, scale: 1, box, label }));
        expect(root.querySelectorAll("*").length).toBe(3);
        expect(root.getAttributeNames().sort()).toEqual(["aria-label", "role", "viewBox", "xmlns"]);
      }),
      { seed: 7, numRuns: 60 },
    );
    const root = parsed(
      svgOf([text('"><script>alert(1)</script>&amp;')], { palette, scale: 1, box, label: "'\"<>&" }),
    );
    expect(root.querySelector("script")).toBeNull();
    expect(root.querySelector("text")?.textContent).toBe('"><script>alert(1)</script>&amp;');
    expect(root.getAttribute("aria-label")).toBe("'\"<>&");
    expect(escaped("a\u0000b\ud800c\ufffed")).toBe("abcd");
  });

  test("refuses a place that is no number, instead of writing it", () => {
    const bad: Mark = { kind: "circle", what: null, at: { x: NaN, z: 0 }, radius: 1, fill: { role: "ink" } };
    expect(() => svgElements([bad], { palette, scale: 1 })).toThrow(/NaN/);
  });

  test("draws the bait where the marks are: y down, px of the scale, widths no less than their least", () => {
    const marks: Mark[] = [
      {
        kind: "path",
        what: null,
        points: [
          { x: 0, z: 0 },
          { x: 0.01, z: 0.02 },
        ],
        stroke: { role: "ink", px: 1, real: 0.003, dash: [3, 2] },
      },
    ];
    const [element] = svgElements(marks, { palette, scale: 1000 });
    expect(element).toMatchObject({
      tag: "polyline",
      attributes: { points: "0,0 10,-20", "stroke-width": "3", "stroke-dasharray": "3 2", fill: "none" },
    });
  });

  test("says its size and its frame", () => {
    const root = parsed(
      svgOf([], {
        palette,
        scale: 1000,
        box: { minX: -0.08, maxX: 0, minZ: -0.01, maxZ: 0.02 },
        label: "side",
        size: { width: "80mm", height: "30mm" },
      }),
    );
    expect(root.getAttribute("viewBox")).toBe("-80 -20 80 30");
    expect(root.getAttribute("width")).toBe("80mm");
  });

  test("the bait of every part has a mark for each", () => {
    const scene = sceneOf(bait, null, 2);
    const whats = new Set(posedMarks(scene, heldStill(scene, { x: 0, z: 0 }, 0), true).map((m) => m.what));
    for (const what of ["body", "bib", "tie", "ballast:belly", "chamber:rattle", "balls"])
      expect([...whats]).toContain(what);
  });
});
