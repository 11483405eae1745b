import { describe, expect, it } from "vitest";
import { emptyBox, parseBox, pieceMass, planKinds, serializeBox, swapParts } from "../../../src/document";

const BOX = {
  format: "trimwright/box",
  version: 1,
  name: "bench drawer",
  drills_mm: [3, 4, 5],
  things: [
    { kind: "shot", name: "shot 4", count: 20, material: "lead", diameter_mm: 4 },
    {
      kind: "shot",
      name: "tungsten 4",
      count: 6,
      material: "tungsten",
      weighed: { count: 10, together_g: 5.7, resolution_g: 0.01 },
      diameter_mm: 4,
    },
    { kind: "wire", name: "tin wire", count: 40, material: "tin", diameter_mm: 3, cut_mm: 5 },
    { kind: "strip", name: "strip", count: 4, density_g_ml: 11, mass_g: 0.25 },
    {
      kind: "hook",
      name: "treble 6",
      count: 8,
      weighed: { count: 8, together_g: 4.16, resolution_g: 0.01 },
      size: "6",
    },
    { kind: "ring", name: "ring 2", count: 0, mass_g: 0.08 },
    { kind: "coat", name: "clear", count: 1, density_g_ml: 1.1, thickness_mm: 0.15 },
  ],
};
const read = (change: (box: typeof BOX) => unknown = (b) => b) =>
  parseBox(JSON.stringify(change(structuredClone(BOX))));
const box = () => {
  const parsed = read();
  if (!parsed.ok) throw new Error(parsed.problems.map((p) => p.message).join("\n"));
  return parsed.box;
};

describe("box file", () => {
  it("comes back as it was", () => {
    const text = serializeBox(box());
    const again = parseBox(text);
    expect(again.ok && again.box).toEqual(box());
    expect(serializeBox(box())).toBe(text);
    expect(parseBox(serializeBox(emptyBox())).ok).toBe(true);
  });
  it("masses: weighed together over their count, catalogue, or measures and density", () => {
    const [lead, tungsten, wire, strip, hook] = box().things.map(pieceMass);
    // π/6 · 4³ mm³ · 11.35 mg/mm³ (NIST) = 0.3803 g; π/4 · 3² · 5 mm³ · 7.31 = 0.2584 g
    expect((lead?.mass ?? 0) * 1e3).toBeCloseTo(0.3803, 4);
    expect(lead?.weighed).toBe(false);
    expect(tungsten).toEqual({ mass: 0.57e-3, weighed: true });
    expect((wire?.mass ?? 0) * 1e3).toBeCloseTo(0.2584, 4);
    expect(strip?.mass).toBeCloseTo(0.25e-3, 12);
    expect((hook?.mass ?? 0) * 1e3).toBeCloseTo(0.52, 12);
  });
  it("gives weights for a plan and parts for swaps", () => {
    const kinds = planKinds(box());
    expect(kinds.map((k) => [k.name, k.lead, k.inside, k.outside])).toEqual([
      ["shot 4", true, true, false],
      ["tungsten 4", false, true, false],
      ["tin wire", false, true, false],
      ["strip", false, false, true],
    ]);
    expect(planKinds({ ...box(), leadAllowed: false }).map((k) => k.name)).not.toContain("shot 4");
    expect(swapParts(box()).map((p) => [p.name, p.use, p.density])).toEqual([
      ["strip", "strip", 11000],
      ["treble 6", "hook", 7820],
    ]);
  });
  it.each([
    ["format", (b: typeof BOX) => ({ ...b, format: "other" }), "format"],
    ["version", (b: typeof BOX) => ({ ...b, version: 2 }), "version"],
    ["type", (b: typeof BOX) => ({ ...b, name: 5 }), "name"],
    ["twin", (b: typeof BOX) => ({ ...b, things: [...b.things, b.things[0]] }), "things[7].name"],
    [
      "material",
      (b: typeof BOX) => ({ ...b, things: [{ ...b.things[0], material: "leed" }] }),
      "things[0].material",
    ],
    ["kind", (b: typeof BOX) => ({ ...b, things: [{ ...b.things[0], kind: "shto" }] }), "things[0]"],
    ["mass", () => ({ ...BOX, things: [{ kind: "hook", name: "h", count: 1 }] }), "things[0]"],
    ["key", () => ({ ...BOX, drils_mm: [2] }), "drils_mm"],
  ])("refuses a wrong %s with its place and a remedy", (_, change, path) => {
    const parsed = read(change);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.problems[0]?.path).toContain(path);
    expect(parsed.problems[0]?.remedy.length).toBeGreaterThan(10);
    expect(parsed.problems[0]?.line).toBeGreaterThan(0);
  });
  it("refuses what is no box", () => {
    for (const text of ["", "[]", "null", "{", "3"]) expect(parseBox(text).ok).toBe(false);
  });
});
