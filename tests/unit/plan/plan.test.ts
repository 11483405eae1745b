import { describe, expect, it } from "vitest";
import { assemble, withOnly } from "../../../src/model/bait";
import type { BaitSpec } from "../../../src/model/bait";
import { ballastPlan } from "../../../src/model/plan";
import { loadsOf } from "../../../src/model/plan/seats";
import type { PlanKind, PlanOptions, PlanTarget, PlanZone } from "../../../src/model/plan";
import { halfBreadthAt } from "../../../src/model/shape";
import { draws, immersed, restTrim } from "../../../src/model/statics";
import { at, deg, g, mm, stuff } from "../../lib/si";
import { LEAD, MINNOW, STEEL, TIN } from "../../lib/baits";

const WATER = 998.2;
// A heavy wood: with a light one, a gram of ballast leaves the bait afloat on its side.
const BODY: BaitSpec = {
  ...MINNOW,
  body: stuff("wood", 850, "wood"),
  ballast: [],
  chambers: [],
  wires: [],
  bib: null,
  bench: [],
};
const plain = assemble(BODY);
const { mass, displaced } = plain.rigid({ end: "mid", face: "floor" });
const LIFT = WATER * displaced - mass;
const sphere = (d: number, metal = TIN, count = 5): PlanKind => ({
  name: `${metal.name} ${d}`,
  stuff: metal,
  mass: (Math.PI / 6) * (d * mm) ** 3 * metal.density,
  count,
  lead: metal === LEAD,
  across: d * mm,
  along: d * mm,
  inside: true,
  outside: false,
});
const zone: PlanZone = {
  from: 15 * mm,
  to: 70 * mm,
  lowest: null,
  highest: null,
  wall: 1.2 * mm,
  clearance: 1 * mm,
};
const options: PlanOptions = { drills: [3 * mm, 4 * mm, 5 * mm], filler: 1100, samples: 200 };
const target = (more: Partial<PlanTarget> = {}): PlanTarget => ({
  net: LIFT - 1 * g,
  netTolerance: 0.1 * g,
  trim: null,
  trimTolerance: 5 * deg,
  leastBG: 0,
  ...more,
});
const plan = (
  kinds: readonly PlanKind[],
  t: Partial<PlanTarget> = {},
  z: Partial<PlanZone> = {},
  spec = BODY,
  o: Partial<PlanOptions> = {},
) => ballastPlan(spec, WATER, target(t), kinds, { ...zone, ...z }, { ...options, ...o });
const what = (r: ReturnType<typeof plan>): string[] => r.limits.map((l) => l.what);

