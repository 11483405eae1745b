import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ARROW_SCALES,
  arrowKey,
  arrowLength,
  arrowRuler,
  forceText,
  LEAST_FORCE,
  longestArrow,
} from "../../../src/drawing/arrows";
import { dashed, hatch, insidePolygon, placed } from "../../../src/drawing/geometry";
import { distanceToSegment } from "../../../src/model/base";
import { arrowShape } from "../../../src/drawing/mark";
import { forcedPalette, luminance, mix, paletteFrom, type Rgb } from "../../../src/drawing/palette";
import { clipped } from "../../../src/drawing/clip";
import { Placer } from "../../../src/drawing/placer";
import { decimalsOf, niceStep, ticksBetween, tickText } from "../../../src/drawing/ticks";

const SEED = { seed: 20240607, numRuns: 300 };

describe("geometry", () => {
  const square = [
    { x: 0, z: 0 },
    { x: 2, z: 0 },
    { x: 2, z: 2 },
    { x: 0, z: 2 },
  ];

  test("body to world", () => {
    const p = placed({ x: 1, z: 0 }, { x: 5, z: -3 }, Math.PI / 2);
    expect(p.x).toBeCloseTo(5, 12);
    expect(p.z).toBeCloseTo(-2, 12);
  });

  test("inside, outside, and distance to a segment", () => {
    expect(insidePolygon(square, { x: 1, z: 1 })).toBe(true);
    expect(insidePolygon(square, { x: 3, z: 1 })).toBe(false);
    expect(distanceToSegment({ x: 1, z: 1 }, { x: 0, z: 0 }, { x: 2, z: 0 })).toBe(1);
    expect(distanceToSegment({ x: 5, z: 4 }, { x: 0, z: 0 }, { x: 2, z: 0 })).toBe(5);
  });

  test("hatching of a square: level lines have its width, slanted ones stay inside", () => {
    const level = hatch(square, 0.5, 0);
    expect(level.length).toBeGreaterThanOrEqual(4);
    for (const [a, b] of level) expect(Math.hypot(b.x - a.x, b.z - a.z)).toBeCloseTo(2, 12);
    for (const [a, b] of hatch(square, 0.1, 0.7))
      expect(insidePolygon(square, { x: (a.x + b.x) / 2, z: (a.z + b.z) / 2 })).toBe(true);
    expect(() => hatch(square, 0, 0)).toThrow(/spacing 0/);
  });

  test("dashes take their share of a path's length, round its corners too", () => {
    const path = [
      { x: 0, z: 0 },
      { x: 10, z: 0 },
      { x: 10, z: 10 },
    ];
    const pieces = dashed(path, 3, 1);
    const drawn = pieces.reduce(
      (sum, piece) =>
        sum +
        piece
          .slice(1)
          .reduce((s, p, i) => s + Math.hypot(p.x - (piece[i]?.x ?? 0), p.z - (piece[i]?.z ?? 0)), 0),
      0,
    );
    expect(drawn).toBeCloseTo(15, 9); // 20 long: five dashes of 3 with gaps of 1
    expect(pieces).toHaveLength(5);
    expect(pieces.some((p) => p.length === 3)).toBe(true); // one goes round the corner
  });
});

describe("a long line", () => {
  const screen = { width: 100, height: 50 };

  test("is cut where it leaves the screen's surroundings and taken up where it comes back", () => {
    const out = clipped(
      [
        { x: 50, y: 25 },
        { x: 500, y: 25 },
        { x: 500, y: 40 },
        { x: 50, y: 40 },
      ],
      screen,
      10,
    );
    expect(out).toEqual([
      [
        { x: 50, y: 25 },
        { x: 110, y: 25 },
      ],
      [
        { x: 110, y: 40 },
        { x: 50, y: 40 },
      ],
    ]);
  });

  test("is kept whole on the screen, crosses it from outside to outside, or is left out", () => {
    const path = [
      { x: 1, y: 1 },
      { x: 50, y: 20 },
      { x: 99, y: 49 },
    ];
    expect(clipped(path, screen, 10)).toEqual([path]);
    const across = clipped(
      [
        { x: -1000, y: 25 },
        { x: 1000, y: 25 },
      ],
      screen,
      0,
    );
    expect(across).toHaveLength(1);
    expect(across[0]?.[0]?.x).toBeCloseTo(0, 9);
    expect(across[0]?.[1]?.x).toBeCloseTo(100, 9);
    expect(
      clipped(
        [
          { x: -50, y: -90 },
          { x: 300, y: -90 },
        ],
        screen,
        10,
      ),
    ).toEqual([]);
  });
});

