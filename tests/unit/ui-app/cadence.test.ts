import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseScenario, serialize } from "../../../src/document";
import type { ScenarioMove } from "../../../src/document";
import {
  asked,
  KINDS,
  lasting,
  moveInputs,
  newMove,
  reelBy,
  rhythm,
  RHYTHMS,
  shifted,
  turnsInput,
} from "../../../src/ui/state/cadence";
import { CadenceEditor } from "../../../src/ui/state/cadence-editor.svelte";
import { columnInputs, withReel, withWeed, withZone } from "../../../src/ui/state/retrieve";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { sampleScenario } from "../document/sample";

const wait = (seconds: number): ScenarioMove => ({ do: "pause", for_s: seconds });
const seconds = (moves: readonly ScenarioMove[]): number[] => moves.map(asked);

function editing(cadence: readonly ScenarioMove[]): { work: Workspace; editor: CadenceEditor } {
  const work = new Workspace({ ...sampleScenario(), cadence: [...cadence] });
  return { work, editor: new CadenceEditor(work) };
}

describe("moves of a cadence", () => {
  it("last as long as they are dragged to, and keep what they are", () => {
    expect(lasting({ do: "reel", speed_m_s: 0.8, for_s: 3 }, 5)).toEqual({
      do: "reel",
      speed_m_s: 0.8,
      for_s: 5,
    });
    expect(lasting({ do: "reel", speed_m_s: 0.8, length_m: 2 }, 5)).toEqual({
      do: "reel",
      speed_m_s: 0.8,
      length_m: 4,
    });
    // One to two stays one to two.
    expect(lasting({ do: "twitch", travel_m: 0.3, in_s: 0.1, back_s: 0.2 }, 0.9)).toEqual({
      do: "twitch",
      travel_m: 0.3,
      in_s: 0.3,
      back_s: 0.6,
    });
    expect(asked(lasting(wait(3), -1))).toBe(0.1);
  });

  it("a reel goes by time or by line, and takes as long as before", () => {
    const byTime: ScenarioMove = { do: "reel", speed_m_s: 0.8, for_s: 3 };
    const byLine = reelBy(byTime, "line");
    expect(byLine).toEqual({ do: "reel", speed_m_s: 0.8, length_m: 2.4 });
    expect(reelBy(byLine, "time")).toEqual(byTime);
  });

  it("shifted moves keep all moves and their order within", () => {
    fc.assert(
      fc.property(fc.nat(6), fc.nat(6), fc.nat(7), (a, b, to) => {
        const moves = Array.from({ length: 7 }, (_, i) => wait(i + 1));
        const chosen = { first: Math.min(a, b), last: Math.max(a, b) };
        if (to >= chosen.first && to <= chosen.last + 1) return;
        const next = shifted(moves, chosen, to);
        expect([...seconds(next.cadence)].sort()).toEqual(seconds(moves));
        const block = seconds(moves.slice(chosen.first, chosen.last + 1));
        expect(seconds(next.cadence.slice(next.first, next.first + block.length))).toEqual(block);
        // What stood at `to` follows the block.
        const after = moves[to];
        if (after !== undefined) expect(next.cadence[next.first + block.length]).toEqual(after);
        else expect(next.first + block.length).toBe(7);
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  it("every kind and every rhythm makes a document that is taken, saved and read alike", () => {
    const base = sampleScenario();
    const cadences = [
      ...RHYTHMS.map(({ key }) => rhythm(key, base.tackle.lineOut_m, base.tackle.rodTip_m)),
      ...KINDS.map(({ kind }) => [newMove(kind, [])]),
    ];
    for (const cadence of cadences) {
      const read = parseScenario(serialize({ ...base, cadence }));
      expect(read.ok && read.scenario.cadence).toEqual(cadence);
      for (const [i] of cadence.entries())
        for (const input of moveInputs({ ...base, cadence }, i))
          expect(input.read({ ...base, cadence })).toBeTypeOf("number");
    }
  });

  it("a rhythm goes on until the line is in, and not much longer", () => {
    const { tackle } = new Workspace(sampleScenario()).now.compiled;
    for (const { key } of RHYTHMS) {
      const cadence = rhythm(key, tackle.lineOut, tackle.rodTip);
      const reeled = cadence.reduce(
        (sum, move) => sum + (move.do === "reel" ? move.speed_m_s * asked(move) : 0),
        0,
      );
      // All but rod height and the 0.3 m that stay under the tip; less than one beat more.
      const line = tackle.lineOut - tackle.rodTip - 0.3;
      expect(reeled).toBeGreaterThan(line - 0.01);
      expect(reeled).toBeLessThan(line + 2.5);
    }
    expect(() => rhythm("waltz", 25, 1)).toThrow(/waltz/);
  });
});

describe("handle turns", () => {
  it("tell the same speed: ratio × spool × turns", () => {
    const scenario = withReel(
      { ...sampleScenario(), cadence: [{ do: "reel", speed_m_s: 0.91, for_s: 3 }] },
      true,
    );
    expect(scenario.tackle.reel).toEqual({ ratio: 5.2, spool_mm: 140 });
    const turns = turnsInput(scenario, 0);
    // 5.2 · 0.140 m = 0.728 m a turn; 0.91 m/s = 1.25 turns a second = 75 a minute
    expect(turns?.read(scenario)).toBeCloseTo(75, 1);
    const next = turns?.write(scenario, 100);
    // 100/60 · 0.728 m
    expect(next?.cadence[0]).toEqual({ do: "reel", speed_m_s: 1.2133, for_s: 3 });
    expect(turnsInput(sampleScenario(), 0)).toBeNull();
    expect(withReel(scenario, false).tackle.reel).toBeUndefined();
  });
});

describe("marks in the water", () => {
  it("come and go, and have inputs while they are there", () => {
    const base = sampleScenario();
    const marked = withZone(withWeed(base, true), true);
    expect(new Workspace(marked).scenario.water).toEqual(marked.water);
    expect(columnInputs(marked).map((input) => input.id)).toEqual([
      "water.weed_m",
      "water.strikeZone.from_m",
      "water.strikeZone.to_m",
    ]);
    expect(withZone(withWeed(marked, false), false).water).toEqual(base.water);
    expect(columnInputs(base)).toEqual([]);
  });
});

describe("the cadence under the hand", () => {
  it("adds, duplicates, repeats, moves and deletes, each as one step of undo", () => {
    const { work, editor } = editing([wait(1), wait(2), wait(3)]);
    editor.choose(1);
    editor.add("twitch");
    expect(editor.moves.map((move) => move.do)).toEqual(["pause", "pause", "twitch", "pause"]);
    expect(editor.single).toBe(2);
    editor.remove();
    editor.choose(0);
    editor.choose(1, true);
    editor.duplicate();
    expect(seconds(editor.moves)).toEqual([1, 2, 1, 2, 3]);
    expect(editor.chosen).toEqual({ first: 2, last: 3 });
    editor.nudge(1);
    expect(seconds(editor.moves)).toEqual([1, 2, 3, 1, 2]);
    editor.nudge(-1);
    editor.nudge(-1);
    expect(seconds(editor.moves)).toEqual([1, 1, 2, 2, 3]);
    editor.repeat(3);
    expect(seconds(editor.moves)).toEqual([1, 1, 2, 1, 2, 1, 2, 2, 3]);
    for (let i = 0; i < 7; i++) work.undo();
    expect(seconds(editor.moves)).toEqual([1, 2, 3]);
    expect(work.undoLabel).toBeNull();
  });

  it("a drag of a move's end is one step of undo", () => {
    const { work, editor } = editing([wait(1), wait(2)]);
    for (const s of [2.2, 2.7, 3.333]) editor.stretch(1, s);
    editor.settle();
    expect(seconds(editor.moves)).toEqual([1, 3.35]);
    expect(editor.duration).toBeCloseTo(4.35, 12);
    work.undo();
    expect(seconds(editor.moves)).toEqual([1, 2]);
  });

  it("puts what pulls before a release, whatever is chosen", () => {
    const { editor } = editing([wait(1), { do: "release", for_s: 2 }]);
    editor.choose(1);
    editor.add("twitch");
    expect(editor.moves.map((move) => move.do)).toEqual(["pause", "twitch", "release"]);
  });

  it("what the document refuses stays out, with its reason", () => {
    const { work, editor } = editing([
      { do: "reel", speed_m_s: 0.8, for_s: 3 },
      { do: "release", for_s: 2 },
    ]);
    editor.choose(1);
    editor.nudge(-1);
    expect(editor.moves.map((move) => move.do)).toEqual(["reel", "release"]);
    expect(work.refusal?.id).toBe("cadence");
    expect(work.refusal?.text).toMatch(/release/);
  });
});
