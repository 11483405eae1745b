import type { Edges } from "../../src/model/shape";

/** A body of revolution of radius r(x), x aft of the nose; smooth between the stations in `joints`. m. */
function revolution(length: number, joints: readonly number[], radius: (x: number) => number): Edges {
  const at = (phi: number): number => Math.max(0, radius((length * (1 - Math.cos(phi))) / 2));
  const phi = (x: number): number => Math.acos(1 - (2 * x) / length);
  return {
    length,
    breaks: [0, ...joints.map(phi), Math.PI],
    top: at,
    bottom: (p) => -at(p),
    halfBreadth: at,
    widest: () => 0,
    exponentAbove: () => 2,
    exponentBelow: () => 2,
  };
}

const FOOT = 0.3048;

/**
 * Radius (ft) of the bare DARPA SUBOFF hull at x ft from the nose.
 * Source: Groves, Huang & Chang 1989, DTRC/SHD-1298-01 (AD-A210642), Table 1.
 */
export function suboffRadius(x: number): number {
  const R = 5 / 6;
  if (x <= 10 / 3) {
    const b = 0.3 * x - 1;
    const f = 1.126395101 * x * b ** 4 + 0.442874707 * x * x * b ** 3 + 1 - b ** 4 * (1.2 * x + 1);
    return R * Math.max(0, f) ** (1 / 2.1);
  }
  if (x <= 10.645833) return R;
  if (x <= 13.979167) {
    const rh = 0.1175;
    const K0 = 10;
    const K1 = 44.6244;
    const s = (13.979167 - x) / 3.333333;
    return (
      R *
      Math.sqrt(
        rh * rh +
          rh * K0 * s ** 2 +
          (20 - 20 * rh * rh - 4 * rh * K0 - K1 / 3) * s ** 3 +
          (-45 + 45 * rh * rh + 6 * rh * K0 + K1) * s ** 4 +
          (36 - 36 * rh * rh - 4 * rh * K0 - K1) * s ** 5 +
          (-10 + 10 * rh * rh + rh * K0 + K1 / 3) * s ** 6,
      )
    );
  }
  return 0.1175 * R * Math.sqrt(Math.max(0, 1 - (3.2 * x - 44.733333) ** 2));
}

export const suboff = (): Edges =>
  revolution(
    14.291667 * FOOT,
    [10 / 3, 10.645833, 13.979167].map((x) => x * FOOT),
    (x) => suboffRadius(x / FOOT) * FOOT,
  );

/**
 * The Myring hull of the REMUS vehicle (m). Source: Myring 1976, Aeronautical Quarterly 27(3):186–194, with the
 * parameters of Prestero 2001, MIT/WHOI thesis, Table 2.1.
 */
export function remus(): Edges {
  const a = 0.191;
  const aOff = 0.0165;
  const b = 0.654;
  const c = 0.541;
  const cOff = 0.0368;
  const d = 0.191;
  const theta = 0.436;
  const lf = a + b - aOff;
  const length = lf + c - cOff;
  const radius = (x: number): number => {
    if (x < a - aOff) return (d / 2) * Math.sqrt(1 - ((x + aOff - a) / a) ** 2);
    if (x <= lf) return d / 2;
    const t = x - lf;
    return (
      d / 2 -
      ((3 * d) / (2 * c * c) - Math.tan(theta) / c) * t * t +
      (d / c ** 3 - Math.tan(theta) / c ** 2) * t ** 3
    );
  };
  return revolution(length, [a - aOff, lf], radius);
}
