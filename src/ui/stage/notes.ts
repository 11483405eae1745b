import type { Graphics } from "pixi.js";
import { isNarrow } from "./camera";
import { placed } from "./geometry";
import { numberOf, type Role } from "./palette";
import type { Placer } from "./placer";
import type { Point, Sheet } from "./sheet";
import { tickText } from "./ticks";
import type { Posed } from "./types";

/** G as the quartered disc of engineering drawings, B as a ring; each with its letter. */
export function drawCentres(g: Graphics, sheet: Sheet, bait: Posed): void {
  const { at } = sheet;
  const palette = sheet.palette;
  const ink = numberOf(palette.ink);
  const paper = numberOf(palette.paper);
  const G = at(bait.snapshot.G);
  const B = at(bait.snapshot.B);
  g.circle(B.x, B.y, 5.5).fill({ color: paper }).stroke({ color: ink, width: 1.5 });
  g.circle(B.x, B.y, 1.6).fill({ color: ink });
  g.circle(G.x, G.y, 6).fill({ color: paper });
  for (const start of [0, Math.PI])
    g.moveTo(G.x, G.y)
      .arc(G.x, G.y, 6, start, start + Math.PI / 2)
      .closePath()
      .fill({ color: ink });
  g.circle(G.x, G.y, 6).stroke({ color: ink, width: 1.5 });
  for (const { letter, x, y } of centreLetters(sheet, bait))
    sheet.labels.put(letter, x, y, {
      size: 14,
      bold: true,
      colour: palette.ink,
      halo: palette.paper,
      anchorX: 0.5,
      anchorY: 0.5,
    });
}

/** Where the letters of G and B stand: always G to the right of its mark and B to the left, so that neither is taken for the other. */
export function centreLetters(
  sheet: Sheet,
  bait: Posed,
): readonly (Point & { readonly letter: "G" | "B" })[] {
  const G = sheet.at(bait.snapshot.G);
  const B = sheet.at(bait.snapshot.B);
  return [
    { letter: "G", x: G.x + 14, y: G.y },
    { letter: "B", x: B.x - 14, y: B.y },
  ];
}

/** The pitch as an angle between a level line and the datum line, drawn ahead of the nose. */
export function drawPitch(g: Graphics, sheet: Sheet, bait: Posed, placer: Placer): void {
  const { view } = sheet;
  if (isNarrow(sheet.size)) return; // no room beside the bait
  const { scene, snapshot } = bait;
  const palette = sheet.palette;
  const middle = placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch);
  const c = sheet.at(middle);
  const radius = 0.62 * scene.length * view.scale;
  if (radius > 0.49 * sheet.size.width) return;
  const ink = numberOf(palette.inkSoft);
  const tip = (angle: number, r: number): { x: number; y: number } => ({
    x: c.x + r * Math.cos(angle),
    y: c.y - r * Math.sin(angle),
  });
  const a = tip(0, 0.9 * radius);
  const b = tip(0, 1.04 * radius);
  g.moveTo(a.x, a.y).lineTo(b.x, b.y).stroke({ color: ink, width: 1 });
  const d = tip(snapshot.pitch, 0.9 * radius);
  const e = tip(snapshot.pitch, 1.04 * radius);
  g.moveTo(d.x, d.y).lineTo(e.x, e.y).stroke({ color: ink, width: 1 });
  const from = tip(0, radius);
  g.moveTo(from.x, from.y)
    .arc(c.x, c.y, radius, 0, -snapshot.pitch, snapshot.pitch > 0)
    .stroke({ color: ink, width: 1 });
  const degrees = (snapshot.pitch * 180) / Math.PI;
  const words = `${tickText(degrees, 0.1)}°`;
  const where = placer.place(
    tip(snapshot.pitch / 2, 1.02 * radius),
    snapshot.pitch / 2,
    7.4 * words.length,
    16,
  );
  sheet.labels.put(words, where.x, where.y, {
    size: 13,
    colour: palette.ink,
    anchorX: 0.5,
    anchorY: 0.5,
    halo: palette.paper,
  });
}

/** Where a bait is out of the picture, a pointer at the edge says where it is. True where it was needed. */
export function pointTo(
  g: Graphics,
  sheet: Sheet,
  { scene, snapshot }: Posed,
  name: string,
  role: Role = "ink",
): boolean {
  const { view } = sheet;
  const { width, height } = sheet.size;
  const rulers = sheet.rulers;
  const p = sheet.at(placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch));
  const reach = 0.5 * scene.length * view.scale;
  if (
    p.x > rulers.left - reach &&
    p.x < width + reach &&
    p.y > -reach &&
    p.y < height - rulers.bottom + reach
  )
    return false;
  const left = rulers.left + 16;
  const right = width - 16;
  const top = 16;
  const bottom = height - rulers.bottom - 16;
  const c = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const d = { x: p.x - c.x, y: p.y - c.y };
  const k = Math.min(
    d.x === 0 ? Infinity : Math.abs((d.x > 0 ? right - c.x : c.x - left) / d.x),
    d.y === 0 ? Infinity : Math.abs((d.y > 0 ? bottom - c.y : c.y - top) / d.y),
  );
  const tip = { x: c.x + k * d.x, y: c.y + k * d.y };
  const n = Math.hypot(d.x, d.y);
  const u = { x: d.x / n, y: d.y / n };
  const palette = sheet.palette;
  const colour = palette[role];
  g.poly([
    tip.x,
    tip.y,
    tip.x - 12 * u.x - 6 * u.y,
    tip.y - 12 * u.y + 6 * u.x,
    tip.x - 12 * u.x + 6 * u.y,
    tip.y - 12 * u.y - 6 * u.x,
  ]).fill({ color: numberOf(colour) });
  const metres = n / view.scale;
  const text = `${name} ${metres < 1 ? `${(metres * 1000).toFixed(0)} mm` : `${metres.toFixed(1)} m`} away`;
  sheet.labels.put(text, tip.x - 18 * u.x, tip.y - 18 * u.y, {
    size: 12,
    colour,
    halo: palette.paper,
    anchorX: u.x > 0.4 ? 1 : u.x < -0.4 ? 0 : 0.5,
    anchorY: u.y > 0.7 ? 1 : u.y < -0.7 ? 0 : 0.5,
  });
  return true;
}
