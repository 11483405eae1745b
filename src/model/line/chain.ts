import { dragAt, type NormalDrag } from "./drag-table";
import { MATERIAL_DAMPING } from "./tether";

/** Transverse added mass of a cylinder, share of the water it displaces: 1 (Lamb 1932, art. 68; Newman 1977, §4.4). */
const ADDED_MASS = 1;

/** A pass less where turning a segment further would change its tension by less than this share, or this many N. */
const ALIKE = { share: 1e-4, newton: 1e-6 };

/** A line's own part in its motion, and the fluids'. SI. */
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
 * A line as nodes 0 (eye) to n (rod tip) and segments 0 to n − 1 between them. Functions that run over it take what they
 * need out of it before their loop: that makes them twice as fast.
 */
export class Chain {
  n = 0;
  /** Places and velocities. */
  readonly x: Float64Array;
  readonly z: Float64Array;
  readonly u: Float64Array;
  readonly w: Float64Array;
  /** Those at the step's end. */
  readonly xn: Float64Array;
  readonly zn: Float64Array;
  readonly un: Float64Array;
  readonly wn: Float64Array;
  /** Velocities at the step's end without tension, and inverse masses with drag. */
  readonly us: Float64Array;
  readonly ws: Float64Array;
  readonly xx: Float64Array;
  readonly xz: Float64Array;
  readonly zz: Float64Array;
  /** Speed along and across the line as it lay at the step's start. */
  readonly slides: Float64Array;
  readonly crosses: Float64Array;
  /** Segments' unstretched length, tension, direction, share under water. */
  readonly L: Float64Array;
  readonly T: Float64Array;
  readonly ex: Float64Array;
  readonly ez: Float64Array;
  readonly wet: Float64Array;
  /** SLACK, PULLS or GIVES. */
  readonly held: Uint8Array;
  /** The tridiagonal system for the tensions. */
  readonly diagonal: Float64Array;
  readonly beside: Float64Array;
  readonly right: Float64Array;
  readonly sweep: Float64Array;

  constructor(capacity: number) {
    const make = (): Float64Array => new Float64Array(capacity + 1);
    [this.x, this.z, this.u, this.w] = [make(), make(), make(), make()];
    [this.xn, this.zn, this.un, this.wn] = [make(), make(), make(), make()];
    [this.us, this.ws, this.xx, this.xz, this.zz] = [make(), make(), make(), make(), make()];
    [this.slides, this.crosses] = [make(), make()];
    [this.L, this.T, this.ex, this.ez, this.wet] = [make(), make(), make(), make(), make()];
    this.held = new Uint8Array(capacity + 1);
    [this.diagonal, this.beside, this.right, this.sweep] = [make(), make(), make(), make()];
  }
}

/**
 * Speeds of the nodes along and across the line as it lies, then the segments' directions half a step on with the velocities
 * of the start, and their shares under water.
 */
export function aim(chain: Chain, h: number): void {
  const { n, x, z, u, w, ex, ez, wet, slides, crosses } = chain;
  let [beforeX, beforeZ] = [0, 0];
  let [ax, az, au, aw] = [x[0] as number, z[0] as number, u[0] as number, w[0] as number];
  for (let i = 0; i < n; i++) {
    const hereX = ex[i] as number;
    const hereZ = ez[i] as number;
    const tx = beforeX + hereX;
    const tz = beforeZ + hereZ;
    const lay = 1 / (Math.sqrt(tx * tx + tz * tz) || 1);
    slides[i] = (au * tx + aw * tz) * lay;
    crosses[i] = (aw * tx - au * tz) * lay;
    beforeX = hereX;
    beforeZ = hereZ;
    const bx = x[i + 1] as number;
    const bz = z[i + 1] as number;
    const bu = u[i + 1] as number;
    const bw = w[i + 1] as number;
    const dx = bx - ax + h * (bu - au);
    const dz = bz - az + h * (bw - aw);
    const length = Math.sqrt(dx * dx + dz * dz);
    if (length > 0) {
      // else it keeps the direction it had
      const inverse = 1 / length;
      ex[i] = dx * inverse;
      ez[i] = dz * inverse;
    }
    wet[i] = az <= 0 ? (bz <= 0 ? 1 : az / (az - bz)) : bz >= 0 ? 0 : bz / (bz - az);
    ax = bx;
    az = bz;
    au = bu;
    aw = bw;
  }
}

