import { describe, expect, test } from "vitest";
import { segmentedLine } from "../../../src/model/line";
import { TANGENTIAL_DRAG } from "../../../src/model/line/steady";
import { AIR, FRESH, NYLON, run, type Trial } from "./harness";

const G = 9.80665;
const PER_METRE = (line: typeof NYLON) => line.density * (Math.PI / 4) * line.diameter ** 2;

/** Pulls a 30 g lump through still water with a twitch of 1.2 m in 0.12 s. */
function twitch(rate: number, segments: number, travel = 1.2) {
  const mass = 0.03;
  const trial: Trial = {
    spec: NYLON,
    water: FRESH,
    options: { segments },
    mass,
    rate,
    from: { x: 0, z: -1 },
    force: ({ vx, vz }) => {
      const v = Math.hypot(vx, vz);
      return { x: -0.15 * v * vx, z: -0.6 * v * vz };
    },
    rod: (t) => {
      const s = Math.min(1, Math.max(0, (t - 1) / 0.12));
      return {
        x: 12.6 + travel * (s - Math.sin(2 * Math.PI * s) / (2 * Math.PI)),
        z: 1,
        vx: s > 0 && s < 1 ? (travel / 0.12) * (1 - Math.cos(2 * Math.PI * s)) : 0,
        vz: 0,
        length: Math.hypot(12.6, 2) + 0.005,
        free: false,
      };
    },
    duration: 2,
  };
  const { samples } = run(trial);
  return {
    travel: (samples.at(-1)?.x ?? NaN) - (samples[Math.round(rate * 1)]?.x ?? NaN),
    peak: Math.max(...samples.map((s) => s.tension)),
    samples,
  };
}

describe("a line of segments, at rest", () => {
  test("static tension and stretch are exact", () => {
    // T(s) = (m + ρ_l A s) g; stretch ∫T/EA ds = L (m g + ½ w L)/EA. To 1e-4 as asked; reached: 1e-7.
    const mass = 0.1;
    const { samples, line } = run({
      spec: NYLON,
      water: AIR,
      mass,
      from: { x: 0, z: -1 },
      force: ({ vx, vz }) => ({ x: -2 * vx, z: -mass * G - 2 * vz }),
      rod: () => ({ x: 0, z: 1, vx: 0, vz: 0, length: 2, free: false }),
      duration: 20,
    });
    const end = samples.at(-1);
    const w = PER_METRE(NYLON) * G;
    const stretch = (2 * (mass * G + (w * 2) / 2)) / NYLON.EA;
    expect(-(end?.z ?? 0) - 1).toBeCloseTo(stretch, 8);
    expect(Math.abs((end?.tension ?? 0) / (mass * G) - 1)).toBeLessThan(1e-4);
    // at the rod tip all but half the last segment hangs below the last spring
    const last = (2 / 24) * (1 / 3 + 4 / 3);
    const top = line.tensions().at(-1) ?? NaN;
    expect(Math.abs(top / (mass * G + w * (2 - last / 2)) - 1)).toBeLessThan(1e-6);
  });

  test("it hangs as a catenary", () => {
    // Both ends held at one height, 8 m apart, 8.2 m long: a from 2a sinh(d/2a) = L, sag a (cosh(d/2a) − 1).
    const spec = { ...NYLON, diameter: 0.5e-3, EA: 1e5 };
    const L = 8.2;
    const d = 8;
    let lo = 1;
    let hi = 100;
    for (let i = 0; i < 100; i++) {
      const a = (lo + hi) / 2;
      if (2 * a * Math.sinh(d / (2 * a)) > L) lo = a;
      else hi = a;
    }
    const sag = lo * (Math.cosh(d / (2 * lo)) - 1);
    const { line } = run({
      spec,
      water: { ...AIR, density: 100, viscosity: 1e-3 }, // thick water calms it; its weight in it only scales the tension
      mass: 1e9,
      from: { x: 0, z: -3 },
      force: () => ({ x: 0, z: 0 }),
      rod: () => ({ x: d, z: -3, vx: 0, vz: 0, length: L, free: false }),
      duration: 40,
      options: { equal: true, segments: 40 },
    });
    const lowest = Math.min(...line.nodes().map((p) => p.z));
    expect(Math.abs((-3 - lowest) / sag - 1)).toBeLessThan(0.005); // 40 chords
  });

  test("it cannot push: with the ends brought together it carries nothing", () => {
    const { samples } = run({
      spec: NYLON,
      water: FRESH,
      mass: 0.02,
      from: { x: 0, z: -0.5 },
      force: () => ({ x: 0, z: 0 }),
      rod: (t) => ({ x: 5 - Math.min(2, t), z: 1, vx: t < 2 ? -1 : 0, vz: 0, length: 5.3, free: false }),
      duration: 3,
    });
    expect(Math.min(...samples.map((s) => s.tension))).toBe(0);
    // its own weight in water (0.07 mN a metre) is all that the mass may feel
    expect(Math.max(...samples.map((s) => Math.abs(s.x)))).toBeLessThan(0.05);
  });

  test("bad counts of segments are refused with their value", () => {
    expect(() => segmentedLine(NYLON, FRESH, { segments: 2 })).toThrow(/4 to 96 segments, not 2/);
  });
});

