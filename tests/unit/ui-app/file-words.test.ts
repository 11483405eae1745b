import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import {
  attitudeWords,
  BY_HAND,
  cautions,
  compile,
  countsOf,
  floatWords,
  handPlace,
  MOMENTS,
  openLibrary,
  parseBox,
  parseScenario,
  PART_FILES,
  partHandles,
  partKinds,
  putOn,
  readLink,
  riseWords,
  scenarioJsonSchema,
  STAGES,
  usualFor,
} from "../../../src/document";
import { boxSchema } from "../../../src/document/box-schema";
import { SCALE_WORDS, SUM_WORDS } from "../../../src/drawing";
import { FORCE_LEGEND } from "../../../src/model/forces";
import { lineMaterials, materials } from "../../../src/model/materials";
import { PART_GROUPS, PART_KEYS, PARTS } from "../../../src/model/parts";
import { FORMS } from "../../../src/model/shaping";
import { starter } from "../../../src/ui/maker";
import { Below } from "../../../src/ui/words/base";
import { baits } from "../../../src/languages/de-baits";
import { bench } from "../../../src/languages/de-bench";
import { beside } from "../../../src/languages/de-beside";
import { cautions as harm } from "../../../src/languages/de-cautions";
import { materials as stuffs } from "../../../src/languages/de-materials";
import { messages } from "../../../src/languages/de-messages";
import { model } from "../../../src/languages/de-model";
import { names } from "../../../src/languages/de-names";
import { drawing, inputs, parts } from "../../../src/languages/de-parts";
import { schema } from "../../../src/languages/de-schema";
import { state } from "../../../src/languages/de-state";
import { steps } from "../../../src/languages/de-steps";
import {
  bodyInputs,
  cadenceInputs,
  partSections,
  tackleInputs,
  waterInputs,
} from "../../../src/ui/state/inputs";
import { columnInputs, reelInputs } from "../../../src/ui/state/retrieve";
import { texts } from "../../../src/languages/de";
import { sample, type Sample } from "../../lib/sample";
import { english, saidIn } from "../../lib/said";
import { scenarioOf, SCENARIOS } from "../../lib/scenarios";

const below = new Below({ de: () => Promise.resolve({ texts }) });
const german = (english: string): string => below.in("de").of(english);
beforeAll(() => below.ready("de"));

/** Texts that are not told in German, and those that are told in part. */
const untold = (all: Iterable<string>): readonly string[] =>
  [...new Set(all)].filter((text) => english(german(text)) || german(text) === text);

/** The same in both languages: names of books, symbols, formulas of letters alone, keys of a file. */
const SAME =
  /^(?:Name|Material|Ballast|Pause|ABS|POM|PET|PVDF|balsa|ceiba|cuangare|jelutong|limba|teak|paulownia|fluorocarbon|nylon|nickel|bronze|aluminium|baits, box)$|^PNNL-15870 Rev\. 1, 2011, Compendium of Material Composition Data$|^NIST|^−½ρ u|^docs\/model|^Archimedes; docs/i;
const without = (all: readonly string[]): readonly string[] => all.filter((text) => !SAME.test(text));

