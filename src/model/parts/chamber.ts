import { cos, pow, square } from "../base";
import type { Section, Shape } from "../shape";
import { ballPlaces, ballRoom } from "./balls";
import type { BallsSpec } from "./balls";
import { above0, finite, stuff } from "./checks";
import { BaitError, inMm } from "./error";
import { rectangle } from "./figures";
import { named, weighted } from "./rows";
import { drawn } from "./spread";
import type { BallSide, Part, RowDraft, Warning } from "./types";

/** A box-shaped void in the body, parallel to the datum line, perhaps with loose balls. */
export interface ChamberSpec {
  readonly name: string;
  /** Stations, m; from < to. */
  readonly from: number;
  readonly to: number;
  /** Height of the box's middle, m above the datum line. */
  readonly height: number;
  readonly tall: number;
  readonly wide: number;
  readonly balls: BallsSpec | null;
}

/** Room for round-off where a box touches the outline, m. */
const TOUCH = 1e-9;

/** Row of a chamber's loose balls on a side. */
function ballsRow(chamber: ChamberSpec, side: BallSide): RowDraft<"balls", "balls">[] {
  if (!chamber.balls || chamber.balls.count === 0) return [];
  const { diameter, stuff } = chamber.balls;
  const volume = (Math.PI / 6) * diameter * diameter * diameter;
  const each = volume * stuff.density;
  const places = ballPlaces(chamber, side);
  const centre = weighted(
    places.map((at) => ({ w: 1, at })),
    { x: 0, z: 0 },
  );
  return [
    {
      item: named(chamber.name, "balls"),
      group: "balls",
      part: "balls",
      mass: each * places.length,
      massCentre: centre,
      // Balls are points (docs/model.md §6.4): they roll, and do not turn with the bait.
      inertia: places.reduce((sum, p) => sum + each * (square(p.x - centre.x) + square(p.z - centre.z)), 0),
      ownVolume: volume * places.length,
      apart: "balls",
    },
  ];
}

/** Sections along a chamber: at its ends, and at every knot and station inside. Between them an edge cannot dip. */
function sectionsAlong(chamber: ChamberSpec, shape: Shape): Section[] {
  const within = (s: number): boolean => s >= chamber.from && s <= chamber.to;
  const knots = shape.edges.breaks.map((phi) => (shape.length * (1 - cos(phi))) / 2).filter(within);
  return [
    ...[chamber.from, chamber.to, ...knots].map((s) => shape.section(s)),
    ...shape.stations.filter((station) => within(station.s)),
  ];
}

/** How far a corner of the chamber stands out of its section: |y/hw|ⁿ + |ζ/h|ⁿ − 1, above 0 outside. */
function cornerOut(section: Section, wide: number, z: number): number {
  const up = z >= section.widest;
  const h = up ? section.top - section.widest : section.widest - section.bottom;
  const n = up ? section.exponentAbove : section.exponentBelow;
  const zeta = Math.abs(z - section.widest);
  if (h <= 0 || section.halfBreadth <= 0) return Infinity;
  return pow(wide / 2 / section.halfBreadth, n) + pow(zeta / h, n) - 1;
}

function checkBalls(chamber: ChamberSpec, balls: BallsSpec, path: string): void {
  above0(`${path}.diameter_mm`, balls.diameter, "m");
  stuff(path, balls.stuff);
  if (!(Number.isInteger(balls.count) && balls.count >= 0))
    throw new BaitError(`${path}.count`, `${balls.count} is not a number of balls`, "Give a whole number");
  const { perRank, ranks, layers, capacity } = ballRoom(chamber, balls);
  if (balls.count > capacity)
    throw new BaitError(
      `${path}.count`,
      `${balls.count} balls of ${inMm(balls.diameter)} do not fit: the chamber takes ${capacity} ` +
        `(${perRank} across, ${ranks} along, ${layers} high)`,
      "Use fewer or smaller balls, or a larger chamber",
    );
}