describe("a line of segments, moving", () => {
  test("the hardest twitch agrees with a fine reference within 2 %", () => {
    const coarse = twitch(960, 24);
    const fine = twitch(3840, 48);
    expect(fine.travel).toBeGreaterThan(0.5);
    expect(Math.abs(coarse.travel / fine.travel - 1)).toBeLessThan(0.02);
    expect(Math.abs(coarse.peak / fine.peak - 1)).toBeLessThan(0.02);
  });

  test("wound in, its length is what is left, and joining segments gives no jerk", () => {
    const speed = 0.9;
    let worst = 0;
    let tension = 0.2; // as it has been over the last tenth of a second
    const drag = 0.2 / speed ** 2;
    const { line } = run(
      {
        spec: NYLON,
        water: FRESH,
        mass: 0.03,
        from: { x: 0, z: -0.3 },
        force: ({ vx, vz }) => {
          const v = Math.hypot(vx, vz);
          return { x: -drag * v * vx, z: -0.04 - 2 * drag * v * vz };
        },
        rod: (t) => {
          const wound = t < 1 ? (speed * t * t) / 2 : speed * (t - 0.5);
          return {
            x: Math.sqrt(25 ** 2 - 1.3 ** 2),
            z: 1,
            vx: 0,
            vz: 0,
            length: 25 - wound,
            lengthRate: -speed * Math.min(1, t),
            free: false,
          };
        },
        duration: 24,
      },
      (s) => {
        if (s.t > 4) worst = Math.max(worst, Math.abs(s.tension / tension - 1));
        tension += (s.tension - tension) / 96;
      },
    );
    expect(line.length()).toBeCloseTo(25 - speed * 23.5, 2);
    expect(worst).toBeLessThan(0.02);
  });

  test("a reel that gives freely gives, and what it gave stays out", () => {
    const { line, samples } = run({
      spec: NYLON,
      water: FRESH,
      mass: 0.02,
      from: { x: 0, z: -0.5 },
      force: ({ vx }) => ({ x: -0.05 - 0.5 * vx, z: 0 }), // swims away at 0.1 m/s
      rod: () => ({ x: 5, z: 1, vx: 0, vz: 0, length: Math.hypot(5, 1.5), free: true }),
      duration: 20,
    });
    const end = samples.at(-1);
    expect(end?.x).toBeLessThan(-1);
    expect(line.length()).toBeGreaterThan(Math.hypot(5 - (end?.x ?? 0), 1.5) - 0.01);
    expect(Math.max(...samples.map((s) => s.tension))).toBeLessThan(0.02);
  });

  test("momentum balances: what rod, weight and drag give is what mass and line have", () => {
    // Mass and line swing in air. Momentum of both against the impulse of the weight and the pull at the rod tip.
    const mass = 0.02;
    const spec = { ...NYLON, diameter: 0.8e-3, EA: 800 };
    const weight = (mass + PER_METRE(spec) * 2) * G;
    const h = 1 / 960;
    let impulseX = 0;
    let impulseZ = 0;
    let start = null as { x: number; z: number } | null;
    let last = { x: 0, z: 0 };
    let before: { x: number; z: number }[] | null = null;
    const lengths = Array.from({ length: 24 }, (_, i) => (2 / 24) * (1 / 3 + (4 / 3) * (i / 23)));
    run(
      {
        spec,
        water: AIR,
        mass,
        from: { x: 1.2, z: -0.6 },
        force: () => ({ x: 0, z: -mass * G }),
        rod: () => ({ x: 0, z: 1, vx: 0, vz: 0, length: 2, free: false }),
        duration: 1,
      },
      (s, line) => {
        const nodes = line.nodes();
        if (before) {
          const p = { x: mass * s.vx, z: mass * s.vz };
          for (let i = 1; i < 24; i++) {
            const m = (PER_METRE(spec) * ((lengths[i - 1] ?? 0) + (lengths[i] ?? 0))) / 2;
            p.x += (m * ((nodes[i]?.x ?? 0) - (before[i]?.x ?? 0))) / h;
            p.z += (m * ((nodes[i]?.z ?? 0) - (before[i]?.z ?? 0))) / h;
          }
          last = p;
          start ??= p;
          const top = line.tensions().at(-1) ?? 0;
          const tip = nodes[24] ?? { x: 0, z: 0 };
          const below = nodes[23] ?? { x: 0, z: 0 };
          const span = Math.hypot(tip.x - below.x, tip.z - below.z);
          if (start !== p) {
            impulseX += (h * top * (tip.x - below.x)) / span;
            // half the last segment's weight hangs on the rod tip itself
            impulseZ +=
              h *
              ((top * (tip.z - below.z)) / span - weight + (PER_METRE(spec) * (lengths[23] ?? 0) * G) / 2);
          }
        }
        before = nodes;
      },
    );
    const from = start ?? { x: NaN, z: NaN };
    const size = Math.hypot(impulseX, impulseZ);
    expect(size).toBeGreaterThan(0.02);
    expect(Math.abs(last.x - from.x - impulseX) / size).toBeLessThan(0.01);
    expect(Math.abs(last.z - from.z - impulseZ) / size).toBeLessThan(0.01);
  });

  test("the same run twice is the same to the bit", () => {
    expect(twitch(960, 24).samples).toEqual(twitch(960, 24).samples);
  });
});

