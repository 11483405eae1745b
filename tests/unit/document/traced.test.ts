import { describe, expect, it } from "vitest";
import { pointsOf, readScenario, valueOn, withBreadth, withOutline, withPoints } from "../../../src/document";
import { scenario } from "../ui-app/scenario";

const knots = (...points: readonly (readonly [number, number])[]) =>
  points.map(([s, v]) => ({ s: s / 1000, v: v / 1000 }));

describe("a traced outline in the document", () => {
  const plain = scenario();
  // A third of the height below the top edge.
  const from = withPoints(
    plain,
    "widest",
    pointsOf(plain.bait, "widest").map(([s]) => [
      s,
      (2 * (valueOn(plain.bait, "top", s) ?? 0) + (valueOn(plain.bait, "bottom", s) ?? 0)) / 3,
    ]),
  );
  const L = 1.25 * from.bait.length_mm;
  const next = withOutline(from, {
    length: L / 1000,
    top: knots([0, 1], [L / 3, 11.2345], [L, 1.5]),
    bottom: knots([0, 1], [L / 2, -9], [L, -0.5]),
  });

  it("takes the place of both edges; everything else stays or goes with the length", () => {
    const { bait } = next;
    expect(bait.length_mm).toBe(L);
    expect(bait.top.at(-1)).toEqual([L, 1.5]);
    expect(bait.top[1]?.[1]).toBe(11.235);
    expect(bait.halfBreadth.at(-1)?.[0]).toBe(L);
    expect(bait.halfBreadth.map(([, v]) => v)).toEqual(from.bait.halfBreadth.map(([, v]) => v));
    const { length_mm, top, bottom, halfBreadth, widest, roundover, ...rest } = bait;
    const old = { ...from.bait } as Partial<typeof from.bait>;
    for (const key of ["length_mm", "top", "bottom", "halfBreadth", "widest", "roundover"] as const)
      delete old[key];
    expect(rest).toEqual(old);
    expect({ ...next, bait: null }).toEqual({ ...from, bait: null });
    void [length_mm, top, bottom, halfBreadth, widest, roundover];
  });

  it("keeps the widest line's share of the height", () => {
    for (const [i, [s, v]] of pointsOf(next.bait, "widest").entries()) {
      const old = from.bait.widest?.[i] ?? [0, 0];
      const share = (bait: typeof from.bait, at: number, z: number): number => {
        const [up, low] = [valueOn(bait, "top", at) ?? 0, valueOn(bait, "bottom", at) ?? 0];
        return up > low ? (z - low) / (up - low) : 0.5;
      };
      if (i > 0) expect(share(next.bait, s, v)).toBeCloseTo(share(from.bait, old[0], old[1]), 3);
    }
  });

  it("from above is stretched to the bait's own length", () => {
    const wide = withBreadth(from, {
      length: 2 * (from.bait.length_mm / 1000),
      halfBreadth: knots([0, 0], [from.bait.length_mm, 8], [2 * from.bait.length_mm, 1]),
    });
    expect(wide.bait.halfBreadth).toEqual([
      [0, 0],
      [from.bait.length_mm / 2, 8],
      [from.bait.length_mm, 1],
    ]);
    expect(readScenario(wide).ok).toBe(true);
  });
});
