import { acosh, cosh, hypot, square } from "../base";
import {
  aim,
  assemble,
  Chain,
  GIVES,
  goOn,
  loosen,
  PULLS,
  solve,
  sort,
  stiffestTurn,
  tighten,
} from "./chain";
import type { Strand } from "./chain";
import { dragAt, normalDrag } from "./drag-table";
import type { EyeMotion, MovingLine, RodEnd } from "./moving";
import { TANGENTIAL_DRAG, type LineWater } from "./steady";
import type { LineSpec } from "./types";

/**
 * Air at 15 °C and one atmosphere: density kg/m³, dynamic viscosity Pa·s (International Standard Atmosphere, ISO 2533:1975;
 * from memory). In a steady tow its drag is negligible. It damps the swing of the piece that hangs from the rod tip.
 */
const AIR = { density: 1.225, viscosity: 1.789e-5 };

/** Segments at the start. */
export const SEGMENTS = 24;

/** Greatest number of nodes, for a line that is paid out far. */
const CAPACITY = 192;

/** Below this share of its planned length the segment at the rod tip joins the next one; above the other share it is split. */
const JOIN = 0.25;
const SPLIT = 1.6;

/**
 * A step is divided so that turning a segment changes its neighbours' turn by less than itself: h²·T/(ρ_l A L²) is kept
 * below this. Only then do the passes over directions converge. Only hard jerks need it.
 */
const TURNS = 1;
const MOST_PARTS = 16;

/**
 * While the rod tip moves, or while the pull at the eye changes quickly, and for 0.3 s after, each step of the line is divided
 * into 4. These transients are short: an error of 1 ms in their timing shows as 1° of the bait's pitch.
 */
const LIVELY = { parts: 4, for: 0.3, share: 0.05, newton: 1e-3 };

/** Pull at which a reel that gives line freely gives it, in weights of the line that hangs from the rod tip. Common practice, no source. */
const GIVES_AT = 1.5;

/** Most passes over the directions, and over which segments pull. */
const MOST_PASSES = 8;

/** Number of points for drawing. */
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
  /** Steps of the line in one step of the caller. */
  readonly substeps?: number;
  /** Places of the nodes at the start, eye to rod tip, spread by length; default a straight line. */
  readonly start?: readonly { readonly x: number; readonly z: number }[];
}

