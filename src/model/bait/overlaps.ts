import { distance, lerp } from "../base";
import type { Vec } from "../base";
import { inMm } from "./error";
import type { BaitSpec, ChamberSpec, Item, Warning } from "./types";
import type { Piece } from "./bib";

/**
 * Overlaps of what lies inside the body (docs/model.md §3: warned about, not resolved). Seen in the plane of symmetry:
 * chambers as boxes, holes and inside fittings as balls of their volume, wires and the bib's tongue as straight pieces
 * with their thickness.
 */
interface Thing {
  readonly path: string;
  readonly label: string;
  readonly box?: ChamberSpec;
  readonly ball?: { readonly at: Vec; readonly radius: number };
  readonly rods?: {
    readonly pieces: readonly { readonly a: Vec; readonly b: Vec }[];
    readonly radius: number;
  };
}

/** Less than this is taken for touching, m. */
const SLACK = 1e-5;

function boxDistance(box: ChamberSpec, p: Vec): number {
  const dx = Math.max(box.from + p.x, -p.x - box.to, 0);
  const dz = Math.max(p.z - (box.height + box.tall / 2), box.height - box.tall / 2 - p.z, 0);
  return Math.hypot(dx, dz);
}

function rodDistance(p: Vec, a: Vec, b: Vec): number {
  const l2 = (b.x - a.x) ** 2 + (b.z - a.z) ** 2;
  if (l2 === 0) return distance(p, a);
  const t = ((p.x - a.x) * (b.x - a.x) + (p.z - a.z) * (b.z - a.z)) / l2;
  return distance(p, lerp(a, b, Math.min(1, Math.max(0, t))));
}

/** Does the straight piece come within `radius` of the box? Found by clipping it with the box grown by the radius. */
function rodMeetsBox(box: ChamberSpec, a: Vec, b: Vec, radius: number): boolean {
  let t0 = 0;
  let t1 = 1;
  const clip = (start: number, slope: number, low: number, high: number): void => {
    if (slope === 0) {
      if (start < low || start > high) t1 = -1;
      return;
    }
    const u = (low - start) / slope;
    const v = (high - start) / slope;
    t0 = Math.max(t0, Math.min(u, v));
    t1 = Math.min(t1, Math.max(u, v));
  };
  clip(-a.x, a.x - b.x, box.from - radius, box.to + radius);
  clip(a.z, b.z - a.z, box.height - box.tall / 2 - radius, box.height + box.tall / 2 + radius);
  return t1 > t0;
}

function rodsMeet(a: NonNullable<Thing["rods"]>, b: NonNullable<Thing["rods"]>): boolean {
  const reach = a.radius + b.radius - SLACK;
  return a.pieces.some((p) =>
    b.pieces.some((q) => {
      // Two straight pieces: nearest at an end of one of them, or crossing.
      const side = (o: Vec, u: Vec, v: Vec): number => (u.x - o.x) * (v.z - o.z) - (u.z - o.z) * (v.x - o.x);
      const crossing =
        side(p.a, p.b, q.a) * side(p.a, p.b, q.b) < 0 && side(q.a, q.b, p.a) * side(q.a, q.b, p.b) < 0;
      return (
        crossing ||
        Math.min(
          rodDistance(p.a, q.a, q.b),
          rodDistance(p.b, q.a, q.b),
          rodDistance(q.a, p.a, p.b),
          rodDistance(q.b, p.a, p.b),
        ) < reach
      );
    }),
  );
}

function overlap(a: Thing, b: Thing): boolean {
  if (a.box && b.box)
    return (
      Math.min(a.box.to, b.box.to) - Math.max(a.box.from, b.box.from) > SLACK &&
      (a.box.tall + b.box.tall) / 2 - Math.abs(a.box.height - b.box.height) > SLACK
    );
  if (a.ball && b.ball) return distance(a.ball.at, b.ball.at) < a.ball.radius + b.ball.radius - SLACK;
  if (a.box && b.ball) return boxDistance(a.box, b.ball.at) < b.ball.radius - SLACK;
  if (a.box && b.rods) {
    const { box, rods } = { box: a.box, rods: b.rods };
    return rods.pieces.some((p) => rodMeetsBox(box, p.a, p.b, rods.radius - SLACK));
  }
  if (a.ball && b.rods) {
    const { ball, rods } = { ball: a.ball, rods: b.rods };
    return rods.pieces.some((p) => rodDistance(ball.at, p.a, p.b) < ball.radius + rods.radius - SLACK);
  }
  if (a.rods && b.rods) return rodsMeet(a.rods, b.rods);
  return overlap(b, a);
}

/** @param insides pieces of each wire inside the body, in the order of the spec's wires */
export function overlapWarnings(
  spec: BaitSpec,
  items: readonly Item[],
  insides: readonly (readonly Piece[])[],
): Warning[] {
  const things: Thing[] = [];
  const labelOf = (group: Item["group"], index: number): string =>
    items.find((i) => i.group === group && i.index === index)?.item ?? group;
  spec.chambers.forEach((box, i) => {
    things.push({ path: `bait.chambers[${i}]`, label: labelOf("chambers", i), box });
  });
  for (const item of items) {
    if ((item.group === "ballast" || item.group === "fittings") && item.removed > 0)
      things.push({
        path: `bait.${item.group}[${item.index}]`,
        label: item.item,
        ball: { at: item.removedCentre, radius: Math.cbrt((3 * item.removed) / (4 * Math.PI)) },
      });
  }
  const wires: Thing[] = spec.wires.map((wire, i) => ({
    path: `bait.wires[${i}]`,
    label: labelOf("wires", i),
    rods: { pieces: insides[i] ?? [], radius: wire.diameter / 2 },
  }));
  things.push(...wires);
  if (spec.bib && spec.bib.slot > 0) {
    const { root, angle, slot, thickness } = spec.bib;
    const end = { x: root.x - slot * Math.cos(angle), z: root.z + slot * Math.sin(angle) };
    things.push({
      path: "bait.bib",
      label: "bib's tongue",
      rods: { pieces: [{ a: root, b: end }], radius: thickness / 2 },
    });
  }
  const found: Warning[] = [];
  things.forEach((a, i) => {
    for (const b of things.slice(i + 1)) {
      if (wires.includes(a) && wires.includes(b)) continue; // wires are twisted onto one another as a matter of course
      if (!overlap(a, b)) continue;
      const round = a.ball ?? b.ball;
      found.push({
        path: b.path,
        text:
          `"${a.label}" and "${b.label}" overlap inside the body; what they share is taken off twice` +
          (round ? ` (the hole is judged as a ball of its volume, ${inMm(2 * round.radius)} across).` : "."),
      });
    }
  });
  return found;
}
