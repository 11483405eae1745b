import type { Graphics } from "pixi.js";
import type { Vec } from "../../model/base";
import { arrowShape, colourOf, dashed, numberOf, type Mark, type Palette } from "../../drawing";
import type { Labels } from "./labels";

/** A circle as a line, for dashes. */
const roundOf = (at: Vec, radius: number): Vec[] =>
  Array.from({ length: 49 }, (_, i) => ({
    x: at.x + radius * Math.cos((i * Math.PI) / 24),
    z: at.z + radius * Math.sin((i * Math.PI) / 24),
  }));

/** Draws marks into a Graphics at `scale` px to the drawing's unit, y down. Words go to the labels. */
export function drawMarks(
  g: Graphics,
  marks: readonly Mark[],
  palette: Palette,
  scale: number,
  labels: Labels | null = null,
): void {
  const flat = (points: readonly Vec[]): { x: number; y: number }[] =>
    points.map((p) => ({ x: p.x * scale, y: -p.z * scale }));
  for (const mark of marks) {
    if (mark.kind === "text") {
      labels?.put(mark, scale);
      continue;
    }
    const { fill, stroke } = mark;
    const outline = (): void => {
      if (mark.kind === "circle")
        g.circle(mark.at.x * scale, -mark.at.z * scale, Math.max(1, mark.radius * scale));
      else if (mark.kind === "arrow") g.poly(flat(arrowShape(mark, scale).head), true);
      else if (mark.kind === "lines") for (const path of mark.paths) g.poly(flat(path), false);
      else g.poly(flat(mark.points), mark.kind === "polygon");
    };
    if (fill) {
      outline();
      g.fill({ color: numberOf(colourOf(fill, palette)), alpha: fill.alpha ?? 1 });
    }
    if (!stroke) continue;
    const style = {
      color: numberOf(colourOf(stroke, palette)),
      alpha: stroke.alpha ?? 1,
      width: Math.max(stroke.px, (stroke.real ?? 0) * scale),
      join: "round" as const,
      cap: "round" as const,
    };
    if (mark.kind === "arrow") {
      g.poly(flat(arrowShape(mark, scale).shaft), false).stroke({ ...style, cap: "butt" });
      outline();
      g.stroke({ ...style, width: Math.min(style.width, ARROW_EDGE) });
    } else if (stroke.dash) {
      for (const path of pathsOf(mark))
        for (const piece of dashed(path, stroke.dash[0] / scale, stroke.dash[1] / scale))
          g.poly(flat(piece), false);
      g.stroke({ ...style, cap: "butt" });
    } else {
      outline();
      // Ends of hairlines are not seen: square ones are cheaper.
      g.stroke(mark.kind === "lines" && style.width <= 1 ? { ...style, cap: "butt" } : style);
    }
  }
}

/** Width of the line round an arrow's head, px. */
const ARROW_EDGE = 1.8;

/** The lines that dashes follow. */
function pathsOf(mark: Exclude<Mark, { kind: "text" | "arrow" }>): readonly (readonly Vec[])[] {
  switch (mark.kind) {
    case "circle":
      return [roundOf(mark.at, mark.radius)];
    case "lines":
      return mark.paths;
    case "path":
      return [mark.points];
    case "polygon":
      return mark.points[0] ? [[...mark.points, mark.points[0]]] : [];
  }
}
