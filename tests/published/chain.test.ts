import { expect, test } from "vitest";
import { AIR, run } from "../unit/line/harness";

// A chain that hangs from one end swings with ω_n = (j_{0,n}/2)√(g/L), in the shape J₀(j_{0,n}√(x/L)), x from the free end
// (D. Bernoulli 1733; Lamb, Dynamics 1923, art. 109); j_{0,1} = 2.404825558 (Abramowitz & Stegun 1964, table 9.5).
const J01 = 2.404825558;
const G = 9.80665;

/** J₀ by its series (Abramowitz & Stegun 9.1.12). */
function j0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 30; k++) {
    term *= -(x * x) / 4 / (k * k);
    sum += term;
  }
  return sum;
}

test("a hanging chain: period and shape of its slowest swing", () => {
  const spec = { material: "chain", diameter: 1e-3, density: 7800, EA: 1e4 };
  const perMetre = 7800 * (Math.PI / 4) * 1e-6;
  const a = 0.03;
  // Places of the first shape, spread by length.
  const start = Array.from({ length: 401 }, (_, i) => ({
    x: a * j0(J01 * Math.sqrt(i / 400)),
    z: -1 + i / 400,
  }));
  const first = 1 / 24 / 3;
  const crossings: number[] = [];
  let before = 0;
  let turned: { x: number; z: number }[] = [];
  let furthest = 0;
  run(
    {
      spec,
      water: AIR,
      // half the lowest segment's mass stands for the free end
      mass: (perMetre * first) / 2,
      from: { x: a, z: -1 },
      // the line itself gives the half segment's weight
      force: () => ({ x: 0, z: 0 }),
      rod: () => ({ x: 0, z: 0, vx: 0, vz: 0, length: 1, free: false }),
      options: { start },
      duration: 12,
    },
    (s, line) => {
      const nodes = line.nodes();
      const middle = nodes[12]?.x ?? 0;
      if (before < 0 && middle >= 0) crossings.push(s.t);
      before = middle;
      // after six swings, the shape where it turns
      if (s.t > 10 && (nodes[0]?.x ?? 0) > furthest) {
        furthest = nodes[0]?.x ?? 0;
        turned = nodes;
      }
    },
  );
  const period = ((crossings.at(-1) ?? NaN) - (crossings[0] ?? NaN)) / (crossings.length - 1);
  expect(crossings.length).toBeGreaterThanOrEqual(7);
  expect(Math.abs(period / ((4 * Math.PI) / (J01 * Math.sqrt(G))) - 1)).toBeLessThan(0.002); // asked for: 2 %
  let s = 0;
  turned.forEach((p, i) => {
    const share = p.x / furthest;
    expect(Math.abs(share - j0(J01 * Math.sqrt(s)))).toBeLessThan(0.02);
    s += (1 / 24) * (1 / 3 + (4 / 3) * (i / 23));
  });
});
