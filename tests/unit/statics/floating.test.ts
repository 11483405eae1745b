import { describe, expect, it } from "vitest";
import type { BaitSpec, FittingSpec } from "../../../src/model/bait";
import { Floater, floating, restTrim, staticsOf, upright } from "../../../src/model/statics";
import { A, B, C, ELLIPSOID, ELLIPSOID_VOLUME, make, MINNOW, STEEL } from "../../lib/baits";
import { at, deg, g, mm, stuff } from "../../lib/si";
import { prismEdges } from "../../lib/bodies";
import { assemble } from "../../../src/model/bait";
import { immersion } from "../../../src/model/hydrostatics";

const point = (mass: number, station: number, height: number): FittingSpec => ({
  name: "weight",
  at: at(station, height),
  mass,
  stuff: stuff("point", 1e12),
  where: "inside",
});
const MASS = 400 * ELLIPSOID_VOLUME;

/**
 * An ellipsoid in water of twice its density floats with its middle in the surface at every trim: half of it is under, and
 * the centroid of that half is (3/8)(a²n_x, c²n_z)/√(a²n_x² + c²n_z²) under the middle, n the vertical in body axes.
 */
function half(pitch: number, Gx: number, Gz: number) {
  const n = { x: Math.sin(pitch), z: Math.cos(pitch) };
  const root = Math.sqrt(A * A * n.x * n.x + C * C * n.z * n.z);
  const b = { x: (-3 / 8) * ((A * A * n.x) / root), z: (-3 / 8) * ((C * C * n.z) / root) };
  const along = 1 / Math.sqrt(n.z ** 2 / A ** 2 + n.x ** 2 / C ** 2); // half length of the waterline
  return {
    lever: (b.x - Gx) * n.z - (b.z - Gz) * n.x,
    GM: (b.x - Gx) * n.x + (b.z - Gz) * n.z + ((Math.PI / 4) * along * B ** 3) / (ELLIPSOID_VOLUME / 2),
    draft: Math.sqrt(A * A * n.x * n.x + C * C * n.z * n.z),
  };
}

describe("a half-immersed ellipsoid at any trim, by closed form", () => {
  // The weight equals a quarter of the body: G at 1/5 of its place from the middle.
  const [gx, gz] = [-8, -4]; // mm
  const bait = make(ELLIPSOID, { fittings: [point(MASS / 4, 50 - gx, gz)] });
  const water = (2 * 1.25 * MASS) / ELLIPSOID_VOLUME;
  const floater = new Floater(bait, water);
  const G = { x: (gx / 5) * mm, z: (gz / 5) * mm };

  it.each([-175, -120, -90, -60, -5, 0, 3, 45, 90, 133, 180])("held at %d°", (degrees) => {
    const pitch = degrees * deg;
    const afloat = floater.at(pitch);
    if (!afloat) throw new Error("it sinks");
    const exact = half(pitch, G.x, G.z);
    // 1e-5 of the volume at any trim (docs/model.md §2): levers to 1e-5 of the length, and better in fact.
    expect(afloat.lever).toBeCloseTo(exact.lever, 7);
    expect(afloat.GM).toBeCloseTo(exact.GM, 7);
    expect(afloat.draft).toBeCloseTo(exact.draft, 7);
    expect(afloat.immersedFraction).toBeCloseTo(0.5, 9);
  });

  it("finds the equilibrium of the closed form", () => {
    const found = floater.equilibrium();
    if (!found) throw new Error("it sinks");
    expect(Math.abs(half(found.pitch, G.x, G.z).lever)).toBeLessThan(1e-7);
    expect(found.others).toHaveLength(countStable((p) => half(p, G.x, G.z).lever) - 1);
    for (const other of found.others) expect(Math.abs(half(other.pitch, G.x, G.z).lever)).toBeLessThan(1e-7);
  });
});

/** Stable trims of a righting lever, by brute force: a fall through zero between two of 3,600 trims. */
function countStable(lever: (pitch: number) => number, n = 3600): number {
  const step = (2 * Math.PI) / n;
  let count = 0;
  let before = lever(-Math.PI + step / 2);
  for (let i = 1; i <= n; i++) {
    const here = lever(-Math.PI + step / 2 + i * step);
    if (before > 0 && here <= 0) count++;
    before = here;
  }
  return count;
}

