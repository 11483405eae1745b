import type { Graphics } from "pixi.js";
import { arrowKey, arrowOf, forceText, pxPerRootNewton } from "./arrows";
import { isNarrow } from "./camera";
import { forceWords } from "./legend";
import { mix, numberOf, type Palette } from "./palette";
import type { Placer } from "./placer";
import type { Sheet } from "./sheet";
import type { Posed } from "./types";

/** Force arrows with their letters (and values), and the key to them. */
export function drawForces(g: Graphics, sheet: Sheet, bait: Posed, values: boolean, placer: Placer): void {
  const { at } = sheet;
  const unit = pxPerRootNewton(sheet.size.width, sheet.size.height);
  const ink = numberOf(sheet.palette.dark ? sheet.palette.paper : sheet.palette.ink);
  const arrows = bait.snapshot.forces.flatMap(({ key, at: point, force }) => {
    const arrow = arrowOf(at(point), force, unit);
    return arrow ? [{ arrow, force, words: forceWords(key), size: Math.hypot(force.x, force.z) }] : [];
  });
  // Long ones first, so that a short one on the same line stays in sight.
  arrows.sort((a, b) => b.size - a.size);
  for (const { arrow, words } of arrows) {
    const color = shownColour(sheet.palette, words.colour);
    // A dark edge keeps every colour of the palette, yellow too, apart from paper and water.
    g.moveTo(arrow.from.x, arrow.from.y)
      .lineTo(arrow.neck.x, arrow.neck.y)
      .stroke({ color: ink, width: 4.5, cap: "round" });
    g.poly([...arrow.head], true).stroke({ color: ink, width: 1.8, join: "round" });
    g.moveTo(arrow.from.x, arrow.from.y).lineTo(arrow.neck.x, arrow.neck.y).stroke({ color, width: 2.75 });
    g.poly([...arrow.head], true).fill({ color });
  }
  for (const { arrow, force, size, words } of arrows) {
    const text = values && !isNarrow(sheet.size) ? `${words.letter} ${forceText(size)}` : words.letter;
    const spot = placer.place(arrow.to, Math.atan2(force.z, force.x), 7.8 * text.length + 2, 15);
    sheet.labels.put(text, spot.x, spot.y, {
      size: 13,
      bold: true,
      colour: sheet.palette.ink,
      anchorX: 0.5,
      anchorY: 0.5,
      halo: sheet.palette.paper,
    });
  }
  if (arrows.length > 0) drawForceKey(g, sheet, unit);
}

/** A force's colour; black turns to white on dark paper, as ink does. */
function shownColour(palette: Palette, colour: string): number {
  const value = Number.parseInt(colour.slice(1), 16);
  return value === 0 && palette.dark ? 0xffffff : value;
}

/** Bars of round forces above the distance scale: how long an arrow is, and that lengths go with the root. */
function drawForceKey(g: Graphics, sheet: Sheet, unit: number): void {
  const { width, height } = sheet.size;
  const { palette } = sheet;
  // Narrow, the camera's buttons take the place right above the scale.
  const y = height - sheet.rulers.bottom - (isNarrow(sheet.size) ? 62 : 12);
  const small = { size: 11, anchorX: 0, anchorY: 0.5, halo: mix(palette.waterTop, palette.waterDeep, 0.5) };
  let x = sheet.rulers.left + 10;
  for (const bar of arrowKey(unit, 0.2 * width)) {
    g.moveTo(x, y).lineTo(x + bar.length, y);
    for (const end of [x, x + bar.length]) g.moveTo(end, y - 3).lineTo(end, y + 3);
    const text = `${bar.newton} N`;
    sheet.labels.put(text, x + bar.length + 5, y, { ...small, colour: palette.ink });
    x += bar.length + 14 + 6.4 * text.length;
  }
  g.stroke({ color: numberOf(palette.ink), width: 1.5 });
  sheet.labels.put("length ∝ √force", x, y, { ...small, colour: palette.inkSoft });
}
