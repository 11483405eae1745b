import type { Immutable } from "immer";
import { z } from "zod";
import {
  above,
  choice,
  curve,
  fieldOf,
  flag,
  list,
  maybe,
  name,
  number,
  pathSteps,
  point,
  schemasAt,
  text,
  whole,
} from "./fields";
import type { Field } from "./fields";
import { bench, correction, stage, target, tub } from "./schema-bench";
import { tackle, water } from "./schema-water";

/**
 * The scenario file, version 1 (docs/scenario-format.md). One line a field: type, check, unit, range, form
 * field and JSON Schema all come from it. Units stand in the key names. What one field alone cannot know
 * (stations that must rise, a density that is missing) is in rules.ts.
 */

export const FORMAT = "trimwright/scenario";
export const VERSION = 1;

const material = () => maybe(name("Material", "A name from the table of published densities."));
const density = () =>
  maybe(
    number("Density", "g/mL", [0.01, 25], [0.1, 20, 0.01], "Wins over the material's published density."),
  );
const mass = (label: string, slider: readonly [number, number, number], help = "") =>
  number(label, "g", [0, 2000], slider, help);
const weighed = () =>
  maybe(flag("Weighed", "Read off a scale; otherwise a catalogue value with a wide uncertainty."));
const inOut = (label: string) =>
  choice(
    label,
    ["inside", "outside"],
    "Inside counts in full; outside counts by what it exceeds the water it displaces.",
  );
const edgeHeight = () => number("Height", "mm", [-1000, 1000], [-60, 60, 0.5], "Up from the datum line.");
const exponent = () =>
  number("Section exponent", "", [1, 10], [1, 6, 0.1], "2 is an ellipse; larger is blockier, 1 a diamond.");

const balls = z
  .strictObject({
    count: whole("Balls", [1, 200], [1, 12, 1]),
    diameter_mm: above("Ball diameter", "mm", [0, 100], [2, 8, 0.5]),
    material: material(),
    density_g_ml: density(),
  })
  .meta({ title: "Loose balls" });

const chamber = z
  .strictObject({
    name: name("Name"),
    from_mm: number("From station", "mm", [0, 2000], [0, 200, 0.5]),
    to_mm: number("To station", "mm", [0, 2000], [0, 200, 0.5]),
    height_mm: number(
      "Height of its middle",
      "mm",
      [-1000, 1000],
      [-30, 30, 0.5],
      "Height of the box's middle above the datum line.",
    ),
    tall_mm: above("Tall", "mm", [0, 1000], [1, 30, 0.5]),
    wide_mm: above("Wide", "mm", [0, 1000], [1, 30, 0.5]),
    balls: maybe(balls),
    stage: stage(),
  })
  .meta({ title: "Chamber" });

const ballast = z
  .strictObject({
    name: name("Name"),
    at_mm: point("Place", "Station and height of its middle."),
    mass_g: mass("Mass", [0, 20, 0.05]),
    material: material(),
    density_g_ml: density(),
    where: inOut("Where").default("inside"),
    hole_ml: maybe(
      number(
        "Hole",
        "mL",
        [0, 1000],
        [0, 5, 0.01],
        "Volume of the drilled hole; absent: the slug's own volume.",
      ),
    ),
    filler_g_ml: maybe(
      number(
        "Filler density",
        "g/mL",
        [0, 25],
        [0, 2, 0.05],
        "What fills the rest of the hole; absent: air.",
      ),
    ),
    stage: stage(),
  })
  .meta({ title: "Ballast" });

const wire = z
  .strictObject({
    name: name("Name"),
    path_mm: z.array(point("Bend")).min(2).max(200).meta({ title: "Path" }),
    diameter_mm: above("Wire diameter", "mm", [0, 20], [0.4, 2, 0.05]),
    material: material(),
    density_g_ml: density(),
    stage: stage(),
  })
  .meta({ title: "Wire" });

const bib = z
  .strictObject({
    root_mm: point("Root", "Middle of the plate where it leaves the body."),
    angle_deg: number(
      "Bib angle",
      "°",
      [0, 180],
      [10, 90, 0.5],
      "From the datum line's forward direction, opening downward: 0° straight ahead, 90° square to the body.",
    ),
    length_mm: above("Bib length", "mm", [0, 500], [3, 60, 0.5], "The part outside the body."),
    width_mm: above("Bib width", "mm", [0, 500], [4, 50, 0.5]),
    slot_mm: number("Depth in the slot", "mm", [0, 500], [0, 20, 0.5], "The part inside the body."),
    thickness_mm: above("Bib thickness", "mm", [0, 30], [0.5, 3, 0.1]),
    outline: choice(
      "Outline",
      ["square", "round"],
      "Square: a rectangle. Round: full width, closed by a half ellipse.",
    ),
    material: material(),
    density_g_ml: density(),
    stage: stage(),
  })
  .meta({ title: "Bib" });

const ring = z
  .strictObject({ mass_g: mass("Ring mass", [0, 1, 0.01]), density_g_ml: density(), weighed: weighed() })
  .meta({ title: "Split ring" });
const hook = z
  .strictObject({
    mass_g: mass("Hook mass", [0, 5, 0.01], "Weigh it: hooks of one size number differ by a factor of two."),
    size: maybe(text("Hook size", 40)),
    density_g_ml: density(),
    weighed: weighed(),
  })
  .meta({ title: "Hook" });
