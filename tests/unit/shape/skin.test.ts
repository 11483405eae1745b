import { describe, expect, it } from "vitest";
import { halfBreadthAt, immersedSection, makeShape, sectionAt, shapeOf } from "../../../src/model/shape";
import type { Section, Shape } from "../../../src/model/shape";
import { immersion } from "../../../src/model/hydrostatics";
import { block, ellipsoid, minnow, surface } from "../../lib/bodies";

/** A section's contour as n points (y, z) from the top round one side to the bottom and back up the other, m. */
function contour(s: Section, n: number): { readonly y: number; readonly z: number }[] {
  return Array.from({ length: n }, (_, i) => {
    const angle = Math.PI / 2 - (2 * Math.PI * i) / n; // polar angle, from the top clockwise
    const [up, across] = [Math.sin(angle), Math.cos(angle)];
    const k = up >= 0 ? s.exponentAbove : s.exponentBelow;
    const h = up >= 0 ? s.top - s.widest : s.widest - s.bottom;
    const rho = (Math.abs(across) ** k + Math.abs(up) ** k) ** (-1 / k);
    return { y: s.halfBreadth * rho * across, z: s.widest + h * rho * up };
  });
}

describe("the skin of a sphere under water", () => {
  // Archimedes' hat box: a zone's area is 2πR × its height, its centroid in the middle of that height.
  const R = 0.02;
  const sphere = makeShape(ellipsoid(R, R, R));

  it.each([-0.95, -0.5, 0, 0.4, 0.9])("is a cap, surface at %f R", (d) => {
    for (let pitch = -3.1; pitch < 3.2; pitch += 0.37) {
      const got = immersion(sphere, surface(pitch, -R * Math.sin(pitch) + d * R), { skin: true });
      expect(got.skinFraction).toBeCloseTo((1 + d) / 2, 5);
      const along = ((d - 1) / 2) * R;
      expect(got.skinCentroid.x).toBeCloseTo(-R + along * Math.sin(pitch), 6);
      expect(got.skinCentroid.z).toBeCloseTo(along * Math.cos(pitch), 6);
    }
  });
});

/** Area of a triangle in space. */
const triangle = (p: number[], q: number[], r: number[]): number => {
  const [u, v] = [q.map((c, i) => c - p[i]!), r.map((c, i) => c - p[i]!)];
  return (
    Math.hypot(u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!) /
    2
  );
};

describe("the skin of drawn bodies", () => {
  /** Skin by small flat triangles over the drawn surface. */
  function triangles(shape: Shape, N: number, M: number): number {
    const rows = Array.from({ length: N + 1 }, (_, i) => {
      const s = sectionAt(shape.edges, (Math.PI * i) / N);
      return Array.from({ length: M + 1 }, (_, k) => {
        const alpha = (2 * Math.PI * k) / M;
        const [cos, sin] = [Math.cos(alpha), Math.sin(alpha)];
        const n = sin >= 0 ? s.exponentAbove : s.exponentBelow;
        const h = sin >= 0 ? s.top - s.widest : s.widest - s.bottom;
        const rho = (Math.abs(cos) ** n + Math.abs(sin) ** n) ** (-1 / n);
        return [-s.s, s.halfBreadth * rho * cos, s.widest + h * rho * sin];
      });
    });
    let sum = 0;
    for (let i = 0; i < N; i++)
      for (let k = 0; k < M; k++) {
        const [p, q] = [rows[i]![k]!, rows[i + 1]![k]!];
        const [r, s] = [rows[i + 1]![k + 1]!, rows[i]![k + 1]!];
        sum += triangle(p, q, r) + triangle(p, r, s);
      }
    return sum;
  }

  it.each([
    ["minnow", minnow, 0],
    ["block", block, 1],
  ] as const)(
    "%s: agrees with triangles",
    (_, spec, blunt) => {
      const shape = shapeOf(spec);
      const faces = blunt
        ? [0, shape.length]
            .map((s) => shape.section(s))
            .map((s) => faceArea(s.top, s.bottom, (z) => halfBreadthAt(s, z)))
        : [faceArea(0.0015, -0.0015, (z) => halfBreadthAt(shape.section(shape.length), z))];
      // Extrapolated from two meshes, error ~ 1/N²: some 1e-5.
      const [coarse, fine] = [triangles(shape, 150, 120), triangles(shape, 300, 240)];
      const want = fine + (fine - coarse) / 3 + faces.reduce((a, b) => a + b, 0);
      expect(shape.skinArea / want).toBeCloseTo(1, 4);
    },
    30_000,
  );

  it.each([
    ["minnow", minnow],
    ["block", block],
  ] as const)("%s: the part under water agrees with triangles", (_, spec) => {
    const shape = shapeOf(spec);
    for (const [pitch, level] of [
      [0.1, -0.002],
      [-0.9, 0.02],
      [2.6, -0.03],
    ] as const) {
      const s = surface(pitch, level);
      const [N, M] = [400, 320];
      let [under, x, z] = [0, 0, 0];
      const rows = Array.from({ length: N + 1 }, (_, i) => {
        const section = sectionAt(shape.edges, (Math.PI * i) / N);
        const polygon = contour(section, M).map((p) => [-section.s, p.y, p.z]);
        return [...polygon, polygon[0]!];
      });
      for (let i = 0; i < N; i++)
        for (let k = 0; k < M; k++) {
          const quad = [rows[i]![k]!, rows[i + 1]![k]!, rows[i + 1]![k + 1]!, rows[i]![k + 1]!];
          const middle = [0, 1, 2].map((c) => quad.reduce((sum, p) => sum + p[c]! / 4, 0));
          if (middle[0]! * s.sin + middle[2]! * s.cos >= s.level) continue;
          const [p, q, r, t] = quad as [number[], number[], number[], number[]];
          const dA = triangle(p, q, r) + triangle(p, r, t);
          under += dA;
          x += dA * middle[0]!;
          z += dA * middle[2]!;
        }
      // blunt faces, by their sections
      for (const phi of [0, Math.PI]) {
        const face = sectionAt(shape.edges, phi);
        if (!(face.halfBreadth > 0)) continue;
        const wet = immersedSection(face, (level + face.s * s.sin) / s.cos, s.cos > 0 ? "below" : "above");
        under += wet.area;
        x -= wet.area * face.s;
        z += wet.momentZ;
      }
      const got = immersion(shape, s);
      // Whole cells are in or out: good to about a tenth of a cell's share of the waterline, 1e-3.
      expect(Math.abs(got.skinFraction * shape.skinArea - under)).toBeLessThan(1e-3 * shape.skinArea);
      expect(Math.abs(got.skinCentroid.x - x / under)).toBeLessThan(1e-3 * shape.length);
      expect(Math.abs(got.skinCentroid.z - z / under)).toBeLessThan(1e-3 * shape.length);
    }
  });

  function faceArea(top: number, bottom: number, breadth: (z: number) => number): number {
    const N = 20_000;
    let sum = 0;
    for (let i = 0; i < N; i++) {
      const t = (i + 0.5) / N;
      sum +=
        (2 * breadth(bottom + (top - bottom) * t * t * (3 - 2 * t)) * (top - bottom) * 6 * t * (1 - t)) / N;
    }
    return sum;
  }
});
