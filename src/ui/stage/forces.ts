import type { Graphics } from "pixi.js";
import type { ForceLegend } from "../../model/forces";
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
    g.poly([...arrow.head]).stroke({ color: ink, width: 1.8, join: "round" });
    g.moveTo(arrow.from.x, arrow.from.y).lineTo(arrow.neck.x, arrow.neck.y).stroke({ color, width: 2.75 });
    g.poly([...arrow.head]).fill({ color });
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
  const shown = arrows.map((a) => a.words).sort((a, b) => a.letter.localeCompare(b.letter));
  if (shown.length > 0) drawForceKey(g, sheet, unit, shown);
}

/** A force's colour; black turns to white on dark paper, as ink does. */
function shownColour(palette: Palette, colour: string): number {
  const value = Number.parseInt(colour.slice(1), 16);
  return value === 0 && palette.dark ? 0xffffff : value;
}

/** Two rows above the distance scale: bars of round forces (lengths go with the root), and the letters' names. */
function drawForceKey(g: Graphics, sheet: Sheet, unit: number, shown: readonly ForceLegend[]): void {
  const { width, height } = sheet.size;
  const palette = sheet.palette;
  const rulers = sheet.rulers;
  const left = rulers.left + 10;
  const bottom = height - rulers.bottom;
  const small = { size: 11, anchorX: 0, anchorY: 0.5, halo: mix(palette.waterTop, palette.waterDeep, 0.5) };
  // The names in as many rows as they need, the last row lowest.
  const rows: { readonly legend: ForceLegend; readonly x: number }[][] = [[]];
  let x = left;
  for (const legend of width >= 640 ? shown : []) {
    const wide = 27 + 6.4 * legend.label.length;
    if (x + wide > width - 8) {
      rows.push([]);
      x = left;
    }
    rows.at(-1)?.push({ legend, x });
    x += wide + 14;
  }
  const ink = numberOf(palette.dark ? palette.paper : palette.ink);
  rows.forEach((row, i) => {
    const y = bottom - 11 - 16 * (rows.length - 1 - i);
    for (const { legend, x: at } of row) {
      g.rect(at, y - 4.5, 9, 9)
        .fill({ color: shownColour(sheet.palette, legend.colour) })
        .stroke({ color: ink, width: 1 });
      sheet.labels.put(legend.letter, at + 13, y, { ...small, colour: palette.ink, bold: true });
      sheet.labels.put(legend.label, at + 27, y, { ...small, colour: palette.ink });
    }
  });
  const barsY = bottom - 12 - (rows[0]?.length ? 16 * rows.length : 0);
  x = left;
  for (const bar of arrowKey(unit, 0.2 * width)) {
    g.moveTo(x, barsY).lineTo(x + bar.length, barsY);
    for (const end of [x, x + bar.length]) g.moveTo(end, barsY - 3).lineTo(end, barsY + 3);
    const text = `${bar.newton} N`;
    sheet.labels.put(text, x + bar.length + 5, barsY, { ...small, colour: palette.ink });
    x += bar.length + 14 + 6.4 * text.length;
  }
  g.stroke({ color: numberOf(palette.ink), width: 1.5 });
  sheet.labels.put("length ∝ √force", x, barsY, { ...small, colour: palette.inkSoft });
}