const hanger = z
  .strictObject({
    name: name("Name"),
    at_mm: point("Eye"),
    ring: maybe(ring),
    hook: maybe(hook),
    stage: stage(),
  })
  .meta({ title: "Hanger" });

const fitting = z
  .strictObject({
    name: name("Name"),
    at_mm: point("Place"),
    mass_g: mass("Mass", [0, 2, 0.01]),
    material: material(),
    density_g_ml: density(),
    where: inOut("Where").default("outside"),
    stage: stage(),
  })
  .meta({ title: "Fitting" });

const coat = z
  .strictObject({
    name: name("Name"),
    thickness_mm: maybe(
      number("Coat thickness", "mm", [0, 20], [0, 0.6, 0.01], "Dry film over the whole skin."),
    ),
    mass_g: maybe(mass("Coat mass", [0, 5, 0.01], "Weighed: the whole bait after the coat, less before.")),
    material: material(),
    density_g_ml: density(),
    stage: stage(),
  })
  .meta({ title: "Coat" });

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
    chambers: list("Chambers", chamber, 20),
    ballast: list("Ballast", ballast, 100),
    wires: list("Wires", wire, 50),
    bib: maybe(bib),
    tie_mm: point("Tie eye", "Where the line pulls."),
    hangers: list("Hangers", hanger, 12),
    fittings: list("Fittings", fitting, 100),
    coats: list("Coats", coat, 50),
  })
  .meta({ title: "Bait" });

const seconds = (label: string) => number(label, "s", [0, 3600], [0, 20, 0.1]);
const quick = (label: string) => above(label, "s", [0, 60], [0.05, 2, 0.01]);
const move = z
  .discriminatedUnion("do", [
    z.strictObject({ do: z.literal("settle"), for_s: seconds("Settle for") }).meta({ title: "Settle" }),
    z
      .strictObject({
        do: z.literal("reel"),
        speed_m_s: above("Retrieve speed", "m/s", [0, 10], [0.1, 2.5, 0.05]),
        for_s: maybe(seconds("Reel for")),
        length_m: maybe(above("Reel in", "m", [0, 500], [0.5, 30, 0.5])),
      })
      .meta({ title: "Reel", description: "For a time or for a length: exactly one of for_s and length_m." }),
    z.strictObject({ do: z.literal("pause"), for_s: seconds("Pause for") }).meta({ title: "Pause" }),
    z
      .strictObject({
        do: z.literal("twitch"),
        travel_m: number(
          "Twitch travel",
          "m",
          [0, 10],
          [0, 1, 0.01],
          "How far the rod tip moves away from the bait.",
        ),
        in_s: quick("Twitch time"),
        back_s: quick("Return time"),
      })
      .meta({ title: "Twitch" }),
    z.strictObject({ do: z.literal("slack"), for_s: seconds("Slack for") }).meta({ title: "Slack" }),
    z
      .strictObject({
        do: z.literal("lift"),
        height_m: number(
          "Lift by",
          "m",
          [-10, 10],
          [0, 2, 0.05],
          "The rod tip rises by this much and stays there.",
        ),
        in_s: quick("Lift time"),
      })
      .meta({ title: "Lift" }),
    z.strictObject({ do: z.literal("release"), for_s: seconds("Release for") }).meta({ title: "Release" }),
  ])
  .meta({ title: "Move" });

const share = (label: string, help: string) => maybe(number(label, "", [0, 1], [0, 0.4, 0.01], help));
const uncertainty = z
  .strictObject({
    wood: share("Wood density", "Relative standard uncertainty of an unweighed wood; default 0.10."),
    metal: share("Metal density", "Default 0.01."),
    plastic: share("Plastic density", "Default 0.02."),
    coatThickness: share("Coat thickness", "Default 0.20."),
    hook: share("Hook and ring mass", "Unweighed hook or ring; default 0.25."),
    drawnLength_mm: maybe(number("Drawn lengths", "mm", [0, 20], [0, 2, 0.05], "Default 0.2.")),
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
    notes: maybe(text("Notes", 20_000)),
    limits: maybe(text("Limits", 20_000, "What this scenario cannot show.")),
    bait,
    target: maybe(target),
    bench: list("Bench readings", bench, 400),
    tub: list("Tub readings", tub, 100),
    corrections: list("Corrections", correction, 20),
    water,
    tackle,
    cadence: list("Cadence", move, 1000),
    calibration: maybe(calibration),
    uncertainty: maybe(uncertainty),
    expect: list("Expectations", expectation, 400),
  })
  .meta({ title: "Trimwright scenario, version 1" });

/** A scenario as the program holds it: lists are always there, empty where the file leaves them out. Never changed in place. */
export type Scenario = Immutable<z.output<typeof scenarioSchema>>;
export type ScenarioBait = Scenario["bait"];
export type ScenarioMove = Scenario["cadence"][number];

/**
 * The JSON Schema (draft 2020-12) of a scenario file, published with the app as scenario.schema.json. Rules between
 * fields (stations that rise, exactly one of two keys) are beyond it: the program checks those itself.
 */
export function scenarioJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(scenarioSchema, {
    io: "input",
    // What a slider offers is the form's business, not the file's.
    override: ({ jsonSchema }) => {
      delete (jsonSchema as { slider?: unknown }).slider;
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
