import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { compile, parseScenario } from "../../src/document";
import { record } from "../../src/model/motion";
import type { Channel, Recording } from "../../src/model/motion";
import { staticsOf } from "../../src/model/statics";
import { terminalRise } from "../../src/model/tow";
import { swimSetup, tubSetup } from "../../src/runner";

/** What two ways of computing one thing must agree on, for every scenario. */
const folder = "scenarios";
const scenarios = readdirSync(folder).map((file) => {
  const read = parseScenario(readFileSync(join(folder, file), "utf8"));
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  return { file, compiled: compile(read.scenario) };
});

const last = (recording: Recording, channel: Channel) => recording.channel(channel).at(-1) ?? NaN;
const degrees = (radians: number) => (radians * 180) / Math.PI;

describe.each(scenarios)("$file", ({ compiled }) => {
  const { bait, around } = compiled;

  it("halving the step changes depth and pitch by less than 0.5 % of their range", () => {
    const setup = swimSetup(compiled);
    const [whole, half] = [record(setup), record({ ...setup, rate: 2 * setup.rate })];
    for (const channel of ["depth", "pitch"] as const) {
      const [a, b] = [whole.channel(channel), half.channel(channel)];
      expect(a.length).toBe(b.length);
      const range = Math.max(...b) - Math.min(...b);
      const worst = a.reduce((most, one, i) => Math.max(most, Math.abs(one - (b[i] ?? NaN))), 0);
      // A bait that lies still has no range: a hundredth of a millimetre or degree is its floor.
      expect(worst, channel).toBeLessThan(Math.max(0.005 * range, channel === "depth" ? 1e-5 : 1.7e-4));
    }
  });

  it("a hands-off settle ends within 0.3° of the floating trim", () => {
    const afloat = staticsOf(bait, around.density).floating;
    if (afloat === null) return;
    const settled = record({ ...swimSetup(compiled), tackle: null, cadence: [{ do: "settle", for: 12 }] });
    expect(Math.abs(degrees(last(settled, "pitch") - afloat.pitch))).toBeLessThan(0.3);
  });

  it("a release in deep water ends within 2 % of the terminal rise", () => {
    const rise = terminalRise(bait, around);
    const seconds = 20;
    // Deep enough that neither the surface nor the floor is met; a sinker starts just under the surface.
    const travel = Math.abs(rise.speed) * seconds + 1;
    const deep = { ...compiled, around: { ...around, depth: 2 * travel + 1 } };
    const depth = rise.speed > 0 ? travel : 1;
    const run = record(tubSetup(deep, { depth, pitch: "rest", duration: seconds }));
    const end = run.at(run.duration);
    expect(Math.abs(end.velocity.z - rise.speed)).toBeLessThan(0.02 * Math.abs(rise.speed));
    expect(Math.abs(degrees(end.pitch - rise.pitch))).toBeLessThan(0.3);
  });
});
