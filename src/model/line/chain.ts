import { dragAt, type NormalDrag } from "./drag-table";
import { MATERIAL_DAMPING } from "./tether";

/** Transverse added mass of a cylinder, share of the water it displaces: 1 (Lamb 1932, art. 68; Newman 1977, §4.4). */
const ADDED_MASS = 1;

/** The passes over directions end when turning a segment further would change its tension by less than this share, or this many N. */
const ALIKE = { share: 1e-4, newton: 1e-6 };

/** What the motion of a line depends on: its own numbers and those of water and air. SI. */
export interface Strand {
  /** Young's modulus × section, N. */
  readonly EA: number;
  /** Mass of a metre of line, and of the water in its place, kg/m. */
  readonly lineMass: number;
  readonly waterMass: number;
  readonly gravity: number;
  /** Current, m/s. */
  readonly cx: number;
  readonly cz: number;
  readonly inWater: NormalDrag;
  readonly inAir: NormalDrag;
  /** ½ρ π d C_t, kg/m². */
  readonly tangential: number;
}

/** How a segment is held: slack, pulling, or at the rod tip with the reel giving line at a pull. */
export const SLACK = 0;
export const PULLS = 1;
export const GIVES = 2;

/**
 * A line as nodes 0 (eye) to n (rod tip), and segments 0 to n − 1 between them. Numbers that belong together lie beside
 * each other in one array. Functions take the arrays out of the object before their loop. The two together make a step take
 * three fifths of the time.
 */
export class Chain {
  n = 0;
  /** Four numbers a node: place x, z and velocity u, w; and those at the step's end. */
  now: Float64Array;
  next: Float64Array;
  /** Five numbers a node: velocity u, w at the step's end without tension; inverse mass xx, xz, zz with drag. */
  readonly loose: Float64Array;
  /** Two numbers a node: speed along and across the line as it lay at the step's start. */
  readonly speeds: Float64Array;
  /** Three numbers a segment: direction x, z; share under water. */
  readonly lies: Float64Array;
  /** Segments' unstretched length and tension. */
  readonly L: Float64Array;
  readonly T: Float64Array;
  /** SLACK, PULLS or GIVES. */
  readonly held: Uint8Array;
  /** The tridiagonal system for the tensions, three numbers a segment: diagonal, beside it (with a minus), right-hand side. */
  readonly rows: Float64Array;
  readonly sweep: Float64Array;

  constructor(capacity: number) {
    const make = (each: number): Float64Array => new Float64Array(each * (capacity + 1));
    this.now = make(4);
    this.next = make(4);
    this.loose = make(5);
    this.speeds = make(2);
    this.lies = make(3);
    this.L = make(1);
    this.T = make(1);
    this.held = new Uint8Array(capacity + 1);
    this.rows = make(3);
    this.sweep = make(1);
  }
}

/**
 * First the speeds of the nodes along and across the line as it lies. Then the directions of the segments half a step
 * later, from the velocities at the start, and the segments' shares under water.
 */
export function aim(chain: Chain, h: number): void {
  const { n, now, speeds, lies } = chain;
  let beforeX = 0;
  let beforeZ = 0;
  let ax = now[0] as number;
  let az = now[1] as number;
  let au = now[2] as number;
  let aw = now[3] as number;
  for (let i = 0; i < n; i++) {
    const s = 3 * i;
    const hereX = lies[s] as number;
    const hereZ = lies[s + 1] as number;
    const tx = beforeX + hereX;
    const tz = beforeZ + hereZ;
    const lay = 1 / (Math.sqrt(tx * tx + tz * tz) || 1);
    speeds[2 * i] = (au * tx + aw * tz) * lay;
    speeds[2 * i + 1] = (aw * tx - au * tz) * lay;
    beforeX = hereX;
    beforeZ = hereZ;
    const b = 4 * i + 4;
    const bx = now[b] as number;
    const bz = now[b + 1] as number;
    const bu = now[b + 2] as number;
    const bw = now[b + 3] as number;
    const dx = bx - ax + h * (bu - au);
    const dz = bz - az + h * (bw - aw);
    const length = Math.sqrt(dx * dx + dz * dz);
    if (length > 0) {
      // else the segment keeps its direction
      const inverse = 1 / length;
      lies[s] = dx * inverse;
      lies[s + 1] = dz * inverse;
    }
    lies[s + 2] = az <= 0 ? (bz <= 0 ? 1 : az / (az - bz)) : bz >= 0 ? 0 : bz / (bz - az);
    ax = bx;
    az = bz;
    au = bu;
    aw = bw;
  }
}