describe("scales", () => {
  test("steps are the smallest 1, 2 or 5 × 10ⁿ that leave room", () => {
    expect(niceStep(100, 44)).toBe(0.5);
    expect(niceStep(1000, 44)).toBe(0.05);
    expect(niceStep(44, 44)).toBe(1);
    expect(niceStep(5000, 44)).toBe(0.01);
    expect(() => niceStep(Number.NaN, 44)).toThrow(/NaN/);
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 5, max: 200, noNaN: true }),
        (scale, px) => {
          const step = niceStep(scale, px);
          expect(step * scale).toBeGreaterThanOrEqual(px * (1 - 1e-8));
          expect(step * scale).toBeLessThan(px * 2.5 * (1 + 1e-8));
        },
      ),
      SEED,
    );
  });

  test("ticks do not add up round-off", () => {
    expect(ticksBetween(-0.25, 0.35, 0.1)).toEqual([-0.2, -0.1, 0, 0.1, 0.2, 0.3]);
    expect(ticksBetween(3, 11, 5)).toEqual([5, 10]);
    expect(ticksBetween(0.79, 0.86, 0.01)).toEqual([0.79, 0.8, 0.81, 0.82, 0.83, 0.84, 0.85, 0.86]);
  });

  test("labels show what tells the ticks apart, with a real minus", () => {
    expect(decimalsOf(0.05)).toBe(2);
    expect(decimalsOf(0.1)).toBe(1);
    expect(decimalsOf(5)).toBe(0);
    expect(tickText(-0.8, 0.01)).toBe("−0.80");
  });
});

describe("arrows", () => {
  test("linear adds up; the root and the logarithm keep small forces in sight; too small is not drawn", () => {
    const linear = arrowRuler("linear", 0.9, 100);
    expect(linear.newton).toBe(1);
    expect(arrowLength(0.3, linear) + arrowLength(0.4, linear)).toBeCloseTo(arrowLength(0.7, linear), 12);
    expect(arrowLength(0.01, arrowRuler("root", 1, 100))).toBeCloseTo(10, 12);
    // By the logarithm each tenfold is one more step of the same length.
    const log = arrowRuler("log", 1, 100);
    const steps = [0.001, 0.01, 0.1, 1].map((force) => arrowLength(force, log));
    expect((steps[1] ?? 0) - (steps[0] ?? 0)).toBeCloseTo((steps[3] ?? 0) - (steps[2] ?? 0), 12);
    expect(steps[3]).toBeCloseTo(100, 12);
    for (const ruler of [linear, log]) expect(arrowLength(LEAST_FORCE / 2, ruler)).toBe(0);
  });

  test("the largest force of a moment takes between two fifths and the whole of the longest arrow", () => {
    for (const [w, h] of [
      [360, 296],
      [860, 470],
      [1440, 900],
    ] as const)
      for (let most = 0.003; most < 20; most *= 1.3) {
        const px = longestArrow(w, h);
        const length = arrowLength(most, arrowRuler("linear", most, px));
        expect(length).toBeGreaterThanOrEqual(0.4 * px - 1e-9);
        expect(length).toBeLessThanOrEqual(px + 1e-9);
        expect(px).toBeLessThanOrEqual(0.5 * Math.min(w, h));
      }
  });

  test("the head lies within the arrow's length, its tip at the end, and keeps its size at any scale", () => {
    const arrow = {
      kind: "arrow",
      what: null,
      from: { x: 50, z: -50 },
      to: { x: 50, z: 0 },
      head: 11,
    } as const;
    const { shaft, head } = arrowShape(arrow, 1);
    expect(head[0]).toEqual(arrow.to);
    expect(shaft[1]).toEqual({ x: 50, z: -11 });
    expect(arrowShape(arrow, 2).shaft[1].z).toBeCloseTo(-5.5, 12);
    // A short one: the head takes 60 % of it.
    expect(arrowShape({ ...arrow, from: { x: 50, z: -10 } }, 1).shaft[1].z).toBeCloseTo(-6, 12);
    // One without length is drawn as a point, not as NaN.
    expect(arrowShape({ ...arrow, from: arrow.to }, 1).head).toEqual([arrow.to, arrow.to, arrow.to]);
  });

  test("the key's bars are as long as arrows of those forces", () => {
    for (const scale of ARROW_SCALES) {
      const ruler = arrowRuler(scale, 1, 120);
      const bars = arrowKey(ruler, 200);
      expect(bars.length).toBeGreaterThan(0);
      for (const bar of bars) expect(bar.length).toBe(arrowLength(bar.newton, ruler));
    }
    expect(arrowKey(arrowRuler("root", 1, 120), 60).map((b) => b.newton)).toEqual([0.01, 0.1]);
  });

  test("forces in words have three figures", () => {
    expect(forceText(0.1432)).toBe("143\u202fmN");
    expect(forceText(0.0316)).toBe("31.6\u202fmN");
    expect(forceText(-2.5)).toBe("2.50\u202fN");
    expect(forceText(0)).toBe("0\u202fmN");
    expect(forceText(0.00042)).toBe("0.420\u202fmN");
  });
});

