import type { Vec } from "../base";
import { above0, point, stuff } from "./checks";
import { BaitError } from "./error";
import { disc } from "./figures";
import { nameOr } from "./rows";
import { drawn } from "./spread";
import { piecesSum, splitWire } from "./split";
import type { Figure, Part, Piece, Stuff } from "./types";

/** A round wire along a path of straight pieces; the outline cuts it into inside and outside. */
export interface WireSpec {
  readonly name: string;
  readonly path: readonly Vec[];
  readonly diameter: number;
  readonly stuff: Stuff;
}

/** Points where a path crosses the plane of a station, as heights. */
function heightsAt(path: readonly Vec[], x: number): number[] {
  return path.flatMap((b, i) => {
    const a = path[i - 1];
    if (!a || a.x === b.x || (a.x - x) * (b.x - x) > 0 || b.x === x) return [];
    return [a.z + ((b.z - a.z) * (x - a.x)) / (b.x - a.x)];
  });
}

export const wire: Part<WireSpec, "wires", "item", true> = {
  many: true,
  groups: ["wires"],
  pieces: ["item"],
  word: "wire",
  // Makers twist wires onto one another.
  mayTouch: true,
  name: (w) => w.name,

  check(w, path) {
    above0(`${path}.diameter_mm`, w.diameter, "m");
    stuff(path, w.stuff);
    w.path.forEach((p, k) => {
      point(`${path}.path_mm[${k}]`, p);
    });
    const first = w.path[0];
    if (!first || w.path.every((p) => p.x === first.x && p.z === first.z))
      throw new BaitError(`${path}.path_mm`, "the wire has no length", "Give two different points or more");
  },

  rows(w, { drawn }) {
    const { inside, outside } = splitWire(w, drawn);
    const whole = piecesSum([...inside, ...outside]);
    if (!whole) return []; // `check` refuses a wire without length
    const within = piecesSum(inside);
    const without = piecesSum(outside);
    return [
      {
        item: nameOr(w.name, "wire"),
        group: "wires",
        part: "item",
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
      },
    ];
  },

  // Neighbouring pieces on one side of the outline are joined to one path.
  sketch(w, { drawn }) {
    const { inside, outside } = splitWire(w, drawn);
    const paths = (pieces: readonly Piece[]): Vec[][] => {
      const out: Vec[][] = [];
      let end: Vec | null = null;
      for (const { a, b } of pieces) {
        if (end?.x === a.x && end.z === a.z) out.at(-1)?.push(b);
        else out.push([a, b]);
        end = b;
      }
      return out;
    };
    const figure =
      (layer: Figure["layer"]) =>
      (points: readonly Vec[]): Figure => ({
        role: "metal",
        layer,
        is: "path",
        points,
        thickness: w.diameter,
      });
    const all = (seen: (points: readonly Vec[]) => readonly Vec[]): Figure[] => [
      ...paths(outside).map(seen).map(figure("behind")),
      ...paths(inside).map(seen).map(figure("inside")),
    ];
    return {
      figures: all((points) => points),
      above: () => all((points) => points.map(({ x }) => ({ x, z: 0 }))),
      across: (x) =>
        heightsAt(w.path, x).map((z) =>
          disc({ role: "metal", layer: "inside" }, { x: 0, z }, w.diameter / 2),
        ),
      dimensions: [],
    };
  },

  keepOuts: (w, { drawn }) => [
    {
      is: "rods",
      path: w.path.slice(1).map((b, i) => ({ a: w.path[i] ?? b, b })),
      inside: splitWire(w, drawn).inside,
      radius: w.diameter / 2,
    },
  ],

  changes: () => [],

  uncertain(w, draw) {
    const { row, at, rows } = draw;
    const e = draw.input(`${row.item}: density`);
    const sigma = draw.spread(w.stuff);
    draw.model(() => {
      rows.mass[at] = row.mass * drawn(1, sigma, e());
    });
  },
};
