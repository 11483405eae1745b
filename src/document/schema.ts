import type { Immutable } from "./immutable";
import { z } from "zod";
import {
  above,
  choice,
  curve,
  fieldOf,
  list,
  maybe,
  name,
  number,
  pathSteps,
  point,
  schemasAt,
  text,
} from "./fields";
import type { Field } from "./fields";
import { partFields } from "./parts";
import { density, material } from "./parts/common";
import { bench, correction, target, tub } from "./schema-bench";
import { cadence } from "./schema-cadence";
import { recipeOf } from "./schema-recipe";
import { tackle, water } from "./schema-water";

/**
 * The scenario file, version 1 (docs/scenario-format.md). One line for each field: type, check, unit, range, form field and
 * JSON Schema all come from it. Units stand in the key names. What one field alone cannot know (stations that must rise, a
 * density that is missing) is in rules.ts.
 */

export const FORMAT = "trimwright/scenario";
export const VERSION = 1;

const edgeHeight = () => number("Height", "mm", [-1000, 1000], [-60, 60, 0.5], "Up from the datum line.");
const exponent = () =>
  number("Section exponent", "", [1, 10], [1, 6, 0.1], "2 is an ellipse; larger is blockier, 1 a diamond.");

// In the file the tie eye stands among the parts, but it is not a part: it has no mass and no volume.
const { chambers, ballast, wires, bib, ...otherParts } = partFields;

const body = z.strictObject({ material: material(), density_g_ml: density() }).meta({ title: "Body" });

const bait = z
  .strictObject({
    length_mm: above(
      "Length",
      "mm",
      [0, 2000],
      [40, 200, 0.5],
      "Along the datum line, from the nose tip to the end of the tail.",
    ),
    top: curve(
      "Top edge",
      edgeHeight(),
      2,
      "Height of the top edge; from station 0 to the length, stations rising.",
    ),
    bottom: curve(
      "Bottom edge",
      edgeHeight(),
      2,
      "Height of the bottom edge; from station 0 to the length, stations rising.",
    ),
    halfBreadth: curve(
      "Half-breadth",
      number("Half-breadth", "mm", [0, 1000], [0, 30, 0.25]),
      2,
      "Half the breadth seen from above; from station 0 to the length, stations rising.",
    ),
    widest: maybe(curve("Height of greatest breadth", edgeHeight(), 2, "Absent: midway between the edges.")),
    roundover: maybe(
      z.strictObject({ above: curve("Above", exponent(), 1), below: curve("Below", exponent(), 1) }).meta({
        title: "Section shape",
        description: "Exponents of the half sections; absent: ellipses (2).",
      }),
    ),
    body,
    chambers,
    ballast,
    wires,
    bib,
    tie_mm: point("Tie eye", "Where the line pulls."),
    ...otherParts,
  })
  .meta({ title: "Bait" });

const side = (label: string, slider: readonly [number, number, number], help: string) =>
  above(label, "mm", [0, 2000], slider, help);
const stock = z
  .strictObject({
    pieces: choice(
      "Made from",
      ["one", "halves"],
      "One board, or two that are glued along the middle plane.",
    ),
    length_mm: side("Length of the board", [50, 300, 1], "Along the bait."),
    width_mm: side("Width of the board", [10, 120, 1], "Upright in the bait."),
    thickness_mm: side(
      "Thickness of the board",
      [3, 60, 0.5],
      "Across the bait; of each half where there are two.",
    ),
  })
  .meta({
    title: "Stock",
    description: "The board that the body is cut from. It changes no number of the bait.",
  });

const share = (label: string, help: string) => maybe(number(label, "", [0, 1], [0, 0.4, 0.01], help));
const uncertainty = z
  .strictObject({
    wood: share("Wood density", "Relative standard uncertainty of an unweighed wood; default 0.10."),
    metal: share("Metal density", "The same of metals; default 0.01."),
    plastic: share("Plastic density", "The same of plastics and glues; default 0.02."),
    coatThickness: share("Coat thickness", "The same of a coat that was not weighed; default 0.20."),
    hook: share("Hook and ring mass", "Unweighed hook or ring; default 0.25."),
    drawnLength_mm: maybe(
      number("Drawn lengths", "mm", [0, 20], [0, 2, 0.05], "Of every drawn place and size; default 0.2."),
    ),
  })
  .meta({ title: "Uncertainty", description: "Standard uncertainties of inputs; absent: the defaults." });

