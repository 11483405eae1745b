import { describe, expect, test } from "vitest";
import { emptyBox, compile, usualFor } from "../../src/document";
import { random as seeded } from "../../src/model/base";
import { USUAL_WALL } from "../../src/model/checks";
import { staticsOf } from "../../src/model/statics";
import { FORMS } from "../../src/model/shaping";
import { holesOf } from "../../src/sheet/templates/holes";
import { baitOf, loadOf, planned, usualSizes, wishOf } from "../../src/ui/maker";
import type { Answers } from "../../src/ui/maker";
import { Workspace } from "../../src/ui/state/workspace.svelte";
import { here, remarks, sized } from "../lib/new-bait";

/** What the program chose for a new bait, it does not warn of: hooks that reach nothing, weights with their wall of wood. */

const WORDS = [null, "floats", "suspends", "sinks"] as const;

/** Form and word in turn; length, wood and, for half of them, sizes unlike the usual ones by the seed. */
function drawn(count: number, seed: number): readonly Answers[] {
  const { uniform: random } = seeded(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  return Array.from({ length: count }, (_, i): Answers => {
    const form = FORMS[i % FORMS.length]!.key;
    const word = WORDS[Math.floor(i / FORMS.length) % WORDS.length] ?? null;
    const length = Math.round(30 + 170 * random() ** 2);
    const { height, breadth } = usualSizes(form, length);
    const by = (): number => (i % 2 === 0 ? 1 : 0.85 + 0.4 * random());
    return {
      ...sized(form, length),
      height: Math.max(5, Number((height * by()).toFixed(1))),
      breadth: Math.max(4, Number((breadth * by()).toFixed(1))),
      wood: pick(["balsa", "basswood", "white cedar", "beech"]),
      salinity: pick([0, 35]),
      wish: word === null ? null : wishOf(word),
    };
  });
}
const words = ({ form, length, height, breadth, wood, wish }: Answers): string =>
  `${form} ${length} × ${height} × ${breadth} mm, ${wood}, ${wish?.behaves ?? "nothing said"}`;

describe("a new bait", () => {
  // Woods that makers use, from 0.15 to 0.6 g/mL, over all forms and sizes.
  const LENGTHS = [30, 45, 75, 110, 170, 300];
  test.each(FORMS.map(({ key }) => key))("‘%s’: valid, upright and without oddities at any size", (form) => {
    for (const length of LENGTHS)
      for (const wood of ["balsa", "basswood", "white ash"]) {
        const where = `${form} ${length} mm, ${wood}`;
        const { statics } = new Workspace(baitOf(sized(form, length, { wood }))).now;
        expect(statics.warnings, where).toEqual([]);
        expect(statics.netBuoyancy, where).toBeGreaterThan(0);
        expect(statics.upright.bellyDownUnderWater, where).toBe(true);
        expect(statics.upright.uprightAfloat, where).toBe(true);
        expect(statics.floating, where).not.toBeNull();
      }
  });

  test.each(FORMS.map(({ key }) => key))(
    "‘%s’: rests level where the wood leaves room for a weight",
    (form) => {
      for (const length of LENGTHS) {
        const { statics } = new Workspace(baitOf(sized(form, length))).now;
        expect(
          Math.abs(statics.rest.pitch ?? Infinity) * (180 / Math.PI),
          `${form} ${length} mm`,
        ).toBeLessThan(4);
      }
    },
  );

  test("opens without a warning, whatever its form, size, wood and target", () => {
    for (const answers of drawn(36, 11)) expect(remarks(baitOf(answers)), words(answers)).toEqual([]);
  });

  test("opens without a warning with planned weights too, and says so where none fit", async () => {
    for (const answers of drawn(6, 12)) {
      const made = baitOf(answers);
      const { scenario, told } = await planned(made, emptyBox(), here);
      expect(remarks(scenario), words(answers)).toEqual([]);
      if (scenario === made && made.bait.ballast.length > 0)
        expect(told?.("en"), words(answers)).toMatch(/a guess/);
    }
  });

  test.each(WORDS)(
    "that is stout and 45 mm long (‘%s’) has hooks that are clear of bib and of each other",
    (word) => {
      const answers = sized("stout", 45);
      const made = baitOf({ ...answers, wish: word === null ? null : wishOf(word) });
      expect(remarks(made)).toEqual([]);
      // Shorter hooks, not none.
      for (const { hook } of made.bait.hangers) expect(hook?.mass_g).toBeGreaterThan(0.05);
    },
  );

  test("too slim for any weight in the wood carries it outside, on the belly, level and as heavy as asked", async () => {
    const made = baitOf(sized("slender", 38, { wish: wishOf("suspends") }));
    expect(made.bait.ballast.map(({ where }) => where)).toEqual(["outside"]);
    const { bait, around } = compile(made);
    const { netBuoyancy, rest } = staticsOf(bait, around.density);
    const { net_g, netTolerance_g } = made.target!;
    expect(Math.abs(netBuoyancy * 1e3 - net_g)).toBeLessThanOrEqual(netTolerance_g);
    expect(Math.abs(rest.pitch ?? Infinity) * (180 / Math.PI)).toBeLessThan(4);
    const nothing = {
      plans: [],
      nearest: null,
      limits: [],
      leastBG: { value: 0, from: "own" as const },
      notes: [],
    };
    const none = await planned(made, emptyBox(), () => Promise.resolve(nothing));
    expect(none.told?.("en")).toMatch(/no room/);
  });

  test.each([
    ["slender", 170],
    ["stout", 90],
    ["slender", 250],
    ["drop", 250],
  ])("‘%s’ of %i mm has several weights in holes that a drill makes, as asked", async (form, length) => {
    const made = baitOf(sized(form, length));
    const { scenario: bait, told } = await planned(made, emptyBox(), here);
    expect(told).toBeNull();
    expect(bait.bait.ballast.length).toBeGreaterThan(1);
    const { drills_mm } = usualFor(loadOf(made));
    for (const { name, drill_mm } of bait.bait.ballast) expect(drills_mm, name).toContain(drill_mm);
    for (const hole of holesOf(new Workspace(bait).now.compiled.bait, [])) {
      expect(hole.from, hole.name).toBe("below");
      expect(hole.wall, hole.name).toBeGreaterThanOrEqual(USUAL_WALL);
      // The drill map says nothing of a weight that is not where the plan puts it.
      expect(Math.abs(hole.off), hole.name).toBeLessThan(0.3e-3);
    }
    expect(remarks(bait)).toEqual([]);
    // Usual weights put into the box later are the same: a plan finds them again.
    expect(loadOf(bait) / loadOf(made)).toBeCloseTo(1, 1);
  });

  test("keeps what is nearest where no plan meets the target, and says so", async () => {
    // Balsa of 300 mm: no box of usual weights holds so much.
    const made = baitOf(sized("stout", 300, { wood: "balsa", wish: wishOf("suspends") }));
    const { scenario: bait, told } = await planned(made, emptyBox(), here);
    expect(told?.("en")).toMatch(
      /^No plan of weights of usual sizes meets this exactly\. One weight of just the right mass/,
    );
    expect(bait).toEqual(made);
    expect(await planned(made, emptyBox(), () => Promise.resolve(null))).toMatchObject({ scenario: made });
    expect((await planned(made, emptyBox(), () => Promise.reject(new Error("gone")))).told?.("en")).toMatch(
      /^No plan was found/,
    );
  });
});
