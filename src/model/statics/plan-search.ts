import { wrap } from "./rest";

/**
 * Exact search of a ballast plan. Everything is linear: a load of mass m in a hole of volume h in wood of density ρ_b, its plug
 * of density ρ_f, changes the bait by the mass μ = m + ρ_f (h − v) − ρ_b h at its place and displaces nothing; outside it adds
 * m and displaces v. So net buoyancy depends on which loads are chosen alone, and the trim on the sum of their moments.
 */

/** A place for a load, m, with what of it other loads must keep clear of. */
export interface Seat {
  readonly x: number;
  readonly z: number;
}

/** Pieces of one kind with the seats that they may take. */
export interface Candidate {
  readonly kind: number;
  readonly count: number;
  readonly where: "inside" | "outside";
  /** Mass that it adds to the bait, and volume that it displaces more; kg, m³. */
  readonly mass: number;
  readonly displaced: number;
  /** What it takes off the net buoyancy, kg. */
  readonly pull: number;
  /** Half of the hole's or piece's width, m: two loads stand at least both halves and the clearance apart in station. */
  readonly half: number;
  readonly seats: readonly Seat[];
}

/** The bait without the plan's loads: mass, displaced volume, first moments (kg·m, m⁴). */
export interface Base {
  readonly mass: number;
  readonly mx: number;
  readonly mz: number;
  readonly volume: number;
  readonly vx: number;
  readonly vz: number;
}

export interface SearchTarget {
  readonly density: number;
  readonly net: number;
  readonly netTolerance: number;
  readonly trim: number | null;
  readonly trimTolerance: number;
  readonly leastBG: number;
  readonly clearance: number;
}

/** A choice of loads with their seats, and what comes of it. */
export interface Found {
  readonly loads: readonly { readonly candidate: Candidate; readonly seat: Seat }[];
  readonly net: number;
  readonly trim: number;
  readonly BG: number;
  readonly misfit: number;
}

/** Net, trim and BG of the base with loads at seats. */
export function evaluate(
  base: Base,
  density: number,
  loads: Found["loads"],
): { readonly net: number; readonly trim: number; readonly BG: number } {
  let { mass, mx, mz, volume, vx, vz } = base;
  for (const { candidate, seat } of loads) {
    mass += candidate.mass;
    mx += candidate.mass * seat.x;
    mz += candidate.mass * seat.z;
    volume += candidate.displaced;
    vx += candidate.displaced * seat.x;
    vz += candidate.displaced * seat.z;
  }
  const x = vx / volume - mx / mass;
  const z = vz / volume - mz / mass;
  return { net: density * volume - mass, trim: Math.atan2(x, z), BG: Math.hypot(x, z) };
}

/** Misfit in net and trim, each in its tolerance. */
export const misfitOf = (t: SearchTarget, net: number, trim: number): number =>
  Math.hypot((net - t.net) / t.netTolerance, t.trim === null ? 0 : wrap(trim - t.trim) / t.trimTolerance);

/** Within the target, each figure by itself. */
export const fitsTarget = (t: SearchTarget, f: Pick<Found, "net" | "trim" | "BG">): boolean =>
  Math.abs(f.net - t.net) <= t.netTolerance &&
  (t.trim === null || Math.abs(wrap(f.trim - t.trim)) <= t.trimTolerance) &&
  f.BG >= t.leastBG;

interface Ranked {
  readonly seat: Seat;
  /** Share of the moment that turns away from the wanted trim: a·x + b·z in axes at that trim. */
  readonly along: number;
}

/**
 * Seats of one selection of candidates with the least trim misfit (with B highest above G where any trim will do), BG at least the
 * target's, stations clear of one another. Null where there are none.
 *
 * With θ* the wanted trim, B − G has the parts P = dx cos θ* − dz sin θ* across it and Q along it, and tan(θ − θ*) = P/Q. P is
 * linear in the seats: the last load is looked up near the seat that makes P = 0, outwards on both sides until |P| alone is
 * too great for any Q within the zone.
 */
