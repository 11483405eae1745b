import { add, cos, scale, sin, square, tan, type Vec } from "../base";
import { insideOutline } from "../shape";
import { above0, atLeast0, finite, point, stuff } from "./checks";
import { BaitError, inMm } from "./error";
import { rectangle } from "./figures";
import { bibOutline, bibPlate, halfWidth, slotAngle, tongueAlong } from "./plate";
import type { BibSpec } from "./plate";
import { weighted } from "./rows";
import { drawn } from "./spread";
import type { Figure, Part } from "./types";

/** The sharpest bend at the root: beyond it plate and tongue lie on each other. Common practice, no source. rad. */
const MOST_BENT = (150 / 180) * Math.PI;

export const bib: Part<BibSpec, "bib", "item", false> = {
  many: false,
  groups: ["bib"],
  pieces: ["item"],
  word: "bib",
  name: () => "bib",

  check(b, path) {
    point(`${path}.root_mm`, b.root);
    finite(`${path}.angle_deg`, b.angle, "rad");
    above0(`${path}.length_mm`, b.length, "m");
    above0(`${path}.width_mm`, b.width, "m");
    atLeast0(`${path}.slot_mm`, b.slot, "m");
    if (b.slotAngle !== undefined) finite(`${path}.slot_angle_deg`, b.slotAngle, "rad");
    if (Math.abs(slotAngle(b) - b.angle) > MOST_BENT)
      throw new BaitError(
        `${path}.slot_angle_deg`,
        "the bib would be folded back onto its own tongue",
        "Give an angle that differs from the bib angle by 150° at most, or leave it out for a straight bib",
      );
    above0(`${path}.thickness_mm`, b.thickness, "m");
    stuff(path, b.stuff);
  },

  layout(b, path, shape) {
    if (!(b.slot > 0)) return [];
    const back = tongueAlong(b);
    const x = b.root.x - (back.x * b.slot) / 2;
    const z = b.root.z - (back.z * b.slot) / 2;
    if (-x < 0 || -x > shape.length)
      throw new BaitError(
        `${path}.slot_mm`,
        `the middle of the slot lies at station ${inMm(-x)}, off the body`,
        "Move the root, or give slot_mm 0 for a bib without a tongue",
      );
    if (insideOutline(shape, { x, z })) return [];
    return [
      {
        path: `${path}.slot_mm`,
        text: "The middle of the bib's slot is not within the outline, yet the tongue counts as inside.",
      },
    ];
  },

  rows(b, { shape }) {
    const plate = bibPlate(b, (s) => shape.section(s).halfBreadth);
    const { tongue } = plate;
    const { density } = b.stuff;
    const centre = weighted(
      [
        { w: plate.volume, at: plate.centroid },
        { w: tongue.volume, at: tongue.middle },
      ],
      plate.centroid,
    );
    // Plates with l²/12 (docs/model.md §6.4), each about its own middle, then moved to their common centre.
    const about = (volume: number, l: number, at: Vec): number =>
      volume * ((l * l) / 12 + square(at.x - centre.x) + square(at.z - centre.z));
    const slot2 = (tongue.volume * square(b.slot)) / 12;
    return [
      {
        item: "bib",
        group: "bib",
        part: "item",
        mass: (plate.volume + tongue.volume) * density,
        massCentre: centre,
        inertia:
          density *
          (about(plate.volume, b.length, plate.centroid) + about(tongue.volume, b.slot, tongue.middle)),
        displaced: plate.volume,
        displacedCentre: plate.centroid,
        immersing: { as: "pieces", pieces: plate.pieces },
        removed: tongue.volume,
        removedCentre: tongue.middle,
        removedInertia: slot2,
        ownVolume: plate.volume + tongue.volume,
      },
    ];
  },

  // The plate edge on: its part outside, and the tongue in the slot.
  sketch(b, { drawn: body }) {
    const ahead = { x: cos(b.angle), z: -sin(b.angle) };
    const back = tongueAlong(b);
    const half = b.thickness / 2;
    const on = (along: Vec, distance: number, aside: number): Vec =>
      add(b.root, add(scale(along, distance), scale({ x: -along.z, z: along.x }, aside)));
    const at = (distance: number, aside: number): Vec => on(distance < 0 ? back : ahead, distance, aside);
    // The edges of a bent bib meet at the root on the line that halves the bend.
    const meet = tan((slotAngle(b) - b.angle) / 2);
    const corner = (distance: number, aside: number): Vec =>
      distance === 0 && meet !== 0 ? on(ahead, aside * meet, aside) : at(distance, aside);
    const slab = (from: number, to: number): Vec[] => [
      corner(from, half),
      corner(to, half),
      corner(to, -half),
      corner(from, -half),
    ];
    const plate = { role: "plate", layer: "behind" } as const;
    const tongue = { role: "plate", layer: "inside" } as const;
    const breadthAt = (x: number): number => body.section(Math.min(Math.max(-x, 0), body.length)).halfBreadth;
    const slot = (figure: () => Figure): Figure[] => (b.slot > 0 ? [figure()] : []);
    return {
      figures: [
        { ...plate, is: "polygon", points: slab(0, b.length) },
        ...slot(() => ({ ...tongue, is: "polygon", points: slab(-b.slot, 0) })),
      ],
      above: () => [
        {
          ...plate,
          is: "polygon",
          points: bibOutline(b).map((p) => ({ x: b.root.x + p.x * ahead.x, z: p.z })),
        },
        ...slot(() => {
          const end = b.root.x - b.slot * back.x;
          const broad = breadthAt((b.root.x + end) / 2);
          return rectangle(tongue, { x: b.root.x, z: broad }, { x: end, z: -broad });
        }),
      ],
      across: (x) =>
        [back, ahead].flatMap((along) => {
          if (Math.abs(along.x) < 1e-9) return [];
          const d = (x - b.root.x) / along.x;
          const inTongue = along === back;
          if (inTongue ? d < -b.slot || d >= 0 : d < 0 || d > b.length) return [];
          const z = b.root.z + d * along.z;
          const broad = inTongue ? breadthAt(x) : halfWidth(b, d);
          const thick = half / Math.abs(along.x);
          return [rectangle(tongue, { x: -broad, z: z + thick }, { x: broad, z: z - thick })];
        }),
      dimensions: [
        { key: "length_mm", from: b.root, to: at(b.length, 0) },
        { key: "slot_mm", from: at(-b.slot, 0), to: b.root },
      ],
    };
  },

  keepOuts(b) {
    if (!(b.slot > 0)) return [];
    const tongue = [{ a: b.root, b: add(b.root, scale(tongueAlong(b), -b.slot)) }];
    return [{ is: "rods", label: "bib's tongue", path: tongue, inside: tongue, radius: b.thickness / 2 }];
  },

  // Length, width and place are drawn; the thickness is a catalogue value without an error here.
  changes: () => [],

  uncertain(b, draw) {
    const { row, at, rows, uncertainty } = draw;
    const e = draw.input("bib: density");
    const l = draw.input("bib: length");
    const w = draw.input("bib: width");
    const mm = uncertainty.drawnLength;
    const sigma = draw.spread(b.stuff);
    draw.model(() => {
      const grown = drawn(1, mm / b.length, l()) * drawn(1, mm / b.width, w());
      rows.displaced[at] = row.displaced * grown;
      rows.own[at] = row.removed + row.displaced * grown;
      rows.mass[at] = (rows.own[at] ?? 0) * b.stuff.density * drawn(1, sigma, e());
    });
    draw.place([at], row.item);
  },
};