/** Velocities that the inner nodes would have at the step's end without tension, and their inverse masses with drag. */
export function loosen(chain: Chain, strand: Strand, h: number): void {
  const { n, now, loose, speeds, lies, L } = chain;
  const { lineMass, waterMass, gravity, cx, cz, inWater, inAir, tangential } = strand;
  let belowX = lies[0] as number;
  let belowZ = lies[1] as number;
  let before = (L[0] as number) / 2;
  let beforeUnder = before * (lies[2] as number);
  for (let i = 1; i < n; i++) {
    const s = 3 * i;
    const aboveX = lies[s] as number;
    const aboveZ = lies[s + 1] as number;
    const after = (L[i] as number) / 2;
    const afterUnder = after * (lies[s + 2] as number);
    const length = before + after;
    const under = beforeUnder + afterUnder;
    before = after;
    beforeUnder = afterUnder;
    let tx = belowX + aboveX;
    let tz = belowZ + aboveZ;
    belowX = aboveX;
    belowZ = aboveZ;
    const size = Math.sqrt(tx * tx + tz * tz);
    if (size > 1e-6) {
      const inverse = 1 / size;
      tx *= inverse;
      tz *= inverse;
    } else {
      tx = aboveX;
      tz = aboveZ;
    }
    const u = now[4 * i + 2] as number;
    const w = now[4 * i + 3] as number;
    const vt = u * tx + w * tz;
    const vn = w * tx - u * tz; // along (−tz, tx)
    const ct = cx * tx + cz * tz;
    const cn = cz * tx - cx * tz;
    // Drag goes with the speeds along and across the line in its old direction. With the new direction, a node that slides
    // along a bend would seem to move across the line, and would feel a false drag.
    const slide = speeds[2 * i] as number;
    const crossing = speeds[2 * i + 1] as number;
    const dt = h * tangential * Math.abs(slide - ct) * under;
    let dn = under > 0 ? h * dragAt(inWater, Math.abs(crossing - cn)) * under : 0;
    if (under < length) dn += h * dragAt(inAir, Math.abs(crossing)) * (length - under);
    const mt = lineMass * length;
    const mn = mt + ADDED_MASS * waterMass * under;
    const fall = -h * gravity * (mt - waterMass * under);
    const along = mt + dt;
    const across = mn + dn;
    const both = 1 / (along * across);
    const at = across * both;
    const an = along * both;
    const st = (mt * vt + dt * ct + fall * tz) * at;
    const sn = (mn * vn + dn * cn + fall * tx) * an;
    const f = 5 * i;
    loose[f] = st * tx - sn * tz;
    loose[f + 1] = st * tz + sn * tx;
    loose[f + 2] = at * tx * tx + an * tz * tz;
    loose[f + 3] = (at - an) * tx * tz;
    loose[f + 4] = at * tz * tz + an * tx * tx;
  }
}

/**
 * The tridiagonal system at the present directions, for all segments as if each pulled. A row is
 * (k(ℓ − L) + c(dℓ/dt − dL/dt)) / ((k h/2 + c) h); with c = τk the stiffness k cancels.
 *
 * @param winding rate of the unstretched length at the rod tip, m/s
 */
