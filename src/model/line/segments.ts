import { cylinderDrag } from "../forces";
import type { EyeMotion, MovingLine, RodEnd } from "./moving";
import { TANGENTIAL_DRAG, type LineWater } from "./steady";
import { MATERIAL_DAMPING } from "./tether";
import type { LineSpec } from "./types";

/** Transverse added mass of a cylinder, share of the water it displaces: 1 (Lamb 1932, art. 68; Newman 1977, §4.4). */
const ADDED_MASS = 1;

/**
 * Air at 15 °C and one atmosphere: density kg/m³, dynamic viscosity Pa·s (International Standard Atmosphere, ISO 2533:1975;
 * from memory). Its drag is nothing in a steady tow, and what calms the piece that hangs from the rod tip.
 */
const AIR = { density: 1.225, viscosity: 1.789e-5 };

/** Segments at the start. */
export const SEGMENTS = 24;

/** Nodes that a line paid out far can have. */
const CAPACITY = 192;

/** The segment at the rod tip joins the next below this share of its planned length, and is split above this one. */
const JOIN = 0.25;
const SPLIT = 1.6;

/**
 * A step is parted so that turning a segment changes its neighbours' turn by less than itself: h²·T/(ρ_l A L²) below this.
 * Only then do the passes over directions come to rest; hard jerks alone ask for it.
 */
const TURNS = 1;
const MOST_PARTS = 16;

/**
 * While the rod tip moves, or the pull at the eye changes fast from step to step, and for a while after, the line takes this many
 * steps in one: what it does then is soon over, and a millisecond in it is a degree of the bait's pitch.
 */
const LIVELY = { parts: 4, for: 0.3, share: 0.05, newton: 1e-3 };

/** Pull at which a reel that gives line freely gives it, in weights of the line that hangs from the rod tip. Common practice, no source. */
const GIVES_AT = 1.5;

/** Passes over directions and over which segments pull. */
const MOST_PASSES = 8;

/** A pass less where turning a segment further would change its tension by less than this share, or this many N. */
const ALIKE = { share: 1e-4, newton: 1e-6 };

/** Points given for drawing. */
const DRAWN = 33;

export interface SegmentOptions {
  /** m/s, world frame. */
  readonly current?: { readonly x: number; readonly z: number };
  /** Depth of the bottom, m; the line lies on it. Default: none. */
  readonly depth?: number;
  /** Segments at the start, at least 4; default 24. */
  readonly segments?: number;
  /** Equal lengths instead of lengths that grow from the bait up. */
  readonly equal?: boolean;
  /** Line's steps in one of the caller's. */
  readonly substeps?: number;
  /** Places of the nodes at the start, eye to rod tip, spread by length; default a straight line. */
  readonly start?: readonly { readonly x: number; readonly z: number }[];
}

/**
 * ½ρ d C_n(Re) v per metre and per m/s, as a table over v^¼: the cylinder curve rises as v^¼ from rest, so that in this
 * variable it is smooth, and straight pieces hold it to 1e-5. Above the table the curve itself.
 */
function normalDragTable(
  line: LineSpec,
  fluid: { readonly density: number; readonly viscosity: number },
): (speed: number) => number {
  const nu = fluid.viscosity / fluid.density;
  const direct = (v: number): number =>
    v < 1e-9 ? 0 : 0.5 * fluid.density * line.diameter * cylinderDrag((v * line.diameter) / nu) * v;
  const n = 1024;
  const top = 1.8; // 10.5 m/s
  const table = new Float64Array(n + 2);
  for (let i = 0; i <= n + 1; i++) table[i] = direct(((top * i) / n) ** 4);
  const scale = n / top;
  return (v) => {
    const y = Math.sqrt(Math.sqrt(v)) * scale;
    if (!(y < n)) return direct(v);
    const i = y | 0;
    const a = table[i] as number;
    return a + (y - i) * ((table[i + 1] as number) - a);
  };
}

