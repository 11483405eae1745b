import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseScenario, serialize } from "../../../src/document";
import { FORCE_LEGEND } from "../../../src/model/forces";
import { record } from "../../../src/model/motion";
import { recordingCsv, swimSetup } from "../../../src/runner";
import type { TableOf } from "../../../src/runner/csv";
import { sampleScenario } from "../../lib/sample";

/** A sinking bait that reaches the bottom of shallow water and comes to rest there. */
function onTheBottom() {
  const text = serialize(
    sampleScenario((draft) => {
      draft.bait.ballast = [
        { name: "belly", at_mm: [36, -7], mass_g: 12, material: "lead", where: "inside" },
      ] as typeof draft.bait.ballast;
      draft.bench = [];
      draft.water = { temperature_C: 12, salinity_g_kg: 0, depth_m: 0.4, current_m_s: 0 };
      draft.cadence = [{ do: "settle", for_s: 6 }];
    }),
  );
  const read = parseScenario(text);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join("\n"));
  return record(swimSetup(read.compiled));
}

const recording = onTheBottom();
const rows = recordingCsv(recording)
  .split("\r\n")
  .map((row) => row.split(","));
const [head = []] = rows;
const numbers = (heading: string): number[] =>
  rows.slice(1, -1).map((row) => Number(row[head.indexOf(heading)]));

describe("the table of a recording", () => {
  it("has the columns that the format's page lists, and no other", () => {
    const page = readFileSync("docs/scenario-format.md", "utf8");
    const section = /### The recording as a table\n([\s\S]*?)\n##+ /.exec(page)?.[1] ?? "";
    const cells = [...section.matchAll(/^\| (`.*?) \|/gm)].flatMap(([, cell = ""]) =>
      [...cell.matchAll(/`([^`]+)`/g)].map(([, name = ""]) => name),
    );
    const forces = [
      ...(/The forces, in this order: ([^\n]*)/.exec(section)?.[1]?.matchAll(/`(\w+)`/g) ?? []),
    ].map(([, name = ""]) => name);
    const single = cells.filter((name) => !name.startsWith("…"));
    const ofForces = cells.filter((name) => name.startsWith("…")).map((name) => name.slice(1));
    expect(head).toEqual([...single, ...forces.flatMap((key) => ofForces.map((part) => key + part))]);
    expect(forces).toEqual(FORCE_LEGEND.map(({ key }) => key));
  });

  it("has a row a frame, all of one length, and ends with a line break", () => {
    expect(rows).toHaveLength(1 + recording.frames + 1);
    expect(rows.at(-1)).toEqual([""]);
    for (const row of rows.slice(0, -1)) expect(row).toHaveLength(head.length);
    expect(numbers("time_s").at(-1)).toBe(recording.duration);
  });

  it("gives the recording's own numbers, unrounded, with pitch in degrees", () => {
    const last = recording.frames - 1;
    const { eye } = recording.at(recording.duration);
    expect(numbers("depth_m")).toEqual([...recording.channel("depth")]);
    expect(numbers("eye_x_m")).toEqual([...recording.channel("x")]);
    expect(numbers("eye_x_m")[last]).toBeCloseTo(eye.x, 12);
    expect(numbers("eye_z_m")[last]).toBeCloseTo(eye.z, 12);
    expect(numbers("pitch_deg")[last]).toBeCloseTo(
      ((recording.channel("pitch")[last] ?? NaN) * 180) / Math.PI,
      12,
    );
  });

  it("tells what the bottom pushes: when the bait lies there at rest, all forces add up to nothing", () => {
    const pitch = (numbers("pitch_deg").at(-1)! * Math.PI) / 180;
    const up = (key: string): number =>
      Math.sin(pitch) * numbers(`${key}_x_N`).at(-1)! + Math.cos(pitch) * numbers(`${key}_z_N`).at(-1)!;
    const sinks = up("weight") + up("buoyancy");
    expect(sinks).toBeLessThan(-0.02);
    expect(up("contact")).toBeGreaterThan(-0.8 * sinks);
    const all = FORCE_LEGEND.reduce((sum, { key }) => sum + up(key), 0);
    // It may still rock a little: 1 % of its weight under water.
    expect(Math.abs(all)).toBeLessThan(-0.01 * sinks);
  });

  it("refuses a number that is none, and names its frame and column", () => {
    const broken: TableOf = {
      frames: 2,
      frameRate: 60,
      channel: (name) => Float64Array.of(0, name === "speed" ? NaN : 0),
      wrench: () => new Map([["weight", { x: 0, z: 0, m: 0 }]]),
    };
    expect(() => recordingCsv(broken)).toThrow(/speed_m_s of frame 1 is NaN/);
  });
});
