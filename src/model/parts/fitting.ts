import type { Vec } from "../base";
import { halfBreadthAt } from "../shape";
import { atLeast0, point, stuff, within } from "./checks";
import { disc } from "./figures";
import { nameOr } from "./rows";
import { heavierOrMoved } from "./small-changes";
import { ballRadius } from "./solids";
import { drawn } from "./spread";
import type { Figure, Part, Stuff } from "./types";

/** A small thing let into the body or glued onto it: an eye, a rattle, a stick-on strip. */
export interface FittingSpec {
  readonly name: string;
  readonly at: Vec;
  readonly mass: number;
  readonly stuff: Stuff;
  readonly where: "inside" | "outside";
}

export const fitting: Part<FittingSpec, "fittings", "item", true> = {
  many: true,
  groups: ["fittings"],
  pieces: ["item"],
  word: "fitting",
  name: (f) => f.name,

  check(f, path) {
    point(`${path}.at_mm`, f.at);
    atLeast0(`${path}.mass_g`, f.mass, "kg");
    stuff(path, f.stuff);
  },

  layout: (f, path, shape) =>
    f.where === "inside"
      ? within("fitting", `${path}.at_mm`, f.at, ballRadius(f.mass / f.stuff.density), shape)
      : [],

  rows(f) {
    const volume = f.mass / f.stuff.density;
    const outside = f.where === "outside";
    return [
      {
        item: nameOr(f.name, "fitting"),
        group: "fittings",
        part: "item",
        mass: f.mass,
        massCentre: f.at,
        displaced: outside ? volume : 0,
        immersing: outside ? { as: "sphere", at: f.at, volume } : null,
        removed: outside ? 0 : volume,
        ownVolume: volume,
      },
    ];
  },

  // Drawn as a ball of its volume; where the name says eye, with a pupil.
  sketch(f, { drawn: body }) {
    const layer = f.where === "inside" ? "inside" : "front";
    const radius = ballRadius(f.mass / f.stuff.density);
    const eye = /\beyes?\b/i.test(f.name);
    const pad = { role: "pad", layer } as const;
    const pupil: Figure[] = eye ? [disc({ role: "pupil", layer }, f.at, 0.5 * radius)] : [];
    return {
      figures: [disc(pad, f.at, radius), ...pupil],
      above() {
        if (f.where === "inside") return [];
        const { x, z } = f.at;
        // Eyes sit on both flanks; any other fitting stands in the plane of symmetry.
        const onBody = eye && x <= 0 && -x <= body.length;
        const y = onBody ? halfBreadthAt(body.section(0 - x), z) : 0;
        return (y > 0 ? [y, -y] : [0]).map((side) => disc(pad, { x, z: side }, (onBody ? 0.5 : 1) * radius));
      },
      across: () => [],
      dimensions: [],
    };
  },

  keepOuts: (f) =>
    f.where === "inside" && f.mass > 0 ? [{ is: "hole", at: f.at, volume: f.mass / f.stuff.density }] : [],

  changes: heavierOrMoved,

  uncertain(f, draw) {
    const { row, at, rows, weighed } = draw;
    const eMass = draw.input(`${row.item}: mass`);
    const eDensity = draw.input(`${row.item}: density`);
    const sigma = draw.spread(f.stuff);
    draw.model(() => {
      rows.mass[at] = drawn(f.mass, weighed, eMass());
      rows.own[at] = (rows.mass[at] ?? 0) / (f.stuff.density * drawn(1, sigma, eDensity()));
      (f.where === "outside" ? rows.displaced : rows.removed)[at] = rows.own[at] ?? 0;
    });
    draw.place([at], row.item);
  },
};
