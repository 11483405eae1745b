import type { Wrench } from "../base";
import { cylinderDragFast, ellipsoidDrag, skinFriction, STILL } from "./coefficients";
import { joined, plateAt, type PlateForce } from "./plate";
import type { Situation } from "./situation";

/*
 * The forces of docs/model.md §6, each added to `out` in body axes about G (N, N·m). The situation has taken the state;
 * u, w, q are relative to the water. A force (X, Z) at (x, z) makes the moment x Z − z X, nose-up positive.
 */

/** §6.1: m g at G. Hooks that are not bodies of their own are in m, and in G at their eyes: so the point loads are counted. */
export function weight(situation: Situation, out: Wrench): void {
  const mg = situation.swimmer.rigid.mass * situation.around.gravity;
  out.x -= mg * situation.sin;
  out.z -= mg * situation.cos;
}

/** §6.2: ρ g V_immersed upwards at the centroid of the immersed volume. */
export function buoyancy(situation: Situation, out: Wrench): void {
  const rhoG = situation.density * situation.around.gravity;
  const lift = rhoG * situation.water.volume;
  out.x += lift * situation.sin;
  out.z += lift * situation.cos;
  out.m += rhoG * situation.water.moment;
}

/** §6.5: −½ρ C_dc η 2hw |v_n| v_n by stations, v_n = w + q x, C_dc = C_cyl(Re_n) f(r). */
export function crossflow(situation: Situation, out: Wrench): void {
  const { stripX, stripDrag, stripReynolds, w, q, drag, allUnder } = situation;
  const { share } = situation.water;
  let Z = 0;
  let M = 0;
  for (let i = 0; i < stripX.length; i++) {
    const x = stripX[i] as number;
    const v = w + q * x;
    const speed = v < 0 ? -v : v;
    if (speed < STILL) continue;
    const reynolds = speed * (stripReynolds[i] as number);
    if (reynolds === 0) continue; // no breadth here
    let f = -(stripDrag[i] as number) * cylinderDragFast(drag, reynolds) * speed * v;
    if (!allUnder) f *= share[i] as number;
    Z += f;
    M += x * f;
  }
  out.z += Z;
  out.m += M;
}

/** §6.6: −½ρ u|u| A_f C_D along the datum direction through the body's centroid, u taken there (u − q z_C). */
export function axial(situation: Situation, out: Wrench): void {
  const { hull } = situation.swimmer;
  const u = situation.u - situation.q * hull.centroid.z;
  const speed = Math.abs(u);
  if (speed < STILL) return;
  const friction = skinFriction((speed * hull.length) / situation.kinematic);
  const cd = ellipsoidDrag(hull.length / hull.diameter, friction);
  const X = -0.5 * situation.density * u * speed * hull.frontalArea * cd * situation.water.bodyShare;
  out.x += X;
  out.m -= hull.centroid.z * X;
}

/**
 * §6.4: viscous lift at the trailing end of the datum line takes away a share of the Munk moment: Z_v = −(1 − k_M)(a33 −
 * a11)|u| w_e/ℓ_e, w_e = w + q x_e, ℓ_e = |x_e − x_C|; its moment is x_e Z_v. Its power is Z_v w_e ≤ 0.
 *
 * The formula is that of a slender body. Where a33 < a11 (a body shorter than it is deep) there is no such lift, and it is
 * left out. Partly out of the water it counts by the share of the heave added mass under water, weighted by the distance
 * from the leading end. (This weight is our choice: the model page says only that the after body counts. The force changes
 * evenly between all under and all out.)
 */
export function tail(situation: Situation, out: Wrench): void {
  const { hull, options } = situation.swimmer;
  const { u, w, q } = situation;
  const excess = hull.heave - hull.surge;
  if (excess <= 0 || u === 0) return;
  const end = u >= 0 ? hull.tail : hull.nose;
  const arm = Math.abs(end - hull.centroid.x);
  const across = w + q * end;
  let Z = (-(1 - options.munkShare) * excess * situation.density * Math.abs(u) * across) / arm;
  if (!situation.allUnder) Z *= wetTowards(situation, u >= 0 ? hull.nose : hull.tail);
  out.z += Z;
  out.m += end * Z;
}

