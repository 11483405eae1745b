import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compile, parseScenario } from "../../../src/document";
import { freeBody, momentAbout, scaleFor, sceneOf } from "../../../src/drawing";
import { record } from "../../../src/model/motion";
import { tubSetup } from "../../../src/runner";

const read = parseScenario(readFileSync("scenarios/ellipsoid-80.json", "utf8"));
if (!read.ok) throw new Error("refused");
const { ballast: _, hangers: __, ...bare } = read.scenario.bait;
const compiled = compile({ ...read.scenario, bait: { ...bare, ballast: [], hangers: [] }, corrections: [] });
const { bait, around } = compiled;
const scene = sceneOf(bait, null, around.depth);
const recording = record(tubSetup(compiled, { depth: 1.2, pitch: 0, duration: 1 }));

describe("a free body", () => {
  it("has the push of the water that moves along: Lamb's added mass of an ellipsoid from rest", () => {
    // Lamb, Hydrodynamics (1932), art. 114: k = α₀/(2 − α₀) for the semi-axes 40 : 8 : 10 and motion along the 10.
    // α₀ = abc ∫ dλ / ((c² + λ) Δ), here by a plain sum over t = λ/(1 + λ).
    const [a, b, c] = [40, 8, 10];
    let alpha = 0;
    const steps = 400_000;
    for (let i = 0; i < steps; i++) {
      const t = (i + 0.5) / steps;
      const l = (1000 * t) / (1 - t);
      const dl = 1000 / (1 - t) ** 2 / steps;
      alpha += (a * b * c * dl) / ((c * c + l) * Math.sqrt((a * a + l) * (b * b + l) * (c * c + l)));
    }
    const k = alpha / (2 - alpha);
    const { mass, displaced } = bait.rigid({ end: "mid", face: "floor" });
    const water = around.density * displaced;
    const net = (water - mass) * 9.80665;
    // From rest there is no drag: a = F/(m + k ρV), and the water pushes back with k ρV a.
    const wanted = -(net * k * water) / (mass + k * water);
    const first = freeBody(recording, 1, bait, scene);
    const added = first.forces.find(({ key }) => key === "added");
    // A sixtieth of a second after the release drag is some per cent of it; strip theory is within 3 % of Lamb here.
    expect((added?.force.z ?? 0) / wanted).toBeGreaterThan(0.88);
    expect((added?.force.z ?? 0) / wanted).toBeLessThan(1.05);
  });

  it("has a sum that is the mass times the acceleration, and none at a steady rise", () => {
    const late = freeBody(recording, 50, bait, scene);
    const weight = late.forces.find(({ key }) => key === "weight");
    expect(Math.hypot(late.sum.x, late.sum.z)).toBeLessThan(0.02 * Math.abs(weight?.force.z ?? 0));
  });

  it("leaves the water out where a moment has no neighbours", () => {
    expect(freeBody(recording, 0, bait, scene).forces.some(({ key }) => key === "added")).toBe(false);
    expect(
      freeBody(recording, recording.frames - 1, bait, scene).forces.some(({ key }) => key === "added"),
    ).toBe(false);
  });

  it("turns about a point by force times lever", () => {
    const force = { force: { x: 0, z: 2 }, moment: 0.5 };
    expect(momentAbout({ x: 0, z: 0 }, { x: 0, z: 0 }, force)).toBe(0.5);
    // An upward force ahead of the point lifts the nose.
    expect(momentAbout({ x: -0.1, z: 0 }, { x: 0, z: 0 }, force)).toBeCloseTo(0.7, 12);
    expect(momentAbout({ x: 0, z: -0.1 }, { x: 0, z: 0 }, { force: { x: 3, z: 0 }, moment: 0 })).toBeCloseTo(
      -0.3,
      12,
    );
  });

  it("is drawn to a round scale that holds the longest arrow", () => {
    expect(scaleFor(0.131, 0.08)).toBe(0.05);
    expect(scaleFor(0.02, 0.08)).toBe(0.005);
  });
});
