import { describe, expect, it } from "vitest";
import { assemble, withOnly } from "../../../src/model/bait";
import type { BaitSpec, CorrectionSpec } from "../../../src/model/bait";
import {
  netForSpeed,
  netOf,
  riseBand,
  RiseCurve,
  season,
  seenAttitude,
  seenWaterline,
  sensitivity,
  steadySpeed,
  timedTravel,
} from "../../../src/model/bench";
import { band, draws, floating, restTrim, staticsOf } from "../../../src/model/statics";
import { terminalRise } from "../../../src/model/tow";
import { water } from "../../../src/model/water";
import { deg, g, mm } from "../../lib/si";
import { MINNOW } from "../../lib/baits";

const { density, viscosity } = water(0, 15);
const around = { density, viscosity, gravity: 9.80665, current: { x: 0, z: 0 }, surface: true, depth: 5 };
const SPEC: BaitSpec = { ...MINNOW, chambers: [], bench: [] };
const bait = assemble(SPEC);
const NET = netOf(bait, density);
const corrected = (c: CorrectionSpec): ReturnType<typeof assemble> => assemble({ ...SPEC, corrections: [c] });
const plain = (mass: number, x = 0, z = 0): CorrectionSpec => ({
  name: "tub correction",
  mass,
  shift: { x, z },
  deviation: { mass: null, x: null, z: null },
  without: [],
});

describe("a correction", () => {
  it("is a row of the account that moves net buoyancy by its mass and G by its shift alone", () => {
    const before = staticsOf(bait, density);
    const after = staticsOf(corrected(plain(-0.2 * g, 0.3 * mm, -0.1 * mm)), density);
    expect(after.netBuoyancy - before.netBuoyancy).toBeCloseTo(0.2 * g, 12);
    expect(after.G.x - before.G.x).toBeCloseTo(0.3 * mm, 12);
    expect(after.G.z - before.G.z).toBeCloseTo(-0.1 * mm, 12);
    expect(after.B).toEqual(before.B);
    expect(after.account.at(-1)).toMatchObject({
      item: "tub correction",
      group: "corrections",
      displaced: 0,
    });
    const sum = after.account.reduce((s, r) => s + r.net, 0);
    expect(sum).toBeCloseTo(after.netBuoyancy, 12);
  });
  it("works without mass, and leaves no trace when it is taken away", () => {
    const moved = restTrim(corrected(plain(0, 0.25 * mm)));
    const own = restTrim(bait);
    expect(moved.G.x - own.G.x).toBeCloseTo(0.25 * mm, 12);
    expect(restTrim(assemble({ ...SPEC, corrections: [] }))).toEqual(own);
  });
  it("is refused where it takes more than the bait", () => {
    expect(() => corrected(plain(-1))).toThrow(/corrections\[0\]/);
    expect(() => corrected({ ...plain(0), without: ["nothing"] })).toThrow(/corrections\[0\]\.without/);
  });
  it("narrows the band of net buoyancy to that of the reading", () => {
    const sigma = 0.02 * g;
    const c = { ...plain(0.1 * g), deviation: { mass: sigma, x: null, z: null } };
    const { netDeviation } = band(corrected(c), density, { samples: 2000 });
    // 2000 draws know a deviation to 1/√4000; 4 of those.
    expect(Math.abs(netDeviation / sigma - 1)).toBeLessThan(4 / Math.sqrt(4000));
    expect(band(bait, density, { samples: 2000 }).netDeviation).toBeGreaterThan(5 * sigma);
  });
  it("says nothing of what came onto the bait later", () => {
    const sigma = 0.02 * g;
    const c = { ...plain(0), deviation: { mass: sigma, x: null, z: null }, without: ["hangers"] };
    const { netDeviation } = band(corrected(c), density, { samples: 2000 });
    // The hooks' and rings' own 25 %, in water, and the reading: independent.
    const hooks = SPEC.hangers
      .flatMap((h) => [h.hook, h.ring])
      .map((p) => (p ? p.mass * (1 - density / p.density) : 0));
    const expected = Math.hypot(sigma, ...hooks.map((m) => 0.25 * m));
    expect(Math.abs(netDeviation / expected - 1)).toBeLessThan(4 / Math.sqrt(4000));
  });

  // The bait was tested without its hooks and rings: what the test found is in the bare bait, and hangs on nothing later.
  const bare: CorrectionSpec = { ...plain(0.1 * g, 0.3 * mm, -0.1 * mm), without: ["hangers"] };
  const moments = (b: ReturnType<typeof assemble>): readonly number[] => {
    const { mass, G } = b.rigid({ end: "mid", face: "floor" });
    return [mass, mass * G.x, mass * G.z];
  };
  it("of a barer bait adds to the whole bait the mass and the moment that it adds to the bare one", () => {
    const without = (b: typeof bait) => withOnly(b, (row) => row.group !== "hangers");
    const [m0, x0, z0] = moments(bait) as [number, number, number];
    const [m1, x1, z1] = moments(corrected(bare)) as [number, number, number];
    const [n0, a0, b0] = moments(without(bait)) as [number, number, number];
    const [n1, a1, b1] = moments(without(corrected(bare))) as [number, number, number];
    expect(m1 - m0).toBeCloseTo(n1 - n0, 12);
    expect(x1 - x0).toBeCloseTo(a1 - a0, 12);
    expect(z1 - z0).toBeCloseTo(b1 - b0, 12);
    // On the tested bait the shift is that of its own G, as the tub showed it.
    expect(a1 / n1 - a0 / n0).toBeCloseTo(0.3 * mm, 12);
    // On the heavier whole bait it is less.
    expect(x1 / m1 - x0 / m0).toBeLessThan(0.3 * mm);
  });
  it("stays on every bait that had all that was tested, and says nothing of a barer one", () => {
    const rows = (keep: (group: string) => boolean): readonly string[] =>
      withOnly(corrected(bare), (row) => keep(row.group))
        .items.filter((row) => row.group === "corrections")
        .map((row) => row.item);
    expect(rows(() => true)).toHaveLength(1);
    expect(rows((group) => group !== "hangers")).toHaveLength(1);
    expect(rows((group) => group !== "coats")).toHaveLength(0);
    expect(rows(() => false)).toHaveLength(0);
    // A test of the finished bait speaks of that one alone.
    const whole = withOnly(corrected(plain(0.1 * g)), (row) => row.group !== "hangers");
    expect(whole.items.some((row) => row.group === "corrections")).toBe(false);
  });
  it("of a barer bait does not take over one of the finished bait that was found before", () => {
    const both = assemble({ ...SPEC, corrections: [{ ...plain(1 * g, 2 * mm), name: "whole" }, bare] });
    const alone = corrected(bare);
    const row = (b: typeof bait) => b.items.find((one) => one.item === "tub correction");
    expect(row(both)?.massCentre).toEqual(row(alone)?.massCentre);
    expect(row(both)?.moment).toEqual(row(alone)?.moment);
    // The bands take the same bait for the tested one: with no input off, they say what the account says.
    const { own } = draws(both, density, 0, 1);
    const { B, G } = both.rigid({ end: "mid", face: "floor" });
    expect(own.net).toBeCloseTo(netOf(both, density), 12);
    expect(own.x).toBeCloseTo(G.x - B.x, 12);
    expect(own.z).toBeCloseTo(G.z - B.z, 12);
  });
});

