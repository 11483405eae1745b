import { describe, expect, it } from "vitest";
import {
  eventsOf,
  GrowingRecording,
  record,
  motionOnlyChunk,
  motionOnlyMeta,
  startRun,
  summaryOf,
} from "../../../src/model/motion";
import type { Channel, Leg, Move, Recorded } from "../../../src/model/motion";
import { minnow, rattler, setup, TACKLE, water } from "../../lib/swum";

const RATE = 60;
const reel = (speed: number): Move => ({ do: "reel", speed, for: 1, length: null });

/** A made-up recording: legs one after the other, and channels as functions of time; what is not given lies still and deep. */
function made(
  seconds: number,
  moves: readonly (readonly [Move, number])[],
  given: Partial<Record<Channel, (t: number) => number>>,
  floor = 4,
): Recorded {
  let start = 0;
  const legs = moves.map(([move, duration], index): Leg => {
    const leg = { index, move, start, end: start + duration, cut: false };
    start += duration;
    return leg;
  });
  const usual: Record<Channel, (t: number) => number> = {
    depth: () => 1,
    pitch: () => 0,
    speed: () => 0,
    tension: () => 0,
    x: (t) => t,
    rise: () => 0,
    top: () => 0.98,
    low: () => 1.02,
    slack: () => 0,
  };
  const frames = seconds * RATE + 1;
  return {
    meta: { legs, floor, frameRate: RATE },
    channel: (name) =>
      Float64Array.from({ length: frames }, (_, i) => (given[name] ?? usual[name])(i / RATE)),
  };
}
const told = (run: Recorded, weed: number | null = null): string[] =>
  eventsOf(run, weed).map(({ kind, time, end }) => `${kind} ${time.toFixed(2)}–${end.toFixed(2)}`);

describe("events of a recording", () => {
  it("goes under, and comes up again, each once though it bobs at the edge", () => {
    const run = made(10, [[{ do: "settle", for: 10 }, 10]], {
      // Afloat 4 mm high until 2 s; comes up from 6 s on, in ripples of 0.9 mm about 1.5 mm above the water.
      top: (t) => (t < 2 ? -0.004 : t < 6 ? 0.5 : -0.0015 - 0.0009 * Math.sin(40 * (t - 6))),
    });
    expect(told(run)).toEqual(["under 2.00–2.00", "surface 6.00–10.00"]);
  });

  it("how it lies at the start is no event", () => {
    expect(told(made(3, [[{ do: "settle", for: 3 }, 3]], { top: () => -0.004 }))).toEqual([]);
  });

  it("touches the bottom and passes through weed by its lowest point; knocks in quick succession are one", () => {
    const run = made(
      10,
      [[{ do: "settle", for: 10 }, 10]],
      { low: (t) => (t >= 4 && t < 5 && Math.floor(t * 10) % 2 === 0 ? 4 : t >= 3 && t < 6 ? 3.5 : 2) },
      4,
    );
    expect(told(run, 3)).toEqual(["weed 3.00–5.98", "bottom 4.00–4.88"]);
    expect(told(run)).toEqual(["bottom 4.00–4.88"]);
  });

  it("a weed line at or under the floor is the floor", () => {
    const run = made(2, [[{ do: "settle", for: 2 }, 2]], { low: (t) => (t > 1 ? 4 : 1) }, 4);
    expect(told(run, 4)).toEqual(["bottom 1.02–2.00"]);
  });

  it("runs where pitch, pull and speed hold for 0.6 s of a reel", () => {
    const run = made(
      8,
      [
        [{ do: "settle", for: 1 }, 1],
        [reel(1), 5],
        [{ do: "pause", for: 2 }, 2],
      ],
      {
        // Pitches over until 2.5 s; steady then.
        pitch: (t) => (t < 2.5 ? -0.6 * (t - 1) : -0.9),
        speed: (t) => (t < 1 ? 0 : 1),
      },
    );
    const [first, ...more] = eventsOf(run, null);
    expect(more).toEqual([]);
    expect(first?.kind).toBe("runs");
    // 4° is 0.0698 rad: at 0.6 rad/s that is 0.116 s before it is steady.
    expect(first?.time).toBeGreaterThan(2.36);
    expect(first?.time).toBeLessThan(2.5 + 1 / RATE);
    expect(first?.end).toBeCloseTo(6, 1);
    expect(first?.x).toBeCloseTo(first?.time ?? NaN, 9);
  });

  it("does not come to run: too slow, on a slack line, or tumbling", () => {
    const moves = [[reel(1), 4]] as const;
    expect(told(made(4, moves, { speed: () => 0.4 }))).toEqual(["unsteady 0.00–3.98"]);
    expect(told(made(4, moves, { speed: () => 1, pitch: (t) => 3 * t }))).toEqual(["unsteady 0.00–3.98"]);
    expect(told(made(4, moves, { speed: () => 1, slack: () => 1 }))).toEqual([
      "unsteady 0.00–3.98",
      "slack 0.00–4.00",
    ]);
    // A short reel need not.
    expect(told(made(1, [[reel(1), 1]], { speed: () => 0.4 }))).toEqual([]);
  });

  it("says nothing of a reel that is still being recorded", () => {
    expect(told(made(3, [[reel(1), 4]], { speed: () => 0.4 }))).toEqual([]);
  });

  it("slack counts where the reel holds, from a tenth of a second on", () => {
    const run = made(
      9,
      [
        [{ do: "settle", for: 3 }, 3],
        [{ do: "pause", for: 6 }, 6],
      ],
      {
        slack: (t) => (t < 4 || (t >= 5 && t < 5.05) || (t >= 6 && t < 7) ? 1 : 0),
      },
    );
    expect(told(run)).toEqual(["slack 3.00–3.98", "slack 6.00–6.98"]);
  });
});

