import type { Ground } from "./ground";
import { onScreen } from "./ground";
import type { Mark, Paint } from "./mark";
import { niceStep, ticksBetween } from "./ticks";
import type { Scene } from "./types";
import type { PictureWords } from "./words";

/** A filled rectangle in screen px. */
const rectangle = (x: number, y: number, width: number, height: number, fill: Paint): Mark => ({
  kind: "polygon",
  what: null,
  fill,
  points: [onScreen(x, y), onScreen(x + width, y), onScreen(x + width, y + height), onScreen(x, y + height)],
});

/** Sky, the water's grid, the strike zone, weed, floor, and the surface with its sign. In screen px. */
export function sceneryMarks(ground: Ground, scene: Scene, name: PictureWords["name"]): Mark[] {
  const { width, height } = ground.size;
  const surface = ground.at({ x: 0, z: 0 }).y;
  const marks: Mark[] = [];
  if (surface > 0) marks.push(rectangle(0, 0, width, Math.min(height, surface), { role: "sky" }));
  marks.push(...gridMarks(ground, surface));
  if (scene.zone) marks.push(...zoneMarks(ground, scene.zone, name("strike zone")));
  if (scene.weed !== null) marks.push(...weedMarks(ground, scene.weed, scene.depth, name("weed")));
  if (Number.isFinite(scene.depth)) marks.push(...floorMarks(ground, scene.depth));
  if (surface > -4 && surface < height + 4) marks.push(...surfaceMarks(ground, surface));
  return marks;
}

/** A faint grid fixed to the water: it is what moves when the camera goes with the bait. */
function gridMarks({ size: { width, height }, view, at }: Ground, surface: number): Mark[] {
  const top = Math.max(0, surface);
  const left = view.x - width / 2 / view.scale;
  const right = view.x + width / 2 / view.scale;
  const low = view.z - height / 2 / view.scale;
  const high = Math.min(0, view.z + height / 2 / view.scale);
  return (
    [
      [niceStep(view.scale, 34), 0.055],
      [niceStep(view.scale, 150), 0.085],
    ] as const
  ).map(([every, alpha]) => ({
    kind: "lines",
    what: null,
    paths: [
      ...ticksBetween(left, right, every).map((x) => {
        const px = at({ x, z: 0 }).x;
        return [onScreen(px, top), onScreen(px, height)];
      }),
      ...ticksBetween(low, high, every).map((z) => {
        const py = at({ x: 0, z }).y;
        return [onScreen(0, py), onScreen(width, py)];
      }),
    ],
    stroke: { role: "ink", px: 1, alpha },
  }));
}

/** Where the names of zone and weed begin, right of the flag with the tie eye's depth, px from the depth scale. */
const BESIDE_FLAG = 62;

/** The strike zone: a band between two dashed lines, with its name beside the depth scale. */
function zoneMarks(ground: Ground, { from, to }: NonNullable<Scene["zone"]>, words: string): Mark[] {
  const { width, height } = ground.size;
  const upper = ground.at({ x: 0, z: -from }).y;
  const lower = ground.at({ x: 0, z: -to }).y;
  const [top, bottom] = [Math.max(0, upper), Math.min(height, lower)];
  if (bottom <= top) return [];
  const marks: Mark[] = [rectangle(0, top, width, bottom - top, { role: "zone", alpha: 0.13 })];
  const edges = [upper, lower].filter((y) => y >= 0 && y <= height);
  for (const y of edges)
    marks.push({
      kind: "path",
      what: null,
      points: [onScreen(0, y), onScreen(width, y)],
      stroke: { role: "zone", px: 1.25, dash: [9, 5], alpha: 0.85 },
    });
  const y = upper >= 0 ? upper + 4 : 40;
  if (y + 14 < bottom)
    marks.push({
      kind: "text",
      what: null,
      at: onScreen(ground.rulers.left + BESIDE_FLAG, y),
      words,
      size: 12,
      anchor: { x: 0, y: 0 },
      fill: { role: "ink" },
      halo: { role: "waterTop", to: "waterDeep", t: 0.4 },
    });
  return marks;
}

/** Distance of two stalks of weed, px, and how far a stalk's tip sways aside, as shares of that distance. */
const STALKS = 15;
const SWAY = [0.3, -0.2, 0.45, -0.4, 0.1] as const;
/** Height of a stalk as a share of the weed's: uneven tops, none above the depth that the file gives. */
const TALL = [1, 0.82, 0.95, 0.74, 0.9] as const;

