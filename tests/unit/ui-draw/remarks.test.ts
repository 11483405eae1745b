import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseScenario } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { USUAL_WALL } from "../../../src/model/checks";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { lookAt, remarksOf } from "../../../src/ui/views/draw/remarks";

const units = new Units(new Prefs(null, 1200));
const read = parseScenario(readFileSync("scenarios/suspender-90.json", "utf8"));
if (!read.ok) throw new Error("the scenario cannot be read");
const { scenario } = read;
const said = (bait: Partial<Scenario["bait"]>, more: Partial<Scenario> = {}): readonly string[] =>
  remarksOf(
    lookAt(new Workspace({ ...scenario, ...more, bait: { ...scenario.bait, ...bait } }).now),
    USUAL_WALL,
    units,
    "en",
  ).map(({ text }) => text);

const hookAt = (tail: number): Partial<Scenario["bait"]> => ({
  hangers: scenario.bait.hangers.map((one, i) => (i === 1 ? { ...one, at_mm: [tail, -10.6] } : one)),
});
const ballastAt = (height: number): Partial<Scenario["bait"]> => ({
  ballast: scenario.bait.ballast.map((one, i) => (i === 0 ? { ...one, at_mm: [26, height] } : one)),
});
/** mm of what is to be done, in the text. */
const askedFor = (text: string | undefined): number =>
  Number(/Set (?:the eyes|its eye) ([\d.]+)\smm farther/.exec(text ?? "")?.[1]);

describe("what is said about a drawing ends with what to do", () => {
  it("of two hooks that can reach each other: so much farther apart, and no less, is enough", () => {
    const [text] = said(hookAt(70));
    expect(text).toMatch(
      /can reach each other.* Set the eyes [\d.]+\smm farther apart, or take shorter hooks\.$/,
    );
    const more = askedFor(text);
    expect(said(hookAt(70 + more))).toEqual([]);
    expect(said(hookAt(70 + more - 0.1))).toHaveLength(1);
  });

  it("of a hook that can reach the line: so much farther off is enough", () => {
    const tie = (at: number): readonly string[] =>
      said({ tie_mm: [at, -10.6] }).filter((text) => text.includes("tie eye"));
    const more = askedFor(tie(20)[0]);
    expect(tie(20 - more)).toEqual([]);
    expect(tie(20 - more + 0.1)).toHaveLength(1);
  });

  it("of a thin wall, of two things in one place, and of a board that is too small", () => {
    expect(said(ballastAt(-4.5))).toEqual([
      expect.stringMatching(/wall of .* Move it inward, or take a smaller weight\.$/),
    ]);
    // What is just thinner than wanted never reads as what is wanted.
    for (const height of [-3.55, -3.6, -3.65, -3.7, -3.75, -3.8])
      for (const text of said(ballastAt(height))) {
        const [wall, wanted] = [.../([\d.]+)\smm to the skin; the least you want is ([\d.]+)/.exec(text)!]
          .slice(1)
          .map(Number);
        expect(wall).toBeLessThan(wanted!);
      }
    expect(said(ballastAt(0.8)).some((text) => /overlap by .* Move one of them\.$/.test(text))).toBe(true);
    const stock = { pieces: "one", thickness_mm: 10, width_mm: 20, length_mm: 95 } as const;
    expect(said({}, { stock })).toEqual([
      expect.stringMatching(/stand over\. Take a larger board, or make the body smaller\.$/),
    ]);
  });
});
