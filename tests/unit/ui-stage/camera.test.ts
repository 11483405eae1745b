import { describe, expect, test } from "vitest";
import { sceneOf, rulerSizes, toScreen, toWorld } from "../../../src/drawing";
import {
  closeScale,
  eased,
  framed,
  offsetOf,
  scaleLimits,
  seen,
  settled,
} from "../../../src/ui/stage/camera";
import { bait } from "../../lib/drawn";

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
