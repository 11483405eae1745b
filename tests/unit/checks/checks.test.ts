import { describe, expect, test } from "vitest";
import { assemble } from "../../../src/model/bait";
import type { BaitSpec } from "../../../src/model/bait";
import { stockMisses, USUAL_WALL, wallsOf } from "../../../src/model/checks";
import { spec as drawn } from "../../lib/drawn";
import { mm, rod } from "./rod";

const BALL = (r: number): number => (4 / 3) * Math.PI * r ** 3;

function wallOfHole(station: number, height: number, radius: number): number {
  return wallsOf(assemble({ ...rod, ballast: [slugAt(station, height, radius)] }))[0]!.least / mm;
}

/** A weight that is a ball of this radius (mm), without a hole of its own. */
function slugAt(station: number, height: number, radius: number): BaitSpec["ballast"][number] {
  const slug = drawn.ballast[0]!;
  const at = { x: -station * mm, z: height * mm };
  return { ...slug, at, where: "inside", hole: null, mass: BALL(radius * mm) * slug.stuff.density };
}

/** A given hole as wide and as deep as twice `half`, mm. */
function wallOfGivenHole(station: number, height: number, half: number): number {
  const hole = 2 * Math.PI * (half * mm) ** 3;
  const slug = { ...slugAt(station, height, 1), hole };
  const [wall] = wallsOf(assemble({ ...rod, ballast: [slug] }));
  expect(wall!.as).toBe("hole");
  return wall!.least / mm;
}

/** A hole drilled up from the bottom edge at the middle of the rod; the weight's middle at a height, mm. */
function wallOfDrilled(drill: number, depth: number, height: number): number {
  const hole = (Math.PI / 4) * (drill * mm) ** 2 * depth * mm;
  const slug = { ...slugAt(50, height, 1), hole, drill: drill * mm };
  const [wall] = wallsOf(assemble({ ...rod, ballast: [slug] }));
  expect(wall!.as).toBe("bore");
  return wall!.least / mm;
}

function wallOfFitting(height: number, radius: number): number {
  const stuff = drawn.ballast[0]!.stuff;
  const fitting = {
    name: "insert",
    at: { x: -50 * mm, z: height * mm },
    mass: BALL(radius * mm) * stuff.density,
    stuff,
    where: "inside" as const,
  };
  return wallsOf(assemble({ ...rod, fittings: [fitting] }))[0]!.least / mm;
}

function wallOfBox(from: number, to: number, height: number, tall: number, wide: number): number {
  const bait = assemble({
    ...rod,
    chambers: [
      {
        name: "box",
        from: from * mm,
        to: to * mm,
        height: height * mm,
        tall: tall * mm,
        wide: wide * mm,
        balls: null,
      },
    ],
  });
  return wallsOf(bait)[0]!.least / mm;
}

describe("a hole by its drill", () => {
  // The weight lies from its own low end up to the hole's; below it is the plug.
  test.each([
    // Hole from −10 to −2, weight from −8: 2 mm of plug; beside it the rod is 6 mm broad, the hole 3.
    ["as thick as its plug", 6, 8, -5, 2],
    ["as thick as the wood beside the weight's low end", 10, 8, -5, 1],
    // Hole up to +8: the skin is nearest to its rim, 1 mm off the middle plane.
    ["as thick as the wood above its rim", 2, 18, 3, 10 - Math.hypot(1, 8)],
    // Weight from −10: the round belly beside the mouth lies in it, deepest where 3 − y = 10 − √(10² − y²).
    ["below nothing where the weight reaches the mouth", 6, 8, -6, (Math.sqrt(604) - 14) / 4 - 3],
  ])("leaves a wall %s", (_, drill, depth, height, wall) => {
    expect(wallOfDrilled(drill, depth, height)).toBeCloseTo(wall, 3);
  });

  test("is told how deep it reaches into a chamber, by the cylinder that the drill makes", () => {
    const hole = (Math.PI / 4) * (4 * mm) ** 2 * 8 * mm;
    const bored = { ...slugAt(50, -4, 1), hole, drill: 4 * mm };
    const box = {
      name: "box",
      from: 51.5 * mm,
      to: 60 * mm,
      height: 0,
      tall: 6 * mm,
      wide: 4 * mm,
      balls: null,
    };
    const told = (from: number): readonly string[] =>
      assemble({ ...rod, ballast: [bored], chambers: [{ ...box, from: from * mm }] }).warnings.map(
        (w) => w.text,
      );
    // The hole reaches aft to 52 mm.
    expect(told(51.5).join()).toContain("overlap by 0.5 mm inside the body");
    expect(told(52.1)).toEqual([]);
  });
});

