import { hypot, pow, square } from "../base";
import type { Bait } from "../bait";
import { densitySpread } from "../parts";
import { phiOfStation } from "../shape";
import type { Section } from "../shape";
import { obstacles } from "./obstacles";
import type { Rect } from "./obstacles";
import type { PlanKind, PlanOptions, PlanZone } from "./types";

/** The options of a plan with their defaults filled in. */
export type PlanSettings = Required<PlanOptions>;

/** A hole as the drill makes it. m, m³. */
export interface Bore {
  readonly diameter: number;
  readonly depth: number;
  readonly plug: number;
  readonly volume: number;
}

/** One place for a load, and what the load adds to the bait there: kg, m. */
export interface Seat {
  /** Middle of the pieces, body frame. */
  readonly x: number;
  readonly z: number;
  /** Mass that comes onto the bait: pieces and filler, less the wood that the drill takes away. */
  readonly mass: number;
  /** Volume that it displaces beyond the bait's own, m³: all of a piece on the skin, what stands proud of a hole. */
  readonly displaced: number;
  /** What it takes off the net buoyancy, kg. */
  readonly pull: number;
  /** Null for pieces fixed on the skin. */
  readonly bore: Bore | null;
}

/** Pieces of one kind in one hole or at one spot of the skin, with every seat that they can have, by falling station. */
export interface Load {
  readonly kind: number;
  readonly count: number;
  readonly where: "inside" | "outside";
  /** Standard deviation of the pieces' mass, kg: that of their metal where nobody has weighed them, else next to nothing. */
  readonly massDeviation: number;
  /** Volume of the pieces alone, m³. */
  readonly own: number;
  /** Half of the hole's or piece's width, m: two loads stand at least both halves and the clearance apart. */
  readonly half: number;
  readonly seats: readonly Seat[];
  /** Least and greatest pull of its seats, kg. */
  readonly leastPull: number;
  readonly mostPull: number;
}

/**
 * How much longer than the shortest a plug may be where the lowest seats give no plan, m: a longer plug lifts the weight, and
 * its filler weighs. Chosen for speed.
 */
const LONGER = [0, 1e-3, 2e-3, 3e-3, 5e-3];

const HAIR = 1e-9; // m, round-off
/**
 * Steps that a drawing needs: heights in 0.01 mm (here m), volumes in 0.1 mm³ (here m³). A plan is rounded to what is
 * written.
 */
const HEIGHT_DIGIT = 1e-5;
const VOLUME_DIGIT = 1e-10;
const rounded = (value: number, digit: number): number => Math.round(value / digit) * digit;

