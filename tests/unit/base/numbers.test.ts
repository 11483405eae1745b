import { describe, expect, it } from "vitest";
import {
  brent,
  cos,
  Fnv1a,
  gaussLegendre,
  hashNumbers,
  lgamma,
  newton,
  random,
  sin,
} from "../../../src/model/base";
import { integrate } from "./integrate";

describe("quadrature", () => {
  it("has the tabulated five-point rule", () => {
    // Abramowitz & Stegun 1964, Table 25.4
    const { x, w } = gaussLegendre(5);
    [0, 0.538469310105683, 0.906179845938664].forEach((v, i) => expect(x[2 + i]).toBeCloseTo(v, 15));
    [0.568888888888889, 0.478628670499366, 0.236926885056189].forEach((v, i) =>
      expect(w[2 + i]).toBeCloseTo(v, 15),
    );
  });

  it.each([1, 2, 3, 6, 16, 33, 64])("is exact to degree 2n − 1 with %i points", (n) => {
    const degree = 2 * n - 1;
    expect(integrate((t) => t ** (degree - 1), -1, 1, n)).toBeCloseTo(2 / degree, 13);
    expect(integrate((t) => (t + 1) ** degree / 2 ** degree, -1, 1, n)).toBeCloseTo(2 / (degree + 1), 13);
  });

  it("refuses a rule that it cannot make", () => {
    expect(() => gaussLegendre(0)).toThrow(/1 to 512/);
  });
});

