import type { Vec } from "../base";
import { insideOutline } from "../shape";
import type { Section, Shape } from "../shape";
import { ballRoom } from "./balls";
import { BaitError, inMl, inMm } from "./error";
import type { BaitSpec, ChamberSpec, Stuff, Warning } from "./types";

/** Room for round-off where a box touches the outline, m. */
const TOUCH = 1e-9;

function number(path: string, value: number, least: number, strict: boolean, unit: string): void {
  const ok = Number.isFinite(value) && (strict ? value > least : value >= least);
  if (!ok)
    throw new BaitError(
      path,
      `${value} ${unit} is not a possible value`,
      `Give a number ${strict ? "above" : "of at least"} ${least}`,
    );
}
const above0 = (path: string, value: number, unit: string): void => number(path, value, 0, true, unit);
const atLeast0 = (path: string, value: number, unit: string): void => number(path, value, 0, false, unit);

function point(path: string, p: Vec): void {
  if (!Number.isFinite(p.x) || !Number.isFinite(p.z))
    throw new BaitError(path, `(${p.x}, ${p.z}) is not a point`, "Give a station and a height");
}

function stuff(path: string, s: Stuff): void {
  if (!(Number.isFinite(s.density) && s.density > 0))
    throw new BaitError(
      path,
      `density ${s.density} kg/m³ of "${s.name}" is not possible`,
      "Give a density above 0",
    );
}

/** Refuses numbers that no bait can have. Geometry against the body is checked by `checkLayout`. */
export function checkNumbers(spec: BaitSpec): void {
  stuff("bait.body", spec.body);
  point("bait.tie_mm", spec.tie);
  spec.chambers.forEach((c, i) => {
    const path = `bait.chambers[${i}]`;
    number(`${path}.from_mm`, c.from, -Infinity, true, "m");
    if (!(c.to > c.from))
      throw new BaitError(
        `${path}.to_mm`,
        `the chamber ends at ${inMm(c.to)}, not aft of its start at ${inMm(c.from)}`,
        "Make it greater than from_mm",
      );
    number(`${path}.height_mm`, c.height, -Infinity, true, "m");
    above0(`${path}.tall_mm`, c.tall, "m");
    above0(`${path}.wide_mm`, c.wide, "m");
    if (c.balls) {
      above0(`${path}.balls.diameter_mm`, c.balls.diameter, "m");
      stuff(`${path}.balls`, c.balls.stuff);
      if (!(Number.isInteger(c.balls.count) && c.balls.count >= 0))
        throw new BaitError(
          `${path}.balls.count`,
          `${c.balls.count} is not a number of balls`,
          "Give a whole number",
        );
      const { perRank, ranks, layers, capacity } = ballRoom(c, c.balls);
      if (c.balls.count > capacity)
        throw new BaitError(
          `${path}.balls.count`,
          `${c.balls.count} balls of ${inMm(c.balls.diameter)} do not fit: the chamber takes ${capacity} ` +
            `(${perRank} across, ${ranks} along, ${layers} high)`,
          "Use fewer or smaller balls, or a larger chamber",
        );
    }
  });
  spec.ballast.forEach((b, i) => {
    const path = `bait.ballast[${i}]`;
    point(`${path}.at_mm`, b.at);
    atLeast0(`${path}.mass_g`, b.mass, "kg");
    stuff(path, b.stuff);
    if (b.hole !== null) atLeast0(`${path}.hole_ml`, b.hole, "m³");
    atLeast0(`${path}.filler_g_ml`, b.filler, "kg/m³");
  });
  spec.wires.forEach((w, i) => {
    const path = `bait.wires[${i}]`;
    above0(`${path}.diameter_mm`, w.diameter, "m");
    stuff(path, w.stuff);
    w.path.forEach((p, k) => {
      point(`${path}.path_mm[${k}]`, p);
    });
    const first = w.path[0];
    if (!first || w.path.every((p) => p.x === first.x && p.z === first.z))
      throw new BaitError(`${path}.path_mm`, "the wire has no length", "Give two different points or more");
  });
  if (spec.bib) {
    const b = spec.bib;
    point("bait.bib.root_mm", b.root);
    number("bait.bib.angle_deg", b.angle, -Infinity, true, "rad");
    above0("bait.bib.length_mm", b.length, "m");
    above0("bait.bib.width_mm", b.width, "m");
    atLeast0("bait.bib.slot_mm", b.slot, "m");
    above0("bait.bib.thickness_mm", b.thickness, "m");
    stuff("bait.bib", b.stuff);
  }
  spec.hangers.forEach((h, i) => {
    const path = `bait.hangers[${i}]`;
    point(`${path}.at_mm`, h.at);
    for (const [key, part] of [
      ["ring", h.ring],
      ["hook", h.hook],
    ] as const) {
      if (!part) continue;
      atLeast0(`${path}.${key}.mass_g`, part.mass, "kg");
      above0(`${path}.${key}.density_g_ml`, part.density, "kg/m³");
    }
  });
  spec.fittings.forEach((f, i) => {
    const path = `bait.fittings[${i}]`;
    point(`${path}.at_mm`, f.at);
    atLeast0(`${path}.mass_g`, f.mass, "kg");
    stuff(path, f.stuff);
  });
  spec.coats.forEach((c, i) => {
    const path = `bait.coats[${i}]`;
    stuff(path, c.stuff);
    if ((c.thickness === null) === (c.mass === null))
      throw new BaitError(
        path,
        "a coat has either a thickness or a mass",
        "Give exactly one of thickness_mm and mass_g",
      );
    if (c.thickness !== null) atLeast0(`${path}.thickness_mm`, c.thickness, "m");
    if (c.mass !== null) atLeast0(`${path}.mass_g`, c.mass, "kg");
  });
  checkCorrections(spec);
}

