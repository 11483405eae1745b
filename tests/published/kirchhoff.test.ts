import { describe, expect, test } from "vitest";
import { createEvaluator, prepareSwimmer } from "../../src/model/forces";
import { at, ellipsoidBait, freshWater, wood } from "../lib/towed";
import { advance } from "../unit/forces/rk4";

/*
 * A neutrally buoyant spheroid, a = 50 mm, b = 12.5 mm, coasting in an ideal fluid of density 1000: Kirchhoff's equations
 * (Lamb 1932, arts 124–126), integrated by an independent solver to better than the digits given (docs/model.md §8).
 */
const water = { ...freshWater, density: 1000, gravity: 0 };
const swimmer = prepareSwimmer(ellipsoidBait(0.05, 0.0125, 0.0125, { body: { ...wood, density: 1000 } }));

/** Coasts for a time in steps of 0.05 ms. */
function coast(seconds: number) {
  const evaluator = createEvaluator(swimmer, water, []);
  const state = at({ u: 1, w: -0.05 }); // 0.05 m/s downward in body axes
  for (let i = 0; i < Math.round(seconds / 5e-5); i++)
    advance(state, 5e-5, (s) => {
      evaluator.evaluate(s);
      return evaluator.accelerate(null, [0, 0, 0]);
    });
  evaluator.evaluate(state);
  return { state, evaluator };
}

describe("spheroid coasting in an ideal fluid", () => {
  test("masses and inertia", () => {
    const { evaluator } = coast(0);
    // printed to seven digits
    expect(Math.abs(evaluator.mass.a11 - 0.0353939)).toBeLessThan(6e-8);
    expect(Math.abs(evaluator.mass.a33 - 0.0608605)).toBeLessThan(6e-8);
    expect(Math.abs(evaluator.mass.a55 - 2.795419e-5)).toBeLessThan(6e-12);
  });

  test("after 0.2 s", () => {
    const { state } = coast(0.2);
    // printed to five decimals: half a unit of the last, and 1e-6
    expect(Math.abs(state.u - -0.64822)).toBeLessThan(6e-6);
    expect(Math.abs(Math.abs(state.w) - 0.44564)).toBeLessThan(6e-6);
    expect(Math.abs(state.q - 17.52678)).toBeLessThan(6e-6);
    expect(Math.abs(state.pitch - 2.18715)).toBeLessThan(6e-6);
  });

  test("after 0.5 s energy and momentum are unchanged", () => {
    const { state, evaluator } = coast(0.5);
    expect(Math.abs(evaluator.energy() - 0.017773015)).toBeLessThan(6e-10);
    const { mass } = evaluator;
    const pu = mass.a11 * state.u;
    const pw = mass.a33 * state.w;
    const [c, s] = [Math.cos(state.pitch), Math.sin(state.pitch)];
    // world momentum at the start: m₁·1 along X, −m₃·0.05 along Z
    expect(Math.abs(pu * c - pw * s - mass.a11)).toBeLessThan(1e-9);
    expect(Math.abs(pu * s + pw * c - -0.05 * mass.a33)).toBeLessThan(1e-9);
  });
});
