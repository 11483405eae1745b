import fc from "fast-check";
import type { BaitSpec, FittingSpec, HangerSpec } from "../../src/model/bait";
import type { Knot, ShapeSpec } from "../../src/model/shape";
import { bare, deg, g, mm, stuff } from "./si";

/** Random whole baits of 60–140 mm that can be made: what lies inside lies inside. SI. */

const STEPS = 1e6;

/**
 * A number between two bounds, in a million even steps. `fc.double` draws evenly over the floating-point numbers: nearly all
 * its draws stand close to zero or to a bound, so that the tests would see no ordinary baits.
 */
export const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((i) => min + ((max - min) * i) / STEPS);

const at = (L: number, s: number, z: number): { x: number; z: number } => ({ x: -s * L, z });

const wood = real(150, 700).map((d) => stuff("wood", d, "wood"));
const metal = fc.constantFrom(stuff("tin", 7310), stuff("lead", 11350), stuff("steel", 7820));

/** Shares of the length and height; made into a spec with the body's own size. */
const shares = fc.record({
  length: real(60 * mm, 140 * mm),
  height: real(0.1, 0.16), // half height over length
  breadth: real(0.06, 0.12),
  belly: real(0.3, 0.6),
  tail: real(0.05, 0.3), // height left at the tail, share of the middle's
  exponent: real(1.6, 4),
  wood,
  ballast: fc.array(
    fc.record({
      s: real(0.15, 0.85),
      z: real(-0.6, 0.2),
      mass: real(0.2 * g, 3 * g),
      metal,
      inside: fc.boolean(),
      hole: fc.option(real(0.5, 1.5), { nil: null }),
      filler: real(0, 1300),
    }),
    { maxLength: 3 },
  ),
  chamber: fc.option(fc.record({ s: real(0.4, 0.6), balls: fc.integer({ min: 0, max: 3 }) }), { nil: null }),
  wire: fc.boolean(),
  bib: fc.option(
    fc.record({ angle: real(10 * deg, 90 * deg), length: real(0.1, 0.3), round: fc.boolean() }),
    { nil: null },
  ),
  hooks: fc.array(fc.record({ s: real(0.1, 1.05), mass: real(0.1 * g, 1.2 * g) }), { maxLength: 3 }),
  eyes: fc.boolean(),
  coat: fc.option(real(0.02 * mm, 0.3 * mm), { nil: null }),
});

export const baitSpecs: fc.Arbitrary<BaitSpec> = shares.map((r) => {
  const L = r.length;
  const h = r.height * L;
  const b = r.breadth * L;
  const knots = (peak: number, end: number): Knot[] => [
    { s: 0, v: 0 },
    { s: 0.15 * L, v: 0.7 * peak },
    { s: r.belly * L, v: peak },
    { s: L, v: end },
  ];
  const hangers: HangerSpec[] = r.hooks.map((hook, i) => ({
    name: `hanger ${i}`,
    at: at(L, hook.s, -0.7 * h),
    ring: i === 0 ? { mass: 0.1 * g, density: 8000 } : null,
    hook: { mass: hook.mass, density: 7820, size: null },
  }));
  const eyes: FittingSpec[] = r.eyes
    ? [
        {
          name: "eyes",
          at: at(L, 0.1, 0.2 * h),
          mass: 0.1 * g,
          stuff: stuff("resin", 1200, "other"),
          where: "outside",
        },
      ]
    : [];
  const ball = 0.12 * h;
  const shape: ShapeSpec = {
    length: L,
    top: knots(h, r.tail * h),
    bottom: knots(-h, -r.tail * h),
    halfBreadth: knots(b, r.tail * b),
    exponentAbove: [
      { s: 0, v: 2 },
      { s: L, v: r.exponent },
    ],
    exponentBelow: [
      { s: 0, v: r.exponent },
      { s: L, v: 2 },
    ],
  };
  return bare(shape, {
    name: "random",
    body: r.wood,
    ballast: r.ballast.map((x, i) => ({
      name: `weight ${i}`,
      at: at(L, x.s, x.z * h * 0.5),
      mass: x.mass,
      stuff: x.metal,
      where: x.inside ? "inside" : "outside",
      hole: x.inside && x.hole !== null ? (x.hole * x.mass) / x.metal.density : null,
      filler: x.filler,
    })),
    chambers: r.chamber
      ? [
          {
            name: "rattle",
            from: (r.chamber.s - 0.1) * L,
            to: (r.chamber.s + 0.1) * L,
            height: 0,
            tall: 0.3 * h,
            wide: 0.3 * h,
            balls:
              r.chamber.balls > 0
                ? { count: r.chamber.balls, diameter: 2 * ball, stuff: stuff("steel", 7820) }
                : null,
          },
        ]
      : [],
    wires: r.wire
      ? [
          {
            name: "harness",
            path: [at(L, -0.05, 0), at(L, 0.5, -0.3 * h), at(L, 1.06, 0)],
            diameter: 0.8 * mm,
            stuff: stuff("stainless steel", 8000),
          },
        ]
      : [],
    bib: r.bib
      ? {
          root: at(L, 0.05, -0.1 * h),
          angle: r.bib.angle,
          length: r.bib.length * L,
          width: 0.2 * L,
          slot: 0.05 * L,
          thickness: 1.5 * mm,
          outline: r.bib.round ? "round" : "square",
          stuff: stuff("polycarbonate", 1200, "plastic"),
        }
      : null,
    hangers,
    fittings: eyes,
    coats:
      r.coat === null
        ? []
        : [{ name: "clear", thickness: r.coat, mass: null, stuff: stuff("epoxy", 1100, "other") }],
  });
});

