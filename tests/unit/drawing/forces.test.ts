import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pictureWords } from "../../../src/ui/stage/words";
import { ARROW_SCALES } from "../../../src/drawing/arrows";
import { forceMarks, sumOf } from "../../../src/drawing/forces";
import { groundOf } from "../../../src/drawing/ground";
import { SUM_WORDS } from "../../../src/drawing/legend";
import type { Mark, TextMark } from "../../../src/drawing/mark";
import { Placer } from "../../../src/drawing/placer";
import { sceneOf } from "../../../src/drawing/scene";
import { heldStill } from "../../../src/drawing/still";
import { FORCE_LEGEND } from "../../../src/model/forces";
import { bait } from "../../lib/drawn";

const scene = sceneOf(bait, null, Infinity);
const size = { width: 860, height: 400 };
const ground = groundOf({ x: -0.05, z: -0.3, scale: 4000 }, size);
const still = heldStill(scene, { x: 0, z: -0.3 }, 0);

type Forces = (typeof still)["forces"];
const drawn = (forces: Forces, look: Partial<Parameters<typeof forceMarks>[2]> = {}): Mark[] =>
  forceMarks(
    ground,
    { scene, snapshot: { ...still, forces } },
    { scale: "linear", sum: false, values: true, ...look },
    new Placer({ x0: 4, y0: 4, x1: size.width - 4, y1: size.height - 26 }),
    pictureWords("en"),
  );
const arrows = (marks: readonly Mark[]) =>
  marks.flatMap((mark) =>
    mark.kind === "arrow" && mark.title !== undefined ? [{ ...mark, letter: mark.title.split(":")[0] }] : [],
  );
const words = (marks: readonly Mark[]): TextMark[] =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark] : []));

/** A tow: the line pulls forward and up, bib and drag pull back and down, floats and weighs nearly the same. */
const TOW: Forces = [
  { key: "weight", at: still.G, force: { x: 0, z: -0.09 } },
  { key: "buoyancy", at: still.B, force: { x: 0, z: 0.091 } },
  { key: "line", at: still.eye, force: { x: 0.2, z: 0.08 } },
  { key: "bib", at: still.eye, force: { x: -0.11, z: -0.07 } },
  { key: "axial", at: still.B, force: { x: -0.05, z: 0 } },
  { key: "hooks", at: still.G, force: { x: -0.0012, z: 0.0003 } },
];

describe("letters", () => {
  test("each stands for one thing: no force has the letter of a centre, of a variant or of another force", () => {
    const letters = [...FORCE_LEGEND.map(({ letter }) => letter), SUM_WORDS.letter];
    const all = [...letters, "G", "B", "A", "C", "D"];
    expect(new Set(all).size).toBe(all.length);
  });
});

