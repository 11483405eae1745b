import { describe, expect, it } from "vitest";
import { LINE_IN, timeline, trimCadence, type RodState } from "../../../src/model/motion/cadence";
import { MotionError, type Move } from "../../../src/model/motion";

const state = (): RodState => ({ x: 0, z: 0, vx: 0, vz: 0, wound: 0, winding: 0, free: false, gone: false });
const TACKLE = { lineOut: 25, rodTip: 1.2 };
const TIP = { x: 25, z: 1.2 };

const cadence: Move[] = [
  { do: "settle", for: 2 },
  { do: "reel", speed: 0.9, for: 3, length: null },
  { do: "pause", for: 1 },
  { do: "twitch", travel: 0.35, in: 0.15, back: 0.3 },
  { do: "slack", for: 0.5 },
  { do: "lift", height: 0.4, in: 0.5 },
  { do: "reel", speed: 0.5, for: null, length: 2 },
  { do: "release", for: 1.5 },
];

describe("cadence in time", () => {
  it("takes the sum of its moves: times as given, a reel by length its length over its speed", () => {
    // by hand: 2 + 3 + 1 + 0.45 + 0.5 + 0.5 + 2/0.5 + 1.5
    expect(timeline(cadence, TACKLE, TIP).duration).toBeCloseTo(12.95, 12);
  });

  it("marks each move at its start, in words", () => {
    const { marks, duration } = timeline(cadence, TACKLE, TIP);
    expect(marks.map((m) => m.label)).toEqual([
      "settle",
      "reel 0.9 m/s",
      "pause",
      "twitch 0.35 m",
      "slack",
      "lift 0.4 m",
      "reel 0.5 m/s",
      "release",
    ]);
    expect(marks.map((m) => Number(m.time.toFixed(9)))).toEqual([0, 2, 5, 6, 6.45, 6.95, 7.45, 11.45]);
    expect(duration).toBeCloseTo(12.95, 12);
  });

  it("winds in speed × time and the given length, whole, with its run-out in the next move", () => {
    const line = timeline(cadence, TACKLE, TIP);
    const s = state();
    line.at(5.5, s);
    expect(s.wound).toBeCloseTo(0.9 * 3, 12);
    expect(s.winding).toBe(0);
    line.at(12, s);
    expect(s.wound).toBeCloseTo(0.9 * 3 + 2, 12);
  });

  it("moves the rod tip out and back, lifts it for good, and never jumps: velocity is the slope of place", () => {
    const line = timeline(cadence, TACKLE, TIP);
    const s = state();
    const dt = 1e-4;
    const before = state();
    line.at(0, before);
    let greatest = 0;
    let worst = 0;
    for (let t = dt; t < line.duration; t += dt) {
      line.at(t, s);
      // slope against the mean of both ends' velocities
      worst = Math.max(
        worst,
        Math.abs((s.x - before.x) / dt - (s.vx + before.vx) / 2),
        Math.abs((s.z - before.z) / dt - (s.vz + before.vz) / 2),
        Math.abs((s.wound - before.wound) / dt - (s.winding + before.winding) / 2),
      );
      greatest = Math.max(greatest, s.x);
      Object.assign(before, s);
    }
    // where acceleration changes within the interval, up to a·dt/4: 60 m/s² × 1e-4 s / 4
    expect(worst).toBeLessThan(2e-3);
    expect(greatest).toBeCloseTo(25.35, 6);
    expect(s.x).toBeCloseTo(25, 12);
    expect(s.z).toBeCloseTo(1.6, 12);
  });

  it("gives line freely in settle and slack, and lets it go at the release", () => {
    const line = timeline(cadence, TACKLE, TIP);
    const s = state();
    const seen: string[] = [];
    for (const t of [1, 3, 5.5, 6.1, 6.7, 7.2, 9, 12]) {
      line.at(t, s);
      seen.push(s.gone ? "gone" : s.free ? "free" : "held");
    }
    expect(seen).toEqual(["free", "held", "held", "held", "free", "held", "held", "gone"]);
  });

  it("ends a reel where the line is in, marks it, and goes on with the next move", () => {
    const moves: Move[] = [
      { do: "reel", speed: 1, for: 60, length: null },
      { do: "pause", for: 3 },
      { do: "reel", speed: 1, for: 5, length: null },
    ];
    const line = timeline(moves, { lineOut: 10, rodTip: 1.2 }, TIP);
    // 8.5 m: what is left reaches from the rod tip 0.3 m under the surface
    expect(line.duration).toBeCloseTo(10 - 1.2 - LINE_IN + 3, 12);
    expect(line.marks.map((m) => m.label)).toEqual([
      "reel 1 m/s",
      "line is in",
      "pause",
      "reel 1 m/s",
      "line is in",
    ]);
    expect(trimCadence(moves, { lineOut: 10, rodTip: 1.2 }).cut).toEqual([0, 2]);
    const s = state();
    line.at(line.duration, s);
    expect(10 - s.wound).toBeCloseTo(1.2 + LINE_IN, 12);
  });

  const refused: [string, Move[], typeof TACKLE | null][] = [
    ["a reel without speed", [{ do: "reel", speed: 0, for: 1, length: null }], TACKLE],
    ["a reel with time and length", [{ do: "reel", speed: 1, for: 1, length: 1 }], TACKLE],
    ["a reel with neither", [{ do: "reel", speed: 1, for: null, length: null }], TACKLE],
    ["a reel of NaN speed", [{ do: "reel", speed: NaN, for: 1, length: null }], TACKLE],
    ["a twitch in no time", [{ do: "twitch", travel: 0.3, in: 0, back: 0.1 }], TACKLE],
    ["an endless pause", [{ do: "pause", for: Infinity }], TACKLE],
    ["a negative settle", [{ do: "settle", for: -1 }], TACKLE],
    ["a reel without tackle", [{ do: "reel", speed: 1, for: 1, length: null }], null],
    [
      "a reel after the release",
      [
        { do: "release", for: 1 },
        { do: "reel", speed: 1, for: 1, length: null },
      ],
      TACKLE,
    ],
  ];
  it.each(refused)("refuses %s, with the place and a remedy", (_, moves, tackle) => {
    expect(() => trimCadence(moves, tackle)).toThrow(MotionError);
    expect(() => trimCadence(moves, tackle)).toThrow(/^cadence\[\d\]\.\w+ = .*\. \w.*\.$/);
  });
});
