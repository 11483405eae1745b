import type { Wrench } from "../base";
import { cylinderDragFast, ellipsoidDrag, skinFriction, STILL } from "./coefficients";
import { joined, plateAt, type PlateForce } from "./plate";
import type { Scene } from "./scene";

/*
 * The forces of docs/model.md §6, each added to `out` in body axes about G (N, N·m). The scene has taken the state;
 * u, w, q are relative to the water. A force (X, Z) at (x, z) makes the moment x Z − z X, nose-up positive.
 */

/** §6.1: m g at G. Hooks that are no bodies of their own stand in m and in G at their eyes: the point loads are in it. */
export function weight(scene: Scene, out: Wrench): void {
  const mg = scene.craft.rigid.mass * scene.around.gravity;
  out.x -= mg * scene.sin;
  out.z -= mg * scene.cos;
}

/** §6.2: ρ g V_immersed upwards at the centroid of the immersed volume. */
export function buoyancy(scene: Scene, out: Wrench): void {
  const rhoG = scene.density * scene.around.gravity;
  const lift = rhoG * scene.water.volume;
  out.x += lift * scene.sin;
  out.z += lift * scene.cos;
  out.m += rhoG * scene.water.moment;
}

/** §6.5: −½ρ C_dc η 2hw |v_n| v_n by stations, v_n = w + q x, C_dc = C_cyl(Re_n) f(r). */
export function crossflow(scene: Scene, out: Wrench): void {
  const { stripX, stripDrag, stripReynolds, w, q, drag, allUnder } = scene;
  const { share } = scene.water;
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
export function axial(scene: Scene, out: Wrench): void {
  const { hull } = scene.craft;
  const u = scene.u - scene.q * hull.centroid.z;
  const speed = Math.abs(u);
  if (speed < STILL) return;
  const friction = skinFriction((speed * hull.length) / scene.kinematic);
  const cd = ellipsoidDrag(hull.length / hull.diameter, friction);
  const X = -0.5 * scene.density * u * speed * hull.frontalArea * cd * scene.water.bodyShare;
  out.x += X;
  out.m -= hull.centroid.z * X;
}

/**
 * §6.4: viscous lift at the trailing end of the datum line takes a share of the Munk moment:
 * Z_v = −(1 − k_M)(a33 − a11)|u| w_e/ℓ_e, w_e = w + q x_e, ℓ_e = |x_e − x_C|; moment x_e Z_v. Its power is Z_v w_e ≤ 0.
 *
 * It is a slender body's: where a33 < a11 (a body shorter than it is deep) there is no such lift, and it is left out.
 * Partly out of the water it counts by the share of the heave added mass under water, weighted by the distance from
 * the leading end (our choice: the page is silent; even in the states between all under and all out).
 */
export function tail(scene: Scene, out: Wrench): void {
  const { hull, options } = scene.craft;
  const { u, w, q } = scene;
  const excess = hull.heave - hull.surge;
  if (excess <= 0 || u === 0) return;
  const end = u >= 0 ? hull.tail : hull.nose;
  const arm = Math.abs(end - hull.centroid.x);
  const across = w + q * end;
  let Z = (-(1 - options.munkShare) * excess * scene.density * Math.abs(u) * across) / arm;
  if (!scene.allUnder) Z *= wetTowards(scene, u >= 0 ? hull.nose : hull.tail);
  out.z += Z;
  out.m += end * Z;
}

function wetTowards(scene: Scene, leading: number): number {
  const { strips } = scene.craft;
  const { share } = scene.water;
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
 * that of the centre of pressure found; force −sign(v·n)·½ρ S C_N|v|² along n there, x_cp measured from the tip along −t;
 * friction 2 S C_f ½ρ v_t|v_t| against v_t, Re on the chord.
 * And §6.4: the bib's added mass gives no steady couple, since C_N at x_cp already holds it: +a_n v_n v_t to the moment,
 * velocities at its middle.
 */
export function bib(scene: Scene, out: Wrench): void {
  const { blade, options } = scene.craft;
  const share = scene.water.bladeShare;
  if (!blade || share === 0) return;
  const { u, w, q, density } = scene;
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
    const friction = skinFriction((along * chord) / scene.kinematic);
    const T = -density * blade.area * friction * vt * along * share; // 2 S C_f ½ρ
    out.x += T * t.x;
    out.z += T * t.z;
    out.m += T * (middle.x * t.z - middle.z * t.x);
  }
}

/** §6.8: −½ρ (C_d A)|v| v at each hanger; the ring has none of its own. */
export function hooks(scene: Scene, out: Wrench): void {
  const { u, w, q, density, water } = scene;
  const loads = scene.craft.hooks;
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