/**
 * A line of segments with weight, drag, added mass and elasticity, from tie eye to rod tip (docs/model.md §7, 'Moving
 * line').
 *
 * Masses are lumped at nodes. Each segment between two nodes is a spring k = EA/L that pulls but cannot push. The velocity
 * of a node at the step's end contains the tensions of both its segments. Drag is linear in it (½ρ C_n d|v_n|·v_n⁺ across,
 * and alike along the line), so a steady state has its exact drag, however light the node is. The tension is taken at the
 * step's end: T_i = k_i (ℓ_i⁺ − L_i) + c_i dℓ_i⁺/dt (Hairer & Wanner 1996, §IV: implicit Euler, stable at any stiffness).
 * Together this is one tridiagonal system for all T; the tie eye is in it with its inverse mass. Segments that would push
 * are taken out, segments that would be stretched are put back, and directions are turned to those of the step's end, until
 * nothing changes.
 *
 * Line is wound in or drawn off through the segment at the rod tip. This segment joins its neighbour when it is short and
 * is split when it is long. Nodes are fixed to the line, so their drag and inertia are those of the line itself. The half
 * segment next to the eye pulls on the eye with its drag and weight. Its inertia, some hundredths of a gram, is left out.
 *
 * Between calls the nodes stand at t + h/2 of the last call.
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
  const bottom = -(options.depth ?? Infinity);
  const section = (Math.PI * square(spec.diameter)) / 4;
  const strand: Strand = {
    EA: spec.EA,
    lineMass: spec.density * section,
    waterMass: water.density * section,
    gravity: water.gravity,
    cx: options.current?.x ?? 0,
    cz: options.current?.z ?? 0,
    inWater: normalDrag(spec, water),
    inAir: normalDrag(spec, AIR),
    tangential: 0.5 * water.density * Math.PI * spec.diameter * TANGENTIAL_DRAG,
  };
  const { lineMass } = strand;
  const chain = new Chain(CAPACITY);
  const { L, T, lies, held } = chain;
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
  /** Velocity that the eye has gained since, m/s. */
  const gain = { x: 0, z: 0 };

  const planned = (i: number): number =>
    options.equal ? mean : mean * (1 / 3 + (4 / 3) * Math.min(1, i / (first - 1)));

  function start(eye: EyeMotion, rod: RodEnd): void {
    chain.n = first;
    const path = options.start ?? (rod.free ? laid(eye, rod) : [eye, rod]);
    const along = [0];
    path.forEach((p, i) => {
      const before = path[i - 1];
      if (before) along.push((along[i - 1] as number) + hypot(p.x - before.x, p.z - before.z));
    });
    const whole = along[along.length - 1] as number;
    // A line laid out on the water is longer than the straight way. Places given by a test are stretched or slack as they
    // are.
    const length = options.start ? rod.length : Math.max(rod.length, whole);
    mean = length / first;
    let s = 0;
    let j = 1;
    for (let i = 0; i <= first; i++) {
      const at = (s / length) * whole;
      while (j < path.length - 1 && (along[j] as number) < at) j++;
      const a = path[j - 1] as { x: number; z: number };
      const b = path[j] as { x: number; z: number };
      const piece = (along[j] as number) - (along[j - 1] as number);
      const f = piece > 0 ? (at - (along[j - 1] as number)) / piece : 0;
      const share = s / length;
      chain.now.set(
        [
          a.x + f * (b.x - a.x),
          a.z + f * (b.z - a.z),
          eye.vx + share * (rod.vx - eye.vx),
          eye.vz + share * (rod.vz - eye.vz),
        ],
        4 * i,
      );
      L[i] = planned(i);
      held[i] = PULLS;
      s += planned(i);
    }
  }

  /**
   * Where a line lies that the reel gives freely: on the water, and from there up to the rod tip as a catenary. Its weight
   * and the slight hold of the reel shape it: H = T_tip − w z, z = a (cosh(x/a) − 1), a = H/w.
   */
  function laid(eye: EyeMotion, rod: RodEnd): { x: number; z: number }[] {
    const a = GIVES_AT * Math.max(0.5, rod.z) - rod.z;
    const dx = rod.x - eye.x;
    const foot = rod.z > 0 ? a * acosh(1 + rod.z / a) : 0;
    const run = Math.min(3 * Math.max(0, -eye.z), dx / 2);
    if (!(rod.z > 0) || !(foot < dx - run) || eye.z > 0) return [eye, rod];
    const path: { x: number; z: number }[] = [eye, { x: eye.x + run, z: 0 }];
    const pieces = 40;
    for (let i = 0; i <= pieces; i++) {
      const x = (foot * i) / pieces;
      path.push({ x: rod.x - foot + x, z: a * (cosh(x / a) - 1) });
    }
    return path;
  }

  /** Gives the segment at the rod tip its new length, and joins or splits it. */
  function pay(grown: number): void {
    let { n } = chain;
    const { now } = chain;
    L[n - 1] = (L[n - 1] as number) + grown;
    while (n > 2 && (L[n - 1] as number) < JOIN * planned(n - 1)) {
      // the node that has come to the rod tip is the rod tip
      L[n - 2] = (L[n - 2] as number) + (L[n - 1] as number);
      held[n - 2] = PULLS;
      copyNode(n, n - 1);
      n--;
    }
    while ((L[n - 1] as number) > SPLIT * planned(n - 1) && n < CAPACITY) {
      const length = L[n - 1] as number;
      const f = planned(n - 1) / length;
      copyNode(n, n + 1);
      for (let k = 4 * n; k < 4 * n + 4; k++)
        now[k] = (now[k - 4] as number) + f * ((now[k + 4] as number) - (now[k - 4] as number));
      L[n] = length * (1 - f);
      L[n - 1] = length * f;
      held[n] = held[n - 1] as number;
      held[n - 1] = PULLS;
      n++;
    }
    chain.n = n;
    if (!((L[n - 1] as number) > 0))
      throw new RangeError(`The line is wound in to its end: ${(L[n - 1] as number).toFixed(3)} m are left.`);
  }

  function copyNode(from: number, to: number): void {
    chain.now.copyWithin(4 * to, 4 * from, 4 * from + 4);
  }

  /** Drag and weight of the half segment next to the eye, at the eye's velocity. */
  function atEye(vx: number, vz: number): void {
    const { waterMass, gravity, cx, cz, inWater, tangential } = strand;
    const length = (L[0] as number) / 2;
    const under = length * (lies[2] as number);
    const tx = lies[0] as number;
    const tz = lies[1] as number;
    const rx = vx - cx;
    const rz = vz - cz;
    const along = rx * tx + rz * tz;
    const nx = rx - along * tx;
    const nz = rz - along * tz;
    const drag = dragAt(inWater, Math.sqrt(nx * nx + nz * nz)) * under;
    const skin = tangential * Math.abs(along) * along * under;
    half.x = -drag * nx - skin * tx;
    half.z = -drag * nz - skin * tz - gravity * (lineMass * length - waterMass * under);
  }

  /** Into how many parts a step must be divided at the present tensions. */
  function partsOf(h: number): number {
    const parts = Math.ceil(h * Math.sqrt(stiffestTurn(chain) / (lineMass * TURNS)));
    return parts < 1 ? 1 : parts > MOST_PARTS ? MOST_PARTS : parts;
  }

  function substep(h: number, eye: EyeMotion, rodX: number, rodZ: number): void {
    pay(winding * h);
    const { n, now, loose } = chain;
    const tip = 4 * n;
    const tipX = (rodX - (now[tip] as number)) / h;
    const tipZ = (rodZ - (now[tip + 1] as number)) / h;
    now[tip + 2] = tipX;
    now[tip + 3] = tipZ;
    loose[5 * n] = tipX;
    loose[5 * n + 1] = tipZ;
    loose[5 * n + 2] = 0;
    loose[5 * n + 3] = 0;
    loose[5 * n + 4] = 0;
    aim(chain, h);
    loosen(chain, strand, h);
    // The eye is pulled by the mean of the tensions at the step's start and end.
    const u = now[2] as number;
    const w = now[3] as number;
    atEye(u + gain.x / 2, w + gain.z / 2);
    half.x += atStart.x / 2;
    half.z += atStart.z / 2;
    loose[0] = u + h * (eye.ax + eye.wxx * half.x + eye.wxz * half.z);
    loose[1] = w + h * (eye.az + eye.wxz * half.x + eye.wzz * half.z);
    loose[2] = eye.wxx / 2;
    loose[3] = eye.wxz / 2;
    loose[4] = eye.wzz / 2;
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      assemble(chain, strand, h, winding);
      for (let inner = 0; inner < MOST_PASSES; inner++) {
        if (solve(chain, gives) || !sort(chain, gives)) break;
      }
      if (!tighten(chain, strand, h)) break;
    }
    goOn(chain, bottom);
    atStart.x = (T[0] as number) * (lies[0] as number);
    atStart.z = (T[0] as number) * (lies[1] as number);
    half.x += atStart.x / 2;
    half.z += atStart.z / 2;
    const after = chain.now;
    after[tip] = rodX;
    after[tip + 1] = rodZ;
    if (held[n - 1] === GIVES) {
      // the free reel has given what the step drew off
      const dx = rodX - (after[tip - 4] as number);
      const dz = rodZ - (after[tip - 3] as number);
      const drawn = (Math.sqrt(dx * dx + dz * dz) * spec.EA) / (spec.EA + gives);
      if (drawn > (L[n - 1] as number)) pay(drawn - (L[n - 1] as number));
    }
  }

  return {
    points: DRAWN,
    pull(h, eye, rod, out) {
      if (chain.n === 0) {
        start(eye, rod);
        lastVx = eye.vx;
        lastVz = eye.vz;
      }
      winding = rod.lengthRate;
      gives = rod.free ? GIVES_AT * lineMass * water.gravity * Math.max(0.5, rod.z) : Infinity;
      if (!rod.free && held[chain.n - 1] === GIVES) held[chain.n - 1] = PULLS;
      eyeX = eye.x;
      eyeZ = eye.z;
      // from t − h/2 on, with the eye where the bait really has it: x(t − h/2) = x − h/2·v − h²/8·a, a being the
      // acceleration that it had
      gain.x = eye.vx - lastVx;
      gain.z = eye.vz - lastVz;
      const { now } = chain;
      now[0] = eye.x - (h / 2) * eye.vx - (h / 8) * gain.x;
      now[1] = eye.z - (h / 2) * eye.vz - (h / 8) * gain.z;
      now[2] = eye.vx;
      now[3] = eye.vz;
      lastVx = eye.vx;
      lastVz = eye.vz;
      lively = rod.vx !== 0 || rod.vz !== 0 ? LIVELY.for : lively - h;
      const least = lively > 0 ? Math.max(substeps, LIVELY.parts) : substeps;
      const parts = least * partsOf(h / least);
      const part = h / parts;
      out.x = 0;
      out.z = 0;
      let tension = 0;
      let before = hypot(atStart.x, atStart.z);
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
      const { n, now } = chain;
      out[offset] = eyeX;
      out[offset + 1] = eyeZ;
      for (let j = 1; j < DRAWN; j++) {
        const at = (j * n) / (DRAWN - 1);
        const i = Math.min(n - 1, at | 0);
        const f = at - i;
        for (let k = 0; k < 2; k++) {
          const a = now[4 * i + k] as number;
          out[offset + 2 * j + k] = a + f * ((now[4 * i + 4 + k] as number) - a);
        }
      }
    },
    tensions: () => T.slice(0, chain.n),
    length: () => L.slice(0, chain.n).reduce((sum, l) => sum + l, 0),
    nodes: () =>
      Array.from({ length: chain.n + 1 }, (_, i) => ({
        x: chain.now[4 * i] as number,
        z: chain.now[4 * i + 1] as number,
      })),
  };
}
