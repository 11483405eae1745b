import { describe, expect, it } from "vitest";
import { sym3, wrench } from "../../../src/model/base";
import { Constraint, steadyPart } from "../../../src/model/motion/constraint";
import { Integrator } from "../../../src/model/motion/integrator";

describe("the tie eye of a bait that turns about its G without any force", () => {
  it("is accelerated as the second difference of its path says: towards G", () => {
    const mass = { ...sym3(), a11: 0.01, a33: 0.01, a55: 5e-6 };
    const bait = new Integrator(
      { evaluate: () => undefined, force: wrench(), mass, entered: sym3() },
      { x: 0, z: 0 },
      1e-3,
    );
    const held = new Constraint();
    const spin = 7;
    const pitch = 0.4;
    const tie = { x: 0.04, z: 0.01 };
    bait.stand({ x: 0, z: -1, pitch, sin: Math.sin(pitch), cos: Math.cos(pitch) });
    bait.begin({ x: 0, z: 0, q: spin });
    bait.read(held);
    bait.rates(held);
    const eye = { x: 0, z: 0, vx: 0, vz: 0, ax: 0, az: 0, wxx: 0, wxz: 0, wzz: 0 };
    bait.readEye(tie, { x: 0, z: 0, q: spin }, eye);
    const path = (t: number): { x: number; z: number } => {
      const a = pitch + spin * t;
      return {
        x: tie.x * Math.cos(a) - tie.z * Math.sin(a),
        z: -1 + tie.x * Math.sin(a) + tie.z * Math.cos(a),
      };
    };
    const d = 1e-3;
    const second = (key: "x" | "z"): number => (path(d)[key] - 2 * path(0)[key] + path(-d)[key]) / (d * d);
    // difference of second order: off by (q d)²/12 of the value, round-off of 1e-16/d² beside
    expect(eye.ax).toBeCloseTo(second("x"), 4);
    expect(eye.az).toBeCloseTo(second("z"), 4);
    expect(Math.abs(eye.ax)).toBeGreaterThan(1);
  });
});

describe("the steady part of a constraint force", () => {
  it.each([
    [5, 0, 0],
    [-5, 0, 0],
    [5, 3, 3],
    [3, 5, 3],
    [-5, -3, -3],
    [-3, -5, -3],
    [5, -3, 0],
    [-5, 3, 0],
  ])("of %f N now and %f N before is %f N: one hit is no pull", (now, before, steady) => {
    expect(steadyPart(now, before)).toBeCloseTo(steady, 15);
  });
});