function wetTowards(situation: Situation, leading: number): number {
  const { strips } = situation.swimmer;
  const { share } = situation.water;
  let wet = 0;
  let all = 0;
  for (let i = 0; i < strips.length; i++) {
    const strip = strips[i] as (typeof strips)[number];
    const part = strip.added * Math.abs(strip.x - leading);
    all += part;
    wet += part * (share[i] as number);
  }
  return wet / all;
}

const plateForce: PlateForce = { cn: 0, xcp: 0.5 };

/**
 * §6.7: the bib as a flat plate. α = atan2(|v·n|, v·t), first with the velocity of the bib's middle, then once more with
 * that of the centre of pressure found. Force −sign(v·n)·½ρ S C_N|v|² along n there, x_cp measured from the tip along −t.
 * Friction 2 S C_f ½ρ v_t|v_t| against v_t, Re on the chord.
 *
 * §6.4: the bib's Munk moment is already in C_N and x_cp. So +a_n v_n v_t is added to the moment, which cancels it;
 * velocities at the bib's middle.
 */
export function bib(situation: Situation, out: Wrench): void {
  const { blade, options } = situation.swimmer;
  const share = situation.water.bladeShare;
  if (!blade || share === 0) return;
  const { u, w, q, density } = situation;
  const { along: t, normal: n, middle, tip, chord, plate } = blade;

  const mu = u - q * middle.z;
  const mw = w + q * middle.x;
  const vt = mu * t.x + mw * t.z;
  const vnMiddle = mu * n.x + mw * n.z;
  out.m += density * blade.added * vnMiddle * vt * share;

  let vn = vnMiddle;
  let speed = Math.sqrt(vn * vn + vt * vt);
  if (speed >= STILL) {
    plateAt(plate, Math.abs(vn) / speed, vt / speed, plateForce);
    let back = plateForce.xcp * chord;
    // along the plate v_t is the same everywhere; only v_n changes with the place
    vn = (u - q * (tip.z - back * t.z)) * n.x + (w + q * (tip.x - back * t.x)) * n.z;
    speed = Math.sqrt(vn * vn + vt * vt);
    if (speed >= STILL) {
      plateAt(plate, Math.abs(vn) / speed, vt / speed, plateForce);
      back = plateForce.xcp * chord;
      const cn = joined(plateForce.cn, plate.broadside) * options.bibFactor;
      const force = 0.5 * density * blade.area * cn * speed * speed * share;
      const N = vn > 0 ? -force : force;
      const x = tip.x - back * t.x;
      const z = tip.z - back * t.z;
      out.x += N * n.x;
      out.z += N * n.z;
      out.m += N * (x * n.z - z * n.x);
    }
  }

  const along = Math.abs(vt);
  if (along >= STILL) {
    const friction = skinFriction((along * chord) / situation.kinematic);
    const T = -density * blade.area * friction * vt * along * share; // 2 S C_f ½ρ
    out.x += T * t.x;
    out.z += T * t.z;
    out.m += T * (middle.x * t.z - middle.z * t.x);
  }
}

/** §6.8: −½ρ (C_d A)|v| v at each hanger; the ring has none of its own. */
export function hooks(situation: Situation, out: Wrench): void {
  const { u, w, q, density, water } = situation;
  const loads = situation.swimmer.hooks;
  for (let i = 0; i < loads.length; i++) {
    const load = loads[i] as (typeof loads)[number];
    const { x, z } = load.at;
    const vu = u - q * z;
    const vw = w + q * x;
    const speed = Math.sqrt(vu * vu + vw * vw);
    if (speed < STILL) continue;
    const k = -0.5 * density * load.dragArea * speed * (water.hookShare[i] as number);
    out.x += k * vu;
    out.z += k * vw;
    out.m += k * (x * vw - z * vu);
  }
}
