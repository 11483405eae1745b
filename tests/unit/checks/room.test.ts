import { describe, expect, test } from "vitest";
import { addPart, compileParts, doublePart, readScenario, removePart } from "../../../src/document";
import type { Scenario, StandsFree } from "../../../src/document";
import {
  hookReaches,
  roomIn,
  thinBetween,
  USUAL_CLEAR,
  USUAL_WALL,
  wallsOf,
} from "../../../src/model/checks";
import type { Bait } from "../../../src/model/bait";
import type { PartKey } from "../../../src/model/parts";
import { scenarioOf } from "../../lib/scenarios";
import { starter } from "../../../src/ui/maker";
import { scenario } from "../ui-app/scenario";

/** A new part finds a place of its own: nothing is said about what the program chose. */

function baitOf(from: Scenario): Bait {
  const read = readScenario(from);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.compiled.bait;
}

const bodyIn = ({ drawn }: Bait): Parameters<typeof addPart>[2] => ({
  length: drawn.length * 1e3,
  at(station) {
    const { top, bottom, halfBreadth } = drawn.section(Math.min(drawn.length, Math.max(0, station / 1e3)));
    return { top: top * 1e3, bottom: bottom * 1e3, half: halfBreadth * 1e3 };
  },
});

function freeIn(from: Scenario, least = USUAL_WALL): StandsFree {
  const bait = baitOf(from);
  return roomIn({ ...bait, spec: { ...compileParts(from.bait), tie: bait.spec.tie } }, least);
}

const put = (from: Scenario, key: PartKey, least = USUAL_WALL) =>
  addPart(from, key, bodyIn(baitOf(from)), freeIn(from, least))!;

/** What is said about a bait: overlaps and what lies outside, thin walls, thin wood beside chambers, hooks that reach something. */
function said(from: Scenario, least = USUAL_WALL): readonly string[] {
  const bait = baitOf(from);
  return [
    ...bait.warnings.map(({ path, text }) => `${path}: ${text}`),
    ...wallsOf(bait).flatMap((wall) => (wall.least < least ? [`${wall.path}: thin`] : [])),
    ...thinBetween(bait).map(({ path }) => `${path}: thin wood`),
    ...hookReaches(bait).map(({ path }) => `${path}: reaches`),
  ];
}

const bare = starter();

