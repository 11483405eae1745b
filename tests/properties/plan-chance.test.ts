import { describe, expect, it } from "vitest";
import { assemble } from "../../src/model/bait";
import type { BaitSpec } from "../../src/model/bait";
import { material } from "../../src/model/materials";
import { ballastPlan } from "../../src/model/plan";
import type { Plan, PlanKind, PlanTarget, PlanZone } from "../../src/model/plan";
import { at, bare, deg, g, mm, stuff } from "../lib/si";

/**
 * Forty random blanks and a full box: nearly all get a plan, and the chance that each plan states is what ten thousand draws
 * of this file's own say. The draws here are written from docs/model.md §3 (Uncertainty) alone: their own random numbers, their own
 * account, nothing of `statics/uncertain.ts`. `PLAN_BLANKS` makes another number of blanks.
 */
const BLANKS = Number(process.env["PLAN_BLANKS"] ?? 40);
const DRAWS = 10_000;
const WATER = 998.2;
const FILLER = 1100;
const SURE = 15 * deg;

/** Uniform numbers: mulberry32, public domain; normals by Box and Muller (1958). */
function dice(seed: number): { uniform: (a: number, b: number) => number; normal: () => number } {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform: (a, b) => a + (b - a) * next(),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}

/** A blank with its wire, hooks and coat, all invented; only the ballast is missing. */
function blank(seed: number): BaitSpec {
  const { uniform } = dice(seed);
  const L = uniform(60, 140);
  const h = uniform(0.09, 0.13) * L;
  const b = uniform(0.065, 0.1) * L;
  const edge = (peak: number, end: number) => [
    { s: 0, v: 0 },
    { s: 0.15 * L * mm, v: 0.68 * peak * mm },
    { s: uniform(0.35, 0.45) * L * mm, v: peak * mm },
    { s: L * mm, v: end * peak * mm },
  ];
  const hook = (mass: number) => ({ mass: mass * g, density: 7820, size: null, weighed: true });
  const ring = { mass: 0.08 * g, density: 8000, weighed: true };
  const size = (L / 90) ** 2;
  const even = [
    { s: 0, v: uniform(1.8, 2.4) },
    { s: L * mm, v: 2 },
  ];
  const shape = {
    length: L * mm,
    top: edge(h, 0.2),
    bottom: edge(-h, 0.2),
    halfBreadth: edge(b, 0.2),
    exponentAbove: even,
    exponentBelow: even,
  };
  return {
    ...bare(shape, {
      name: `blank ${seed}`,
      body: stuff("wood", uniform(280, 560), "wood"),
      wires: [
        {
          name: "harness",
          path: [at(-2, 0.25 * h), at(L + 2, 0.1 * h)],
          diameter: 0.9 * mm,
          stuff: stuff("stainless steel", 8000),
        },
      ],
      hangers: [
        { name: "belly", at: at(0.4 * L, -0.95 * h), ring, hook: hook(0.45 * size) },
        { name: "tail", at: at(L + 2, 0.1 * h), ring, hook: hook(0.4 * size) },
      ],
      coats: [
        { name: "coat", thickness: null, mass: 0.6 * size * g, stuff: stuff("epoxy", 1150, "plastic") },
      ],
    }),
    uncertainty: {
      // Every other blank has been weighed about as well as a good kitchen scale does.
      wood: seed % 2 === 0 ? 0.1 : 0.005,
      metal: 0.01,
      plastic: 0.02,
      coatThickness: 0.2,
      hook: 0.25,
      drawnLength: 0.2 * mm,
    },
  };
}

