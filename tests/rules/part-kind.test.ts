import { readFileSync } from "node:fs";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Copy } from "./copy";

/**
 * A made-up kind of part, a keel plate, is added to a copy of the sources by the recipe of DEVELOPERS.md. It takes two new
 * files and a line in each of two lists (and two pages of the docs): whatever else the program does with parts must follow.
 */

const MODEL = `
import type { Vec } from "../base";
import { above0, point, stuff } from "./checks";
import { nameOr } from "./rows";
import { aft } from "./small-changes";
import { drawn } from "./spread";
import type { Part, Stuff } from "./types";

/** A flat plate that stands below the belly, wholly in the water. */
export interface KeelPlateSpec {
  readonly name: string;
  /** Middles of its front and rear edges. */
  readonly from: Vec;
  readonly to: Vec;
  readonly deep: number;
  readonly thickness: number;
  readonly stuff: Stuff;
}

const volumeOf = (k: KeelPlateSpec): number =>
  Math.sqrt((k.to.x - k.from.x) ** 2 + (k.to.z - k.from.z) ** 2) * k.deep * k.thickness;

export const keelPlate: Part<KeelPlateSpec, "keelPlates", "item", true> = {
  many: true,
  groups: ["keelPlates"],
  pieces: ["item"],
  word: "keel plate",
  name: (k) => k.name,
  check(k, path) {
    point(\`\${path}.from_mm\`, k.from);
    point(\`\${path}.to_mm\`, k.to);
    above0(\`\${path}.deep_mm\`, k.deep, "m");
    above0(\`\${path}.thickness_mm\`, k.thickness, "m");
    stuff(path, k.stuff);
  },
  rows(k) {
    const volume = volumeOf(k);
    return [
      {
        item: nameOr(k.name, "keel plate"),
        group: "keelPlates",
        part: "item",
        mass: volume * k.stuff.density,
        massCentre: { x: (k.from.x + k.to.x) / 2, z: (k.from.z + k.to.z) / 2 },
        displaced: volume,
        immersing: { as: "pieces", pieces: [{ a: k.from, b: k.to, volume }] },
        ownVolume: volume,
      },
    ];
  },
  sketch(k) {
    const half = k.deep / 2;
    const points = [
      { x: k.from.x, z: k.from.z + half },
      { x: k.to.x, z: k.to.z + half },
      { x: k.to.x, z: k.to.z - half },
      { x: k.from.x, z: k.from.z - half },
    ];
    return {
      figures: [{ role: "metal", layer: "front", is: "polygon", points }],
      above: () => [
        {
          role: "metal",
          layer: "behind",
          is: "path",
          points: [k.from, k.to].map(({ x }) => ({ x, z: 0 })),
          thickness: k.thickness,
        },
      ],
      across: (x) =>
        x <= k.from.x && x >= k.to.x
          ? [{ role: "metal", layer: "inside", is: "circle", at: { x: 0, z: k.from.z }, radius: k.thickness / 2 }]
          : [],
      dimensions: [{ key: "deep_mm", from: k.from, to: { x: k.from.x, z: k.from.z - half } }],
    };
  },
  changes: (k) => [
    { piece: "item", change: "1 mm aft", at: k.from, entries: [{ ...k, from: aft(k.from), to: aft(k.to) }] },
  ],
  uncertain(k, draw) {
    const e = draw.input(\`\${draw.row.item}: density\`);
    const sigma = draw.spread(k.stuff);
    draw.model(() => {
      draw.rows.mass[draw.at] = draw.row.mass * drawn(1, sigma, e());
    });
  },
};
`;

