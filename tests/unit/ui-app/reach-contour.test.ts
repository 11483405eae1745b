import { describe, expect, test } from "vitest";
import { contour, labelPlace, regions } from "../../../src/ui/views/reach/contour";
import { roundStep } from "../../../src/ui/views/reach/figures";

describe("contour", () => {
  test("of a plane is a straight line across the whole grid, exactly where it should be", () => {
    // z = x + 2 y = 3.5
    const lines = contour(6, 4, (i, j) => i + 2 * j, 3.5);
    expect(lines).toHaveLength(1);
    const [line = []] = lines;
    for (const { x, y } of line) expect(x + 2 * y).toBeCloseTo(3.5, 12);
    const xs = line.map(({ x }) => x);
    expect(Math.min(...xs)).toBe(0);
    expect(Math.max(...xs)).toBeCloseTo(3.5, 12);
  });

  test("of a cone closes round its middle, within the chord's error of the circle", () => {
    // r = 6 on nodes 1 apart: linear interpolation of √ over one node is off by less than 1/(8 r).
    const lines = contour(21, 21, (i, j) => Math.hypot(i - 10, j - 10), 6);
    expect(lines).toHaveLength(1);
    const [line = []] = lines;
    expect(line[0]?.x).toBeCloseTo(line.at(-1)?.x ?? NaN, 9);
    expect(line[0]?.y).toBeCloseTo(line.at(-1)?.y ?? NaN, 9);
    for (const { x, y } of line) expect(Math.abs(Math.hypot(x - 10, y - 10) - 6)).toBeLessThan(1 / 48);
  });

  test("a saddle is cut by the mean of its corners, with two separate lines", () => {
    for (const middle of [0.4, -0.4]) {
      const field = [1 + middle, -1 + middle, -1 + middle, 1 + middle];
      const lines = contour(2, 2, (i, j) => field[2 * i + j] ?? null, 0);
      expect(lines).toHaveLength(2);
      // Above the level in the middle: the low corners (0,1) and (1,0) are cut off, else the high ones.
      const corners =
        middle > 0
          ? [
              [0, 1],
              [1, 0],
            ]
          : [
              [0, 0],
              [1, 1],
            ];
      for (const line of lines) {
        const near = corners.filter(([x = 0, y = 0]) =>
          line.every((p) => Math.abs(p.x - x) + Math.abs(p.y - y) < 1),
        );
        expect(near).toHaveLength(1);
      }
    }
  });

  test("nothing is drawn next to a node without a value, nor where the level is not met", () => {
    expect(contour(2, 2, (i, j) => (i === 0 && j === 0 ? null : i), 0.5)).toEqual([]);
    expect(contour(3, 3, () => 1, 2)).toEqual([]);
  });
});

describe("regions", () => {
  const grid = ["aab", "a.b", "aab"];
  const why = (i: number, j: number): string | null => {
    const one = grid[j]?.[i] ?? ".";
    return one === "." ? null : one;
  };
  test("are connected patches of one reason, with the longest row for words", () => {
    const found = regions(3, 3, why);
    expect(found.map((one) => [one.why, one.size])).toEqual([
      ["a", 5],
      ["b", 3],
    ]);
    expect(found[0]).toMatchObject({ from: 0, to: 1 });
    expect(found[1]).toMatchObject({ row: 1, from: 2, to: 2 });
  });
});

test("steps are round", () => {
  expect(roundStep(2.2, 6)).toBe(0.5);
  expect(roundStep(5, 5)).toBe(1);
  expect(roundStep(0.11, 5)).toBeCloseTo(0.05, 12);
});

describe("a contour's label", () => {
  const line = Array.from({ length: 21 }, (_, i) => ({ x: 10 * i, y: 50 }));
  const label = { halfWidth: 15, halfHeight: 8 };

  test("stands in the middle of its line where nothing is", () => {
    expect(labelPlace(line, label, [])).toEqual({ x: 100, y: 50 });
  });

  test("gives way to a mark, no farther than it must, and does not meet it", () => {
    const mark = { x: 106, y: 52, halfWidth: 9, halfHeight: 9 };
    // Half of the mark and half of the label are 24 px: 80 is 26 px off it.
    expect(labelPlace(line, label, [mark])).toEqual({ x: 80, y: 50 });
    expect(labelPlace(line, label, [{ ...mark, y: 90 }])).toEqual({ x: 100, y: 50 });
    const also = { x: 70, y: 50, ...label };
    expect(labelPlace(line, label, [mark, also])).toEqual({ x: 140, y: 50 });
  });

  test("stands where there is most room when it meets something everywhere; a line without points has none", () => {
    const wide = { x: 0, y: 50, halfWidth: 500, halfHeight: 500 };
    expect(labelPlace(line, label, [wide])).toEqual({ x: 200, y: 50 });
    expect(labelPlace([], label, [wide])).toBeNull();
  });
});
