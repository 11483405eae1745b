import { cbrt, type Vec } from "../base";
import type { Shape } from "../shape";
import { above0, atLeast0, point, stuff, within } from "./checks";
import { inMl, inMm } from "./error";
import { cutBall, disc, rectangle } from "./figures";
import { named } from "./rows";
import { heavierOrMoved } from "./small-changes";
import { ballRadius } from "./solids";
import { drawn } from "./spread";
import type { Ball, Figure, Part, Stuff, Warning } from "./types";

/** A weight: inside in its hole, or outside on the skin. */
export interface BallastSpec {
  readonly name: string;
  readonly at: Vec;
  readonly mass: number;
  /**
   * False: its mass comes from its measures or a catalogue, and is as uncertain as its material's density. Absent: a scale
   * gave it.
   */
  readonly weighed?: boolean;
  readonly stuff: Stuff;
  readonly where: "inside" | "outside";
  /** m³, or null: the slug's own volume. */
  readonly hole: number | null;
  /** Diameter of the drill, m, where the hole was drilled straight up from the bottom edge; absent: its shape is not known. */
  readonly drill?: number;
  /** Density of what fills the rest of the hole, kg/m³ (0: air). */
  readonly filler: number;
}

/** Width and depth of a given hole, m: the file says its volume alone, so it counts as a cylinder as deep as wide, V = π d³/4. */
export const holeAcross = (volume: number): number => cbrt((4 * volume) / Math.PI);

/** A drilled hole as it stands in the body: from its mouth at the bottom edge up to its inner end. m */
export interface DrilledHole {
  readonly x: number;
  readonly radius: number;
  readonly mouth: number;
  readonly end: number;
  /** Where the weight begins: it lies at the inner end, its middle at the place given. */
  readonly weight: number;
}

/** The hole of a weight inside by its drill: depth = V / (π d²/4). Null where the file does not say the drill. */
export function drilledHole(b: BallastSpec, drawn: Shape): DrilledHole | null {
  const station = 0 - b.at.x;
  if (b.drill === undefined || b.where !== "inside" || !(station >= 0 && station <= drawn.length))
    return null;
  const mouth = drawn.section(station).bottom;
  const end = mouth + holeOf(b) / ((Math.PI / 4) * b.drill * b.drill);
  return { x: b.at.x, radius: b.drill / 2, mouth, end, weight: Math.min(end, 2 * b.at.z - end) };
}

/** A hole that is too shallow by less than this is deep enough, m: no drill stop is nearer. Common practice, no source. */
const NEAR = 1e-4;

const ownVolume = (b: BallastSpec): number => b.mass / b.stuff.density;
/** Volume of the hole, m³; 0 outside. */
const holeOf = (b: BallastSpec): number => (b.where === "inside" ? (b.hole ?? ownVolume(b)) : 0);

