import { z } from "zod";
import { list, maybe, name, number } from "../fields";
import { problem } from "../problem";
import { stage } from "../schema-bench";
import { grams, mm, stuff } from "../si";
import { density, mass, material } from "./common";
import { USUAL } from "./usual";
import type { PartFile, Read } from "./types";

const schema = z
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

const field = list("Coats", schema, 50);

export const coats: PartFile<"coats", Read<typeof schema>, typeof field> = {
  field,
  compile: (one) => ({
    name: one.name,
    thickness: one.thickness_mm === undefined ? null : mm(one.thickness_mm),
    mass: one.mass_g === undefined ? null : grams(one.mass_g),
    stuff: stuff(one, "plastic", one.name),
  }),
  rules(one, path) {
    const count = Number(one.thickness_mm !== undefined) + Number(one.mass_g !== undefined);
    if (count === 1) return [];
    const found = count === 0 ? "neither thickness_mm nor mass_g" : "both thickness_mm and mass_g";
    const remedy =
      count === 0 ? "Add the thickness, or the weighed mass." : "Keep the one that was measured.";
    return [problem(path, found, "exactly one of the two", remedy)];
  },
  dense: (one) => [["", one]],
  // By its name: a sealer or primer, a clear or top coat, else paint.
  usualStage({ name }) {
    if (/seal|primer|prime/i.test(name) && !/paint/i.test(name)) return "sealed";
    return /clear|top ?coat/i.test(name) ? "clear-coated" : "painted";
  },
  stretch: (one) => one,
  section: { key: "coats", title: "Coats" },
  turned: (one) =>
    one.thickness_mm !== undefined
      ? [{ path: ["thickness_mm"], slider: "field" }]
      : one.mass_g !== undefined
        ? [{ path: ["mass_g"], slider: "field" }]
        : [],
  gist: (one) => one.name,
  board: {
    words: "Coat",
    ways: [],
    start: () => ({ name: "clear coat", ...USUAL.clearCoat }),
    handles: () => [],
    drag: (one) => one,
  },
  counts: "A coat displaces its own volume: a gram of a 1.1 g/mL film costs about a tenth of a gram of lift.",
};
