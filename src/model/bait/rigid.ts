import { square } from "../base";
import type { Item } from "../parts";
import type { RigidSet } from "./types";

/** A set of items as one rigid body; B stands at G where nothing displaces. */
export function rigidOf(items: readonly Item[]): RigidSet {
  let mass = 0;
  let mx = 0;
  let mz = 0;
  let displaced = 0;
  let dx = 0;
  let dz = 0;
  for (const i of items) {
    mass += i.mass;
    mx += i.mass * i.massCentre.x + i.moment.x;
    mz += i.mass * i.massCentre.z + i.moment.z;
    displaced += i.displaced;
    dx += i.displaced * i.displacedCentre.x;
    dz += i.displaced * i.displacedCentre.z;
  }
  if (!(mass > 0)) throw new RangeError("a rigid set needs mass: none of its items has any");
  const G = { x: mx / mass, z: mz / mass };
  const B = displaced > 0 ? { x: dx / displaced, z: dz / displaced } : G;
  let inertia = 0;
  for (const i of items)
    inertia += i.inertia + i.mass * (square(i.massCentre.x - G.x) + square(i.massCentre.z - G.z));
  return { mass, G, inertia, displaced, B };
}
