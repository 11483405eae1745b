import { areApart, ballRadius, inMm, keepOuts, overlap, roomOf } from "../parts";
import type { Bodies, Item, KeepOut, Solid, Warning } from "../parts";
import type { BaitSpec } from "./types";

/** Boxes first, then holes, then rods: where two things overlap, the later one in this order has the warning. */
const ORDER: readonly Solid["is"][] = ["box", "hole", "rods", "eye"];

/**
 * Overlaps of what lies inside the body (docs/model.md §3: warned about, not resolved), seen in the plane of symmetry:
 * chambers as boxes, drilled holes as they are drilled, other holes and inside fittings as balls of their volume, wires and the bib's tongue as straight pieces
 * with their thickness.
 */
export function overlapWarnings(spec: BaitSpec, bodies: Bodies, items: readonly Item[]): Warning[] {
  const things = keepOuts(spec, bodies)
    .filter(({ solid }) => solid.is !== "eye")
    .sort((a, b) => ORDER.indexOf(a.solid.is) - ORDER.indexOf(b.solid.is));
  // Most pairs are far apart: the rectangles that they lie in tell so at once.
  const rooms = things.map(({ solid }) => roomOf(solid));
  const labelOf = ({ key, index, solid }: KeepOut): string =>
    solid.label ?? items.find((i) => i.group === key && i.index === index)?.item ?? key;
  const found: Warning[] = [];
  things.forEach((a, i) => {
    for (let j = i + 1; j < things.length; j++) {
      const b = things[j];
      if (b === undefined || areApart(rooms[i], rooms[j])) continue;
      if (a.key === b.key && a.part.mayTouch === true) continue;
      const depth = overlap(a.solid, b.solid);
      if (depth === 0) continue;
      const round = [a.solid, b.solid].find((solid) => solid.is === "hole");
      found.push({
        path: b.path,
        text:
          `"${labelOf(a)}" and "${labelOf(b)}" overlap by ${inMm(depth)} inside the body; what they share is taken off twice` +
          (round
            ? ` (the hole is judged as a ball of its volume, ${inMm(2 * ballRadius(round.volume))} across). Move one of them.`
            : ". Move one of them."),
      });
    }
  });
  return found;
}
