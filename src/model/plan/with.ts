import type { Bait, BaitSpec, BallastSpec } from "../bait";
import { phiOfStation } from "../shape";
import type { Placed } from "./goal";
import type { Bore, Load, Seat } from "./seats";
import type { PlanHole, PlanKind } from "./types";

/** The spec with a plan's weights. A weighing of the body was taken before their holes were drilled, and is marked so. */
export function withPlan(
  bait: Bait,
  placed: readonly Placed[],
  kinds: readonly PlanKind[],
  filler: number,
): BaitSpec {
  const taken = new Set(bait.spec.ballast.map((b) => b.name));
  const added = placed.flatMap(({ load, seat }): BallastSpec[] => {
    const kind = kinds[load.kind];
    if (!kind) return [];
    const wanted = load.count > 1 ? `${load.count} × ${kind.name}` : kind.name;
    let name = wanted;
    for (let k = 2; taken.has(name); k++) name = `${wanted} (${k})`;
    taken.add(name);
    return [
      {
        name,
        at: { x: seat.x, z: seat.z },
        mass: load.count * kind.mass,
        ...(kind.weighed === true ? {} : { weighed: false }),
        stuff: kind.stuff,
        where: load.where,
        hole: seat.bore?.volume ?? null,
        ...(seat.bore ? { drill: seat.bore.diameter } : {}),
        filler: seat.bore ? filler : 0,
      },
    ];
  });
  const inside = added.filter((b) => b.where === "inside").map((b) => b.name);
  return {
    ...bait.spec,
    ballast: [...bait.spec.ballast, ...added],
    bench: bait.spec.bench.map((r) =>
      r.kind === "weighing" && r.with.includes("body") && inside.length > 0
        ? {
            ...r,
            // A group in a weighing means the items of that time. They are written by name, so that the new weights do not
            // count as weighed.
            with: r.with.flatMap((w) => (w === "ballast" ? bait.spec.ballast.map((b) => b.name) : [w])),
            before: [
              ...(r.before ?? []).flatMap((w) =>
                w === "ballast" ? bait.spec.ballast.map((b) => b.name) : [w],
              ),
              ...inside,
            ],
          }
        : r,
    ),
  };
}

/** The hole of a load for the plan's words. */
export function holeOf(bait: Bait, seat: Seat, bore: Bore, load: Load, filler: number): PlanHole {
  const { edges, length } = bait.drawn;
  return {
    diameter: bore.diameter,
    depth: bore.depth,
    volume: bore.volume,
    plug: bore.plug,
    mouth: { x: seat.x, z: edges.bottom(phiOfStation(0 - seat.x, length)) },
    filler: Math.max(0, bore.volume - load.own) * filler,
  };
}