const DOCUMENT = `
import { z } from "zod";
import { above, list, name, point } from "../fields";
import { stage } from "../schema-bench";
import { mm, place, stuff } from "../si";
import { density, material } from "./common";
import { stretchPoint } from "./types";
import type { PartFile, Read } from "./types";

const schema = z
  .strictObject({
    name: name("Name"),
    from_mm: point("Front edge"),
    to_mm: point("Rear edge"),
    deep_mm: above("Deep", "mm", [0, 200], [2, 30, 0.5]),
    thickness_mm: above("Plate thickness", "mm", [0, 30], [0.5, 3, 0.1]),
    material: material(),
    density_g_ml: density(),
    stage: stage(),
  })
  .meta({ title: "Keel plate" });

const field = list("Keel plates", schema, 10);

export const keelPlates: PartFile<"keelPlates", Read<typeof schema>, typeof field> = {
  field,
  compile: (one) => ({
    name: one.name,
    from: place(one.from_mm),
    to: place(one.to_mm),
    deep: mm(one.deep_mm),
    thickness: mm(one.thickness_mm),
    stuff: stuff(one, "metal", one.name),
  }),
  dense: (one) => [["", one]],
  usualStage: () => "dressed",
  stretch: (one, by) => ({
    ...one,
    from_mm: stretchPoint(by, one.from_mm),
    to_mm: stretchPoint(by, one.to_mm),
  }),
  board: {
    words: "Keel plate",
    start: (body) => ({
      name: "keel plate",
      from_mm: [0.4 * body.length, -10],
      to_mm: [0.6 * body.length, -10],
      deep_mm: 5,
      thickness_mm: 1,
      material: "stainless steel",
    }),
    ways: ["along"],
    handles: (one) => [{ id: "from", at: one.from_mm, words: "the front edge" }],
    drag: (one, _, [s, z]) => ({ ...one, from_mm: [s, z] }),
  },
  section: { key: "keel", title: "Keel plates" },
  turned: () => [{ path: ["deep_mm"], slider: "field" }],
  gist: (one) => one.name,
  counts: "It stands in the water: it counts by what it exceeds the water it displaces.",
};
`;

const ENTRY = `
export { checkScenario, compile, countsOf, parseScenario, scenarioJsonSchema, serialize, stageOf, stretchParts } from "./src/document";
export { staticsOf, floating, band } from "./src/model/statics";
export { sensitivity } from "./src/model/bench";
export { boardBoxes, bodyMarks, sceneOf, sectionMarks, topMarks, thingOf } from "./src/drawing";
export { partSections } from "./src/ui/state/inputs";
`;

type Program = typeof import("../../src/document") &
  Pick<typeof import("../../src/model/statics"), "staticsOf" | "floating" | "band"> &
  Pick<typeof import("../../src/model/bench"), "sensitivity"> &
  Pick<
    typeof import("../../src/drawing"),
    "boardBoxes" | "bodyMarks" | "sceneOf" | "sectionMarks" | "topMarks" | "thingOf"
  > &
  Pick<typeof import("../../src/ui/state/inputs"), "partSections">;

/** The compiler reads most of the program twice: on a loaded machine that takes minutes, ms. */
const PATIENCE = 600_000;

const copy = new Copy("part-kind");
afterAll(() => {
  copy.remove();
});

/** Every file that the new kind touches, by the recipe. */
const touched = new Set<string>();
const write = (file: string, text: string): void => {
  touched.add(file);
  copy.write(file, text);
};
/** Puts an import before the first one and a line after a line that stands there. */
function register(file: string, imported: string, after: string, line: string): void {
  const text = readFileSync(copy.path(file), "utf8");
  if (!text.includes(after)) throw new Error(`${file} no longer holds "${after}"`);
  write(file, `${imported}\n${text.replace(after, `${after}${line}`)}`);
}

/** What the compiler finds wrong, in one file of the copy or in all that the roots reach. */
function faults(roots: readonly string[], only?: string): string[] {
  const { config } = ts.readConfigFile("tsconfig.json", (f) => readFileSync(f, "utf8")) as {
    config: { compilerOptions: object };
  };
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, ".");
  const program = ts.createProgram(
    roots.map((f) => copy.path(f)),
    { ...options, noEmit: true, allowJs: false, checkJs: false },
  );
  const found =
    only === undefined
      ? ts.getPreEmitDiagnostics(program)
      : program.getSemanticDiagnostics(program.getSourceFile(copy.path(only)));
  return found.map(
    (d) => `${d.file?.fileName ?? ""}: ${ts.flattenDiagnosticMessageText(d.messageText, " ")}`,
  );
}

