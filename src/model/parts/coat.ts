import { hypot } from "../base";
import type { Shape, Station } from "../shape";
import { atLeast0, stuff } from "./checks";
import { BaitError } from "./error";
import { named } from "./rows";
import { drawn } from "./spread";
import type { Part, Stuff } from "./types";

/** A coat of sealer, paint or clear over the whole skin. */
export interface CoatSpec {
  readonly name: string;
  /** One of the two is null. m, kg. */
  readonly thickness: number | null;
  readonly mass: number | null;
  readonly stuff: Stuff;
}

/**
 * Second moment ∫r²dS/S (m²) of the skin about its centroid, for the inertia of a coat: girth × √(ds² + dr²) by stations, r
 * the mean half-axis. Each section's rim counts as that of the ellipse with its half-axes (girth by Ramanujan's formula,
 * from memory; mean of ζ² half of h²). A coat is a few per cent of the mass, and this is right within a few per cent of the
 * coat's own inertia.
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
    const area = girth * s.ds * hypot(1, slope);
    const dx = -s.s - shape.skinCentroid.x;
    const dz = (s.top + s.bottom) / 2 - shape.skinCentroid.z;
    sum += area;
    spread += area * (dx * dx + dz * dz + (b * b) / 2);
  });
  return sum > 0 ? spread / sum : 0;
}

/** The same, stored for each shape. */
const spreads = new WeakMap<Shape, number>();
function spreadOf(shape: Shape): number {
  let spread = spreads.get(shape);
  if (spread === undefined) spreads.set(shape, (spread = skinSpread(shape)));
  return spread;
}

export const coat: Part<CoatSpec, "coats", "item", true> = {
  many: true,
  groups: ["coats"],
  pieces: ["item"],
  word: "coat",
  name: (c) => c.name,

  check(c, path) {
    stuff(path, c.stuff);
    if ((c.thickness === null) === (c.mass === null))
      throw new BaitError(
        path,
        "a coat has either a thickness or a mass",
        "Give exactly one of thickness_mm and mass_g",
      );
    if (c.thickness !== null) atLeast0(`${path}.thickness_mm`, c.thickness, "m");
    if (c.mass !== null) atLeast0(`${path}.mass_g`, c.mass, "kg");
  },

  rows(c, { drawn }) {
    const volume = c.thickness !== null ? drawn.skinArea * c.thickness : (c.mass ?? 0) / c.stuff.density;
    const mass = c.mass ?? volume * c.stuff.density;
    return [
      {
        item: named(c.name, "coat"),
        group: "coats",
        part: "item",
        mass,
        massCentre: drawn.skinCentroid,
        inertia: mass * spreadOf(drawn),
        displaced: volume,
        immersing: { as: "skin" },
        ownVolume: volume,
      },
    ];
  },

  // The outline is the coat's: it has no figure of its own.
  sketch: (c) => ({ figures: [], above: () => [], across: () => [], cover: c.thickness, dimensions: [] }),

  changes: (c) => [
    { piece: "item", change: "one coat more", at: null, entries: [c, { ...c, name: `${c.name} again` }] },
  ],

  uncertain(c, draw) {
    const { row, at, rows, body, uncertainty, weighed } = draw;
    const eSize = draw.input(`${row.item}: ${c.thickness === null ? "mass" : "thickness"}`);
    const eDensity = draw.input(`${row.item}: density`);
    const sigma = draw.spread(c.stuff);
    draw.model(() => {
      const rho = c.stuff.density * drawn(1, sigma, eDensity());
      if (c.thickness !== null) {
        const v = row.displaced * draw.skinArea() * drawn(1, uncertainty.coatThickness, eSize());
        rows.displaced[at] = rows.own[at] = v;
        rows.mass[at] = v * rho;
      } else {
        rows.mass[at] = drawn(c.mass ?? 0, weighed, eSize());
        rows.displaced[at] = rows.own[at] = (rows.mass[at] ?? 0) / rho;
      }
      // The skin's centroid moves with the body's scales.
      rows.dx[at] = row.massCentre.x * (body.length - 1);
      rows.dz[at] = row.massCentre.z * (body.height - 1);
    });
  },
};
