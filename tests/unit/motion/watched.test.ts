import { expect, it } from "vitest";
import { compile } from "../../../src/document";
import { GrowingRecording, record, startRun, watchedFor } from "../../../src/model/motion";
import { swimSetup, tubSetup } from "../../../src/runner";
import { scenarioOf } from "../../lib/scenarios";

// A rattle chamber: its balls are drawn by chance and roll, so nearly everything that a run can do is in it.
const compiled = compile(scenarioOf("rattle-chamber-60"));
const released = (duration: number) => tubSetup(compiled, { depth: 0.3, pitch: 0.4, duration });
const recorded = new Map<number, GrowingRecording>();
const once = (duration: number): GrowingRecording => {
  const known = recorded.get(duration) ?? record(released(duration));
  recorded.set(duration, known);
  return known;
};

it("a release watched longer in steps is the one made at once, bit for bit, and so is one cut short", () => {
  let grown = once(0.5);
  for (const duration of [0.75, 1.1, 0.9, 1.6, 1.25]) {
    const before = grown.frames;
    grown = watchedFor(grown, duration);
    expect(grown.frames).toBe(Math.min(before, grown.meta.frames));
    const run = startRun(released(duration));
    if (!grown.complete) {
      run.advance(grown.frames);
      while (!run.done) grown.append(run.advance(7));
    }
    expect(grown.complete).toBe(true);
    expect(grown.meta).toEqual(run.meta);
    expect(grown.hash()).toBe(once(duration).hash());
    for (const channel of ["depth", "pitch", "speed", "top", "slack"] as const)
      expect(grown.channel(channel)).toEqual(once(duration).channel(channel));
  }
});

it("leaves the recording that it began with as it was", () => {
  const first = once(1);
  const hash = first.hash();
  const longer = watchedFor(first, 2);
  const run = startRun(released(2));
  run.advance(longer.frames);
  longer.append(run.advance(60));
  expect(first.hash()).toBe(hash);
  expect(first.duration).toBe(1);
});

it("refuses a retrieve: another length of its last move changes what it does", () => {
  const run = startRun(swimSetup(compiled));
  const swum = new GrowingRecording(run.meta);
  swum.append(run.advance(3));
  expect(() => watchedFor(swum, 5)).toThrow(/Only a release/);
});