describe("what binds", () => {
  it("too little lift", () => {
    const r = plan([sphere(4)], { net: LIFT + 0.5 * g });
    expect(what(r)).toEqual(["lift"]);
    expect(r.limits[0]?.value).toBeCloseTo(0.5 * g, 9);
  });
  it("not enough pieces: says how much is missing", () => {
    const one = sphere(3, TIN, 1);
    const r = plan([one], { netTolerance: 0.02 * g });
    expect(what(r)[0]).toBe("pieces");
    // m + ρ_filler (hole − slug) − ρ_wood hole, with a plug as long as the wall or longer by whole tenths of a millimetre.
    const pulls = Array.from({ length: 60 }, (_, k) => {
      const hole = (Math.PI / 4) * (3 * mm) ** 2 * (zone.wall + k * 0.1 * mm + 3 * mm);
      return one.mass + 1100 * (hole - one.mass / TIN.density) - plain.bodyDensity * hole;
    });
    // The hole's volume is written in 0.1 mm³.
    expect(Math.min(...pulls.map((p) => Math.abs(1 * g - p - (r.limits[0]?.value ?? NaN))))).toBeLessThan(
      1e-7,
    );
  });
  it("no choice adds up", () => {
    const r = plan([sphere(5, TIN, 5)], { netTolerance: 0.001 * g });
    expect(what(r)).toContain("sum");
    expect(r.nearest?.fits).toBe(false);
    expect(Math.abs((r.nearest?.net ?? 0) - (LIFT - 1 * g))).toBeGreaterThan(0.001 * g);
  });
  it("no drill, and no wall", () => {
    expect(what(plan([sphere(5.5)]))).toEqual(["drill"]);
    expect(what(plan([sphere(4)], {}, { wall: 6 * mm }))).toEqual(["wall"]);
    // A kind that is left out is told of beside the limit that gives way.
    expect(what(plan([sphere(5.5), sphere(3, TIN, 1)]))).toEqual(["pieces", "drill"]);
  });
  it("the trim: says the station that would do", () => {
    const r = plan(
      [sphere(5, STEEL)],
      { trim: 50 * deg, trimTolerance: 30 * deg, netTolerance: 0.2 * g },
      { from: 20 * mm, to: 30 * mm },
    );
    expect(what(r)[0]).toBe("trim");
    const wanted = r.limits[0]?.value ?? NaN;
    // More nose-up than the zone gives: further aft.
    expect(wanted).toBeGreaterThan(30 * mm);
    // And there it would: the nearest plan's loads, all at that station, at their height.
    const near = r.nearest;
    if (!near) throw new Error("no nearest plan");
    const moved = assemble({
      ...near.spec,
      ballast: near.spec.ballast.map((b) => ({ ...b, at: { x: -wanted, z: b.at.z } })),
    });
    expect(restTrim(moved).pitch).toBeCloseTo(50 * deg, 6);
  });
  it("the margin of BG that was asked for", () => {
    const r = plan([sphere(4)], { leastBG: 40 * mm, netTolerance: 0.3 * g });
    expect(what(r)).toEqual(["BG"]);
    expect(r.leastBG).toEqual({ value: 40 * mm, from: "asked" });
    expect(r.limits[0]?.value).toBe(r.nearest?.BG);
    expect(r.limits[0]?.value).toBeLessThan(40 * mm);
  });
  it("a margin that nobody asked for does not stand in the way: it is told of", () => {
    const r = plan([sphere(4)], { leastBG: null, netTolerance: 0.3 * g });
    expect(r.limits).toEqual([]);
    expect(r.plans.length).toBeGreaterThan(0);
    expect(r.leastBG.from).toBe("own");
    expect(r.notes.length).toBeGreaterThan(0);
  });
  it("only one limit gives way where the others can be kept", () => {
    const r = plan(
      [sphere(5, STEEL)],
      { trim: 50 * deg, trimTolerance: 10 * deg, netTolerance: 0.2 * g, leastBG: 1 * mm },
      { from: 20 * mm, to: 30 * mm },
    );
    expect(what(r)).toEqual(["trim"]);
    expect(Math.abs((r.nearest?.net ?? NaN) - (LIFT - 1 * g))).toBeLessThanOrEqual(0.2 * g);
  });
  it("where nothing fits, no note tells of plans that there are none of, nor calls a miss a doubt", () => {
    const tight = { netTolerance: 0.001 * g, leastBG: null };
    for (const r of [plan([sphere(5.5)], tight), plan([sphere(5)], tight)]) {
      expect(r.plans).toEqual([]);
      expect(r.nearest).not.toBeNull();
      expect(r.limits).not.toEqual([]);
      for (const note of r.notes) expect(note).not.toMatch(/these plans|chance is small/);
    }
  });
  it("options that cannot be", () => {
    expect(() => plan([sphere(4)], { netTolerance: 0 })).toThrow(/tolerance/);
    expect(() => plan([sphere(4)], {}, { to: 0 })).toThrow(/zone/);
    expect(() => plan([sphere(4)], {}, {}, BODY, { places: 4 })).toThrow(/places/);
    expect(() => plan([sphere(4)], {}, {}, BODY, { samples: 10 })).toThrow(/draws/);
  });
});

