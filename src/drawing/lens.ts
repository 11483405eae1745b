import { onScreen, pointOnScreen, type Ground } from "./ground";
import type { Mark } from "./mark";
import { middleOf, pitchText } from "./notes";
import type { Point, Posed } from "./types";
import type { NumberWriter } from "./words";

/** Under this length of the bait on the screen (px) its parts cannot be told apart: a lens shows them. */
export const LENS_BELOW = 90;

/** Far off, a lens shows the bait's attitude and its parts. */
export interface Lens {
  /** Its glass, and the ring round the bait that it enlarges; under the bait. In screen px. */
  readonly under: readonly Mark[];
  /** The pitch in words, over the bait. */
  readonly over: readonly Mark[];
  /** Where and how large the bait stands in it: the nose tip's place on the screen, and px to a metre. */
  readonly nose: Point;
  readonly scale: number;
}

/** `number` writes the pitch; null: without it. */
export function lensOf(ground: Ground, bait: Posed, number: NumberWriter | null): Lens {
  const { scene, snapshot } = bait;
  const { size, rulers, view } = ground;
  const { width, height } = size;
  const radius = Math.max(52, Math.min(110, 0.22 * Math.min(width, height)));
  const middle = middleOf(bait);
  const p = ground.at(middle);
  const c = {
    x: width - radius - 14,
    y: height - rulers.bottom - radius - (ground.narrow ? 60 : 12),
  };
  if (Math.hypot(c.x - p.x, c.y - p.y) < radius + 30) c.x = rulers.left + radius + 14;
  const ring = Math.max(7, 0.75 * scene.length * view.scale);
  const d = Math.hypot(c.x - p.x, c.y - p.y);
  const u = { x: (c.x - p.x) / d, y: (c.y - p.y) / d };
  const scale = (1.3 * radius) / scene.length;
  const inLens = (q: { x: number; z: number }): Point => ({
    x: c.x + (q.x - middle.x) * scale,
    y: c.y - (q.z - middle.z) * scale,
  });
  const under: Mark[] = [
    {
      kind: "circle",
      what: null,
      at: pointOnScreen(p),
      radius: ring,
      stroke: { role: "ink", px: 1, alpha: 0.7 },
    },
    {
      kind: "path",
      what: null,
      points: [
        onScreen(p.x + ring * u.x, p.y + ring * u.y),
        onScreen(c.x - radius * u.x, c.y - radius * u.y),
      ],
      stroke: { role: "ink", px: 1, alpha: 0.4 },
    },
    {
      kind: "circle",
      what: null,
      at: pointOnScreen(c),
      radius,
      fill: { role: "waterTop", to: "paper", t: 0.4 },
      stroke: { role: "ink", px: 1.25 },
    },
  ];
  const surface = inLens({ x: 0, z: 0 }).y;
  if (Math.abs(surface - c.y) < radius) {
    const half = Math.sqrt(radius * radius - (surface - c.y) ** 2);
    under.push({
      kind: "path",
      what: null,
      points: [onScreen(c.x - half, surface), onScreen(c.x + half, surface)],
      stroke: { role: "ink", px: 1, alpha: 0.8 },
    });
  }
  const over: Mark[] = number
    ? [
        {
          kind: "text",
          what: null,
          at: onScreen(c.x, c.y + radius - 12),
          words: number(pitchText(snapshot.pitch)),
          size: 12,
          anchor: { x: 0.5, y: 0.5 },
          fill: { role: "ink" },
          halo: { role: "paper" },
        },
      ]
    : [];
  return {
    under,
    over,
    nose: inLens(snapshot.nose),
    scale,
  };
}