describe("a straight taut line that goes along itself through the water", () => {
  test.each([2, -2])(
    "takes from the eye the skin drag of the half segment next to it, at %f m/s",
    (speed) => {
      // by hand: ½ρ π d C_t U² on half a segment, against the motion; the line weighs nothing in the water
      const line = { ...NYLON, density: FRESH.density };
      const length = 12;
      const segments = 24;
      const stretched = length + 0.1;
      const start = [
        { x: 0, z: -1 },
        { x: stretched, z: -1 },
      ];
      const moving = segmentedLine(line, FRESH, { segments, equal: true, start });
      const out = { x: 0, z: 0, tension: 0, slack: true };
      const h = 1 / 960;
      for (let k = 0; k < 1920; k++) {
        const x = speed * k * h;
        const eye = { x, z: -1, vx: speed, vz: 0, ax: 0, az: 0, wxx: 0, wxz: 0, wzz: 0 };
        const rod = { x: x + stretched, z: -1, vx: speed, vz: 0, length, lengthRate: 0, free: false };
        moving.pull(h, eye, rod, out);
      }
      const skin = 0.5 * FRESH.density * Math.PI * line.diameter * TANGENTIAL_DRAG * speed * Math.abs(speed);
      expect(out.tension).toBeGreaterThan(0.05);
      expect(out.x - out.tension).toBeCloseTo((-skin * length) / segments / 2, 7);
      expect(Math.abs(skin * length) / segments / 2).toBeGreaterThan(1e-3);
    },
  );
});
