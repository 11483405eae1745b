import { topCurve } from "../../drawing";
import type { Bait } from "../../model/bait";
import { Pen, TYPE } from "../paper/pen";
import {
  bibEdge,
  channel,
  datum,
  label,
  linesOf,
  mirrored,
  mm,
  outlineOf,
  stationScale,
  upright,
  type Seen,
} from "./figure";
import { holesOf } from "./holes";
import type { Template, TemplateJob } from "./types";
import { BARE, CUT_LINE, mmText } from "./words";

const factorNote = (bait: Bait): string[] =>
  Math.abs(bait.volumeFactor - 1) < 0.0005
    ? []
    : ["A weighing under water found another volume than the drawing's. The templates show the drawing."];

/** What is beside the body: eyes at its edge, as crosses with their names. */
function eyes(pen: Pen, bait: Bait, seen: Seen): void {
  const { tie, hangers } = bait.spec;
  pen.cross(seen(tie));
  for (const one of hangers) pen.cross(seen(one.at));
  label(pen, seen(tie), "tie eye");
  for (const one of hangers) label(pen, seen(one.at), one.name, { within: 40 });
}

export function sideTemplate({ bait, fonts, words }: TemplateJob): Template {
  const pen = new Pen(fonts, words);
  pen.ring("cut", outlineOf(bait, upright));
  datum(pen, bait, upright);
  bibEdge(pen, bait, upright, "all");
  const low = lowest(bait);
  stationScale(pen, bait.drawn.length, low + 5);
  eyes(pen, bait, upright);
  return {
    title: "Side outline",
    notes: [
      `${mmText(bait.drawn.length)} long. The dash-dot line is the datum line; heights are measured from it. The bib is dashed.`,
      CUT_LINE,
      BARE,
      ...factorNote(bait),
    ],
    drawings: [pen.drawing("side outline")],
  };
}

/** The lowest place on paper that body, eyes and bib reach, mm below the datum line. */
function lowest(bait: Bait): number {
  const { bib, hangers, tie } = bait.spec;
  const tip = bib ? bib.root.z - bib.length * Math.sin(bib.angle) - bib.thickness : 0;
  const points = outlineOf(bait, upright).map(({ y }) => y);
  return Math.max(...points, -mm(tip), -mm(tie.z), ...hangers.map((one) => -mm(one.at.z)));
}

/** Room between the halves, and for names, mm. */
const BETWEEN = 16;

export function halvesTemplate({ bait, fonts, words, drills }: TemplateJob): Template {
  const pen = new Pen(fonts, words);
  const outline = outlineOf(bait, upright).map(({ y }) => y);
  const fold = Math.max(...outline) + BETWEEN / 2;
  const halves = [
    { seen: upright, named: true },
    { seen: mirrored(2 * fold), named: false },
  ];
  const chambers = bait.spec.chambers.map(({ name }, i) => ({
    name,
    box: linesOf(bait, `bait.chambers[${i}]`, "inside").flat(),
  }));
  const holes = holesOf(bait, drills);
  for (const { seen } of halves) {
    pen.ring("cut", outlineOf(bait, seen));
    datum(pen, bait, seen);
    bait.spec.wires.forEach((wire, i) => {
      channel(pen, wire, linesOf(bait, `bait.wires[${i}]`, "inside"), seen);
    });
    for (const { box } of chambers) pen.ring("mark", box.map(seen));
    bibEdge(pen, bait, seen, "tongue");
    for (const hole of holes) {
      const at = { x: -hole.station, z: hole.height };
      if (hole.from === "inner") pen.circle("mark", seen(at), mm(hole.diameter / 2));
      else {
        const bottom = bait.drawn.section(hole.station).bottom;
        const corner = (dx: number, z: number) => seen({ x: -hole.station + dx, z });
        const r = hole.diameter / 2;
        const roof = bottom + hole.depth;
        pen.ring("mark", [corner(-r, bottom), corner(-r, roof), corner(r, roof), corner(r, bottom)]);
      }
      pen.cross(seen(at), 1.5);
    }
  }
  pen.line("hidden", { x: 8, y: fold }, { x: -mm(bait.drawn.length) - 8, y: fold });
  const middle = -mm(bait.drawn.length) / 2;
  pen.text({ x: middle, y: fold - 1.2 }, "left half, inner face, above; fold here", {
    size: TYPE.tiny,
    anchor: 0.5,
  });
  pen.text({ x: middle, y: fold + 2.6 }, "right half, inner face, below", { size: TYPE.tiny, anchor: 0.5 });
  for (const { seen } of halves) {
    for (const { name, box } of chambers) {
      const [a, , c] = box.map(seen);
      if (a && c) label(pen, { x: (a.x + c.x) / 2, y: (a.y + c.y) / 2 }, name, { within: 40 });
    }
    for (const hole of holes)
      label(pen, seen({ x: -hole.station, z: hole.height }), hole.name, { within: 40 });
    for (const one of bait.spec.wires) {
      const [first] = one.path;
      if (first) label(pen, seen(first), one.name, { within: 40 });
    }
  }
  return {
    title: "Two halves, inner faces",
    notes: [
      "Each half mirrors the other: folded along the dashed line, all marks meet. Grooves for the wire, pockets and slot are cut into both, each to half its breadth. Their depths stand in the drill map.",
      CUT_LINE,
      ...factorNote(bait),
    ],
    drawings: [pen.drawing("two halves")],
  };
}

export function topTemplate({ bait, fonts, words }: TemplateJob): Template {
  const pen = new Pen(fonts, words);
  const points = topCurve(bait.drawn).map(upright);
  pen.ring("cut", points);
  pen.line("axis", { x: 6, y: 0 }, { x: -mm(bait.drawn.length) - 6, y: 0 });
  stationScale(pen, bait.drawn.length, Math.max(...points.map(({ y }) => y)) + 4);
  return {
    title: "Top outline",
    notes: [
      `Greatest breadth ${mmText(2 * bait.drawn.maxHalfBreadth)}. The dash-dot line is the middle: scribe it on the blank first.`,
      CUT_LINE,
      ...factorNote(bait),
    ],
    drawings: [pen.drawing("top outline")],
  };
}