describe("walls of a round rod", () => {
  const LEAST = USUAL_WALL / mm;
  test.each([
    ["a hole on the axis", wallOfHole(50, 0, 5), 5, false],
    ["a hole near the belly, just thick enough", wallOfHole(50, -3.4, 5), 1.6, false],
    ["a hole near the belly, just too thin", wallOfHole(50, -3.6, 5), 1.4, true],
    ["a hole through the belly", wallOfHole(50, -6, 5), -1, true],
    ["a hole near the nose's flat face, just thick enough", wallOfHole(6.6, 0, 5), 1.6, false],
    ["a hole near the tail's flat face, just too thin", wallOfHole(93.6, 0, 5), 1.4, true],
    ["a box by its corners, just thick enough", wallOfBox(30, 60, 0, 12, 12), 10 - Math.hypot(6, 6), false],
    [
      "a box by its corners, just too thin",
      wallOfBox(30, 60, 0, 12.1, 12.1),
      10 - Math.hypot(6.05, 6.05),
      true,
    ],
    ["a box near the nose's flat face", wallOfBox(1.4, 30, 0, 6, 6), 1.4, true],
    ["a low box, by its lower corners", wallOfBox(30, 60, -3, 6, 6), 10 - Math.hypot(3, 6), false],
    [
      "a given hole, by the rim of its floor, just thick enough",
      wallOfGivenHole(50, -3, 4.2),
      10 - Math.hypot(4.2, 7.2),
      false,
    ],
    [
      "a given hole, by the rim of its floor, just too thin",
      wallOfGivenHole(50, -3, 4.35),
      10 - Math.hypot(4.35, 7.35),
      true,
    ],
    ["a given hole near the nose's flat face, just thick enough", wallOfGivenHole(5.6, 0, 4), 1.6, false],
    ["a given hole near the nose's flat face, just too thin", wallOfGivenHole(5.4, 0, 4), 1.4, true],
    ["an inside fitting, just thick enough", wallOfFitting(5.4, 3), 1.6, false],
    ["an inside fitting, just too thin", wallOfFitting(5.6, 3), 1.4, true],
    ["a box near the tail's flat face, just thick enough", wallOfBox(70, 98.4, 0, 6, 6), 1.6, false],
    // The hole ends at −2 and its weight begins as far below the weight's middle: at −8.4, at −8.6.
    ["a drilled hole by its plug, just thick enough", wallOfDrilled(6, 8, -5.2), 1.6, false],
    ["a drilled hole by its plug, just too thin", wallOfDrilled(6, 8, -5.3), 1.4, true],
    // It ends at 8.3 and at 8.5, 1 mm beside the middle plane.
    [
      "a drilled hole by its end, just thick enough",
      wallOfDrilled(2, 18.3, 3),
      10 - Math.hypot(1, 8.3),
      false,
    ],
    ["a drilled hole by its end, just too thin", wallOfDrilled(2, 18.5, 3), 10 - Math.hypot(1, 8.5), true],
  ])("%s", (_, found, exact, thin) => {
    expect(found).toBeCloseTo(exact, 4);
    expect(found < LEAST).toBe(thin);
  });
});

describe("a bait and the board that it is cut from", () => {
  const { drawn: body } = assemble(rod);
  const misses = (pieces: "one" | "halves", length: number, width: number, thickness: number) =>
    stockMisses(body, { pieces, length: length * mm, width: width * mm, thickness: thickness * mm }).map(
      ({ along, needs, has }) => [along, Number(((needs - has) / mm).toFixed(6))],
    );
  test.each([
    ["just large enough", "one", 100.1, 20.1, 20.1, []],
    ["just too short", "one", 99.9, 20.1, 20.1, [["length", 0.1]]],
    ["just too narrow", "one", 100.1, 19.9, 20.1, [["width", 0.1]]],
    ["just too thin", "one", 100.1, 20.1, 19.9, [["thickness", 0.1]]],
    ["two halves just thick enough", "halves", 100.1, 20.1, 10.05, []],
    ["two halves just too thin", "halves", 100.1, 20.1, 9.95, [["thickness", 0.1]]],
  ] as const)("%s", (_, pieces, length, width, thickness, expected) => {
    expect(misses(pieces, length, width, thickness)).toEqual(expected);
  });
});

describe("what lies in the body of the rod", () => {
  const overlaps = (spec: Partial<BaitSpec>): boolean =>
    assemble({ ...rod, ...spec }).warnings.some(({ text }) => text.includes("overlap"));
  const chamber = (from: number, to: number) => ({
    name: "box",
    from: from * mm,
    to: to * mm,
    height: 0,
    tall: 6 * mm,
    wide: 6 * mm,
    balls: null,
  });
  const wire = {
    ...drawn.wires[0]!,
    path: [
      { x: -10 * mm, z: 0 },
      { x: -90 * mm, z: 0 },
    ],
    diameter: 1 * mm,
  };
  /** Its tongue stands upright from the belly to 4 mm below the datum line, 1.5 mm thick. */
  const bib = {
    ...drawn.bib!,
    root: { x: -20 * mm, z: -10 * mm },
    angle: Math.PI / 2,
    slot: 6 * mm,
    thickness: 1.5 * mm,
  };
  test.each([
    [
      "a weight just clear of a chamber",
      { chambers: [chamber(30, 60)], ballast: [slugAt(63.1, 0, 3)] },
      false,
    ],
    ["a weight just into a chamber", { chambers: [chamber(30, 60)], ballast: [slugAt(62.9, 0, 3)] }, true],
    ["a weight just clear of a wire", { wires: [wire], ballast: [slugAt(50, -3.6, 3)] }, false],
    ["a weight just into a wire", { wires: [wire], ballast: [slugAt(50, -3.4, 3)] }, true],
    ["a weight just clear of the bib's slot", { bib, ballast: [slugAt(20, -0.15, 3)] }, false],
    ["a weight just into the bib's slot", { bib, ballast: [slugAt(20, -0.35, 3)] }, true],
    [
      "two weights just clear of each other",
      { ballast: [slugAt(50, 0, 3), { ...slugAt(56.1, 0, 3), name: "b" }] },
      false,
    ],
    [
      "two weights just into each other",
      { ballast: [slugAt(50, 0, 3), { ...slugAt(55.9, 0, 3), name: "b" }] },
      true,
    ],
  ])("%s", (_, spec, expected) => {
    expect(overlaps(spec)).toBe(expected);
  });
});