export function assemble(chain: Chain, { EA }: Strand, h: number, winding: number): void {
  const { n, now, loose, lies, L, rows } = chain;
  const soft = 1 / ((h / 2 + MATERIAL_DAMPING) * h);
  const give = soft / EA;
  const half = h / 2;
  for (let i = 0; i < n; i++) {
    const a = 4 * i;
    const f = 5 * i;
    const s = 3 * i;
    const ex = lies[s] as number;
    const ez = lies[s + 1] as number;
    const du = (now[a + 6] as number) - (now[a + 2] as number);
    const dw = (now[a + 7] as number) - (now[a + 3] as number);
    const dus = (loose[f + 5] as number) - (loose[f] as number);
    const dws = (loose[f + 6] as number) - (loose[f + 1] as number);
    const dx = (now[a + 4] as number) - (now[a] as number) + half * (du + dus);
    const dz = (now[a + 5] as number) - (now[a + 1] as number) + half * (dw + dws);
    const last = i === n - 1;
    const rate = ex * dus + ez * dws - (last ? winding : 0);
    const unstretched = L[i] as number;
    // inverse masses of the nodes below and above, times the direction
    const belowX = (loose[f + 2] as number) * ex + (loose[f + 3] as number) * ez;
    const belowZ = (loose[f + 3] as number) * ex + (loose[f + 4] as number) * ez;
    const aboveX = (loose[f + 7] as number) * ex + (loose[f + 8] as number) * ez;
    const aboveZ = (loose[f + 8] as number) * ex + (loose[f + 9] as number) * ez;
    rows[s] = give * unstretched + ex * (aboveX + belowX) + ez * (aboveZ + belowZ);
    rows[s + 1] = last ? 0 : aboveX * (lies[s + 3] as number) + aboveZ * (lies[s + 4] as number);
    rows[s + 2] = (ex * dx + ez * dz - unstretched + MATERIAL_DAMPING * rate) * soft;
  }
}

/**
 * Thomas' elimination over the segments that pull. The tension of the others is given (N): 0, or the pull at which a free
 * reel gives line. True where that is the answer: all of them pull, none pushes, and the reel holds.
 */
export function solve(chain: Chain, gives: number): boolean {
  const { n, T, held, rows, sweep } = chain;
  let before = 0; // coefficient of T_{i+1} in row i − 1, after elimination; 0 where that row has its tension given
  let known = 0;
  let link = 0;
  let settled = true;
  for (let i = 0; i < n; i++) {
    const s = 3 * i;
    const next = rows[s + 1] as number;
    if (held[i] !== PULLS) {
      before = 0;
      known = held[i] === GIVES ? gives : 0;
      settled = false;
    } else {
      // row i: −link·T_{i−1} + diagonal·T_i − beside·T_{i+1} = right, with T_{i−1} = known + before·T_i
      const inverse = 1 / ((rows[s] as number) - link * before);
      before = next * inverse;
      known = ((rows[s + 2] as number) + link * known) * inverse;
    }
    sweep[i] = before;
    T[i] = known;
    link = next;
  }
  if ((T[n - 1] as number) > gives) settled = false;
  let above = 0;
  for (let i = n - 1; i >= 0; i--) {
    above = (T[i] as number) + (sweep[i] as number) * above;
    T[i] = above;
    if (above < 0) settled = false;
  }
  return settled;
}

/** Takes out segments that would push, and puts back those that would be stretched. True where something changed. */
export function sort(chain: Chain, gives: number): boolean {
  const { n, T, held, rows } = chain;
  let changed = false;
  for (let i = 0; i < n; i++) {
    const tension = T[i] as number;
    if (held[i] === PULLS) {
      if (tension < 0) {
        held[i] = SLACK;
        changed = true;
      } else if (i === n - 1 && tension > gives) {
        held[i] = GIVES;
        changed = true;
      }
      continue;
    }
    const s = 3 * i;
    const wanted =
      (rows[s + 2] as number) +
      (i > 0 ? (rows[s - 2] as number) * (T[i - 1] as number) : 0) +
      (i < n - 1 ? (rows[s + 1] as number) * (T[i + 1] as number) : 0);
    if (held[i] === GIVES ? wanted < (rows[s] as number) * gives || i !== n - 1 : wanted > 0) {
      held[i] = PULLS;
      changed = true;
    }
  }
  if (changed) for (let i = 0; i < n; i++) if (held[i] === SLACK) T[i] = 0;
  return changed;
}

