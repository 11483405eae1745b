import { describe, expect, it, vi } from "vitest";
import { hashNumbers } from "../../../src/model/base";
import { GrowingRecording, MotionError, record, startRun } from "../../../src/model/motion";
import { minnow, rattler, setup, TACKLE } from "../../lib/swum";

// Whole runs: long only where other work is on the machine.
vi.setConfig({ testTimeout: 60_000 });

const bait = rattler(3.3e-3);
const swim = setup(bait, {
  tackle: TACKLE,
  cadence: [
    { do: "settle", for: 0.5 },
    { do: "reel", speed: 1, for: 2, length: null },
    { do: "twitch", travel: 0.3, in: 0.15, back: 0.3 },
    { do: "release", for: 1 },
  ],
});

describe("a recording", () => {
  const run = startRun(swim);
  const growing = new GrowingRecording(structuredClone(run.meta));
  const sizes: number[] = [];
  while (!run.done) {
    const chunk = structuredClone(run.advance(50));
    sizes.push(chunk.frames);
    growing.append(chunk);
    expect(growing.duration).toBeCloseTo((growing.frames - 1) / 60, 12);
  }

  it("has frames from 0 to the end of the cadence, 60 a second", () => {
    // 0.5 + 2 + 0.45 + 1 = 3.95 s
    expect(growing.frames).toBe(3.95 * 60 + 1);
    expect(growing.complete).toBe(true);
    expect(sizes.slice(0, -1).every((s) => s === 50)).toBe(true);
    expect(run.advance(10).frames).toBe(0);
  });

  it("its channels are those of its snapshots", () => {
    for (const frame of [0, 30, 100, 177, growing.frames - 1]) {
      const snapshot = growing.at(frame / 60);
      expect(snapshot.time).toBeCloseTo(frame / 60, 12);
      expect(growing.channel("depth")[frame]).toBeCloseTo(-snapshot.eye.z, 12);
      expect(growing.channel("pitch")[frame]).toBeCloseTo(snapshot.pitch, 12);
      expect(growing.channel("tension")[frame]).toBe(snapshot.tension);
      expect(growing.channel("speed")[frame]).toBeCloseTo(
        Math.hypot(snapshot.velocity.x, snapshot.velocity.z),
        9,
      );
    }
    expect(growing.channel("depth")).toHaveLength(growing.frames);
  });

  it("blends between frames as a finer one has it", () => {
    const fine = record({ ...swim, frameRate: 480 });
    let place = 0;
    let pitch = 0;
    for (let t = 0; t < 3.9; t += 1 / 480) {
      const a = growing.at(t);
      const b = fine.at(t);
      place = Math.max(place, Math.hypot(a.G.x - b.G.x, a.G.z - b.G.z));
      pitch = Math.max(pitch, Math.abs(a.pitch - b.pitch));
      expect(Math.hypot(a.nose.x - a.eye.x, a.nose.z - a.eye.z)).toBeCloseTo(Math.hypot(0.002, 0.001), 12);
      // hooks hang at their eyes, whatever the blend
      expect(Math.hypot(a.hooks[0]!.at.x - a.nose.x, a.hooks[0]!.at.z - a.nose.z)).toBeCloseTo(
        Math.hypot(0.032, 0.0105),
        12,
      );
    }
    // a jerk lasts a frame or two: what a cubic over 1/60 s can leave of it
    expect(place).toBeLessThan(1e-3);
    expect(pitch).toBeLessThan(0.05);
  });

  it("keeps to its ends", () => {
    expect(growing.at(-5)).toEqual(growing.at(0));
    expect(growing.at(99)).toEqual(growing.at(growing.duration));
    expect(() => growing.at(NaN)).toThrow(MotionError);
  });

  it("places arrows on the lines of action of their forces", () => {
    const { forces, G, nose, pitch } = growing.at(1.5);
    const log = growing.wrench(90);
    const arm = 0.045;
    for (const { key, at, force } of forces) {
      const w = log.get(key)!;
      // same force, turned to the world
      expect(force.x).toBeCloseTo(w.x * Math.cos(pitch) - w.z * Math.sin(pitch), 9);
      expect(force.z).toBeCloseTo(w.x * Math.sin(pitch) + w.z * Math.cos(pitch), 9);
      const moment = (at.x - G.x) * force.z - (at.z - G.z) * force.x;
      if (Math.abs(w.m) < arm * Math.hypot(w.x, w.z)) expect(moment).toBeCloseTo(w.m, 9);
      expect(Math.hypot(at.x - nose.x, at.z - nose.z)).toBeLessThan(0.2);
    }
    expect(forces.find((f) => f.key === "weight")!.at).toEqual(G);
  });

  it("the forces add up to the change of momentum: mass × acceleration of a steady pull is small, so they balance", () => {
    const steady = record(
      setup(minnow(4e-3), { tackle: TACKLE, cadence: [{ do: "reel", speed: 0.8, for: 15, length: null }] }),
    );
    const f = steady.wrench(14 * 60);
    const sum = [...f.values()].reduce((s, w) => ({ x: s.x + w.x, z: s.z + w.z }), { x: 0, z: 0 });
    const pull = Math.hypot(f.get("line")!.x, f.get("line")!.z);
    // it follows a slow arc round the rod tip: V²/r and a slow rise, some per cent of the pull
    expect(pull).toBeGreaterThan(0.05);
    expect(Math.hypot(sum.x, sum.z)).toBeLessThan(0.05 * pull);
  });

  it("is known by the hash of all its numbers", () => {
    expect(growing.hash()).toMatch(/^[0-9a-f]{16}$/);
    expect(growing.hash()).toBe(record(swim).hash());
    expect(growing.hash()).not.toBe(hashNumbers([]));
  });

  it("takes chunks of one run in their order only", () => {
    const other = startRun(swim);
    const first = other.advance(10);
    const second = other.advance(10);
    const taker = new GrowingRecording(other.meta);
    expect(() => taker.append(second)).toThrow(/Append the chunks/);
    taker.append(first);
    expect(() => taker.append(first)).toThrow(MotionError);
    expect(() => taker.append({ ...second, data: second.data.subarray(1) })).toThrow(MotionError);
    expect(() => taker.wrench(10)).toThrow(MotionError);
    expect(() => new GrowingRecording(other.meta).at(0)).toThrow(/nothing is recorded/);
    expect(() => new GrowingRecording({ ...other.meta, stride: 3 })).toThrow(MotionError);
  });
});