export const chamber: Part<ChamberSpec, "chambers" | "balls", "item" | "balls", true> = {
  many: true,
  groups: ["chambers", "balls"],
  pieces: ["item", "balls"],
  word: "chamber",
  name: (c) => c.name,

  check(c, path) {
    finite(`${path}.from_mm`, c.from, "m");
    if (!(c.to > c.from))
      throw new BaitError(
        `${path}.to_mm`,
        `the chamber ends at ${inMm(c.to)}, not aft of its start at ${inMm(c.from)}`,
        "Make it greater than from_mm",
      );
    finite(`${path}.height_mm`, c.height, "m");
    above0(`${path}.tall_mm`, c.tall, "m");
    above0(`${path}.wide_mm`, c.wide, "m");
    if (c.balls) checkBalls(c, c.balls, `${path}.balls`);
  },

  layout(c, path, shape): readonly Warning[] {
    const refuse = (what: string): never => {
      throw new BaitError(
        path,
        `the chamber stands outside the body: ${what}`,
        "Move it, or make it smaller, or the body larger there",
      );
    };
    if (c.from < -TOUCH || c.to > shape.length + TOUCH)
      refuse(`it runs from ${inMm(c.from)} to ${inMm(c.to)}, the body from 0 to ${inMm(shape.length)}`);
    const roof = c.height + c.tall / 2;
    const floor = c.height - c.tall / 2;
    let pierced: number | null = null;
    for (const section of sectionsAlong(c, shape)) {
      const where = `at station ${inMm(section.s)}`;
      if (roof > section.top + TOUCH)
        refuse(`its roof is at ${inMm(roof)}, the top edge at ${inMm(section.top)} ${where}`);
      if (floor < section.bottom - TOUCH)
        refuse(`its floor is at ${inMm(floor)}, the bottom edge at ${inMm(section.bottom)} ${where}`);
      if (c.wide > 2 * section.halfBreadth + TOUCH)
        refuse(`it is ${inMm(c.wide)} wide, the body ${inMm(2 * section.halfBreadth)} broad ${where}`);
      if (Math.max(cornerOut(section, c.wide, roof), cornerOut(section, c.wide, floor)) > 1e-6)
        pierced ??= section.s;
    }
    if (pierced === null) return [];
    return [
      {
        path,
        text: `The corners of the chamber break through the rounded side of the body (first at station ${inMm(pierced)}); its whole box is counted as a void.`,
      },
    ];
  },

  rows(c, _bodies, side) {
    const length = c.to - c.from;
    const volume = length * c.tall * c.wide;
    return [
      {
        item: named(c.name, "chamber"),
        group: "chambers",
        part: "item",
        mass: 0,
        massCentre: { x: -(c.from + c.to) / 2, z: c.height },
        removed: volume,
        removedInertia: (volume * (length * length + c.tall * c.tall)) / 12,
      },
      ...ballsRow(c, side),
    ];
  },

  loose: (c, side) => ballPlaces(c, side).map((at) => ({ at, radius: (c.balls?.diameter ?? 0) / 2 })),

  shown: (_c, piece) => (piece === "balls" ? "balls" : null),

  sketch(c) {
    const roof = c.height + c.tall / 2;
    const floor = c.height - c.tall / 2;
    const half = c.wide / 2;
    const look = { role: "void", layer: "inside" } as const;
    return {
      figures: [rectangle(look, { x: -c.from, z: roof }, { x: -c.to, z: floor })],
      above: () => [rectangle(look, { x: -c.from, z: half }, { x: -c.to, z: -half })],
      across: (x) =>
        x <= -c.from && x >= -c.to ? [rectangle(look, { x: -half, z: roof }, { x: half, z: floor })] : [],
      dimensions: [
        { key: "from_mm", from: { x: 0, z: floor }, to: { x: -c.from, z: floor } },
        { key: "to_mm", from: { x: 0, z: floor }, to: { x: -c.to, z: floor } },
        { key: "tall_mm", from: { x: -c.to, z: floor }, to: { x: -c.to, z: roof } },
      ],
    };
  },

  keepOuts: (c) => [
    {
      is: "box",
      minX: -c.to,
      maxX: -c.from,
      minZ: c.height - c.tall / 2,
      maxZ: c.height + c.tall / 2,
    },
  ],

  only: (c, has) => (has("item") ? (has("balls") ? c : { ...c, balls: null }) : null),

  // Each of the three sides has an error of its own. The balls lie where the chamber lies.
  changes: () => [],

  uncertain(c, draw) {
    const { row, at, rows, uncertainty } = draw;
    if (row.part === "balls") {
      if (!c.balls) return;
      const e = draw.input(`${row.item}: density`);
      const sigma = draw.spread(c.balls.stuff);
      draw.model(() => {
        rows.mass[at] = row.mass * drawn(1, sigma, e());
      });
      return;
    }
    const l = draw.input(`${row.item}: length`);
    const t = draw.input(`${row.item}: tall`);
    const w = draw.input(`${row.item}: wide`);
    const mm = uncertainty.drawnLength;
    draw.model(() => {
      rows.removed[at] =
        row.removed *
        drawn(1, mm / (c.to - c.from), l()) *
        drawn(1, mm / c.tall, t()) *
        drawn(1, mm / c.wide, w());
    });
    draw.place(draw.siblings, row.item);
  },
};