describe("labels", () => {
  test("never lie on each other while there is room, and stay in the stage", () => {
    const placer = new Placer({ x0: 0, y0: 0, x1: 400, y1: 300 });
    const w = 60;
    const h = 15;
    const spots = Array.from({ length: 6 }, () => placer.place({ x: 200, y: 150 }, Math.PI / 2, w, h));
    spots.forEach((a, i) => {
      expect(a.x >= w / 2 && a.x <= 400 - w / 2 && a.y >= h / 2 && a.y <= 300 - h / 2).toBe(true);
      for (const b of spots.slice(i + 1))
        expect(Math.abs(a.x - b.x) >= w || Math.abs(a.y - b.y) >= h).toBe(true);
    });
    // The first choice is the one asked for: above, for π/2.
    expect(spots[0]).toEqual({ x: 200, y: 150 - 7 - h / 2 });
    const corner = placer.place({ x: 399, y: 1 }, 0, w, h);
    expect(corner.x).toBeLessThanOrEqual(400 - w / 2);
    expect(corner.y).toBeGreaterThanOrEqual(h / 2);
  });
});

describe("palette", () => {
  test("takes the page's colours, and falls back by the paper's lightness", () => {
    const light = paletteFrom({}, false, "sans-serif");
    const dark = paletteFrom({}, true, "sans-serif");
    expect(light.dark).toBe(false);
    expect(dark.dark).toBe(true);
    // A dark paper makes a dark palette whatever the system prefers.
    expect(paletteFrom({ paper: [10, 12, 16] }, false, "serif").dark).toBe(true);
    expect(paletteFrom({ accent: [1, 2, 3] }, false, "serif").accent).toEqual([1, 2, 3]);
    expect(paletteFrom({ accent: [1, 2, 3] }, false, "serif").ghost).toEqual([1, 2, 3]);
  });

  test("ink reads on paper, water, sky and floor of either fall-back (WCAG 2.2: 4.5 to 1)", () => {
    for (const prefersDark of [false, true]) {
      const p = paletteFrom({}, prefersDark, "sans-serif");
      for (const ground of [
        p.paper,
        p.waterTop,
        p.waterDeep,
        p.sky,
        p.floor,
        mix(p.waterTop, p.waterDeep, 0.5),
      ]) {
        const [high, low] = [luminance(p.ink), luminance(ground)].sort((a, b) => b - a) as [number, number];
        expect((high + 0.05) / (low + 0.05)).toBeGreaterThanOrEqual(4.5);
      }
      const [high, low] = [luminance(p.inkSoft), luminance(p.paper)].sort((a, b) => b - a) as [
        number,
        number,
      ];
      expect((high + 0.05) / (low + 0.05)).toBeGreaterThanOrEqual(4.5);
    }
  });

  test("with the system's colours everything stands out from the ground", () => {
    const black = { canvas: [0, 0, 0], text: [255, 255, 255], link: [255, 255, 0] } as const;
    const white = { canvas: [255, 255, 255], text: [0, 0, 0], link: [0, 0, 159] } as const;
    for (const system of [black, white]) {
      const p = forcedPalette(system, "serif");
      expect(p.dark).toBe(system === black);
      for (const ground of [p.paper, p.sky, p.waterTop, p.waterDeep, p.woodLight, p.coatLight])
        for (const mark of [p.ink, p.inkSoft, p.accent, p.ghost, p.weed])
          expect(contrast(mark, ground)).toBeGreaterThanOrEqual(4.5);
      // Parts of a picture need 3 to 1 (WCAG 2.2, 1.4.11).
      expect(contrast(p.metal, p.paper)).toBeGreaterThanOrEqual(3);
      expect(contrast(p.edge, p.dark ? p.ink : p.paper)).toBeGreaterThanOrEqual(4.5);
    }
  });

  test("ink outlines wood, coat and metal (3 to 1), light and dark", () => {
    for (const prefersDark of [false, true]) {
      const p = paletteFrom({}, prefersDark, "sans-serif");
      for (const role of prefersDark
        ? (["woodDark", "coatDark"] as const)
        : (["woodDark", "woodLight", "coatDark", "coatLight"] as const))
        expect(contrast(p.ink, p[role]), role).toBeGreaterThanOrEqual(3);
    }
  });
});

/** Contrast of two colours (WCAG 2.2). */
function contrast(a: Rgb, b: Rgb): number {
  const [high, low] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (high + 0.05) / (low + 0.05);
}