describe("timed rise", () => {
  it("finds the net buoyancy of a bait from its own steady rise", () => {
    const heavier = corrected(plain(NET - 0.3 * g)); // floats by 0.3 g
    const { speed } = terminalRise(heavier, around);
    expect(netForSpeed(bait, around, speed).net / g).toBeCloseTo(0.3, 3);
  });
  it("corrects for the start from rest: x = λ ln cosh(v t/λ)", () => {
    const [lambda, v, runUp, height] = [0.2, 0.15, 0.05, 0.4];
    const time = (x: number): number => (lambda / v) * Math.acosh(Math.exp(x / lambda));
    expect(steadySpeed(height, time(runUp + height) - time(runUp), runUp, lambda)).toBeCloseTo(v, 12);
    // Far from the start it is the plain quotient, and nothing overflows.
    expect(steadySpeed(1, 5, 1000, 0.01)).toBeCloseTo(0.2, 12);
  });
  it("turns into a correction whose sign is right, with a band no narrower than the drag's", () => {
    const slower = corrected(plain(NET - 0.2 * g));
    const { speed } = terminalRise(slower, around);
    const reading = {
      direction: "rises",
      height: 0.6,
      runUp: 2,
      times: [0.6 / speed, 0.6 / speed, 0.6 / speed],
    } as const;
    const { timed, tub } = timedTravel(bait, around, reading);
    expect(timed.net.value / g).toBeCloseTo(0.2, 2);
    expect(tub.correction.mass).toBeCloseTo(NET - timed.net.value, 12);
    expect(netOf(corrected(tub.correction), density)).toBeCloseTo(timed.net.value, 12);
    const [low, high] = timed.net.band ?? [NaN, NaN];
    // ± 20 % of the drag alone.
    expect(high - low).toBeGreaterThan(0.38 * timed.net.value);
    expect(low).toBeLessThan(timed.net.value);
    expect(() => timedTravel(bait, around, { ...reading, times: [] })).toThrow(/no time/);
    // A point that was not typed, 31 for 3.1, is told; the scatter of a hand is not.
    const mistyped = (times: readonly number[]): boolean =>
      timedTravel(bait, around, { ...reading, times }).timed.notes.some((one) => one.includes("mistyped"));
    expect(mistyped([2.9, 3, 31])).toBe(true);
    expect(mistyped([2.7, 3, 3.3])).toBe(false);
  });
});

