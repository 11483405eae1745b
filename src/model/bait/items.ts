import type { Vec } from "../base";
import type { Shape, Station } from "../shape";
import { ballPlaces } from "./balls";
import { bibPlate } from "./bib";
import { BaitError, inG } from "./error";
import { piecesSum } from "./wires";
import type { SplitWire } from "./wires";
import type { BaitSpec, BallSide, Item } from "./types";

/** Fields of a row that most items leave at nothing. */
function row(item: Pick<Item, "item" | "group" | "index" | "mass" | "massCentre"> & Partial<Item>): Item {
  return {
    part: "item",
    moment: { x: 0, z: 0 },
    inertia: 0,
    displaced: 0,
    displacedCentre: item.massCentre,
    immersing: null,
    removed: 0,
    removedCentre: item.massCentre,
    removedInertia: 0,
    ownVolume: 0,
    ...item,
  };
}

/** Labels that are unique within the bait: "belly", "belly 2" … */
class Labels {
  readonly #taken: Set<string>;
  constructor(taken: readonly string[] = ["body"]) {
    this.#taken = new Set(taken);
  }
  unique(wanted: string): string {
    let label = wanted;
    for (let k = 2; this.#taken.has(label); k++) label = `${wanted} ${k}`;
    this.#taken.add(label);
    return label;
  }
}

/** "belly" + "hook" → "belly hook"; a name that already ends with the word is left alone. */
const named = (name: string, word: string): string =>
  name.trim() === ""
    ? word
    : name.toLowerCase().split(/\s+/).at(-1) === word
      ? name.trim()
      : `${name.trim()} ${word}`;

const weighted = (parts: readonly { readonly w: number; readonly at: Vec }[], otherwise: Vec): Vec => {
  const w = parts.reduce((sum, p) => sum + p.w, 0);
  if (!(w > 0)) return otherwise;
  return {
    x: parts.reduce((sum, p) => sum + p.w * p.at.x, 0) / w,
    z: parts.reduce((sum, p) => sum + p.w * p.at.z, 0) / w,
  };
};

/** Row of a chamber's loose balls on a side. */
export function ballsRow(spec: BaitSpec, index: number, label: string, side: BallSide): Item | null {
  const chamber = spec.chambers[index];
  if (!chamber?.balls || chamber.balls.count === 0) return null;
  const { diameter, stuff } = chamber.balls;
  const volume = (Math.PI / 6) * diameter ** 3;
  const each = volume * stuff.density;
  const places = ballPlaces(chamber, side);
  const centre = weighted(
    places.map((at) => ({ w: 1, at })),
    { x: 0, z: 0 },
  );
  return row({
    item: label,
    group: "balls",
    part: "balls",
    index,
    mass: each * places.length,
    massCentre: centre,
    // Balls are points (docs/model.md §6.4): they roll, and do not turn with the bait.
    inertia: places.reduce((sum, p) => sum + each * ((p.x - centre.x) ** 2 + (p.z - centre.z) ** 2), 0),
    ownVolume: volume * places.length,
  });
}

/**
 * Second moment ∫r²dS/S (m²) of the skin about its centroid, for the inertia of a coat: girth × √(ds² + dr²) by stations,
 * r the mean half-axis, each section's rim as that of the ellipse with its half-axes (girth by Ramanujan's formula, from
 * memory; mean of ζ² half of h²). A coat is a few per cent of the mass; this is good to a few per cent of its own inertia.
 */
function skinSpread(shape: Shape): number {
  let sum = 0;
  let spread = 0;
  const { stations } = shape;
  const radius = (s: Station | undefined): number => (s ? (s.halfBreadth + (s.top - s.bottom) / 2) / 2 : 0);
  stations.forEach((s, i) => {
    const a = s.halfBreadth;
    const b = (s.top - s.bottom) / 2;
    if (!(a + b > 0)) return;
    const before = stations[i - 1] ?? s;
    const after = stations[i + 1] ?? s;
    const slope = after.s > before.s ? (radius(after) - radius(before)) / (after.s - before.s) : 0;
    const girth = Math.PI * (3 * (a + b) - Math.sqrt((3 * a + b) * (a + 3 * b)));
    const area = girth * s.ds * Math.hypot(1, slope);
    const dx = -s.s - shape.skinCentroid.x;
    const dz = (s.top + s.bottom) / 2 - shape.skinCentroid.z;
    sum += area;
    spread += area * (dx * dx + dz * dz + (b * b) / 2);
  });
  return sum > 0 ? spread / sum : 0;
}

/**
 * Rows of everything but the body, in the order of the document (docs/model.md §3, the table and its exact readings).
 *
 * @param drawn the body as drawn: skin and coats use it
 * @param shape the body with its volume factor: the bib's tongue is as wide as this one
 */
export function fittedItems(
  spec: BaitSpec,
  drawn: Shape,
  shape: Shape,
  split: readonly SplitWire[],
  side: BallSide,
): Item[] {
  const labels = new Labels();
  const items: Item[] = [];

  spec.chambers.forEach((c, index) => {
    const length = c.to - c.from;
    const volume = length * c.tall * c.wide;
    const centre = { x: -(c.from + c.to) / 2, z: c.height };
    items.push(
      row({
        item: labels.unique(named(c.name, "chamber")),
        group: "chambers",
        index,
        mass: 0,
        massCentre: centre,
        removed: volume,
        removedInertia: (volume * (length * length + c.tall * c.tall)) / 12,
      }),
    );
  });
  spec.chambers.forEach((c, index) => {
    if (!c.balls || c.balls.count === 0) return;
    const balls = ballsRow(spec, index, labels.unique(named(c.name, "balls")), side);
    if (balls) items.push(balls);
  });

  spec.ballast.forEach((b, index) => {
    const own = b.mass / b.stuff.density;
    const hole = b.where === "inside" ? (b.hole ?? own) : 0;
    const proud = Math.max(0, own - hole); // what exceeds the hole; all of it where there is none
    const filling = Math.max(0, hole - own) * b.filler;
    items.push(
      row({
        item: labels.unique(named(b.name, "ballast")),
        group: "ballast",
        index,
        mass: b.mass + filling,
        massCentre: b.at,
        displaced: proud,
        immersing: proud > 0 ? { as: "sphere", at: b.at, volume: proud } : null,
        removed: hole,
        ownVolume: own,
      }),
    );
  });

  spec.wires.forEach((w, index) => {
    const { inside, outside } = split[index] ?? { inside: [], outside: [] };
    const whole = piecesSum([...inside, ...outside]);
    if (!whole) return; // refused by checkNumbers
    const within = piecesSum(inside);
    const without = piecesSum(outside);
    items.push(
      row({
        item: labels.unique(w.name.trim() === "" ? "wire" : w.name.trim()),
        group: "wires",
        index,
        mass: whole.volume * w.stuff.density,
        massCentre: whole.centre,
        inertia: whole.inertia * w.stuff.density,
        displaced: without?.volume ?? 0,
        displacedCentre: without?.centre ?? whole.centre,
        immersing: without ? { as: "pieces", pieces: outside } : null,
        removed: within?.volume ?? 0,
        removedCentre: within?.centre ?? whole.centre,
        removedInertia: within?.inertia ?? 0,
        ownVolume: whole.volume,
      }),
    );
  });

  if (spec.bib) {
    const plate = bibPlate(spec.bib, (s) => shape.section(s).halfBreadth);
    const { tongue } = plate;
    const { density } = spec.bib.stuff;
    const centre = weighted(
      [
        { w: plate.volume, at: plate.centroid },
        { w: tongue.volume, at: tongue.middle },
      ],
      plate.centroid,
    );
    // Plates with l²/12 (docs/model.md §6.4), each about its own middle, then moved to their common centre.
    const about = (volume: number, l: number, at: Vec): number =>
      volume * ((l * l) / 12 + (at.x - centre.x) ** 2 + (at.z - centre.z) ** 2);
    const slot2 = (tongue.volume * spec.bib.slot ** 2) / 12;
    items.push(
      row({
        item: labels.unique("bib"),
        group: "bib",
        index: 0,
        mass: (plate.volume + tongue.volume) * density,
        massCentre: centre,
        inertia:
          density *
          (about(plate.volume, spec.bib.length, plate.centroid) +
            about(tongue.volume, spec.bib.slot, tongue.middle)),
        displaced: plate.volume,
        displacedCentre: plate.centroid,
        immersing: { as: "pieces", pieces: plate.pieces },
        removed: tongue.volume,
        removedCentre: tongue.middle,
        removedInertia: slot2,
        ownVolume: plate.volume + tongue.volume,
      }),
    );
  }

  spec.hangers.forEach((h, index) => {
    for (const [part, it] of [
      ["ring", h.ring],
      ["hook", h.hook],
    ] as const) {
      if (!it) continue;
      const volume = it.mass / it.density;
      items.push(
        row({
          item: labels.unique(named(h.name, part)),
          group: "hangers",
          part,
          index,
          mass: it.mass,
          massCentre: h.at,
          displaced: volume,
          immersing: { as: "always", at: h.at, volume },
          ownVolume: volume,
        }),
      );
    }
  });

  spec.fittings.forEach((f, index) => {
    const volume = f.mass / f.stuff.density;
    const outside = f.where === "outside";
    items.push(
      row({
        item: labels.unique(f.name.trim() === "" ? "fitting" : f.name.trim()),
        group: "fittings",
        index,
        mass: f.mass,
        massCentre: f.at,
        displaced: outside ? volume : 0,
        immersing: outside ? { as: "sphere", at: f.at, volume } : null,
        removed: outside ? 0 : volume,
        ownVolume: volume,
      }),
    );
  });

  const spread = spec.coats.length > 0 ? skinSpread(drawn) : 0;
  spec.coats.forEach((c, index) => {
    const volume = c.thickness !== null ? drawn.skinArea * c.thickness : (c.mass ?? 0) / c.stuff.density;
    const mass = c.mass ?? volume * c.stuff.density;
    items.push(
      row({
        item: labels.unique(named(c.name, "coat")),
        group: "coats",
        index,
        mass,
        massCentre: drawn.skinCentroid,
        inertia: mass * spread,
        displaced: volume,
        immersing: { as: "skin" },
        ownVolume: volume,
      }),
    );
  });
  return items;
}

/**
 * Rows of the corrections by tub readings. Each one's mass stands at the G of all rows before it, so that it moves G by its
 * shift alone: the moment M·shift, M the mass with it.
 *
 * @param rows everything computed, the body among it
 */
export function correctionRows(spec: BaitSpec, rows: readonly Item[]): Item[] {
  const labels = new Labels(rows.map((r) => r.item));
  let mass = 0;
  let mx = 0;
  let mz = 0;
  for (const r of rows) {
    mass += r.mass;
    mx += r.mass * r.massCentre.x + r.moment.x;
    mz += r.mass * r.massCentre.z + r.moment.z;
  }
  return (spec.corrections ?? []).map((c, index) => {
    if (!(mass + c.mass > 0))
      throw new BaitError(
        `corrections[${index}].mass_g`,
        `${inG(c.mass)} takes away more than the whole bait of ${inG(mass)}`,
        "Check the tub reading, or remove the correction",
      );
    const massCentre = { x: mx / mass, z: mz / mass };
    const moment = { x: (mass + c.mass) * c.shift.x, z: (mass + c.mass) * c.shift.z };
    mass += c.mass;
    mx += c.mass * massCentre.x + moment.x;
    mz += c.mass * massCentre.z + moment.z;
    const item = labels.unique(c.name.trim() === "" ? "tub correction" : c.name.trim());
    return row({ item, group: "corrections", index, mass: c.mass, massCentre, moment });
  });
}

/**
 * Row of the body: density × (outline's volume − all that is removed), its inertia from its sections less the removals
 * (holes as points at their centres, chambers as boxes, wires as rods, the tongue as a plate).
 */
export function bodyRow(shape: Shape, density: number, fitted: readonly Item[]): Item {
  const { volume, centroid } = shape;
  const removed = fitted.reduce((sum, i) => sum + i.removed, 0);
  const left = volume - removed;
  const centre = {
    x: (volume * centroid.x - fitted.reduce((s, i) => s + i.removed * i.removedCentre.x, 0)) / left,
    z: (volume * centroid.z - fitted.reduce((s, i) => s + i.removed * i.removedCentre.z, 0)) / left,
  };
  const apart = (at: Vec): number => (at.x - centre.x) ** 2 + (at.z - centre.z) ** 2;
  const second =
    shape.secondMomentX +
    shape.secondMomentZ +
    volume * apart(centroid) -
    fitted.reduce((s, i) => s + i.removedInertia + i.removed * apart(i.removedCentre), 0);
  return row({
    item: "body",
    group: "body",
    index: 0,
    mass: density * left,
    massCentre: centre,
    inertia: density * second,
    displaced: volume,
    displacedCentre: centroid,
    immersing: { as: "body" },
    removedCentre: centroid,
    ownVolume: volume,
  });
}
