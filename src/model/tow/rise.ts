import { newton } from "../base";
import type { Bait } from "../bait";
import { accelerations, type Craft, type CraftOptions, type State, type Surroundings } from "../forces";
import { restTrim } from "../statics";
import { Crafts } from "./attitude";
import type { TerminalRise } from "./types";

const STEP = 1 / 240;
const LIMIT = 300;
const CENTIDEGREE = (0.01 * Math.PI) / 180;

/** Classical Runge–Kutta step of the free body; `s` is advanced in place. */
function rk4(craft: Craft, around: Surroundings, s: State, h: number): void {
  type Rate = readonly [number, number, number, number, number, number];
  const rate = (p: State): Rate => {
    const [du, dw, dq] = accelerations(craft, p, around);
    const sin = Math.sin(p.pitch);
    const cos = Math.cos(p.pitch);
    return [du, dw, dq, p.q, p.u * cos - p.w * sin, p.u * sin + p.w * cos];
  };
  const moved = (k: Rate, f: number): State => ({
    u: s.u + f * k[0],
    w: s.w + f * k[1],
    q: s.q + f * k[2],
    pitch: s.pitch + f * k[3],
    X: s.X + f * k[4],
    Z: s.Z + f * k[5],
  });
  const k1 = rate(s);
  const k2 = rate(moved(k1, h / 2));
  const k3 = rate(moved(k2, h / 2));
  const k4 = rate(moved(k3, h));
  const mean = (i: 0 | 1 | 2 | 3 | 4 | 5) => (h / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
  s.u += mean(0);
  s.w += mean(1);
  s.q += mean(2);
  s.pitch += mean(3);
  s.X += mean(4);
  s.Z += mean(5);
}

/** Carries a state from one craft's G to another's when the loose balls have rolled to another side. */
function changeCraft(s: State, from: Craft, to: Craft): void {
  const dx = to.rigid.G.x - from.rigid.G.x;
  const dz = to.rigid.G.z - from.rigid.G.z;
  s.u -= s.q * dz;
  s.w += s.q * dx;
  s.X += dx * Math.cos(s.pitch) - dz * Math.sin(s.pitch);
  s.Z += dx * Math.sin(s.pitch) + dz * Math.cos(s.pitch);
}

/**
 * Terminal rise or sink: the steady (V_Z, V_X, θ) at which all forces and the moment vanish, as the end of a release
 * from rest at the rest trim under water (until over one second the speed changes by less than 0.1 % and pitch by less
 * than 0.01°, at most 300 s), refined by Newton on the three equations (docs/model.md §5). No line. Loose balls lie at
 * the low end of the pitch in question.
 */
export function terminalRise(
  bait: Bait,
  around: Surroundings,
  options: Partial<CraftOptions> = {},
): TerminalRise {
  const deep: Surroundings = { ...around, surface: false, current: { x: 0, z: 0 }, depth: Infinity };
  const crafts = new Crafts(bait, options);
  const rest = restTrim(bait);
  const s: State = { u: 0, w: 0, q: 0, pitch: rest.pitch ?? 0, X: 0, Z: 0 };
  let craft = crafts.at(s.pitch);
  const perSecond = Math.round(1 / STEP);
  let settled = false;
  let lastSpeed = 0;
  let lastPitch = s.pitch;
  for (let second = 0; second < LIMIT && !settled; second++) {
    for (let i = 0; i < perSecond; i++) {
      rk4(craft, deep, s, STEP);
      const now = crafts.at(s.pitch);
      if (now !== craft) {
        changeCraft(s, craft, now);
        craft = now;
      }
    }
    const speed = Math.hypot(s.u, s.w);
    if (!Number.isFinite(speed + s.pitch))
      throw new RangeError(`The release of ${bait.spec.name} ran away after ${second + 1} s.`);
    settled = Math.abs(speed - lastSpeed) < 1e-3 * speed && Math.abs(s.pitch - lastPitch) < CENTIDEGREE;
    lastSpeed = speed;
    lastPitch = s.pitch;
  }
  const residual = ([vz, vx, pitch]: readonly number[]): number[] => {
    const [VZ, VX, th] = [vz ?? NaN, vx ?? NaN, pitch ?? NaN];
    const cos = Math.cos(th);
    const sin = Math.sin(th);
    return [
      ...accelerations(
        craft,
        { u: VX * cos + VZ * sin, w: VZ * cos - VX * sin, q: 0, pitch: th, X: 0, Z: 0 },
        deep,
      ),
    ];
  };
  const cos = Math.cos(s.pitch);
  const sin = Math.sin(s.pitch);
  const run = [s.u * sin + s.w * cos, s.u * cos - s.w * sin, s.pitch] as const;
  // Sizes: some cm/s and some degrees; accelerations of 1 m/s² and 100 rad/s².
  const polished = newton(residual, run, [0.05, 0.05, 0.1], [1, 1, 100], 1e-9);
  const [speed = NaN, drift = NaN, pitch = NaN] = polished.x;
  const near =
    polished.converged &&
    Math.hypot(speed - run[0], drift - run[1]) < 0.02 * Math.hypot(run[0], run[1]) + 1e-4 &&
    Math.abs(pitch - run[2]) < 0.02;
  const steady = settled && near;
  return {
    speed: steady ? speed : run[0],
    drift: steady ? drift : run[1],
    pitch: steady ? pitch : run[2],
    steady,
    why: !settled
      ? "it did not come to a steady rise within 300 s"
      : near
        ? null
        : "the steady state could not be refined; the figures are the run's",
  };
}
