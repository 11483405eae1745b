import { expect, test } from "vitest";
import type { Sym3 } from "../../../src/model/base";
import { createEvaluator, prepareSwimmer } from "../../../src/model/forces";
import { at, minnow, openWater } from "../../lib/towed";

const KEYS = ["a11", "a13", "a15", "a33", "a35", "a55"] as const;
const deg = Math.PI / 180;

// What goes under brings its added mass into the mass matrix. The slam takes the momentum of just this mass, in all three
// directions: so force and moment of body and bib cannot go separate ways.
test.each([
  { bib: 40, pitch: -10, from: 1, to: -1, what: "all at once" },
  { bib: 40, pitch: -80, from: 0.1, to: 0.03, what: "nose first, the bib and a part of the body" },
  { bib: null, pitch: -80, from: 0.03, to: 0.005, what: "without a bib" },
])("what goes under is taken into the mass matrix: $what", ({ bib, pitch, from, to }) => {
  const evaluator = createEvaluator(prepareSwimmer(minnow(bib)), openWater);
  const mass = (Z: number): Sym3 => {
    evaluator.evaluate(at({ Z, pitch: pitch * deg }));
    return { ...evaluator.mass };
  };
  const [before, after] = [mass(from), mass(to)];
  expect(after.a33).toBeGreaterThan(before.a33);
  for (const key of KEYS) {
    const grown = after[key] - before[key];
    expect(Math.abs(evaluator.entered[key] - grown), key).toBeLessThan(1e-12 * Math.abs(after[key]) + 1e-18);
  }
  // coming out again, nothing enters
  mass(from);
  for (const key of KEYS) expect(evaluator.entered[key]).toBe(0);
});