describe("seen attitude and waterline", () => {
  it("at rest: the correction brings the rest trim to what was seen", () => {
    const pitch = (restTrim(bait).pitch ?? 0) + 8 * deg;
    const tub = seenAttitude(bait, around, { pitch, state: "rest" });
    expect(restTrim(corrected(tub.correction)).pitch).toBeCloseTo(pitch, 9);
    expect(tub.offset?.deviation).toBeGreaterThan(0);
    expect(() => seenAttitude(bait, around, { pitch: 1.5, state: "rest" })).toThrow(/height of G/);
  });
  it("waterline: marks of a known floating bait give back its net buoyancy and G", () => {
    const c = plain(NET - 1.2 * g, 0.4 * mm);
    const truth = corrected(c);
    const afloat = floating(truth, density);
    if (!afloat) throw new Error("it sinks");
    const { sin, cos, level } = afloat.surface;
    const on = (x: number): { x: number; z: number } => ({ x, z: (level - x * sin) / cos });
    const tub = seenWaterline(bait, around, 15, { nose: on(-5 * mm), tail: on(-80 * mm) });
    expect((tub.net?.value ?? NaN) / g).toBeCloseTo(1.2, 6);
    expect(tub.correction.mass).toBeCloseTo(c.mass, 9);
    // G as the tub sees it: the part across the surface of the true shift.
    expect(tub.correction.shift.x).toBeCloseTo(0.4 * mm, 7);
    expect(() => seenWaterline(bait, around, 15, { nose: on(-80 * mm), tail: on(-5 * mm) })).toThrow(/ahead/);
  });
});

describe("sensitivity and season", () => {
  it("0.1 g inside counts whole, outside what it exceeds the water; a millimetre turns as the moments say", () => {
    const rows = sensitivity(bait, around, { rise: false });
    const { mass, G, B } = bait.rigid({ end: "mid", face: "floor" });
    SPEC.ballast.forEach((b, i) => {
      const row = rows.find((r) => r.path === `bait.ballast[${i}]` && r.change === "1 mm aft");
      if (b.where !== "inside" || b.hole === null) return;
      // The wood that the hole takes away moves too: μ = m + filler − ρ_wood hole.
      const fill = Math.max(0, b.hole - b.mass / b.stuff.density) * b.filler;
      const mu = b.mass + fill - bait.bodyDensity * b.hole;
      const gx = G.x - (mu * mm) / mass;
      expect(row?.trim).toBeCloseTo(Math.atan2(B.x - gx, B.z - G.z) - Math.atan2(B.x - G.x, B.z - G.z), 6);
      expect(row?.net).toBeCloseTo(0, 12);
    });
    const hook = rows.find((r) => r.change === "0.1 g more" && r.path.startsWith("bait.hangers"));
    const steel = SPEC.hangers[0]?.hook?.density ?? NaN;
    expect(hook?.net).toBeCloseTo(-0.1 * g * (1 - density / steel), 12);
  });
  it("5 → 25 °C costs the water's own change of density, fresh → sea gives it", () => {
    const points = season(bait, {
      coldest: 5,
      warmest: 25,
      steps: 2,
      salinities: [0, 35],
      suspendsWithin: 0.05 * g,
    });
    const { displaced } = bait.rigid({ end: "mid", face: "floor" });
    const [cold, warm, , sea] = points;
    // 999.967 and 997.047 kg/m³ at 5 and 25 °C, 1023.343 at 25 °C and 35 g/kg (UNESCO 44, EOS-80 check values).
    expect((cold?.net ?? NaN) - (warm?.net ?? NaN)).toBeCloseTo(displaced * (999.967 - 997.047), 7);
    expect((sea?.net ?? NaN) - (warm?.net ?? NaN)).toBeCloseTo(displaced * (1023.343 - 997.047), 7);
  });
  it("the rise curve meets the terminal rises that it is not made from", () => {
    const curve = new RiseCurve(bait, around);
    for (const share of [0.5, 1, 2]) {
      const { speed } = terminalRise(corrected(plain(NET - share * NET)), around);
      // Between its points (a quarter, one, four) a straight line in log-log: within 3 % of the speed, far inside the drag's 10 %.
      expect(Math.abs(curve.speed(share * NET) / speed - 1)).toBeLessThan(0.03);
    }
    expect(curve.speed(-0.1 * g)).toBeLessThan(0);
    expect(Math.abs(curve.speed(0))).toBe(0);
  });
  it("the rise's band: of 10 000 draws, ranked, the drag among them", () => {
    const floats = corrected(plain(NET - 1 * g));
    const found = riseBand(floats, around);
    const { speed } = terminalRise(floats, around);
    expect(found.speed[0]).toBeLessThan(speed);
    expect(found.speed[1]).toBeGreaterThan(speed);
    const shares = found.contributions.map((c) => c.share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(shares.reduce((a, b) => a + b)).toBeCloseTo(1, 9);
    // v ~ 1/√drag: ± 20 % of the drag is ± 10 % of the speed, two deviations.
    const drag = found.contributions.find((c) => c.input === "drag");
    expect((drag?.speed ?? NaN) / speed).toBeGreaterThan(0.048);
    expect((drag?.speed ?? NaN) / speed).toBeLessThan(0.054);
  });
});
