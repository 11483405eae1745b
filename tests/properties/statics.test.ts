import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assemble, MID } from "../../src/model/bait";
import type { BaitSpec } from "../../src/model/bait";
import { Floater, staticsOf } from "../../src/model/statics";
import { deg, g, stuff } from "../lib/si";
import { baitSpecs, enlarged, real, reversed } from "../lib/random-baits";

const WATER = 998.2;
/** Without shrinking: a smaller random bait says no more than the first. */
const seeded = (numRuns: number) => ({ seed: 20, numRuns, endOnFailure: true });
const close = (a: number, b: number, tolerance: number): void => {
  expect(Math.abs(a - b), `${a} against ${b}`).toBeLessThanOrEqual(tolerance);
};
/** Difference of two angles, −π to π. */
const turn = (a: number, b: number): number => Math.atan2(Math.sin(a - b), Math.cos(a - b));

describe("the account of any bait", () => {
  it("adds up, row by row", () => {
    fc.assert(
      fc.property(baitSpecs, (spec) => {
        const bait = assemble(spec);
        const s = staticsOf(bait, WATER);
        close(
          s.account.reduce((t, r) => t + r.mass, 0),
          s.mass,
          1e-16,
        );
        close(
          s.account.reduce((t, r) => t + r.displaced, 0),
          s.displaced,
          1e-19,
        );
        close(
          s.account.reduce((t, r) => t + r.net, 0),
          s.netBuoyancy,
          1e-15,
        );
        // The body pays for every hole.
        const body = bait.items[0];
        const removed = bait.items.reduce((t, i) => t + i.removed, 0);
        close(body?.mass ?? NaN, spec.body.density * (bait.shape.volume - removed), 1e-16);
      }),
      seeded(60),
    );
  });

  it("a weight inside counts in full less the wood it replaces, outside by what it exceeds the water", () => {
    fc.assert(
      fc.property(baitSpecs, real(0.1, 2), (spec, grams) => {
        const net = (s: BaitSpec): number => staticsOf(assemble(s), WATER).netBuoyancy;
        const lead = stuff("lead", 11350);
        const with_ = (where: "inside" | "outside"): number =>
          net({
            ...spec,
            ballast: [
              ...spec.ballast,
              {
                name: "more",
                at: { x: -spec.shape.length / 2, z: 0 },
                mass: grams * g,
                stuff: lead,
                where,
                hole: null,
                filler: 0,
              },
            ],
          });
        const before = net(spec);
        close(with_("inside") - before, -grams * g * (1 - spec.body.density / 11350), 1e-12);
        close(with_("outside") - before, -grams * g * (1 - WATER / 11350), 1e-12);
      }),
      seeded(30),
    );
  });

  it("turned end for end, everything is the same and the trims change sign", () => {
    fc.assert(
      fc.property(baitSpecs, (spec) => {
        const a = staticsOf(assemble(spec), WATER);
        const b = staticsOf(assemble(reversed(spec)), WATER);
        // 1e-8: the body's integrals on the mirrored grid of stations.
        close(b.mass / a.mass, 1, 1e-8);
        close(b.displaced / a.displaced, 1, 1e-8);
        close(b.G.x, -spec.shape.length - a.G.x, 1e-8);
        close(b.BG, a.BG, 1e-8);
        if (a.rest.pitch !== null && b.rest.pitch !== null && a.BG > 1e-3)
          close(turn(a.rest.pitch, -b.rest.pitch), 0, 1e-4);
        expect(b.floating === null).toBe(a.floating === null);
        if (a.floating && b.floating) {
          const trims = (f: typeof a.floating): number[] => [f.pitch, ...f.others.map((o) => o.pitch)];
          const mirrored = trims(b.floating);
          for (const pitch of trims(a.floating))
            expect(
              mirrored.some((m) => Math.abs(turn(m, -pitch)) < 1e-3),
              `${trims(a.floating)} against ${mirrored}`,
            ).toBe(true);
        }
      }),
      seeded(40),
    );
  });

  it("k times as large, it nets k³ times as much and lies the same", () => {
    fc.assert(
      fc.property(baitSpecs, real(0.5, 3), (spec, k) => {
        const a = staticsOf(assemble(spec), WATER);
        const b = staticsOf(assemble(enlarged(spec, k)), WATER);
        close(b.netBuoyancy / k ** 3, a.netBuoyancy, 1e-9);
        close(b.BG / k, a.BG, 1e-9);
        const [small, large] = [assemble(spec).rigid(MID), assemble(enlarged(spec, k)).rigid(MID)];
        close(large.inertia / k ** 5 / small.inertia, 1, 1e-9);
        if (a.floating && b.floating) {
          // From one rest trim the same stable trim is met, where the moment there is not all but nothing.
          close(b.floating.draft / k, a.floating.draft, 1e-7);
          close(turn(b.floating.pitch, a.floating.pitch), 0, 1e-6);
          close(b.floating.GM / k, a.floating.GM, 1e-7);
        }
      }),
      seeded(30),
    );
  });

  it("all densities and the water's c times as great: the same trims, c times the net", () => {
    const heavier = (spec: BaitSpec, c: number): BaitSpec => ({
      ...spec,
      body: { ...spec.body, density: c * spec.body.density },
      chambers: spec.chambers.map((x) => ({
        ...x,
        balls: x.balls && { ...x.balls, stuff: { ...x.balls.stuff, density: c * x.balls.stuff.density } },
      })),
      ballast: spec.ballast.map((x) => ({
        ...x,
        mass: c * x.mass,
        filler: c * x.filler,
        stuff: { ...x.stuff, density: c * x.stuff.density },
      })),
      wires: spec.wires.map((x) => ({ ...x, stuff: { ...x.stuff, density: c * x.stuff.density } })),
      bib: spec.bib && { ...spec.bib, stuff: { ...spec.bib.stuff, density: c * spec.bib.stuff.density } },
      hangers: spec.hangers.map((x) => ({
        ...x,
        ring: x.ring && { ...x.ring, mass: c * x.ring.mass, density: c * x.ring.density },
        hook: x.hook && { ...x.hook, mass: c * x.hook.mass, density: c * x.hook.density },
      })),
      fittings: spec.fittings.map((x) => ({
        ...x,
        mass: c * x.mass,
        stuff: { ...x.stuff, density: c * x.stuff.density },
      })),
      coats: spec.coats.map((x) => ({ ...x, stuff: { ...x.stuff, density: c * x.stuff.density } })),
    });
    fc.assert(
      fc.property(baitSpecs, real(0.6, 1.6), (spec, c) => {
        const a = staticsOf(assemble(spec), WATER);
        const b = staticsOf(assemble(heavier(spec, c)), c * WATER);
        close(b.netBuoyancy / c, a.netBuoyancy, 1e-14);
        close(b.BG, a.BG, 1e-12);
        if (a.floating && b.floating) close(turn(b.floating.pitch, a.floating.pitch), 0, 1e-8);
      }),
      seeded(20),
    );
  });
});

