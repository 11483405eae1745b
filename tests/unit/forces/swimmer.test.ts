import { describe, expect, test } from "vitest";
import {
  accelerations,
  createEvaluator,
  energy,
  FORCE_LEGEND,
  FORCES,
  massMatrix,
  prepareSwimmer,
  totalWrench,
  type Swimmer,
} from "../../../src/model/forces";
import { wrench } from "../../../src/model/base";
import { at, freshWater, minnow, openWater } from "../../lib/towed";

const bait = minnow(40);
const swimmer = prepareSwimmer(bait);

/** Kinetic energy of the added mass alone for a motion given at the nose tip, per unit density. */
function addedEnergy(of: Swimmer, uNose: number, wNose: number, q: number): number {
  const { G } = of.rigid;
  const u = uNose - q * G.z;
  const w = wNose + q * G.x;
  let sum = 0;
  for (const a of [of.addedBody, of.addedBib])
    sum +=
      (a.a11 * u * u + a.a33 * w * w + a.a55 * q * q) / 2 + a.a13 * u * w + a.a15 * u * q + a.a35 * w * q;
  return sum;
}

describe("swimmer", () => {
  test("strips add up to the body's volume, centroid and length", () => {
    const { shape, rigid } = { shape: bait.shape, rigid: swimmer.rigid };
    const sum = (f: (s: (typeof swimmer.strips)[number]) => number): number =>
      swimmer.strips.reduce((total, s) => total + f(s), 0);
    const V = shape.volume;
    expect(Math.abs(sum((s) => s.volume) / V - 1)).toBeLessThan(1e-12);
    expect(Math.abs(sum((s) => s.volume * s.x) / V + rigid.G.x - shape.centroid.x)).toBeLessThan(1e-12);
    expect(Math.abs(sum((s) => s.volume * s.centroidZ) / V + rigid.G.z - shape.centroid.z)).toBeLessThan(
      1e-12,
    );
    expect(Math.abs(sum((s) => s.ds) / shape.length - 1)).toBeLessThan(1e-6);
    // the squares that the matrix is made of are the matrix
    expect(Math.abs(sum((s) => s.added) / swimmer.addedBody.a33 - 1)).toBeLessThan(1e-12);
    expect(Math.abs(sum((s) => s.added * s.addedX) / swimmer.addedBody.a35 - 1)).toBeLessThan(1e-9);
    const pitch = sum((s) => s.added * s.addedX ** 2) + swimmer.hull.surge * swimmer.hull.centroid.z ** 2;
    expect(Math.abs(pitch / swimmer.addedBody.a55 - 1)).toBeLessThan(1e-12);
  });

  test("32 strips are enough: forces and matrix within 1e-4 of 256", () => {
    const many = prepareSwimmer(bait, { strips: 256 });
    for (const state of [at({ u: 0.9, w: 0.2, q: 1 }), at({ u: -0.2, w: -0.3, q: -8 }), at({ w: 0.05 })]) {
      const [a, b] = [totalWrench(swimmer, state, freshWater), totalWrench(many, state, freshWater)];
      const size = Math.hypot(b.x, b.z);
      expect(Math.abs(a.x - b.x)).toBeLessThan(1e-4 * size);
      expect(Math.abs(a.z - b.z)).toBeLessThan(1e-4 * size);
      expect(Math.abs(a.m - b.m)).toBeLessThan(1e-4 * size * 0.046); // over half the length
    }
    for (const key of ["a11", "a33", "a55"] as const)
      expect(Math.abs(swimmer.addedBody[key] / many.addedBody[key] - 1)).toBeLessThan(1e-4);
  });

  test("the added mass does not depend on where G is", () => {
    const apart = prepareSwimmer(bait, { hooksApart: true });
    expect(Math.abs(apart.rigid.G.x - swimmer.rigid.G.x)).toBeGreaterThan(1e-4);
    for (const [u, w, q] of [
      [1, 0, 0],
      [0, 1, 0],
      [0.3, -0.2, 9],
      [0, 0, 1],
    ] as const)
      expect(Math.abs(addedEnergy(apart, u, w, q) / addedEnergy(swimmer, u, w, q) - 1)).toBeLessThan(1e-9);
  });

  test("hooks that are bodies of their own leave mass, displacement and drag", () => {
    const apart = prepareSwimmer(bait, { hooksApart: true });
    const hung = bait.items.filter((i) => i.group === "hangers");
    const mass = hung.reduce((sum, i) => sum + i.mass, 0);
    expect(Math.abs(swimmer.rigid.mass - apart.rigid.mass - mass)).toBeLessThan(1e-12);
    expect(apart.hooks).toEqual([]);
    expect(swimmer.hooks.map((h) => h.name)).toEqual(["belly", "tail"]);
    expect(Math.abs(swimmer.hooks.reduce((sum, h) => sum + h.mass, 0) - mass)).toBeLessThan(1e-12);
    expect(swimmer.rigid).toEqual(bait.rigid(swimmer.options.side));
  });

  test("options that cannot be are refused", () => {
    expect(() => prepareSwimmer(bait, { bibFactor: 0 })).toThrow(/bib factor 0/);
    expect(() => prepareSwimmer(bait, { munkShare: 2 })).toThrow(/Munk share 2/);
    expect(() => prepareSwimmer(bait, { strips: 7 })).toThrow(/7 strips/);
    expect(() => createEvaluator(swimmer, { ...freshWater, density: 0 })).toThrow(/density 0/);
    expect(() => createEvaluator(swimmer, { ...openWater, current: { x: 0, z: 0.1 } })).toThrow(
      /still surface/,
    );
    expect(() => totalWrench(swimmer, at({ u: NaN }), freshWater)).toThrow(/no longer a number: u NaN/);
  });
});

