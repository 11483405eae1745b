import { describe, expect, it } from "vitest";
import {
  lineMaterial,
  lineMaterials,
  lineStiffness,
  material,
  materials,
  nearestNames,
} from "../../src/model/materials";
import { number, readCsv } from "./read-csv";

// data/wood.csv: USDA Wood Handbook FPL-GTR-282 and others; data/materials.csv: NIST, PNNL-15870 and handbooks.

const densityOf = (name: string): number => {
  const found = material(name);
  if (!found) throw new Error(`no material ${name}`);
  return found.density;
};

describe("woods", () => {
  const rows = readCsv("wood.csv");
  const handbook = rows.filter((r) => r["source"]?.includes("Table 5-3b"));
  const tropical = rows.filter((r) => r["source"]?.includes("Table 5-5b"));

  it("holds every temperate species of the handbook, at 12 % moisture", () => {
    expect(handbook.length).toBeGreaterThan(35);
    for (const row of handbook)
      expect(densityOf(row["name"] ?? "")).toBeCloseTo(number(row, "density_12pct_kg_m3"), 1);
  });

  it("turns oven-dry over green volume into density at 12 % for tropical species", () => {
    expect(tropical.length).toBeGreaterThan(12);
    for (const row of tropical) {
      const name = (row["name"] ?? "").replace(/ \(.*/, "");
      if (name === "Balsa") continue; // its own published trade average is used
      expect(densityOf(name)).toBeCloseTo(number(row, "density_12pct_kg_m3"), 1);
    }
  });

  it("gives balsa its trade average and its wide range", () => {
    const balsa = material("balsa");
    const row = rows.find((r) => r["name"] === "Balsa, trade");
    expect(balsa?.density).toBe(number(row ?? {}, "density_12pct_kg_m3"));
    // all three published means lie inside or at the edge of what is said about it
    expect(balsa?.note).toMatch(/120.*184/);
    expect(balsa?.relativeUncertainty).toBeGreaterThan(0.1);
  });

  it("has the others as printed", () => {
    for (const [name, row] of [
      ["paulownia", "Paulownia"],
      ["lime, large-leaved", "Lime, large-leaved"],
      ["lime, small-leaved", "Lime, small-leaved"],
    ] as const)
      expect(densityOf(name)).toBe(number(rows.find((r) => r["name"] === row) ?? {}, "density_12pct_kg_m3"));
  });
});

describe("metals, plastics, lines", () => {
  const rows = readCsv("materials.csv");
  const known: Record<string, string> = {
    Lead: "lead",
    "Tungsten, pure": "pure tungsten",
    Bismuth: "bismuth",
    "Tin, white": "tin",
    Zinc: "zinc",
    Copper: "copper",
    "Nickel (plating)": "nickel",
    Iron: "iron",
    "Carbon steel (0.5 % C)": "carbon steel",
    "Stainless 302": "stainless 302",
    "Stainless 304": "stainless steel",
    "Stainless 440": "stainless 440",
    "Bronze, typical": "bronze",
    "Brass C36000 free-cutting": "brass",
    "Brass C26000 cartridge": "cartridge brass",
    "Tungsten heavy alloy class 1": "tungsten",
    "Tungsten heavy alloy class 4": "tungsten alloy, class 4",
    "Electroless Ni-P plating": "electroless nickel",
    Polycarbonate: "polycarbonate",
    "PMMA (acrylic)": "acrylic",
    "Nylon 6": "nylon",
    PVDF: "PVDF",
    "Polyethylene (medium)": "polyethylene",
    Polystyrene: "polystyrene",
    POM: "POM",
    "Glass, plate": "glass",
    "Paraffin wax": "paraffin wax",
    PET: "PET",
    "Polyurethane tooling board": "tooling board",
    "E-glass fibre": "glass fibre",
    "G-10 / FR-4 laminate": "laminate",
    ABS: "ABS",
    "UHMWPE gel-spun fibre": "braid",
    "Epoxy, cured unfilled": "epoxy",
    "UV-cured acrylate resin": "UV resin",
    "Fluorocarbon (PVDF) line": "fluorocarbon",
    "Nylon monofilament line": "nylon",
  };

  it.each(Object.entries(known))("%s", (printed, name) => {
    const row = rows.find((r) => r["material"] === printed);
    expect(row).toBeDefined();
    expect(densityOf(name)).toBe(number(row ?? {}, "density_kg_m3"));
  });

  it("keeps the disputed brass inside its stated range", () => {
    const [low, high] = material("brass")?.range ?? [0, 0];
    for (const row of rows.filter((r) => r["material"]?.startsWith("Brass"))) {
      expect(number(row, "density_kg_m3")).toBeGreaterThanOrEqual(low);
      expect(number(row, "density_kg_m3")).toBeLessThanOrEqual(high);
    }
  });

  it("has line densities as the model page gives them, and their stretch in the known range", () => {
    expect(lineMaterial("nylon")?.density).toBe(1140);
    expect(lineMaterial("fluorocarbon")?.density).toBe(1780);
    expect(lineMaterial("braid")?.density).toBe(970);
    const nylon = lineMaterial("monofilament");
    const braid = lineMaterial("PE braid");
    if (!nylon || !braid) throw new Error("line materials are missing");
    // nylon of 0.25 mm: about 100 N per unit strain; braids of 0.13–0.18 mm: 500–1000 N
    expect(Math.abs(lineStiffness(nylon, 0.25e-3) / 100 - 1)).toBeLessThan(0.05);
    expect(lineStiffness(braid, 0.13e-3)).toBeGreaterThan(500);
    expect(lineStiffness(braid, 0.18e-3)).toBeLessThan(1050);
  });
});

describe("the table", () => {
  it("is honest: every entry has a source, a sane density, and a range that holds it", () => {
    for (const m of [...materials, ...lineMaterials]) {
      expect(m.source.length, m.name).toBeGreaterThan(8);
      expect(m.density, m.name).toBeGreaterThan(50);
      expect(m.density, m.name).toBeLessThan(20_000);
      if (m.range) {
        expect(m.density, m.name).toBeGreaterThanOrEqual(m.range[0]);
        expect(m.density, m.name).toBeLessThanOrEqual(m.range[1]);
      }
    }
  });

  it("finds every trade word that scenarios use, however it is spelled", () => {
    const words = [
      ...["alder", "balsa", "basswood", "cedar", "red cedar", "pine", "maple", "beech", "jelutong"],
      ...[
        "carbon steel",
        "stainless steel",
        "brass",
        "tin",
        "lead",
        "tungsten",
        "bismuth",
        "copper",
        "aluminium",
      ],
      ...["polycarbonate", "acrylic", "laminate", "epoxy", "glass", "nylon", "fluorocarbon", "braid"],
    ];
    for (const word of words) expect(material(word)?.kind, word).toBeDefined();
    expect(material("  Stainless   STEEL ")).toBe(material("stainless steel"));
    expect(material("alder")?.kind).toBe("wood");
    expect(material("tin")?.kind).toBe("metal");
    expect(material("unobtainium")).toBeNull();
    expect(lineMaterial("silk")).toBeNull();
  });

  it("suggests what a misspelt name may mean, and nothing where nothing is near", () => {
    expect(nearestNames("aldre")[0]).toBe("alder");
    expect(nearestNames("stainles")[0]).toMatch(/^stainless/);
    expect(nearestNames("polycarbonat", 1)).toEqual(["polycarbonate"]);
    expect(nearestNames("tungsten carbide")[0]).toMatch(/tungsten/);
    expect(nearestNames("xyzzyqwv")).toEqual([]);
    expect(nearestNames("fluorocarb", 2, lineMaterials)[0]).toBe("fluorocarbon");
  });
});
