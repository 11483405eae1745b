import { parseScenario } from "../../src/document";
import type { Scenario } from "../../src/document";

/** A small valid scenario with one of everything, as plain data that a test may spoil. Invented numbers. */
export function sample() {
  return {
    format: "trimwright/scenario",
    version: 1,
    name: "Sample 80",
    notes: "for tests",
    bait: {
      length_mm: 80,
      top: [
        [0, 0],
        [30, 9],
        [80, 1.5],
      ],
      bottom: [
        [0, 0],
        [30, -9],
        [80, -1.5],
      ],
      halfBreadth: [
        [0, 0],
        [30, 7],
        [80, 1],
      ],
      widest: [
        [0, 0],
        [80, 0],
      ],
      roundover: {
        above: [[0, 2]],
        below: [
          [0, 2],
          [80, 3],
        ],
      },
      body: { material: "basswood" } as Record<string, unknown>,
      chambers: [
        {
          name: "rattle",
          from_mm: 36,
          to_mm: 50,
          height_mm: 2,
          tall_mm: 6,
          wide_mm: 6,
          balls: { count: 2, diameter_mm: 3, material: "carbon steel" },
        },
      ],
      ballast: [
        {
          name: "belly",
          at_mm: [26, -5],
          mass_g: 2,
          material: "tin",
          where: "inside",
          hole_ml: 0.3,
          filler_g_ml: 1.1,
        },
      ],
      wires: [
        {
          name: "tail eye",
          path_mm: [
            [66, 0],
            [83, 0],
          ],
          diameter_mm: 0.9,
          material: "stainless steel",
        },
      ],
      bib: {
        root_mm: [3, -2.4],
        angle_deg: 42,
        length_mm: 14,
        width_mm: 13,
        slot_mm: 4,
        thickness_mm: 1.5,
        outline: "round",
        material: "polycarbonate",
      },
      tie_mm: [-2, 0],
      hangers: [
        { name: "belly", at_mm: [34, -10], ring: { mass_g: 0.08 }, hook: { mass_g: 0.5, size: "6" } },
      ],
      fittings: [{ name: "eyes", at_mm: [8, 2], mass_g: 0.1, density_g_ml: 1.2 }],
      coats: [
        { name: "paint", mass_g: 0.3, density_g_ml: 1.3 },
        { name: "clear", thickness_mm: 0.15, material: "epoxy" },
      ],
    },
    bench: [
      { kind: "displacement", reading_g: 9, resolution_g: 0.01, tap_C: 18, with: ["body"] },
      { kind: "weighing", reading_g: 6, resolution_g: 0.01, with: ["body", "ballast"], air: true },
    ],
    water: { temperature_C: 12, salinity_g_kg: 0, depth_m: 4, current_m_s: 0.1 },
    tackle: { line: { material: "nylon", diameter_mm: 0.25 }, lineOut_m: 20, rodTip_m: 1 },
    cadence: [
      { do: "settle", for_s: 1 },
      { do: "reel", speed_m_s: 0.8, for_s: 4 },
      { do: "reel", speed_m_s: 0.6, length_m: 2 },
      { do: "twitch", travel_m: 0.3, in_s: 0.15, back_s: 0.3 },
      { do: "pause", for_s: 2 },
      { do: "slack", for_s: 1 },
      { do: "lift", height_m: 0.5, in_s: 1 },
      { do: "release", for_s: 2 },
    ],
    calibration: { bibFactor: 0.9 },
    uncertainty: { wood: 0.05, drawnLength_mm: 0.1 },
    expect: [{ path: "statics.restTrim_deg", value: 0, tolerance: 90, why: "a test" }],
  };
}

export type Sample = ReturnType<typeof sample>;

/** The sample, read; `change` may change it first. */
export function sampleScenario(change: (draft: Sample) => void = () => undefined): Scenario {
  const draft = sample();
  change(draft);
  const read = parseScenario(JSON.stringify(draft));
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  return read.scenario;
}
