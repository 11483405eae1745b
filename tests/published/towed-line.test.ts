import { describe, expect, it, test } from "vitest";
import {
  catenaryRise,
  catenaryRun,
  followLine,
  lineLoads,
  steadyLine,
  type LineSpec,
} from "../../src/model/line";

const RAD = Math.PI / 180;
const nylon: LineSpec = { material: "nylon", diameter: 0.25e-3, density: 1140, EA: 100 };
const rho = 998.2;

describe("neutral line with constant normal drag: exact solution", () => {
  // cot φ = cot φ0 + f s/T0; depth = (T0/f)[asinh(cot φ) − asinh(cot φ0)]. Rows computed from that closed form
  // and confirmed by an ODE solver to 1e-11.
  const rows = [
    { d: 0.25, U: 1.0, Cn: 1.2, T0: 0.5, phi: 45, L: 10, x: 9.02843, depth: 4.04738, top: 14.0545 },
    { d: 0.25, U: 1.0, Cn: 1.2, T0: 0.5, phi: 45, L: 20, x: 18.85448, depth: 5.88132, top: 8.1425 },
    { d: 0.25, U: 1.5, Cn: 1.2, T0: 1.0, phi: 40, L: 20, x: 19.10605, depth: 5.21537, top: 7.1876 },
    { d: 0.3, U: 1.0, Cn: 1.2, T0: 0.3, phi: 60, L: 15, x: 14.12309, depth: 4.01435, top: 5.9709 },
    { d: 0.12, U: 1.0, Cn: 1.3, T0: 0.5, phi: 45, L: 20, x: 18.10921, depth: 7.96764, top: 13.6608 },
    { d: 0.25, U: 0.5, Cn: 1.4, T0: 0.2, phi: 30, L: 10, x: 9.34844, depth: 3.46719, top: 14.3264 },
  ];
  test.each(rows)("d $d mm, $U m/s, $L m", ({ d, U, Cn, T0, phi, L, x, depth, top }) => {
    const loads = lineLoads(
      { ...nylon, diameter: d / 1000 },
      { density: rho, viscosity: 1e-3, gravity: 9.80665 },
      U,
      { normalDrag: () => Cn, tangentialDrag: 0, wetWeight: 0 },
    );
    const { point } = followLine(loads, T0, phi * RAD, L, null, null);
    // Printed to 1e-5 m and 1e-4°; asked for: 1e-4 m.
    expect(Math.abs(point.z - depth)).toBeLessThan(1e-5);
    expect(Math.abs(point.x - x)).toBeLessThan(1e-5);
    expect(Math.abs(point.phi / RAD - top)).toBeLessThan(1e-4);
    expect(Math.abs(point.t - T0)).toBeLessThan(1e-12);
  });
});

describe("heavy line: critical angle", () => {
  // cos φc = [−w/R + √((w/R)² + 4)]/2, R the normal drag at right angles (Pode 1951, DTMB 687; Berteaux 1976).
  const rows: readonly (readonly [number, number])[] = [
    [0.05, 12.7578],
    [0.1, 17.9642],
    [0.2, 25.1784],
    [0.5, 38.6683],
    [1, 51.8273],
    [2, 65.5302],
    [5, 78.8965],
    [10, 84.3173],
  ];
  test.each(rows)("w/R = %f", (ratio, angle) => {
    const water = { density: rho, viscosity: 1e-3, gravity: 9.80665 };
    const R = 0.5 * rho * 1.2 * nylon.diameter;
    const loads = lineLoads(nylon, water, 1, {
      normalDrag: () => 1.2,
      tangentialDrag: 0,
      wetWeight: ratio * R,
    });
    // A free lower end has almost no tension: the line lies at the critical angle at once, and keeps it. From another
    // angle it comes back to it.
    const { point } = followLine(loads, 1e-3, (angle + 3) * RAD, 5, null, null);
    expect(Math.abs(point.phi / RAD - angle)).toBeLessThan(0.01);
  });
});

describe("line with weight, tangential drag and Reynolds-dependent normal drag", () => {
  // Rows: RK45 at rtol 1e-10 with Cn = Cheng (2013) of Re_n, Ct = 0.01 on the wetted area; ρ 998.2, μ 1.002e-3 (20 °C).
  // Asked for: 1 %; the rows' own digits are reached within 0.1 % (their viscosity is not printed).
  const rows = [
    { density: 1140, d: 0.25, U: 1.0, T0: 0.5, phi: 45, x: 18.9215, depth: 5.6204, top: 7.211, T: 0.5709 },
    { density: 1140, d: 0.25, U: 1.5, T0: 1.0, phi: 45, x: 18.9822, depth: 5.4344, top: 6.982, T: 1.1599 },
    { density: 1140, d: 0.25, U: 0.5, T0: 0.2, phi: 30, x: 19.2083, depth: 5.1838, top: 8.105, T: 0.2185 },
    { density: 1780, d: 0.25, U: 1.0, T0: 0.5, phi: 45, x: 18.9096, depth: 5.6739, top: 7.482, T: 0.5725 },
    { density: 1780, d: 0.25, U: 1.5, T0: 1.0, phi: 45, x: 18.9767, depth: 5.4606, top: 7.116, T: 1.1615 },
    { density: 1780, d: 0.25, U: 0.5, T0: 0.2, phi: 30, x: 19.1726, depth: 5.3426, top: 8.898, T: 0.22 },
    { density: 970, d: 0.12, U: 1.0, T0: 0.5, phi: 45, x: 18.2584, depth: 7.5475, top: 11.773, T: 0.5315 },
    { density: 970, d: 0.12, U: 1.5, T0: 1.0, phi: 45, x: 18.3028, depth: 7.4462, top: 11.676, T: 1.0713 },
    { density: 970, d: 0.12, U: 0.5, T0: 0.2, phi: 30, x: 18.9008, depth: 6.2829, top: 11.386, T: 0.2084 },
  ];
  test.each(rows)("ρ $density, $U m/s", ({ density, d, U, T0, phi, x, depth, top, T }) => {
    const loads = lineLoads(
      { ...nylon, density, diameter: d / 1000 },
      { density: rho, viscosity: 1.002e-3, gravity: 9.80665 },
      U,
      { tangentialDrag: 0.01 },
    );
    const { point } = followLine(loads, T0, phi * RAD, 20, null, null);
    expect(Math.abs(point.z / depth - 1)).toBeLessThan(1e-3);
    expect(Math.abs(point.x / x - 1)).toBeLessThan(1e-3);
    expect(Math.abs(point.phi / RAD / top - 1)).toBeLessThan(3e-3);
    expect(Math.abs(point.t / T - 1)).toBeLessThan(1e-3);
  });
});