describe("a new part", () => {
  test("stands at its usual place where that is free", () => {
    const one: Scenario = { ...bare, bait: { ...bare.bait, ballast: [], wires: [], chambers: [] } };
    const usual = addPart(one, "ballast", bodyIn(baitOf(one)), () => true)!;
    expect(put(one, "ballast").scenario).toEqual(usual.scenario);
  });

  test.each(["ballast", "chambers", "wires", "fittings"] as const)(
    "of the kind %s finds a place beside what is there, three times over, and nothing new is said",
    (key) => {
      let from = bare;
      for (let k = 0; k < 3; k++) {
        const before = said(from);
        const added = put(from, key);
        if (!added.free) {
          // A chamber is large: there may be no room for another. The first has one.
          expect(k).toBeGreaterThan(0);
          return;
        }
        from = added.scenario;
        expect(said(from)).toEqual(before);
      }
    },
  );

  test("two that are put in one after the other do not stand at one place", () => {
    for (const key of ["ballast", "fittings"] as const) {
      const twice = put(put(bare, key).scenario, key).scenario.bait[key];
      expect(twice.at(-1)?.at_mm).not.toEqual(twice.at(-2)?.at_mm);
    }
  });

  test("is the nearest: one step back toward the usual place it would touch something", () => {
    const usual = addPart(bare, "ballast", bodyIn(baitOf(bare)), () => true)!.scenario.bait.ballast.at(-1)!;
    const { scenario: after } = put(bare, "ballast");
    const found = after.bait.ballast.at(-1)!;
    const away = [found.at_mm[0] - usual.at_mm[0], found.at_mm[1] - usual.at_mm[1]] as const;
    expect(Math.hypot(...away)).toBeGreaterThan(0);
    // The steps are half a millimetre or more: a millimetre nearer there is none.
    const t = 1 - 1 / Math.hypot(...away);
    const nearer = [usual.at_mm[0] + t * away[0], usual.at_mm[1] + t * away[1]] as [number, number];
    const others = bare.bait.ballast;
    const back = { ...bare, bait: { ...bare.bait, ballast: [...others, { ...found, at_mm: nearer }] } };
    const isFree = freeIn(bare);
    expect(isFree(compileParts({ ballast: [found] }))).toBe(true);
    expect(isFree(compileParts({ ballast: [back.bait.ballast.at(-1)!] }))).toBe(false);
  });

  test("stands at its usual place, and says so, where there is no free one", () => {
    const wall = 50e-3;
    const added = put(bare, "ballast", wall);
    expect(added.free).toBe(false);
    const usual = addPart(bare, "ballast", bodyIn(baitOf(bare)), () => true)!;
    expect(added.scenario).toEqual(usual.scenario);
  });

  test("with a hook hangs where it reaches nothing, or says that it does not", () => {
    const one: Scenario = { ...bare, bait: { ...bare.bait, hangers: [] } };
    const bait = baitOf(one);
    const first = put(one, "hangers");
    expect(first.free).toBe(true);
    expect(hookReaches(baitOf(first.scenario))).toEqual([]);
    // A bait with hooks of the usual size at belly and tail has no room for a third, not beside the body either.
    expect(put(bare, "hangers").free).toBe(false);
    // More and more of them: at last the bait is full, and only then one reaches another.
    let from = first.scenario;
    for (let k = 0; k < 9; k++) {
      const next = put(from, "hangers");
      expect(hookReaches(baitOf(next.scenario)).length === 0).toBe(next.free);
      const station = next.scenario.bait.hangers.at(-1)?.at_mm[0] ?? NaN;
      expect(station).toBeGreaterThanOrEqual(0);
      expect(station).toBeLessThanOrEqual(1e3 * bait.drawn.length);
      if (!next.free) return;
      from = next.scenario;
    }
    throw new Error(`ten hooks on ${bait.drawn.length} m`);
  });

  test("a bib's tongue keeps clear of what is in the nose", () => {
    const one = removePart(scenario(), "bib", 0);
    const bib = put(one, "bib");
    expect(bib.free).toBe(true);
    expect(said(bib.scenario)).toEqual(said(one));
  });

  test("like another stands free too", () => {
    const first = put(bare, "ballast");
    const after = first.scenario;
    const twice = doublePart(after, "ballast", first.index, bodyIn(baitOf(after)), freeIn(after))!;
    expect(twice.free).toBe(true);
    expect(said(twice.scenario)).toEqual(said(after));
  });
});

describe("wood beside a chamber", () => {
  const rattle = scenarioOf("rattle-chamber-60");
  const moved = (ahead: number): Scenario => ({
    ...rattle,
    bait: {
      ...rattle.bait,
      ballast: rattle.bait.ballast.map((one) => ({ ...one, at_mm: [one.at_mm[0] - ahead, one.at_mm[1]] })),
    },
  });
  const left = (ahead: number): number | undefined => thinBetween(baitOf(moved(ahead)))[0]?.least;

  test("is as thick as the ball of the weight leaves it", () => {
    // 1.95 g of bismuth at 19.5, -3.4, half a millimetre behind its place; the box's near lower edge at 23.1, 1.6 - 5.5 / 2.
    const radius = Math.cbrt((3 * 1.95) / (9.747 * 4 * Math.PI)) * 10;
    const apart = Math.hypot(23.1 - 19.5, 3.4 + 1.6 - 5.5 / 2) - radius;
    expect(left(-0.5)! * 1e3).toBeCloseTo(apart, 2);
  });

  test("is said when it is thinner than a millimetre, and what overlaps is not said twice", () => {
    expect(USUAL_CLEAR).toBe(1e-3);
    expect(left(-0.1)! * 1e3).toBeGreaterThan(0.9);
    expect(left(0)).toBeUndefined();
    expect(left(-2)).toBeUndefined();
    expect(
      baitOf(moved(-2))
        .warnings.map(({ text }) => text)
        .join(),
    ).toContain("overlap");
  });
});
