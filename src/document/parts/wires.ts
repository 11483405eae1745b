import { z } from "zod";
import { above, list, name, point } from "../fields";
import { problem } from "../problem";
import { stage } from "../schema-bench";
import { mm, place, stuff } from "../si";
import { copy, heightAt, tenth } from "./drawn";
import { density, material } from "./common";
import { stretchPoint } from "./types";
import type { PartFile, Read } from "./types";

const schema = z
  .strictObject({
    name: name("Name"),
    path_mm: z.array(point("Bend")).min(2).max(200).meta({ title: "Path" }),
    diameter_mm: above("Wire diameter", "mm", [0, 20], [0.4, 2, 0.05]),
    material: material(),
    density_g_ml: density(),
    stage: stage(),
  })
  .meta({ title: "Wire" });

const field = list("Wires", schema, 50);

export const wires: PartFile<"wires", Read<typeof schema>, typeof field> = {
  field,
  compile: (one) => ({
    name: one.name,
    path: one.path_mm.map(place),
    diameter: mm(one.diameter_mm),
    stuff: stuff(one, "metal", one.name),
  }),
  rules: (wire, path) =>
    wire.path_mm.flatMap((at, j) => {
      const before = wire.path_mm[j - 1];
      if (before === undefined || before[0] !== at[0] || before[1] !== at[1]) return [];
      const remedy = "Remove one of the two equal points.";
      return [
        problem(`${path}.path_mm[${j}]`, "the same point twice in a row", "points that differ", remedy),
      ];
    }),
  dense: (one) => [["", one]],
  usualStage: () => "laid out",
  stretch: (one, by) => ({ ...one, path_mm: one.path_mm.map((p) => stretchPoint(by, p)) }),
  section: null,
  turned: () => [],
  gist: (one) => one.name,
  board: {
    words: "Wire",
    // The eyes stay at nose and tail: the bend between them gives way.
    ways: ["along", "up"],
    start: (body, { along, up }) => ({
      name: "wire",
      path_mm: [
        [-3, heightAt(body, 0, 0.5)],
        [tenth(body.length / 2 + along), tenth(heightAt(body, body.length / 2, 0.5) + up)],
        [tenth(body.length + 3), heightAt(body, body.length, 0.5)],
      ],
      diameter_mm: 0.8,
      material: "stainless steel",
    }),
    handles: (one) => one.path_mm.map((at, i) => ({ id: String(i), at, words: `bend ${i + 1}` })),
    drag: (one, handle, to) => ({
      ...one,
      path_mm: one.path_mm.map((at, i) => (String(i) === handle ? copy(to) : at)),
    }),
  },
  counts: "The part inside counts in full; the part outside by what it exceeds the water it displaces.",
};
