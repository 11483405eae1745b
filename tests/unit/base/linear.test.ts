import { describe, expect, it } from "vitest";
import { addOuter3, solveLinear, solveSym3, sym3 } from "../../../src/model/base";

describe("symmetric 3×3", () => {
  // M = L·Lᵀ of L = [[2,0,0],[1,3,0],[−1,2,1]], by hand
  const M = { a11: 4, a13: 2, a15: -2, a33: 10, a35: 5, a55: 6 };

  it("solves a system whose answer is known", () => {
    // b = M·(1, −2, 3)
    const x = solveSym3(M, 4 - 4 - 6, 2 - 20 + 15, -2 - 10 + 18, [0, 0, 0]);
    [1, -2, 3].forEach((v, i) => expect(x[i]).toBeCloseTo(v, 13));
  });

  it("adds outer products", () => {
    const out = sym3();
    addOuter3(out, 2, 1, -3, 5);
    expect(out).toEqual({ a11: 2, a13: -6, a15: 10, a33: 18, a35: -30, a55: 50 });
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