/** Balls and rods of many sizes, the box of somebody who has been at it for years. */
const BOX: readonly PlanKind[] = [
  ...["tungsten", "tin", "carbon steel", "brass"].flatMap((name) => {
    const metal = material(name);
    if (metal === null) throw new Error(`no material ${name}`);
    return [2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8].map((d): PlanKind => ({
      name: `${name} ball ${d} mm`,
      stuff: { name, density: metal.density, kind: "metal", given: false },
      mass: (Math.PI / 6) * (d * mm) ** 3 * metal.density,
      weighed: d < 5,
      count: 8,
      lead: false,
      across: d * mm,
      along: d * mm,
      inside: true,
      outside: false,
    }));
  }),
  ...["tungsten", "brass"].flatMap((name) => {
    const metal = material(name);
    if (metal === null) throw new Error(`no material ${name}`);
    return [3, 4, 5, 6, 8, 10, 12].flatMap((d) =>
      [3, 5, 8].map((long): PlanKind => ({
        name: `${name} rod ${d} mm, ${long} mm long`,
        stuff: { name, density: metal.density, kind: "metal", given: false },
        mass: (Math.PI / 4) * (d * mm) ** 2 * long * mm * metal.density,
        count: 8,
        lead: false,
        across: d * mm,
        along: long * mm,
        inside: true,
        outside: false,
      })),
    );
  }),
];
const DRILLS = Array.from({ length: 21 }, (_, i) => (2 + i / 2) * mm);

interface OwnDraw {
  readonly net: number;
  readonly trim: number;
}

/** The account of docs/model.md §3, once for each draw. */
function ownDraws(spec: BaitSpec, seed: number): OwnDraw[] {
  const { normal } = dice(seed);
  const bait = assemble(spec);
  const u = spec.uncertainty;
  const digit = (0.01 * g) / Math.sqrt(12);
  const body = bait.drawn;
  const wires = bait.items.filter((i) => i.group === "wires");
  const skin = body.skinCentroid;
  return Array.from({ length: DRAWS }, () => {
    const l = 1 + (u.drawnLength / body.length) * normal();
    const tall = 1 + (u.drawnLength / body.maxHeight) * normal();
    const wide = 1 + (u.drawnLength / (2 * body.maxHalfBreadth)) * normal();
    const V = body.volume * l * tall * wide;
    const c = { x: body.centroid.x * l, z: body.centroid.z * tall };
    let [m, mx, mz, v, vx, vz, r, rx, rz] = [0, 0, 0, V, V * c.x, V * c.z, 0, 0, 0];
    const carry = (mass: number, displaced: number, removed: number, x: number, z: number): void => {
      m += mass;
      mx += mass * x;
      mz += mass * z;
      v += displaced;
      vx += displaced * x;
      vz += displaced * z;
      r += removed;
      rx += removed * x;
      rz += removed * z;
    };
    for (const w of wires) {
      const mass = w.mass * (1 + u.metal * normal());
      carry(mass, 0, 0, w.massCentre.x, w.massCentre.z);
      carry(0, w.displaced, 0, w.displacedCentre.x, w.displacedCentre.z);
      carry(0, 0, w.removed, w.removedCentre.x, w.removedCentre.z);
    }
    for (const b of spec.ballast) {
      // What nobody has weighed errs as its metal does.
      const mass = b.mass + (b.weighed === false ? u.metal * b.mass : digit) * normal();
      const own = mass / (b.stuff.density * (1 + u.metal * normal()));
      const hole = b.hole ?? own;
      // A cylinder as deep as wide: V = π d³/4; the width counts twice, the depth once.
      const d = Math.cbrt((4 * hole) / Math.PI);
      const room = b.hole === null ? own : hole * (1 + Math.sqrt(5) * (u.drawnLength / d) * normal());
      const filler = b.filler * (1 + u.plastic * normal());
      const x = b.at.x + u.drawnLength * normal();
      const z = b.at.z + u.drawnLength * normal();
      carry(mass + Math.max(0, room - own) * filler, Math.max(0, own - room), room, x, z);
    }
    for (const h of spec.hangers) {
      const x = h.at.x + u.drawnLength * normal();
      const z = h.at.z + u.drawnLength * normal();
      for (const part of [h.ring, h.hook]) {
        if (!part) continue;
        const mass = part.mass + digit * normal();
        carry(mass, mass / part.density, 0, x, z);
      }
    }
    for (const coat of spec.coats) {
      const mass = (coat.mass ?? 0) + digit * normal();
      const own = mass / (coat.stuff.density * (1 + u.plastic * normal()));
      carry(mass, own, 0, skin.x * l, skin.z * tall);
    }
    const wood = spec.body.density * (1 + u.wood * normal()) * (V - r);
    m += wood;
    mx += (wood * (V * c.x - rx)) / (V - r);
    mz += (wood * (V * c.z - rz)) / (V - r);
    return { net: WATER * v - m, trim: Math.atan2(vx / v - mx / m, vz / v - mz / m) };
  });
}

