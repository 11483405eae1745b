import { square } from "../base";
import type { Shape } from "../shape";
import { stuff } from "./checks";
import { rowOf } from "./rows";
import { densitySpread, drawn } from "./spread";
import type { DrawnBody, NewInput, Row, Stuff, UncertaintySpec } from "./types";

/**
 * The body, to which every other part is fitted. It is not an entry of `PARTS`: its row needs the rows of all others, and
 * its outline belongs to the shape room.
 */

export function checkBody(body: Stuff): void {
  stuff("bait.body", body);
}

/**
 * Row of the body: density × (the outline's volume − all that is removed). Its inertia is that of its sections less that of
 * the removals: holes count as points at their centres, chambers as boxes, wires as rods, the bib's tongue as a plate.
 */
export function bodyRow(shape: Shape, density: number, fitted: readonly Row[]) {
  const { volume, centroid } = shape;
  const removed = fitted.reduce((sum, i) => sum + i.removed, 0);
  const left = volume - removed;
  const centre = {
    x: (volume * centroid.x - fitted.reduce((s, i) => s + i.removed * i.removedCentre.x, 0)) / left,
    z: (volume * centroid.z - fitted.reduce((s, i) => s + i.removed * i.removedCentre.z, 0)) / left,
  };
  const apart = (at: { readonly x: number; readonly z: number }): number =>
    square(at.x - centre.x) + square(at.z - centre.z);
  const second =
    shape.secondMomentX +
    shape.secondMomentZ +
    volume * apart(centroid) -
    fitted.reduce((s, i) => s + i.removedInertia + i.removed * apart(i.removedCentre), 0);
  return rowOf(
    {
      item: "body",
      group: "body",
      part: "item",
      mass: density * left,
      massCentre: centre,
      inertia: density * second,
      displaced: volume,
      displacedCentre: centroid,
      immersing: { as: "body" },
      removedCentre: centroid,
      ownVolume: volume,
    },
    0,
  );
}

/**
 * Uncertain inputs of the body. Overall length, height and breadth scale it as a whole. Its density counts only where no
 * weighing of the body has given it.
 *
 * @param density as the bench readings or the file have it, kg/m³
 * @param model registers a function that writes the body of one draw
 */
export function bodyUncertain(
  body: { readonly stuff: Stuff; readonly drawn: Shape; readonly density: number; readonly weighed: boolean },
  out: DrawnBody,
  uncertainty: UncertaintySpec,
  input: NewInput,
  model: (write: () => void) => void,
): void {
  const shape = body.drawn;
  if (!body.weighed) {
    const e = input("body: density");
    // A body of no named class counts as wood, whose uncertainty is the widest.
    const sigma = densitySpread(uncertainty, body.stuff, "wood");
    model(() => {
      out.density = body.density * drawn(1, sigma, e());
    });
  }
  const mm = uncertainty.drawnLength;
  const eL = input("body: overall length");
  const eH = input("body: height");
  const eB = input("body: breadth");
  model(() => {
    out.length = drawn(1, mm / shape.length, eL());
    out.height = drawn(1, mm / shape.maxHeight, eH());
    out.breadth = drawn(1, mm / (2 * shape.maxHalfBreadth), eB());
  });
}