describe("order and room", () => {
  it("weights stand as low as wall, drill and breadth allow", () => {
    for (const p of plan([sphere(4)], { netTolerance: 0.3 * g }).plans)
      for (const l of p.loads) {
        if (!l.hole) throw new Error("no hole");
        const { hole } = l;
        const half = hole.diameter / 2;
        const room = (low: number): boolean =>
          [-l.at.x - half, -l.at.x, -l.at.x + half].every((s) => {
            const section = plain.shape.section(s);
            return (
              low >= section.bottom + zone.wall - 1e-9 &&
              halfBreadthAt(section, low) >= half + zone.wall - 1e-9
            );
          });
        const low = hole.mouth.z + hole.plug;
        expect(room(low)).toBe(true);
        // A tenth of a millimetre lower the plug is shorter than the wall, or the wood beside the hole thinner.
        expect(hole.plug - 0.1 * mm < zone.wall - 1e-9 || !room(low - 0.1 * mm)).toBe(true);
      }
  });
  it("weighed pieces first, where they do as well", () => {
    const bismuth = stuff("bismuth", 9747);
    const kinds = [sphere(4, bismuth), { ...sphere(4, bismuth), name: "weighed", weighed: true }];
    const [first] = plan(kinds, { netTolerance: 0.3 * g }).plans;
    expect(first?.weighed).toBe(true);
  });
  it("a plan tells pieces and filler apart; together they are the row of the account", () => {
    const [p] = plan([sphere(4)], { netTolerance: 0.3 * g }).plans;
    if (!p) throw new Error("no plan");
    const rows = assemble(p.spec).items.filter((i) => i.group === "ballast");
    expect(rows.length).toBe(p.loads.length);
    p.loads.forEach((l, i) => {
      expect(rows[i]?.mass).toBeCloseTo(l.mass + (l.hole?.filler ?? 0), 12);
      expect(rows[i]?.filler).toBeCloseTo(l.hole?.filler ?? NaN, 12);
    });
  });
  it("lead-free first, however well lead would do", () => {
    const { plans } = plan([sphere(4, LEAD), sphere(4, stuff("bismuth", 9747))]);
    const lead = plans.map((p) => p.leadFree);
    expect(lead[0]).toBe(true);
    expect(lead).toEqual([...lead].sort((a, b) => Number(b) - Number(a)));
  });
  it("no more pieces than the box holds, none twice", () => {
    const kinds = [sphere(3, TIN, 2), sphere(4, STEEL, 2)];
    for (const p of plan(kinds, { netTolerance: 0.5 * g }).plans)
      kinds.forEach((k, i) => {
        expect(p.loads.reduce((n, l) => n + (l.kind === i ? l.count : 0), 0)).toBeLessThanOrEqual(k.count);
      });
  });
  it("holes keep clear of wire, chamber and one another", () => {
    const wire = { name: "harness", path: [at(-3, 0), at(95, 0)], diameter: 1 * mm, stuff: STEEL };
    const spec: BaitSpec = {
      ...BODY,
      wires: [wire],
      chambers: [
        { name: "r", from: 40 * mm, to: 55 * mm, height: -3 * mm, tall: 5 * mm, wide: 5 * mm, balls: null },
      ],
    };
    const dry = assemble(spec).rigid({ end: "mid", face: "floor" });
    const { plans } = plan(
      [sphere(4), sphere(3)],
      { net: WATER * dry.displaced - dry.mass - 0.4 * g, netTolerance: 0.1 * g },
      {},
      spec,
    );
    expect(plans.length).toBeGreaterThan(0);
    for (const p of plans) {
      for (const l of p.loads) {
        if (!l.hole) throw new Error("no hole");
        const s = -l.at.x;
        const half = l.hole.diameter / 2;
        // Top of the hole under the wire, by its radius and the clearance.
        expect(l.hole.mouth.z + l.hole.depth).toBeLessThanOrEqual(-0.5 * mm - 1 * mm + 1e-8);
        const beside = s + half <= 39 * mm + 1e-8 || s - half >= 56 * mm - 1e-8;
        const below = l.hole.mouth.z + l.hole.depth <= -6.5 * mm + 1e-8;
        expect(beside || below).toBe(true);
      }
      const [a, b] = p.loads;
      if (a?.hole && b?.hole)
        expect(Math.abs(a.at.x - b.at.x)).toBeGreaterThanOrEqual(
          (a.hole.diameter + b.hole.diameter) / 2 + 1 * mm - 1e-8,
        );
    }
  });
  it("a thick wire keeps holes further from its middle than a thin one, by its radius", () => {
    const kinds = [sphere(3)];
    // A weight has the lowest seat that the zone allows. So the zone's least height rises by twentieths of a millimetre, and
    // the highest inner end of a hole is the last one before the wire.
    const highest = (diameter: number): number => {
      const wires = [{ name: "spine", path: [at(-3, 1), at(95, 1)], diameter: diameter * mm, stuff: STEEL }];
      const bait = assemble({ ...BODY, wires });
      const settings = { ...options, places: 2, pieces: 1, stationStep: 5 * mm, heightStep: 0.1 * mm };
      const from = -1 - diameter / 2;
      const tops = Array.from({ length: 60 }, (_, k) => (from - 1.5 + 0.05 * k) * mm).flatMap((lowest) =>
        loadsOf(
          bait,
          WATER,
          kinds,
          { ...zone, lowest },
          { plans: 1, samples: 100, ...settings },
        ).loads.flatMap((l) => l.seats.map((s) => s.z + (kinds[l.kind]?.along ?? NaN) / 2)),
      );
      return Math.max(...tops);
    };
    // The wire's middle is at 1 mm and the clearance 1 mm: a hole may reach to the radius below 0, less one step of its depth.
    for (const diameter of [0.2, 2, 4]) {
      const room = (-diameter / 2) * mm - highest(diameter);
      expect(room).toBeGreaterThan(-1e-5);
      expect(room).toBeLessThan(0.1 * mm + 1e-5);
    }
  });
  it("with loose balls the trim is the one that the whole bait takes", () => {
    const spec: BaitSpec = {
      ...BODY,
      chambers: [
        {
          name: "rattle",
          from: 38 * mm,
          to: 56 * mm,
          height: 1 * mm,
          tall: 6 * mm,
          wide: 6 * mm,
          balls: { count: 2, diameter: 4 * mm, stuff: STEEL },
        },
      ],
    };
    const dry = assemble(spec).rigid({ end: "mid", face: "floor" });
    const net = WATER * dry.displaced - dry.mass - 1 * g;
    const { plans } = plan(
      [sphere(4), sphere(3, STEEL)],
      { net, netTolerance: 0.3 * g, trim: -15 * deg, trimTolerance: 12 * deg },
      { from: 12 * mm },
      spec,
    );
    for (const p of plans) {
      const rest = restTrim(assemble(p.spec));
      expect(rest.pitch).toBeCloseTo(p.trim ?? NaN, 9);
      expect(Math.abs((rest.pitch ?? 9) + 15 * deg)).toBeLessThanOrEqual(12 * deg);
    }
  });
  it("outside weights sit on the belly and count by what they exceed the water", () => {
    const strip = { ...sphere(5, TIN, 4), inside: false, outside: true };
    const p = plan([strip], { netTolerance: 0.3 * g }).plans[0];
    if (!p) throw new Error("no plan");
    const outside = p.loads.reduce((m, l) => m + l.mass, 0);
    expect(LIFT - p.net).toBeCloseTo(outside * (1 - WATER / TIN.density), 12);
    expect(p.holes).toBe(0);
  });
});

