import { describe, expect, it } from "vitest";
import type { BaitSpec, FittingSpec } from "../../../src/model/bait";
import { account, restTrim, staticsOf, submergedLever } from "../../../src/model/statics";
import { at, deg, g, mm, stuff } from "../../lib/si";
import { ELLIPSOID, ELLIPSOID_VOLUME, make, STEEL } from "../../lib/baits";

/** A weight so dense that it takes no room: it moves G and nothing else. */
const point = (mass: number, station: number, height: number): FittingSpec => ({
  name: "weight",
  at: at(station, height),
  mass,
  stuff: stuff("point", 1e12),
  where: "inside",
});
const BODY = 400 * ELLIPSOID_VOLUME;

describe("rest trim under water (docs/model.md §5)", () => {
  // The weight equals the body: G moves by half of the weight's offset from the middle.
  const trim = (aft: number, down: number): number | null =>
    restTrim(make(ELLIPSOID, { fittings: [point(BODY, 50 + 2 * aft, -2 * down)] })).pitch;

  it("with G 3 mm under B, 0.25 mm lengthwise tips it 5°, 1 mm 18°", () => {
    expect((trim(0.25, 3) ?? NaN) / deg).toBeCloseTo(Math.atan2(0.25, 3) / deg, 4);
    expect(Math.round((trim(0.25, 3) ?? NaN) / deg)).toBe(5);
    expect(Math.round((trim(1, 3) ?? NaN) / deg)).toBe(18);
    expect(Math.round((trim(-1, 3) ?? NaN) / deg)).toBe(-18);
  });
  it("tail weight lifts the nose, a weight on the back turns it belly-up", () => {
    expect(trim(1, 3)).toBeGreaterThan(0);
    expect((trim(0.1, -3) ?? NaN) / deg).toBeCloseTo(180 - Math.atan2(0.1, 3) / deg, 4);
  });
  it("is undefined below 0.1 mm of BG, and only there", () => {
    expect(trim(0, 0.0999)).toBeNull();
    expect(trim(0, 0.1001)).not.toBeNull();
  });
  it("hooks act whole at their eyes, by their weight in water", () => {
    const hook = { mass: 1 * g, density: 7820, size: null };
    const bait = make(ELLIPSOID, { hangers: [{ name: "h", at: at(95, -3), ring: null, hook }] });
    // About the body's middle: weight 1 g at (−45, −3) mm; displaced (1/7.82) mL there too.
    const m = BODY + 1 * g;
    const v = ELLIPSOID_VOLUME + (1 * g) / 7820;
    const share = (1 * g) / 7820 / v - (1 * g) / m;
    const expected = Math.atan2(-45 * share, -3 * share);
    expect(restTrim(bait).pitch).toBeCloseTo(expected, 6);
  });
  it("righting lever in heel, submerged: BG sin(heel)", () => {
    expect(submergedLever(3 * mm, 30 * deg)).toBeCloseTo(1.5 * mm, 12);
  });
});

