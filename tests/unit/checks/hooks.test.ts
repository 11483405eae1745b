import { describe, expect, test } from "vitest";
import { assemble } from "../../../src/model/bait";
import type { BaitSpec } from "../../../src/model/bait";
import { hookReaches } from "../../../src/model/checks";
import { hookLength } from "../../../src/model/parts";
import { spec as drawn } from "../../lib/drawn";
import { mm, rod } from "./rod";

describe("hooks", () => {
  const mass = 0.5e-3;
  const length = hookLength(mass);
  const hanger = (name: string, x: number, z: number) => ({
    name,
    at: { x, z },
    ring: null,
    hook: { mass, density: 7820, size: null, weighed: true },
  });
  const touching = (spec: Partial<BaitSpec>): readonly string[] =>
    hookReaches(assemble({ ...rod, ...spec })).map(({ touches }) => touches.what);

  /** A hook whose length (and ring) the file says, m. */
  const long = (
    x: number,
    z: number,
    more: Partial<NonNullable<BaitSpec["hangers"][number]["hook"]>>,
    ring = 0,
  ) => ({
    ...hanger("a", x, z),
    hook: { mass, density: 7820, size: null, weighed: true, ...more },
    ring: ring === 0 ? null : { mass: ring, density: 8000 },
  });

  // A ring of 0.1 g is 6 mm across: the hook hangs three quarters of it lower.
  test.each([
    ["a given length just within reach of the tie eye", 24.9, { length: 25 * mm }, 0, ["tie"]],
    ["a given length just out of reach", 25.1, { length: 25 * mm }, 0, []],
    ["a size of the table just within reach", 21.9, { size: "6" }, 0, ["tie"]],
    ["a size of the table just out of reach", 22.1, { size: "#6" }, 0, []],
    ["a given length wins over the size", 22.1, { size: "6", length: 23 * mm }, 0, ["tie"]],
    ["a size that no table has goes by the mass", 1e3 * length - 0.1, { size: "huge" }, 0, ["tie"]],
    ["a ring lets it reach farther", 26.4, { size: "6" }, 0.1e-3, ["tie"]],
    ["a ring, just out of reach", 26.6, { size: "6" }, 0.1e-3, []],
  ])("%s", (_, away, hook, ring, expected) => {
    const tie = { x: 5 * mm, z: 0 };
    expect(touching({ tie, hangers: [long(tie.x - away * mm, 0, hook, ring)] })).toEqual(expected);
  });

  test.each([
    ["two hooks on a slant just within reach", 0.999, ["hook"]],
    ["two hooks on a slant just out of reach", 1.001, []],
  ])("%s", (_, share, expected) => {
    const apart = 2 * length * share;
    const hangers = [
      hanger("a", -30 * mm, -11 * mm),
      hanger("b", -30 * mm - 0.8 * apart, -11 * mm - 0.6 * apart),
    ];
    expect(touching({ hangers })).toEqual(expected);
  });

  test.each([
    ["two hooks just within reach", 2 * length - 0.1 * mm, ["hook"]],
    ["two hooks just out of reach", 2 * length + 0.1 * mm, []],
  ])("%s", (_, apart, expected) => {
    const hangers = [hanger("a", -30 * mm, -11 * mm), hanger("b", -30 * mm - apart, -11 * mm)];
    expect(touching({ hangers })).toEqual(expected);
  });

  test.each([
    ["the tie eye just within reach", -0.1 * mm, ["tie"]],
    ["the tie eye just out of reach", 0.1 * mm, []],
  ])("%s", (_, more, expected) => {
    const tie = { x: 5 * mm, z: 0 };
    expect(touching({ tie, hangers: [hanger("a", tie.x - length - more, 0)] })).toEqual(expected);
  });

  // The plate hangs straight down from its root at 90°, its whole length level with the hanger.
  test.each([
    ["the bib just within reach", -0.1 * mm, ["bib"]],
    ["the bib just out of reach", 0.1 * mm, []],
  ])("%s", (_, more, expected) => {
    const root = { x: -5 * mm, z: -10 * mm };
    const bib = { ...drawn.bib!, root, angle: Math.PI / 2, length: 20 * mm, slot: 0 };
    expect(touching({ bib, hangers: [hanger("a", root.x - length - more, -15 * mm)] })).toEqual(expected);
  });
});

describe("hooks of given lengths", () => {
  /** Hangers by station aft of the datum's origin and height, with the length of their hook, mm. */
  const touches = (hooks: readonly (readonly [x: number, z: number, length: number])[], more = {}) =>
    hookReaches(
      assemble({
        ...rod,
        ...more,
        hangers: hooks.map(([x, z, length], i) => ({
          name: `hook ${i}`,
          at: { x: x * mm, z: z * mm },
          ring: null,
          hook: { mass: 0.5e-3, density: 7820, size: null, length: length * mm, weighed: true },
        })),
      }),
    ).map(({ touches: one }) => one.what);

  test.each([
    // 20 and 12 mm long: together 32.
    ["a long and a short one just within reach", 31.9, ["hook"]],
    ["a long and a short one just out of reach", 32.1, []],
  ])("%s", (_, apart, expected) => {
    expect(
      touches([
        [-30, -11, 20],
        [-30 - apart, -11, 12],
      ]),
    ).toEqual(expected);
  });

  test("of three in a row, each reaches its neighbour and not the one beyond", () => {
    const row = [-20, -39.9, -59.8].map((x) => [x, -11, 10] as const);
    expect(touches(row)).toEqual(["hook", "hook"]);
    expect(touches(row.map(([x, z]) => [1.01 * x, z, 10] as const))).toEqual([]);
  });

  // 15 mm aft and 20 mm below the tie eye: 25 mm away.
  test.each([
    ["the tie eye on a slant just within reach", 25.1, ["tie"]],
    ["the tie eye on a slant just out of reach", 24.9, []],
  ])("%s", (_, length, expected) => {
    expect(touches([[-10, -20, length]], { tie: { x: 5 * mm, z: 0 } })).toEqual(expected);
  });

  // The plate runs from its root forward and down at 45°, 20 mm long.
  const root = { x: -5, z: -10 };
  const slope = Math.SQRT1_2;
  const bib = {
    ...drawn.bib!,
    root: { x: root.x * mm, z: root.z * mm },
    angle: Math.PI / 4,
    length: 20 * mm,
    slot: 0,
  };
  test.each([
    ["the bib's face just within reach", 10, 14.9, ["bib"]],
    ["the bib's face just out of reach", 10, 15.1, []],
  ])("%s", (_, along, away, expected) => {
    const at = [root.x + (along - away) * slope, root.z - (along + away) * slope] as const;
    expect(touches([[...at, 15]], { bib })).toEqual(expected);
  });
  test.each([
    ["the bib's tip just within reach", 14.9, ["bib"]],
    ["the bib's tip just out of reach", 15.1, []],
  ])("%s", (_, beyond, expected) => {
    const at = [root.x + (20 + beyond) * slope, root.z - (20 + beyond) * slope] as const;
    expect(touches([[...at, 15]], { bib })).toEqual(expected);
  });
});
