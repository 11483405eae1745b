import { acos, hypot } from "../../model/base";
import type { WireSpec } from "../../model/bait";
import { Pen, TYPE } from "../paper/pen";
import { upright } from "./figure";
import type { Template, TemplateJob } from "./types";
import { degText, mmNumber, mmText } from "./words";

/** A bend of a wire: how far along it stands, how much it turns (rad), and which way. */
export interface Bend {
  readonly along: number;
  readonly turn: number;
  readonly way: "up" | "down";
}

/** Developed length of a wire's middle line, m, and its bends from its first end. */
export function development({ path }: WireSpec): {
  readonly length: number;
  readonly bends: readonly Bend[];
} {
  const points = path.filter((p, i) => i === 0 || p.x !== path[i - 1]?.x || p.z !== path[i - 1]?.z);
  const bends: Bend[] = [];
  let length = 0;
  points.forEach((b, i) => {
    const a = points[i - 1];
    if (!a) return;
    const size = hypot(b.x - a.x, b.z - a.z);
    length += size;
    const c = points[i + 1];
    if (!c) return;
    const next = hypot(c.x - b.x, c.z - b.z);
    const [ux, uz, vx, vz] = [(b.x - a.x) / size, (b.z - a.z) / size, (c.x - b.x) / next, (c.z - b.z) / next];
    const turn = acos(Math.min(1, Math.max(-1, ux * vx + uz * vz)));
    // Below a tenth of a degree nobody bends.
    if (turn > 0.1 * (Math.PI / 180))
      bends.push({ along: length, turn, way: ux * vz - uz * vx > 0 ? "up" : "down" });
  });
  return { length, bends };
}

export function wireTemplate({ bait, fonts, words }: TemplateJob): Template | null {
  const { wires } = bait.spec;
  if (wires.length === 0) return null;
  // A straight wire needs a length and no drawing.
  const bent = wires.filter((wire) => development(wire).bends.length > 0);
  const drawings = bent.map((wire) => {
    const pen = new Pen(fonts, words);
    const points = wire.path.map(upright);
    pen.line("mark", ...points);
    for (const p of points) pen.cross(p, 1.2, "rule");
    const bottom = Math.max(...points.map(({ y }) => y));
    const right = Math.max(...points.map(({ x }) => x));
    const left = Math.min(...points.map(({ x }) => x));
    pen.text(
      { x: (left + right) / 2, y: bottom + 5.5 },
      `${words(wire.name)}, ${words(mmText(wire.diameter, 2))}`,
      {
        own: true,
        size: TYPE.small,
        anchor: 0.5,
        within: Math.max(60, right - left),
      },
    );
    return pen.drawing(wire.name);
  });
  const rows = wires.flatMap((wire) => {
    const { length, bends } = development(wire);
    return [
      [
        wire.name,
        mmText(wire.diameter, 2),
        wire.stuff.name,
        `cut ${mmNumber(length)}`,
        bends.length === 0 ? "straight" : "",
      ],
      ...bends.map(({ along, turn, way }, i) => [
        "",
        "",
        "",
        `bend ${i + 1} at ${mmNumber(along)}`,
        `${degText(turn, 0)}, ${way === "up" ? "to the left" : "to the right"}`,
      ]),
    ];
  });
  return {
    title: "Wire",
    notes: [
      bent.length === 0
        ? "Add to each length what the eyes and twists take: the file does not say it."
        : "The line is the middle of the wire: bend over the drawing. Lengths run from the end that stands first in the file, straight from bend to bend; a bend's left and right are those of somebody who walks along the wire on this drawing. Round bends need a little less. Add what the eyes and twists take that the drawing does not show.",
      "Wear eye protection when you cut wire: ends fly.",
    ],
    drawings,
    table: {
      columns: [
        { head: "Wire", share: 0.26 },
        { head: "Diameter", share: 0.14 },
        { head: "Material", share: 0.24 },
        { head: "Length, mm", share: 0.18 },
        { head: "Turns by", share: 0.18 },
      ],
      rows,
    },
  };
}
