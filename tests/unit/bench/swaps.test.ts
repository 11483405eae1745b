import { describe, expect, it } from "vitest";
import { assemble } from "../../../src/model/bait";
import type { BaitSpec } from "../../../src/model/bait";
import { exactGrams, netOf, swaps, withLeader } from "../../../src/model/bench";
import type { SwapGoal, SwapPart } from "../../../src/model/bench";
import { restTrim } from "../../../src/model/statics";
import { water } from "../../../src/model/water";
import { deg, g, mm } from "../../lib/si";
import { MINNOW } from "../../lib/baits";

const SPEC: BaitSpec = { ...MINNOW, chambers: [], bench: [] };
const fresh = assemble(SPEC);
const of = (S: number) => {
  const { density, viscosity } = water(S, 15);
  return { density, viscosity, gravity: 9.80665, current: { x: 0, z: 0 }, surface: true, depth: 5 };
};
const part = (use: SwapPart["use"], mass: number, count = 2): SwapPart => ({
  name: `${use} ${(mass / g).toFixed(2)}`,
  use,
  mass,
  density: 7820,
  count,
  weighed: true,
  lead: false,
});
const PARTS = [
  part("hook", 0.4 * g),
  part("hook", 0.9 * g, 1),
  part("ring", 0.12 * g),
  part("strip", 0.15 * g, 4),
  part("clip", 0.2 * g),
];
const goal: SwapGoal = {
  net: netOf(fresh, of(0).density),
  netTolerance: 0.05 * g,
  trim: restTrim(fresh).pitch,
  trimTolerance: 3 * deg,
};

