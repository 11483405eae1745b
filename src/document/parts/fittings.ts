import { z } from "zod";
import type { PartSpec } from "../../model/parts";
import { list, name, point } from "../fields";
import { stage } from "../schema-bench";
import { grams, place, stuff, toGrams, toGramsPerMillilitre, toPoint } from "../si";
import { copy, heightAt, tenth } from "./drawn";
import { density, inOut, mass, material } from "./common";
import { stretchPoint } from "./types";
import type { PartFile, Read } from "./types";

const schema = z
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

const field = list("Fittings", schema, 100);

export const fittings: PartFile<"fittings", Read<typeof schema>, typeof field> = {
  field,
  compile: (one) => ({
    name: one.name,
    at: place(one.at_mm),
    mass: grams(one.mass_g),
    stuff: stuff(one, "plastic", one.name),
    where: one.where,
  }),
  dense: (one) => [["", one]],
  usualStage: () => "painted",
  stretch: (one, by) => ({ ...one, at_mm: stretchPoint(by, one.at_mm) }),
  section: null,
  turned: () => [],
  gist: (one) => one.mass_g,
  board: {
    words: "Eyes and other fittings",
    ways: ["along", "up"],
    start(body, { along, up }) {
      const station = tenth(0.12 * body.length);
      return {
        name: "eyes",
        at_mm: [tenth(station + along), tenth(heightAt(body, station, 0.65) + up)],
        mass_g: 0.1,
        density_g_ml: 1.2,
        where: "outside",
      };
    },
    handles: (one) => [{ id: "place", at: one.at_mm, words: "the fitting" }],
    drag: (one, _, to) => ({ ...one, at_mm: copy(to) }),
  },
  counts: "Inside it counts in full; outside by what it exceeds the water it displaces.",
};

/** A fitting of the model as the file holds it, by its density. */
export const fittingEntry = (f: PartSpec<"fittings">): Read<typeof schema> => ({
  name: f.name,
  at_mm: toPoint(f.at),
  mass_g: toGrams(f.mass),
  density_g_ml: toGramsPerMillilitre(f.stuff.density),
  where: f.where,
});
