import { describe, expect, it } from "vitest";
import {
  addOuter3,
  addSym3,
  inverseSym3,
  mulSym3,
  solveLinear,
  solveSym3,
  solveTridiagonal,
  sym3,
} from "../../../src/model/base";

describe("symmetric 3×3", () => {
  // M = L·Lᵀ of L = [[2,0,0],[1,3,0],[−1,2,1]], by hand
  const M = { a11: 4, a13: 2, a15: -2, a33: 10, a35: 5, a55: 6 };

  it("solves a system whose answer is known", () => {
    const b = mulSym3(M, 1, -2, 3, [0, 0, 0]);
    expect(b).toEqual([4 - 4 - 6, 2 - 20 + 15, -2 - 10 + 18]);
    const x = solveSym3(M, b[0], b[1], b[2], [0, 0, 0]);
    [1, -2, 3].forEach((v, i) => expect(x[i]).toBeCloseTo(v, 13));
  });

  it("inverts: M·M⁻¹ is the identity", () => {
    const inverse = inverseSym3(M);
    const columns = [
      [inverse.a11, inverse.a13, inverse.a15],
      [inverse.a13, inverse.a33, inverse.a35],
      [inverse.a15, inverse.a35, inverse.a55],
    ] as const;
    columns.forEach(([p, q, r], i) => {
      const e = mulSym3(M, p, q, r, [0, 0, 0]);
      e.forEach((v, j) => expect(v).toBeCloseTo(i === j ? 1 : 0, 13));
    });
  });

  it("adds outer products", () => {
    const out = sym3();
    addOuter3(out, 2, 1, -3, 5);
    expect(out).toEqual({ a11: 2, a13: -6, a15: 10, a33: 18, a35: -30, a55: 50 });
    addSym3(out, M, -1);
    expect(out.a33).toBe(8);
  });

  it("refuses what is no mass matrix", () => {
    expect(() => solveSym3({ ...M, a33: 0.5 }, 1, 1, 1, [0, 0, 0])).toThrow(/not positive definite/);
    expect(() => solveSym3({ ...M, a11: NaN }, 1, 1, 1, [0, 0, 0])).toThrow(/not positive definite/);
  });
});

describe("general systems", () => {
  it("needs its pivoting", () => {
    // 0·x + 2y = 4, 3x + y = 5
    const x = solveLinear(
      [
        [0, 2],
        [3, 1],
      ],
      [4, 5],
    );
    expect(x[0]).toBeCloseTo(1, 14);
    expect(x[1]).toBeCloseTo(2, 14);
  });

  it("keeps the digits of a badly scaled system", () => {
    // 1e−20·x + y = 1, x + y = 2: without pivoting x comes out as 0
    const x = solveLinear(
      [
        [1e-20, 1],
        [1, 1],
      ],
      [1, 2],
    );
    expect(x[0]).toBeCloseTo(1, 14);
    expect(x[1]).toBeCloseTo(1, 14);
  });

  it("refuses singular and ill-shaped systems, and leaves its arguments alone", () => {
    const A = [
      [1, 2],
      [2, 4],
    ];
    expect(() => solveLinear(A, [1, 2])).toThrow(/singular/);
    expect(() => solveLinear([[1, 2]], [1])).toThrow(/needs 1 rows of 1/);
    expect(A).toEqual([
      [1, 2],
      [2, 4],
    ]);
  });
});

describe("tridiagonal systems", () => {
  it("gives the exact parabola of −y″ = 1 between two fixed ends", () => {
    // −y[i−1] + 2y[i] − y[i+1] = h²: the discrete solution is x(1 − x)/2 exactly
    const n = 9;
    const h = 1 / (n + 1);
    const lower = new Float64Array(n).fill(-1);
    const upper = new Float64Array(n).fill(-1);
    const diag = new Float64Array(n).fill(2);
    const y = new Float64Array(n).fill(h * h);
    solveTridiagonal(n, lower, diag, upper, y);
    y.forEach((v, i) => {
      const x = (i + 1) * h;
      expect(v).toBeCloseTo((x * (1 - x)) / 2, 14);
    });
  });

  it("fails loudly", () => {
    const one = () => new Float64Array([1]);
    expect(() => solveTridiagonal(1, one(), new Float64Array([0]), one(), one())).toThrow(
      /no finite solution/,
    );
    expect(() => solveTridiagonal(2, one(), one(), one(), one())).toThrow(/at least that long/);
  });
});
