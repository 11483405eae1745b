import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { movesOf, parseScenario, serialize, writtenOut } from "../../../src/document";
import type { ScenarioEntry, ScenarioMove } from "../../../src/document";
import {
  asked,
  KINDS,
  lasting,
  newMove,
  reelBy,
  rhythm,
  RHYTHMS,
  shifted,
} from "../../../src/ui/state/cadence";
import { CadenceEditor } from "../../../src/ui/state/cadence-editor.svelte";
import { moveSteps } from "../../../src/ui/state/inputs";
import { moveInputs, turnsInput } from "../../../src/ui/state/move-inputs";
import { columnInputs, firstMoveAt, withReel, withWeed, withZone } from "../../../src/ui/state/retrieve";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { SWIM } from "../../../src/ui/words/swim";
import { blocksOf } from "../../../src/ui/views/swim/blocks";
import { sampleScenario } from "../../lib/sample";

const wait = (seconds: number): ScenarioMove => ({ do: "pause", for_s: seconds });
const seconds = (entries: readonly ScenarioEntry[]): number[] => movesOf(entries).map(asked);

const repeat = (times: number, moves: ScenarioMove[]): ScenarioEntry => ({ do: "repeat", times, moves });

it("knows when a bait begins to move", () => {
  const at = (cadence: readonly ScenarioEntry[]) =>
    firstMoveAt({ ...sampleScenario(), cadence: [...cadence] });
  const reel: ScenarioMove = { do: "reel", speed_m_s: 1, for_s: 2 };
  const settle: ScenarioMove = { do: "settle", for_s: 1.5 };
  expect(at([reel, settle])).toBe(0);
  expect(at([settle, settle, reel, settle])).toBe(3);
  expect(at([settle, repeat(2, [settle, reel])])).toBe(3);
  expect(at([settle])).toBe(0);
});

function editing(cadence: readonly ScenarioEntry[]): { work: Workspace; editor: CadenceEditor } {
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
        expect([...seconds(next.list)].sort()).toEqual(seconds(moves));
        const block = seconds(moves.slice(chosen.first, chosen.last + 1));
        expect(seconds(next.list.slice(next.first, next.first + block.length))).toEqual(block);
        // What stood at `to` follows the block.
        const after = moves[to];
        if (after !== undefined) expect(next.list[next.first + block.length]).toEqual(after);
        else expect(next.first + block.length).toBe(7);
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  it("every kind and every rhythm makes a document that is taken, saved and read alike", () => {
    const base = sampleScenario();
    const cadences = [
      ...RHYTHMS.map(({ key }) => rhythm(key, base)),
      ...KINDS.map((kind) => [newMove(kind, [])]),
    ];
    for (const cadence of cadences) {
      const read = parseScenario(serialize({ ...base, cadence }));
      expect(read.ok && read.scenario.cadence).toEqual(cadence);
      for (const at of cadence.flatMap((entry, i) =>
        entry.do === "repeat" ? entry.moves.map((_, inner) => moveSteps(i, inner)) : [moveSteps(i, null)],
      ))
        for (const input of moveInputs({ ...base, cadence }, at))
          expect(input.read({ ...base, cadence })).toBeTypeOf("number");
    }
  });

  it("a rhythm goes on until the line is in, and not much longer", () => {
    const base = sampleScenario();
    const { tackle } = new Workspace(base).now.compiled;
    for (const { key } of RHYTHMS) {
      const cadence = rhythm(key, base);
      // One block, however long the line is.
      expect(cadence.length).toBeLessThan(4);
      const reeled = writtenOut({ ...base, cadence }).reduce(
        (sum, { move }) => sum + (move.do === "reel" ? move.speed_m_s * asked(move) : 0),
        0,
      );
      // All but rod height and the 0.3 m that stay under the tip; less than one beat more.
      const line = tackle.lineOut - tackle.rodTip - 0.3;
      expect(reeled).toBeGreaterThan(line - 0.01);
      expect(reeled).toBeLessThan(line + 2.5);
    }
    expect(() => rhythm("waltz", base)).toThrow(/waltz/);
  });
});

