import { z } from "zod";
import { choice, list, maybe, name, number, text, whole } from "../document";
import { LONGEST_FORMULA } from "./formula";
import { LONGEST_TEX } from "./tex";

/**
 * The lesson file, version 1 (docs/lesson-format.md). As in the scenario, one line gives a field its type, its check, its
 * entry on the form and its JSON Schema. What one field cannot know (names that formulas use, a bait that cannot be built)
 * is in rules.ts.
 */
export const LESSON_FORMAT = "trimwright/lesson";
export const LESSON_VERSION = 1;

/** The languages that texts of a lesson may stand in. */
export const LANGUAGES = ["en", "de"] as const;
export type Language = (typeof LANGUAGES)[number];

/** Units of a lesson's numbers, as they are shown. Nothing is converted: a figure's path names its unit. */
export const LESSON_UNITS = [
  "",
  "%",
  "mm",
  "cm",
  "m",
  "cm²",
  "mL",
  "g",
  "g/mL",
  "°",
  "°C",
  "g/kg",
  "mm/s",
  "m/s",
  "s",
  "N",
  "mN",
  "N·mm",
  "g·mm",
] as const;

const words = (label: string, longest: number, help = "") =>
  z
    .strictObject({ en: maybe(text("English", longest)), de: maybe(text("German", longest)) })
    .meta({ title: label, ...(help === "" ? {} : { description: help }) });
const formula = (label: string, help = "") =>
  z
    .string()
    .min(1)
    .max(LONGEST_FORMULA)
    .meta({ title: label, ...(help === "" ? {} : { description: help }) });
const handle = (label: string) =>
  z
    .string()
    .max(24)
    .regex(/^[A-Za-z][A-Za-z0-9]{0,23}$/)
    .meta({
      title: label,
      description: "Letters and digits, a letter first. Formulas and texts use this name.",
    });
const unit = () => choice("Unit", LESSON_UNITS);
const digits = () => whole("Decimals", [0, 4], [0, 4, 1]);
const any = (label: string, help = "") => number(label, "", [-1e9, 1e9], [-100, 100, 0.1], help);
/** Any JSON value. What it comes to is read by the scenario's own schema. */
const json = () =>
  z.union([
    z.number(),
    z.string().max(400),
    z.boolean(),
    z.null(),
    z.array(z.unknown()),
    z.record(z.string(), z.unknown()),
  ]);
const symbol = () => maybe(text("Symbol in TeX", 40, "Absent: the name, upright."));

const draw = z
  .strictObject({
    name: handle("Name"),
    from: any("From"),
    to: any("To"),
    step: number("Step", "", [1e-6, 1e6], [0.01, 10, 0.01]),
    usual: any("Usual value", "What everybody sees who has no numbers of their own."),
    unit: unit(),
    digits: digits(),
    symbol: symbol(),
    means: words("What it is", 160),
  })
  .meta({ title: "Number that differs from student to student" });

const change = z
  .strictObject({
    path: name("Place in the scenario", "For example bait.body.density_g_ml or bait.ballast[0].mass_g."),
    value: json().meta({
      title: "New value",
      description:
        'A number, a text, a list, a group; null removes the key. A text that begins with "=" is a formula.',
    }),
  })
  .meta({ title: "Change" });

const variant = z
  .strictObject({
    name: maybe(words("Name", 80)),
    size: maybe(formula("Size", "The whole bait times this, in all directions. A number or a formula.")),
    changes: list("Changes", change, 60),
  })
  .meta({ title: "Variant" });

const figure = z
  .strictObject({
    name: handle("Name"),
    is: name(
      "Figure of the model",
      "For example statics.netBuoyancy_g; the list is in docs/lesson-format.md.",
    ),
    of: maybe(choice("Of variant", ["A", "B", "C"], "Absent: A.")),
    unit: unit(),
    digits: digits(),
    symbol: symbol(),
    means: words("What it is", 160),
  })
  .meta({ title: "Figure" });

const prediction = z
  .discriminatedUnion("kind", [
    z
      .strictObject({
        kind: z.literal("choose"),
        of: formula("What decides", "A formula. The option whose range holds its value is what happens."),
        options: z
          .array(
            z
              .strictObject({
                says: words("Option", 200),
                from: maybe(any("From", "Included; absent: no lower end.")),
                to: maybe(any("To", "Not included; absent: no upper end.")),
              })
              .meta({ title: "Option" }),
          )
          .min(2)
          .max(5)
          .meta({ title: "Options" }),
      })
      .meta({ title: "Choose one" }),
    z
      .strictObject({
        kind: z.literal("number"),
        of: formula("What happens"),
        unit: unit(),
        digits: digits(),
        near: number(
          "Near enough",
          "",
          [0, 1e9],
          [0, 10, 0.01],
          "A prediction this far off counts as right.",
        ),
      })
      .meta({ title: "Type a number" }),
    z
      .strictObject({
        kind: z.literal("arrow"),
        turns: choice(
          "The arrow is",
          ["long", "turned"],
          "long: its length is the answer, up is positive. turned: its angle is.",
        ),
        of: formula("What happens"),
        unit: unit(),
        digits: digits(),
        from: any("Least"),
        to: any("Most"),
        step: number("Step of the keys", "", [1e-6, 1e6], [0.01, 10, 0.01]),
        near: number("Near enough", "", [0, 1e9], [0, 10, 0.01]),
      })
      .meta({ title: "Drag an arrow" }),
  ])
  .meta({ title: "Prediction" });

