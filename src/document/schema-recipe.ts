import { z } from "zod";
import { list, maybe, text } from "./fields";
import { bench, correction, tub } from "./schema-bench";

/** What a maker has set down of a bait, each with its day: the design, the bait as built, the bait as tested. */
export const SET_DOWN = ["design", "built", "tested"] as const;
export type SetDownKey = (typeof SET_DOWN)[number];

const day = () =>
  z
    .string()
    .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, "a day such as 2026-11-29")
    .meta({ title: "Day", description: "When it was set down: year-month-day." });

/**
 * A copy of the bait and of its readings, which no later edit changes. Water, tackle and target are those of the
 * document. `bait` is the schema of the document's own bait.
 */
const setDown = <T extends z.ZodObject>(bait: T, title: string) =>
  z
    .strictObject({
      on: day(),
      notes: maybe(text("Notes", 20_000)),
      // A schema of its own, so that the published one can point at the document's bait.
      bait: bait.meta({ title: "Bait as it was then" }),
      bench: list("Bench readings then", bench, 400),
      tub: list("Tub readings then", tub, 100),
      corrections: list("Corrections then", correction, 20),
    })
    .meta({ title });

export const recipeOf = <T extends z.ZodObject>(bait: T) =>
  z
    .strictObject({
      design: maybe(setDown(bait, "Design")),
      built: maybe(setDown(bait, "As built")),
      tested: maybe(setDown(bait, "As tested")),
      from: maybe(text("Repeats", 400, "The bait that this one is another build of, in words.")),
    })
    .meta({ title: "Recipe", description: "Set down and left alone: no edit of the bait changes it." });