describe("handle turns", () => {
  it("tell the same speed: ratio × spool × turns", () => {
    const scenario = withReel(
      { ...sampleScenario(), cadence: [{ do: "reel", speed_m_s: 0.91, for_s: 3 }] },
      true,
    );
    expect(scenario.tackle.reel).toEqual({ ratio: 5.2, spool_mm: 140 });
    const turns = turnsInput(scenario, ["cadence", 0]);
    // 5.2 · 0.140 m = 0.728 m a turn; 0.91 m/s = 1.25 turns a second = 75 a minute
    expect(turns?.read(scenario)).toBeCloseTo(75, 1);
    const next = turns?.write(scenario, 100);
    // 100/60 · 0.728 m
    expect(next?.cadence[0]).toEqual({ do: "reel", speed_m_s: 1.2133, for_s: 3 });
    expect(turnsInput(sampleScenario(), ["cadence", 0])).toBeNull();
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
    expect(editor.entries.map((move) => move.do)).toEqual(["pause", "pause", "twitch", "pause"]);
    expect(editor.single).toBe(2);
    editor.remove();
    editor.choose(0);
    editor.choose(1, true);
    editor.duplicate();
    expect(seconds(editor.entries)).toEqual([1, 2, 1, 2, 3]);
    expect(editor.chosen).toEqual({ first: 2, last: 3 });
    editor.nudge(1);
    expect(seconds(editor.entries)).toEqual([1, 2, 3, 1, 2]);
    editor.nudge(-1);
    editor.nudge(-1);
    expect(seconds(editor.entries)).toEqual([1, 1, 2, 2, 3]);
    editor.repeat(3);
    expect(editor.entries).toEqual([wait(1), repeat(3, [wait(1), wait(2)]), wait(2), wait(3)]);
    expect(editor.duration).toBeCloseTo(1 + 3 * 3 + 2 + 3, 12);
    for (let i = 0; i < 7; i++) work.undo();
    expect(seconds(editor.entries)).toEqual([1, 2, 3]);
    expect(work.undoLabel).toBeNull();
  });

  it("a drag of a move's end is one step of undo", () => {
    const { work, editor } = editing([wait(1), wait(2)]);
    for (const s of [2.2, 2.7, 3.333]) editor.stretch(1, s);
    editor.settle();
    expect(seconds(editor.entries)).toEqual([1, 3.35]);
    expect(editor.duration).toBeCloseTo(4.35, 12);
    work.undo();
    expect(seconds(editor.entries)).toEqual([1, 2]);
  });

  it("puts what pulls before a release, whatever is chosen", () => {
    const { editor } = editing([wait(1), { do: "release", for_s: 2 }]);
    editor.choose(1);
    editor.add("twitch");
    expect(editor.entries.map((move) => move.do)).toEqual(["pause", "twitch", "release"]);
  });

  it("what the document refuses stays out, with its reason", () => {
    const { work, editor } = editing([
      { do: "reel", speed_m_s: 0.8, for_s: 3 },
      { do: "release", for_s: 2 },
    ]);
    editor.choose(1);
    editor.nudge(-1);
    expect(editor.entries.map((move) => move.do)).toEqual(["reel", "release"]);
    expect(work.refusal?.id).toBe("cadence");
    expect(work.refusal?.text).toMatch(/release/);
  });
});

