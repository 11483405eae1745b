import { describe, expect, test } from "vitest";
import { compile, parseScenario } from "../../../src/document";
import { assemble } from "../../../src/model/bait";
import { accelerations, createEvaluator } from "../../../src/model/forces";
import { prepareTow, reach, reachSweep, terminalRise, towLoad, withBibAngle } from "../../../src/model/tow";

const DEG = 180 / Math.PI;

/** An invented lipped minnow; keys of the bait and the top level can be changed. */
function scene(bait: Record<string, unknown> = {}, top: Record<string, unknown> = {}) {
  const file = {
    format: "trimwright/scenario",
    version: 1,
    name: "Invented minnow",
    bait: {
      length_mm: 90,
      top: [
        [0, 0],
        [30, 9],
        [90, 1],
      ],
      bottom: [
        [0, 0],
        [32, -9.5],
        [90, -1],
      ],
      halfBreadth: [
        [0, 0],
        [34, 6.5],
        [90, 1],
      ],
      body: { density_g_ml: 0.45 },
      ballast: [{ name: "belly", at_mm: [34, -6], mass_g: 4, density_g_ml: 7.31, where: "inside" }],
      bib: {
        root_mm: [4, -3],
        angle_deg: 45,
        length_mm: 14,
        width_mm: 14,
        slot_mm: 5,
        thickness_mm: 1.2,
        outline: "round",
        material: "polycarbonate",
      },
      tie_mm: [-1, 0],
      hangers: [{ name: "belly", at_mm: [36, -10.5], hook: { mass_g: 0.6 } }],
      ...bait,
    },
    water: { temperature_C: 15, salinity_g_kg: 0, depth_m: 10 },
    tackle: { line: { material: "nylon", diameter_mm: 0.25 }, lineOut_m: 25, rodTip_m: 1 },
    ...top,
  };
  const parsed = parseScenario(JSON.stringify(file));
  if (!parsed.ok) throw new Error(parsed.problems.map((p) => p.message).join("\n"));
  return compile(parsed.scenario);
}

