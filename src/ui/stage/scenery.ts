import type { Graphics } from "pixi.js";
import { numberOf } from "./palette";
import type { Sheet } from "./sheet";
import { niceStep, ticksBetween } from "./ticks";

/** Sky, water's grid, floor, and the surface with its sign. */
export function drawScenery(g: Graphics, sheet: Sheet, depth: number): void {
  const { view } = sheet;
  const palette = sheet.palette;
  const { width, height } = sheet.size;
  g.clear();
  const surface = sheet.at({ x: 0, z: 0 }).y;
  if (surface > 0) g.rect(0, 0, width, Math.min(height, surface)).fill({ color: numberOf(palette.sky) });
  drawGrid(g, sheet, surface);
  if (Number.isFinite(depth)) {
    const floor = sheet.at({ x: 0, z: -depth }).y;
    if (floor < height) {
      const top = Math.max(0, floor);
      g.rect(0, top, width, height - top).fill({ color: numberOf(palette.floor) });
      // Earth is marked by short strokes under its line, as in a section.
      const shift = (((-view.x * view.scale) % 14) + 14) % 14;
      for (let x = shift - 14; x < width + 14; x += 14) g.moveTo(x, floor + 9).lineTo(x + 8, floor + 1);
      g.stroke({ color: numberOf(palette.inkSoft), width: 0.75, alpha: 0.6 });
      g.moveTo(0, floor)
        .lineTo(width, floor)
        .stroke({ color: numberOf(palette.ink), width: 1.5 });
    }
  }
  if (surface > -4 && surface < height + 4) {
    const ink = { color: numberOf(palette.ink), width: 1.25 };
    g.moveTo(0, surface).lineTo(width, surface).stroke(ink);
    // The water level's sign of technical drawing: a triangle on the line, strokes under it.
    const x = sheet.rulers.left + 26;
    g.poly([x - 6, surface - 10, x + 6, surface - 10, x, surface - 0.5], true).stroke({
      color: ink.color,
      width: 1,
    });
    for (const [k, half] of [7, 4.5, 2].entries())
      g.moveTo(x - half, surface + 4 + 3 * k).lineTo(x + half, surface + 4 + 3 * k);
    g.stroke({ color: ink.color, width: 0.75, alpha: 0.7 });
  }
}

/** A faint grid fixed to the water: it is what moves when the camera goes with the bait. */
function drawGrid(g: Graphics, sheet: Sheet, surface: number): void {
  const { view } = sheet;
  const { width, height } = sheet.size;
  const step = niceStep(view.scale, 34);
  const major = niceStep(view.scale, 150);
  const top = Math.max(0, surface);
  const left = view.x - width / 2 / view.scale;
  const right = view.x + width / 2 / view.scale;
  const low = view.z - height / 2 / view.scale;
  const high = Math.min(0, view.z + height / 2 / view.scale);
  for (const [every, alpha] of [
    [step, 0.055],
    [major, 0.085],
  ] as const) {
    for (const x of ticksBetween(left, right, every)) {
      const px = sheet.at({ x, z: 0 }).x;
      g.moveTo(px, top).lineTo(px, height);
    }
    for (const z of ticksBetween(low, high, every)) {
      const py = sheet.at({ x: 0, z }).y;
      g.moveTo(0, py).lineTo(width, py);
    }
    g.stroke({ color: numberOf(sheet.palette.ink), width: 1, alpha });
  }
}