/**
 * A line of segments with weight, drag, added mass and elasticity, from tie eye to rod tip (docs/model.md §7, 'Moving line').
 *
 * Masses are lumped at nodes; each segment between two of them is a spring k = EA/L that pulls but cannot push. Its nodes'
 * velocities at the step's end, with drag linear in them (½ρ C_n d|v_n|·v_n⁺ and alike along the line, so that a steady state
 * has its exact drag however light the node), hold the tensions of both neighbours; with tension taken at the step's end,
 * T_i = k_i (ℓ_i⁺ − L_i) + c_i dℓ_i⁺/dt (Hairer & Wanner 1996, §IV: implicit Euler, stable at any stiffness), this is one
 * tridiagonal system for all T, the tie eye with its inverse mass in it. Segments that would push are taken out, those that
 * would be stretched put back, and directions turned to those of the step's end, until nothing changes.
 *
 * Line wound in or drawn off goes through the segment at the rod tip, which joins its neighbour when short and is split when
 * long: nodes are bound to the line, so its drag and inertia are those of the line itself. The half segment next to the eye
 * pulls on it with its drag and weight; its inertia, some hundredths of a gram, is left out.
 *
 * Between calls the nodes stand at t + h/2 of the last one.
 */
export function segmentedLine(
  spec: LineSpec,
  water: LineWater,
  options: SegmentOptions = {},
): MovingLine & {
  /** Tensions from the eye up, N; for tests. */
  tensions(): Float64Array;
  /** Unstretched length in all, m. */
  length(): number;
  /** Nodes, eye and rod tip included, at the step's end. */
  nodes(): { x: number; z: number }[];
} {
  const first = options.segments ?? SEGMENTS;
  if (!Number.isInteger(first) || first < 4 || first > CAPACITY / 2)
    throw new RangeError(`A line needs 4 to ${CAPACITY / 2} segments, not ${first}.`);
  const substeps = options.substeps ?? 1;
  const cx = options.current?.x ?? 0;
  const cz = options.current?.z ?? 0;
  const bottom = -(options.depth ?? Infinity);
  const { density: rho, gravity: g } = water;
  const section = (Math.PI * spec.diameter ** 2) / 4;
  const lineMass = spec.density * section;
  const waterMass = rho * section;
  const normalDrag = normalDragTable(spec, water);
  const airDrag = normalDragTable(spec, AIR);
  const tangential = 0.5 * rho * Math.PI * spec.diameter * TANGENTIAL_DRAG;

  const make = (): Float64Array => new Float64Array(CAPACITY + 1);
  // Nodes 0 (eye) to n (rod tip)
  const [x, z, u, w] = [make(), make(), make(), make()];
  // velocities at the step's end, first without tension; inverse masses with drag
  const [us, ws, xx, xz, zz] = [make(), make(), make(), make(), make()];
  const [un, wn] = [make(), make()];
  // speed along and across the line at the step's start
  const [slides, crosses] = [make(), make()];
  // Segments 0 to n − 1: unstretched length, tension, direction, share under water, system
  const [L, T, ex, ez, wet] = [make(), make(), make(), make(), make()];
  const [diagonal, beside, right, sweep] = [make(), make(), make(), make()];
  /** 1: it pulls; 0: it is slack; 2: at the rod tip, with the reel giving line at `gives`. */
  const pulls = new Uint8Array(CAPACITY + 1);
  let n = 0;
  let mean = 0;
  let eyeX = 0;
  let eyeZ = 0;
  /** Rate of the unstretched length at the rod tip, m/s. */
  let winding = 0;
  /** Pull at which a free reel gives line, N; Infinity where it does not. */
  let gives = Infinity;
  /** Force on the eye in a step: drag and weight of the half segment next to it, and half the pulls at start and end. */
  const half = { x: 0, z: 0 };
  /** Pull at the eye at the end of the last step, N. */
  const atStart = { x: 0, z: 0 };
  /** The eye's velocity at the last call. */
  let lastVx = 0;
  let lastVz = 0;
  let lastTension = 0;
  /** Seconds for which the line still takes more steps. */
  let lively = 0;
  /** What it gained since. */
  const gain = { x: 0, z: 0 };

  const planned = (i: number): number =>
    options.equal ? mean : mean * (1 / 3 + (4 / 3) * Math.min(1, i / (first - 1)));

  function start(eye: EyeMotion, rod: RodEnd): void {
    n = first;
    const path = options.start ?? (rod.free ? laid(eye, rod) : [eye, rod]);
    const along = [0];
    path.forEach((p, i) => {
      const before = path[i - 1];
      if (before) along.push((along[i - 1] as number) + Math.hypot(p.x - before.x, p.z - before.z));
    });
    const whole = along[along.length - 1] as number;
    // Laid out on the water there is more of it than the straight way; given places of a test are stretched or slack as they are.
    const length = options.start ? rod.length : Math.max(rod.length, whole);
    mean = length / first;
    let s = 0;
    let j = 1;
    for (let i = 0; i <= n; i++) {
      const at = (s / length) * whole;
      while (j < path.length - 1 && (along[j] as number) < at) j++;
      const a = path[j - 1] as { x: number; z: number };
      const b = path[j] as { x: number; z: number };
      const piece = (along[j] as number) - (along[j - 1] as number);
      const f = piece > 0 ? (at - (along[j - 1] as number)) / piece : 0;
      x[i] = a.x + f * (b.x - a.x);
      z[i] = a.z + f * (b.z - a.z);
      const share = s / length;
      u[i] = eye.vx + share * (rod.vx - eye.vx);
      w[i] = eye.vz + share * (rod.vz - eye.vz);
      L[i] = planned(i);
      pulls[i] = 1;
      s += planned(i);
    }
  }

  /**
   * Where a line lies that the reel gives freely: on the water, and up to the rod tip as the catenary that its weight and
   * the reel's slight hold make of it: H = T_tip − w z, z = a (cosh(x/a) − 1), a = H/w.
   */
  function laid(eye: EyeMotion, rod: RodEnd): { x: number; z: number }[] {
    const a = GIVES_AT * Math.max(0.5, rod.z) - rod.z;
    const dx = rod.x - eye.x;
    const foot = rod.z > 0 ? a * Math.acosh(1 + rod.z / a) : 0;
    const run = Math.min(3 * Math.max(0, -eye.z), dx / 2);
    if (!(rod.z > 0) || !(foot < dx - run) || eye.z > 0) return [eye, rod];
    const path: { x: number; z: number }[] = [eye, { x: eye.x + run, z: 0 }];
    const pieces = 40;
    for (let i = 0; i <= pieces; i++) {
      const x = (foot * i) / pieces;
      path.push({ x: rod.x - foot + x, z: a * (Math.cosh(x / a) - 1) });
    }
    return path;
  }

  /** Takes the segment at the rod tip to its new length, and joins or splits it. */
  function pay(grown: number): void {
    L[n - 1] = (L[n - 1] as number) + grown;
    while (n > 2 && (L[n - 1] as number) < JOIN * planned(n - 1)) {
      // the node that has come to the rod tip is the rod tip
      L[n - 2] = (L[n - 2] as number) + (L[n - 1] as number);
      pulls[n - 2] = 1;
      copyNode(n, n - 1);
      n--;
    }
    while ((L[n - 1] as number) > SPLIT * planned(n - 1) && n < CAPACITY) {
      const length = L[n - 1] as number;
      const f = planned(n - 1) / length;
      copyNode(n, n + 1);
      x[n] = (x[n - 1] as number) + f * ((x[n + 1] as number) - (x[n - 1] as number));
      z[n] = (z[n - 1] as number) + f * ((z[n + 1] as number) - (z[n - 1] as number));
      u[n] = (u[n - 1] as number) + f * ((u[n + 1] as number) - (u[n - 1] as number));
      w[n] = (w[n - 1] as number) + f * ((w[n + 1] as number) - (w[n - 1] as number));
      L[n] = length * (1 - f);
      L[n - 1] = length * f;
      pulls[n] = pulls[n - 1] as number;
      pulls[n - 1] = 1;
      n++;
    }
    if (!((L[n - 1] as number) > 0))
      throw new RangeError(`The line is wound in to its end: ${(L[n - 1] as number).toFixed(3)} m are left.`);
  }

  function copyNode(from: number, to: number): void {
    x[to] = x[from] as number;
    z[to] = z[from] as number;
    u[to] = u[from] as number;
    w[to] = w[from] as number;
  }

  /**
   * Directions from node to node half a step on with the velocities of the start and half with (vx, vz). True where one
   * turned so far that its tension would feel it.
   */
  function aim(h: number, vx: Float64Array, vz: Float64Array, compare: boolean): boolean {
    let turned = false;
    const ahead = h / 2;
    for (let i = 0; i < n; i++) {
      const j = i + 1;
      const dx =
        (x[j] as number) -
        (x[i] as number) +
        ahead * ((u[j] as number) - (u[i] as number) + (vx[j] as number) - (vx[i] as number));
      const dz =
        (z[j] as number) -
        (z[i] as number) +
        ahead * ((w[j] as number) - (w[i] as number) + (vz[j] as number) - (vz[i] as number));
      const length = Math.sqrt(dx * dx + dz * dz);
      if (length === 0) continue; // keeps the direction it had
      const nx = dx / length;
      const nz = dz / length;
      if (compare) {
        const kept = nx * (ex[i] as number) + nz * (ez[i] as number);
        const off = (spec.EA / (L[i] as number)) * length * (1 - kept);
        if (off > ALIKE.share * (T[i] as number) + ALIKE.newton) turned = true;
      }
      ex[i] = nx;
      ez[i] = nz;
    }
    return turned;
  }

  /** Speeds of the nodes along and across the line as it lies. */
  function along(): void {
    for (let i = 1; i < n; i++) {
      const tx = (ex[i - 1] as number) + (ex[i] as number);
      const tz = (ez[i - 1] as number) + (ez[i] as number);
      const size = Math.sqrt(tx * tx + tz * tz) || 1;
      slides[i] = ((u[i] as number) * tx + (w[i] as number) * tz) / size;
      crosses[i] = ((w[i] as number) * tx - (u[i] as number) * tz) / size;
    }
  }

  function shareUnder(i: number): number {
    const a = z[i] as number;
    const b = z[i + 1] as number;
    if (a <= 0) return b <= 0 ? 1 : a / (a - b);
    return b >= 0 ? 0 : b / (b - a);
  }

  /** Drag and weight of the half segment next to the eye, at the eye's velocity. */
  function atEye(vx: number, vz: number): void {
    const length = (L[0] as number) / 2;
    const under = length * (wet[0] as number);
    const tx = ex[0] as number;
    const tz = ez[0] as number;
    const rx = vx - cx;
    const rz = vz - cz;
    const along = rx * tx + rz * tz;
    const nx = rx - along * tx;
    const nz = rz - along * tz;
    const drag = normalDrag(Math.sqrt(nx * nx + nz * nz)) * under;
    const skin = tangential * Math.abs(along) * along * under;
    half.x = -drag * nx - skin * tx;
    half.z = -drag * nz - skin * tz - g * (lineMass * length - waterMass * under);
  }

  /** Velocities that the nodes would have at the step's end without tension, and their inverse masses with drag. */
  function loose(h: number): void {
    for (let i = 0; i < n; i++) wet[i] = shareUnder(i);
    for (let i = 1; i < n; i++) {
      const before = (L[i - 1] as number) / 2;
      const after = (L[i] as number) / 2;
      const length = before + after;
      const under = before * (wet[i - 1] as number) + after * (wet[i] as number);
      let tx = (ex[i - 1] as number) + (ex[i] as number);
      let tz = (ez[i - 1] as number) + (ez[i] as number);
      const size = Math.sqrt(tx * tx + tz * tz);
      if (size > 1e-6) {
        tx /= size;
        tz /= size;
      } else {
        tx = ex[i] as number;
        tz = ez[i] as number;
      }
      const ui = u[i] as number;
      const wi = w[i] as number;
      const vt = ui * tx + wi * tz;
      const vn = wi * tx - ui * tz; // along (−tz, tx)
      const ct = cx * tx + cz * tz;
      const cn = cz * tx - cx * tz;
      // The speeds that drag goes with are those against the line as it lay when the node had them: against the line as it
      // will lie, what slides along a bend would seem to cross it.
      const dt = h * tangential * Math.abs((slides[i] as number) - ct) * under;
      let dn = under > 0 ? h * normalDrag(Math.abs((crosses[i] as number) - cn)) * under : 0;
      if (under < length) dn += h * airDrag(Math.abs(crosses[i] as number)) * (length - under);
      const mt = lineMass * length;
      const mn = mt + ADDED_MASS * waterMass * under;
      const fall = -h * g * (lineMass * length - waterMass * under);
      const at = 1 / (mt + dt);
      const an = 1 / (mn + dn);
      const st = (mt * vt + dt * ct + fall * tz) * at;
      const sn = (mn * vn + dn * cn + fall * tx) * an;
      us[i] = st * tx - sn * tz;
      ws[i] = st * tz + sn * tx;
      xx[i] = at * tx * tx + an * tz * tz;
      xz[i] = (at - an) * tx * tz;
      zz[i] = at * tz * tz + an * tx * tx;
    }
  }

  /** The tridiagonal system at the present directions, for all segments as if each pulled. */
  function assemble(h: number): void {
    for (let i = 0; i < n; i++) {
      const ax = ex[i] as number;
      const az = ez[i] as number;
      const k = spec.EA / (L[i] as number);
      const c = k * MATERIAL_DAMPING;
      const j = i + 1;
      const rate =
        ax * ((us[j] as number) - (us[i] as number)) + az * ((ws[j] as number) - (ws[i] as number));
      const before = ax * ((u[j] as number) - (u[i] as number)) + az * ((w[j] as number) - (w[i] as number));
      const length =
        ax * ((x[j] as number) - (x[i] as number)) +
        az * ((z[j] as number) - (z[i] as number)) +
        (h / 2) * (before + rate);
      const paid = i === n - 1 ? winding : 0;
      const stiff = (k * (h / 2) + c) * h;
      right[i] = (k * (length - (L[i] as number)) + c * (rate - paid)) / stiff;
      // W_{i+1} e_i
      const bx = (xx[i + 1] as number) * ax + (xz[i + 1] as number) * az;
      const bz = (xz[i + 1] as number) * ax + (zz[i + 1] as number) * az;
      diagonal[i] =
        1 / stiff +
        ax * bx +
        az * bz +
        (xx[i] as number) * ax * ax +
        2 * (xz[i] as number) * ax * az +
        (zz[i] as number) * az * az;
      beside[i] = i < n - 1 ? bx * (ex[i + 1] as number) + bz * (ez[i + 1] as number) : 0;
    }
  }

  /** Thomas' elimination over the segments that pull; the others have their tension given (0, or what a free reel gives at). */
  function solve(): void {
    let before = 0; // coefficient of T_{i+1} in row i − 1, after elimination
    let known = 0;
    let given = true; // row i − 1 has its tension given
    for (let i = 0; i < n; i++) {
      if (pulls[i] !== 1) {
        sweep[i] = 0;
        known = pulls[i] === 2 ? gives : 0;
        T[i] = known;
        before = 0;
        given = true;
        continue;
      }
      const link = i > 0 ? (beside[i - 1] as number) : 0;
      // row i: −link·T_{i−1} + diagonal·T_i − beside·T_{i+1} = right, with T_{i−1} = known + before·T_i
      const d = (diagonal[i] as number) - (given ? 0 : link * before);
      before = (beside[i] as number) / d;
      known = ((right[i] as number) + link * known) / d;
      given = false;
      sweep[i] = before;
      T[i] = known;
    }
    for (let i = n - 2; i >= 0; i--)
      if (pulls[i] === 1) T[i] = (T[i] as number) + (sweep[i] as number) * (T[i + 1] as number);
  }

  /** Takes out what would push, puts back what would be stretched. True where something changed. */
  function sort(): boolean {
    let changed = false;
    for (let i = 0; i < n; i++) {
      const tension = T[i] as number;
      if (pulls[i] === 1) {
        if (tension < 0) {
          pulls[i] = 0;
          changed = true;
        } else if (i === n - 1 && tension > gives) {
          pulls[i] = 2;
          changed = true;
        }
        continue;
      }
      const wanted =
        (right[i] as number) +
        (i > 0 ? (beside[i - 1] as number) * (T[i - 1] as number) : 0) +
        (i < n - 1 ? (beside[i] as number) * (T[i + 1] as number) : 0);
      if (pulls[i] === 2 ? wanted < (diagonal[i] as number) * gives || i !== n - 1 : wanted > 0) {
        pulls[i] = 1;
        changed = true;
      }
    }
    if (changed) for (let i = 0; i < n; i++) if (pulls[i] === 0) T[i] = 0;
    return changed;
  }

  /** Velocities at the step's end with the tensions. */
  function tighten(h: number): void {
    for (let i = 0; i < n; i++) {
      const below = i > 0 ? (T[i - 1] as number) : 0;
      const fx = (T[i] as number) * (ex[i] as number) - (i > 0 ? below * (ex[i - 1] as number) : 0);
      const fz = (T[i] as number) * (ez[i] as number) - (i > 0 ? below * (ez[i - 1] as number) : 0);
      un[i] = (us[i] as number) + h * ((xx[i] as number) * fx + (xz[i] as number) * fz);
      wn[i] = (ws[i] as number) + h * ((xz[i] as number) * fx + (zz[i] as number) * fz);
    }
  }

  /** Into how many parts a step must be cut for the tensions that are there. */
  function partsOf(h: number): number {
    let most = 0;
    for (let i = 0; i < n; i++) {
      const length = L[i] as number;
      const turn = (T[i] as number) / (length * length);
      if (turn > most) most = turn;
    }
    const parts = Math.ceil(h * Math.sqrt(most / (lineMass * TURNS)));
    return parts < 1 ? 1 : parts > MOST_PARTS ? MOST_PARTS : parts;
  }

  function substep(h: number, eye: EyeMotion, rodX: number, rodZ: number): void {
    pay(winding * h);
    us[n] = (rodX - (x[n] as number)) / h;
    ws[n] = (rodZ - (z[n] as number)) / h;
    xx[n] = 0;
    xz[n] = 0;
    zz[n] = 0;
    u[n] = un[n] = us[n] as number;
    w[n] = wn[n] = ws[n] as number;
    along();
    aim(h, u, w, false);
    loose(h);
    // The eye is pulled by the mean of the tensions at the step's start and end.
    atEye((u[0] as number) + gain.x / 2, (w[0] as number) + gain.z / 2);
    half.x += atStart.x / 2;
    half.z += atStart.z / 2;
    us[0] = (u[0] as number) + h * (eye.ax + eye.wxx * half.x + eye.wxz * half.z);
    ws[0] = (w[0] as number) + h * (eye.az + eye.wxz * half.x + eye.wzz * half.z);
    xx[0] = eye.wxx / 2;
    xz[0] = eye.wxz / 2;
    zz[0] = eye.wzz / 2;
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      assemble(h);
      for (let inner = 0; inner < MOST_PASSES; inner++) {
        solve();
        if (!sort()) break;
      }
      tighten(h);
      if (!aim(h, un, wn, true)) break;
    }
    for (let i = 0; i < n; i++) {
      x[i] = (x[i] as number) + (h / 2) * ((u[i] as number) + (un[i] as number));
      z[i] = (z[i] as number) + (h / 2) * ((w[i] as number) + (wn[i] as number));
      u[i] = un[i] as number;
      w[i] = wn[i] as number;
      if (i > 0 && (z[i] as number) < bottom) {
        z[i] = bottom;
        if ((w[i] as number) < 0) w[i] = 0;
      }
    }
    atStart.x = (T[0] as number) * (ex[0] as number);
    atStart.z = (T[0] as number) * (ez[0] as number);
    half.x += atStart.x / 2;
    half.z += atStart.z / 2;
    x[n] = rodX;
    z[n] = rodZ;
    if (pulls[n - 1] === 2) {
      // the free reel has given what the step drew off
      const dx = rodX - (x[n - 1] as number);
      const dz = rodZ - (z[n - 1] as number);
      const drawn = (Math.sqrt(dx * dx + dz * dz) * spec.EA) / (spec.EA + gives);
      if (drawn > (L[n - 1] as number)) pay(drawn - (L[n - 1] as number));
    }
  }

  return {
    points: DRAWN,
    pull(h, eye, rod, out) {
      if (n === 0) {
        start(eye, rod);
        lastVx = eye.vx;
        lastVz = eye.vz;
      }
      winding = rod.lengthRate;
      gives = rod.free ? GIVES_AT * lineMass * g * Math.max(0.5, rod.z) : Infinity;
      if (!rod.free && pulls[n - 1] === 2) pulls[n - 1] = 1;
      eyeX = eye.x;
      eyeZ = eye.z;
      // from t − h/2 on, with the eye where the bait really has it
      // x(t − h/2) = x − h/2·v − h²/8·a, with the acceleration that it had
      gain.x = eye.vx - lastVx;
      gain.z = eye.vz - lastVz;
      x[0] = eye.x - (h / 2) * eye.vx - (h / 8) * gain.x;
      z[0] = eye.z - (h / 2) * eye.vz - (h / 8) * gain.z;
      lastVx = eye.vx;
      lastVz = eye.vz;
      u[0] = eye.vx;
      w[0] = eye.vz;
      lively = rod.vx !== 0 || rod.vz !== 0 ? LIVELY.for : lively - h;
      const least = lively > 0 ? Math.max(substeps, LIVELY.parts) : substeps;
      const parts = least * partsOf(h / least);
      const part = h / parts;
      out.x = 0;
      out.z = 0;
      let tension = 0;
      let before = Math.hypot(atStart.x, atStart.z);
      for (let i = 0; i < parts; i++) {
        const ahead = (i + 1) * part - h / 2;
        substep(part, eye, rod.x + ahead * rod.vx, rod.z + ahead * rod.vz);
        out.x += half.x / parts;
        out.z += half.z / parts;
        tension += (before + (T[0] as number)) / 2 / parts;
        before = T[0] as number;
      }
      if (!Number.isFinite(out.x + out.z))
        throw new RangeError(`The line's pull is not a number with the eye at (${eye.x}, ${eye.z}) m.`);
      const change = Math.abs((T[0] as number) - lastTension);
      lastTension = T[0] as number;
      if (change > LIVELY.share * lastTension + LIVELY.newton) lively = LIVELY.for;
      out.tension = tension;
      out.slack = tension === 0;
    },
    draw(out, offset) {
      out[offset] = eyeX;
      out[offset + 1] = eyeZ;
      for (let j = 1; j < DRAWN; j++) {
        const at = (j * n) / (DRAWN - 1);
        const i = Math.min(n - 1, at | 0);
        const f = at - i;
        out[offset + 2 * j] = (x[i] as number) + f * ((x[i + 1] as number) - (x[i] as number));
        out[offset + 2 * j + 1] = (z[i] as number) + f * ((z[i + 1] as number) - (z[i] as number));
      }
    },
    tensions: () => T.slice(0, n),
    length: () => L.slice(0, n).reduce((sum, l) => sum + l, 0),
    nodes: () => Array.from({ length: n + 1 }, (_, i) => ({ x: x[i] as number, z: z[i] as number })),
  };
}