const share = (draws: readonly OwnDraw[], is: (d: OwnDraw) => boolean): number =>
  draws.filter(is).length / draws.length;

/** Half the width of the central 95 % of the trims. */
function halfWidth(draws: readonly OwnDraw[], middle: number): number {
  const turned = draws
    .map((d) => Math.atan2(Math.sin(d.trim - middle), Math.cos(d.trim - middle)))
    .sort((a, b) => a - b);
  const [low, high] = [turned[Math.round(0.025 * turned.length)], turned[Math.round(0.975 * turned.length)]];
  return ((high ?? NaN) - (low ?? NaN)) / 2;
}

describe("plans for random blanks from a full box", () => {
  it(`${BLANKS} blanks: nearly all get plans, with the chance that independent draws find`, () => {
    let planned = 0;
    const without: string[] = [];
    for (let seed = 1; seed <= BLANKS; seed++) {
      const spec = blank(seed);
      const { uniform } = dice(1000 + seed);
      // The target of every fourth says nothing of the rest: level guides the search, and the chance counts any, belly down.
      const free = seed % 4 === 0;
      const target: PlanTarget = {
        net: uniform(0.02, 0.5) * g,
        netTolerance: 0.08 * g,
        ...(free
          ? { trim: 0, trimTolerance: 15 * deg, trimGuides: true }
          : { trim: uniform(-10, 0) * deg, trimTolerance: 6 * deg }),
        leastBG: null,
      };
      const { length } = spec.shape;
      const zone: PlanZone = {
        from: 0.1 * length,
        to: 0.9 * length,
        lowest: null,
        highest: null,
        wall: 1.5 * mm,
        clearance: 1 * mm,
      };
      const ask = (t: PlanTarget) =>
        ballastPlan(spec, WATER, t, BOX, zone, { drills: DRILLS, filler: FILLER, plans: 3, samples: 4000 });
      const result = ask(target);
      if (result.plans.length === 0) {
        without.push(`${spec.name}: ${result.limits[0]?.text ?? "?"}`);
        continue;
      }
      planned++;
      const widths = result.plans.map((plan: Plan, i) => {
        const own = ownDraws(plan.spec, 7777 + 10 * seed + i);
        const met = share(
          own,
          (d) =>
            Math.abs(d.net - target.net) <= target.netTolerance &&
            Math.abs(
              Math.atan2(Math.sin(d.trim - (target.trim ?? 0)), Math.cos(d.trim - (target.trim ?? 0))),
            ) <= (free ? 90 * deg : target.trimTolerance),
        );
        const p = (met + plan.sure.chance) / 2;
        // Both are samples: four standard errors of their difference, one in 16 000 by chance.
        const error = 4 * Math.sqrt(p * (1 - p) * (1 / DRAWS + 1 / plan.sure.samples)) + 1e-3;
        expect(Math.abs(met - plan.sure.chance), `${spec.name}: ${met} for ${plan.sure.chance}`).toBeLessThan(
          error,
        );
        return halfWidth(own, plan.trim ?? 0);
      });
      // A band wider than ±15° is given only where the plans keep to no narrower one, nor a search for more BG finds one.
      const slack = 0.6 * deg; // sampling error of a 95 % band's half-width at 15°
      if (widths.some((w) => w > SURE + slack)) {
        expect(widths.every((w) => w > SURE - slack)).toBe(true);
        const surer = ask({ ...target, leastBG: result.leastBG.value });
        for (const plan of surer.plans)
          expect(halfWidth(ownDraws(plan.spec, seed), plan.trim ?? 0)).toBeGreaterThan(SURE - slack);
      }
    }
    expect(planned, `${planned} of ${BLANKS} have a plan. ${without.join("\n")}`).toBeGreaterThanOrEqual(
      Math.ceil(0.95 * BLANKS - 1e-9) - (BLANKS < 20 ? 1 : 0),
    );
  }, 600_000);
});
