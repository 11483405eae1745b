import { describe, expect, it } from "vitest";
import { quarter, quarterPart } from "../../../src/model/shape/superellipse";
import { gamma, incompleteBeta } from "./beta";

// Area and moment of the quarter up to u: adaptive quadrature of ∫y dt and ∫t·y dt with 25 digits (mpmath), by (n, u).
const parts: [number, number, number, number][] = [
  [1, 0.3, 0.255, 0.036],
  [1, 0.7, 0.455, 0.13066666666666665],
  [1.3, 0.01, 0.009991597485241246, 4.994143568456024e-5],
  [1.3, 0.3, 0.27867898799181895, 0.04053274345007594],
  [1.3, 0.7, 0.544069853994154, 0.16832622630756364],
  [1.3, 0.93, 0.6180936913875283, 0.22730435851565134],
  [2, 0.3, 0.2954372072202406, 0.04397177557019315],
  [2, 0.93, 0.7681215985688329, 0.3167809029948268],
  [2.5, 0.3, 0.298295027202659, 0.04460181608878594],
  [2.5, 0.7, 0.6643873163140799, 0.22544043845214562],
  [2.5, 0.93, 0.8206405393474843, 0.3514224792958235],
  [4, 0.7, 0.6911293518490451, 0.23980264479512162],
  [4, 0.93, 0.8868923408105293, 0.3984201485926433],
  [10, 0.3, 0.29999998389570487, 0.04499999557131858],
  [10, 0.93, 0.9253068759793852, 0.428425828249049],
];

const part = (n: number, u: number) => {
  const out = { area: 0, moment: 0, breadth: 0 };
  const { c, m } = quarter(n);
  quarterPart(n, u, c, m, out);
  return out;
};

describe("the functions it is tested against", () => {
  it("agree with the reference", () => {
    // scipy.special 1.17.1 betainc
    const beta: [number, number, number, number][] = [
      [0.3, 0.5, 1.5, 0.6607459491435457],
      [1e-6, 0.1, 1.1, 0.25482448310245664],
      [0.5, 0.2, 1.1, 0.8857904121578624],
      [0.9, 0.25, 1.25, 0.9873295440548732],
      [0.99, 1, 2, 0.9999],
      [0.05, 3, 0.5, 3.9817687255359184e-5],
    ];
    for (const [x, a, b, v] of beta) expect(incompleteBeta(x, a, b) / v).toBeCloseTo(1, 12);
    expect(gamma(5)).toBeCloseTo(24, 11);
  });
});

describe("quarter superellipse", () => {
  it("has the full integrals of Dirichlet's formula", () => {
    for (let n = 1; n <= 10; n += 0.173) {
      const { c, m, q } = quarter(n);
      const p = 1 / n;
      expect(c).toBeCloseTo(gamma(1 + p) ** 2 / gamma(1 + 2 * p), 11);
      expect(m).toBeCloseTo((p * gamma(2 * p) * gamma(1 + p)) / gamma(1 + 3 * p), 11);
      expect(q).toBeCloseTo((p * gamma(3 * p) * gamma(1 + p)) / gamma(1 + 4 * p), 11);
    }
    expect(quarter(2)).toEqual({ n: 2, c: Math.PI / 4, m: 1 / 3, q: Math.PI / 16 });
    expect(quarter(1).c).toBeCloseTo(1 / 2, 13);
    expect(quarter(1).m).toBeCloseTo(1 / 6, 13);
    expect(() => quarter(0.9)).toThrow(/between 1 and 10/);
  });

  it.each(parts)("n = %f, u = %f", (n, u, area, moment) => {
    const got = part(n, u);
    expect(got.area).toBeCloseTo(area, 10);
    expect(got.moment).toBeCloseTo(moment, 10);
    expect(got.breadth ** n + u ** n).toBeCloseTo(1, 13);
  });

  it("is the incomplete beta function", () => {
    for (const n of [1.2, 1.9, 2.2, 3, 5.5, 9.7])
      for (let u = 0.05; u < 1; u += 0.05) {
        const { c, m } = quarter(n);
        const got = part(n, u);
        expect(got.area / c).toBeCloseTo(incompleteBeta(u ** n, 1 / n, 1 + 1 / n), 10);
        expect(got.moment / m).toBeCloseTo(incompleteBeta(u ** n, 2 / n, 1 + 1 / n), 10);
      }
  });

  it("does not lose a thin slice where uⁿ underflows", () => {
    const thin = part(10, 1e-40); // uⁿ = 1e-400
    expect(thin.area).toBe(1e-40);
    expect(thin.moment).toBeCloseTo(0.5e-80, 95);
    expect(thin.breadth).toBe(1);
  });

  it("is continuous at u = 0, 1 and where it changes its series", () => {
    for (const n of [1.0001, 1.5, 2.0001, 3.7, 10]) {
      expect(part(n, 1 - 1e-12).area).toBeCloseTo(part(n, 1).area, 11);
      const turn = 0.5 ** (1 / n);
      expect(part(n, turn - 1e-13).area).toBeCloseTo(part(n, turn + 1e-13).area, 11);
      expect(part(n, turn - 1e-13).moment).toBeCloseTo(part(n, turn + 1e-13).moment, 11);
    }
    // beside the closed forms
    expect(part(2 + 1e-9, 0.8).area).toBeCloseTo(part(2, 0.8).area, 8);
    expect(part(1 + 1e-9, 0.8).moment).toBeCloseTo(part(1, 0.8).moment, 8);
  });
});