describe("arrows of forces", () => {
  test("stand at one linear scale: lengths go with the forces, and the key's bar is of that scale", () => {
    const marks = drawn(TOW);
    const perNewton = arrows(marks).map(({ from, to, letter }) => {
      const key = FORCE_LEGEND.find((one) => one.letter === letter)?.key;
      const force = TOW.find((one) => one.key === key)?.force ?? { x: NaN, z: NaN };
      return Math.hypot(to.x - from.x, to.z - from.z) / Math.hypot(force.x, force.z);
    });
    expect(perNewton).toHaveLength(5);
    for (const one of perNewton) expect(one).toBeCloseTo(perNewton[0] ?? 0, 6);
    const bar = marks.find((mark) => mark.kind === "lines");
    const [from, to] = bar?.kind === "lines" ? (bar.paths[0] ?? []) : [];
    // The largest force is 0.22 N: the ruler is of 0.5 N, and its bar of the half.
    expect(((to?.x ?? 0) - (from?.x ?? 0)) / (perNewton[0] ?? 1)).toBeCloseTo(0.25, 9);
    expect(words(marks).map((one) => one.words)).toEqual(
      expect.arrayContaining(["250\u202fmN", "length ∝ force"]),
    );
  });

  test("key and list stand clear of the flag of the depth, however deep the bait is in the picture", () => {
    const narrow = { width: 320, height: 270 };
    const { bottom, left } = groundOf({ x: 0, z: 0, scale: 1 }, narrow).rulers;
    let met = 0;
    // The eye's height in the picture, step by step down to the floor of it.
    for (let z = -0.4; z < -0.2; z += 0.002) {
      const there = groundOf({ x: -0.05, z, scale: 1800 }, narrow);
      const flag = there.at(still.eye).y;
      if (flag < 40 || flag > narrow.height - bottom - 8) continue;
      const marks = forceMarks(
        there,
        { scene, snapshot: { ...still, forces: TOW } },
        { scale: "linear", sum: false, values: true },
        new Placer({ x0: 4, y0: 4, x1: 316, y1: narrow.height - 26 }),
        pictureWords("en"),
      );
      const first = words(marks).find((one) => one.words.startsWith("too small to draw"));
      const at = first?.at;
      if (at === undefined) throw new Error("The list stands nowhere.");
      // On the screen z is y, upwards.
      const away = Math.abs(-at.z - flag);
      if (away < 17) {
        met++;
        expect(at.x).toBeGreaterThan(left + 60);
      } else if (away > 60) expect(at.x).toBeLessThan(left + 20);
    }
    expect(met).toBeGreaterThan(5);
  });

  test("those too small to draw are listed with their value", () => {
    const listed = words(drawn(TOW)).find((one) => one.words.startsWith("too small to draw"));
    expect(listed?.words).toBe("too small to draw: H 1.24\u202fmN");
    // By the logarithm it is long enough to be drawn.
    const marks = drawn(TOW, { scale: "log" });
    expect(arrows(marks).map(({ letter }) => letter)).toContain("H");
    expect(words(marks).some((one) => one.words.startsWith("too small"))).toBe(false);
  });

  test("added up they stand head to tail from G, in the picture, and end at the head of their sum", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })),
          {
            minLength: 2,
            maxLength: FORCE_LEGEND.length,
          },
        ),
        (list) => {
          const forces: Forces = list.flatMap(([x, z], i) => {
            const key = FORCE_LEGEND[i]?.key;
            return key === undefined ? [] : [{ key, at: still.G, force: { x, z } }];
          });
          const marks = drawn(forces, { sum: true, scale: "log" });
          const chain = arrows(marks);
          const total = chain.find(({ letter }) => letter === SUM_WORDS.letter);
          if (total === undefined) return;
          const G = ground.at(still.G);
          expect(total.from.x).toBeCloseTo(G.x, 6);
          expect(-total.from.z).toBeCloseTo(G.y, 6);
          for (const { to } of chain) {
            expect(to.x).toBeGreaterThan(0);
            expect(to.x).toBeLessThan(size.width);
            expect(-to.z).toBeGreaterThan(0);
            expect(-to.z).toBeLessThan(size.height);
          }
          // What is not drawn is shorter than an arrow's head: by so little at most the chain misses its end.
          const missing = forces.length + 1 - chain.length;
          const last = chain.filter((one) => one !== total).at(-1);
          expect(
            Math.hypot((last?.to.x ?? 0) - total.to.x, (last?.to.z ?? 0) - total.to.z),
          ).toBeLessThanOrEqual(9 * missing + 1e-6);
        },
      ),
      { seed: 3, numRuns: 200 },
    );
    expect(sumOf(TOW).x).toBeCloseTo(0.0388, 12);
  });

  test("no two labels overlap, however the forces point", () => {
    const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(angle, fc.double({ min: -4, max: 1, noNaN: true })), {
          minLength: 9,
          maxLength: 9,
        }),
        fc.constantFrom(...ARROW_SCALES),
        fc.boolean(),
        (list, scale, sum) => {
          const forces: Forces = list.flatMap(([turn, power], i) => {
            const key = FORCE_LEGEND[i]?.key;
            const force = { x: Math.cos(turn) * 10 ** power, z: Math.sin(turn) * 10 ** power };
            return key === undefined ? [] : [{ key, at: i % 2 === 0 ? still.G : still.eye, force }];
          });
          const boxes = words(drawn(forces, { scale, sum }))
            .filter(({ bold }) => bold === true)
            .map(({ at, words: text }) => ({ x: at.x, y: -at.z, width: 7.8 * text.length, height: 13 }));
          boxes.forEach((a, i) => {
            for (const b of boxes.slice(i + 1))
              expect(
                Math.abs(a.x - b.x) >= (a.width + b.width) / 2 ||
                  Math.abs(a.y - b.y) >= (a.height + b.height) / 2,
              ).toBe(true);
          });
        },
      ),
      { seed: 5, numRuns: 150 },
    );
  });
});