const calibration = z
  .strictObject({
    bibFactor: number(
      "Bib factor",
      "",
      [0.25, 4],
      [0.5, 1.5, 0.01],
      "Interference factor of the bib; 1 until a measured run says otherwise.",
    ),
    measured: maybe(
      z
        .strictObject({
          speed_m_s: above("Measured speed", "m/s", [0, 10], [0.2, 3, 0.05]),
          lineOut_m: above("Line out then", "m", [0, 500], [3, 60, 0.5]),
          depth_m: above("Measured depth", "m", [0, 100], [0.1, 8, 0.05], "Of the tie eye."),
        })
        .meta({ title: "Measured run", description: "The steady retrieve that the factor was found by." }),
    ),
  })
  .meta({ title: "Calibration" });

const expectation = z
  .strictObject({
    path: name("Figure of the answer", "For example statics.netBuoyancy_g or reach[0].depth_m."),
    value: z.union([z.number(), z.string().max(400), z.boolean(), z.null()]).meta({ title: "Expected" }),
    tolerance: maybe(
      number(
        "Tolerance",
        "",
        [0, 1e9],
        [0, 10, 0.01],
        "Greatest difference of a number; absent: exactly equal.",
      ),
    ),
    why: z
      .string()
      .min(1)
      .max(2000)
      .meta({ title: "Why", description: "Where the expected value and its tolerance come from." }),
  })
  .meta({ title: "Expectation" });

/** The whole document. */
export const scenarioSchema = z
  .strictObject({
    format: z.literal(FORMAT),
    version: z.literal(VERSION),
    name: name("Name"),
    notes: maybe(text("Notes", 20_000, "Whatever you want to keep with the bait.")),
    limits: maybe(text("Limits", 20_000, "What this scenario cannot show.")),
    bait,
    stock: maybe(stock),
    target: maybe(target),
    bench: list("Bench readings", bench, 400),
    tub: list("Tub readings", tub, 100),
    corrections: list("Corrections", correction, 20),
    water,
    tackle,
    cadence,
    calibration: maybe(calibration),
    uncertainty: maybe(uncertainty),
    recipe: maybe(recipeOf(bait)),
    expect: list("Expectations", expectation, 400),
  })
  .meta({ title: "Trimwright scenario, version 1" });

/** A scenario as the program holds it: lists are always there, empty where the file leaves them out. Never changed in place. */
export type Scenario = Immutable<z.output<typeof scenarioSchema>>;
export type ScenarioBait = Scenario["bait"];
/** What a cadence is a list of: a move, or moves that are repeated. */
export type ScenarioEntry = Scenario["cadence"][number];
export type ScenarioRepeat = Extract<ScenarioEntry, { readonly do: "repeat" }>;
export type ScenarioMove = Exclude<ScenarioEntry, ScenarioRepeat>;

/** Keys of what the recipe sets down that have the form of the document's own. */
const AS_IN_DOCUMENT = ["bait", "bench", "tub", "corrections"];

/**
 * The JSON Schema (draft 2020-12) of a scenario file, published with the app as scenario.schema.json. Rules between
 * fields (stations that rise, exactly one of two keys) are beyond it: the program checks those itself.
 */
export function scenarioJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(scenarioSchema, {
    io: "input",
    // What a slider offers is the form's business, not the file's.
    override: ({ jsonSchema, path }) => {
      delete (jsonSchema as { slider?: unknown }).slider;
      // What the recipe holds has the form of the document's own bait: written out three times more, nobody could read it.
      const [, recipe, , , , key] = path;
      if (recipe !== "recipe" || path.length !== 6 || !AS_IN_DOCUMENT.some((one) => one === key)) return;
      for (const one of Object.keys(jsonSchema)) delete jsonSchema[one];
      jsonSchema.$ref = `#/properties/${String(key)}`;
    },
  });
}

/**
 * Form metadata of the field at a document path ("bait.ballast[0].mass_g"), or null where there is none.
 * `scenario` decides between kinds where keys of one name differ (the moves of a cadence).
 */
export function fieldAt(path: string, scenario?: Scenario): Field | null {
  const found = schemasAt(scenarioSchema, pathSteps(path), scenario)[0];
  return found === undefined ? null : fieldOf(found);
}