describe("floating", () => {
  it("is null for a sinker and at exactly neutral", () => {
    expect(floating(make(ELLIPSOID, { body: stuff("stone", 1200, "wood") }), 1000)).toBeNull();
    const neutral = make(ELLIPSOID, { body: stuff("water", 1000, "wood") });
    expect(new Floater(neutral, 1000).netBuoyancy).toBeCloseTo(0, 15);
    expect(staticsOf(make(ELLIPSOID, { body: stuff("stone", 1200, "wood") }), 1000).floating).toBeNull();
  });

  it("immerses what it weighs, everything counted", () => {
    const bait = assemble({ ...MINNOW, ballast: [] });
    const found = floating(bait, 998.2);
    if (!found) throw new Error("it sinks");
    const { mass, displaced } = bait.rigid(found.side);
    expect((found.volume * 998.2) / mass).toBeCloseTo(1, 10);
    expect(found.immersedFraction).toBeCloseTo(mass / 998.2 / displaced, 10);
    expect(Math.abs(found.lever)).toBeLessThan(1e-11);
  });

  it("hooks count whole and at their eyes even above the water", () => {
    // A hanger on the back of a light body: its eye is 12 mm above the middle, well clear of the water.
    const bait = make(ELLIPSOID, {
      hangers: [
        { name: "h", at: at(50, 12), ring: null, hook: { mass: 0.2 * g, density: 7820, size: null } },
      ],
      body: stuff("balsa", 160, "wood"),
    });
    const afloat = new Floater(bait, 1000).at(0);
    if (!afloat) throw new Error("it sinks");
    expect(afloat.surface.level).toBeLessThan(0);
    // What the body has under is the total less the hook's own volume.
    const under = immersion(bait.shape, afloat.surface).volume;
    expect(under + (0.2 * g) / 7820).toBeCloseTo(afloat.volume, 15);
  });

  it("an outside item goes under as a sphere of its volume, a wire by its length, a coat by the skin", () => {
    const bait = make(ELLIPSOID, {
      body: stuff("balsa", 160, "wood"),
      fittings: [
        { name: "float", at: at(50, 0), mass: 0.1 * g, stuff: stuff("foam", 100, "other"), where: "outside" },
      ],
      wires: [
        { name: "post", path: [at(50, 12), at(50, 30)], diameter: 1 * mm, stuff: stuff("steel", 8000) },
        { name: "keel", path: [at(50, -12), at(50, -20)], diameter: 1 * mm, stuff: stuff("steel", 8000) },
      ],
      coats: [{ name: "c", thickness: 0.2 * mm, mass: null, stuff: stuff("epoxy", 1100, "other") }],
    });
    const afloat = new Floater(bait, 1000).at(0);
    if (!afloat) throw new Error("it sinks");
    const z = afloat.surface.level;
    const body = immersion(bait.shape, afloat.surface, { skin: true });
    const volume = 1e-6; // 0.1 g of 100 kg/m³
    const R = Math.cbrt((3 * volume) / (4 * Math.PI));
    const cap = Math.min(2 * R, Math.max(0, z + R));
    const sphere = (Math.PI * cap ** 2 * (3 * R - cap)) / 3;
    const keel = (Math.PI / 4) * mm * mm * 8 * mm;
    const coat = ELLIPSOID.skinArea * 0.2 * mm * body.skinFraction;
    expect(afloat.volume).toBeCloseTo(body.volume + sphere + keel + coat, 13);
    expect(afloat.volume * 1000).toBeCloseTo(bait.rigid(afloat.side).mass, 12);
  });

  it("a symmetric body with its weight low floats level; the draft is the level under its keel", () => {
    const bait = make(prismEdges(0.1, 0.01, 0.01, 2), { fittings: [point(2 * g, 50, -8)] });
    const found = floating(bait, 1000);
    expect(found?.pitch).toBeCloseTo(0, 9);
    expect(found?.draft).toBeCloseTo((found?.surface.level ?? NaN) + 0.01, 9);
  });
});