/** Weed: stalks from the floor up to the depth of its tops, and a dotted line at that depth with its name. */
function weedMarks(ground: Ground, tops: number, depth: number, words: string): Mark[] {
  const { size, view, at } = ground;
  const { width, height } = size;
  const top = at({ x: 0, z: -tops }).y;
  const foot = Number.isFinite(depth) ? at({ x: 0, z: -depth }).y : Infinity;
  if (top > height || foot < 0 || foot <= top) return [];
  const marks: Mark[] = [];
  const low = Math.min(foot, height + 40);
  if (low - top > 3) {
    // Counted from the world's origin, so that the stalks stay in place while the picture moves.
    const origin = width / 2 - view.x * view.scale;
    const first = Math.floor(-origin / STALKS) - 1;
    const count = Math.ceil(width / STALKS) + 2;
    const whole = foot === Infinity ? low - top : foot - top;
    const paths = Array.from({ length: count }, (_, k) => {
      const i = first + k;
      const kind = ((i % SWAY.length) + SWAY.length) % SWAY.length;
      const x = origin + i * STALKS;
      const tip = (foot === Infinity ? low : foot) - whole * (TALL[kind] ?? 1);
      const bend = STALKS * (SWAY[kind] ?? 0);
      const from = foot === Infinity ? low : foot;
      return [0, 0.25, 0.5, 0.75, 1].map((t) =>
        onScreen(x + bend * t * Math.cos(2.4 * t), from + (tip - from) * t),
      );
    });
    marks.push({ kind: "lines", what: null, paths, stroke: { role: "weed", px: 1.6, alpha: 0.75 } });
  }
  if (top >= 0)
    marks.push({
      kind: "path",
      what: null,
      points: [onScreen(0, top), onScreen(width, top)],
      stroke: { role: "weed", px: 1.25, dash: [2, 4] },
    });
  const y = Math.max(top, 40);
  if (y + 18 < Math.min(low, height - ground.rulers.bottom))
    marks.push({
      kind: "text",
      what: null,
      at: onScreen(ground.rulers.left + BESIDE_FLAG, y + 4),
      words,
      size: 12,
      anchor: { x: 0, y: 0 },
      fill: { role: "ink" },
      halo: { role: "waterTop", to: "waterDeep", t: 0.6 },
    });
  return marks;
}

/** The floor: earth is marked by short strokes under its line, as in a section. */
function floorMarks({ size: { width, height }, view, at }: Ground, depth: number): Mark[] {
  const floor = at({ x: 0, z: -depth }).y;
  if (floor >= height) return [];
  const top = Math.max(0, floor);
  const shift = (((-view.x * view.scale) % 14) + 14) % 14;
  const paths = [];
  for (let x = shift - 14; x < width + 14; x += 14)
    paths.push([onScreen(x, floor + 9), onScreen(x + 8, floor + 1)]);
  return [
    rectangle(0, top, width, height - top, { role: "floor" }),
    { kind: "lines", what: null, paths, stroke: { role: "inkSoft", px: 0.75, alpha: 0.6 } },
    {
      kind: "path",
      what: null,
      points: [onScreen(0, floor), onScreen(width, floor)],
      stroke: { role: "ink", px: 1.5 },
    },
  ];
}

/** The surface, with the water level's sign of technical drawing: a triangle on the line, strokes under it. */
function surfaceMarks({ size: { width }, rulers }: Ground, surface: number): Mark[] {
  const x = rulers.left + 26;
  return [
    {
      kind: "path",
      what: null,
      points: [onScreen(0, surface), onScreen(width, surface)],
      stroke: { role: "ink", px: 1.25 },
    },
    {
      kind: "polygon",
      what: null,
      points: [onScreen(x - 6, surface - 10), onScreen(x + 6, surface - 10), onScreen(x, surface - 0.5)],
      stroke: { role: "ink", px: 1 },
    },
    {
      kind: "lines",
      what: null,
      paths: [7, 4.5, 2].map((half, k) => [
        onScreen(x - half, surface + 4 + 3 * k),
        onScreen(x + half, surface + 4 + 3 * k),
      ]),
      stroke: { role: "ink", px: 0.75, alpha: 0.7 },
    },
  ];
}
