import { describe, expect, test } from "vitest";
import { assemble, type Bait } from "../../../src/model/bait";
import { bibOutline } from "../../../src/model/parts";
import { sectionCurve, sectionMarks, sideCurve, topCurve, topMarks } from "../../../src/drawing";
import { distanceToPath } from "../../../src/drawing/geometry";
import { boxOfMarks, placesOf } from "../../../src/drawing/mark";
import type { Vec } from "../../../src/model/base";
import { halfBreadthAt, shapeOf, sectionArea, type Section, stationOfPhi } from "../../../src/model/shape";
import { bait, spec } from "../../lib/drawn";
import { mm } from "../../lib/si";

/** A template's outline may lie this far off the model's curve, m. */
const ALLOWED = 0.05e-3;

const closed = (points: readonly Vec[]): Vec[] => [...points, points[0]!];

/** Area within a closed polygon, m² (Gauss's formula). */
const area = (points: readonly Vec[]): number =>
  Math.abs(points.reduce((sum, a, i) => sum + a.x * points.at(i - 1)!.z - points.at(i - 1)!.x * a.z, 0)) / 2;

const knots = (list: readonly (readonly [number, number])[]) =>
  list.map(([s, v]) => ({ s: s / 1000, v: v / 1000 }));
const shapes = [
  bait.drawn,
  // Long and blunt, with many knots that wave: as a traced outline is.
  shapeOf({
    length: 0.25,
    top: knots(Array.from({ length: 26 }, (_, i) => [10 * i, 15 + 2 * Math.sin(1.7 * i)] as const)),
    bottom: knots(Array.from({ length: 26 }, (_, i) => [10 * i, -14 - 2 * Math.cos(1.3 * i)] as const)),
    halfBreadth: knots([
      [0, 0],
      [60, 12],
      [250, 3],
    ]),
    exponentAbove: [{ s: 0, v: 2 }],
    exponentBelow: [{ s: 0, v: 2 }],
  }),
];

describe("the drawn curves", () => {
  test.each(shapes.map((shape, i) => [i, shape] as const))(
    "shape %i: side and top lie on the model's curves",
    (_, shape) => {
      const side = closed(sideCurve(shape));
      const top = closed(topCurve(shape));
      for (let i = 0; i <= 600; i++) {
        const phi = (Math.PI * i) / 600;
        const x = -stationOfPhi(phi, shape.length);
        for (const z of [shape.edges.top(phi), shape.edges.bottom(phi)])
          expect(distanceToPath({ x, z }, side)).toBeLessThan(ALLOWED);
        for (const sign of [1, -1])
          expect(distanceToPath({ x, z: sign * shape.edges.halfBreadth(phi) }, top)).toBeLessThan(ALLOWED);
      }
      // Dense where it must be, and only there: templates of many parts stay small.
      expect(side.length).toBeLessThan(1500);
    },
  );

  test("sections of any fullness lie on the model's curve, and hold its area", () => {
    for (const [above, below] of [
      [2, 2],
      [1, 1.4],
      [2.7, 1.9],
      [8, 3],
      [10, 1],
    ] as const) {
      const s: Section = {
        s: 0.03,
        top: 0.014,
        bottom: -0.011,
        widest: 0.002,
        halfBreadth: 0.009,
        exponentAbove: above,
        exponentBelow: below,
      };
      const curve = closed(sectionCurve(s));
      for (let i = 0; i <= 800; i++) {
        const z = s.bottom + ((s.top - s.bottom) * i) / 800;
        expect(
          distanceToPath({ x: halfBreadthAt(s, z), z }, curve),
          `${above} ${below} at ${z}`,
        ).toBeLessThan(ALLOWED);
      }
      expect(Math.abs(area(curve.slice(0, -1)) / sectionArea(s) - 1)).toBeLessThan(5e-3);
    }
  });

  test("a round section is a circle", () => {
    const s: Section = {
      s: 0,
      top: 0.01,
      bottom: -0.01,
      widest: 0,
      halfBreadth: 0.01,
      exponentAbove: 2,
      exponentBelow: 2,
    };
    for (const p of sectionCurve(s)) expect(Math.hypot(p.x, p.z)).toBeCloseTo(0.01, 12);
  });
});

describe("the views of the bait", () => {
  test("from above: mirrored, finite, as long as the side view and as broad as the bait", () => {
    const marks = topMarks(bait);
    for (const p of marks.flatMap(placesOf)) expect(Number.isFinite(p.x + p.z)).toBe(true);
    const body = boxOfMarks(marks.filter((m) => m.what === "body"));
    expect(body.maxX - body.minX).toBeCloseTo(bait.drawn.length, 9);
    expect(body.maxZ).toBeCloseTo(bait.drawn.maxHalfBreadth, 5);
    expect(body.minZ).toBe(-body.maxZ);
    const bib = boxOfMarks(marks.filter((m) => m.what === "bib" && m.fill));
    expect(bib.maxZ - bib.minZ).toBeCloseTo(spec.bib!.width, 9);
  });

  test("a section shows what the cut meets, and nothing else", () => {
    const whats = (station: number): (string | null)[] => sectionMarks(bait, station).map((m) => m.what);
    expect(whats(0.028)).toContain("ballast:belly");
    expect(whats(0.048)).toContain("chamber:rattle");
    expect(whats(0.07)).not.toContain("chamber:rattle");
    expect(whats(0.07)).not.toContain("ballast:belly");
    expect(() => sectionMarks(bait, 0.2)).toThrow(RangeError);
    // A sphere cut off its middle: r² − d².
    const at = (d: number) =>
      sectionMarks(bait, 0.028 + d).find((m) => m.what === "ballast:belly" && m.fill?.role === "metal");
    const [whole, off] = [at(0), at(0.003)];
    if (whole?.kind !== "circle" || off?.kind !== "circle") throw new Error("the slug is not cut");
    expect(off.radius).toBeCloseTo(Math.sqrt(whole.radius ** 2 - 0.003 ** 2), 9);
  });

  test("a drilled hole stands in its section from the bottom edge up, as broad as its drill", () => {
    const drilled: Bait = assemble({
      ...spec,
      ballast: spec.ballast.map((one, i) => (i === 0 ? { ...one, drill: 8 * mm } : one)),
    });
    const { bottom } = drilled.drawn.section(0.028);
    const hole = sectionMarks(drilled, 0.028).find((m) => m.what === "ballast:belly" && m.kind === "polygon");
    const box = boxOfMarks(hole ? [hole] : []);
    expect(box.maxX - box.minX).toBeCloseTo(8 * mm, 12);
    expect(box.minZ).toBeCloseTo(bottom, 12);
    // Depth = V / (π d²/4), V = 0.7 ml.
    expect(box.maxZ - box.minZ).toBeCloseTo(0.7e-6 / ((Math.PI / 4) * (8 * mm) ** 2), 12);
  });

  test("a round bib's outline has the area of the model's plate", () => {
    const bib = { ...spec.bib!, length: 0.03, width: 0.02, outline: "round" as const };
    // Full width up to a half ellipse: w·(L − c) + π/4·w·c, with c = w/2.
    expect(area(bibOutline(bib)) / (0.02 * 0.02 + (Math.PI / 4) * 0.02 * 0.01)).toBeCloseTo(1, 3);
  });
});