describe("roots", () => {
  it("finds a simple root to the last digits", () => {
    expect(brent((x) => x ** 3 - 2, 0, 2)).toBeCloseTo(Math.cbrt(2), 14);
    expect(brent((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 14); // Dottie number
  });

  it("copes with flat and steep functions", () => {
    expect(brent((x) => (x - 1) ** 9, 0, 3, 1e-12)).toBeCloseTo(1, 2);
    expect(brent((x) => (x < 0.3 ? -1 : 1), 0, 1)).toBeCloseTo(0.3, 12);
  });

  it("refuses an interval without a sign change, and NaN", () => {
    expect(() => brent((x) => x * x + 1, -1, 1)).toThrow(/no sign change/);
    expect(() => brent(() => NaN, -1, 1)).toThrow(/no sign change/);
  });

  it("solves a small system by Newton, and says when it cannot", () => {
    // the circle and the line y = x
    const found = newton(([x, y]) => [x! * x! + y! * y! - 1, x! - y!], [1, 0.2], [1, 1], [1, 1]);
    expect(found.converged).toBe(true);
    found.x.forEach((v) => expect(v).toBeCloseTo(Math.SQRT1_2, 10));
    expect(newton(([x]) => [x! * x! + 1], [0.7], [1], [1]).converged).toBe(false);
  });
});

describe("the logarithm of the gamma function", () => {
  it("agrees with the reference", () => {
    // scipy.special 1.17.1 gammaln
    const lg: [number, number][] = [
      [0.1, 2.252712651734206],
      [0.5, 0.5723649429247],
      [1.3, -0.10817480950786049],
      [2.7, 0.43482055365510464],
      [10.2, 13.254266744235549],
      [55.5, 166.32150615984037],
    ];
    for (const [x, v] of lg) expect(Math.abs(lgamma(x) - v)).toBeLessThan(2e-14 * Math.max(1, v));
  });

  it("has the values that are known exactly", () => {
    expect(lgamma(5)).toBeCloseTo(Math.log(24), 13);
    expect(lgamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 13);
    expect(lgamma(0.3) + lgamma(0.7)).toBeCloseTo(Math.log(Math.PI / Math.sin(0.3 * Math.PI)), 12); // reflection
    expect(() => lgamma(0)).toThrow(/above 0/);
  });
});

describe("own sine and cosine", () => {
  it("stay within 1.2e-16 of the built-in ones", () => {
    // The built-in ones are within half a unit in the last place, 5.6e-17 near 1: ours differ from them by one at most.
    const r = random(7);
    let worst = 0;
    for (let i = 0; i < 200_000; i++) {
      const x = (r.uniform() - 0.5) * (i % 3 === 0 ? 7 : i % 3 === 1 ? 300 : 2e6);
      worst = Math.max(worst, Math.abs(sin(x) - Math.sin(x)), Math.abs(cos(x) - Math.cos(x)));
    }
    expect(worst).toBeLessThan(1.2e-16);
  });

  it("have the exact values near multiples of π/2", () => {
    // sin(fl(π)) = π − fl(π) = 1.2246467991473532e-16 to all digits (as every correctly rounded library prints)
    expect(sin(Math.PI)).toBe(1.2246467991473532e-16);
    expect(cos(Math.PI / 2)).toBe(6.123233995736766e-17);
    expect(sin(0)).toBe(0);
    expect(cos(0)).toBe(1);
    expect(sin(-1.3)).toBe(-sin(1.3));
    expect(cos(-1.3)).toBe(cos(1.3));
  });

  it("give the same bits on every engine", () => {
    // Only + − × and rounding are used, which IEEE 754 and ECMAScript fix. The pin is the hash that a transcription of the
    // algorithm to Python computes.
    const values: number[] = [];
    for (let i = -2000; i <= 2000; i++) values.push(sin(i * 0.37), cos(i * 0.011));
    expect(hashNumbers(values)).toBe("5baf2b9577572b78");
  });

  it("pass NaN on and refuse angles beyond their range", () => {
    expect(sin(NaN)).toBeNaN();
    expect(cos(Infinity)).toBeNaN();
    expect(() => sin(2e6)).toThrow(/outside/);
  });
});

describe("seeded numbers", () => {
  it("repeat for the same seed only", () => {
    const take = (seed: number) => {
      const r = random(seed);
      return Array.from({ length: 50 }, () => r.uniform());
    };
    expect(take(5)).toEqual(take(5));
    expect(take(5)).not.toEqual(take(6));
    expect(() => random(0.5)).toThrow(/whole number/);
  });

  it("are uniform and normal", () => {
    // Standard errors for 200,000 draws: mean of a uniform 0.29/√n = 6.5e-4, of a normal 2.2e-3, its variance 3.2e-3,
    // its fourth moment √96/√n = 2.2e-2; five of them allowed, and the seed is fixed.
    const n = 200_000;
    const r = random(11);
    let u = 0;
    let [m1, m2, m4] = [0, 0, 0];
    const bins = new Array<number>(10).fill(0);
    for (let i = 0; i < n; i++) {
      const x = r.uniform();
      u += x / n;
      bins[Math.floor(10 * x)]! += 1;
      const z = r.normal();
      m1 += z / n;
      m2 += (z * z) / n;
      m4 += z ** 4 / n;
    }
    expect(Math.abs(u - 0.5)).toBeLessThan(3.3e-3);
    // χ² with 9 degrees of freedom: 27.9 is exceeded with probability 0.001
    expect(bins.reduce((c, b) => c + (b - n / 10) ** 2 / (n / 10), 0)).toBeLessThan(27.9);
    expect(Math.abs(m1)).toBeLessThan(0.011);
    expect(Math.abs(m2 - 1)).toBeLessThan(0.016);
    expect(Math.abs(m4 - 3)).toBeLessThan(0.11);
    const counts = new Set(Array.from({ length: 200 }, () => r.below(3)));
    expect([...counts].sort()).toEqual([0, 1, 2]);
  });
});

describe("hash", () => {
  it("is FNV-1a, 64 bit", () => {
    // draft-eastlake-fnv, test vectors: "" → cbf29ce484222325, "a" → af63dc4c8601ec8c, "foobar" → 85944171f73967e8
    const of = (text: string) => {
      const h = new Fnv1a();
      for (const c of text) h.byte(c.charCodeAt(0));
      return h.hex();
    };
    expect(of("")).toBe("cbf29ce484222325");
    expect(of("a")).toBe("af63dc4c8601ec8c");
    expect(of("foobar")).toBe("85944171f73967e8");
  });

  it("sees every bit of every number", () => {
    const plain = hashNumbers([1, 2, 3]);
    expect(hashNumbers([1, 2, 3 + 2 ** -51])).not.toBe(plain);
    expect(hashNumbers([2, 1, 3])).not.toBe(plain);
    expect(hashNumbers([0])).not.toBe(hashNumbers([-0]));
    expect(hashNumbers(new Float64Array([1, 2, 3]))).toBe(plain);
  });

  it("takes every NaN as one, whatever bits an engine gave it", () => {
    const values = new Float64Array([1, NaN, 2]);
    const other = values.slice();
    new BigUint64Array(other.buffer)[1] = 0xfff8000000000001n;
    expect(other[1]).toBeNaN();
    expect(hashNumbers(other)).toBe(hashNumbers(values));
  });
});