describe("a made-up kind of part", () => {
  let forgotten: string[] = [];
  let program: Program;

  beforeAll(async () => {
    write("src/model/parts/keel-plate.ts", MODEL);
    register(
      "src/model/parts/registry.ts",
      'import { keelPlate } from "./keel-plate";',
      "coats: coat,",
      "\n  keelPlates: keelPlate,",
    );
    forgotten = faults(["src/document/parts/registry.ts"], "src/document/parts/registry.ts");
    write("src/document/parts/keel-plates.ts", DOCUMENT);
    register(
      "src/document/parts/registry.ts",
      'import { keelPlates } from "./keel-plates";',
      "fittings, coats",
      ", keelPlates",
    );
    program = await copy.program<Program>(ENTRY, "program.mjs");
  }, PATIENCE);

  it("does not compile while the document's list forgets it", () => {
    expect(forgotten.length).toBeGreaterThan(0);
    expect(forgotten.every((f) => f.includes("document/parts/registry.ts"))).toBe(true);
    expect(forgotten.join()).toContain("keelPlates");
  });

  it("touches at most six files with its two pages of docs, none of them in drawing, runner or ui", () => {
    const docs = ["docs/model.md", "docs/scenario-format.md"];
    expect([...touched].length + docs.length).toBeLessThanOrEqual(6);
    for (const file of touched) expect(file).toMatch(/^src\/(model|document)\/parts\//);
  });

  it(
    "compiles everywhere: model, document, drawing, runner and the page's modules",
    () => {
      const roots = [
        "src/document/index.ts",
        "src/drawing/index.ts",
        "src/runner/main.ts",
        "src/runner/service.ts",
      ];
      const page = [
        "src/ui/state/inputs.ts",
        "src/ui/views/weigh/account.ts",
        "src/ui/views/weigh/account-why.ts",
      ];
      const ambient = ["src/ui/svelte.d.ts"].filter((f) => ts.sys.fileExists(copy.path(f)));
      expect(faults([...roots, ...page, ...ambient])).toEqual([]);
    },
    PATIENCE,
  );

  it("weighs, floats, errs, stretches, is drawn, has its inputs, words and stage, and is saved", () => {
    const text = readFileSync("scenarios/suspender-90.json", "utf8");
    const file = JSON.parse(text) as { readonly bait: object };
    const withPlate = (one: object) => JSON.stringify({ ...file, bait: { ...file.bait, keelPlates: [one] } });
    const plain = program.parseScenario(text);
    if (!plain.ok) throw new Error("the example is refused");
    const plate = {
      name: "fin",
      from_mm: [30, -14],
      to_mm: [50, -14],
      deep_mm: 6,
      thickness_mm: 0.5,
      material: "brass",
    };
    const parsed = program.parseScenario(withPlate(plate));
    if (!parsed.ok) throw new Error(parsed.problems.map((p) => p.message).join());
    const { compiled, scenario } = parsed;
    const row = compiled.bait.items.find((i) => i.item === "fin");
    if (!row) throw new Error("no row");

    // 20 × 6 × 0.5 mm of brass (8490 kg/m³, as the table has it), wholly outside.
    const volume = 20e-3 * 6e-3 * 0.5e-3;
    expect(row.mass).toBeCloseTo(volume * 8490, 12);
    const water = compiled.water.density;
    const before = program.staticsOf(plain.compiled.bait, water);
    const after = program.staticsOf(compiled.bait, water);
    // The body of the example is not weighed: its own rows do not change.
    expect(after.netBuoyancy - before.netBuoyancy).toBeCloseTo(volume * (water - 8490), 12);
    expect(program.band(compiled.bait, water, { samples: 200 }).contributions.map((c) => c.input)).toContain(
      "fin: density",
    );
    const small = program
      .sensitivity(compiled.bait, compiled.around, { rise: false })
      .find(({ path }) => path === "bait.keelPlates[0]");
    // Moved as it is, it changes no weight; its weight in water, moved aft, lifts the nose.
    expect(small?.item).toBe("fin");
    expect(small?.net).toBeCloseTo(0, 12);
    expect(small?.trim).toBeGreaterThan(0);
    expect(program.floating(compiled.bait, water)).toBeDefined();
    expect(program.stageOf(scenario.bait, row)).toBe("dressed");
    expect(program.countsOf(row.group)).toMatch(/stands in the water/);
    expect(program.partSections(scenario).map((s) => s.title)).toContain("Keel plates");
    const scene = program.sceneOf(compiled.bait, compiled.tackle, 3);
    const isDrawn = (marks: readonly { readonly what: string | null }[]): boolean =>
      marks.some((m) => m.what === "keel plate:fin");
    expect(isDrawn(program.bodyMarks(scene, false))).toBe(true);
    expect(isDrawn(program.topMarks(compiled.bait, scene))).toBe(true);
    expect(isDrawn(program.sectionMarks(compiled.bait, 40e-3, scene))).toBe(true);
    expect(isDrawn(program.sectionMarks(compiled.bait, 60e-3, scene))).toBe(false);
    // Its lower edge, 3 mm below the middle of the plate, is in every view of the board.
    expect(program.boardBoxes(scene, compiled.bait).side.minZ).toBeLessThan(-17e-3);
    expect(program.thingOf("keel plate:fin")).toEqual({ kind: "keel plate", name: "fin" });
    const saved = program.serialize(scenario);
    expect(program.parseScenario(saved)).toEqual(expect.objectContaining({ scenario }));
    expect(JSON.stringify(program.scenarioJsonSchema())).toContain("keelPlates");
    const twice = (mm: number): number => 2 * mm;
    const same = (mm: number): number => mm;
    const longer = program.stretchParts(scenario.bait, {
      station: twice,
      height: same,
      tall: same,
      wide: same,
    });
    expect(JSON.stringify(longer)).toContain('"from_mm":[60,-14]');
    // What is wrong with it is said at its place.
    const wrong = program.parseScenario(withPlate({ ...plate, material: "bras" }));
    expect(wrong.ok ? "" : wrong.problems[0]?.path).toBe("bait.keelPlates[0].material");
  });
});

describe("the recipe for a part of the bait", () => {
  const recipe =
    /\*\*A part of the bait\.\*\*[\s\S]*?(?=\n\n\*\*)/.exec(readFileSync("DEVELOPERS.md", "utf8"))?.[0] ?? "";
  /** Names of the members of an exported interface, as the compiler reads them. */
  function members(file: string, name: string): string[] {
    const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.ESNext, true);
    const found = source.statements.find((s) => ts.isInterfaceDeclaration(s) && s.name.text === name);
    if (!found || !ts.isInterfaceDeclaration(found)) throw new Error(`${file} has no interface ${name}`);
    return found.members.flatMap((m) => (m.name ? [m.name.getText()] : []));
  }

  it("names every file that the kind above touches", () => {
    for (const file of [
      "src/model/parts/registry.ts",
      "src/document/parts/registry.ts",
      "docs/model.md",
      "docs/scenario-format.md",
    ])
      expect(recipe).toContain(`\`${file}\``);
    expect(recipe).toContain("`src/model/parts/KIND.ts`");
    expect(recipe).toContain("`src/document/parts/KINDS.ts`");
  });

  it("names every member that a kind may have, and none that it has not", () => {
    const parts = [
      ...members("src/model/parts/types.ts", "Part"),
      ...members("src/document/parts/types.ts", "PartFile"),
    ];
    for (const name of parts) expect(recipe).toContain(`\`${name}\``);
    const named = [...recipe.matchAll(/`([a-z][A-Za-z]*)`/g)].map((m) => m[1]);
    for (const name of named) expect(parts).toContain(name);
  });
});
