import { z } from "zod";
import { atan2, cos, hypot, sin } from "../../model/base";
import { above, choice, maybe, number, point } from "../fields";
import { stage } from "../schema-bench";
import { degrees, mm, place, stuff } from "../si";
import { copy, heightAt, tenth } from "./drawn";
import { density, material } from "./common";
import { stretchPoint } from "./types";
import type { PartFile, Read } from "./types";

const schema = z
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
    slot_angle_deg: maybe(
      number(
        "Angle of the slot",
        "°",
        [-90, 180],
        [-10, 90, 0.5],
        "Of a bib that is bent at its root: the angle of the part inside the body, counted as the bib angle is. Absent: straight on from the part outside.",
      ),
    ),
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

const DEGREE = Math.PI / 180;

const field = maybe(schema);

export const bib: PartFile<"bib", Read<typeof schema>, typeof field> = {
  field,
  compile: (one) => ({
    root: place(one.root_mm),
    angle: degrees(one.angle_deg),
    length: mm(one.length_mm),
    width: mm(one.width_mm),
    slot: mm(one.slot_mm),
    ...(one.slot_angle_deg === undefined ? {} : { slotAngle: degrees(one.slot_angle_deg) }),
    thickness: mm(one.thickness_mm),
    outline: one.outline,
    stuff: stuff(one, "plastic", "bib"),
  }),
  dense: (one) => [["", one]],
  usualStage: () => "laid out",
  // The plate keeps its size: a maker chooses it by the depth wanted, not by the length of the bait.
  stretch: (one, by) => ({ ...one, root_mm: stretchPoint(by, one.root_mm) }),
  section: { key: "bib", title: "Bib" },
  turned: () => [
    { path: ["angle_deg"], slider: "field" },
    { path: ["length_mm"], slider: "field" },
    { path: ["width_mm"], slider: "field" },
  ],
  gist: () => "",
  board: {
    words: "Bib",
    // Its root stays at the bottom edge.
    ways: ["along"],
    start(body, { along }) {
      const station = tenth(0.06 * body.length + along);
      return {
        root_mm: [station, heightAt(body, station, 0.2)],
        angle_deg: 45,
        length_mm: tenth(0.2 * body.length),
        width_mm: tenth(0.17 * body.length),
        slot_mm: Math.min(6, tenth(0.06 * body.length)),
        thickness_mm: 1.5,
        outline: "round",
        material: "polycarbonate",
      };
    },
    handles: ({ root_mm: [s, z], angle_deg, length_mm }) => [
      { id: "root", at: [s, z], words: "the bib's root" },
      {
        id: "end",
        at: [s - length_mm * cos(angle_deg * DEGREE), z - length_mm * sin(angle_deg * DEGREE)],
        words: "the bib's end: its angle and its length",
      },
    ],
    drag(one, handle, to) {
      if (handle === "root") return { ...one, root_mm: copy(to) };
      const [ahead, down] = [one.root_mm[0] - to[0], one.root_mm[1] - to[1]];
      return {
        ...one,
        angle_deg: tenth(atan2(down, ahead) / DEGREE),
        length_mm: tenth(hypot(ahead, down)),
      };
    },
  },
  counts: "The part in the slot counts in full; the part outside by what it exceeds the water it displaces.",
};
