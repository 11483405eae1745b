import fc from "fast-check";
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { parseScenario } from "../../src/document";
import type { Scenario } from "../../src/document";
import {
  bodyInputs,
  cadenceInputs,
  partSections,
  tackleInputs,
  waterInputs,
} from "../../src/ui/state/inputs";
import type { Input } from "../../src/ui/state/inputs";
import { Workspace } from "../../src/ui/state/workspace.svelte";

const folder = fileURLToPath(new URL("../../scenarios/", import.meta.url));
const scenarios = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => {
    const parsed = parseScenario(readFileSync(folder + name, "utf8"));
    if (!parsed.ok) throw new Error(`${name} is refused`);
    return parsed.scenario;
  });

const inputsOf = (one: Scenario): readonly Input[] =>
  [
    ...[waterInputs, bodyInputs, tackleInputs, cadenceInputs].flatMap((make) => make(one)),
    ...partSections(one).flatMap(({ groups }) => groups),
  ].flatMap((group) => group.inputs);

/** Which scenario, which inputs, and how far along their sliders. */
const turns = fc.record({
  scenario: fc.nat(scenarios.length - 1),
  moves: fc.array(
    fc.record({
      input: fc.nat(200),
      share: fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true })),
    }),
    {
      minLength: 1,
      maxLength: 6,
    },
  ),
});

describe("whatever the sliders are turned to", () => {
  test("a move is taken with finite figures, or refused in words; undo brings the start back", () => {
    let taken = 0;
    let refused = 0;
    fc.assert(
      fc.property(turns, ({ scenario, moves }) => {
        const start = scenarios[scenario];
        if (start === undefined) throw new Error("no such scenario");
        const work = new Workspace(start);
        for (const { input: place, share } of moves) {
          const inputs = inputsOf(work.scenario);
          const input = inputs[place % inputs.length];
          if (input === undefined) throw new Error("no input");
          const { min, max, step } = input.slider;
          const value = Number((min + Math.round((share * (max - min)) / step) * step).toFixed(6));
          if (value < input.min || (input.above && value <= input.min)) continue;
          const before = work.scenario;
          work.turn(input, value);
          if (work.refusal !== null) {
            refused++;
            expect(work.scenario).toBe(before);
            expect(work.refusal.text).toMatch(/^Not taken: .{10}/);
            work.forgetRefusal();
          } else {
            taken++;
            // Widths and lengths are written to a thousandth of a millimetre.
            expect(Math.abs(input.read(work.scenario) - value)).toBeLessThanOrEqual(0.002);
          }
          const { statics } = work.now;
          for (const figure of [statics.mass, statics.displaced, statics.netBuoyancy, statics.BG])
            expect(Number.isFinite(figure)).toBe(true);
          work.settle();
        }
        while (work.undoLabel !== null) work.undo();
        expect(work.scenario).toEqual(start);
        expect(work.changed).toBe(false);
      }),
      { seed: 20, numRuns: 100 },
    );
    // The property says something only where both happen.
    expect(taken).toBeGreaterThan(150);
    expect(refused).toBeGreaterThan(0);
  });
});
