import { describe, expect, it } from "vitest";
import {
  MATERIAL_DAMPING,
  tether,
  type EyeMotion,
  type LinePull,
  type RodEnd,
} from "../../../src/model/line";

const spec = { material: "nylon", diameter: 0.25e-3, density: 1140, EA: 100 };
const pull = (): LinePull => ({ x: 0, z: 0, tension: 0, slack: true });
const eyeAt = (x: number, z: number, w: number): EyeMotion => ({
  x,
  z,
  vx: 0,
  vz: 0,
  ax: 0,
  az: 0,
  wxx: w,
  wxz: 0,
  wzz: w,
});
const rodAt = (x: number, z: number, length: number): RodEnd => ({
  x,
  z,
  vx: 0,
  vz: 0,
  length,
  lengthRate: 0,
  free: false,
});

/** A mass on the line, taken through time by leapfrog; gives its distance from the rod tip. */
function hang(EA: number, length: number, mass: number, seconds: number, h: number, start: number): number[] {
  const line = tether({ ...spec, EA });
  const out = pull();
  let z = -length - start;
  let v = 0;
  const seen: number[] = [];
  for (let t = 0; t < seconds; t += h) {
    const eye = { ...eyeAt(0, z, 1 / mass), vz: v, az: -9.81 };
    line.pull(h, eye, rodAt(0, 0, length), out);
    v += h * (out.z / mass - 9.81);
    z += h * v;
    seen.push(-z);
  }
  return seen;
}

describe("tether", () => {
  it("pulls EA/L × stretch towards the rod tip", () => {
    const out = pull();
    // no inverse mass: the eye is held, and the pull is the spring's own. 3-4-5 triangle, 5 m of 4.99 m stretched.
    tether(spec).pull(1 / 960, eyeAt(0, 0, 0), rodAt(4, 3, 4.99), out);
    expect(out.tension).toBeCloseTo((100 / 4.99) * 0.01, 10);
    expect(out.x / out.tension).toBeCloseTo(0.8, 12);
    expect(out.z / out.tension).toBeCloseTo(0.6, 12);
    expect(out.slack).toBe(false);
  });

  it("never pushes, and gives freely when the reel is open", () => {
    const out = pull();
    tether(spec).pull(1 / 960, eyeAt(0, 0, 50), rodAt(4, 3, 5.001), out);
    expect(out).toEqual({ x: 0, z: 0, tension: 0, slack: true });
    tether(spec).pull(1 / 960, eyeAt(0, 0, 50), { ...rodAt(4, 3, 4), free: true }, out);
    expect(out.tension).toBe(0);
    // a stretched line that the eye runs into fast: damping alone may not turn the pull round
    tether(spec).pull(1 / 960, { ...eyeAt(0, 0, 50), vx: 40, vz: 30 }, rodAt(4, 3, 4.999), out);
    expect(out.tension).toBe(0);
  });

  it("a hanging weight comes to rest at the static stretch m g L/EA", () => {
    const seen = hang(100, 25, 0.015, 40, 1 / 960, 0.02);
    // static: 0.015·9.81·25/100 = 36.79 mm; the ring has died away to 1e-4 after 40 s (damping τ = 2 ms at 16 rad/s)
    expect(seen.at(-1)).toBeCloseTo(25 + (0.015 * 9.81 * 25) / 100, 4);
  });

  it("swings with the period 2π√(mL/EA)", () => {
    const h = 1 / 960;
    const seen = hang(100, 25, 0.015, 10, h, 0);
    const rest = 25 + (0.015 * 9.81 * 25) / 100;
    const ups: number[] = [];
    seen.forEach((d, i) => {
      const before = seen[i - 1];
      if (before !== undefined && before < rest && d >= rest) ups.push(i - (d - rest) / (d - before));
    });
    const period = ((ups.at(-1)! - ups[0]!) / (ups.length - 1)) * h;
    // (ωh)²/24-like error of the step at ω = 16.3 rad/s: 1e-5
    expect(period / (2 * Math.PI * Math.sqrt((0.015 * 25) / 100))).toBeCloseTo(1, 3);
  });

  it.each([
    [100, 25],
    [1000, 0.3],
    [1000, 0.01],
    [1e6, 0.3],
  ])("is stable at any stiffness (EA %d N, %d m)", (EA, length) => {
    const drop = 1e-3;
    const h = 1 / 960;
    const mass = 0.005;
    const seen = hang(EA, length, mass, 5, h, -drop);
    // Dropped from 1 mm slack, it may stretch the line by the static stretch and what the energy of its fall allows
    // (½k x² = ½m v²), and run into it by one step's way before the line is felt; never more, then or later.
    const rest = (mass * 9.81 * length) / EA;
    const speed = Math.sqrt(2 * 9.81 * drop);
    const allowed = 2 * rest + speed * Math.sqrt((mass * length) / EA) + speed * h;
    expect(Math.max(...seen)).toBeLessThan(length + allowed);
    expect(Math.min(...seen)).toBeGreaterThan(length - drop - speed * h);
  });

  it("damps by its time constant: a 1 m, 100 N line with 20 g loses ωτ/2 of critical", () => {
    // ω = √(100/0.02) = 70.7 rad/s; ζ = ωτ/2 = 0.0707; amplitude per period e^(−2πζ/√(1−ζ²)). Kept taut by gravity: the
    // start is 1 mm off the static stretch of 1.96 mm.
    const h = 1 / 9600;
    const rest = (0.02 * 9.81) / 100;
    const seen = hang(100, 1, 0.02, 1, h, rest + 1e-3).map((d) => d - 1 - rest);
    const peaks = seen.filter((d, i) => i > 0 && d > (seen[i - 1] ?? 0) && d > (seen[i + 1] ?? 0));
    const zeta = (Math.sqrt(100 / 0.02) * MATERIAL_DAMPING) / 2;
    const ratio = (peaks[1] ?? NaN) / (peaks[0] ?? NaN);
    expect(ratio).toBeCloseTo(Math.exp((-2 * Math.PI * zeta) / Math.sqrt(1 - zeta * zeta)), 2);
  });
});
