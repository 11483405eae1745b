import { describe, expect, it } from "vitest";
import type { SeasonPoint } from "../../../src/model/bench";
import { compile } from "../../../src/document";
import { density } from "../../../src/model/water";
import { seasonLines, stretches } from "../../../src/ui/views/float/season";
import { scenario } from "../ui-app/scenario";

const point = (temperature: number, grams: number): SeasonPoint => ({
  salinity: 0,
  temperature,
  density: 1000,
  net: grams / 1e3,
  trim: null,
  verdict: Math.abs(grams) <= 0.05 ? "suspends" : grams > 0 ? "floats" : "sinks",
});

describe("stretches of one verdict", () => {
  it("end where the straight line between two points crosses ± 0.05 g", () => {
    const found = stretches([point(0, 0.15), point(10, -0.05), point(20, -0.25)]);
    // From 0.15 to −0.05 over 10 °C: 0.05 is met at 5 °C; −0.05 itself still suspends.
    expect(found.map((one) => one.verdict)).toEqual(["floats", "suspends", "sinks"]);
    expect(found.map((one) => one.to)).toEqual([5, 10, 20].map((t) => expect.closeTo(t, 9) as number));
  });

  it("name what is passed within one step", () => {
    const found = stretches([point(0, 0.15), point(10, -0.15)]);
    expect(found.map((one) => one.verdict)).toEqual(["floats", "suspends", "sinks"]);
    expect(found[0]?.to).toBeCloseTo(10 / 3, 9);
    expect(found[2]?.from).toBeCloseTo(20 / 3, 9);
  });

  it("are one where nothing changes", () => {
    expect(stretches([point(0, 1), point(10, 0.5)])).toEqual([{ verdict: "floats", from: 0, to: 10 }]);
  });
});

describe("lines of the season", () => {
  const { bait } = compile(scenario());
  it("differ from water to water by its density times the volume displaced", () => {
    const lines = seasonLines(bait, 0, { coldest: 4, warmest: 24 });
    expect(lines.map((one) => one.name)).toEqual(["fresh", "brackish", "sea"]);
    const [fresh, , sea] = lines;
    const { displaced } = bait.rigid({ end: "mid", face: "floor" });
    const apart = (sea?.points[0]?.net ?? NaN) - (fresh?.points[0]?.net ?? NaN);
    expect(apart).toBeCloseTo((density(35, 4) - density(0, 4)) * displaced, 12);
  });

  it("have one more for water that is none of the presets", () => {
    const lines = seasonLines(bait, 18, { coldest: 4, warmest: 24 });
    expect(lines.at(-1)).toMatchObject({ name: "own", salinity: 18, own: true });
  });
});