describe("several stable trims", () => {
  /** Stable trims by brute force on the true geometry, every degree, the balls on the side of each trim. */
  const brute = (floater: Floater): number[] => {
    const found: number[] = [];
    // 0.1° off the quarters, where loose balls run over.
    const trims = Array.from({ length: 361 }, (_, i) => (-180 + i + 0.01) * deg);
    let before = NaN;
    for (const p of trims) {
      const lever = floater.at(p)?.lever ?? NaN;
      if (before > 0 && lever <= 0) found.push(p);
      before = lever;
    }
    return found;
  };
  const tailHeavy: Partial<BaitSpec> = {
    body: stuff("cedar", 350, "wood"),
    fittings: [point(4.5 * g, 84, 2)],
  };

  it("a tail-heavy floater: the one met first from the rest trim, the others listed", () => {
    const bait = make(ELLIPSOID, tailHeavy);
    const floater = new Floater(bait, 1000);
    const s = staticsOf(bait, 1000);
    const found = s.floating;
    if (!found || s.rest.pitch === null) throw new Error("it sinks");
    const all = [found, ...found.others];
    const expected = brute(floater);
    expect(all).toHaveLength(expected.length);
    expect(expected.length).toBeGreaterThanOrEqual(2);
    for (const p of expected) expect(all.some((a) => a.pitch <= p && a.pitch >= p - 1.01 * deg)).toBe(true);
    // Walk from the rest trim the way the moment turns it: the first fall to zero is the one chosen.
    const start = s.rest.pitch;
    const sign = Math.sign(floater.at(start)?.lever ?? 0);
    let p = start;
    while (Math.sign(floater.at(p)?.lever ?? 0) === sign) p += sign * 0.5 * deg;
    expect(Math.abs(found.pitch - p)).toBeLessThan(0.5 * deg + 1e-9);
  });

  it("loose balls make two, each with the balls at its lower end", () => {
    const bait = make(ELLIPSOID, {
      chambers: [
        {
          name: "r",
          from: 25 * mm,
          to: 75 * mm,
          height: -2 * mm,
          tall: 6 * mm,
          wide: 6 * mm,
          balls: { count: 3, diameter: 5.5 * mm, stuff: STEEL },
        },
      ],
      fittings: [point(0.4 * g, 50.5, -9)],
    });
    const found = floating(bait, 1000);
    if (!found) throw new Error("it sinks");
    const upright = [found, ...found.others].filter((a) => Math.cos(a.pitch) > 0);
    expect(upright.map((a) => a.side.end).sort()).toEqual(["nose", "tail"]);
    for (const a of [found, ...found.others]) {
      expect(a.side.end).toBe(a.pitch > 0 ? "tail" : "nose");
      expect(a.side.face).toBe(Math.cos(a.pitch) > 0 ? "floor" : "roof");
      expect(Math.abs(a.lever)).toBeLessThan(1e-11);
    }
    expect([found, ...found.others]).toHaveLength(brute(new Floater(bait, 1000)).length);
  });
});

