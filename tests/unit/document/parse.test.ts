import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseScenario, readScenario } from "../../../src/document";
import type { Problem } from "../../../src/document";
import { sample, sampleScenario } from "../../lib/sample";
import type { Sample } from "../../lib/sample";

/** Reads the sample after `spoil`; all problems, of which there must be some. */
function problems(spoil: (draft: Sample) => void): readonly Problem[] {
  const draft = sample();
  spoil(draft);
  const read = parseScenario(JSON.stringify(draft, null, 2));
  if (read.ok) throw new Error("read without a problem");
  for (const one of read.problems) {
    expect(one.path === "" || one.message.includes(one.path), one.message).toBe(true);
    for (const part of [one.found, one.allowed, one.remedy]) expect(part.trim(), one.message).not.toBe("");
  }
  return read.problems;
}

/** The one problem that `spoil` makes. */
function only(spoil: (draft: Sample) => void): Problem {
  const found = problems(spoil);
  const [first] = found;
  expect(found.map((one) => one.message)).toHaveLength(1);
  if (first === undefined) throw new Error("no problem");
  return first;
}

// Tests put wrong things in places that types would guard.
const loose = (value: unknown) => value as Record<string, unknown>;

describe("reading a scenario", () => {
  it("reads the sample, and the example of the format page", () => {
    expect(sampleScenario().bait.fittings[0]?.where).toBe("outside");
    const page = readFileSync("docs/scenario-format.md", "utf8");
    const example = /```jsonc\n([\s\S]*?)```/.exec(page)?.[1] ?? "";
    const read = parseScenario(example.replaceAll(/\s\/\/.*$/gm, ""));
    expect(read.ok ? [] : read.problems).toEqual([]);
  });

  it("reads the least scenario, with empty lists for what is absent", () => {
    const scenario = sampleScenario((draft) => {
      for (const key of [
        "chambers",
        "ballast",
        "wires",
        "bib",
        "hangers",
        "fittings",
        "coats",
        "widest",
        "roundover",
      ]) {
        delete loose(draft.bait)[key];
      }
      for (const key of ["notes", "bench", "cadence", "calibration", "uncertainty", "expect"])
        delete loose(draft)[key];
    });
    expect([scenario.bench, scenario.cadence, scenario.bait.coats, scenario.expect]).toEqual([
      [],
      [],
      [],
      [],
    ]);
    expect("bib" in scenario.bait).toBe(false);
  });

  it.each<[string, (draft: Sample) => void, string, RegExp]>([
    ["a missing key", (d) => delete loose(d.bait)["length_mm"], "bait.length_mm", /Add this key: "Length"/],
    [
      "text for a number",
      (d) => (loose(d.water)["temperature_C"] = "12"),
      "water.temperature_C",
      /without quotes/,
    ],
    [
      "a decimal comma",
      (d) => (loose(d.water)["temperature_C"] = "12,5"),
      "water.temperature_C",
      /a point for the decimals/,
    ],
    ["null", (d) => (loose(d.water)["temperature_C"] = null), "water.temperature_C", /found null/],
    [
      "out of range",
      (d) => (d.water.salinity_g_kg = 420),
      "water.salinity_g_kg",
      /a number from 0 to 42 g\/kg/,
    ],
    [
      "zero where it must be above",
      (d) => (d.tackle.lineOut_m = 0),
      "tackle.lineOut_m",
      /above 0 up to 500 m/,
    ],
    [
      "a wrong word",
      (d) => (loose(d.bait.bib)["outline"] = "sqare"),
      "bait.bib.outline",
      /Did you mean "square"\?/,
    ],
    ["a wrong move", (d) => (loose(d.cadence[0])["do"] = "pawse"), "cadence[0].do", /Did you mean "pause"\?/],
    [
      "a key of another move",
      (d) => (loose(d.cadence[4])["speed_m_s"] = 1),
      "cadence[4].speed_m_s",
      /unknown key/,
    ],
    [
      "a mistyped key",
      (d) => (loose(d.bait)["lenght_mm"] = 3),
      "bait.lenght_mm",
      /Did you mean "length_mm"\?/,
    ],
    ["a key from elsewhere", (d) => (loose(d)["constructor"] = {}), "constructor", /Remove it/],
    [
      "half a ball",
      (d) => (loose(d.bait.chambers[0]?.balls)["count"] = 2.5),
      "bait.chambers[0].balls.count",
      /whole number/,
    ],
    ["a point of three", (d) => (d.bait.tie_mm = [1, 2, 3]), "bait.tie_mm", /two numbers/],
    ["a list for a group", (d) => (loose(d)["water"] = []), "water", /group of keys/],
    ["one point of a curve", (d) => (d.bait.top = [[0, 0]]), "bait.top", /at least 2 entries/],
    [
      "a negative half-breadth",
      (d) => (d.bait.halfBreadth[1] = [30, -7]),
      "bait.halfBreadth[1][1]",
      /from 0 to 1000 mm/,
    ],
    ["a short name", (d) => (d.name = ""), "name", /at least 1 characters/],
    ["another format", (d) => (d.format = "other/scenario"), "format", /"trimwright\/scenario"/],
    ["a newer version", (d) => (d.version = 2), "version", /newer release/],
    ["no version", (d) => delete loose(d)["version"], "version", /found nothing/],
    [
      "an exponent below 1",
      (d) => (d.bait.roundover.above = [[0, 0.5]]),
      "bait.roundover.above[0][1]",
      /from 1 to 10/,
    ],
  ])("refuses %s", (_, spoil, path, words) => {
    const one = only(spoil);
    expect(one.path).toBe(path);
    expect(one.message).toMatch(words);
  });

  it.each<[string, (draft: Sample) => void, string, RegExp]>([
    ["stations that fall", (d) => d.bait.top.splice(1, 0, [40, 3]), "bait.top[2][0]", /nose to tail/],
    ["a curve that starts late", (d) => (d.bait.bottom[0] = [1, 0]), "bait.bottom[0][0]", /station 0/],
    [
      "a curve that ends early",
      (d) => (d.bait.halfBreadth[2] = [79, 1]),
      "bait.halfBreadth[2][0]",
      /length_mm/,
    ],
    [
      "an exponent off the body",
      (d) => (d.bait.roundover.below[1] = [81, 3]),
      "bait.roundover.below[1][0]",
      /length/,
    ],
    [
      "a chamber that runs backwards",
      (d) => (loose(d.bait.chambers[0])["to_mm"] = 20),
      "bait.chambers[0].to_mm",
      /larger station/,
    ],
    ["no density", (d) => delete loose(d.bait.wires[0])["material"], "bait.wires[0]", /density_g_ml/],
    [
      "an unknown material",
      (d) => (d.bait.body["material"] = "baswood"),
      "bait.body.material",
      /Did you mean "basswood"/,
    ],
    [
      "a coat of both kinds",
      (d) => (loose(d.bait.coats[0])["thickness_mm"] = 0.1),
      "bait.coats[0]",
      /that was measured/,
    ],
    [
      "a coat of no kind",
      (d) => delete loose(d.bait.coats[0])["mass_g"],
      "bait.coats[0]",
      /Add the thickness/,
    ],
    [
      "a reel of both kinds",
      (d) => (loose(d.cadence[1])["length_m"] = 3),
      "cadence[1]",
      /both for_s and length_m/,
    ],
    ["a reel of no kind", (d) => delete loose(d.cadence[1])["for_s"], "cadence[1]", /how long to reel/],
    [
      "an unknown line",
      (d) => (d.tackle.line.material = "nilon"),
      "tackle.line.material",
      /Did you mean "nylon"/,
    ],
    [
      "a wire that stands still",
      (d) => d.bait.wires[0]?.path_mm.push([83, 0]),
      "bait.wires[0].path_mm[2]",
      /equal points/,
    ],
    [
      "a pull after the release",
      (d) => d.cadence.push({ do: "reel", speed_m_s: 1, for_s: 1 }),
      "cadence[8].do",
      /for good/,
    ],
    ["a puddle", (d) => (d.water.depth_m = 0.1), "water.depth_m", /deeper water/],
    ["a line that ends at the rod", (d) => (d.tackle.lineOut_m = 1.1), "tackle.lineOut_m", /more line/],
    ["a cadence of days", (d) => (loose(d.cadence[2])["speed_m_s"] = 1e-4), "cadence", /up to 3600 s/],
  ])("refuses %s (rules between fields)", (_, spoil, path, words) => {
    const one = only(spoil);
    expect(one.path).toBe(path);
    expect(one.message).toMatch(words);
  });

  // What only the assembled bait can know comes from the model, with the document's path.
  it.each<[string, (draft: Sample) => void, string, RegExp]>([
    [
      "edges that cross between points",
      (d) => {
        d.bait.bottom = [
          [0, 0],
          [62, 8],
          [80, -1.5],
        ];
        delete loose(d.bait)["widest"];
        d.bait.chambers = [];
      },
      "bait.top[2]",
      /top is .* below bottom/,
    ],
    [
      "a widest line above the top",
      (d) =>
        (d.bait.widest = [
          [0, 0],
          [40, 20],
          [80, 0],
        ]),
      "bait.",
      /widest/,
    ],
    [
      "more balls than fit",
      (d) => (loose(d.bait.chambers[0]?.balls)["count"] = 100),
      "bait.chambers[0].balls.count",
      /do not fit/,
    ],
    [
      "a chamber outside the outline",
      (d) => (loose(d.bait.chambers[0])["height_mm"] = 12),
      "bait.chambers[0]",
      /outside the body/,
    ],
    [
      "an unknown thing on the scale",
      (d) => (loose(d.bench[0])["with"] = ["tale"]),
      "bench[0].with[0]",
      /names nothing/,
    ],
    ["a hole larger than the body", (d) => (loose(d.bait.ballast[0])["hole_ml"] = 50), "bait", /smaller/],
    [
      "a reading that leaves no body",
      (d) => (loose(d.bench[1])["reading_g"] = 0.5),
      "bench[1].reading_g",
      /leaves the body/,
    ],
  ])("refuses %s (the model)", (_, spoil, path, words) => {
    const one = only(spoil);
    expect(one.path.startsWith(path), one.message).toBe(true);
    expect(one.message).toMatch(words);
  });

  it("says all that is wrong at once", () => {
    const found = problems((d) => {
      d.water.salinity_g_kg = -1;
      loose(d.bait)["typo"] = 1;
      delete loose(d.tackle)["rodTip_m"];
    });
    expect(found.map((one) => one.path).sort()).toEqual([
      "bait.typo",
      "tackle.rodTip_m",
      "water.salinity_g_kg",
    ]);
  });

  it("says the line, of the key or of what should hold it", () => {
    const lines = JSON.stringify(sample(), null, 2).split("\n");
    const depth = only((d) => (d.water.depth_m = -1));
    expect(lines[(depth.line ?? 0) - 1]).toContain('"depth_m"');
    const missing = only((d) => delete loose(d.water)["depth_m"]);
    expect(lines[(missing.line ?? 0) - 1]).toContain('"water"');
  });

  it("finds nothing wrong with what it read", () => {
    expect(readScenario(sampleScenario())).toMatchObject({ ok: true, notes: [] });
  });
});