describe("evaluator", () => {
  const states = [
    at({ u: 0.8, w: -0.2, q: 3, pitch: -0.4 }),
    at({ u: 0.3, w: 0.1, q: -2, pitch: 0.2, Z: -0.004 }),
  ];

  test.each(states)("parts, records and sum agree", (state) => {
    const evaluator = createEvaluator(swimmer, openWater);
    evaluator.evaluate(state);
    const sum = wrench();
    for (const force of FORCES) {
      const one = wrench();
      force.add(swimmer, state, openWater, one);
      expect(evaluator.parts.get(force.key)).toEqual(one);
      force.add(swimmer, state, openWater, sum);
    }
    for (const key of ["x", "z", "m"] as const)
      expect(Math.abs(sum[key] - evaluator.force[key])).toBeLessThan(1e-14);
    expect(totalWrench(swimmer, state, openWater)).toEqual(evaluator.force);
    expect(energy(swimmer, state, openWater)).toBe(evaluator.energy());
  });

  test.each(states)("accelerations solve M ν̇ = force + inertia", (state) => {
    const evaluator = createEvaluator(swimmer, openWater);
    evaluator.evaluate(state);
    const [du, dw, dq] = accelerations(swimmer, state, openWater);
    const m = massMatrix(swimmer, state, openWater);
    const { force: f, inertia: k } = evaluator;
    expect(Math.abs(m.a11 * du + m.a13 * dw + m.a15 * dq - f.x - k.x)).toBeLessThan(1e-14);
    expect(Math.abs(m.a13 * du + m.a33 * dw + m.a35 * dq - f.z - k.z)).toBeLessThan(1e-14);
    expect(Math.abs(m.a15 * du + m.a35 * dw + m.a55 * dq - f.m - k.m)).toBeLessThan(1e-16);
  });

  test("a further force is felt with the whole mass", () => {
    const evaluator = createEvaluator(swimmer, freshWater, []);
    evaluator.evaluate(at({}));
    const [du] = evaluator.accelerate({ x: 0.01, z: 0, m: 0 }, [0, 0, 0]);
    expect(du).toBeLessThan(0.01 / swimmer.rigid.mass);
    expect(du).toBeGreaterThan(0.2 * (0.01 / swimmer.rigid.mass));
  });

  test("in the air: weight alone, no added mass", () => {
    const evaluator = createEvaluator(swimmer, openWater);
    evaluator.evaluate(at({ u: 1, w: 1, q: 3, Z: 1 }));
    expect(evaluator.mass.a33).toBe(swimmer.rigid.mass);
    expect(evaluator.mass.a35).toBe(0);
    expect(Math.abs(evaluator.force.x)).toBe(0);
    expect(Math.abs(evaluator.force.z + swimmer.rigid.mass * 9.80665)).toBeLessThan(1e-15);
    expect(evaluator.bodyShare).toBe(0);
  });

  test("the legend: one entry each, all letters different, the line among them", () => {
    const keys = FORCE_LEGEND.map((f) => f.key);
    expect(keys.slice(0, FORCES.length)).toEqual(FORCES.map((f) => f.key));
    expect(keys).toContain("line");
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(FORCE_LEGEND.map((f) => f.letter)).size).toBe(keys.length);
    // eight colours that all can tell apart; forces beyond the eighth share one, and their letters tell them apart
    expect(new Set(FORCE_LEGEND.map((f) => f.colour)).size).toBe(Math.min(8, keys.length));
    for (const f of FORCE_LEGEND) {
      expect(f.letter).toMatch(/^[A-Z]{1,2}$/);
      expect(f.colour).toMatch(/^#[0-9A-F]{6}$/);
      expect(f.formula.length * f.source.length).toBeGreaterThan(0);
    }
  });
});
