import type { Wrench } from "./types";

export const wrench = (): Wrench => ({ x: 0, z: 0, m: 0 });

export function clearWrench(out: Wrench): void {
  out.x = 0;
  out.z = 0;
  out.m = 0;
}

/** Adds a force (fx, fz) that acts at (x, z) from the reference point: moment x·fz − z·fx, nose-up positive. */
export function addForce(out: Wrench, x: number, z: number, fx: number, fz: number): void {
  out.x += fx;
  out.z += fz;
  out.m += x * fz - z * fx;
}

export function addWrench(out: Wrench, w: Wrench): void {
  out.x += w.x;
  out.z += w.z;
  out.m += w.m;
}