/** Velocities that the inner nodes would have at the step's end without tension, and their inverse masses with drag. */
export function loosen(chain: Chain, strand: Strand, h: number): void {
  const { n, u, w, us, ws, xx, xz, zz, L, ex, ez, wet, slides, crosses } = chain;
  const { lineMass, waterMass, gravity, cx, cz, inWater, inAir, tangential } = strand;
  for (let i = 1; i < n; i++) {
    const before = (L[i - 1] as number) / 2;
    const after = (L[i] as number) / 2;
    const length = before + after;
    const under = before * (wet[i - 1] as number) + after * (wet[i] as number);
    let tx = (ex[i - 1] as number) + (ex[i] as number);
    let tz = (ez[i - 1] as number) + (ez[i] as number);
    const size = Math.sqrt(tx * tx + tz * tz);
    if (size > 1e-6) {
      const inverse = 1 / size;
      tx *= inverse;
      tz *= inverse;
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
    let dn = under > 0 ? h * dragAt(inWater, Math.abs((crosses[i] as number) - cn)) * under : 0;
    if (under < length) dn += h * dragAt(inAir, Math.abs(crosses[i] as number)) * (length - under);
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
    us[i] = st * tx - sn * tz;
    ws[i] = st * tz + sn * tx;
    xx[i] = at * tx * tx + an * tz * tz;
    xz[i] = (at - an) * tx * tz;
    zz[i] = at * tz * tz + an * tx * tx;
  }
}

/**
 * The tridiagonal system at the present directions, for all segments as if each pulled. A row is
 * (k(ℓ − L) + c(dℓ/dt − dL/dt)) / ((k h/2 + c) h); with c = τk the stiffness k cancels.
 *
 * @param winding rate of the unstretched length at the rod tip, m/s
 */
export function assemble(chain: Chain, { EA }: Strand, h: number, winding: number): void {
  const { n, x, z, u, w, us, ws, xx, xz, zz, L, ex, ez, diagonal, beside, right } = chain;
  const soft = 1 / ((h / 2 + MATERIAL_DAMPING) * h);
  const give = soft / EA;
  const half = h / 2;
  for (let i = 0; i < n; i++) {
    const j = i + 1;
    const ax = ex[i] as number;
    const az = ez[i] as number;
    const du = (u[j] as number) - (u[i] as number);
    const dw = (w[j] as number) - (w[i] as number);
    const dus = (us[j] as number) - (us[i] as number);
    const dws = (ws[j] as number) - (ws[i] as number);
    const dx = (x[j] as number) - (x[i] as number) + half * (du + dus);
    const dz = (z[j] as number) - (z[i] as number) + half * (dw + dws);
    const rate = ax * dus + az * dws - (j === n ? winding : 0);
    const unstretched = L[i] as number;
    right[i] = (ax * dx + az * dz - unstretched + MATERIAL_DAMPING * rate) * soft;
    // W_{i+1} e_i
    const bx = (xx[j] as number) * ax + (xz[j] as number) * az;
    const bz = (xz[j] as number) * ax + (zz[j] as number) * az;
    diagonal[i] =
      give * unstretched +
      ax * (bx + (xx[i] as number) * ax + (xz[i] as number) * az) +
      az * (bz + (xz[i] as number) * ax + (zz[i] as number) * az);
    beside[i] = j < n ? bx * (ex[j] as number) + bz * (ez[j] as number) : 0;
  }
}

/**
 * Thomas' elimination over the segments that pull; the others have their tension given: 0, or the pull at which a free reel
 * gives line, N.
 */
export function solve(chain: Chain, gives: number): void {
  const { n, T, held, diagonal, beside, right, sweep } = chain;
  let before = 0; // coefficient of T_{i+1} in row i − 1, after elimination; 0 where that row has its tension given
  let known = 0;
  let link = 0;
  for (let i = 0; i < n; i++) {
    const next = beside[i] as number;
    if (held[i] !== PULLS) {
      before = 0;
      known = held[i] === GIVES ? gives : 0;
    } else {
      // row i: −link·T_{i−1} + diagonal·T_i − beside·T_{i+1} = right, with T_{i−1} = known + before·T_i
      const inverse = 1 / ((diagonal[i] as number) - link * before);
      before = next * inverse;
      known = ((right[i] as number) + link * known) * inverse;
    }
    sweep[i] = before;
    T[i] = known;
    link = next;
  }
  let above = 0;
  for (let i = n - 1; i >= 0; i--) T[i] = above = (T[i] as number) + (sweep[i] as number) * above;
}

/** Takes out what would push, puts back what would be stretched. True where something changed. */
export function sort(chain: Chain, gives: number): boolean {
  const { n, T, held, diagonal, beside, right } = chain;
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
    const wanted =
      (right[i] as number) +
      (i > 0 ? (beside[i - 1] as number) * (T[i - 1] as number) : 0) +
      (i < n - 1 ? (beside[i] as number) * (T[i + 1] as number) : 0);
    if (held[i] === GIVES ? wanted < (diagonal[i] as number) * gives || i !== n - 1 : wanted > 0) {
      held[i] = PULLS;
      changed = true;
    }
  }
  if (changed) for (let i = 0; i < n; i++) if (held[i] === SLACK) T[i] = 0;
  return changed;
}

