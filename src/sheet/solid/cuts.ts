import { bibPlate } from "../../model/bait";
import type { Bait } from "../../model/bait";
import { linesOf } from "../templates/figure";
import { holesOf } from "../templates/holes";

/** A place in mm: aft of the nose tip, right of the plane of symmetry, up from the datum line. */
export type Place = readonly [number, number, number];

/** What is taken out of a half. Lengths in mm. */
export type Cut = { readonly what: string } & (
  | { readonly is: "box"; readonly from: Place; readonly to: Place }
  /** A round bore between two places, ends square. */
  | { readonly is: "bore"; readonly from: Place; readonly to: Place; readonly diameter: number }
  /** A flat slot: its middle, its length along a direction in the plane of symmetry, its breadth across, its thickness. */
  | {
      readonly is: "slot";
      readonly middle: Place;
      /** Unit vector in the plane of symmetry, aft and up. */
      readonly along: readonly [number, number];
      readonly length: number;
      readonly wide: number;
      readonly thick: number;
    }
);

const MM = 1e3;
/** How far a bore that comes from outside begins before the skin, mm. */
const BEFORE = 40;

/**
 * All that is cut into the wood of a bait: chambers, holes for weights, the channels of wires, the bib's slot. An eye that no
 * wire holds gets no hole: how it is fixed is its maker's choice.
 *
 * @param drills diameters at hand, m
 */
export function cutsOf(bait: Bait, drills: readonly number[]): readonly Cut[] {
  const { chambers, bib } = bait.spec;
  const at = (x: number, z: number): Place => [-MM * x, 0, MM * z];
  const cuts: Cut[] = chambers.map((c) => ({
    what: `chamber ‘${c.name}’`,
    is: "box",
    from: [MM * c.from, (-MM * c.wide) / 2, MM * (c.height - c.tall / 2)],
    to: [MM * c.to, (MM * c.wide) / 2, MM * (c.height + c.tall / 2)],
  }));
  for (const hole of holesOf(bait, drills)) {
    const [s, z, d, depth] = [hole.station, hole.height, hole.diameter, hole.depth].map((v) => MM * v) as [
      number,
      number,
      number,
      number,
    ];
    const bottom = MM * bait.drawn.section(hole.station).bottom;
    cuts.push({
      what: `hole of ‘${hole.name}’`,
      is: "bore",
      diameter: d,
      from: hole.from === "below" ? [s, 0, bottom - BEFORE] : [s, -depth, z],
      to: hole.from === "below" ? [s, 0, bottom + depth] : [s, depth, z],
    });
  }
  for (const [i, wire] of bait.spec.wires.entries())
    for (const path of linesOf(bait, `bait.wires[${i}]`, "inside"))
      path.slice(1).forEach((b, k) => {
        const a = path[k];
        if (a === undefined) return;
        cuts.push({
          what: `channel of ‘${wire.name || `wire ${i + 1}`}’`,
          is: "bore",
          diameter: MM * wire.diameter,
          from: at(a.x, a.z),
          to: at(b.x, b.z),
        });
      });
  if (bib !== null && bib.slot > 0) {
    const { tongue } = bibPlate(bib, (s) => bait.drawn.section(s).halfBreadth);
    const { along, middle } = tongue;
    cuts.push({
      what: "bib's slot",
      is: "slot",
      middle: at(middle.x, middle.z),
      along: [-along.x, along.z],
      length: MM * bib.slot,
      wide: MM * tongue.width,
      thick: MM * bib.thickness,
    });
  }
  return cuts;
}
