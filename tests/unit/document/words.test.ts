import { describe, expect, it } from "vitest";
import { attitudeWords, floatWords, floats, riseWords } from "../../../src/document/words";

describe("the words of the verdict", () => {
  it("float, suspend, sink: ±0.05 g decides", () => {
    expect([0.051, 0.05, 0, -0.05, -0.051].map(floats)).toEqual([
      "floats",
      "suspends",
      "suspends",
      "suspends",
      "sinks",
    ]);
    expect(floatWords(0.37)).toBe("floats by 0.37 g");
    expect(floatWords(-1.5)).toBe("sinks by 1.50 g");
    expect(floatWords(-0.02)).toBe("suspends (0.02 g heavy, within ±0.05 g)");
  });

  it("attitude", () => {
    expect([null, 0.4, -6, 12, 81, -60, 170].map(attitudeWords)).toEqual([
      "rests in any attitude",
      "rests level",
      "rests nose-down by 6.0°",
      "rests nose-up by 12.0°",
      "hangs tail-down at 81.0°",
      "hangs nose-down at 60.0°",
      "rests belly-up, nose up",
    ]);
  });

  it("rise", () => {
    expect(riseWords({ speed_mm_s: 71, secondsPer300mm: 4.2 })).toBe("rises 300 mm in 4.2 s");
    expect(riseWords({ speed_mm_s: -300, secondsPer300mm: 1 })).toBe("sinks 300 mm in 1.0 s");
    expect(riseWords({ speed_mm_s: 0, secondsPer300mm: null })).toBe("stands");
  });
});