describe("steady tow", () => {
  test("is a state in which the equations of motion rest once the line pulls", () => {
    const { bait, around, tackle } = scene();
    const tow = prepareTow(bait);
    const row = reach(tow, around, tackle, { speed: 1 });
    expect(row.why).toBeNull();
    if (row.pitch === null || row.tension === null || row.lineAngle === null) throw new Error("does not run");
    const swimmer = tow.swimmers.at(row.pitch);
    const deep = { ...around, surface: false };
    const evaluator = createEvaluator(swimmer, deep);
    const [c, s] = [Math.cos(row.pitch), Math.sin(row.pitch)];
    evaluator.evaluate({ u: c, w: -s, q: 0, pitch: row.pitch, X: 0, Z: 0 });
    // The line's pull at the eye in body axes: T at φ above the horizontal, turned by −θ.
    const along = row.tension * Math.cos(row.lineAngle - row.pitch);
    const up = row.tension * Math.sin(row.lineAngle - row.pitch);
    const { x, z } = swimmer.tie;
    const rates = evaluator.accelerate({ x: along, z: up, m: x * up - z * along }, [0, 0, 0]);
    // Against rates without the line of some m/s² and hundreds of rad/s².
    expect(Math.abs(rates[0])).toBeLessThan(1e-6);
    expect(Math.abs(rates[1])).toBeLessThan(1e-6);
    expect(Math.abs(rates[2])).toBeLessThan(1e-3);
  });

  test("the running attitude is stable: a small nudge makes a moment that turns it back", () => {
    const { bait, around, tackle } = scene();
    const tow = prepareTow(bait);
    const { pitch } = reach(tow, around, tackle, { speed: 1 });
    const deep = { ...around, surface: false };
    const at = (p: number) => towLoad(tow.swimmers.at(p), deep, 1, p).momentAboutEye;
    expect(at((pitch ?? NaN) + 0.01)).toBeLessThan(0);
    expect(at((pitch ?? NaN) - 0.01)).toBeGreaterThan(0);
  });

  test("a lipped minnow runs nose-down at a depth of the size that anglers know", () => {
    // docs/model.md §10, for orientation: short- to long-bib minnows of 70–130 mm on 25 m of 0.25 mm nylon at 1 m/s
    // run 0.7–4.4 m deep at −15° to −21°, with 0.1–0.4 N on the line.
    const { bait, around, tackle } = scene();
    const row = reach(prepareTow(bait), around, tackle, { speed: 1 });
    expect(row.depth).toBeGreaterThan(0.5);
    expect(row.depth).toBeLessThan(5);
    expect((row.pitch ?? 0) * DEG).toBeGreaterThan(-35);
    expect((row.pitch ?? 0) * DEG).toBeLessThan(-5);
    expect(row.tension).toBeGreaterThan(0.05);
    expect(row.tension).toBeLessThan(0.6);
  });

  test("more line goes deeper, thicker line less deep, and the bottom bounds it", () => {
    const { bait, around, tackle } = scene();
    const tow = prepareTow(bait);
    const depth = (t = tackle, a = around) => reach(tow, a, t, { speed: 1 }).depth ?? NaN;
    expect(depth({ ...tackle, lineOut: 15 })).toBeLessThan(depth());
    expect(depth({ ...tackle, line: { ...tackle.line, diameter: 0.4e-3 } })).toBeLessThan(depth());
    const shallow = reach(tow, { ...around, depth: 0.5 }, tackle, { speed: 1 });
    expect(shallow.depth).toBe(0.5);
    expect(shallow.why).toBe("limited by the bottom");
    expect(shallow.runs).toBe(true);
  });

  test("what does not run says why and gives no figures", () => {
    // A light body at a crawl: its lift keeps the line pulling down, and the bib has no force yet.
    const light = scene({
      body: { density_g_ml: 0.3 },
      bib: {
        root_mm: [4, -3],
        angle_deg: 25,
        length_mm: 6,
        width_mm: 10,
        slot_mm: 5,
        thickness_mm: 1.2,
        outline: "square",
        material: "polycarbonate",
      },
    });
    const crawl = prepareTow(light.bait);
    const floater = reach(crawl, light.around, light.tackle, { speed: 0.5 });
    // Slower still its tail stands up, so far that the bib lies square to the flow and beyond.
    expect(reach(crawl, light.around, light.tackle, { speed: 0.15 }).why).toBe("bib stalls");
    expect(floater.runs).toBe(false);
    expect(floater.why).toBe("too little downforce at this speed");
    expect([floater.depth, floater.pitch, floater.tension, floater.lineAngle]).toEqual([
      null,
      null,
      null,
      null,
    ]);

    const high = scene(
      {},
      { tackle: { line: { material: "nylon", diameter_mm: 0.25 }, lineOut_m: 3, rodTip_m: 2.9 } },
    );
    expect(reach(prepareTow(high.bait), high.around, high.tackle, { speed: 1 }).why).toBe("cannot get under");

    // The bib ahead and flat with the eye far behind and below it: the nose is carried over.
    const over = scene({ tie_mm: [80, -10] });
    const turned = reach(prepareTow(over.bait), over.around, over.tackle, { speed: 1 });
    expect(turned.runs).toBe(false);
    expect(turned.why).toBe("turns over");
  });

  test("a sweep has angles outside and speeds inside, and the file's own angle without angles", () => {
    const { bait, around, tackle } = scene();
    const speeds = [0.8, 1.2];
    const rows = reachSweep(bait.spec, around, tackle, { speeds, angles: [0.6, 0.9] });
    expect(rows.map((r) => [r.bibAngle, r.speed])).toEqual([
      [0.6, 0.8],
      [0.6, 1.2],
      [0.9, 0.8],
      [0.9, 1.2],
    ]);
    const alone = reach(prepareTow(assemble(withBibAngle(bait.spec, 0.9))), around, tackle, { speed: 1.2 });
    expect(rows[3]?.depth).toBe(alone.depth);
    const own = reachSweep(bait.spec, around, tackle, { speeds, angles: null });
    expect(own.map((r) => r.bibAngle)).toEqual([bait.spec.bib?.angle, bait.spec.bib?.angle]);
  });

  test("bad speeds and lengths are refused with their value", () => {
    const { bait, around, tackle } = scene();
    const tow = prepareTow(bait);
    expect(() => reach(tow, around, tackle, { speed: 0 })).toThrow(/speed above 0 m\/s, not 0/);
    expect(() => reach(tow, around, tackle, { speed: 1, lineOut: -1 })).toThrow(/above 0 m, not -1/);
  });
});

