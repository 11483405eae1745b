import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compile, readScenario, writtenOut } from "../../../src/document";
import type { ScenarioEntry, ScenarioMove } from "../../../src/document";
import { legsOf, roundsUntilIn, startRun } from "../../../src/model/motion";
import { swimSetup } from "../../../src/runner/jobs";
import { sampleScenario } from "../../lib/sample";

/** Moves that are repeated, from the file to the run. */

const reel = (speed_m_s: number, for_s: number): ScenarioMove => ({ do: "reel", speed_m_s, for_s });
const pause = (for_s: number): ScenarioMove => ({ do: "pause", for_s });
const lift = (height_m: number): ScenarioMove => ({ do: "lift", height_m, in_s: 0.5 });
const times = (n: number, ...moves: ScenarioMove[]): ScenarioEntry => ({ do: "repeat", times: n, moves });
const untilIn = (...moves: ScenarioMove[]): ScenarioEntry => ({ do: "repeat", until: "line in", moves });

const sample = sampleScenario();
/** The sample with this cadence, and with line of which all but 20 m stays out at the end. */
const withCadence = (...cadence: ScenarioEntry[]) => ({
  ...sample,
  tackle: { ...sample.tackle, lineOut_m: 20 + 1 + 0.3, rodTip_m: 1 },
  cadence,
});
const problems = (...cadence: ScenarioEntry[]): string[] => {
  const read = readScenario(withCadence(...cadence));
  return read.ok ? [] : read.problems.map((one) => one.message);
};

describe("moves that are repeated", () => {
  it("are done so many times, in their order, and each knows where it stands", () => {
    const done = writtenOut(withCadence(pause(1), times(2, reel(1, 1), pause(2)), pause(3)));
    expect(done.map(({ entry, inner, round }) => [entry, inner, round])).toEqual([
      [0, null, 0],
      [1, 0, 0],
      [1, 1, 0],
      [1, 0, 1],
      [1, 1, 1],
      [2, null, 0],
    ]);
  });

  it("until the line is in: the round in which a reel finds no more is the last, done to its end", () => {
    const rounds = (...cadence: ScenarioEntry[]): number =>
      writtenOut(withCadence(...cadence)).filter(({ inner }) => inner === 0).length;
    // 20 m by hand: 3 m a round are 7 rounds, the last a third as long; 2 m are 10, all whole.
    expect(rounds(untilIn(reel(1, 3), pause(1)))).toBe(7);
    expect(rounds(untilIn(reel(1, 2), pause(1)))).toBe(10);
    // What was taken in before counts, and so does a rod tip that is higher by 2 m.
    expect(rounds(reel(1, 8), untilIn(reel(1, 3), pause(1)))).toBe(4);
    expect(rounds(lift(2), untilIn(reel(1, 3), pause(1)))).toBe(6);
    // In already: one round, in which the reel finds nothing.
    expect(rounds(reel(1, 30), untilIn(reel(1, 3), pause(1)))).toBe(1);
    const { cadence, tackle } = compile(withCadence(untilIn(reel(1, 3), pause(1))));
    const legs = legsOf(cadence, tackle);
    expect(legs.at(-2)).toMatchObject({ cut: true, start: 24 });
    expect((legs.at(-2)?.end ?? 0) - 24).toBeCloseTo(2, 9);
    expect((legs.at(-1)?.end ?? 0) - 26).toBeCloseTo(1, 9);
  });

  it("rounds are those that a winding by hand needs", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        (lineOut, speed, time) => {
          const moves = [
            { do: "reel", speed, for: time, length: null },
            { do: "pause", for: 1 },
          ] as const;
          const all = roundsUntilIn([], moves, { lineOut, rodTip: 1 }, 1e5);
          const by = Math.max(0, lineOut - 1 - 0.3) / (speed * time);
          // Where it comes out even, a last bit decides.
          if (Math.abs(by - Math.round(by)) < 1e-6) return;
          expect(all).toBe(Math.max(1, Math.ceil(by)));
        },
      ),
      { seed: 8, numRuns: 300 },
    );
    expect(roundsUntilIn([], [{ do: "pause", for: 1 }], { lineOut: 20, rodTip: 1 }, 50)).toBeNull();
  });

  it("swim bit for bit as the same moves written out", () => {
    const block = withCadence(pause(0.5), times(3, reel(1, 0.5), pause(0.3)));
    const single = { ...block, cadence: writtenOut(block).map(({ move }) => move) };
    const [a, b] = [block, single].map((one) => startRun(swimSetup(compile(one))).advance(1e6).data);
    expect(a?.length).toBeGreaterThan(1000);
    expect(a).toEqual(b);
  });
});

describe("what a block must be", () => {
  it("says how often: a count, or until the line is in", () => {
    expect(problems(times(3, pause(1)))).toEqual([]);
    expect(problems({ do: "repeat", moves: [pause(1)] })[0]).toMatch(
      /cadence\[0\].*neither times nor until.*exactly one/s,
    );
    expect(problems({ do: "repeat", times: 2, until: "line in", moves: [reel(1, 1)] })[0]).toMatch(
      /both times and until/,
    );
    expect(problems(untilIn(pause(1)))[0]).toMatch(/cadence\[0\]\.until.*take line in/s);
    expect(problems(untilIn(reel(1, 0)))[0]).toMatch(/take line in/);
  });

  it("its moves are held to what single moves are held to, by their place", () => {
    const both: ScenarioMove = { do: "reel", speed_m_s: 1, for_s: 1, length_m: 1 };
    expect(problems(pause(1), times(2, pause(1), both))[0]).toMatch(/cadence\[1\]\.moves\[1\]/);
    // In the second round it pulls after the line was let go.
    expect(problems(times(2, reel(1, 1), { do: "release", for_s: 1 }))[0]).toMatch(
      /cadence\[0\]\.moves\[0\]\.do.*release/s,
    );
    expect(() => startRun(swimSetup(compile(withCadence(times(2, pause(1), fast)))))).toThrow(
      /cadence\[0\]\.moves\[1\]\.in = 0\.01.*rod tip/,
    );
  });

  it("is not done so often that nobody could wait for it", () => {
    expect(problems(times(1000, pause(1), pause(1)))[0]).toMatch(/more than 1000 moves.*less often/s);
    expect(problems(untilIn(reel(0.01, 1)))[0]).toMatch(/more than 1000 moves/);
    expect(problems(times(500, pause(10)))[0]).toMatch(/5000 s in all/);
    expect(problems(times(3, times(3, pause(1)) as ScenarioMove))).not.toEqual([]);
    expect(problems({ do: "repeat", times: 3, moves: [] })).not.toEqual([]);
  });
});

const fast: ScenarioMove = { do: "twitch", travel_m: 2, in_s: 0.01, back_s: 1 };
