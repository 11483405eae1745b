import { describe, expect, test } from "vitest";
import { MID } from "../../../src/model/bait";
import { boxOf, placed } from "../../../src/ui/stage/geometry";
import { bodyMarks, ghostMarks, hookMarks, pickFrom, wordsOf } from "../../../src/ui/stage/marks";
import { sceneOf } from "../../../src/ui/stage/scene";
import { heldStill, hookedHangers, posedMarks, restingPlace } from "../../../src/ui/stage/still";
import { at, bait, mm, spec } from "./bait";

const scene = sceneOf(
  bait,
  { line: { material: "nylon", diameter: 2.5e-4, density: 1140, EA: 100 }, lineOut: 20, rodTip: 1 },
  3,
);

const area = (polygon: readonly { x: number; z: number }[]): number =>
  Math.abs(
    polygon.reduce((sum, a, i) => {
      const b = polygon[(i + 1) % polygon.length] ?? a;
      return sum + (a.x * b.z - b.x * a.z) / 2;
    }, 0),
  );

describe("sceneOf", () => {
  test("the outline runs from the nose tip to the tail and to the greatest heights of the drawing", () => {
    const box = boxOf(scene.outline);
    // Knots of the drawing: nose at 0, tail at 80 mm, greatest height and depth 10 mm; the polygon's chords cut
    // the crest by less than 0.01 mm at 160 points.
    expect(box.maxX).toBeCloseTo(0, 9);
    expect(box.minX).toBeCloseTo(-80 * mm, 9);
    expect(box.maxZ).toBeCloseTo(10 * mm, 5);
    expect(box.minZ).toBeCloseTo(-10 * mm, 5);
  });

  test("shading bands cover the side view once, light above and dark below", () => {
    // Each band reaches under the next by a hair, so their areas add up to a little more than the outline's.
    const bands = scene.tones.reduce((sum, t) => sum + area(t.polygon), 0);
    expect(bands / area(scene.outline)).toBeGreaterThan(0.999);
    expect(bands / area(scene.outline)).toBeLessThan(1.35);
    const first = scene.tones[0];
    const last = scene.tones.at(-1);
    expect(first?.light).toBeGreaterThan(0.8);
    expect(last?.light).toBeLessThan(0.2);
    for (const t of scene.tones) expect(t.light >= 0 && t.light <= 1).toBe(true);
  });

  test("a bib square to the body hangs from its root by its length, as thick as it is, its tongue above", () => {
    const plate = boxOf(scene.bib?.plate ?? []);
    expect(plate.maxX - plate.minX).toBeCloseTo(1 * mm, 12);
    expect(plate.maxZ).toBeCloseTo(-3 * mm, 12);
    expect(plate.minZ).toBeCloseTo(-18 * mm, 12);
    const tongue = boxOf(scene.bib?.tongue ?? []);
    expect(tongue.minZ).toBeCloseTo(-3 * mm, 12);
    expect(tongue.maxZ).toBeCloseTo(-1 * mm, 12);
  });

  test("a wire along the datum line is inside from nose to tail and stands out by 4 mm at either end", () => {
    const wire = scene.wires[0];
    expect(wire?.inside).toHaveLength(1);
    expect(wire?.outside).toHaveLength(2);
    const inside = boxOf(wire?.inside.flat() ?? []);
    expect(inside.maxX).toBeCloseTo(0, 6);
    expect(inside.minX).toBeCloseTo(-80 * mm, 6);
    const [nose, tail] = (wire?.outside ?? []).map((path) => boxOf(path));
    expect(nose?.maxX).toBeCloseTo(4 * mm, 9);
    expect(tail?.minX).toBeCloseTo(-84 * mm, 9);
  });

  test("ballast, holes and fittings are spheres of their volumes (r³ = 3V/4π)", () => {
    const belly = scene.ballast[0];
    expect((4 / 3) * Math.PI * (belly?.radius ?? 0) ** 3).toBeCloseTo(4e-3 / 7310, 15);
    expect((4 / 3) * Math.PI * (belly?.hole ?? 0) ** 3).toBeCloseTo(0.7e-6, 15);
    expect(scene.ballast[1]?.hole).toBeNull();
    expect((4 / 3) * Math.PI * (scene.fittings[0]?.radius ?? 0) ** 3).toBeCloseTo(1e-7, 15);
    expect(scene.fittings[0]?.looksLikeEye).toBe(true);
  });

  test("chamber, balls and centres come from the assembled bait", () => {
    expect(boxOf(scene.chambers[0]?.box ?? [])).toEqual({
      minX: -56 * mm,
      maxX: -40 * mm,
      minZ: -4 * mm,
      maxZ: 2 * mm,
    });
    expect(scene.balls.map((b) => b.radius)).toEqual([2 * mm, 2 * mm]);
    expect(scene.balls.map((b) => b.at)).toEqual(bait.ballCentres(MID));
    expect(scene.G).toEqual(bait.rigid(MID).G);
    expect(scene.B).toEqual(bait.rigid(MID).B);
  });

  test("hooks grow with the cube root of their mass; a bare hanger has none", () => {
    const [belly, bare, tail] = scene.hangers;
    expect((tail?.hookLength ?? 0) / (belly?.hookLength ?? 1)).toBeCloseTo(2, 9);
    expect(bare?.hookLength).toBeNull();
    expect(hookedHangers(scene).map((h) => h.name)).toEqual(["belly", "tail"]);
  });

  test("refuses a depth of water that is none", () => {
    expect(() => sceneOf(bait, null, 0)).toThrow(/depth 0/);
    expect(() => sceneOf(bait, null, Number.NaN)).toThrow(/depth NaN/);
    expect(sceneOf(bait, null, Infinity).rod).toBeNull();
  });
});

