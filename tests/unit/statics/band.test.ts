import { describe, expect, it } from "vitest";
import { assemble } from "../../../src/model/bait";
import type { BaitSpec, BenchReading } from "../../../src/model/bait";
import { density } from "../../../src/model/water";
import { band, staticsOf } from "../../../src/model/statics";
import { noDraw, Uncertain } from "../../../src/model/statics/uncertain";
import { at, g, mm, stuff } from "../../lib/si";
import { ELLIPSOID, ELLIPSOID_VOLUME, make, MINNOW } from "../../lib/baits";

const WATER = 998.2;
/** Nothing errs but what a test says. */
const exact = { wood: 0, metal: 0, plastic: 0, coatThickness: 0, hook: 0, drawnLength: 0 };
/**
 * Standard error of a 97.5 % quantile from n normal draws, in standard deviations: √(0.975·0.025/n)/φ(1.96) = 0.027 for
 * 10,000. Four of them.
 */
const QUANTILE = 4 * 0.027;
/** The same for a standard deviation, 1/√(2n), relative. */
const DEVIATION = 4 / Math.sqrt(20_000);

const reading = (
  kind: BenchReading["kind"],
  grams: number,
  on: readonly string[],
  resolution = 0.01,
): BenchReading => ({
  kind,
  reading: grams * g,
  resolution: resolution * g,
  tapTemperature: kind === "displacement" ? 18 : null,
  with: on,
  air: false,
});

describe("the account as a function of its inputs", () => {
  it("is the assembled bait where nothing errs", () => {
    for (const bench of [
      [],
      [reading("displacement", 19, ["body", "coats"]), reading("weighing", 7.9, ["body", "wires"])],
    ]) {
      const bait = assemble({ ...MINNOW, bench });
      const s = staticsOf(bait, WATER);
      const model = new Uncertain(bait, WATER);
      const draw = model.draw(new Float64Array(model.size), noDraw());
      expect(draw.netBuoyancy).toBeCloseTo(s.netBuoyancy, 15);
      expect(draw.pitch).toBeCloseTo(s.rest.pitch ?? NaN, 12);
      expect(draw.BG).toBeCloseTo(s.BG, 15);
    }
  });

  it("scales as a bait does that is really drawn larger", () => {
    const bait = make(ELLIPSOID, {
      coats: [{ name: "c", thickness: 0.2 * mm, mass: null, stuff: stuff("e", 1100, "other") }],
    });
    const model = new Uncertain(bait, WATER);
    const x = new Float64Array(model.size);
    // Breadth one standard deviation up: 0.2 mm of 20 mm.
    x[model.labels.indexOf("body: breadth")] = 1;
    const draw = model.draw(x, noDraw());
    const edges = ELLIPSOID.edges;
    const broader = make(
      { ...edges, halfBreadth: (phi) => 1.01 * edges.halfBreadth(phi) },
      { coats: bait.spec.coats },
    );
    // The skin follows a power of the breadth: exact to second order; 0.02 mg on a coat of 0.7 g.
    expect(Math.abs(draw.netBuoyancy - staticsOf(broader, WATER).netBuoyancy)).toBeLessThan(2e-8);
  });
});