describe("floating equilibria of any bait", () => {
  it("balance force and moment to 1e-9, are stable, and agree with their balls", () => {
    let floats = 0;
    fc.assert(
      fc.property(baitSpecs, (spec) => {
        const bait = assemble(spec);
        const floater = new Floater(bait, WATER);
        const found = floater.equilibrium();
        expect(found !== null).toBe(floater.netBuoyancy > 0);
        if (!found) return;
        floats++;
        const { mass } = bait.rigid(MID);
        for (const a of [found, ...found.others]) {
          // Solved anew from the pitch alone: same level, so the force; and the lever over the length, so the moment.
          const held = floater.at(a.pitch);
          if (!held) throw new Error("it sinks when held");
          close((a.volume * WATER) / mass, 1, 1e-9);
          close(a.lever / spec.shape.length, 0, 1e-9);
          close(held.surface.level, a.surface.level, 1e-9 * spec.shape.length);
          // Stable while the balls lie where they lie: the lever falls through zero as the nose rises. Balls run over at every
          // quarter of a turn, and a trim can stand as near to one as it likes.
          const balls = bait.items.some((i) => i.part === "balls");
          const quarters = a.pitch / (Math.PI / 2);
          const toRun = Math.abs(quarters - Math.round(quarters)) * (Math.PI / 2);
          const h = balls ? Math.min(1e-5, toRun / 2) : 1e-5; // rad
          expect(floater.at(a.pitch + h)?.lever).toBeLessThan(floater.at(a.pitch - h)?.lever ?? NaN);
          if (balls) {
            expect(a.side.end).toBe(Math.sin(a.pitch) >= 0 ? "tail" : "nose");
            expect(a.side.face).toBe(Math.cos(a.pitch) >= 0 ? "floor" : "roof");
          }
        }
      }),
      seeded(60),
    );
    expect(floats).toBeGreaterThan(20);
  });

  it("balance as well within hundredths of a gram of neutral", () => {
    fc.assert(
      fc.property(baitSpecs, fc.constantFrom(0.3, 0.1, 0.03, 0.01), (spec, net) => {
        // The wood that makes it float by so many grams.
        const trial = assemble(spec);
        const { mass, displaced } = trial.rigid(MID);
        const left = (trial.items[0]?.mass ?? NaN) / trial.bodyDensity;
        const density = trial.bodyDensity + (WATER * displaced - mass - net * g) / left;
        if (!(density > 30)) return;
        const bait = assemble({ ...spec, body: { ...spec.body, density } });
        const floater = new Floater(bait, WATER);
        close(floater.netBuoyancy, net * g, 1e-12);
        const found = floater.equilibrium();
        if (!found) throw new Error("it sinks");
        for (const a of [found, ...found.others]) {
          close((a.volume * WATER) / bait.rigid(MID).mass, 1, 1e-9);
          close(a.lever / spec.shape.length, 0, 1e-9);
        }
      }),
      seeded(40),
    );
  });

  it("are all that a brute walk round the circle finds, and the first met from the rest trim leads", () => {
    fc.assert(
      fc.property(baitSpecs, (spec) => {
        const bait = assemble(spec);
        const floater = new Floater(bait, WATER);
        const found = floater.equilibrium();
        if (!found) return;
        const all = [found, ...found.others].map((a) => a.pitch);
        const step = 2 * deg;
        const lever = (p: number): number => floater.at(p)?.lever ?? NaN;
        let before = lever(-Math.PI + 0.01 * deg);
        for (let i = 1; i <= 180; i++) {
          const p = -Math.PI + 0.01 * deg + i * step;
          const here = lever(p);
          if (before > 0 && here <= 0)
            expect(
              all.some((a) => turn(p, a) >= -1e-9 && turn(p, a) <= step + 1e-9),
              `a stable trim just before ${p / deg}° is not among ${all.map((a) => a / deg)}`,
            ).toBe(true);
          before = here;
        }
        // From the rest trim the lever keeps its sign as far as the trim chosen.
        const start = floater.rest.pitch ?? 0;
        const l0 = lever(start);
        if (Math.abs(l0) < 1e-6) return;
        let way = turn(found.pitch, start);
        if (l0 > 0 && way < 0) way += 2 * Math.PI;
        if (l0 < 0 && way > 0) way -= 2 * Math.PI;
        const n = 40;
        for (let i = 1; i < n; i++) expect(Math.sign(lever(start + (way * i) / n))).toBe(Math.sign(l0));
      }),
      seeded(12),
    );
  });
});
