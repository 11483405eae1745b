import { describe, expect, test } from "vitest";
import { closeScale, scaleLimits } from "../../../src/ui/stage/camera";
import { Cameraman, type Subject } from "../../../src/ui/stage/cameraman.svelte";
import { sceneOf, rulerSizes, toScreen } from "../../../src/drawing";
import { bait } from "../../lib/drawn";

const scene = sceneOf(bait, null, 3);
const size = { width: 900, height: 470 };
const rulers = rulerSizes(size);
/** Middle of the stage between its scales. */
const centre = { x: (size.width + rulers.left) / 2, y: (size.height - rulers.bottom) / 2 };
const FRAME = 1 / 60;

const subject = (x: number, z: number, over: Partial<Subject> = {}): Subject => ({
  scene,
  size,
  around: { x, z },
  rodTip: null,
  follow: true,
  ...over,
});

describe("Cameraman", () => {
  test("opens on the bait at once, in the middle of the stage", () => {
    const camera = new Cameraman();
    expect(camera.shoot(subject(3, -1), FRAME)).toBe(true);
    const p = toScreen(camera.view, size, { x: 3, z: -1 });
    expect(p.x).toBeCloseTo(centre.x, 9);
    expect(p.y).toBeCloseTo(centre.y, 9);
    expect(camera.view.scale).toBe(closeScale(scene, size));
  });

  test("goes with a bait that runs or is twitched, without lag", () => {
    const camera = new Cameraman();
    for (const x of [0, 0.015, 0.03, 0.4, 0.1]) {
      expect(camera.shoot(subject(x, -1), FRAME)).toBe(true);
      expect(toScreen(camera.view, size, { x, z: -1 }).x).toBeCloseTo(centre.x, 9);
    }
  });

  test("travels to another framing, and arrives", () => {
    const camera = new Cameraman();
    camera.shoot(subject(0, -1), FRAME);
    const close = camera.view.scale;
    camera.frame("water");
    expect(camera.shoot(subject(0.01, -1), FRAME)).toBe(false);
    expect(camera.view.scale).toBeLessThan(close);
    expect(camera.view.scale).toBeGreaterThan(0.5 * close);
    let frames = 1;
    while (!camera.shoot(subject(0.01 * ++frames, -1), FRAME)) expect(frames).toBeLessThan(180);
    expect(toScreen(camera.view, size, { x: 0, z: 0 }).y).toBeGreaterThan(0);
    expect(toScreen(camera.view, size, { x: 0, z: -3 }).y).toBeLessThan(size.height - rulers.bottom);
  });

  test("stands still where it does not follow, and comes back when it does", () => {
    const camera = new Cameraman();
    camera.shoot(subject(0, -1), FRAME);
    const there = camera.view;
    camera.shoot(subject(5, -1, { follow: false }), FRAME);
    camera.shoot(subject(6, -1, { follow: false }), FRAME);
    expect(camera.view.x).toBeCloseTo(there.x, 9);
    let frames = 0;
    while (!camera.shoot(subject(6, -1), FRAME)) expect(++frames).toBeLessThan(180);
    expect(toScreen(camera.view, size, { x: 6, z: -1 }).x).toBeCloseTo(centre.x, 9);
  });

  test("is shifted by as many pixels as the pointer moved, and framed again", () => {
    const camera = new Cameraman();
    camera.shoot(subject(0, -1), FRAME);
    camera.pan(40, -25);
    camera.shoot(subject(0, -1), FRAME);
    const p = toScreen(camera.view, size, { x: 0, z: -1 });
    expect(p.x).toBeCloseTo(centre.x + 40, 9);
    expect(p.y).toBeCloseTo(centre.y - 25, 9);
    expect(camera.astray).toBe(true);
    camera.frame("close");
    expect(camera.astray).toBe(false);
  });

  test("zooms within its limits, and from far off to the bait", () => {
    const camera = new Cameraman();
    camera.shoot(subject(0, -1), FRAME);
    const [least, most] = scaleLimits(scene, size);
    for (let i = 0; i < 40; i++) camera.zoomBy(1.25);
    while (!camera.shoot(subject(0, -1), FRAME));
    expect(camera.view.scale).toBeCloseTo(most, 6);
    for (let i = 0; i < 80; i++) camera.zoomBy(0.8);
    while (!camera.shoot(subject(0, -1), FRAME));
    expect(camera.view.scale).toBeCloseTo(least, 6);
    camera.frame("water");
    while (!camera.shoot(subject(0, -1), FRAME));
    for (let i = 0; i < 20 && camera.framing === "water"; i++) camera.zoomBy(1.25);
    expect(camera.framing).toBe("close");
  });

  test("cuts where the stage changes its size", () => {
    const camera = new Cameraman();
    camera.shoot(subject(0, -1), FRAME);
    const smaller = { width: 360, height: 296 };
    expect(camera.shoot(subject(0, -1, { size: smaller }), FRAME)).toBe(true);
    expect(camera.view.scale).toBe(closeScale(scene, smaller));
  });
});