describe("German of what comes from below the page", () => {
  it("has no text twice with two meanings, and none that is empty", () => {
    const all = new Map<string, string>();
    for (const table of [
      schema,
      beside,
      state,
      steps,
      parts,
      names,
      inputs,
      drawing,
      stuffs,
      baits,
      harm,
      messages,
      model,
      bench,
    ])
      for (const [text, told] of Object.entries(table)) {
        expect(told.trim(), text).not.toBe("");
        expect(all.get(text) ?? told, text).toBe(told);
        all.set(text, told);
      }
  });

  it("has the same places in both languages, and no English left", () => {
    const places = (text: string): readonly string[] =>
      [...text.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();
    for (const [text, told] of Object.entries(texts)) expect(places(told), text).toEqual(places(text));
    // Names of books and of those who wrote them are English here too.
    const cited = /Handbook|Compendium|Tropical Timbers|Development|Drag, Kap/;
    expect(Object.values(texts).filter((told) => english(told) && !cited.test(told))).toEqual([]);
  });

  it("has every title, help and choice of the file of a bait and of a box", () => {
    const said = new Set<string>();
    const look = (one: unknown): void => {
      if (typeof one !== "object" || one === null) return;
      for (const [key, value] of Object.entries(one))
        if ((key === "title" || key === "description") && typeof value === "string") said.add(value);
        else if (key === "enum" && Array.isArray(value)) value.forEach((choice) => said.add(String(choice)));
        else if (key === "const" && typeof value === "string" && !value.includes("/")) said.add(value);
        else look(value);
    };
    look(scenarioJsonSchema());
    look(z.toJSONSchema(boxSchema));
    expect(said.size).toBeGreaterThan(250);
    expect(untold(without([...said]))).toEqual([]);
  });

  it("has the kinds of parts, their pieces, sections, places and stages", () => {
    const body = { length: 80, at: () => ({ top: 9, bottom: -9, half: 7 }) };
    const kinds = PART_KEYS.flatMap((key) => {
      const { word, pieces, groups } = PARTS[key];
      const { section, board } = PART_FILES[key];
      const handles = partHandles({ key, entry: board.start(body, { along: 0, up: 0 }) as object });
      return [word, ...pieces, ...groups, ...(section === null ? [] : [section.title])].concat(
        handles.map(({ words }) => words),
      );
    });
    const counts = PART_GROUPS.flatMap((group) => countsOf(group) ?? []);
    const things = [...usualFor(1000).things, ...Object.values(BY_HAND).flat()].map(({ name }) => name);
    const forms = FORMS.map(({ words }) => words);
    const said = ["body", "corrections", ...kinds, ...counts, ...partKinds.map(({ words }) => words)];
    expect(untold(without([...said, ...things, ...forms, ...STAGES, ...MOMENTS]))).toEqual([]);
  });

  it("has every material, force and caution, and the ready baits", () => {
    const stuff = [...materials, ...lineMaterials].flatMap((one) => [one.name, one.source, one.note ?? ""]);
    const forces = FORCE_LEGEND.flatMap(({ label, formula, source }) => [label, formula, source]);
    const harms = Object.values(cautions).flatMap(({ title, brief, text }) => [title, brief, text]);
    const ready = readdirSync("scenarios").flatMap((file) => {
      const { name, notes } = JSON.parse(readFileSync(`scenarios/${file}`, "utf8")) as Sample;
      return [name, notes];
    });
    const said = [...stuff, ...forces, ...harms, ...ready, ...Object.values(SCALE_WORDS), SUM_WORDS.label];
    const cited = /Handbook|Compendium|Hoerner|Development/;
    expect(untold(without(said.filter((text) => text !== ""))).filter((text) => !cited.test(text))).toEqual(
      [],
    );
    // A name of its own for each: two that read alike could not be told apart.
    for (const list of [materials, lineMaterials]) {
      const names = list.map(({ name }) => german(name));
      expect(new Set(names).size).toBe(names.length);
    }
  });

  it("has the names that the program gives to parts, alone and as rows of the account", () => {
    const begun = starter();
    const all = [...SCENARIOS.map(scenarioOf), begun].flatMap((ready) => {
      const usual = usualFor(0).things;
      const twice = [...usual, ...usual, ...Object.values(BY_HAND).flat()];
      const full = twice.reduce((bait, thing) => putOn(bait, thing, handPlace(ready, thing)), ready);
      const own = [
        full.bait.hangers,
        full.bait.ballast,
        full.bait.wires,
        full.bait.coats,
        full.bait.chambers,
      ];
      return [...own.flat().map(({ name }) => name), ...compile(full).bait.items.map(({ item }) => item)];
    });
    const large = usualFor(1000).things.flatMap(({ name }) => [
      name,
      `${name} ballast`,
      `2 × ${name} ballast`,
    ]);
    expect(all.length).toBeGreaterThan(200);
    expect(untold([...all, ...large])).toEqual([]);
    expect(german("2 × tungsten ball 3 mm ballast")).toBe("2 × Wolframkugel 3 mm");
    expect(german("belly hook: mass")).toBe("Haken am Bauch: Masse");
    const none =
      "No drill in the box takes “steel ball 6 mm”, “Anna's ball”: the smallest of them needs 6.0 mm.";
    expect(german(none)).toContain("passt zu „Stahlkugel 6 mm“, „Anna's ball“: das kleinste");
  });

  it("has the live inputs, and what the browser's keeping and a hand on the drawing run into", () => {
    const inputs = readdirSync("scenarios").flatMap((file) => {
      const read = parseScenario(readFileSync(`scenarios/${file}`, "utf8"));
      if (!read.ok) throw new Error(`${file} is refused`);
      const from = read.scenario;
      return [
        ...[waterInputs, bodyInputs, tackleInputs, cadenceInputs].flatMap((of) => of(from)),
        ...partSections(from).flatMap(({ groups }) => groups),
        { inputs: [...columnInputs(from), ...reelInputs(from)] },
      ].flatMap((group) =>
        group.inputs.flatMap(({ label, help }) => (help === "" ? [label] : [label, help])),
      );
    });
    expect(new Set(inputs).size).toBeGreaterThan(35);
    expect(untold(without(inputs))).toEqual([]);
    const faults = saidIn(["src/ui/kept/base.ts", "src/ui/kept/database.ts", "src/ui/kept/store.ts"], true);
    const drawn = saidIn(["src/ui/state/workspace.svelte.ts"]);
    const said = [...faults, ...drawn]
      .map(({ text }) => text)
      .filter((text) => !/^There is no room/.test(text));
    expect(said.length).toBeGreaterThanOrEqual(5);
    expect(untold(without(said))).toEqual([]);
  });

  it("has the verdicts", () => {
    const said = [
      ...[0.5, -0.5, 0.01, -0.01].map(floatWords),
      ...[null, 0, 10, -10, 60, -60, 120, -120].map(attitudeWords),
      ...[0, 40, -40].map((speed_mm_s) => riseWords({ speed_mm_s, secondsPer300mm: 7.5 })),
    ];
    expect(untold(said)).toEqual([]);
    expect(german(floatWords(0.5))).toBe("schwimmt mit 0,50\u202fg");
    expect(german(attitudeWords(-10.25))).toBe("ruht mit der Nase 10,3° tief");
  });
});

/** Every text that the program below the page says to a person, out of its source. */
describe("German of messages", () => {
  /** Words that nobody reads on the page, and forms that cannot be. */
  const APART: readonly RegExp[] = [
    /^a (?:whole )?number above 7\.5 to 7\.5/,
    // Pieces of other sentences, in which they are found.
    /^(?:at station 7\.5|height of G|not certain at all|certain only to ±7\.5|the entry: 7\.5|ballast to come:)$/,
    // Figures that the planner refuses as a fault of the program.
    /^(?:grid of stations|steps of a plug's length|kg or m|current along [XZ]|pieces in one place)$/,
    /^<svg/,
    /^7\.5, too small to draw/,
    /^(?:sq in|second moment|cu in)$/,
    /^no start was tried$|^two edges were asked for$/,
  ];
  /** A recording and its settings are made by the program itself: their refusals are for whoever mends it. */
  const OURS = /motion\/(?:recording|run|hook-drive)\.ts$/;

  const told = (places: readonly string[], faults = false): readonly string[] =>
    saidIn(places, faults)
      .filter(({ file, text }) => !OURS.test(file) && !APART.some((one) => one.test(text)))
      .map(({ text }) => text);

  it("has each of the document's", () => {
    const all = told(["src/document"]);
    expect(all.length).toBeGreaterThan(400);
    expect(untold(without(all))).toEqual([]);
  });

  it("has each that a lesson's file, its formulas and a file of results are refused with", () => {
    const files = ["bounded", "figures", "formula", "parse", "results", "rules", "tex", "variants"];
    // The program's own fault, the name of a schema, the list of commands, and what is caught where it is thrown.
    const ours = /^(?:The evaluator has no bib|Trimwright results|frac sqrt|no such place in a list)/;
    const all = told(
      files.map((file) => `src/lesson/${file}.ts`),
      true,
    ).filter((text) => !ours.test(text));
    expect(all.length).toBeGreaterThan(30);
    expect(untold(without(all))).toEqual([]);
  });

  it("has each of the model's, the drawing's and the runner's that the page shows", () => {
    const rooms = ["bait", "checks", "forces", "motion", "parts", "plan", "shape", "statics", "tow"];
    const all = told([
      ...rooms.map((room) => `src/model/${room}`),
      ...["plan-answer", "weigh", "vary", "beside", "progress"].map((file) => `src/runner/${file}.ts`),
      "src/drawing",
    ]);
    expect(all.length).toBeGreaterThan(150);
    expect(untold(without(all)).filter((text) => !/Hoerner/.test(text))).toEqual([]);
  });

  it("has each of the bench's, of tracing, and of typed numbers, with what they throw", () => {
    const all = told(
      ["src/model/bench", "src/model/shaping", "src/units/parse.ts", "src/runner/connection.ts"],
      true,
    );
    expect(all.length).toBeGreaterThan(60);
    expect(untold(all)).toEqual([]);
  });
});

describe("messages in German as they come", () => {
  type Loose = Record<string, unknown>;
  const loose = (value: unknown): Loose => value as Loose;
  const refused = (spoil: (draft: Sample) => void): string => {
    const draft = sample();
    spoil(draft);
    const read = parseScenario(JSON.stringify(draft, null, 2));
    if (read.ok) throw new Error("read without a problem");
    for (const { found, allowed, remedy } of read.problems)
      for (const text of [found, allowed, remedy]) expect(english(german(text)), german(text)).toBe(false);
    return read.problems.map(({ message }) => german(message)).join(" ");
  };

  it.each<[string, (draft: Sample) => void, RegExp]>([
    [
      "a key",
      (d) => delete loose(d.bait)["length_mm"],
      /Ergänze diesen Schlüssel: „Länge“ wird gebraucht\.$/,
    ],
    [
      "a comma",
      (d) => (loose(d.water)["temperature_C"] = "12,5"),
      /gefunden der Text "12,5"; erlaubt: eine Zahl von -2 bis 40 °C/,
    ],
    [
      "a range",
      (d) => (d.tackle.lineOut_m = 0),
      /eine Zahl über 0 bis 500 m\. Gib „Ausgebrachte Schnur“ in diesem/,
    ],
    ["a word", (d) => (loose(d.bait.bib)["outline"] = "sqare"), /Meintest du "square"\?/],
    ["a move", (d) => (loose(d.cadence[0])["do"] = "pawse"), /Meintest du "pause"\?/],
    ["a typo", (d) => (loose(d.bait)["lenght_mm"] = 3), /Meintest du "length_mm"\? Sonst nimm ihn weg\.$/],
    ["a point", (d) => (d.bait.tie_mm = [1, 2, 3]), /zwei Zahlen/],
    ["a group", (d) => (loose(d)["water"] = []), /gefunden eine Liste von 0; erlaubt: eine Gruppe/],
    ["a curve", (d) => (d.bait.top = [[0, 0]]), /mindestens 2 Einträge/],
    ["a name", (d) => (d.name = ""), /mindestens 1 Zeichen/],
    ["a format", (d) => (d.format = "other/scenario"), /keine Trimwright-Köderdatei/],
    ["a version", (d) => (d.version = 2), /neuere Ausgabe/],
    ["an order", (d) => d.bait.top.splice(1, 0, [40, 3]), /Ordne die Punkte/],
    [
      "a material",
      (d) => (d.bait.body["material"] = "baswood"),
      /Meintest du "basswood" oder "old-growth redwood"\? Ein eigenes Material/,
    ],
    ["a coat", (d) => delete loose(d.bait.coats[0])["mass_g"], /weder thickness_mm noch mass_g/],
    ["a line", (d) => (d.tackle.line.material = "nilon"), /Eine eigene Schnur/],
    ["a puddle", (d) => (d.water.depth_m = 0.1), /mindestens 0,17\u202fm für die Führung/],
    ["balls", (d) => (loose(d.bait.chambers[0]?.balls)["count"] = 100), /100 Kugeln von 3 mm passen nicht/],
    [
      "a chamber",
      (d) => (loose(d.bait.chambers[0])["height_mm"] = 12),
      /die Kammer ragt aus dem Körper: ihre Decke ist auf /,
    ],
    ["a scale", (d) => (loose(d.bench[0])["with"] = ["tale"]), /benennt nichts an diesem Köder/],
    ["a reading", (d) => (loose(d.bench[1])["reading_g"] = 0.5), /lässt dem Körper/],
  ])("refuse %s", (_, spoil, words) => {
    const message = refused(spoil);

    expect(message).toMatch(words);
    expect(english(message), message).toBe(false);
  });

  it.each([
    "",
    "{",
    "[1,]",
    '{"a":1 "b":2}',
    "{'a':1}",
    '{"a":01}',
    '{"a":1,"a":2}',
    "// no",
    '{"a":"\n"}',
    "{}}",
    '{"a":NaN}',
    "\ufeff{}",
  ])("refuse the text %j", (text) => {
    const read = parseScenario(text);
    if (read.ok) throw new Error("read without a problem");
    for (const { message } of read.problems) {
      expect(english(german(message)), german(message)).toBe(false);
      expect(german(message)).toMatch(/^(?:Die Datei|\w+)(?: \(Zeile \d+, Spalte \d+\))?: gefunden /);
    }
  });

  it("refuse boxes, files of many baits, and links", () => {
    const box = parseBox(
      '{"format":"trimwright/box","version":1,"name":"x","things":[{"kind":"hook","name":"a","count":1}]}',
    );
    const many = openLibrary('{"format":"other"}');
    const link = readLink("bait=1.x.y");
    const said = [
      ...(box.ok ? [] : box.problems.map(({ message }) => message)),
      ...(many.ok ? [] : many.problems.map(({ message }) => message)),
      ...(link.ok ? [] : [link.why]),
    ];
    expect(said.length).toBeGreaterThanOrEqual(3);
    expect(untold(said)).toEqual([]);
  });
});
