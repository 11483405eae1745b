import type { Vec } from "../base";
import type { Bait } from "../bait";
import { halfBreadthAt, phiOfStation } from "../shape";
import type { Section, Shape } from "../shape";
import type { PlanHole, PlanKind, PlanOptions, PlanZone } from "./plan-types";
import type { Candidate, Seat } from "./plan-search";

/** What a plan leaves open, filled in. */
export type PlanSettings = Required<PlanOptions>;

/** A hole for pieces of one kind: the smallest drill at hand that takes them; null where there is none. */
export interface Bore {
  readonly diameter: number;
  readonly depth: number;
  readonly plug: number;
  readonly volume: number;
}

const HAIR = 1e-9; // m, round-off

export function boreFor(kind: PlanKind, count: number, plug: number, drills: readonly number[]): Bore | null {
  const fits = drills.filter((d) => d >= kind.across - HAIR);
  if (fits.length === 0) return null;
  const diameter = Math.min(...fits);
  const depth = plug + count * kind.along;
  return { diameter, depth, plug, volume: (Math.PI / 4) * diameter ** 2 * depth };
}

interface Rect {
  readonly x0: number;
  readonly x1: number;
  readonly z0: number;
  readonly z1: number;
}

/** Distance from a point to an upright rectangle, m; 0 inside. */
const fromPoint = (r: Rect, p: Vec): number =>
  Math.hypot(Math.max(r.x0 - p.x, 0, p.x - r.x1), Math.max(r.z0 - p.z, 0, p.z - r.z1));

/** Distance from a point to a straight piece, m. */
function pointToPiece(p: Vec, a: Vec, b: Vec): number {
  const dx = b.x - a.x;
  const dz = b.z - a.z;
  const length2 = dx * dx + dz * dz;
  const t = length2 > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.z - a.z) * dz) / length2)) : 0;
  return Math.hypot(a.x + t * dx - p.x, a.z + t * dz - p.z);
}

/** Whether a straight piece meets an upright rectangle (Liang & Barsky 1984, ACM Trans. Graph. 3:1–22). */
function meets(r: Rect, a: Vec, b: Vec): boolean {
  let t0 = 0;
  let t1 = 1;
  for (const [d, from, low, high] of [
    [b.x - a.x, a.x, r.x0, r.x1],
    [b.z - a.z, a.z, r.z0, r.z1],
  ] as const) {
    if (d === 0) {
      if (from < low || from > high) return false;
      continue;
    }
    const p = (low - from) / d;
    const q = (high - from) / d;
    t0 = Math.max(t0, Math.min(p, q));
    t1 = Math.min(t1, Math.max(p, q));
  }
  return t0 <= t1;
}

/** Distance from a straight piece to an upright rectangle, m; 0 where they meet. */
function fromPiece(r: Rect, a: Vec, b: Vec): number {
  if (meets(r, a, b)) return 0;
  const corners = [
    { x: r.x0, z: r.z0 },
    { x: r.x0, z: r.z1 },
    { x: r.x1, z: r.z0 },
    { x: r.x1, z: r.z1 },
  ];
  return Math.min(fromPoint(r, a), fromPoint(r, b), ...corners.map((c) => pointToPiece(c, a, b)));
}

/** What stands in the way inside the body: each gives its distance from a hole's rectangle, m. */
function obstacles(bait: Bait): ((hole: Rect) => number)[] {
  const { spec } = bait;
  const out: ((hole: Rect) => number)[] = [];
  for (const c of spec.chambers) {
    const box = { x0: -c.to, x1: -c.from, z0: c.height - c.tall / 2, z1: c.height + c.tall / 2 };
    out.push((h) =>
      Math.hypot(Math.max(box.x0 - h.x1, 0, h.x0 - box.x1), Math.max(box.z0 - h.z1, 0, h.z0 - box.z1)),
    );
  }
  for (const w of spec.wires)
    w.path.forEach((b, i) => {
      const a = w.path[i - 1];
      if (a) out.push((h) => fromPiece(h, a, b) - w.diameter / 2);
    });
  if (spec.bib && spec.bib.slot > 0) {
    const { root, angle, slot, thickness } = spec.bib;
    const end = { x: root.x - Math.cos(angle) * slot, z: root.z + Math.sin(angle) * slot };
    out.push((h) => fromPiece(h, root, end) - thickness / 2);
  }
  for (const h of spec.hangers) out.push((r) => fromPoint(r, h.at));
  for (const b of spec.ballast) {
    // The drawing does not say what shape a given hole has: taken for a cylinder as deep as wide.
    const half = Math.cbrt((4 * (b.hole ?? b.mass / b.stuff.density)) / Math.PI) / 2;
    if (b.where === "inside") out.push((h) => fromPoint(h, b.at) - half);
  }
  return out;
}

/** Heights of the edges at a station, m; outside the body null. */
function edgesAt(shape: Shape, s: number): { readonly top: number; readonly bottom: number } | null {
  if (!(s >= 0 && s <= shape.length)) return null;
  const phi = phiOfStation(s, shape.length);
  return { top: shape.edges.top(phi), bottom: shape.edges.bottom(phi) };
}