describe("marks", () => {
  test("inside parts are drawn with the inside only", () => {
    const seen = (xray: boolean): Set<string | null> => new Set(bodyMarks(scene, xray).map((m) => m.what));
    for (const what of ["ballast:belly", "chamber:rattle"]) {
      expect(seen(true).has(what)).toBe(true);
      expect(seen(false).has(what)).toBe(false);
    }
    for (const what of ["body", "bib", "tie", "hanger:bare", "fitting:eyes", "ballast:strip", "wire:harness"])
      expect(seen(false).has(what)).toBe(true);
  });

  test("a pointer finds what lies in front", () => {
    const marks = bodyMarks(scene, true);
    const tolerance = 0.3 * mm;
    expect(pickFrom(marks, at(28, -5), tolerance)).toBe("ballast:belly");
    expect(pickFrom(marks, at(9, 2), tolerance)).toBe("fitting:eyes");
    expect(pickFrom(marks, at(5, -12), tolerance)).toBe("bib");
    expect(pickFrom(marks, at(-4, 0), tolerance)).toBe("tie");
    expect(pickFrom(marks, at(48, 1), tolerance)).toBe("chamber:rattle");
    expect(pickFrom(marks, at(20, 4), tolerance)).toBe("body");
    expect(pickFrom(marks, at(40, 30), tolerance)).toBeNull();
    expect(pickFrom(bodyMarks(scene, false), at(28, -5), tolerance)).toBe("body");
    expect(wordsOf("ballast:belly")).toBe("ballast ‘belly’");
    expect(wordsOf("tie")).toBe("tie eye");
  });

  test("a hook hangs down from its eye by its length, ring first", () => {
    const hanger = scene.hangers[0];
    if (!hanger) throw new Error("no hanger");
    const marks = hookMarks(hanger);
    const low = Math.min(
      ...marks.flatMap((m) => (m.kind === "circle" ? [m.at.z - m.radius] : m.points.map((p) => p.z))),
    );
    const ring = hanger.ringRadius ?? 0;
    // Treble of 0.37 g: 17 mm; ring of 0.1 g: 6 mm across (the sizes that the swinging hooks have).
    expect(ring).toBeCloseTo(3 * mm, 9);
    expect(low).toBeCloseTo(-17 * mm - 1.5 * ring, 5);
    expect(marks.every((m) => m.what === "hook:belly")).toBe(true);
  });

  test("the pinned variant is told apart by hatching and dashes, not by colour alone", () => {
    const marks = ghostMarks(scene);
    expect(marks.filter((m) => m.kind === "path").length).toBeGreaterThan(10);
    expect(marks.some((m) => m.stroke?.dash)).toBe(true);
  });
});

describe("a bait that no run has placed", () => {
  test("is held level under the surface with its hooks straight down", () => {
    const nose = restingPlace(scene);
    expect(nose.z).toBeLessThan(0);
    expect(nose.z).toBeGreaterThanOrEqual(-scene.depth / 2);
    const held = heldStill(scene, nose, 0);
    expect(held.eye).toEqual(placed(spec.tie, nose, 0));
    expect(held.hooks.every((h) => h.angle === 0)).toBe(true);
    const box = scene.extent;
    // The tail's hook of eight times 0.37 g is 34 mm long and hangs from height 0; the tie eye stands 4 mm ahead.
    expect(box.minZ).toBeCloseTo(-34 * mm, 9);
    expect(box.maxX).toBeCloseTo(4 * mm, 12);
  });

  test("its marks turn with it and stay with its nose", () => {
    const nose = { x: 3, z: -1 };
    const tie = posedMarks(scene, heldStill(scene, nose, Math.PI / 2), true).find((m) => m.what === "tie");
    if (tie?.kind !== "circle") throw new Error("no tie eye");
    // 4 mm ahead of the nose, turned nose-up by a right angle: 4 mm above it.
    expect(tie.at.x).toBeCloseTo(0, 12);
    expect(tie.at.z).toBeCloseTo(4 * mm, 12);
  });
});