describe("figures of a recording", () => {
  it("depth, time to it, pause, pull and strike zone, by hand", () => {
    const run = made(
      10,
      [
        [reel(1), 6],
        [{ do: "pause", for: 4 }, 4],
      ],
      {
        depth: (t) => (t < 5 ? 0.4 * t : 2),
        speed: () => 1,
        tension: (t) => (t === 3 ? 0.8 : 0.2),
        pitch: (t) => (t < 6 ? -0.3 : t < 8 ? 5 : 0.1),
        rise: (t) => (t < 8 ? 9 : 0.05),
      },
    );
    const events = eventsOf(run, null);
    const figures = summaryOf(run, events, { from: 1, to: 1.6 });
    expect(figures.deepest).toEqual({ value: 2, time: 5, x: 5 });
    // 0.9 · 2 m = 1.8 m at 4.5 s
    expect(figures.toDepth).toBeCloseTo(4.5, 9);
    expect(figures.pause?.pitch).toBeCloseTo(0.1, 12);
    expect(figures.pause?.rise).toBeCloseTo(0.05, 12);
    expect(figures.pull).toEqual({ value: 0.8, time: 3, x: 3 });
    // 1 to 1.6 m at 0.4 m/s: 1.5 s, 91 frames with both ends
    expect(figures.zone?.seconds).toBeCloseTo(91 / 60, 9);
    expect(figures.running?.pitch).toBeCloseTo(-0.3, 9);
    expect(figures.running?.tension).toBeGreaterThan(0.2);
  });

  it("has nothing to tell of a bait that never dives, pauses or runs", () => {
    const run = made(2, [[{ do: "settle", for: 2 }, 2]], { depth: () => -0.001 });
    expect(summaryOf(run, eventsOf(run, null), null)).toMatchObject({
      deepest: null,
      toDepth: null,
      running: null,
      pause: null,
      zone: null,
    });
  });
});

describe("events of a run", () => {
  const cadence: Move[] = [
    { do: "settle", for: 1 },
    { do: "reel", speed: 0.9, for: 6, length: null },
    { do: "pause", for: 4 },
  ];

  it("a floating minnow goes under, runs, and rises on a line that hangs slack", () => {
    const run = record(setup(minnow(1.5e-3), { tackle: TACKLE, cadence }));
    const kinds = eventsOf(run, null).map(({ kind }) => kind);
    expect(kinds.slice(0, 2)).toEqual(["under", "runs"]);
    expect(kinds).toContain("slack");
    const figures = summaryOf(run, eventsOf(run, null), null);
    expect(figures.pause?.rise).toBeGreaterThan(0);
    expect(figures.running?.depth).toBeLessThan(figures.deepest?.value ?? NaN);
  });

  it("in knee-deep water it finds the bottom; the hull's lowest point lies on it", () => {
    const around = water(0.6);
    const run = record(setup(minnow(1.5e-3), { tackle: TACKLE, cadence, around }));
    expect(eventsOf(run, null).map(({ kind }) => kind)).toContain("bottom");
    expect(Math.max(...run.channel("low"))).toBeLessThan(0.6 + 1e-3);
  });

  it("a recording of the motion only keeps pose, events and figures, and drops line and forces", () => {
    const one = setup(rattler(3.3e-3), { tackle: TACKLE, cadence });
    const full = record(one);
    const run = startRun(one);
    const motion = new GrowingRecording(motionOnlyMeta(run.meta));
    while (!run.done) motion.append(motionOnlyChunk(run.meta, run.advance(50)));
    const t = 4.321;
    const { nose, pitch, hooks, balls, line, forces } = motion.at(t);
    expect({ nose, pitch, hooks, balls }).toEqual({
      nose: full.at(t).nose,
      pitch: full.at(t).pitch,
      hooks: full.at(t).hooks,
      balls: full.at(t).balls,
    });
    expect([line, forces]).toEqual([[], []]);
    expect(eventsOf(motion, 0.5)).toEqual(eventsOf(full, 0.5));
    expect(motion.meta.stride).toBeLessThan(full.meta.stride / 2);
  });
});