describe("a block of repeated moves under the hand", () => {
  const twitch: ScenarioMove = { do: "twitch", travel_m: 0.3, in_s: 0.2, back_s: 0.3 };
  const reel: ScenarioMove = { do: "reel", speed_m_s: 1, for_s: 2 };

  it("gets more and fewer rounds, and goes on until the line is in; each is one step of undo", () => {
    const { work, editor } = editing([wait(1), repeat(3, [reel, wait(1)])]);
    editor.choose(1);
    expect(editor.block?.times).toBe(3);
    editor.lengthen(1);
    expect(editor.entries[1]).toEqual(repeat(4, [reel, wait(1)]));
    editor.repeat("line in");
    const { lineOut_m, rodTip_m } = work.scenario.tackle;
    // By hand: 2 m a round, of the line all but the rod tip's height and 0.3 m.
    const rounds = Math.ceil((lineOut_m - rodTip_m - 0.3) / 2);
    expect(editor.entries[1]).toEqual({ do: "repeat", until: "line in", moves: [reel, wait(1)] });
    expect(editor.spans[1]).toEqual({ from: 1, to: 1 + 2 * rounds, rounds });
    // One round fewer than until the line is in: it has a count from then on.
    editor.count(-1);
    expect(editor.entries[1]).toEqual(repeat(rounds - 1, [reel, wait(1)]));
    work.undo();
    work.undo();
    work.undo();
    expect(editor.entries).toEqual([wait(1), repeat(3, [reel, wait(1)])]);
    expect(work.undoLabel).toBeNull();
  });

  it("a drag of its end changes the count, and is one step of undo", () => {
    const { work, editor } = editing([repeat(2, [wait(1), wait(2)])]);
    for (const s of [7, 11, 14]) editor.stretch(0, s);
    editor.settle();
    // 14 s of 3 s each: 5 rounds are nearest.
    expect(editor.entries).toEqual([repeat(5, [wait(1), wait(2)])]);
    work.undo();
    expect(editor.entries).toEqual([repeat(2, [wait(1), wait(2)])]);
  });

  it("its moves are added, turned, put elsewhere and deleted within it", () => {
    const { work, editor } = editing([wait(1), repeat(3, [reel, twitch])]);
    editor.choose(1);
    expect(editor.at).toBeNull();
    editor.chooseInner(0);
    expect(editor.at).toEqual(["cadence", 1, "moves", 0]);
    editor.add("pause");
    expect(editor.entries[1]).toEqual(repeat(3, [reel, wait(1), twitch]));
    editor.nudge(-1);
    expect(editor.entries[1]).toEqual(repeat(3, [wait(1), reel, twitch]));
    expect(editor.canNudge(-1)).toBe(false);
    editor.lengthen(1);
    expect(editor.entries[1]).toEqual(repeat(3, [wait(1.1), reel, twitch]));
    const [input] = moveInputs(work.scenario, ["cadence", 1, "moves", 1]);
    if (input === undefined) throw new Error("no speed");
    work.turn(input, 0.7);
    work.settle();
    expect(editor.entries[1]).toEqual(repeat(3, [wait(1.1), { ...reel, speed_m_s: 0.7 }, twitch]));
    editor.remove();
    expect(editor.entries[1]).toEqual(repeat(3, [{ ...reel, speed_m_s: 0.7 }, twitch]));
    editor.remove();
    editor.remove();
    // With its last move the block goes.
    expect(editor.entries).toEqual([wait(1)]);
  });

  it("is written out as single moves, which do the same; moves with a block among them become one block", () => {
    const { work, editor } = editing([wait(1), repeat(2, [reel, twitch]), wait(3)]);
    const before = work.now.compiled.cadence.map(({ place: _, ...move }) => move);
    editor.choose(1);
    editor.writeOut();
    expect(editor.entries).toEqual([wait(1), reel, twitch, reel, twitch, wait(3)]);
    expect(editor.chosen).toEqual({ first: 1, last: 4 });
    expect(work.now.compiled.cadence).toEqual(before);
    work.undo();
    editor.choose(0);
    editor.choose(1, true);
    editor.repeat(2);
    expect(editor.entries).toEqual([repeat(2, [wait(1), reel, twitch, reel, twitch]), wait(3)]);
  });

  it("is refused where no move takes line in, and where there would be too many moves", () => {
    const { work, editor } = editing([wait(1)]);
    editor.choose(0);
    editor.repeat("line in");
    expect(editor.entries).toEqual([wait(1)]);
    expect(work.refusal?.text).toMatch(/takes? line in/);
    editor.repeat(1001);
    expect(editor.entries).toEqual([wait(1)]);
    expect(editor.mostRepeats).toBe(1000);
  });
});

describe("a block on the strip", () => {
  it("is one thing with its rounds in it, as wide as it lasts", () => {
    const { editor } = editing([wait(1), repeat(3, [wait(2), wait(1)])]);
    const units = new Units(new Prefs(null, 1200));
    const blocks = blocksOf(editor.legs, editor.entries, editor.spans, 40, units, SWIM.in("en"));
    expect(blocks.map(({ left, wide, kind }) => [left, wide, kind])).toEqual([
      [0, 40, "pause"],
      [40, 360, "repeat"],
    ]);
    expect(blocks[1]?.text).toBe("3× pause, pause");
    expect(blocks[1]?.cells.map(({ left, wide, first }) => [left, wide, first])).toEqual([
      [0, 80, true],
      [80, 40, false],
      [120, 80, true],
      [200, 40, false],
      [240, 80, true],
      [320, 40, false],
    ]);
  });
});
