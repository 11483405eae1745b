import { distance, type Vec } from "../../model/base";
import type { Bait } from "../../model/bait";
import { slotAngle } from "../../model/parts";
import { distanceToPath } from "../../drawing";
import { formatIn } from "../../units";
import { Pen, TYPE } from "../paper/pen";
import { bibEdge, datum, label, linesOf, mm, outlineOf, stationScale, upright } from "./figure";
import { holesOf, type Hole } from "./holes";
import type { Template, TemplateJob } from "./types";
import { degText, heightText, mmNumber, mmText } from "./words";

/** One thing to drill, saw or rout. */
interface Cut {
  readonly at: Vec;
  readonly row: readonly string[];
}

/** Which face of the body a place at its edge belongs to. */
function faceOf(bait: Bait, { x, z }: Vec): string {
  const { length } = bait.drawn;
  const s = -x;
  if (s <= 0.04 * length) return "nose";
  if (s >= 0.96 * length) return "tail";
  const { top, bottom } = bait.drawn.section(s);
  return Math.abs(z - top) < Math.abs(z - bottom) ? "back" : "belly";
}

const cutOf = (hole: Hole): Cut => ({
  at: { x: -hole.station, z: hole.height },
  row: [
    hole.name,
    mmNumber(hole.diameter),
    hole.from === "below" ? mmNumber(hole.depth) : `${mmNumber(hole.depth)} in each half`,
    mmNumber(hole.station),
    heightText(hole.height),
    hole.from === "below" ? "belly, straight up" : "inner faces",
  ],
});

/** An eye that a wire passes is held by the wire; another one is screwed in. */
function eye(bait: Bait, name: string, at: Vec): Cut {
  const wire = bait.spec.wires.find((one) => distanceToPath(at, one.path) <= one.diameter + 1e-3);
  const onBib = bait.spec.bib && faceOf(bait, at) === "nose" && distance(at, bait.spec.bib.root) > 4e-3;
  return {
    at,
    row: [
      name,
      wire ? "–" : "pilot",
      wire ? "–" : "as its packet says",
      mmNumber(-at.x),
      heightText(at.z),
      wire ? `held by ${wire.name}` : onBib ? "nose or bib" : faceOf(bait, at),
    ],
  };
}

export function drillTemplate({ bait, fonts, words, drills }: TemplateJob): Template {
  const { chambers, wires, bib, hangers, tie } = bait.spec;
  const holes = holesOf(bait, drills);
  const cuts: Cut[] = [
    ...holes.map(cutOf),
    ...chambers.map((c): Cut => ({
      at: { x: -(c.from + c.to) / 2, z: c.height },
      row: [
        `${c.name}: pocket ${mmNumber(c.to - c.from)} × ${mmNumber(c.tall)}`,
        "–",
        `${mmNumber(c.wide / 2)} in each half`,
        `${mmNumber(c.from)} to ${mmNumber(c.to)}`,
        heightText(c.height),
        "inner faces",
      ],
    })),
    ...(bib && bib.slot > 0
      ? [
          {
            at: bib.root,
            row: [
              `slot, ${mmNumber(bib.thickness)} wide, at ${degText(slotAngle(bib))}`,
              "–",
              mmNumber(bib.slot),
              mmNumber(-bib.root.x),
              heightText(bib.root.z),
              "through both halves",
            ],
          },
        ]
      : []),
    eye(bait, "tie eye", tie),
    ...hangers.map((one) => eye(bait, `eye ${one.name}`, one.at)),
  ];
  const grooves = wires
    .filter((_, i) => linesOf(bait, `bait.wires[${i}]`, "inside").length > 0)
    .map((one) => [
      `groove for ${one.name}`,
      mmNumber(one.diameter),
      `${mmNumber(one.diameter / 2, 2)} in each half`,
      "–",
      "–",
      "inner faces",
    ]);
  const pen = new Pen(fonts, words);
  const outline = outlineOf(bait, upright);
  pen.ring("mark", outline);
  datum(pen, bait, upright);
  bibEdge(pen, bait, upright, "all");
  for (const wire of wires) pen.line("axis", ...wire.path.map(upright));
  for (const c of chambers)
    pen.rect("hidden", -mm(c.to), -mm(c.height + c.tall / 2), mm(c.to - c.from), mm(c.tall));
  for (const hole of holes) {
    const at = { x: -hole.station, z: hole.height };
    if (hole.from === "inner") pen.circle("hidden", upright(at), mm(hole.diameter / 2));
    else {
      const { bottom } = bait.drawn.section(hole.station);
      const corner = upright({ x: -hole.station - hole.diameter / 2, z: bottom + hole.depth });
      pen.rect("hidden", corner.x, corner.y, mm(hole.diameter), mm(hole.depth));
    }
  }
  const reach = [...outline, ...cuts.map(({ at }) => upright(at))].map(({ y }) => y);
  stationScale(pen, bait.drawn.length, Math.max(...reach) + 6);
  for (const { at } of cuts) pen.cross(upright(at), 1.5);
  cuts.forEach(({ at }, i) => label(pen, upright(at), String(i + 1), { size: TYPE.text, weight: "bold" }));
  const out = holes.filter((hole) => hole.wall <= 0);
  const thin = holes.filter((hole) => hole.wall > 0 && hole.wall < 1.5e-3);
  const moved = holes.filter((hole) => Math.abs(hole.off) >= 0.3e-3);
  const movedText = (hole: Hole): string =>
    `${hole.name} ${mmText(Math.abs(hole.off))} ${hole.off > 0 ? "higher" : "lower"}`;
  const named = (hole: Hole): string => `${hole.name} (${formatIn(hole.volume, "mL", 2)})`;
  return {
    title: "Drill map",
    notes: [
      `Distances are measured along the datum line from the nose tip, which lies on it, and from the datum line up or down, in millimetres. ${holes.length > 0 ? "The file gives each hole's volume and its weight's place; the drill is one of those at hand, and the depth gives the volume. Another drill needs another depth." : "This bait has no weight inside."}`,
      ...(out.length > 0
        ? [
            `Do not drill as drawn: the hole for ${out.map(named).join(", ")} comes out of the wood. Move the weight inward, or make its hole smaller, on the views Draw or Weigh, and print again.`,
          ]
        : []),
      ...(moved.length > 0
        ? [
            `No hole with a drill at hand brings every weight to its place in the file. In these holes lies: ${moved.map(movedText).join(", ")}. Pack the hole, or move the weight in the file to where it will lie, and look at the trim again.`,
          ]
        : []),
      ...(thin.length > 0
        ? [
            `Thin wood: less than ${mmText(1.5e-3)} is left beside ${thin.map(named).join(", ")}. Look at the section before you drill.`,
          ]
        : []),
      "Clamp the blank, never hold it in the hand while you drill. Cut away from the hand. Wood dust harms the lungs: extraction, mask, eye protection.",
    ],
    drawings: [pen.drawing("drill map")],
    table: {
      columns: [
        { head: "No.", share: 0.06 },
        { head: "What", share: 0.3 },
        { head: "Drill", share: 0.1 },
        { head: "Depth", share: 0.17 },
        { head: "From nose", share: 0.12 },
        { head: "Datum line", share: 0.12 },
        { head: "Face", share: 0.13 },
      ],
      rows: [...cuts.map(({ row }, i) => [String(i + 1), ...row]), ...grooves.map((row) => ["–", ...row])],
    },
  };
}