export function bestSeats(base: Base, t: SearchTarget, selection: readonly Candidate[]): Found | null {
  let mass = base.mass;
  let volume = base.volume;
  for (const c of selection) {
    mass += c.mass;
    volume += c.displaced;
  }
  const net = t.density * volume - mass;
  const angle = t.trim ?? 0;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const bx = base.vx / volume - base.mx / mass;
  const bz = base.vz / volume - base.mz / mass;
  const across0 = bx * cos - bz * sin;
  const along0 = bx * sin + bz * cos;
  const lists = selection.map((c) => {
    const share = c.displaced / volume - c.mass / mass;
    const list = c.seats.map((seat): Ranked & { readonly other: number } => ({
      seat,
      along: share * (seat.x * cos - seat.z * sin),
      other: share * (seat.x * sin + seat.z * cos),
    }));
    return list.sort((p, q) => p.along - q.along);
  });
  if (lists.some((l) => l.length === 0)) return null;
  // Greatest Q within the zone: tan of the least angle that a given P allows.
  const greatest =
    along0 + lists.reduce((s, l) => s + l.reduce((m, r) => Math.max(m, r.other), -Infinity), 0);
  const chosen: Ranked[] = [];
  let best: Found | null = null;
  let bestAngle = Infinity;
  let bestMargin = -Infinity;

  const clear = (level: number, seat: Seat): boolean => {
    const c = selection[level];
    for (let i = 0; i < level; i++) {
      const other = selection[i];
      const at = chosen[i];
      if (!c || !other || !at) return false;
      if (Math.abs(at.seat.x - seat.x) < c.half + other.half + t.clearance - 1e-12) return false;
    }
    return true;
  };
  const offer = (across: number, along: number): void => {
    const BG = Math.hypot(across, along);
    if (BG < t.leastBG) return;
    const off = t.trim === null ? 0 : Math.abs(Math.atan2(across, along));
    // Where any trim will do, the upright margin decides: the height of B above G on an even keel.
    const margin = t.trim === null ? along : BG;
    if (off > bestAngle || (off === bestAngle && margin <= bestMargin)) return;
    bestAngle = off;
    bestMargin = margin;
    const loads = selection.map((candidate, i) => ({ candidate, seat: (chosen[i] as Ranked).seat }));
    const { trim } = evaluate(base, t.density, loads);
    best = { loads, net, trim, BG, misfit: misfitOf(t, net, trim) };
  };
  const last = selection.length - 1;
  const descend = (level: number, across: number, along: number): void => {
    const list = lists[level] ?? [];
    if (level < last || t.trim === null) {
      for (const r of list) {
        if (!clear(level, r.seat)) continue;
        chosen[level] = r;
        if (level < last) descend(level + 1, across + r.along, along + r.other);
        else offer(across + r.along, along + r.other);
      }
      return;
    }
    let hi = lowerBound(list, -across);
    let lo = hi - 1;
    const tooFar = (P: number): boolean =>
      bestAngle < Math.PI / 2 && Math.abs(P) > Math.max(0, greatest) * Math.tan(bestAngle) + 1e-15;
    for (;;) {
      const up = hi < list.length ? Math.abs(across + (list[hi] as Ranked).along) : Infinity;
      const down = lo >= 0 ? Math.abs(across + (list[lo] as Ranked).along) : Infinity;
      if (up === Infinity && down === Infinity) return;
      const r = list[up <= down ? hi++ : lo--];
      if (!r) return;
      if (tooFar(across + r.along)) return;
      if (!clear(level, r.seat)) continue;
      chosen[level] = r;
      offer(across + r.along, along + r.other);
    }
  };
  if (selection.length === 0) offer(across0, along0);
  else descend(0, across0, along0);
  return best;
}

function lowerBound(list: readonly Ranked[], value: number): number {
  let lo = 0;
  let hi = list.length;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    if ((list[mid] as Ranked).along < value) lo = mid + 1;
    else hi = mid;
  }
  return lo;
}
