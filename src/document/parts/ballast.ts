import { z } from "zod";
import { cube } from "../../model/base";
import type { PartSpec } from "../../model/parts";
import { above, flag, list, maybe, name, number, point } from "../fields";
import { stage } from "../schema-bench";
import {
  grams,
  gramsPerMillilitre,
  millilitres,
  mm,
  place,
  stuff,
  stuffKeys,
  toGrams,
  toGramsPerMillilitre,
  toMillilitres,
  toMm,
  toPoint,
} from "../si";
import { copy, heightAt, tenth } from "./drawn";
import { density, inOut, mass, material } from "./common";
import { stretchPoint } from "./types";
import { USUAL } from "./usual";
import type { PartFile, Read } from "./types";

const schema = z
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
    drill_mm: maybe(
      above(
        "Drill",
        "mm",
        [0, 200],
        [2, 10, 0.5],
        "The hole goes straight up from the bottom edge, as deep as its volume makes it; absent: its shape is not known.",
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
    weighed: maybe(
      flag(
        "Weighed",
        "Absent: yes. No: its mass comes from its measures or a catalogue, and errs as its material does.",
      ),
    ),
    stage: stage(),
  })
  .meta({ title: "Ballast" });

/** A starting weight is a ball of the usual size, or of this share of the room to the skin where that is less. */
const SHARE = 0.45;

const field = list("Ballast", schema, 100);

export const ballast: PartFile<"ballast", Read<typeof schema>, typeof field> = {
  field,
  compile: (one) => ({
    name: one.name,
    at: place(one.at_mm),
    mass: grams(one.mass_g),
    ...(one.weighed === undefined ? {} : { weighed: one.weighed }),
    stuff: stuff(one, "metal", one.name),
    where: one.where,
    hole: one.hole_ml === undefined ? null : millilitres(one.hole_ml),
    ...(one.drill_mm === undefined ? {} : { drill: mm(one.drill_mm) }),
    filler: gramsPerMillilitre(one.filler_g_ml ?? 0),
  }),
  dense: (one) => [["", one]],
  usualStage: () => "laid out",
  stretch: (one, by) => ({ ...one, at_mm: stretchPoint(by, one.at_mm) }),
  section: { key: "ballast", title: "Ballast" },
  turned: () => [
    { path: ["mass_g"], slider: "field" },
    { path: ["at_mm", 0], slider: "along" },
    { path: ["at_mm", 1], slider: "up" },
  ],
  gist: (one) => one.mass_g,
  board: {
    words: "Weight",
    ways: ["along", "up"],
    start(body, { along, up }) {
      const station = tenth(0.4 * body.length);
      const { top, bottom, half } = body.at(station);
      const { material, diameter_mm } = USUAL.weight;
      const radius = Math.min(diameter_mm / 2, SHARE * Math.min(half, (top - bottom) / 2));
      const { density } = stuff({ material }, "metal", "weight");
      const mass = toGrams(density * (4 / 3) * Math.PI * cube(mm(radius)));
      return {
        name: "weight",
        at_mm: [tenth(station + along), tenth(heightAt(body, station, 0.3) + up)],
        mass_g: Math.max(0.01, Number(mass.toFixed(2))),
        material,
        where: "inside",
      };
    },
    handles: (one) => [{ id: "place", at: one.at_mm, words: "the weight" }],
    drag: (one, _, to) => ({ ...one, at_mm: copy(to) }),
  },
  counts: "Inside it counts in full; outside by what it exceeds the water it displaces.",
};

/** A weight of the model as the file holds it. */
export const ballastEntry = (b: PartSpec<"ballast">): Read<typeof schema> => ({
  name: b.name,
  at_mm: toPoint(b.at),
  mass_g: toGrams(b.mass),
  ...(b.weighed === undefined ? {} : { weighed: b.weighed }),
  ...stuffKeys(b.stuff),
  where: b.where,
  ...(b.hole === null ? {} : { hole_ml: toMillilitres(b.hole) }),
  ...(b.drill === undefined ? {} : { drill_mm: toMm(b.drill) }),
  ...(b.hole === null || b.filler === 0 ? {} : { filler_g_ml: toGramsPerMillilitre(b.filler) }),
});

type Entry = Read<typeof schema>;

/** A hole as a maker says it, mm: the file has its volume and the drill. */
export interface DrilledSize {
  readonly diameter: number;
  /** From the bottom edge up to its inner end. */
  readonly depth: number;
}

/** mm² of a round hole. */
const areaOf = (diameter: number): number => (Math.PI / 4) * diameter * diameter;

/** The hole of an entry by drill and depth; null where the file does not say both. */
export const drilledSize = ({ drill_mm: diameter, hole_ml: volume }: Entry): DrilledSize | null =>
  diameter === undefined || volume === undefined
    ? null
    : { diameter, depth: Number(((volume * 1000) / areaOf(diameter)).toFixed(2)) };

/** The entry with a hole of this drill and depth; null: without a given hole. */
export function withDrilled({ drill_mm: _d, hole_ml: _h, ...one }: Entry, size: DrilledSize | null): Entry {
  if (size === null) return one;
  const { diameter, depth } = size;
  return { ...one, hole_ml: Number(((areaOf(diameter) * depth) / 1000).toFixed(4)), drill_mm: diameter };
}