describe("thirty kinds", () => {
  it("answers with five plans, each on target (its speed is in tests/bench/plan.ts)", () => {
    const metals = [TIN, LEAD, STEEL, stuff("bismuth", 9747), stuff("brass", 8490), stuff("tungsten", 17000)];
    const kinds = Array.from({ length: 30 }, (_, i) => sphere(2 + 0.1 * i, metals[i % 6] ?? TIN, 8));
    const drills = [2, 2.5, 3, 3.5, 4, 4.5, 5].map((d) => d * mm);
    const trim = restTrim(plain).pitch ?? NaN;
    const { plans } = plan(
      kinds,
      { net: LIFT - 2 * g, netTolerance: 0.02 * g, trim, trimTolerance: 3 * deg },
      {},
      BODY,
      { drills },
    );
    expect(plans.length).toBe(5);
    for (const one of plans) {
      expect(Math.abs(one.net - (LIFT - 2 * g))).toBeLessThanOrEqual(0.02 * g);
      expect(Math.abs((one.trim ?? NaN) - trim)).toBeLessThanOrEqual(3 * deg);
    }
  });
});

describe("parts of a bait, its draws, and what is under water", () => {
  it("a blank is the body by itself; all kept is the whole bait", () => {
    const whole = assemble(MINNOW);
    const blank = withOnly(whole, () => false);
    expect(blank.items.map((i) => i.item)).toEqual(["body"]);
    expect(blank.items[0]?.mass).toBeCloseTo(whole.bodyDensity * whole.shape.volume, 12);
    const all = withOnly(whole, () => true);
    expect(all.items.map((i) => i.mass)).toEqual(whole.items.map((i) => i.mass));
    const bald = withOnly(whole, (i) => i.group !== "hangers");
    const hooks = whole.items.filter((i) => i.group === "hangers").reduce((m, i) => m + i.mass, 0);
    const total = (b: typeof whole) => b.rigid({ end: "mid", face: "floor" }).mass;
    expect(total(whole) - total(bald)).toBeCloseTo(hooks, 12);
  });
  it("draws: the bait of the file first, the same seed the same draws", () => {
    const a = draws(plain, WATER, 100, 3);
    expect(a.own.net).toBeCloseTo(LIFT, 12);
    expect(a.all).toEqual(draws(plain, WATER, 100, 3).all);
    expect(a.all).not.toEqual(draws(plain, WATER, 100, 4).all);
  });
  it("everything is immersed deep under, nothing high above", () => {
    const side = { end: "mid", face: "floor" } as const;
    const deep = immersed(plain, { sin: 0, cos: 1, level: 1 }, side);
    expect(deep.volume).toBeCloseTo(displaced, 9);
    expect(immersed({ ...plain, spec: BODY }, { sin: 0, cos: 1, level: 1 }, side).B?.x).toBeCloseTo(
      plain.rigid(side).B.x,
      6,
    );
  });
});
