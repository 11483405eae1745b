import { expect, test } from "vitest";
import { compile } from "../../src/document";
import { scenarioOf } from "../lib/scenarios";
import { record, type RunSetup } from "../../src/model/motion";
import { prepareTow, reach } from "../../src/model/tow";
import { swimSetup } from "../../src/runner";

const SPEED = 0.9;

/** The scenario's bait held in a stream: a tow at constant speed with the rod at rest. */
function held(name: string, more: Partial<RunSetup> = {}) {
  const compiled = compile(scenarioOf(name));
  const steady = reach(prepareTow(compiled.bait), compiled.around, compiled.tackle, { speed: SPEED });
  const recording = record({
    ...swimSetup(compiled),
    around: { ...compiled.around, current: { x: -SPEED, z: 0 }, depth: 30 },
    cadence: [{ do: "pause", for: 60 }],
    start: { depth: 1, pitch: -0.3 },
    ...more,
  });
  const last = (channel: "depth" | "pitch" | "tension") => recording.channel(channel).at(-1) ?? NaN;
  return { steady, depth: last("depth"), pitch: last("pitch"), tension: last("tension") };
}

// The moving line and the moving bait against the steady tow, which knows neither: two ways to one answer. Asked for: 2 %
// in depth; a run of 60 s comes within 1 % (hooks hang freely in it, and are carried along as drag in the steady tow).
test.each(["suspender-90", "long-bib-diver-90", "timed-sinker-70"])("%s runs at its steady depth", (name) => {
  const { steady, depth, pitch, tension } = held(name);
  expect(steady.runs).toBe(true);
  expect(Math.abs(depth / (steady.depth ?? NaN) - 1)).toBeLessThan(0.01);
  expect(Math.abs(tension / (steady.tension ?? NaN) - 1)).toBeLessThan(0.01);
  expect(Math.abs(pitch - (steady.pitch ?? NaN))).toBeLessThan(0.01);
});

test("a bare spring for a line runs deeper: a line's own drag is what holds a bait up", () => {
  const { steady, depth } = held("suspender-90", { line: "tether" });
  expect(depth).toBeGreaterThan(1.3 * (steady.depth ?? NaN));
});