describe("swaps", () => {
  it("for the sea: ranked by misfit, each as good as the whole bait says, none better among all pairs tried out", () => {
    const sea = of(35);
    const found = swaps(fresh, sea, goal, PARTS, { rise: false });
    expect(found.before.net).toBeGreaterThan(goal.net);
    const misfits = found.swaps.map((s) => s.misfit);
    expect(misfits).toEqual([...misfits].sort((a, b) => a - b));
    for (const s of found.swaps) {
      const whole = assemble(s.spec);
      expect(netOf(whole, sea.density)).toBeCloseTo(s.net, 12);
      expect(restTrim(whole).pitch).toBeCloseTo(s.trim ?? NaN, 9);
      expect(s.changes.reduce((n, c) => n + c.net, 0)).toBeCloseTo(s.net - found.before.net, 12);
    }
    const misfit = (spec: BaitSpec): number => {
      const b = assemble(spec);
      return Math.hypot(
        (netOf(b, sea.density) - goal.net) / goal.netTolerance,
        ((restTrim(b).pitch ?? 9) - (goal.trim ?? 0)) / goal.trimTolerance,
      );
    };
    // Tried out by hand: both hooks, every hook for every hanger the box has enough of.
    const hooks = PARTS.filter((p) => p.use === "hook");
    for (const a of hooks)
      for (const b of hooks) {
        if (a === b && a.count < 2) continue;
        const spec = {
          ...SPEC,
          hangers: SPEC.hangers.map((h, i) => ({
            ...h,
            hook: i > 1 ? h.hook : { mass: (i === 0 ? a : b).mass, density: 7820, size: null },
          })),
        };
        if (SPEC.hangers.length >= 2 || a === b) expect(misfits[0]).toBeLessThanOrEqual(misfit(spec) + 1e-9);
      }
  });
  it("takes no more from the box than there is, and names what lead is in", () => {
    const found = swaps(fresh, of(35), goal, [part("strip", 0.15 * g, 2)], { rise: false, swaps: 50 });
    for (const s of found.swaps)
      expect(s.changes.reduce((n, c) => n + (c.part === "strip" ? c.count : 0), 0)).toBeLessThanOrEqual(2);
  });
  it("a ring off and another on at the same eye is the swap of that ring, and not offered a second time", () => {
    const { ring } = SPEC.hangers[0] ?? { ring: null };
    const mass = (ring?.mass ?? 0) + 0.02 * g;
    const lighter = { ...goal, net: goal.net + 0.1 * g, trim: null };
    const found = swaps(fresh, of(0), lighter, [part("ring", mass, 4)], { rise: false, swaps: 50 });
    expect(found.swaps.some((s) => s.changes.some((c) => c.change === "remove"))).toBe(true);
    for (const { changes } of found.swaps)
      for (const off of changes.filter((c) => c.change === "remove"))
        expect(changes.filter((c) => c.change === "add" && c.place === off.place)).toEqual([]);
  });
  it("a hook loses its ring only where nothing else meets the goal, and never as it comes on", () => {
    // Lighter by just the ring of the first hanger, and a ring in the box that is lighter by nearly as much.
    const [first] = SPEC.hangers;
    const ring = first?.ring?.mass ?? NaN;
    expect(first?.hook).not.toBeNull();
    const off = { ...SPEC, hangers: SPEC.hangers.map((h, i) => (i === 0 ? { ...h, ring: null } : h)) };
    const { density } = of(0);
    const lighter: SwapGoal = {
      net: netOf(assemble(off), density),
      netTolerance: 0.05 * g,
      trim: restTrim(assemble(off)).pitch,
      trimTolerance: 3 * deg,
    };
    const light = part("ring", 0.1 * ring);
    const both = swaps(fresh, of(0), lighter, [light], { rise: false });
    const [best] = both.swaps;
    expect(best?.changes).toMatchObject([{ change: "replace", part: "ring", bare: false }]);
    expect(best?.misfit).toBeGreaterThan(0);
    const bare = both.swaps.find((s) => s.misfit < 1e-6);
    expect(bare?.changes).toMatchObject([{ change: "remove", part: "ring", bare: true }]);
    // With nothing lighter in the box it is the nearest, and first.
    const alone = swaps(fresh, of(0), lighter, [part("ring", 4 * ring)], { rise: false });
    expect(alone.swaps[0]?.changes).toMatchObject([{ change: "remove", bare: true }]);
    // A ring that carries no hook comes off freely; with a hook that comes on it stays.
    const idle = { ...SPEC, hangers: SPEC.hangers.map((h, i) => (i === 0 ? { ...h, hook: null } : h)) };
    const bait = assemble(idle);
    const goesUp = { ...lighter, net: netOf(bait, density) + 0.2 * g, trim: null };
    const free = swaps(bait, of(0), goesUp, [part("hook", 0.3 * g)], { rise: false, swaps: 50 });
    const at = free.swaps.flatMap((s) => s.changes).filter((c) => c.place === first?.name);
    expect(at.some((c) => c.change === "remove")).toBe(true);
    expect(at.some((c) => c.bare)).toBe(false);
    for (const { changes } of free.swaps)
      expect(changes.filter((c) => c.place === first?.name).map((c) => c.change)).not.toEqual([
        "add",
        "remove",
      ]);
  });
  it("offers nothing that is farther from the goal than the bait as it is", () => {
    for (const rise of [false, true]) {
      expect(swaps(fresh, of(0), goal, PARTS, { rise }).swaps).toEqual([]);
      // The steady rise of the bait is not quite that which its rest trim means: a goal that is well off.
      const near = { ...goal, net: goal.net - 0.15 * g };
      const found = swaps(fresh, of(0), near, [part("strip", 0.15 * g, 6), part("hook", 3 * g)], {
        rise,
        swaps: 50,
      });
      expect(found.swaps.length).toBeGreaterThan(0);
      for (const s of found.swaps) expect(Math.abs(s.net - near.net)).toBeLessThan(0.5 * g);
    }
  });
  it("1 m of 0.285 mm fluorocarbon at the nose costs 0.05 g of lift", () => {
    // π/4 · 0.285² mm² · 1 m = 0.0638 mL; (1.78 − 1.00) g/mL · 0.0638 mL = 0.0498 g
    const with_ = assemble(withLeader(SPEC, { length: 1, diameter: 0.285 * mm, density: 1780 }));
    expect((goal.net - netOf(with_, of(0).density)) / g).toBeCloseTo(0.05, 3);
  });
  it("ranks the nearest by rise and attitude", () => {
    const found = swaps(fresh, of(35), goal, PARTS, { swaps: 3 });
    expect(found.goalRise?.speed).not.toBe(0);
    for (const s of found.swaps) expect(s.rise).not.toBeNull();
    const misfits = found.swaps.map((s) => s.misfit);
    expect(misfits).toEqual([...misfits].sort((a, b) => a - b));
  });
  it("exact grams: put on at their place they bring net buoyancy and trim exactly", () => {
    const sea = of(35);
    const exact = exactGrams(fresh, sea.density, goal, 7310);
    const whole = assemble({
      ...SPEC,
      fittings: [
        ...SPEC.fittings,
        {
          name: "grams",
          at: exact.at,
          mass: exact.mass,
          stuff: { name: "tin", density: 7310, kind: "metal", given: true },
          where: "outside",
        },
      ],
    });
    expect(netOf(whole, sea.density)).toBeCloseTo(goal.net, 12);
    expect(restTrim(whole).pitch).toBeCloseTo(exact.trim ?? NaN, 9);
    if (exact.reachesTrim) expect(exact.trim).toBeCloseTo(goal.trim ?? NaN, 6);
    expect(exact.mass).toBeGreaterThan(0);
    expect(() => exactGrams(fresh, sea.density, goal, 900)).toThrow(/does not sink/);
  });
});