/** The same bait with nose and tail changed about: x → −L − x. */
export function reversed(spec: BaitSpec): BaitSpec {
  const L = spec.shape.length;
  const point = (p: { x: number; z: number }) => ({ x: -L - p.x, z: p.z });
  const knots = (list: readonly Knot[]): Knot[] => list.map((k) => ({ s: L - k.s, v: k.v })).reverse();
  const { shape } = spec;
  return {
    ...spec,
    shape: {
      length: L,
      top: knots(shape.top),
      bottom: knots(shape.bottom),
      halfBreadth: knots(shape.halfBreadth),
      exponentAbove: knots(shape.exponentAbove),
      exponentBelow: knots(shape.exponentBelow),
    },
    chambers: spec.chambers.map((c) => ({ ...c, from: L - c.to, to: L - c.from })),
    ballast: spec.ballast.map((b) => ({ ...b, at: point(b.at) })),
    wires: spec.wires.map((w) => ({ ...w, path: w.path.map(point) })),
    bib: spec.bib && { ...spec.bib, root: point(spec.bib.root), angle: Math.PI - spec.bib.angle },
    tie: point(spec.tie),
    hangers: spec.hangers.map((h) => ({ ...h, at: point(h.at) })),
    fittings: spec.fittings.map((f) => ({ ...f, at: point(f.at) })),
  };
}

/** The same bait k times as large in every length, of the same materials. */
export function enlarged(spec: BaitSpec, k: number): BaitSpec {
  const point = (p: { x: number; z: number }) => ({ x: k * p.x, z: k * p.z });
  const knots = (list: readonly Knot[]): Knot[] => list.map((n) => ({ s: k * n.s, v: k * n.v }));
  const exponents = (list: readonly Knot[]): Knot[] => list.map((n) => ({ s: k * n.s, v: n.v }));
  const k3 = k ** 3;
  const { shape } = spec;
  return {
    ...spec,
    shape: {
      length: k * shape.length,
      top: knots(shape.top),
      bottom: knots(shape.bottom),
      halfBreadth: knots(shape.halfBreadth),
      exponentAbove: exponents(shape.exponentAbove),
      exponentBelow: exponents(shape.exponentBelow),
    },
    chambers: spec.chambers.map((c) => ({
      ...c,
      from: k * c.from,
      to: k * c.to,
      height: k * c.height,
      tall: k * c.tall,
      wide: k * c.wide,
      balls: c.balls && { ...c.balls, diameter: k * c.balls.diameter },
    })),
    ballast: spec.ballast.map((b) => ({
      ...b,
      at: point(b.at),
      mass: k3 * b.mass,
      hole: b.hole === null ? null : k3 * b.hole,
    })),
    wires: spec.wires.map((w) => ({ ...w, path: w.path.map(point), diameter: k * w.diameter })),
    bib: spec.bib && {
      ...spec.bib,
      root: point(spec.bib.root),
      length: k * spec.bib.length,
      width: k * spec.bib.width,
      slot: k * spec.bib.slot,
      thickness: k * spec.bib.thickness,
    },
    tie: point(spec.tie),
    hangers: spec.hangers.map((h) => ({
      ...h,
      at: point(h.at),
      ring: h.ring && { ...h.ring, mass: k3 * h.ring.mass },
      hook: h.hook && { ...h.hook, mass: k3 * h.hook.mass },
    })),
    fittings: spec.fittings.map((f) => ({ ...f, at: point(f.at), mass: k3 * f.mass })),
    coats: spec.coats.map((c) => ({ ...c, thickness: c.thickness === null ? null : k * c.thickness })),
  };
}
