import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  arrowKey,
  arrowLength,
  arrowOf,
  forceText,
  LEAST_FORCE,
  pxPerRootNewton,
} from "../../../src/ui/stage/arrows";
import {
  closeScale,
  eased,
  framed,
  offsetOf,
  rulerSizes,
  scaleLimits,
  seen,
  settled,
  toScreen,
  toWorld,
} from "../../../src/ui/stage/camera";
import {
  dashed,
  distanceToSegment,
  hatch,
  insidePolygon,
  placed,
  unplaced,
} from "../../../src/ui/stage/geometry";
import { luminance, mix, paletteFrom } from "../../../src/ui/stage/palette";
import { clipped } from "../../../src/ui/stage/paths";
import { Placer } from "../../../src/ui/stage/placer";
import { sceneOf } from "../../../src/ui/stage/scene";
import { decimalsOf, niceStep, ticksBetween, tickText } from "../../../src/ui/stage/ticks";
import { bait } from "./bait";

const SEED = { seed: 20240607, numRuns: 300 };

describe("geometry", () => {
  const square = [
    { x: 0, z: 0 },
    { x: 2, z: 0 },
    { x: 2, z: 2 },
    { x: 0, z: 2 },
  ];

  test("body to world and back", () => {
    const p = placed({ x: 1, z: 0 }, { x: 5, z: -3 }, Math.PI / 2);
    expect(p.x).toBeCloseTo(5, 12);
    expect(p.z).toBeCloseTo(-2, 12);
    const back = unplaced(p, { x: 5, z: -3 }, Math.PI / 2);
    expect(back.x).toBeCloseTo(1, 12);
    expect(back.z).toBeCloseTo(0, 12);
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
  test("a hundred times the force is ten times as long; too small is not drawn", () => {
    expect(arrowLength(1, 100)).toBe(100);
    expect(arrowLength(0.01, 100)).toBeCloseTo(10, 12);
    expect(arrowLength(LEAST_FORCE / 2, 100)).toBe(0);
    expect(arrowOf({ x: 0, y: 0 }, { x: 0, z: 0 }, 100)).toBeNull();
  });

  test("forces of 0.01 to 1 N are readable on a phone and on a desk", () => {
    for (const [w, h] of [
      [360, 296],
      [860, 470],
      [1440, 900],
    ] as const) {
      const unit = pxPerRootNewton(w, h);
      expect(arrowLength(0.01, unit)).toBeGreaterThanOrEqual(7);
      expect(arrowLength(1, unit)).toBeLessThanOrEqual(0.5 * Math.min(w, h));
    }
  });

  test("points up on the screen for a force up, head within its length", () => {
    const arrow = arrowOf({ x: 50, y: 50 }, { x: 0, z: 0.25 }, 100);
    expect(arrow?.to).toEqual({ x: 50, y: 0 });
    expect(arrow?.neck.y).toBeGreaterThan(0);
    expect(arrow?.neck.y).toBeLessThan(50);
    expect(arrow?.head[0]).toEqual(arrow?.to);
  });

  test("the key's bars are as long as arrows of those forces", () => {
    for (const bar of arrowKey(120, 200)) expect(bar.length).toBe(arrowLength(bar.newton, 120));
    expect(arrowKey(120, 200).map((b) => b.newton)).toEqual([0.01, 0.1, 1]);
    expect(arrowKey(120, 60).map((b) => b.newton)).toEqual([0.01, 0.1]);
  });

  test("forces in words have three figures", () => {
    expect(forceText(0.1432)).toBe("0.143 N");
    expect(forceText(0.0316)).toBe("31.6 mN");
    expect(forceText(-2.5)).toBe("2.50 N");
    expect(forceText(0)).toBe("0 N");
    expect(forceText(0.00042)).toBe("0.420 mN");
  });
});

describe("camera", () => {
  const scene = sceneOf(bait, null, 3);
  const size = { width: 900, height: 470 };
  const rulers = rulerSizes(size);

  test("screen and world are each other's inverse, up is up", () => {
    const view = { x: 1, z: -2, scale: 500 };
    const p = { x: 1.3, z: -1.9 };
    const s = toScreen(view, size, p);
    expect(s.y).toBeLessThan(size.height / 2);
    const back = toWorld(view, size, s);
    expect(back.x).toBeCloseTo(p.x, 12);
    expect(back.z).toBeCloseTo(p.z, 12);
  });

  test("close, the bait takes 45–60 % of the width of a desk's and of a phone's stage", () => {
    for (const s of [size, { width: 360, height: 296 }, { width: 1100, height: 520 }]) {
      const share = (closeScale(scene, s) * scene.length) / s.width;
      expect(share).toBeGreaterThanOrEqual(0.45);
      expect(share).toBeLessThanOrEqual(0.6);
    }
  });

  test("the water framing holds surface and floor between the scales, the cast framing bait and rod tip", () => {
    const around = { x: 4, z: -1 };
    const water = framed("water", scene, size, rulers, around, null);
    expect(toScreen(water, size, { x: 4, z: 0 }).y).toBeGreaterThan(0);
    expect(toScreen(water, size, { x: 4, z: -3 }).y).toBeLessThan(size.height - rulers.bottom);
    expect(toScreen(water, size, around).x).toBeCloseTo((size.width + rulers.left) / 2, 9);
    const tip = { x: 24, z: 1.2 };
    const cast = framed("cast", scene, size, rulers, around, tip);
    for (const p of [around, tip, { x: 10, z: -3 }]) {
      const q = toScreen(cast, size, p);
      expect(q.x > rulers.left && q.x < size.width && q.y > 0 && q.y < size.height - rulers.bottom).toBe(
        true,
      );
    }
  });

  test("deep water without a floor still has a framing", () => {
    const endless = sceneOf(bait, null, Infinity);
    const view = framed("water", endless, size, rulers, { x: 0, z: -5 }, null);
    expect(Number.isFinite(view.scale) && view.scale > 0).toBe(true);
    expect(toScreen(view, size, { x: 0, z: -5 }).y).toBeLessThan(size.height);
  });

  test("the way left shrinks alike in steps of any size", () => {
    const goal = { x: 0.1, z: -0.05, scale: 5000 };
    const start = offsetOf({ x: 0, z: 0, scale: 100 }, goal);
    expect(seen(goal, start).scale).toBeCloseTo(100, 9);
    let fine = start;
    for (let i = 0; i < 240; i++) fine = eased(fine, 1 / 120);
    const coarse = eased(start, 2);
    expect(fine.x).toBeCloseTo(coarse.x, 12);
    expect(fine.log).toBeCloseTo(coarse.log, 12);
    expect(settled(fine, goal)).toBe(true);
    expect(settled(start, goal)).toBe(false);
    expect(eased(start, 0)).toEqual(start);
    expect(eased(start, -1)).toEqual(start);
  });

  test("zooming has ends on both sides of the framings", () => {
    const [least, most] = scaleLimits(scene, size);
    const close = closeScale(scene, size);
    const water = framed("water", scene, size, rulers, { x: 0, z: -1 }, null).scale;
    expect(least).toBeLessThan(water);
    expect(most).toBeGreaterThan(close);
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
});