const run = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("still"), for_s: number("Watch for", "s", [1, 60], [2, 20, 1]) }).meta({
      title: "At rest",
      description: "Balance only; the picture shows the bait let go under water.",
    }),
    z.strictObject({ kind: z.literal("rise"), for_s: number("Watch for", "s", [1, 60], [2, 20, 1]) }).meta({
      title: "Free rise or sink",
      description: "Let go under water; the steady speed is worked out.",
    }),
    z
      .strictObject({ kind: z.literal("cast"), speed_m_s: number("Speed", "m/s", [0.05, 5], [0.2, 2, 0.05]) })
      .meta({
        title: "Cast and retrieve",
        description: "The scenario's cadence, and a steady tow at this speed.",
      }),
  ])
  .meta({ title: "What is run" });

const exercise = z
  .strictObject({
    ask: words("Task", 800),
    hand: formula("By hand", "The formula that is shown once the exercise is done."),
    model: formula("By the model", "The same by figures of the model. Hand and model have to agree."),
    unit: unit(),
    digits: digits(),
    tolerance: number("Tolerance", "", [0, 1e9], [0, 10, 0.01], "In the unit of the answer."),
    share: maybe(
      number(
        "Tolerance as a share",
        "",
        [0, 1],
        [0, 0.3, 0.01],
        "Of the answer; the greater of the two counts.",
      ),
    ),
    why: words("Why this tolerance", 600),
    hint: words("Hint", 500),
  })
  .meta({ title: "Exercise" });

const plan = z
  .strictObject({
    goal: words("Goal", 400),
    minutes: whole("Minutes", [5, 180], [10, 90, 5]),
    things: words("Things", 400),
    demonstration: words("Demonstration", 1500, "With household things; no hooks, no lead."),
    safety: words("Safety", 500),
  })
  .meta({ title: "Plan for the teacher" });

export const lessonSchema = z
  .strictObject({
    format: z.literal(LESSON_FORMAT),
    version: z.literal(LESSON_VERSION),
    id: z
      .string()
      .max(40)
      .regex(/^[a-z0-9][a-z0-9-]{0,39}$/)
      .meta({ title: "Short name", description: "Small letters, digits and hyphens." }),
    title: words("Title", 100),
    idea: words("The one idea", 300),
    scenario: z
      .discriminatedUnion("from", [
        z
          .strictObject({
            from: z.literal("collection"),
            file: name("File", "A scenario of the collection, without .json."),
          })
          .meta({ title: "A scenario of the collection" }),
        z
          .strictObject({
            from: z.literal("here"),
            document: z.record(z.string(), z.unknown()).meta({ title: "Scenario" }),
          })
          .meta({ title: "A scenario in this file" }),
      ])
      .meta({ title: "Scenario" }),
    draws: list("Numbers of each student", draw, 8),
    variants: z.array(variant).min(1).max(3).meta({ title: "Variants" }),
    run,
    figures: list("Figures", figure, 30),
    question: words("Question", 600),
    prediction,
    misconception: words("What many believe", 600),
    explanation: words(
      "Explanation",
      2000,
      "A figure's {name} in braces stands for its number with its unit.",
    ),
    equation: z
      .strictObject({
        tex: z.string().min(1).max(LONGEST_TEX).meta({ title: "TeX" }),
        tex_de: maybe(
          z.string().min(1).max(LONGEST_TEX).meta({
            title: "TeX in German",
            description: "The same in German, where it holds words.",
          }),
        ),
        said: words("Read aloud", 300),
      })
      .meta({ title: "Equation" }),
    exercise,
    plan,
    sources: list("Sources", text("Source", 300), 12),
  })
  .meta({ title: "Trimwright lesson, version 1" });

/** Nothing in it can be changed in place; what a change brings is any value of JSON. */
type Fixed<T> = unknown extends T ? T : { readonly [K in keyof T]: Fixed<T[K]> };
export type Lesson = Fixed<z.output<typeof lessonSchema>>;
export type LessonWords = Lesson["title"];
export type LessonUnit = (typeof LESSON_UNITS)[number];
export type Prediction = Lesson["prediction"];
export type Exercise = Lesson["exercise"];

/** The JSON Schema (draft 2020-12) of a lesson file, published with the page as lesson.schema.json. */
export function lessonJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(lessonSchema, {
    io: "input",
    override: ({ jsonSchema }) => {
      delete (jsonSchema as { slider?: unknown }).slider;
    },
  });
}
