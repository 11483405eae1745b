import type { Immutable } from "./immutable";
import { z } from "zod";
import { above, choice, flag, list, maybe, name, number, text, whole } from "./fields";

/**
 * The box file, version 1: the weights, hooks, rings, clips, strips and coats that a maker owns and has weighed, the drills
 * at hand, and the filler that closes holes. Units stand in the key names.
 */

export const BOX_FORMAT = "trimwright/box";
export const BOX_VERSION = 1;

const weighed = z
  .strictObject({
    count: whole("Pieces weighed together", [1, 1000], [1, 50, 1]),
    together_g: above("Together", "g", [0, 5000], [0.01, 60, 0.01]),
    resolution_g: above("Scale's resolution", "g", [0, 100], [0.01, 1, 0.01]),
  })
  .meta({
    title: "Weighed together",
    description: "Pieces weighed together; the mass of one is their share.",
  });

const common = {
  name: name("Name"),
  count: whole("At hand", [0, 10_000], [0, 100, 1]),
  weighed: maybe(weighed),
  mass_g: maybe(
    above("Mass of one", "g", [0, 2000], [0.01, 10, 0.01], "Catalogue value; weighing wins over it."),
  ),
  material: maybe(name("Material", "A name from the table of published densities.")),
  density_g_ml: maybe(
    number("Density", "g/mL", [0.01, 25], [0.1, 20, 0.01], "Wins over the material's published density."),
  ),
};
const diameter = (label: string) => above(label, "mm", [0, 50], [0.5, 12, 0.1]);
const where = () =>
  maybe(
    choice(
      "Where",
      ["inside", "outside", "both"],
      "Absent: shot, slug and wire inside; strip and sheet outside.",
    ),
  );

const thing = z
  .discriminatedUnion("kind", [
    z
      .strictObject({ kind: z.literal("hook"), ...common, size: maybe(text("Hook size", 40)) })
      .meta({ title: "Hook" }),
    z
      .strictObject({ kind: z.literal("ring"), ...common, size: maybe(text("Ring size", 40)) })
      .meta({ title: "Split ring" }),
    z.strictObject({ kind: z.literal("clip"), ...common }).meta({ title: "Clip" }),
    z
      .strictObject({
        kind: z.literal("shot"),
        ...common,
        diameter_mm: maybe(diameter("Shot diameter")),
        where: where(),
      })
      .meta({ title: "Shot or ball" }),
    z
      .strictObject({
        kind: z.literal("slug"),
        ...common,
        diameter_mm: diameter("Slug diameter"),
        length_mm: maybe(above("Slug length", "mm", [0, 200], [1, 30, 0.5])),
        where: where(),
      })
      .meta({ title: "Slug" }),
    z
      .strictObject({
        kind: z.literal("wire"),
        ...common,
        diameter_mm: diameter("Wire diameter"),
        cut_mm: above("Cut length", "mm", [0, 200], [0.5, 20, 0.5], "Each piece is one such length."),
        where: where(),
      })
      .meta({ title: "Wire, cut to length" }),
    z
      .strictObject({
        kind: z.literal("sheet"),
        ...common,
        across_mm: maybe(diameter("Rolled diameter")),
        where: where(),
      })
      .meta({ title: "Sheet, cut to pieces" }),
    z.strictObject({ kind: z.literal("strip"), ...common, where: where() }).meta({ title: "Stick-on strip" }),
    z
      .strictObject({
        kind: z.literal("coat"),
        ...common,
        thickness_mm: maybe(above("Dry thickness of one coat", "mm", [0, 20], [0.01, 0.6, 0.01])),
      })
      .meta({ title: "Coat" }),
  ])
  .meta({ title: "Thing in the box" });

export const boxSchema = z
  .strictObject({
    format: z.literal(BOX_FORMAT),
    version: z.literal(BOX_VERSION),
    name: name("Name"),
    drills_mm: z
      .array(above("Drill", "mm", [0, 50], [1, 12, 0.1]))
      .max(100)
      .meta({ title: "Drills at hand" })
      .default([]),
    filler_g_ml: maybe(
      number("Filler density", "g/mL", [0, 25], [0, 2, 0.05], "What closes a hole; absent: 1.1."),
    ),
    leadAllowed: maybe(flag("Lead may be used", "Absent: yes; lead-free plans come first.")),
    things: list("Things", thing, 400),
  })
  .meta({ title: "Trimwright box, version 1" });

/** A box as the program holds it. Never changed in place. */
export type Box = Immutable<z.output<typeof boxSchema>>;
export type BoxThing = Box["things"][number];