/** Stations of the grid within the zone, rising. */
export function gridStations(zone: PlanZone, step: number): number[] {
  const first = Math.ceil(zone.from / step - 1e-9);
  const last = Math.floor(zone.to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}

/**
 * Seats of a load in a hole bored from below: within the zone; wood of the wall's thickness beside it, above it, and below
 * it to the skin (there the plug); the whole hole clear of what the bait holds.
 */
function boreSeats(
  bait: Bait,
  zone: PlanZone,
  settings: PlanSettings,
  bore: Bore,
  around: readonly ((hole: Rect) => number)[],
  sectionAt: (s: number) => Section,
): Seat[] {
  const { drawn } = bait;
  const half = bore.diameter / 2;
  const side = half + zone.wall - HAIR;
  return gridStations(zone, settings.stationStep).flatMap((s): Seat[] => {
    const edges = edgesAt(drawn, s);
    if (!edges) return [];
    const low = edges.bottom + bore.plug;
    const high = edges.bottom + bore.depth;
    const z = (low + high) / 2;
    if (zone.lowest !== null && z < zone.lowest - HAIR) return [];
    if (zone.highest !== null && z > zone.highest + HAIR) return [];
    for (const station of [s - half, s, s + half]) {
      if (!(station >= 0 && station <= drawn.length)) return [];
      const section = sectionAt(station);
      if (low < section.bottom + zone.wall - HAIR || high > section.top - zone.wall + HAIR) return [];
      if (halfBreadthAt(section, low) < side || halfBreadthAt(section, high) < side) return [];
    }
    const hole = { x0: -s - half, x1: -s + half, z0: edges.bottom, z1: high };
    if (around.some((far) => far(hole) < zone.clearance - HAIR)) return [];
    return [{ x: 0 - s, z }];
  });
}

/** Seats of pieces fixed on the skin below: their middle on the bottom edge, clear of the eyes. */
function skinSeats(bait: Bait, zone: PlanZone, settings: PlanSettings, half: number): Seat[] {
  return gridStations(zone, settings.stationStep).flatMap((s): Seat[] => {
    const edges = edgesAt(bait.drawn, s);
    if (!edges) return [];
    const seat = { x: 0 - s, z: edges.bottom };
    if (zone.lowest !== null && seat.z < zone.lowest - HAIR) return [];
    if (zone.highest !== null && seat.z > zone.highest + HAIR) return [];
    const eyes = [...bait.spec.hangers.map((h) => h.at), bait.spec.tie];
    if (eyes.some((e) => Math.hypot(e.x - seat.x, e.z - seat.z) < half + zone.clearance - HAIR)) return [];
    return [seat];
  });
}

export interface SeatedKinds {
  readonly candidates: readonly (Candidate & { readonly bore: Bore | null })[];
  /** Kinds that no drill takes, and kinds for which the zone has no seat. */
  readonly withoutDrill: readonly number[];
  readonly withoutSeat: readonly number[];
}

/** Every load that one place can hold, with its seats. */
export function candidatesOf(
  bait: Bait,
  density: number,
  kinds: readonly PlanKind[],
  zone: PlanZone,
  settings: PlanSettings,
): SeatedKinds {
  const candidates: (Candidate & { bore: Bore | null })[] = [];
  const withoutDrill: number[] = [];
  const withoutSeat: number[] = [];
  const known = new Map<string, Seat[]>();
  const around = obstacles(bait);
  // The breadth as the bench found it: the factor multiplies the half-breadth.
  const sections = new Map<number, Section>();
  const sectionAt = (s: number): Section => {
    let section = sections.get(s);
    if (!section) sections.set(s, (section = bait.shape.section(s)));
    return section;
  };
  kinds.forEach((kind, k) => {
    const most = Math.min(kind.count, settings.pieces);
    let seated = most === 0;
    for (let count = 1; count <= most; count++) {
      const own = (count * kind.mass) / kind.stuff.density;
      if (kind.inside)
        for (let lift = 0; lift < settings.heights; lift++) {
          const bore = boreFor(kind, count, zone.wall + lift * settings.heightStep, settings.drills);
          if (!bore) break;
          const key = `${bore.diameter} ${bore.depth} ${bore.plug}`;
          let seats = known.get(key);
          if (!seats) known.set(key, (seats = boreSeats(bait, zone, settings, bore, around, sectionAt)));
          if (seats.length === 0) continue;
          seated = true;
          // docs/model.md §3: the hole takes wood away, the weight and the filler come in; what stands proud displaces.
          const hole = bore.volume;
          const mass =
            count * kind.mass + Math.max(0, hole - own) * settings.filler - hole * bait.bodyDensity;
          const displaced = Math.max(0, own - hole);
          candidates.push({
            kind: k,
            count,
            where: "inside",
            mass,
            displaced,
            pull: mass - density * displaced,
            half: bore.diameter / 2,
            seats,
            bore,
          });
        }
      if (kind.outside) {
        const seats = skinSeats(bait, zone, settings, kind.across / 2);
        if (seats.length === 0) continue;
        seated = true;
        const mass = count * kind.mass;
        candidates.push({
          kind: k,
          count,
          where: "outside",
          mass,
          displaced: own,
          pull: mass - density * own,
          half: kind.across / 2,
          seats,
          bore: null,
        });
      }
    }
    const drilled = settings.drills.some((d) => d >= kind.across - HAIR);
    if (kind.inside && !kind.outside && !drilled) withoutDrill.push(k);
    else if (!seated) withoutSeat.push(k);
  });
  return { candidates, withoutDrill, withoutSeat };
}

/** The hole of a load for the plan's words. */
export function holeOf(bait: Bait, bore: Bore, seat: Seat): PlanHole {
  const edges = edgesAt(bait.drawn, 0 - seat.x);
  return {
    diameter: bore.diameter,
    depth: bore.depth,
    volume: bore.volume,
    plug: bore.plug,
    mouth: { x: seat.x, z: edges?.bottom ?? seat.z },
  };
}
