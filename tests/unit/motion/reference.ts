// An independent reckoning of a bait with hanging hooks: the equations of motion of all bodies with the forces in their
// pins as unknowns, solved together at every moment, by classical Runge–Kutta at a fine step. Nothing of the room under test
// is in it.
import { solveLinear, type Sym3 } from "../../../src/model/base";
import type { HangingHook } from "../../../src/model/motion";

export interface Body2 {
  readonly mass: Sym3;
  /** Forces on the bait, body axes about G, without inertia terms. */
  force(u: number, w: number, q: number, pitch: number): readonly [number, number, number];
  readonly hooks: readonly HangingHook[];
  /** kg/m³, m/s² */
  readonly density: number;
  readonly gravity: number;
}

/** X, Z, pitch, VX, VZ, q of the bait, then angle and its rate of each hook. */
export type All = number[];

function rates({ mass: M, force, hooks, density, gravity }: Body2, y: All): All {
  const [, , pitch = NaN, VX = NaN, VZ = NaN, q = NaN] = y;
  const s = Math.sin(pitch);
  const c = Math.cos(pitch);
  const u = VX * c + VZ * s;
  const w = VZ * c - VX * s;
  const pu = M.a11 * u + M.a13 * w + M.a15 * q;
  const pw = M.a13 * u + M.a33 * w + M.a35 * q;
  const f = force(u, w, q, pitch);
  // Unknowns: du, dw, dq; of each hook its angular acceleration and the pin's force on the bait (X, Z, world).
  const n = 3 + 3 * hooks.length;
  const A = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const b = new Array<number>(n).fill(0);
  const set = (row: number, entries: readonly (readonly [number, number])[], right: number): void => {
    for (const [column, value] of entries) A[row]![column]! += value;
    b[row]! += right;
  };
  set(
    0,
    [
      [0, M.a11],
      [1, M.a13],
      [2, M.a15],
    ],
    f[0] + q * pw,
  );
  set(
    1,
    [
      [0, M.a13],
      [1, M.a33],
      [2, M.a35],
    ],
    f[1] - q * pu,
  );
  set(
    2,
    [
      [0, M.a15],
      [1, M.a35],
      [2, M.a55],
    ],
    f[2] - (u * pw - w * pu),
  );
  hooks.forEach((hook, i) => {
    const angle = y[6 + 2 * i]!;
    const spin = y[7 + 2 * i]!;
    const k = 3 + 3 * i;
    // G to eye, eye to hook's centre, world axes
    const rx = hook.at.x * c - hook.at.z * s;
    const rz = hook.at.x * s + hook.at.z * c;
    const hx = hook.centre * Math.sin(angle);
    const hz = -hook.centre * Math.cos(angle);
    // the pin's force on the bait
    set(
      0,
      [
        [k + 1, -c],
        [k + 2, -s],
      ],
      0,
    );
    set(
      1,
      [
        [k + 1, s],
        [k + 2, -c],
      ],
      0,
    );
    set(
      2,
      [
        [k + 1, rz],
        [k + 2, -rx],
      ],
      0,
    );
    const vx = VX - q * rz - spin * hz;
    const vz = VZ + q * rx + spin * hx;
    const drag = 0.5 * density * hook.dragArea * Math.hypot(vx, vz);
    const fx = -drag * vx;
    const fz = -drag * vz - gravity * (hook.mass - density * hook.displaced);
    // m·a = f − pin; a = R(du − q w, dw + q u) + dq×r − q² r + angle″×h − spin² h
    const bx = -q * w * c - q * u * s - q * q * rx - spin * spin * hx;
    const bz = -q * w * s + q * u * c - q * q * rz - spin * spin * hz;
    const m = hook.mass;
    set(
      k,
      [
        [0, m * c],
        [1, -m * s],
        [2, -m * rz],
        [k, -m * hz],
        [k + 1, 1],
      ],
      fx - m * bx,
    );
    set(
      k + 1,
      [
        [0, m * s],
        [1, m * c],
        [2, m * rx],
        [k, m * hx],
        [k + 2, 1],
      ],
      fz - m * bz,
    );
    // about the hook's centre: I·angle″ = (−h) × (−pin)
    set(
      k + 2,
      [
        [k, hook.inertia],
        [k + 1, hz],
        [k + 2, -hx],
      ],
      0,
    );
  });
  const x = solveLinear(A, b);
  const ax = x[0]! - q * w;
  const az = x[1]! + q * u;
  return [
    VX,
    VZ,
    q,
    ax * c - az * s,
    ax * s + az * c,
    x[2]!,
    ...hooks.flatMap((_, i) => [y[7 + 2 * i]!, x[3 + 3 * i]!]),
  ];
}

/** One Runge–Kutta step. */
export function rungeKutta(body: Body2, y: All, h: number): All {
  const moved = (k: All, f: number): All => y.map((v, i) => v + f * k[i]!);
  const k1 = rates(body, y);
  const k2 = rates(body, moved(k1, h / 2));
  const k3 = rates(body, moved(k2, h / 2));
  const k4 = rates(body, moved(k3, h));
  return y.map((v, i) => v + (h / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!));
}
