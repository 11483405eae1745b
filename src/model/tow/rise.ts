import { cos, hypot, newton, sin, rotate } from "../base";
import type { Bait } from "../bait";
import { accelerations, type Swimmer, type SwimmerOptions, type State, type Surroundings } from "../forces";
import { restTrim } from "../statics";
import { Swimmers } from "./attitude";
import type { TerminalRise } from "./types";

const STEP = 1 / 240;
const LIMIT = 300;
const CENTIDEGREE = (0.01 * Math.PI) / 180;

/** Classical Runge–Kutta step of the free body; changes `s` in place. */
function rk4(swimmer: Swimmer, around: Surroundings, s: State, h: number): void {
  type Rate = readonly [number, number, number, number, number, number];
  const rate = (p: State): Rate => {
    const [du, dw, dq] = accelerations(swimmer, p, around);
    const s = sin(p.pitch);
    const c = cos(p.pitch);
    return [du, dw, dq, p.q, p.u * c - p.w * s, p.u * s + p.w * c];
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

/**
 * Moves a state from one swimmer's G to another's when the loose balls have rolled to another side: the bait stays where it
 * is and keeps its motion.
 */
export function changeSwimmer(s: State, from: Pick<Swimmer, "rigid">, to: Pick<Swimmer, "rigid">): void {
  const dx = to.rigid.G.x - from.rigid.G.x;
  const dz = to.rigid.G.z - from.rigid.G.z;
  s.u -= s.q * dz;
  s.w += s.q * dx;
  s.X += dx * cos(s.pitch) - dz * sin(s.pitch);
  s.Z += dx * sin(s.pitch) + dz * cos(s.pitch);
}

/**
 * A step of a release: changes `s` in place. Where the new pitch makes the loose balls roll to another side, they lie there
 * at the step's end. Gives the swimmer with the balls on that side.
 */
export function releaseStep(
  swimmers: Swimmers,
  swimmer: Swimmer,
  around: Surroundings,
  s: State,
  h: number,
): Swimmer {
  rk4(swimmer, around, s, h);
  const now = swimmers.at(s.pitch);
  if (now !== swimmer) changeSwimmer(s, swimmer, now);
  return now;
}

/**
 * Terminal rise or sink: the steady (V_Z, V_X, θ) at which all forces and the moment vanish, without a line. It is the end
 * of a release from rest at the rest trim under water (until, over one second, the speed changes by less than 0.1 % and the
 * pitch by less than 0.01°; at most 300 s), refined by Newton's method on the three equations (docs/model.md §5). Loose
 * balls lie at the low end of the pitch in question.
 */
export function terminalRise(
  bait: Bait,
  around: Surroundings,
  options: Partial<SwimmerOptions> = {},
): TerminalRise {
  const deep: Surroundings = { ...around, surface: false, current: { x: 0, z: 0 }, depth: Infinity };
  const swimmers = new Swimmers(bait, options);
  const rest = restTrim(bait);
  const s: State = { u: 0, w: 0, q: 0, pitch: rest.pitch ?? 0, X: 0, Z: 0 };
  let swimmer = swimmers.at(s.pitch);
  const perSecond = Math.round(1 / STEP);
  let settled = false;
  let lastSpeed = 0;
  let lastPitch = s.pitch;
  for (let second = 0; second < LIMIT && !settled; second++) {
    for (let i = 0; i < perSecond; i++) swimmer = releaseStep(swimmers, swimmer, deep, s, STEP);
    const speed = hypot(s.u, s.w);
    if (!Number.isFinite(speed + s.pitch))
      throw new RangeError(`The release of ${bait.spec.name} ran away after ${second + 1} s.`);
    settled = Math.abs(speed - lastSpeed) < 1e-3 * speed && Math.abs(s.pitch - lastPitch) < CENTIDEGREE;
    lastSpeed = speed;
    lastPitch = s.pitch;
  }
  const residual = ([vz, vx, pitch]: readonly number[]): number[] => {
    const [VZ, VX, th] = [vz ?? NaN, vx ?? NaN, pitch ?? NaN];
    const s = sin(th);
    const c = cos(th);
    return [
      ...accelerations(
        swimmer,
        { u: VX * c + VZ * s, w: VZ * c - VX * s, q: 0, pitch: th, X: 0, Z: 0 },
        deep,
      ),
    ];
  };
  const way = rotate({ x: s.u, z: s.w }, sin(s.pitch), cos(s.pitch));
  const run = [way.z, way.x, s.pitch] as const;
  // Scales of the unknowns: some cm/s and some degrees; of the accelerations: 1 m/s² and 100 rad/s².
  const polished = newton(residual, run, [0.05, 0.05, 0.1], [1, 1, 100], 1e-9);
  const [speed = NaN, drift = NaN, pitch = NaN] = polished.x;
  const near =
    polished.converged &&
    hypot(speed - run[0], drift - run[1]) < 0.02 * hypot(run[0], run[1]) + 1e-4 &&
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
