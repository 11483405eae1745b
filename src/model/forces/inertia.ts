import { addOuter3, type Sym3, type Wrench } from "../base";
import type { Situation } from "./situation";

/*
 * Mass matrix and inertia terms of docs/model.md §6.3 and §6.4, about G, in (u, w, q).
 *
 * Added mass is a sum of squares ρ Σ a_k h_k h_kᵀ: strips in heave h = (0, 1, x̃), surge h = (1, 0, −z_C) by the body's
 * share, the bib h = (n_x, n_z, lever). Partly out of the water each counts by its share f_k(Z, θ) under water. While a
 * share changes:
 *  - Going in, momentum is kept: the water set moving takes it from the bait (the slam of von Kármán 1929, NACA TN 321).
 *    Half of the energy so taken is in the water that now moves along; the other half goes into the splash. A step reads
 *    the growth of the shares (`enteredMass`) and gives the impulse as a whole.
 *  - Coming out, the water is shed with the bait's own velocity and takes its kinetic energy with it: there is no force.
 *
 * Either way, crossing the surface never gains energy.
 */

/** The mass matrix at the situation's state: rigid + ρ·added under water. */
export function massMatrix(situation: Situation, out: Sym3): void {
  const { swimmer, density, water } = situation;
  const { rigid, addedBody: a, addedBib: b, strips, hull, blade } = swimmer;
  out.a11 = rigid.mass;
  out.a13 = 0;
  out.a15 = 0;
  out.a33 = rigid.mass;
  out.a35 = 0;
  out.a55 = rigid.inertia;
  if (situation.allUnder) {
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
 * −(Kirchhoff terms) at the situation's state, added to `out`: with p = M ν, −(−q p_w, q p_u, u p_w − w p_u). They do no work:
 * (u, w, q)·them = 0. Velocities are through the water: evenly moving water is as good a frame of reference as any other,
 * and M contains the bait's own mass too.
 */
export function kirchhoff(situation: Situation, mass: Sym3, out: Wrench): void {
  const { u, w, q } = situation;
  const pu = mass.a11 * u + mass.a13 * w + mass.a15 * q;
  const pw = mass.a13 * u + mass.a33 * w + mass.a35 * q;
  out.x += q * pw;
  out.z -= q * pu;
  out.m -= u * pw - w * pu;
}

/** Immersed shares of the strips, the body and the bib at one moment, in that order. */
export function copyShares({ water, swimmer }: Situation, out: Float64Array): void {
  const n = swimmer.strips.length;
  out.set(water.share);
  out[n] = water.bodyShare;
  out[n + 1] = water.bladeShare;
}

/** Added mass of the parts whose share has grown since `before` (as `copyShares` wrote it), each by its growth. */
export function enteredMass(situation: Situation, before: Float64Array, out: Sym3): void {
  const { swimmer, density, water } = situation;
  const { strips, hull, blade } = swimmer;
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
export function energyOf(situation: Situation, mass: Sym3): number {
  const { u, w, q, swimmer, around, density, water, Z } = situation;
  const kinetic =
    (mass.a11 * u * u + mass.a33 * w * w + mass.a55 * q * q) / 2 +
    mass.a13 * u * w +
    mass.a15 * u * q +
    mass.a35 * w * q;
  return kinetic + around.gravity * (swimmer.rigid.mass * Z + density * water.depth);
}