describe("a hollow in the lever of a half-immersed ellipsoid, by closed form", () => {
  /** d/dθ by a central difference: to 1e-9 here. */
  const slope = (f: (p: number) => number, p: number): number => (f(p + 1e-5) - f(p - 1e-5)) / 2e-5;
  const form = (p: number): number => half(p, 0, 0).lever;

  // G is put where the lever turns at a trim, `depth` beyond zero: stable trims stand on one side of it.
  it.each(
    [0.08, 0.007, 0.002].flatMap((depth) =>
      [-162, -98, -56, -37.5, 24, 41, 98, 139, 155].map((degrees) => ({ depth, degrees })),
    ),
  )("$depth mm deep, at $degrees°", ({ depth, degrees }) => {
    const trim = degrees * deg;
    const [cos, sin] = [Math.cos(trim), Math.sin(trim)];
    // A lever that curves up has its hollow below zero. Its curvature hardly depends on a lever this small.
    const curvature = slope((p) => slope(form, p), trim) + form(trim);
    const beyond = -Math.sign(curvature) * depth * mm;
    const [l, t] = [form(trim) - beyond, slope(form, trim)];
    const G = { x: l * cos - t * sin, z: -l * sin - t * cos };
    const lever = (p: number): number => half(p, G.x, G.z).lever;
    expect(lever(trim)).toBeCloseTo(beyond, 12);
    expect(Math.abs(slope(lever, trim))).toBeLessThan(1e-8);

    // A weight without volume, a quarter of the body: G is at 1/5 of its place from the middle.
    const weight = { ...point(MASS / 4, 50 - (5 * G.x) / mm, (5 * G.z) / mm), where: "outside" as const };
    const bait = make(ELLIPSOID, { fittings: [weight] });
    const found = new Floater(bait, (2 * 1.25 * MASS) / ELLIPSOID_VOLUME).equilibrium();
    if (!found) throw new Error("it sinks");
    const all = [found, ...found.others].map(({ pitch }) => pitch);
    expect(all).toHaveLength(countStable(lever, 36_000));
    for (const pitch of all) expect(Math.abs(lever(pitch))).toBeLessThan(1e-7);
  });
});

describe("upright or on its side", () => {
  /**
   * A prism of elliptic section (half-breadth b, half-height c), half of it under: B is 4c/3π below the middle and
   * I_T/V = (2/3)b³/(πbc/2), so that GM = (4/3π)(b² − c²)/c − z_G. A weight of a quarter of the body puts G at h/5.
   */
  it.each([
    { b: 4, c: 15, h: 5, over: true }, // tall, thin, G high
    { b: 4, c: 15, h: -10, over: true }, // as thin, G low: still too narrow
    { b: 10, c: 10, h: 3, over: true }, // round: only G decides
    { b: 10, c: 10, h: -3, over: false },
    { b: 12, c: 8, h: 3, over: false }, // broad: steady with G above the water
  ])("a prism $b mm by $c mm with a weight at $h mm, by closed form", ({ b, c, h, over }) => {
    const body = 400 * Math.PI * b * c * 1e-6 * 0.1;
    const prism = make(prismEdges(0.1, b * mm, c * mm, 2), {
      body: stuff("balsa", 400, "wood"),
      fittings: [point(body / 4, 50, h)],
    });
    const form = ((4 / (3 * Math.PI)) * (b * b - c * c)) / c;
    const GM = form - h / 5;
    expect(GM < 0).toBe(over);
    const held = new Floater(prism, 1000).at(0);
    // 1e-5 of the length (docs/model.md §2).
    expect(held?.GM).toBeCloseTo(GM * mm, 6);
    // Left to itself the prism, alike above and below, floats with G on the lower side, and there lies over or not.
    const s = staticsOf(prism, 1000);
    const low = form + Math.abs(h) / 5;
    expect(Math.cos(s.floating?.pitch ?? NaN)).toBeCloseTo(h > 0 ? -1 : 1, 9);
    expect(s.upright.GM).toBeCloseTo(low * mm, 6);
    expect(s.upright.uprightAfloat).toBe(low > 0);
    expect(s.notes.some((note) => note.includes("lies on its side"))).toBe(low < 0);
  });

  it("a tall thin bait hangs upright under water and still lies over afloat", () => {
    // 8 mm broad, 30 mm tall, floating high: the waterline is too narrow.
    const tall = make(prismEdges(0.1, 0.004, 0.015, 2), {
      body: stuff("balsa", 500, "wood"),
      fittings: [point(0.5 * g, 50, -3)],
    });
    const s = staticsOf(tall, 1000);
    expect(s.rest.pitch).toBeCloseTo(0, 6);
    expect(s.upright.bellyDownUnderWater).toBe(true);
    expect(s.upright.uprightAfloat).toBe(false);
    expect(s.upright.GM).toBeLessThan(0);
    expect(s.notes.join(" ")).toMatch(/lies on its side/);
    // The same without the balsa's lift: sunk, there is no waterline to stand on.
    expect(upright(restTrim(tall), null)).toEqual({
      BG: restTrim(tall).BG,
      GM: null,
      bellyDownUnderWater: true,
      uprightAfloat: null,
    });
  });
});