/**
 * Velocities and places at the step's end with the tensions, and directions from node to node there. True where a segment
 * turned so far that its tension would feel it.
 */
export function tighten(chain: Chain, { EA }: Strand, h: number): boolean {
  const { n, x, z, u, w, xn, zn, un, wn, us, ws, xx, xz, zz, L, T, ex, ez } = chain;
  const half = h / 2;
  let turned = false;
  let [belowX, belowZ] = [0, 0];
  for (let i = 0; i < n; i++) {
    const tension = T[i] as number;
    const pullX = tension * (ex[i] as number);
    const pullZ = tension * (ez[i] as number);
    const fx = h * (pullX - belowX);
    const fz = h * (pullZ - belowZ);
    belowX = pullX;
    belowZ = pullZ;
    const ui = (us[i] as number) + (xx[i] as number) * fx + (xz[i] as number) * fz;
    const wi = (ws[i] as number) + (xz[i] as number) * fx + (zz[i] as number) * fz;
    un[i] = ui;
    wn[i] = wi;
    xn[i] = (x[i] as number) + half * ((u[i] as number) + ui);
    zn[i] = (z[i] as number) + half * ((w[i] as number) + wi);
  }
  // the rod tip goes its own way
  xn[n] = (x[n] as number) + h * (u[n] as number);
  zn[n] = (z[n] as number) + h * (w[n] as number);
  let [ax, az] = [xn[0] as number, zn[0] as number];
  for (let i = 0; i < n; i++) {
    const bx = xn[i + 1] as number;
    const bz = zn[i + 1] as number;
    const dx = bx - ax;
    const dz = bz - az;
    ax = bx;
    az = bz;
    const length = Math.sqrt(dx * dx + dz * dz);
    if (length === 0) continue; // keeps the direction it had
    const inverse = 1 / length;
    const nx = dx * inverse;
    const nz = dz * inverse;
    const off = EA * length * (1 - (nx * (ex[i] as number) + nz * (ez[i] as number)));
    if (off > (ALIKE.share * (T[i] as number) + ALIKE.newton) * (L[i] as number)) turned = true;
    ex[i] = nx;
    ez[i] = nz;
  }
  return turned;
}

/** Goes on to the step's end. What would be below the bottom (m) lies on it; the eye is where the bait has it. */
export function goOn(chain: Chain, bottom: number): void {
  const { n, x, z, u, w, xn, zn, un, wn } = chain;
  for (let i = 0; i < n; i++) {
    x[i] = xn[i] as number;
    z[i] = zn[i] as number;
    u[i] = un[i] as number;
    w[i] = wn[i] as number;
    if (i > 0 && (z[i] as number) < bottom) {
      z[i] = bottom;
      if ((w[i] as number) < 0) w[i] = 0;
    }
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
