import { describe, expect, test } from "vitest";
import { assemble, MID } from "../../../src/model/bait";
import { hangingHooks } from "../../../src/model/motion/hooks";
import { boxOf, placed } from "../../../src/drawing/geometry";
import { boxOfMarks, pickFrom } from "../../../src/drawing/mark";
import { bodyMarks, ghostMarks, hangingLength, hookMarks, thingOf } from "../../../src/drawing/marks";
import { sceneOf } from "../../../src/drawing/scene";
import { heldStill, hookedHangers, posedMarks, restingPlace } from "../../../src/drawing/still";
import { at, mm } from "../../lib/si";
import { bait, spec } from "../../lib/drawn";

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

const figuresOf = (what: string, layer: string) =>
  scene.figures.filter((f) => f.what === what && f.layer === layer);
const pointsOf = (what: string, layer: string) =>
  figuresOf(what, layer).flatMap((f) => (f.is === "circle" ? [f.at] : f.points));

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
    const plate = boxOf(pointsOf("bib", "behind"));
    expect(plate.maxX - plate.minX).toBeCloseTo(1 * mm, 12);
    expect(plate.maxZ).toBeCloseTo(-3 * mm, 12);
    expect(plate.minZ).toBeCloseTo(-18 * mm, 12);
    const tongue = boxOf(pointsOf("bib", "inside"));
    expect(tongue.minZ).toBeCloseTo(-3 * mm, 12);
    expect(tongue.maxZ).toBeCloseTo(-1 * mm, 12);
  });

  test("a bent bib: both parts are as thick as the stock, and meet at the root on the line that halves the bend", () => {
    const bent = sceneOf(assemble({ ...spec, bib: { ...spec.bib!, slotAngle: 0 } }), null, Infinity);
    const points = (layer: string) =>
      bent.figures
        .filter((f) => f.what === "bib" && f.layer === layer)
        .flatMap((f) => (f.is === "polygon" ? f.points : []));
    const [plate, tongue] = [points("behind"), points("inside")];
    // The tongue lies level aft of the root, half of the stock above and below it.
    const box = boxOf(tongue);
    expect(box.maxZ - box.minZ).toBeCloseTo(1 * mm, 12);
    expect((box.maxZ + box.minZ) / 2).toBeCloseTo(-3 * mm, 12);
    // The plate hangs square to it.
    expect(boxOf(plate).maxX - boxOf(plate).minX).toBeCloseTo(1 * mm, 12);
    expect(boxOf(plate).minZ).toBeCloseTo(-18 * mm, 12);
    const shared = plate.filter((p) => tongue.some((q) => Math.hypot(p.x - q.x, p.z - q.z) < 1e-12));
    expect(shared).toHaveLength(2);
  });

  test("a wire along the datum line is inside from nose to tail and stands out by 4 mm at either end", () => {
    const inside = figuresOf("wire:harness", "inside");
    expect(inside).toHaveLength(1);
    const box = boxOf(pointsOf("wire:harness", "inside"));
    expect(box.maxX).toBeCloseTo(0, 6);
    expect(box.minX).toBeCloseTo(-80 * mm, 6);
    const outside = figuresOf("wire:harness", "behind");
    expect(outside).toHaveLength(2);
    const [nose, tail] = outside.map((f) => boxOf(f.is === "path" ? f.points : []));
    expect(nose?.maxX).toBeCloseTo(4 * mm, 9);
    expect(tail?.minX).toBeCloseTo(-84 * mm, 9);
  });

  test("ballast and fittings are spheres of their volumes (r³ = 3V/4π), a given hole a cylinder", () => {
    const ball = (what: string, role: string): number => {
      const found = scene.figures.find((f) => f.what === what && f.role === role);
      return found?.is === "circle" ? (4 / 3) * Math.PI * found.radius ** 3 : 0;
    };
    expect(ball("ballast:belly", "metal")).toBeCloseTo(4e-3 / 7310, 15);
    // A given hole is a cylinder as deep as wide, V = π d³/4, seen from the side.
    const hole = scene.figures.find((f) => f.what === "ballast:belly" && f.is === "polygon");
    const box = boxOf(hole?.is === "polygon" ? hole.points : []);
    expect((Math.PI / 4) * (box.maxX - box.minX) ** 2 * (box.maxZ - box.minZ)).toBeCloseTo(0.7e-6, 15);
    expect(ball("ballast:strip", "metal")).toBeGreaterThan(0);
    expect(ball("ballast:strip", "hole")).toBe(0);
    expect(ball("fitting:eyes", "pad")).toBeCloseTo(1e-7, 15);
    // An eye's pupil is half as wide.
    expect(ball("fitting:eyes", "pupil")).toBeCloseTo(1e-7 / 8, 15);
  });

  test("chamber, balls and centres come from the assembled bait", () => {
    expect(boxOf(pointsOf("chamber:rattle", "inside"))).toEqual({
      minX: -56 * mm,
      maxX: -40 * mm,
      minZ: -4 * mm,
      maxZ: 2 * mm,
    });
    expect(scene.balls.map((b) => b.radius)).toEqual([2 * mm, 2 * mm]);
    expect(scene.balls).toEqual(bait.balls(MID));
    expect(scene.G).toEqual(bait.rigid(MID).G);
    expect(scene.B).toEqual(bait.rigid(MID).B);
  });

  test("a hook is drawn as long as it swings, its ring included; a bare hanger has none", () => {
    const swinging = hangingHooks(bait);
    const drawn = hookedHangers(scene);
    expect(drawn.map((h) => h.name)).toEqual(["belly", "tail"]);
    expect(drawn.map((h) => h.name)).toEqual(swinging.map((h) => h.name));
    drawn.forEach((h, i) => {
      expect(hangingLength(h)).toBeCloseTo(swinging[i]?.length ?? NaN, 12);
      const lowest = boxOfMarks(hookMarks(h)).minZ;
      // The bend's outer edge ends there, but for half the wire's thickness.
      expect(Math.abs(lowest + (swinging[i]?.length ?? NaN))).toBeLessThan(1.5 * mm);
    });
    expect(scene.hangers.find((h) => h.name === "bare")?.hookLength).toBeNull();
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
    expect(thingOf("ballast:belly")).toEqual({ kind: "ballast", name: "belly" });
    expect(thingOf("tie")).toEqual({ kind: "tie eye", name: null });
  });

  test("a hook hangs down from its eye by its length, ring first", () => {
    const hanger = scene.hangers[0];
    if (!hanger) throw new Error("no hanger");
    const marks = hookMarks(hanger);
    const low = boxOfMarks(marks).minZ;
    const ring = hanger.ringRadius ?? 0;
    // A ring of 0.1 g is 6 mm across; with a treble of 0.37 g it hangs 16 mm · ∛(0.47/0.37) = 17.33 mm (from memory).
    expect(ring).toBeCloseTo(3 * mm, 9);
    expect(low).toBeCloseTo(-17.33 * mm, 5);
    expect(marks.every((m) => m.what === "hook:belly")).toBe(true);
  });

  test("the pinned variant is told apart by hatching and dashes, not by colour alone", () => {
    const marks = ghostMarks(scene);
    expect(marks.flatMap((m) => (m.kind === "lines" ? m.paths : [])).length).toBeGreaterThan(10);
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
    // The tail's hook of eight times 0.37 g is 32 mm long and hangs from height 0; the tie eye stands 4 mm ahead.
    expect(box.minZ).toBeCloseTo(-32 * mm, 9);
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