describe("catenary", () => {
  test("hanging from level: sag of a textbook catenary", () => {
    // y = a cosh(x/a), s = a sinh(x/a): a = 10 m, x = 5 m → rise a(cosh 0.5 − 1) = 1.27625965 m, length 5.21095305 m
    // (closed form).
    const w = 0.02;
    const T = w * 10;
    expect(catenaryRise(T, 0, w, 5.21095305)).toBeCloseTo(1.27625965, 7);
    expect(catenaryRun(T, 0, w, 5.21095305)).toBeCloseTo(5, 7);
  });
  test("without weight it is straight", () => {
    expect(catenaryRise(1, 0.3, 0, 7)).toBeCloseTo(7 * Math.sin(0.3), 12);
    expect(catenaryRun(1, 0.3, 0, 7)).toBeCloseTo(7 * Math.cos(0.3), 12);
  });
  test("still water: the wet line is a catenary of its wet weight", () => {
    // Without speed only weight acts: T cos φ stays, depth and distance follow the closed form to 1e-4 m.
    const water = { density: rho, viscosity: 1e-3, gravity: 9.80665 };
    const line = { ...nylon, density: 1780, diameter: 0.285e-3 };
    const loads = lineLoads(line, water, 0);
    const w = (1780 - rho) * 9.80665 * (Math.PI / 4) * 0.285e-3 ** 2;
    const { point } = followLine(loads, 0.01, 0.2, 12, null, null);
    const H = 0.01 * Math.cos(0.2);
    const t = Math.tan(0.2);
    const t1 = t + (w * 12) / H;
    expect(Math.abs(point.z - (H / w) * (Math.hypot(1, t1) - Math.hypot(1, t)))).toBeLessThan(1e-4);
    expect(Math.abs(point.x - (H / w) * (Math.asinh(t1) - Math.asinh(t)))).toBeLessThan(1e-4);
  });
});

describe("from the eye to the rod tip", () => {
  const water = { density: rho, viscosity: 1.002e-3, gravity: 9.80665 };
  test("the rest of the line gains just the rod tip's height, and the parts add up", () => {
    const tackle = { line: nylon, lineOut: 25, rodTip: 1 };
    const line = steadyLine(tackle, water, 1, 0.3, 50 * RAD);
    const last = line.points.at(-1);
    expect(line.meetsRod).toBe(true);
    expect(last?.z).toBeCloseTo(line.depth + 1, 6);
    expect(last?.x).toBeCloseTo(line.reach, 9);
    let length = 0;
    line.points.forEach((p, i) => {
      const before = line.points[i - 1];
      if (before) length += Math.hypot(p.x - before.x, p.z - before.z);
    });
    // Chords are a little shorter than the arc.
    expect(length).toBeGreaterThan(24.8);
    expect(length).toBeLessThanOrEqual(25.0001);
  });
  test("a line too flat to reach the rod tip does not meet it", () => {
    expect(steadyLine({ line: nylon, lineOut: 10, rodTip: 2 }, water, 1, 5, 5 * RAD).meetsRod).toBe(false);
  });
  test("no tension is refused with its value", () => {
    expect(() => steadyLine({ line: nylon, lineOut: 10, rodTip: 1 }, water, 1, 0, 0.3)).toThrow(
      /tension above 0/,
    );
  });
});

describe("drag along the line", () => {
  it("is two to three times the friction of a flat plate of its length, as for thin cylinders in a towing tank", () => {
    // ASME FEDSM 2002, Proc. vol. 36150, p. 1123: cylinders of 0.89 and 2.5 mm, 30 to 150 m long. Plate: ITTC 1957.
    for (const [length, speed] of [
      [15, 1],
      [20, 1],
      [20, 0.8],
    ] as const) {
      const water = { density: rho, viscosity: 1e-3, gravity: 9.80665 };
      const digits = Math.log10((speed * length * rho) / water.viscosity) - 2;
      const plate = 0.075 / (digits * digits);
      const perMetre = lineLoads(nylon, water, speed).tangential;
      const coefficient = perMetre / (0.5 * rho * speed * speed * Math.PI * nylon.diameter);
      expect(coefficient / plate).toBeGreaterThan(2);
      expect(coefficient / plate).toBeLessThan(3);
    }
  });
});