describe("bands", () => {
  it("one normal input gives its own band: 10 % of the wood's mass, ±1.96 standard deviations", () => {
    const bait = make(ELLIPSOID, { uncertainty: { ...exact, wood: 0.1 } });
    const sigma = 0.1 * 400 * ELLIPSOID_VOLUME;
    const net = staticsOf(bait, WATER).netBuoyancy;
    const b = band(bait, WATER);
    expect(Math.abs(b.netDeviation / sigma - 1)).toBeLessThan(DEVIATION);
    expect(Math.abs((b.netBuoyancy[0] - net) / sigma + 1.96)).toBeLessThan(QUANTILE);
    expect(Math.abs((b.netBuoyancy[1] - net) / sigma - 1.96)).toBeLessThan(QUANTILE);
    expect(b.contributions[0]).toMatchObject({ input: "body: density" });
    expect(b.contributions[0]?.share).toBeCloseTo(1, 6);
    expect(b.chanceOfSinking).toBe(0);
  });

  it("the chance of sinking is the normal's tail", () => {
    // Nets one standard deviation above 0: Φ(−1) = 0.158655.
    const bait = make(ELLIPSOID, {
      body: stuff("wood", WATER / 1.1, "wood"),
      uncertainty: { ...exact, wood: 0.1 },
    });
    const chance = band(bait, WATER).chanceOfSinking;
    // Four standard errors of a share: √(p(1−p)/n) = 0.0037.
    expect(Math.abs(chance - 0.158655)).toBeLessThan(4 * 0.0037);
  });

  it("a material that is published to vary more than its class errs by its own spread, unless the file says", () => {
    const deviation = (spread: number, more: Partial<BaitSpec["uncertainty"]> = {}): number =>
      band(
        make(ELLIPSOID, {
          body: { ...stuff("light wood", 160, "wood"), spread },
          uncertainty: { ...exact, wood: 0.1, ...more },
        }),
        WATER,
      ).netDeviation /
      (160 * ELLIPSOID_VOLUME);
    expect(Math.abs(deviation(0.17) / 0.17 - 1)).toBeLessThan(DEVIATION);
    // A table that knows many printed means of one wood does not know the single board better than the class.
    expect(Math.abs(deviation(0.03) / 0.1 - 1)).toBeLessThan(DEVIATION);
    expect(Math.abs(deviation(0.17, { given: ["wood"] }) / 0.1 - 1)).toBeLessThan(DEVIATION);
  });

  it("drawn lengths: 0.2 mm of length, height and breadth each by itself", () => {
    const bait = make(ELLIPSOID, { uncertainty: { ...exact, drawnLength: 0.2 * mm } });
    const net = staticsOf(bait, WATER).netBuoyancy;
    const relative = Math.hypot(0.2 / 100, 0.2 / 24, 0.2 / 20);
    expect(Math.abs(band(bait, WATER).netDeviation / (net * relative) - 1)).toBeLessThan(DEVIATION);
  });

  it("a body as thin as its drawing error, coated, has a band of numbers", () => {
    // 0.4 mm thick with 0.2 mm of error: two standard deviations down a normal error would make it less than nothing.
    const edges = {
      ...ELLIPSOID.edges,
      halfBreadth: (phi: number) => 0.02 * ELLIPSOID.edges.halfBreadth(phi),
    };
    const bait = make(edges, {
      coats: [{ name: "c", thickness: 0.05 * mm, mass: null, stuff: stuff("e", 1100, "other") }],
      uncertainty: { ...exact, drawnLength: 0.2 * mm },
    });
    expect(2 * bait.drawn.maxHalfBreadth).toBeCloseTo(0.4 * mm, 6);
    const b = band(bait, WATER);
    expect([...b.netBuoyancy, b.netDeviation].every(Number.isFinite)).toBe(true);
    for (const c of b.contributions) expect(Number.isFinite(c.netBuoyancy)).toBe(true);
    // The breadth alone has a standard deviation of half of itself: so has what the bare body adds to the net buoyancy, and
    // the skin of so thin a body hardly knows of its breadth.
    const bare = bait.drawn.volume * (WATER - 400);
    expect(Math.abs(b.netDeviation / (bare * 0.5) - 1)).toBeLessThan(0.05);
    // Less wood than none is in no draw: all of the body gone leaves its coat and nothing else.
    const coat = bait.items.find((i) => i.group === "coats");
    expect(b.netBuoyancy[0]).toBeGreaterThan(WATER * (coat?.displaced ?? 0) - (coat?.mass ?? 0));
  });

  it("an error larger than the body itself still gives a band of numbers", () => {
    const bait = make(ELLIPSOID, {
      ballast: [
        {
          name: "b",
          at: at(50, 0),
          mass: 1 * g,
          stuff: stuff("lead", 11350),
          where: "inside",
          hole: 0.2e-6,
          filler: 1000,
        },
      ],
      uncertainty: { ...exact, drawnLength: 20 * mm },
    });
    const b = band(bait, WATER);
    expect([...b.netBuoyancy, b.netDeviation, b.chanceOfSinking].every(Number.isFinite)).toBe(true);
    for (const c of b.contributions) expect(Number.isFinite(c.netBuoyancy)).toBe(true);
  });

  it("an unweighed hook errs by 25 %, a weighed one by its scale, one weighed on the bench by the bench", () => {
    const hanger = (weighed: boolean) => ({
      name: "h",
      at: at(50, -12),
      ring: null,
      hook: { mass: 1 * g, density: 7820, size: null, weighed },
    });
    const deviation = (weighed: boolean, bench: readonly BenchReading[]): number =>
      band(
        make(ELLIPSOID, { hangers: [hanger(weighed)], uncertainty: { ...exact, hook: 0.25 }, bench }),
        WATER,
      ).netDeviation;
    const inWater = 1 - WATER / 7820;
    const off = (actual: number, expected: number): number => Math.abs(actual / expected - 1);
    expect(off(deviation(false, []), 0.25 * g * inWater)).toBeLessThan(DEVIATION);
    expect(off(deviation(true, []), (0.01 / Math.sqrt(12)) * g * inWater)).toBeLessThan(DEVIATION);
    const bench = [reading("weighing", 1, ["hangers"], 0.05)];
    // Gaussian product: 1/σ² = 1/0.25² + 1/(0.05²/12); the second decides.
    const conditional = 1 / Math.sqrt(1 / 0.25 ** 2 + 12 / 0.05 ** 2);
    expect(off(deviation(false, bench), conditional * g * inWater)).toBeLessThan(DEVIATION);
  });

  it("two hooks weighed together: their sum is known, their difference is not", () => {
    const hook = { mass: 1 * g, density: 7820, size: null };
    const spec: Partial<BaitSpec> = {
      hangers: [
        { name: "fore", at: at(20, -5), ring: null, hook },
        { name: "aft", at: at(80, -5), ring: null, hook },
      ],
      fittings: [{ name: "keel", at: at(50, -9), mass: 2 * g, stuff: stuff("p", 1e12), where: "inside" }],
      uncertainty: { ...exact, hook: 0.25 },
    };
    const alone = band(make(ELLIPSOID, spec), WATER);
    const weighed = band(make(ELLIPSOID, { ...spec, bench: [reading("weighing", 2, ["hangers"])] }), WATER);
    expect(weighed.netDeviation).toBeLessThan(0.02 * alone.netDeviation);
    const width = (b: typeof alone): number => (b.restTrim ? b.restTrim[1] - b.restTrim[0] : NaN);
    expect(width(weighed)).toBeGreaterThan(0.9 * width(alone));
  });

  it("weighed and displaced as a whole: the band is that of the two scales", () => {
    const all = ["body", "chambers", "balls", "ballast", "wires", "bib", "hangers", "fittings", "coats"];
    const bait = assemble({
      ...MINNOW,
      bench: [reading("displacement", 19.5, all), reading("weighing", 16, all)],
    });
    const b = band(bait, WATER);
    const tap = density(0, 18);
    const sigma = (0.01 / Math.sqrt(12)) * g * Math.hypot(1, WATER / tap);
    expect(Math.abs(b.netDeviation / sigma - 1)).toBeLessThan(DEVIATION);
    // Unweighed, the same bait is two hundred times as uncertain.
    expect(band(assemble(MINNOW), WATER).netDeviation).toBeGreaterThan(100 * sigma);
  });

  it("a weighing alone leaves the volume open, a displacement alone the wood", () => {
    const only = (r: BenchReading): string | undefined =>
      band(assemble({ ...MINNOW, bench: [r] }), WATER).contributions[0]?.input;
    expect(only(reading("displacement", 19, ["body"]))).toBe("body: density");
    expect(only(reading("weighing", 7.6, ["body"]))).toMatch(/^body: (height|breadth)$/);
  });

  it("shares add up to one, greatest first; the seed decides the draws and nothing else", () => {
    const bait = assemble(MINNOW);
    const a = band(bait, WATER, { samples: 2000, seed: 7 });
    expect(a.contributions.reduce((s, c) => s + c.share, 0)).toBeCloseTo(1, 9);
    expect(a.contributions.map((c) => c.share)).toEqual(
      a.contributions.map((c) => c.share).sort((p, q) => q - p),
    );
    expect(band(bait, WATER, { samples: 2000, seed: 7 })).toEqual(a);
    expect(band(bait, WATER, { samples: 2000, seed: 8 }).netBuoyancy).not.toEqual(a.netBuoyancy);
  });

  it("has no trim band where B and G are together", () => {
    expect(band(make(ELLIPSOID), WATER, { samples: 200 }).restTrim).toBeNull();
    expect(() => band(make(ELLIPSOID), WATER, { samples: 5 })).toThrow(/too few/);
  });
});
