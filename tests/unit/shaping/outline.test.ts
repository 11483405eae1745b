import { describe, expect, it } from "vitest";
import { tracedBreadth, tracedOutline } from "../../../src/model/shaping";
import { edgesFromKnots, phiOfStation } from "../../../src/model/shape";

const N = 400;
const along = (i: number): number => (1 - Math.cos((Math.PI * i) / N)) / 2;

/** A closed outline from its upper and lower edge (mm), its nose at a station of its own. */
function ring(top: (t: number) => number, bottom: (t: number) => number, length: number, start = 0) {
  const point = (t: number, v: number) => ({ s: (start + t * length) / 1000, v: v / 1000 });
  return [
    ...Array.from({ length: N + 1 }, (_, i) => point(along(i), top(along(i)))),
    ...Array.from({ length: N + 1 }, (_, i) => point(along(N - i), bottom(along(N - i)))),
  ];
}
const ellipse = (b: number) => (t: number) => b * Math.sqrt(Math.max(0, 1 - (2 * t - 1) ** 2));
const ROUND = { exponentAbove: [{ s: 0, v: 2 }], exponentBelow: [{ s: 0, v: 2 }] };

describe("edges from a closed silhouette", () => {
  it("of an ellipse meet in one point at nose and tail, wherever it lies", () => {
    const { start, length, top, bottom, worst, folded } = tracedOutline(
      ring(ellipse(11), (t) => -ellipse(9)(t), 90, -37),
      0.1e-3,
    );
    expect(start).toBeCloseTo(-0.037, 12);
    expect(length).toBeCloseTo(0.09, 12);
    expect(worst).toBeLessThanOrEqual(0.1e-3);
    expect(folded).toBe(0);
    expect(top[0]).toEqual({ s: 0, v: bottom[0]?.v });
    expect(top.at(-1)).toEqual({ s: length, v: bottom.at(-1)?.v });
    // A body that can be built.
    const edges = edgesFromKnots({
      length,
      top,
      bottom,
      halfBreadth: top.map(({ s }) => ({ s, v: 0 })),
      ...ROUND,
    });
    expect(Math.abs(edges.top(phiOfStation(0.045, length)) * 1e3 - 11)).toBeLessThan(0.1);
    expect(Math.abs(edges.bottom(phiOfStation(0.045, length)) * 1e3 + 9)).toBeLessThan(0.1);
  });

  it("keeps a blunt tail blunt", () => {
    const { top, bottom } = tracedOutline(
      ring(
        (t) => 8 * Math.sqrt(t * (2 - t)),
        (t) => -6 * Math.sqrt(t * (2 - t)),
        70,
      ),
      0.2e-3,
    );
    expect((top.at(-1)?.v ?? 0) * 1e3).toBeCloseTo(8, 0);
    expect((bottom.at(-1)?.v ?? 0) * 1e3).toBeCloseTo(-6, 0);
    expect(top[0]?.v).toBe(bottom[0]?.v);
  });

  it("says where an outline folds back on itself", () => {
    // A slot of 2 mm from the tail, half way up.
    const body = ring(ellipse(10), (t) => -ellipse(10)(t), 80);
    const slot = [
      { s: 0.0799, v: 0.001 },
      { s: 0.05, v: 0.001 },
      { s: 0.05, v: -0.001 },
      { s: 0.0799, v: -0.001 },
    ];
    const cut = [...body.slice(0, N), ...slot, ...body.slice(N + 2)];
    expect(tracedOutline(cut, 0.3e-3).folded).toBeCloseTo(0.002, 4);
  });

  it("from above gives half of the breadth, and says how unequal the sides are", () => {
    const { halfBreadth, uneven, worst } = tracedBreadth(
      ring(ellipse(7), (t) => -ellipse(6)(t), 90),
      0.1e-3,
    );
    expect(worst).toBeLessThanOrEqual(0.1e-3);
    expect(Math.max(...halfBreadth.map((k) => k.v)) * 1e3).toBeCloseTo(6.5, 1);
    expect(halfBreadth[0]?.v).toBe(0);
    expect(uneven * 1e3).toBeCloseTo(0.5, 2);
  });

  it("of a few straight sides follow them: corners are rounded by no more than the tolerance", () => {
    const wedge = [
      [0, 2],
      [30, 10],
      [100, 1],
      [100, -1],
      [30, -10],
      [0, -2],
    ].map(([s = 0, v = 0]) => ({ s: s / 1000, v: v / 1000 }));
    const { top, bottom, worst, length } = tracedOutline(wedge, 0.3e-3);
    expect(length).toBeCloseTo(0.1, 12);
    expect(worst).toBeLessThanOrEqual(0.3e-3);
    for (const [edge, side] of [
      [top, 1],
      [bottom, -1],
    ] as const) {
      expect(edge.length).toBeLessThan(12);
      // The ends stay as blunt as they are: 2 mm at the nose, 1 mm at the tail.
      expect(Math.abs((edge[0]?.v ?? 0) * 1e3 - side * 2)).toBeLessThan(0.3);
      expect(Math.abs((edge.at(-1)?.v ?? 0) * 1e3 - side)).toBeLessThan(0.3);
    }
  });

  it("refuses what is no outline", () => {
    expect(() => tracedOutline([{ s: 0, v: 0 }], 1e-4)).toThrow(/give 3 or more/);
    expect(() =>
      tracedOutline(
        Array.from({ length: 9 }, (_, i) => ({ s: 0.01, v: i })),
        1e-4,
      ),
    ).toThrow(/with a length/);
  });
});
