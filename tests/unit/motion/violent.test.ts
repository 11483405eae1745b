import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parseScenario } from "../../../src/document";
import { record } from "../../../src/model/motion";
import { swimSetup } from "../../../src/runner";

/** Moves at the limit of what a run can follow: each runs to its end in numbers that make sense, or is refused in words. */

interface Draft {
  bait: { chambers: { balls: object }[] };
  tackle: { line: object };
  cadence: object[];
  calibration?: object;
}

function run(name: string, change: (draft: Draft) => void) {
  const draft = JSON.parse(readFileSync(`scenarios/${name}.json`, "utf8")) as Draft;
  change(draft);
  const read = parseScenario(JSON.stringify(draft));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join("\n"));
  return record(swimSetup(read.compiled));
}

/** The recording has all its frames, all numbers of its poses are finite, and the bait keeps below `fastest` (m/s). */
function expectSound(recording: ReturnType<typeof run>, fastest: number): void {
  expect(recording.complete).toBe(true);
  const frame = 1 / recording.frameRate;
  let before = recording.at(0);
  for (let i = 1; i < recording.frames; i++) {
    const here = recording.at(i * frame);
    const way = Math.hypot(here.nose.x - before.nose.x, here.nose.z - before.nose.z);
    if (!(way <= fastest * frame)) expect.fail(`${way / frame} m/s at ${i * frame} s`);
    if (!Number.isFinite(here.pitch)) expect.fail(`pitch ${here.pitch} at ${i * frame} s`);
    before = here;
  }
}

it("a twitch of 19 m/s is refused with the speed of an arm and the time that it needs", () => {
  expect(() =>
    run("suspender-90", (draft) => {
      draft.cadence = [{ do: "twitch", travel_m: 1.5, in_s: 0.158, back_s: 0.5 }];
    }),
  ).toThrow(/^cadence\[0\]\.in = 0\.158: the rod tip would reach 19\.0 m\/s.*at least 0\.19 s/);
});

it("a bib that pulls 2.8 times as hard, on braid that hardly stretches, runs through a hard twitch", () => {
  const recording = run("long-bib-diver-90", (draft) => {
    draft.calibration = { bibFactor: 2.8 };
    draft.tackle.line = { ...draft.tackle.line, material: "braid" };
    draft.cadence = [
      { do: "reel", speed_m_s: 1.5, for_s: 2 },
      { do: "twitch", travel_m: 0.5, in_s: 0.15, back_s: 0.4 },
      { do: "pause", for_s: 1 },
    ];
  });
  // The rod tip moves at 2 · 0.5 m / 0.15 s = 6.7 m/s at most; a line that stretches a little may add to it.
  expectSound(recording, 1.5 * (6.7 + 1.5));
});

it("8 balls of 2.3 mm run at 4.5 m/s, and stay in their chamber", () => {
  const recording = run("rattle-chamber-60", (draft) => {
    for (const chamber of draft.bait.chambers)
      chamber.balls = { ...chamber.balls, count: 8, diameter_mm: 2.3 };
    draft.cadence = [
      { do: "reel", speed_m_s: 4.5, for_s: 1.5 },
      { do: "pause", for_s: 0.5 },
    ];
  });
  expectSound(recording, 2 * 4.5);
  expect(recording.meta.balls).toHaveLength(8);
  for (let t = 0; t <= recording.duration; t += 0.05) {
    const { nose, pitch, balls } = recording.at(t);
    for (const { x, z } of balls) {
      const [dx, dz] = [x - nose.x, z - nose.z];
      const station = -(dx * Math.cos(pitch) + dz * Math.sin(pitch));
      const height = -dx * Math.sin(pitch) + dz * Math.cos(pitch);
      // The chamber is from 22 to 38 mm, its middle at 2 mm and 6 mm tall; half a ball may press into its wall no further than 0.3 mm.
      expect(station).toBeGreaterThan(22e-3 + 1.15e-3 - 3e-4);
      expect(station).toBeLessThan(38e-3 - 1.15e-3 + 3e-4);
      expect(Math.abs(height - 2e-3)).toBeLessThan(3e-3 - 1.15e-3 + 3e-4);
    }
  }
});
