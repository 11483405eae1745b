import { addOuter3, type Sym3, type Wrench } from "../base";
import type { Scene } from "./scene";

/*
 * Mass matrix and inertia terms of docs/model.md §6.3 and §6.4, about G, in (u, w, q).
 *
 * Added mass is a sum of squares ρ Σ a_k h_k h_kᵀ: strips in heave h = (0, 1, x̃), surge h = (1, 0, −z_C) by the body's
 * share, the bib h = (n_x, n_z, lever). Partly out of the water each counts by its immersed share f_k(Z, θ). The page is
 * silent on what happens while the shares change; what the field supports is chosen here:
 *  - going in (ḟ > 0), momentum is kept: the water set moving takes it from the bait, −ρ Σ ḟ a h (h·ν) on the right
 *    (the slam of von Kármán 1929, NACA TN 321). Of the energy νᵀȦν so taken half is in the water that now moves along,
 *    half goes into the splash;
 *  - coming out (ḟ < 0), the water is shed with the bait's own velocity and takes its kinetic energy with it: no force.
 * Either way d(½νᵀMν)/dt ≤ the power of the forces: crossing the surface never gains energy.
 */

/** The mass matrix at the scene's state: rigid + ρ·added under water. */
export function massMatrix(scene: Scene, out: Sym3): void {
  const { craft, density, water } = scene;
  const { rigid, addedBody: a, addedBib: b, strips, hull, blade } = craft;
  out.a11 = rigid.mass;
  out.a13 = 0;
  out.a15 = 0;
  out.a33 = rigid.mass;
  out.a35 = 0;
  out.a55 = rigid.inertia;
  if (scene.allUnder) {
    out.a11 += density * (a.a11 + b.a11);
    out.a13 += density * (a.a13 + b.a13);
    out.a15 += density * (a.a15 + b.a15);
    out.a33 += density * (a.a33 + b.a33);
    out.a35 += density * (a.a35 + b.a35);
    out.a55 += density * (a.a55 + b.a55);
    return;
  }
  for (let i = 0; i < strips.length; i++) {
    const strip = strips[i] as (typeof strips)[number];
    const k = density * strip.added * (water.share[i] as number);
    const kx = k * strip.addedX;
    out.a33 += k;
    out.a35 += kx;
    out.a55 += kx * strip.addedX;
  }
  addOuter3(out, density * hull.surge * water.bodyShare, 1, 0, -hull.centroid.z);
  if (blade)
    addOuter3(out, density * blade.added * water.bladeShare, blade.normal.x, blade.normal.z, blade.lever);
}

/**
 * −(Kirchhoff terms) at the scene's state, added to `out`: with p = M ν, −(−q p_w, q p_u, u p_w − w p_u).
 * They do no work: (u, w, q)·them = 0. Velocities through the water: water that moves evenly is as good a frame as any,
 * and M holds the bait's own mass too.
 */
export function kirchhoff(scene: Scene, mass: Sym3, out: Wrench): void {
  const { u, w, q } = scene;
  const pu = mass.a11 * u + mass.a13 * w + mass.a15 * q;
  const pw = mass.a13 * u + mass.a33 * w + mass.a35 * q;
  out.x += q * pw;
  out.z -= q * pu;
  out.m -= u * pw - w * pu;
}

/** The slam of parts that are going under, added to `out`. */
export function entry(scene: Scene, out: Wrench): void {
  if (scene.allUnder) return;
  const { craft, density, water, u, w, q } = scene;
  const { strips, hull, blade } = craft;
  for (let i = 0; i < strips.length; i++) {
    const rate = water.rate[i] as number;
    if (rate <= 0) continue;
    const strip = strips[i] as (typeof strips)[number];
    const Z = -density * strip.added * rate * (w + q * strip.addedX);
    out.z += Z;
    out.m += strip.addedX * Z;
  }
  if (water.bodyRate > 0) {
    const X = -density * hull.surge * water.bodyRate * (u - q * hull.centroid.z);
    out.x += X;
    out.m -= hull.centroid.z * X;
  }
  if (blade && water.bladeRate > 0) {
    const vn = u * blade.normal.x + w * blade.normal.z + q * blade.lever;
    const N = -density * blade.added * water.bladeRate * vn;
    out.x += N * blade.normal.x;
    out.z += N * blade.normal.z;
    out.m += N * blade.lever;
  }
}

/** Immersed shares of the strips, the body and the bib at one moment, in that order. */
export function copyShares({ water, craft }: Scene, out: Float64Array): void {
  const n = craft.strips.length;
  out.set(water.share);
  out[n] = water.bodyShare;
  out[n + 1] = water.bladeShare;
}

/** Added mass of the parts whose share has grown since `before` (as `copyShares` wrote it), each by its growth. */
export function enteredMass(scene: Scene, before: Float64Array, out: Sym3): void {
  const { craft, density, water } = scene;
  const { strips, hull, blade } = craft;
  const n = strips.length;
  const growth = (share: number, i: number): number => Math.max(0, share - (before[i] as number));
  for (let i = 0; i < n; i++) {
    const strip = strips[i] as (typeof strips)[number];
    const k = density * strip.added * growth(water.share[i] as number, i);
    const kx = k * strip.addedX;
    out.a33 += k;
    out.a35 += kx;
    out.a55 += kx * strip.addedX;
  }
  addOuter3(out, density * hull.surge * growth(water.bodyShare, n), 1, 0, -hull.centroid.z);
  if (blade) {
    const k = density * blade.added * growth(water.bladeShare, n + 1);
    addOuter3(out, k, blade.normal.x, blade.normal.z, blade.lever);
  }
}

/**
 * Kinetic energy ½νᵀMν (J) with the velocity through the water, the water set moving included, and potential energy:
 * m g Z of G and ρ g ∫depth dV of what is under.
 */
export function energyOf(scene: Scene, mass: Sym3): number {
  const { u, w, q, craft, around, density, water, Z } = scene;
  const kinetic =
    (mass.a11 * u * u + mass.a33 * w * w + mass.a55 * q * q) / 2 +
    mass.a13 * u * w +
    mass.a15 * u * q +
    mass.a35 * w * q;
  return kinetic + around.gravity * (craft.rigid.mass * Z + density * water.depth);
}