/** Stations of the grid within the zone, rising. */
export function gridStations(zone: PlanZone, step: number): number[] {
  const first = Math.ceil(zone.from / step - 1e-9);
  const last = Math.floor(zone.to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}

/** Heights between which a section is at least `side` broad to either side, m; null where there are none. */
function broadBetween(s: Section, side: number): { readonly low: number; readonly high: number } | null {
  if (side > s.halfBreadth) return null;
  const reach = (h: number, n: number): number => h * pow(1 - pow(side / s.halfBreadth, n), 1 / n);
  return {
    low: s.widest - reach(s.widest - s.bottom, s.exponentBelow),
    high: s.widest + reach(s.top - s.widest, s.exponentAbove),
  };
}

/** At one station, for one drill: the skin below, and between which heights a weight may stand. m */
interface Room {
  readonly station: number;
  readonly bottom: number;
  readonly low: number;
  readonly high: number;
}

/** The room for weights in holes of one drill at every station of the grid: the wall of wood stands all round the hole. */
function roomsFor(
  bait: Bait,
  zone: PlanZone,
  settings: PlanSettings,
  diameter: number,
  sectionAt: (s: number) => Section,
): Room[] {
  const { drawn } = bait;
  const half = diameter / 2;
  const side = half + zone.wall - HAIR;
  return gridStations(zone, settings.stationStep).flatMap((s): Room[] => {
    let low = -Infinity;
    let high = Infinity;
    for (const station of [s - half, s, s + half]) {
      if (!(station >= 0 && station <= drawn.length)) return [];
      const section = sectionAt(station);
      const broad = broadBetween(section, side);
      if (!broad) return [];
      low = Math.max(low, broad.low, section.bottom + zone.wall);
      high = Math.min(high, broad.high, section.top - zone.wall);
    }
    return low < high
      ? [{ station: s, bottom: drawn.edges.bottom(phiOfStation(s, drawn.length)), low, high }]
      : [];
  });
}

export interface SeatedKinds {
  readonly loads: readonly Load[];
  /** Kinds that no drill takes, and kinds for which the zone has no seat. */
  readonly withoutDrill: readonly number[];
  readonly withoutSeat: readonly number[];
}

/**
 * Every load that one place can hold, with its seats. At each station of the grid a load has one seat: the lowest that the
 * wall, the breadth of the body beside the hole and the zone allow, because a low weight holds the bait upright best;
 * `higher`: and a few above it. The hole is bored from below with the smallest drill that takes the piece. The plug below the pieces is as long as the wall,
 * or longer by whole steps of `heightStep`.
 */
export function loadsOf(
  bait: Bait,
  density: number,
  kinds: readonly PlanKind[],
  zone: PlanZone,
  settings: PlanSettings,
  higher = false,
): SeatedKinds {
  const loads: Load[] = [];
  const withoutDrill: number[] = [];
  const withoutSeat: number[] = [];
  const around = obstacles(bait);
  // The breadth is the one that the bench readings gave: the volume factor multiplies the half-breadth.
  const sections = new Map<number, Section>();
  const sectionAt = (s: number): Section => {
    let section = sections.get(s);
    if (!section) sections.set(s, (section = bait.shape.section(s)));
    return section;
  };
  const rooms = new Map<number, Room[]>();
  const roomsOf = (diameter: number): Room[] => {
    let known = rooms.get(diameter);
    if (!known) rooms.set(diameter, (known = roomsFor(bait, zone, settings, diameter, sectionAt)));
    return known;
  };
  const blocked = new Map<string, boolean>();
  const meetsSomething = (hole: Rect): boolean => {
    const key = `${hole.x0} ${hole.x1} ${hole.z1}`;
    let met = blocked.get(key);
    if (met === undefined) blocked.set(key, (met = around.some((far) => far(hole) < zone.clearance - HAIR)));
    return met;
  };

  const boreSeats = (kind: PlanKind, count: number, diameter: number): Seat[] => {
    const stack = count * kind.along;
    const own = (count * kind.mass) / kind.stuff.density;
    const half = diameter / 2;
    const seatOf = ({ station, bottom, low, high }: Room, longer: number): Seat[] => {
      const lowest = Math.max(low, zone.lowest === null ? -Infinity : zone.lowest - stack / 2);
      const steps = Math.max(0, Math.ceil((lowest - bottom - zone.wall - HAIR) / settings.heightStep));
      const plug = zone.wall + steps * settings.heightStep + longer;
      const depth = plug + stack;
      if (bottom + depth > high + HAIR) return [];
      const z = rounded(bottom + plug + stack / 2, HEIGHT_DIGIT);
      if (zone.highest !== null && z > zone.highest + HEIGHT_DIGIT) return [];
      if (meetsSomething({ x0: -station - half, x1: -station + half, z0: bottom, z1: bottom + depth }))
        return [];
      const volume = rounded((Math.PI / 4) * square(diameter) * depth, VOLUME_DIGIT);
      // docs/model.md §3: the hole takes wood away; pieces and filler come in; what stands proud displaces water.
      const mass =
        count * kind.mass + Math.max(0, volume - own) * settings.filler - volume * bait.bodyDensity;
      const displaced = Math.max(0, own - volume);
      const pull = mass - density * displaced;
      return [{ x: 0 - station, z, mass, displaced, pull, bore: { diameter, depth, plug, volume } }];
    };
    const plugs = higher ? LONGER : LONGER.slice(0, 1);
    return roomsOf(diameter).flatMap((room) => plugs.flatMap((longer) => seatOf(room, longer)));
  };
  /** Pieces fixed on the skin below: their middle on the bottom edge, clear of the eyes. */
  const skinSeats = (kind: PlanKind, count: number): Seat[] => {
    const mass = count * kind.mass;
    const displaced = mass / kind.stuff.density;
    const pull = mass - density * displaced;
    const eyes = [...bait.spec.hangers.map((h) => h.at), bait.spec.tie];
    return gridStations(zone, settings.stationStep).flatMap((s): Seat[] => {
      if (!(s >= 0 && s <= bait.drawn.length)) return [];
      const x = 0 - s;
      const z = rounded(bait.drawn.edges.bottom(phiOfStation(s, bait.drawn.length)), HEIGHT_DIGIT);
      if (zone.lowest !== null && z < zone.lowest - HEIGHT_DIGIT) return [];
      if (zone.highest !== null && z > zone.highest + HEIGHT_DIGIT) return [];
      if (eyes.some((e) => hypot(e.x - x, e.z - z) < kind.across / 2 + zone.clearance - HAIR)) return [];
      return [{ x, z, mass, displaced, pull, bore: null }];
    });
  };

  kinds.forEach((kind, k) => {
    const fitting = settings.drills.filter((d) => d >= kind.across - HAIR);
    const most = Math.min(kind.count, settings.pieces);
    let seated = most === 0;
    const spread = densitySpread(bait.spec.uncertainty, kind.stuff, "plastic");
    const add = (count: number, where: Load["where"], half: number, all: readonly Seat[]): void => {
      // A light piece in a wide hole can make the bait lighter than it was: then it is no ballast.
      const seats = all.filter((s) => s.pull > 0 && s.mass > 0);
      if (seats.length === 0) return;
      seated = true;
      loads.push({
        kind: k,
        count,
        where,
        massDeviation: kind.weighed === true ? 0 : count * kind.mass * spread,
        own: (count * kind.mass) / kind.stuff.density,
        half,
        seats,
        leastPull: seats.reduce((m, s) => Math.min(m, s.pull), Infinity),
        mostPull: seats.reduce((m, s) => Math.max(m, s.pull), -Infinity),
      });
    };
    for (let count = 1; count <= most; count++) {
      if (kind.inside && fitting.length > 0) {
        const diameter = Math.min(...fitting);
        add(count, "inside", diameter / 2, boreSeats(kind, count, diameter));
      }
      if (kind.outside) add(count, "outside", kind.across / 2, skinSeats(kind, count));
    }
    if (kind.inside && !kind.outside && fitting.length === 0) withoutDrill.push(k);
    else if (!seated) withoutSeat.push(k);
  });
  return { loads, withoutDrill, withoutSeat };
}
