import type { Vec } from "../model/base";
import { clipped } from "./clip";
import { pointOnScreen, type Ground } from "./ground";
import type { Mark } from "./mark";
import type { Posed } from "./types";
import type { PictureWords } from "./words";

/** Steps in which the trace fades towards its older end. */
const FADES = 20;

/** The trace of G, the line and the rod tip. In screen px. */
export function pathMarks(
  ground: Ground,
  bait: Posed,
  trace: readonly Vec[],
  name: PictureWords["name"],
): Mark[] {
  const { at, size, view } = ground;
  const marks: Mark[] = [];
  const steps = Math.min(FADES, trace.length - 1);
  for (let k = 0; k < steps; k++) {
    const from = Math.floor((k * (trace.length - 1)) / steps);
    const to = Math.floor(((k + 1) * (trace.length - 1)) / steps);
    if (to <= from) continue;
    marks.push({
      kind: "path",
      what: null,
      points: trace.slice(from, to + 1).map((p) => pointOnScreen(at(p))),
      stroke: { role: "accent", px: 1.75, alpha: 0.08 + 0.62 * ((k + 1) / steps) },
    });
  }
  const { line, slack } = bait.snapshot;
  const tip = line.at(-1);
  if (!tip || line.length < 2) return marks;
  const margin = 0.5 * Math.hypot(size.width, size.height);
  const px = Math.max(1.1, (bait.scene.rod?.lineDiameter ?? 0) * view.scale);
  for (const piece of clipped(line.map(at), size, margin))
    marks.push({
      kind: "path",
      what: null,
      points: piece.map(pointOnScreen),
      stroke: { role: "ink", px, alpha: 0.85, ...(slack ? { dash: [7, 5] as const } : {}) },
    });
  const p = at(tip);
  if (p.x < -20 || p.x > size.width + 20 || p.y < -20 || p.y > size.height + 20) return marks;
  marks.push(
    {
      kind: "circle",
      what: null,
      at: pointOnScreen(p),
      radius: 3.5,
      fill: { role: "paper" },
      stroke: { role: "ink", px: 1.5 },
    },
    {
      kind: "text",
      what: null,
      at: pointOnScreen({ x: p.x - 8, y: p.y }),
      words: name("rod tip"),
      size: 12,
      anchor: { x: 1, y: 0.5 },
      fill: { role: "ink" },
      halo: { role: "sky" },
    },
  );
  return marks;
}
