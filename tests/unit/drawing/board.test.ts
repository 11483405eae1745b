import { expect, test } from "vitest";
import {
  boardBoxes,
  boardLayout,
  drawnCurve,
  gridMarks,
  inPane,
  lookedAt,
  movedView,
  onPane,
  sceneOf,
  snapStep,
  wholeView,
} from "../../../src/drawing";
import { distanceToPath } from "../../../src/drawing/geometry";
import { phiOfStation, stationOfPhi } from "../../../src/model/shape";
import { bait, spec } from "../../lib/drawn";

const scene = sceneOf(bait, null, Infinity);
const boxes = boardBoxes(scene, bait);
const MM = { perMetre: 1000, symbol: "mm" };

test("three views at one scale: side and section agree in height, side and view from above in station", () => {
  const { panes, scale, width, height } = boardLayout(boxes, { width: 1100, height: 700 }, null);
  const [side, section, above] = panes;
  expect(side!.y).toBe(section!.y);
  expect(side!.x).toBe(above!.x);
  for (const pane of panes) {
    const { box } = pane;
    expect(pane.x + box.minX * scale).toBeGreaterThanOrEqual(0);
    expect(pane.x + box.maxX * scale).toBeLessThanOrEqual(width);
    expect(pane.y - box.minZ * scale).toBeLessThanOrEqual(height);
  }
  const p = onPane(side!, scale, side!.x - 0.03 * scale, side!.y - 0.005 * scale);
  expect(p.x).toBeCloseTo(-0.03, 12);
  expect(p.z).toBeCloseTo(0.005, 12);
  expect(inPane(side!, scale, side!.x, side!.y)).toBe(true);
  expect(inPane(section!, scale, side!.x, side!.y)).toBe(false);
});

test("one view alone on a narrow page fills its width", () => {
  for (const only of ["side", "above", "section"] as const) {
    const { panes, scale } = boardLayout(boxes, { width: 360, height: 400 }, only);
    expect(panes.map(({ elevation }) => elevation)).toEqual([only]);
    const { box } = panes[0]!;
    const held = boxes[only];
    const used = Math.max(
      ((held.maxX - held.minX) * scale) / (360 - 46),
      ((held.maxZ - held.minZ) * scale) / (400 - 26),
    );
    expect(used).toBeCloseTo(1, 6);
    // A low view has room above and below, evenly.
    expect(box.maxZ - held.maxZ).toBeCloseTo(held.minZ - box.minZ, 12);
    expect((box.maxZ - box.minZ) * scale).toBeGreaterThan(0.7 * (360 - 46));
  }
});

test("the drawn curve is the model's own, to 0.02 mm at any place", () => {
  const points = spec.shape.top.map(({ s, v }): [number, number] => [s * 1e3, v * 1e3]);
  const line = drawnCurve(points, 80)!;
  for (const [s, v] of line)
    expect(Math.abs(v - 1e3 * bait.drawn.edges.top(phiOfStation(s / 1e3, 0.08)))).toBeLessThan(1e-6);
  // Of the model's curve itself, no point lies farther from the drawn line.
  for (let i = 1; i < 400; i++) {
    const phi = (Math.PI * i) / 400;
    const p = { x: 1e3 * stationOfPhi(phi, 0.08), z: 1e3 * bait.drawn.edges.top(phi) };
    expect(
      distanceToPath(
        p,
        line.map(([x, z]) => ({ x, z })),
      ),
    ).toBeLessThan(0.02);
  }
});

test("where stations do not rise there is no curve", () => {
  expect(
    drawnCurve(
      [
        [0, 0],
        [40, 5],
        [39, 5],
        [80, 0],
      ],
      80,
    ),
  ).toBeNull();
});

test("the ruler counts stations aft from the nose, heights from the datum line; inches have a grid of their own", () => {
  const { panes, scale } = boardLayout(boxes, { width: 1100, height: 700 }, null);
  const texts = gridMarks(panes[0]!, scale, MM).flatMap((m) => (m.kind === "text" ? [m] : []));
  for (const words of ["0", "40", "80"]) {
    const tick = texts.find((m) => m.words === words && m.anchor.y === 1);
    expect(tick?.at.x).toBeCloseTo(-Number(words) / 1e3, 9);
  }
  const inches = snapStep(scale, { perMetre: 1 / 0.0254, symbol: "in" }) / 0.0254;
  expect([1, 2, 5].some((m) => Math.abs(Math.log10(inches / m) % 1) < 1e-9)).toBe(true);
});

test("looked at closer, the place under the hand stays there, in every view at one scale", () => {
  const whole = boardLayout(boxes, { width: 1100, height: 700 }, null);
  let view = wholeView(boxes, whole);
  // The whole bait looked at is the whole bait.
  expect(lookedAt(whole, null)).toBe(whole);
  lookedAt(whole, view).panes.forEach((pane, i) => {
    expect(pane.x).toBeCloseTo(whole.panes[i]!.x, 6);
    expect(pane.y).toBeCloseTo(whole.panes[i]!.y, 6);
  });
  for (const [elevation, place] of [
    ["side", { x: -0.012, z: 0.004 }],
    ["above", { x: -0.05, z: 0.003 }],
    ["section", { x: 0.002, z: -0.003 }],
  ] as const) {
    const before = lookedAt(whole, view);
    const pane = before.panes.find((one) => one.elevation === elevation)!;
    const from = { x: pane.x + place.x * before.scale, z: pane.y - place.z * before.scale };
    const to = { x: from.x + 7, z: from.z - 5 };
    view = movedView(view, whole, boxes, elevation, { from, to, factor: 1.6 });
    const after = lookedAt(whole, view);
    expect(after.scale).toBeCloseTo(1.6 * before.scale, 6);
    const now = after.panes.find((one) => one.elevation === elevation)!;
    const there = onPane(now, after.scale, to.x, to.z);
    expect(there.x).toBeCloseTo(place.x, 9);
    expect(there.z).toBeCloseTo(place.z, 9);
    const [side, section, above] = after.panes;
    // Aligned: side and section in height, side and the view from above in station. Their windows stand still.
    expect(side!.y).toBeCloseTo(section!.y, 6);
    expect(side!.x).toBeCloseTo(above!.x, 6);
    after.panes.forEach((one, i) => {
      const { box, x } = whole.panes[i]!;
      expect(one.x + one.box.minX * after.scale).toBeCloseTo(x + box.minX * whole.scale, 6);
    });
  }
});

test("looked at from farther away and along, the bait stays within reach", () => {
  const whole = boardLayout(boxes, { width: 1100, height: 700 }, null);
  const start = wholeView(boxes, whole);
  const p = { x: 300, z: 200 };
  const far = movedView(start, whole, boxes, "side", { from: p, to: p, factor: 1e-6 });
  expect(far.scale).toBeCloseTo(0.6 * whole.scale, 6);
  const away = movedView(start, whole, boxes, "side", { from: p, to: { x: 1e6, z: -1e6 }, factor: 1 });
  expect(away.at.x).toBeCloseTo(boxes.side.minX, 9);
  expect(away.at.z).toBeCloseTo(boxes.side.minZ, 9);
});