export const ballast: Part<BallastSpec, "ballast", "item", true> = {
  many: true,
  groups: ["ballast"],
  pieces: ["item"],
  word: "ballast",
  name: (b) => b.name,

  check(b, path) {
    point(`${path}.at_mm`, b.at);
    atLeast0(`${path}.mass_g`, b.mass, "kg");
    stuff(path, b.stuff);
    if (b.hole !== null) atLeast0(`${path}.hole_ml`, b.hole, "m³");
    if (b.drill !== undefined) above0(`${path}.drill_mm`, b.drill, "m");
    atLeast0(`${path}.filler_g_ml`, b.filler, "kg/m³");
  },

  layout(b, path, shape) {
    const warnings: Warning[] =
      b.where === "inside"
        ? within(
            "ballast",
            `${path}.at_mm`,
            b.at,
            b.drill === undefined ? ballRadius(holeOf(b)) : b.drill / 2,
            shape,
          )
        : [];
    if (b.where === "outside" && b.hole !== null)
      warnings.push({
        path: `${path}.hole_ml`,
        text: "A hole is given, but this ballast is outside: the hole is not counted.",
      });
    const own = ownVolume(b);
    if (b.where === "inside" && b.hole !== null && own > b.hole)
      warnings.push({
        path: `${path}.hole_ml`,
        text: `The hole of ${inMl(b.hole)} is smaller than the ballast of ${inMl(own)}: ${inMl(own - b.hole)} stand proud and displace water.`,
      });
    // At its shortest the weight fills its hole from side to side: its length is then V/(π d²/4).
    const bored = b.hole === null ? null : drilledHole(b, shape);
    if (bored !== null) {
      const needs = b.at.z + own / (2 * Math.PI * bored.radius * bored.radius) - bored.mouth;
      const depth = bored.end - bored.mouth;
      if (needs - depth > NEAR)
        warnings.push({
          path: `${path}.hole_ml`,
          text: `Its hole is ${inMm(depth)} deep from the bottom edge: so high up, the weight needs ${inMm(needs)} at the least. Drill it deeper, or lower the weight by ${inMm(needs - depth)}.`,
        });
    }
    return warnings;
  },

  rows(b) {
    const own = ownVolume(b);
    const hole = holeOf(b);
    // What exceeds the hole stands proud of the body; outside, that is the whole weight.
    const proud = Math.max(0, own - hole);
    const filling = Math.max(0, hole - own) * b.filler;
    return [
      {
        item: named(b.name, "ballast"),
        group: "ballast",
        part: "item",
        mass: b.mass + filling,
        filler: filling,
        massCentre: b.at,
        displaced: proud,
        immersing: proud > 0 ? { as: "sphere", at: b.at, volume: proud } : null,
        removed: hole,
        ownVolume: own,
      },
    ];
  },

  // The slug is drawn as a ball of its volume, a given hole as a cylinder seen from the side, with what fills it.
  sketch(b, { drawn: shape }) {
    const inside = b.where === "inside";
    const layer = inside ? "inside" : "front";
    const half = b.hole === null ? 0 : holeAcross(b.hole) / 2;
    const bored = drilledHole(b, shape);
    const { radius, mouth, end } = bored ?? { radius: half, mouth: b.at.z - half, end: b.at.z + half };
    const look = { role: b.filler > 0 ? "filled" : "hole", layer } as const;
    const hole = (from: number, to: number): Figure[] =>
      inside && (b.hole !== null || bored !== null)
        ? [rectangle(look, { x: from, z: end }, { x: to, z: mouth })]
        : [];
    const slug: Ball = { at: b.at, radius: ballRadius(ownVolume(b)) };
    const metal = (one: Ball): Figure => disc({ role: "metal", layer }, one.at, one.radius);
    return {
      figures: [...hole(b.at.x + radius, b.at.x - radius), metal(slug)],
      above: () => [metal({ ...slug, at: { x: b.at.x, z: 0 } })],
      across(x) {
        const cut = cutBall(slug, x);
        // An upright cylinder is cut in a rectangle as broad as the circle's chord there.
        const chord = cutBall({ at: b.at, radius }, x);
        return [...(chord ? hole(-chord.radius, chord.radius) : []), ...(cut ? [metal(cut)] : [])];
      },
      dimensions: [],
    };
  },

  keepOuts(b, { drawn: shape }) {
    const bored = drilledHole(b, shape);
    if (bored !== null) {
      const { x, radius, mouth, end } = bored;
      return [{ is: "box", minX: x - radius, maxX: x + radius, minZ: mouth, maxZ: end }];
    }
    return holeOf(b) > 0 ? [{ is: "hole", at: b.at, volume: holeOf(b) }] : [];
  },

  changes: heavierOrMoved,

  uncertain(b, draw) {
    const { row, at, rows, uncertainty, weighed } = draw;
    const eMass = draw.input(`${row.item}: mass`);
    const eDensity = draw.input(`${row.item}: density`);
    const sigma = draw.spread(b.stuff);
    const massSigma = b.weighed === false ? sigma * b.mass : weighed;
    const inside = b.where === "inside";
    const hole = inside ? b.hole : null;
    const eHole = hole ? draw.input(`${row.item}: hole`) : null;
    // The width of a given hole counts twice and its depth once: σ_V/V = √5 σ/d.
    const holeSigma = hole ? (Math.sqrt(5) * uncertainty.drawnLength) / holeAcross(hole) : 0;
    const eFiller = hole && b.filler > 0 ? draw.input(`${row.item}: filler`) : null;
    draw.model(() => {
      const m = drawn(b.mass, massSigma, eMass());
      const v = m / (b.stuff.density * drawn(1, sigma, eDensity()));
      const room = hole === null ? (inside ? v : 0) : hole * drawn(1, holeSigma, eHole?.() ?? 0);
      const filler = b.filler * drawn(1, uncertainty.plastic, eFiller?.() ?? 0);
      rows.mass[at] = m + Math.max(0, room - v) * filler;
      rows.displaced[at] = Math.max(0, v - room);
      rows.removed[at] = room;
      rows.own[at] = v;
    });
    draw.place([at], row.item);
  },
};
