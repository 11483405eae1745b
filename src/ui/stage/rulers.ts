import type { Graphics } from "pixi.js";
import { isNarrow } from "./camera";
import { numberOf } from "./palette";
import type { Sheet } from "./sheet";
import { decimalsOf, niceStep, ticksBetween, tickText } from "./ticks";
import type { Posed } from "./types";

/** The depth scale at the left edge with the tie eye's depth, and the distance scale along the bottom. */
export function drawRulers(g: Graphics, sheet: Sheet, bait: Posed): void {
  const { view } = sheet;
  const palette = sheet.palette;
  const { width, height } = sheet.size;
  const { left, bottom } = sheet.rulers;
  const ink = numberOf(palette.ink);
  const small = isNarrow(sheet.size) ? 10.5 : 11.5;
  g.rect(0, 0, left, height).fill({ color: numberOf(palette.paper), alpha: 0.9 });
  g.rect(left, height - bottom, width - left, bottom).fill({ color: numberOf(palette.paper), alpha: 0.9 });
  g.moveTo(left, 0)
    .lineTo(left, height - bottom)
    .lineTo(width, height - bottom)
    .stroke({ color: ink, width: 1, alpha: 0.55 });
  const text = { size: small, colour: palette.inkSoft };
  const step = niceStep(view.scale, 44);
  const fine = niceStep(view.scale, 8);
  const low = view.z - height / 2 / view.scale;
  const high = view.z + height / 2 / view.scale;
  for (const z of ticksBetween(low, high, fine)) {
    const y = sheet.at({ x: 0, z }).y;
    if (y < height - bottom) g.moveTo(left - 4, y).lineTo(left, y);
  }
  for (const z of ticksBetween(low, high, step)) {
    const y = sheet.at({ x: 0, z }).y;
    if (y > height - bottom - 8 || y < 36) continue;
    g.moveTo(left - 8, y).lineTo(left, y);
    sheet.labels.put(tickText(z === 0 ? 0 : -z, step), left - 10, y, { ...text, anchorX: 1, anchorY: 0.5 });
  }
  const x0 = view.x - (width / 2 - left) / view.scale;
  const x1 = view.x + width / 2 / view.scale;
  for (const x of ticksBetween(x0, x1, fine)) {
    const px = sheet.at({ x, z: 0 }).x;
    g.moveTo(px, height - bottom).lineTo(px, height - bottom + 3);
  }
  const wide = niceStep(view.scale, 84);
  for (const x of ticksBetween(x0, x1, wide)) {
    const px = sheet.at({ x, z: 0 }).x;
    if (px < left + 16 || px > width - 52) continue;
    g.moveTo(px, height - bottom).lineTo(px, height - bottom + 6);
    sheet.labels.put(tickText(x, wide), px, height - bottom + 7, { ...text, anchorX: 0.5, anchorY: 0 });
  }
  g.stroke({ color: ink, width: 1, alpha: 0.55 });
  sheet.labels.put("depth", 4, 3, { ...text, anchorX: 0, anchorY: 0 });
  sheet.labels.put("m", 4, 16, { ...text, anchorX: 0, anchorY: 0 });
  sheet.labels.put("m", width - 6, height - bottom + 7, { ...text, anchorX: 1, anchorY: 0 });
  // The tie eye's depth is the depth that every readout means.
  const depth = -bait.snapshot.eye.z;
  const y = sheet.at(bait.snapshot.eye).y;
  if (y > 10 && y < height - bottom - 8) {
    const finest = Math.min(0.01, Math.max(step / 10, 1e-4));
    const words = tickText(depth, finest);
    const w = 6.6 * Math.max(words.length, decimalsOf(finest) + 2) + 8;
    g.poly([left + 1, y, left + 8, y - 9, left + 8 + w, y - 9, left + 8 + w, y + 9, left + 8, y + 9]).fill({
      color: ink,
      alpha: 0.92,
    });
    sheet.labels.put(words, left + 8 + w / 2, y, {
      size: 12,
      bold: true,
      colour: palette.paper,
      anchorX: 0.5,
      anchorY: 0.5,
    });
  }
}
