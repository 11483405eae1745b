import { describe, expect, test } from "vitest";
import { compile } from "../../../src/document";
import { beat, calibrate, prepareTow, reach } from "../../../src/model/tow";
import { scenarioOf } from "../../lib/scenarios";

const suspender = () => compile(scenarioOf("suspender-90"));

describe("calibration by a measured run", () => {
  test("finds the factor that a depth was made with, at another line out than the file's", () => {
    const { bait, around, tackle } = suspender();
    const depth = reach(prepareTow(bait, 0.83), around, tackle, { speed: 1.1, lineOut: 18 }).depth ?? NaN;
    const found = calibrate(bait, around, tackle, { speed: 1.1, lineOut: 18, depth });
    expect(found.factor).toBeCloseTo(0.83, 4);
    expect(Math.abs(found.residual ?? NaN)).toBeLessThan(1e-4);
    expect(found.uncalibrated ?? 0).toBeGreaterThan(depth);
  });

  test("a depth out of reach has no factor, and says how near it comes", () => {
    const { bait, around, tackle } = suspender();
    const found = calibrate(bait, around, tackle, { speed: 1, lineOut: 25, depth: 9 });
    expect(found.factor).toBeNull();
    expect(found.residual).toBeGreaterThan(5);
    expect(found.why).toMatch(/no factor from 0.5 to 1.5/);
  });

  test("figures that cannot be are refused by name", () => {
    const { bait, around, tackle } = suspender();
    expect(() => calibrate(bait, around, tackle, { speed: 1, lineOut: 25, depth: -1 })).toThrow(
      /depth above 0, not -1/,
    );
  });
});

describe("beat estimate", () => {
  test("is St·U over the bib's width", () => {
    // 12 mm wide, 1 m/s, St 0.15: 0.15/0.012 = 12.5 a second, by hand; half of it to half as much again.
    const { bait } = suspender();
    const bib = bait.spec.bib;
    if (!bib) throw new Error("no bib");
    const spec = { ...bait.spec, bib: { ...bib, width: 0.012, angle: (40 * Math.PI) / 180 } };
    const found = beat({ ...bait, spec }, 1, (-10 * Math.PI) / 180);
    expect(found?.frequency).toBeCloseTo(12.5, 12);
    expect([found?.low, found?.high]).toEqual([6.25, 18.75]);
    // lying along the flow, or met from behind: no front to shed from
    expect(beat({ ...bait, spec }, 1, (45 * Math.PI) / 180)).toBeNull();
    expect(beat({ ...bait, spec: { ...spec, bib: null } }, 1, 0)).toBeNull();
  });
});
