import type { Vec } from "../model/base";
import { formatIn } from "../units";
import { placed } from "./geometry";
import { onScreen, pointOnScreen, type Ground } from "./ground";
import { distanceText } from "./lengths";
import type { Mark } from "./mark";
import type { Role } from "./palette";
import type { Placer } from "./placer";
import type { Point, Posed } from "./types";
import type { NumberWriter, PictureWords, Speech } from "./words";

/** Radii of the marks of G and B, px. */
const RADIUS_G = 6;
const RADIUS_B = 5.5;

/** G as the quartered disc of engineering drawings, B as a ring; each with its letter. In screen px. */
export function centreMarks(ground: Ground, bait: Posed): Mark[] {
  const G = ground.at(bait.snapshot.G);
  const B = ground.at(bait.snapshot.B);
  const quarter = (start: number): Vec[] => [
    onScreen(G.x, G.y),
    ...Array.from({ length: 9 }, (_, i) => {
      const a = start + (i * Math.PI) / 16;
      return onScreen(G.x + RADIUS_G * Math.cos(a), G.y + RADIUS_G * Math.sin(a));
    }),
  ];
  return [
    {
      kind: "circle",
      what: "B",
      at: pointOnScreen(B),
      radius: RADIUS_B,
      fill: { role: "paper" },
      stroke: { role: "ink", px: 1.5 },
    },
    { kind: "circle", what: "B", at: pointOnScreen(B), radius: 1.6, fill: { role: "ink" } },
    { kind: "circle", what: "G", at: pointOnScreen(G), radius: RADIUS_G, fill: { role: "paper" } },
    ...[0, Math.PI].map((start): Mark => ({
      kind: "polygon",
      what: "G",
      points: quarter(start),
      fill: { role: "ink" },
    })),
    {
      kind: "circle",
      what: "G",
      at: pointOnScreen(G),
      radius: RADIUS_G,
      stroke: { role: "ink", px: 1.5 },
    },
    ...centreLetters(ground, bait).map(({ letter, x, y }): Mark => ({
      kind: "text",
      what: null,
      at: onScreen(x, y),
      words: letter,
      size: 14,
      bold: true,
      anchor: { x: 0.5, y: 0.5 },
      fill: { role: "ink" },
      halo: { role: "paper" },
    })),
  ];
}

/**
 * Where the letters of G and B stand: always G to the right of its mark and B to the left, so that neither is taken
 * for the other.
 */
export function centreLetters(
  { at }: Ground,
  { snapshot }: Posed,
): readonly (Point & { readonly letter: "G" | "B" })[] {
  const G = at(snapshot.G);
  const B = at(snapshot.B);
  return [
    { letter: "G", x: G.x + 14, y: G.y },
    { letter: "B", x: B.x - 14, y: B.y },
  ];
}

/** The middle of the bait's length, world. */
export const middleOf = ({ scene, snapshot }: Posed): Vec =>
  placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch);

/** A pitch in words. */
export const pitchText = (pitch: number): string => formatIn(pitch, "deg", 1);

/** The pitch as an angle between a level line and the datum line, drawn ahead of the nose. In screen px. */
export function pitchMarks(ground: Ground, bait: Posed, placer: Placer, number: NumberWriter): Mark[] {
  const { view, size } = ground;
  if (ground.narrow) return []; // no room beside the bait
  const { scene, snapshot } = bait;
  const c = ground.at(middleOf(bait));
  const radius = 0.62 * scene.length * view.scale;
  if (radius > 0.49 * size.width) return [];
  const tip = (angle: number, r: number): Point => ({
    x: c.x + r * Math.cos(angle),
    y: c.y - r * Math.sin(angle),
  });
  const along = (angle: number): Vec[] =>
    [0.9, 1.04].map((share) => pointOnScreen(tip(angle, share * radius)));
  const arc = Array.from({ length: 25 }, (_, i) => pointOnScreen(tip((snapshot.pitch * i) / 24, radius)));
  const words = number(pitchText(snapshot.pitch));
  const where = placer.place(
    tip(snapshot.pitch / 2, 1.02 * radius),
    snapshot.pitch / 2,
    7.4 * words.length,
    16,
  );
  return [
    {
      kind: "lines",
      what: null,
      paths: [along(0), along(snapshot.pitch), arc],
      stroke: { role: "inkSoft", px: 1 },
    },
    {
      kind: "text",
      what: null,
      at: pointOnScreen(where),
      words,
      size: 13,
      anchor: { x: 0.5, y: 0.5 },
      fill: { role: "ink" },
      halo: { role: "paper" },
    },
  ];
}

/** Where a bait is out of the picture, a pointer at the edge says where it is; nothing where the bait is in sight. */
export function pointerMarks(
  ground: Ground,
  bait: Posed,
  who: Parameters<PictureWords["away"]>[0],
  { lengths, words }: Speech,
  role: Role = "ink",
): Mark[] {
  const { view, rulers } = ground;
  const { width, height } = ground.size;
  const p = ground.at(middleOf(bait));
  const reach = 0.5 * bait.scene.length * view.scale;
  if (
    p.x > rulers.left - reach &&
    p.x < width + reach &&
    p.y > -reach &&
    p.y < height - rulers.bottom + reach
  )
    return [];
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
  const metres = n / view.scale;
  const away = words.number(distanceText(metres, lengths));
  return [
    {
      kind: "polygon",
      what: null,
      points: [
        onScreen(tip.x, tip.y),
        onScreen(tip.x - 12 * u.x - 6 * u.y, tip.y - 12 * u.y + 6 * u.x),
        onScreen(tip.x - 12 * u.x + 6 * u.y, tip.y - 12 * u.y - 6 * u.x),
      ],
      fill: { role },
    },
    {
      kind: "text",
      what: null,
      at: onScreen(tip.x - 18 * u.x, tip.y - 18 * u.y),
      words: words.away(who, away),
      size: 12,
      anchor: { x: u.x > 0.4 ? 1 : u.x < -0.4 ? 0 : 0.5, y: u.y > 0.7 ? 1 : u.y < -0.7 ? 0 : 0.5 },
      fill: { role },
      halo: { role: "paper" },
    },
  ];
}

/** The name of another variant, over its back: "variant B", since the letter alone stands for a centre. In screen px. */
export function letterMarks(ground: Ground, { scene, snapshot }: Posed, words: string, role: Role): Mark[] {
  const back = placed({ x: -0.85 * scene.length, z: 0.12 * scene.length }, snapshot.nose, snapshot.pitch);
  return [
    {
      kind: "text",
      what: null,
      at: pointOnScreen(ground.at(back)),
      words,
      size: 13,
      bold: true,
      anchor: { x: 0.5, y: 1 },
      fill: { role },
      halo: { role: "paper" },
    },
  ];
}