/** Refuses corrections that no reading gives. */
function checkCorrections(spec: BaitSpec): void {
  (spec.corrections ?? []).forEach((c, i) => {
    const path = `corrections[${i}]`;
    number(`${path}.mass_g`, c.mass, -Infinity, true, "kg");
    point(`${path}.shift_mm`, c.shift);
    for (const value of Object.values(c.deviation))
      if (value !== null) above0(`${path}.deviation`, value, "kg or m");
  });
}

/** Sections along a chamber, close enough that an edge cannot dip in between: its ends, every knot and station inside. */
function sectionsAlong(chamber: ChamberSpec, shape: Shape): Section[] {
  const within = (s: number): boolean => s >= chamber.from && s <= chamber.to;
  const knots = shape.edges.breaks.map((phi) => (shape.length * (1 - Math.cos(phi))) / 2).filter(within);
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
  return (wide / 2 / section.halfBreadth) ** n + (zeta / h) ** n - 1;
}

function checkChamber(path: string, chamber: ChamberSpec, shape: Shape, warnings: Warning[]): void {
  const refuse = (what: string): never => {
    throw new BaitError(
      path,
      `the chamber stands outside the body: ${what}`,
      "Move it, or make it smaller, or the body larger there",
    );
  };
  if (chamber.from < -TOUCH || chamber.to > shape.length + TOUCH)
    refuse(
      `it runs from ${inMm(chamber.from)} to ${inMm(chamber.to)}, the body from 0 to ${inMm(shape.length)}`,
    );
  const roof = chamber.height + chamber.tall / 2;
  const floor = chamber.height - chamber.tall / 2;
  let pierced: number | null = null;
  for (const section of sectionsAlong(chamber, shape)) {
    const where = `at station ${inMm(section.s)}`;
    if (roof > section.top + TOUCH)
      refuse(`its roof is at ${inMm(roof)}, the top edge at ${inMm(section.top)} ${where}`);
    if (floor < section.bottom - TOUCH)
      refuse(`its floor is at ${inMm(floor)}, the bottom edge at ${inMm(section.bottom)} ${where}`);
    if (chamber.wide > 2 * section.halfBreadth + TOUCH)
      refuse(`it is ${inMm(chamber.wide)} wide, the body ${inMm(2 * section.halfBreadth)} broad ${where}`);
    if (Math.max(cornerOut(section, chamber.wide, roof), cornerOut(section, chamber.wide, floor)) > 1e-6)
      pierced ??= section.s;
  }
  if (pierced !== null)
    warnings.push({
      path,
      text: `The corners of the chamber break through the rounded side of the body (first at station ${inMm(pierced)}); its whole box is counted as a void.`,
    });
}

/** Refuses what cannot stand in this body, and lists what is odd but possible. */
export function checkLayout(spec: BaitSpec, shape: Shape): Warning[] {
  const warnings: Warning[] = [];
  spec.chambers.forEach((c, i) => {
    checkChamber(`bait.chambers[${i}]`, c, shape, warnings);
  });
  spec.ballast.forEach((b, i) => {
    const path = `bait.ballast[${i}]`;
    if (b.where === "outside" && b.hole !== null)
      warnings.push({
        path: `${path}.hole_ml`,
        text: "A hole is given, but this ballast is outside: the hole is not counted.",
      });
    if (b.where === "inside" && !insideOutline(shape, b.at))
      warnings.push({
        path: `${path}.at_mm`,
        text: "This ballast counts as inside, but its middle is not within the outline.",
      });
    const own = b.mass / b.stuff.density;
    if (b.where === "inside" && b.hole !== null && own > b.hole)
      warnings.push({
        path: `${path}.hole_ml`,
        text: `The hole of ${inMl(b.hole)} is smaller than the ballast of ${inMl(own)}: ${inMl(own - b.hole)} stand proud and displace water.`,
      });
  });
  spec.fittings.forEach((f, i) => {
    if (f.where === "inside" && !insideOutline(shape, f.at))
      warnings.push({
        path: `bait.fittings[${i}].at_mm`,
        text: "This fitting counts as inside, but its middle is not within the outline.",
      });
  });
  if (spec.bib && spec.bib.slot > 0) {
    const x = spec.bib.root.x - (Math.cos(spec.bib.angle) * spec.bib.slot) / 2;
    const z = spec.bib.root.z + (Math.sin(spec.bib.angle) * spec.bib.slot) / 2;
    if (-x < 0 || -x > shape.length)
      throw new BaitError(
        "bait.bib.slot_mm",
        `the middle of the slot lies at station ${inMm(-x)}, off the body`,
        "Move the root, or give slot_mm 0 for a bib without a tongue",
      );
    if (!insideOutline(shape, { x, z }))
      warnings.push({
        path: "bait.bib.slot_mm",
        text: "The middle of the bib's slot is not within the outline, yet the tongue counts as inside.",
      });
  }
  return warnings;
}
