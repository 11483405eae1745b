import { describe, expect, test } from "vitest";
import { random, wrench } from "../../../src/model/base";
import { assemble, type Bait } from "../../../src/model/bait";
import { createEvaluator, prepareSwimmer, towWrench, type Swimmer } from "../../../src/model/forces";
import type { Knot, ShapeSpec } from "../../../src/model/shape";
import { prepareTow, reach } from "../../../src/model/tow";
import { Swimmers } from "../../../src/model/tow/attitude";
import { at, freshWater, minnow, minnowShape, openWater } from "../../lib/towed";
import { bare } from "../../lib/si";

const L = minnowShape.length;
const smooth = minnow(40);
const section = (s: number) => smooth.shape.section(s);

/** Stations close together at both ends. */
const stations = (n: number): number[] =>
  Array.from({ length: n }, (_, i) =>
    i === 0 ? 0 : i === n - 1 ? L : (L * (1 - Math.cos((Math.PI * i) / (n - 1)))) / 2,
  );
const knots = (list: readonly number[], v: (s: number, i: number) => number): Knot[] =>
  list.map((s, i) => ({ s, v: v(s, i) }));

/** A minnow with a bib and hooks in another drawing. */
function drawn(shape: Partial<ShapeSpec>): Bait {
  const { bib, hangers, tie, body, ballast } = smooth.spec;
  return assemble(bare({ ...minnowShape, ...shape }, { bib, hangers, tie, body, ballast }));
}

/** A fin under the belly, drawn with six points. */
function fin(depth: number): Bait {
  const points = [0.5, 0.51, 0.515, 0.525, 0.53, 0.54].map((k) => k * L);
  const all = [...stations(15), ...points].sort((a, b) => a - b);
  return drawn({
    bottom: knots(all, (s) => {
      const k = points.indexOf(s);
      return section(s).bottom - (k > 0 && k < 5 ? depth : 0);
    }),
  });
}

/** Ribs 5 mm apart that are 10 % broader and deeper, with as much less between them. */
function ribs(): Bait {
  const n = Math.round(L / 0.0025);
  const list = Array.from({ length: n + 1 }, (_, i) => (i === n ? L : (L * i) / n));
  const ribbed = (v: number, i: number): number => (i === 0 || i === n ? v : v * (i % 2 === 1 ? 1.1 : 0.9));
  return drawn({
    top: knots(list, (s, i) => ribbed(section(s).top, i)),
    bottom: knots(list, (s, i) => ribbed(section(s).bottom, i)),
    halfBreadth: knots(list, (s, i) => ribbed(section(s).halfBreadth, i)),
  });
}

/** Edges as a hand draws them: each with its own n stations, off by up to `noise` metres. */
function byHand(n: number, noise: number, seed: number): Bait {
  const rng = random(seed);
  const edge = (v: (s: number) => number, least: number): Knot[] =>
    Array.from({ length: n }, (_, i): Knot => {
      const end = i === 0 || i === n - 1;
      const s = i === 0 ? 0 : i === n - 1 ? L : (L * (i + 0.4 * (rng.uniform() - 0.5))) / (n - 1);
      return { s, v: Math.max(v(s) + (end ? 0 : noise * (2 * rng.uniform() - 1)), least) };
    });
  // half a millimetre apart at the nose, so that the noise does not cross the edges
  return drawn({
    top: edge((s) => section(s).top + 1e-3, -1),
    bottom: edge((s) => section(s).bottom - 1e-3, -1),
    halfBreadth: edge((s) => section(s).halfBreadth, 0),
  });
}

const baits: readonly (readonly [string, () => Bait])[] = [
  ["a belly fin of 8 mm", () => fin(0.008)],
  ["a belly fin of 20 mm", () => fin(0.02)],
  ["ribs 5 mm apart", ribs],
  ...[15, 30, 60].flatMap((n) =>
    [0.00015, 0.0005].map(
      (noise) => [`${n} points off by ${noise * 1e3} mm`, () => byHand(n, noise, n)] as const,
    ),
  ),
];

const tackle = {
  line: { material: "nylon", diameter: 0.25e-3, density: 1140, EA: 100 },
  lineOut: 25,
  rodTip: 1,
};

const dragArea = ({ strips }: Swimmer): number =>
  strips.reduce((sum, p) => sum + p.shapeFactor * 2 * p.halfBreadth * p.ds, 0);
const volume = ({ strips }: Swimmer): number => strips.reduce((sum, p) => sum + p.area * p.ds, 0);

describe.each(baits)("strips of %s", (_, make) => {
  const bait = make();
  const swimmer = prepareSwimmer(bait);
  const fine = prepareSwimmer(bait, { strips: 1024 });

  test("hold volume, added mass and drag area to 1e-4", () => {
    // 1024 strips are themselves within some 1e-5
    expect(Math.abs(volume(swimmer) / bait.shape.volume - 1)).toBeLessThan(1.01e-4);
    expect(Math.abs(swimmer.addedBody.a33 / fine.addedBody.a33 - 1)).toBeLessThan(1.2e-4);
    expect(Math.abs(swimmer.addedBody.a55 / fine.addedBody.a55 - 1)).toBeLessThan(1.5e-4);
    expect(Math.abs(dragArea(swimmer) / dragArea(fine) - 1)).toBeLessThan(1.2e-4);
  });

  test("forces are those of 1024 strips within 3e-4", () => {
    for (const [u, w] of [
      [0.9, 0.2],
      [0.3, -0.3],
    ] as const) {
      const [a, b] = [swimmer, fine].map((c) => towWrench(c, at({ u, w }), freshWater, wrench()));
      const size = Math.hypot(b?.x ?? NaN, b?.z ?? NaN);
      expect(Math.abs((a?.z ?? NaN) - (b?.z ?? NaN))).toBeLessThan(3e-4 * size);
      expect(Math.abs((a?.m ?? NaN) - (b?.m ?? NaN))).toBeLessThan((3e-4 * size * L) / 2);
    }
  });

  test("the bait runs as deep as with 1024, within 5e-4", () => {
    const tow = prepareTow(bait);
    const finer = { ...tow, swimmers: new Swimmers(bait, { strips: 1024 }) };
    const [a, b] = [tow, finer].map((t) => reach(t, freshWater, tackle, { speed: 0.9 }));
    expect(a?.why).toBe(b?.why);
    expect(b?.depth).toBeGreaterThan(0.5);
    expect(Math.abs((a?.depth ?? NaN) / (b?.depth ?? NaN) - 1)).toBeLessThan(5e-4);
  });

  test("float at the surface too", () => {
    const evaluator = createEvaluator(swimmer, openWater);
    evaluator.evaluate(at({ Z: -0.001, pitch: 0.1 }));
    expect(evaluator.bodyShare).toBeGreaterThan(0.2);
    expect(evaluator.bodyShare).toBeLessThan(1);
  });
});

test("a smooth body keeps 32 strips", () => {
  expect(prepareSwimmer(smooth).strips).toHaveLength(32);
});