describe("loose balls and the side they lie on", () => {
  /** Rattle of 40 mm along the floor about station `middle`, two balls of 5 mm. */
  const rattle = (middle: number, more: Partial<BaitSpec> = {}) =>
    make(ELLIPSOID, {
      chambers: [
        {
          name: "r",
          from: (middle - 20) * mm,
          to: (middle + 20) * mm,
          height: 0,
          tall: 6 * mm,
          wide: 6 * mm,
          balls: { count: 2, diameter: 5 * mm, stuff: STEEL },
        },
      ],
      ...more,
    });
  const ball = (Math.PI / 6) * (5 * mm) ** 3 * 7820;

  it("a symmetric bait rests at either end, and both are told", () => {
    const found = restTrim(rattle(50, { fittings: [point(1 * g, 50, -6)] }));
    expect(found.pitch).not.toBeNull();
    expect(found.others).toHaveLength(1);
    expect(found.pitch).toBeCloseTo(-(found.others[0] ?? NaN), 9);
    // By hand: chamber 40 × 6 × 6 mm in the middle (it takes no moment of its own), two balls with their mean 15 mm off the
    // middle (ranks at 2.5 and 7.5 mm from the end), 0.5 mm under it.
    const mass = 400 * (ELLIPSOID_VOLUME - 40 * 36 * mm ** 3) + 2 * ball + 1 * g;
    const G = { x: (2 * ball * 15) / mass, z: (2 * ball * -0.5 + 1 * g * -6) / mass };
    expect(Math.abs(found.pitch ?? NaN)).toBeCloseTo(Math.atan2(G.x, -G.z), 6);
    expect(found.BG).toBeCloseTo(Math.hypot(G.x, G.z) * mm, 9);
  });
  it("nose-up with balls at the tail, nose-down with balls at the nose", () => {
    for (const weight of [-1, 1]) {
      const found = restTrim(rattle(50, { fittings: [point(2 * g, 50 + 3 * weight, -8)] }));
      const { pitch, side, others } = found;
      for (const trim of [pitch ?? NaN, ...others]) expect(Math.abs(trim)).toBeLessThan(Math.PI / 2);
      expect(side).toEqual({ end: (pitch ?? 0) > 0 ? "tail" : "nose", face: "floor" });
    }
  });
  it("of two, the one nearest to the trim with the balls at mid-length", () => {
    // A little weight aft of the middle: mid trim slightly nose-up, so the tail's is chosen, the nose's is listed.
    const aft = restTrim(rattle(50, { fittings: [point(0.2 * g, 52, -5)] }));
    expect(aft.side.end).toBe("tail");
    expect(aft.others).toHaveLength(1);
    expect(aft.others[0]).toBeLessThan(0);
    const fore = restTrim(rattle(50, { fittings: [point(0.2 * g, 48, -5)] }));
    expect(fore.side.end).toBe("nose");
    expect(fore.others[0]).toBeGreaterThan(0);
  });
  it("much weight aft leaves only the tail", () => {
    const found = restTrim(rattle(50, { fittings: [point(3 * g, 90, -6)] }));
    expect(found.side.end).toBe("tail");
    expect(found.others).toEqual([]);
  });
  it("with B and G of one height it can rest either way up, at either end", () => {
    expect(restTrim(rattle(50)).others).toHaveLength(3);
  });
  it("belly-up, the balls lie on the roof", () => {
    const found = restTrim(rattle(50, { fittings: [point(2 * g, 60, 8)] }));
    expect(found.side).toEqual({ end: "tail", face: "roof" });
    expect(Math.abs(found.pitch ?? 0)).toBeGreaterThan(Math.PI / 2);
  });
  it("every attitude told agrees with its side", () => {
    const bait = rattle(52, { fittings: [point(0.5 * g, 50, 1)] });
    const found = restTrim(bait);
    for (const pitch of [found.pitch ?? NaN, ...found.others]) {
      const end = Math.sin(pitch) >= 0 ? ("tail" as const) : ("nose" as const);
      const face = Math.cos(pitch) >= 0 ? ("floor" as const) : ("roof" as const);
      const { G, B } = bait.rigid({ end, face });
      expect(pitch).toBeCloseTo(Math.atan2(B.x - G.x, B.z - G.z), 12);
    }
  });
});

describe("the whole of the statics", () => {
  it("totals are those of the rows, G and B those of the side the balls rest on", () => {
    const bait = make(ELLIPSOID, {
      hangers: [{ name: "h", at: at(45, -13), ring: null, hook: { mass: 1 * g, density: 7820, size: null } }],
    });
    const s = staticsOf(bait, 998.2);
    expect(s.account.reduce((t, r) => t + r.mass, 0)).toBeCloseTo(s.mass, 15);
    expect(s.account.reduce((t, r) => t + r.displaced, 0)).toBeCloseTo(s.displaced, 15);
    expect(s.account.reduce((t, r) => t + r.net, 0)).toBeCloseTo(s.netBuoyancy, 15);
    expect(s.netBuoyancy).toBeCloseTo(998.2 * (ELLIPSOID_VOLUME + 1e-3 / 7820) - BODY - 1 * g, 9);
    expect(s.bodyVolume).toBeCloseTo(ELLIPSOID_VOLUME, 12);
  });
  it("the account nets a gram outside by what it exceeds the water, nothing for a void", () => {
    const bait = make(ELLIPSOID, {
      chambers: [
        { name: "c", from: 40 * mm, to: 60 * mm, height: 0, tall: 6 * mm, wide: 6 * mm, balls: null },
      ],
      fittings: [{ name: "eye", at: at(10, 3), mass: 1 * g, stuff: STEEL, where: "outside" }],
    });
    const rows = new Map(account(bait, 1000).map((r) => [r.item, r.net / g]));
    expect(rows.get("eye")).toBeCloseTo(1000 / 7820 - 1, 12);
    expect(rows.get("c chamber")).toBe(0);
    expect(rows.get("body")).toBeCloseTo(ELLIPSOID.volume * 1e6 - 0.4 * (ELLIPSOID.volume * 1e6 - 0.72), 9);
  });
  it("5 → 25 °C costs 0.05 g of lift on 16 mL, fresh → sea 35 gives 0.43 g", async () => {
    const { density } = await import("../../../src/model/water");
    const lift = (S: number, T: number): number => density(S, T) * 16e-6;
    expect(lift(0, 5) - lift(0, 25)).toBeGreaterThan(0.045 * g);
    expect(lift(0, 5) - lift(0, 25)).toBeLessThan(0.055 * g);
    for (const T of [5, 15, 25]) expect(Math.abs((lift(35, T) - lift(0, T)) / g - 0.43)).toBeLessThan(0.02);
  });
  it("says where surface tension decides: 1.5 g round the waterline of 100 mm", () => {
    const body = stuff("b", 998.2 - 5, "wood"); // nets 0.13 g
    const s = staticsOf(make(ELLIPSOID, { body }), 998.2);
    expect(s.notes.join(" ")).toMatch(/up to 1\.5 g/);
    expect(staticsOf(make(ELLIPSOID), 998.2).notes.join(" ")).not.toMatch(/surface tension/);
  });
});
