import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { compile, parseScenario, type Scenario } from "../../../src/document";
import { GrowingRecording, startRun } from "../../../src/model/motion";
import { swimSetup } from "../../../src/runner/jobs";
import {
  approachOf,
  AT_STEADY,
  prepareTow,
  reachFrom,
  steadyDepthAt,
  towAttitude,
} from "../../../src/model/tow";

const LENGTHS = Array.from({ length: 13 }, (_, i) => 1 + 3 * i);

describe("how far to reel until it runs at depth", () => {
  test("closed form: with one steady depth for all lengths the descent is an exponential", () => {
    const table = [
      { lineOut: 0.5, depth: 2 },
      { lineOut: 60, depth: 2 },
    ];
    // d = 2 (1 − e^(−s/5)), met at s = 4 m: 95 % are there at s = 5 ln 20.
    const depth = 2 * (1 - Math.exp(-4 / 5));
    const found = approachOf(table, { lineOut: 50, depth, slope: (2 / 5) * Math.exp(-4 / 5) });
    if (found === null || typeof found === "string") throw new Error(`not ${String(found)}`);
    expect(found.more).toBeGreaterThanOrEqual(5 * Math.log(20) - 4 - 1e-9);
    expect(found.more).toBeLessThanOrEqual(5 * Math.log(20) - 4 + 0.051);
    expect(found.depth).toBeGreaterThanOrEqual(AT_STEADY * 2);
  });

  test("at depth, with too little line, rising, and where it does not run", () => {
    const table = [
      { lineOut: 1, depth: null },
      { lineOut: 10, depth: 1 },
      { lineOut: 20, depth: 1.4 },
    ];
    expect(steadyDepthAt(table, 15)).toBeCloseTo(1.2, 12);
    expect(steadyDepthAt(table, 5)).toBeNull();
    expect(steadyDepthAt(table, 25)).toBeNull();
    expect(approachOf(table, { lineOut: 15, depth: 1.19, slope: 0.01 })).toBe("there");
    // 1.14 m are 95 % of 1.2 m: a centimetre short of it is no way to go.
    expect(approachOf(table, { lineOut: 15, depth: 1.13, slope: 0.02 })).toBe("there");
    expect(approachOf(table, { lineOut: 15, depth: 0.9, slope: 0.02 })).toHaveProperty("more");
    expect(approachOf(table, { lineOut: 15, depth: 0.3, slope: -0.01 })).toBeNull();
    expect(approachOf(table, { lineOut: 5, depth: 0.3, slope: 0.1 })).toBeNull();
    const known = table.map((one) => ({ ...one, depth: one.depth ?? 0.5 }));
    expect(approachOf(known, { lineOut: 3, depth: 0.05, slope: 0.001 })).toBe("short");
  });

  test("the moving bait is at depth after the line that an early part of its descent foretells", () => {
    const text = readFileSync(join(import.meta.dirname, "../../../scenarios/suspender-90.json"), "utf8");
    const read = parseScenario(text);
    if (!read.ok) throw new Error("not a scenario");
    const speed = 0.9;
    const scenario: Scenario = {
      ...read.scenario,
      cadence: [
        { do: "settle", for_s: 2 },
        { do: "reel", speed_m_s: speed, length_m: 23 },
      ],
    };
    const compiled = compile(scenario);
    const { bait, around, tackle, calibration } = compiled;
    const tow = prepareTow(bait, calibration.bibFactor);
    const attitude = towAttitude(tow, around, speed);
    const table = LENGTHS.map((lineOut) => ({
      lineOut,
      depth: reachFrom(tow, attitude, around, { ...tackle, lineOut }).depth,
    }));
    const run = startRun(swimSetup(compiled));
    const recording = new GrowingRecording(run.meta);
    while (!run.done) recording.append(run.advance(600));
    const depth = recording.channel("depth");
    const leg = run.meta.legs.find(({ move }) => move.do === "reel");
    if (leg === undefined) throw new Error("no reel");
    const outAt = (time: number): number => tackle.lineOut - speed * (time - leg.start);
    const at = (time: number): number => depth[Math.round(time * 60)] ?? NaN;
    let met = NaN;
    for (let time = leg.start + 2; time < leg.end; time += 1 / 60)
      if (at(time) >= AT_STEADY * (steadyDepthAt(table, outAt(time)) ?? NaN)) {
        met = speed * (time - leg.start);
        break;
      }
    expect(met).toBeGreaterThan(5);
    for (const after of [6, 8, 10]) {
      const time = leg.start + after;
      const slope = (at(time) - at(time - 1)) / speed;
      const found = approachOf(table, { lineOut: outAt(time), depth: at(time), slope });
      if (found === null || typeof found === "string")
        throw new Error(`not ${String(found)} after ${after} s`);
      // Good to a fifth of the way: the descent is not quite an exponential.
      expect(Math.abs(speed * after + found.more - met) / met).toBeLessThan(0.2);
      const then = at(leg.start + met / speed);
      expect(Math.abs(found.depth - then) / then).toBeLessThan(0.15);
    }
  });
});
