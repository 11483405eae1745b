import { z } from "zod";
import { above, list, maybe, name, number, whole } from "../fields";
import { problem } from "../problem";
import { stage } from "../schema-bench";
import { mm, stuff } from "../si";
import { tenth } from "./drawn";
import { density, material } from "./common";
import type { PartFile, Read } from "./types";

const balls = z
  .strictObject({
    count: whole("Balls", [1, 200], [1, 12, 1]),
    diameter_mm: above("Ball diameter", "mm", [0, 100], [2, 8, 0.5]),
    material: material(),
    density_g_ml: density(),
  })
  .meta({ title: "Loose balls" });

const schema = z
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

const field = list("Chambers", schema, 20);

export const chambers: PartFile<"chambers", Read<typeof schema>, typeof field> = {
  field,
  compile: (one) => ({
    name: one.name,
    from: mm(one.from_mm),
    to: mm(one.to_mm),
    height: mm(one.height_mm),
    tall: mm(one.tall_mm),
    wide: mm(one.wide_mm),
    balls: one.balls
      ? {
          count: one.balls.count,
          diameter: mm(one.balls.diameter_mm),
          stuff: stuff(one.balls, "metal", `balls of ${one.name}`),
        }
      : null,
  }),
  rules: (one, path) =>
    one.to_mm > one.from_mm
      ? []
      : [
          problem(
            `${path}.to_mm`,
            String(one.to_mm),
            `above from_mm, ${one.from_mm} mm`,
            "A chamber runs from its front end to its rear end: put the larger station in to_mm.",
          ),
        ],
  dense: (one) => (one.balls ? [[".balls", one.balls]] : []),
  usualStage: (_one, piece) => (piece === "balls" ? "closed" : "laid out"),
  // Balls go in last of all before the chamber is closed.
  fixedStage: ["balls"],
  stretch: (one, by) => ({
    ...one,
    from_mm: by.station(one.from_mm),
    to_mm: by.station(one.to_mm),
    height_mm: by.height(one.height_mm),
    tall_mm: by.tall(one.tall_mm),
    wide_mm: by.wide(one.wide_mm),
  }),
  section: null,
  turned: () => [],
  gist: (one) => one.name,
  board: {
    words: "Chamber, empty or with balls",
    ways: ["along", "up"],
    start(body, { along, up }) {
      const [from, to] = [tenth(0.45 * body.length), tenth(0.58 * body.length)];
      const sides = [from, to].map((s) => body.at(s));
      const top = Math.min(...sides.map((one) => one.top));
      const bottom = Math.max(...sides.map((one) => one.bottom));
      const half = Math.min(...sides.map((one) => one.half));
      return {
        name: "chamber",
        from_mm: tenth(from + along),
        to_mm: tenth(to + along),
        height_mm: tenth((top + bottom) / 2 + up),
        tall_mm: Math.max(0.1, tenth(0.4 * (top - bottom))),
        wide_mm: Math.max(0.1, tenth(0.8 * half)),
      };
    },
    handles: (one) => [
      { id: "middle", at: [(one.from_mm + one.to_mm) / 2, one.height_mm], words: "the chamber" },
      { id: "front", at: [one.from_mm, one.height_mm], words: "its front end" },
      { id: "rear", at: [one.to_mm, one.height_mm], words: "its rear end" },
    ],
    drag(one, handle, [s, z]) {
      if (handle === "front") return { ...one, from_mm: tenth(s) };
      if (handle === "rear") return { ...one, to_mm: tenth(s) };
      const by = s - (one.from_mm + one.to_mm) / 2;
      return { ...one, from_mm: tenth(one.from_mm + by), to_mm: tenth(one.to_mm + by), height_mm: z };
    },
  },
  counts: [
    "A void weighs nothing; the wood it takes the place of no longer weighs.",
    "Balls lie inside: they count in full.",
  ],
};