/**
 * With the tensions: velocities and places at the step's end, and the directions from node to node there. True where a
 * segment turned so far that its tension changes.
 */
export function tighten(chain: Chain, { EA }: Strand, h: number): boolean {
  const { n, now, next, loose, lies, L, T } = chain;
  const half = h / 2;
  let belowX = 0;
  let belowZ = 0;
  for (let i = 0; i < n; i++) {
    const a = 4 * i;
    const f = 5 * i;
    const s = 3 * i;
    const tension = T[i] as number;
    const pullX = tension * (lies[s] as number);
    const pullZ = tension * (lies[s + 1] as number);
    const fx = h * (pullX - belowX);
    const fz = h * (pullZ - belowZ);
    belowX = pullX;
    belowZ = pullZ;
    const xz = loose[f + 3] as number;
    const u = (loose[f] as number) + (loose[f + 2] as number) * fx + xz * fz;
    const w = (loose[f + 1] as number) + xz * fx + (loose[f + 4] as number) * fz;
    next[a] = (now[a] as number) + half * ((now[a + 2] as number) + u);
    next[a + 1] = (now[a + 1] as number) + half * ((now[a + 3] as number) + w);
    next[a + 2] = u;
    next[a + 3] = w;
  }
  // the rod tip goes its own way
  const tip = 4 * n;
  next[tip] = (now[tip] as number) + h * (now[tip + 2] as number);
  next[tip + 1] = (now[tip + 1] as number) + h * (now[tip + 3] as number);
  next[tip + 2] = now[tip + 2] as number;
  next[tip + 3] = now[tip + 3] as number;
  let turned = false;
  let ax = next[0] as number;
  let az = next[1] as number;
  for (let i = 0; i < n; i++) {
    const bx = next[4 * i + 4] as number;
    const bz = next[4 * i + 5] as number;
    const dx = bx - ax;
    const dz = bz - az;
    ax = bx;
    az = bz;
    const length = Math.sqrt(dx * dx + dz * dz);
    if (length === 0) continue; // the segment keeps its direction
    const inverse = 1 / length;
    const nx = dx * inverse;
    const nz = dz * inverse;
    const s = 3 * i;
    const off = EA * length * (1 - (nx * (lies[s] as number) + nz * (lies[s + 1] as number)));
    if (off > (ALIKE.share * (T[i] as number) + ALIKE.newton) * (L[i] as number)) turned = true;
    lies[s] = nx;
    lies[s + 1] = nz;
  }
  return turned;
}

/** Goes on to the step's end. A node that would be below the bottom (m) lies on it; the eye is where the bait has it. */
export function goOn(chain: Chain, bottom: number): void {
  const { n, now, next } = chain;
  chain.now = next;
  chain.next = now;
  if (bottom === -Infinity) return;
  for (let i = 1; i < n; i++) {
    const a = 4 * i;
    if (!((next[a + 1] as number) < bottom)) continue;
    next[a + 1] = bottom;
    if ((next[a + 3] as number) < 0) next[a + 3] = 0;
  }
}

/** The greatest T/L² of the segments, N/m²: how fast turning one turns its neighbours. */
export function stiffestTurn(chain: Chain): number {
  const { n, T, L } = chain;
  let most = 0;
  for (let i = 0; i < n; i++) {
    const square = (L[i] as number) * (L[i] as number);
    if ((T[i] as number) > most * square) most = (T[i] as number) / square;
  }
  return most;
}