describe("terminal rise", () => {
  test("all forces vanish there", () => {
    const { bait, around } = scene();
    const rise = terminalRise(bait, around);
    expect(rise.steady).toBe(true);
    const [c, s] = [Math.cos(rise.pitch), Math.sin(rise.pitch)];
    const swimmer = prepareTow(bait).swimmers.at(rise.pitch);
    const rates = accelerations(
      swimmer,
      {
        u: rise.drift * c + rise.speed * s,
        w: rise.speed * c - rise.drift * s,
        q: 0,
        pitch: rise.pitch,
        X: 0,
        Z: 0,
      },
      { ...around, surface: false },
    );
    expect(Math.hypot(rates[0], rates[1])).toBeLessThan(1e-8);
  });

  test("a level symmetric float rises at the speed of its cross-flow drag alone", () => {
    // Fore-and-aft symmetric, no bib, ballast at mid-length: it rises level, so that F = ½ρ η V² ∫ C_cyl(Re) f(r) 2hw ds.
    // The right side is summed here from the published curve (Cheng 2013; f and η as docs/model.md §6.5 cites them),
    // on a grid of its own.
    const L = 0.09;
    const n = 61;
    const knots = (b: number, sign: number) =>
      Array.from({ length: n }, (_, i) => {
        const phi = (Math.PI * i) / (n - 1);
        return [(90 * (1 - Math.cos(phi))) / 2, sign * (i === 0 || i === n - 1 ? 0 : b * Math.sin(phi))];
      });
    const { bait, around } = scene({
      top: knots(9, 1),
      bottom: knots(9, -1),
      halfBreadth: knots(9, 1),
      body: { density_g_ml: 0.6 },
      ballast: [{ name: "keel", at_mm: [45, -6], mass_g: 4, density_g_ml: 7.31, where: "inside" }],
      bib: undefined,
      hangers: undefined,
    });
    const rise = terminalRise(bait, around);
    const rigid = bait.rigid({ end: "mid", face: "floor" });
    const lift = (around.density * rigid.displaced - rigid.mass) * around.gravity;
    const nu = around.viscosity / around.density;
    const F = L / 0.018;
    const eta = 1 - 23.009 / (F + 122.769) - (13.006 / (F + 24.368)) ** 2;
    const cyl = (Re: number) =>
      11 * Re ** -0.75 + 0.9 * (1 - Math.exp(-1000 / Re)) + 1.2 * (1 - Math.exp(-((Re / 4500) ** 0.7)));
    let drag = 0;
    const N = 2000;
    for (let i = 0; i < N; i++) {
      const phi = (Math.PI * (i + 0.5)) / N;
      const hw = 0.009 * Math.sin(phi);
      const ds = ((Math.PI / N) * L * Math.sin(phi)) / 2;
      drag += 0.5 * around.density * eta * cyl((rise.speed * 2 * hw) / nu) * 2 * hw * rise.speed ** 2 * ds;
    }
    expect(Math.abs(rise.pitch)).toBeLessThan(1e-6);
    expect(Math.abs(drag / lift - 1)).toBeLessThan(1e-3);
  });

  test("a sinker sinks", () => {
    const { bait, around } = scene({
      ballast: [{ name: "belly", at_mm: [34, -6], mass_g: 12, density_g_ml: 11.35, where: "inside" }],
    });
    expect(terminalRise(bait, around).speed).toBeLessThan(0);
  });
});
