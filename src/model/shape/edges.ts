import { asin, pchip, piecewiseLinear, sin, type Cubic } from "../base";
import type { Edges, Knot, Section, ShapeSpec } from "./types";

/** A drawing that is no body. `place` is the path within the shape, e.g. "top[2]"; the message says what to do. */
export class ShapeError extends RangeError {
  readonly place: string;
  readonly found: string;
  readonly remedy: string;

  constructor(place: string, found: string, remedy: string) {
    super(`${place}: ${found}; ${remedy}`);
    this.name = "ShapeError";
    this.place = place;
    this.found = found;
    this.remedy = remedy;
  }
}

/** φ of a station, s = L(1 − cos φ)/2; exact near both ends. */
export function phiOfStation(s: number, length: number): number {
  if (s <= 0) return 0;
  if (s >= length) return Math.PI;
  return 2 * s <= length
    ? 2 * asin(Math.sqrt(s / length))
    : Math.PI - 2 * asin(Math.sqrt((length - s) / length));
}

/** Station of φ, L·sin²(φ/2), m. */
export function stationOfPhi(phi: number, length: number): number {
  const half = sin(phi / 2);
  return length * half * half;
}

/**
 * The section that the edges give at φ. Round-off at closed ends is removed, so that heights and breadth are never below 0.
 */
export function sectionAt(edges: Edges, phi: number): Section {
  const bottom = edges.bottom(phi);
  const top = Math.max(edges.top(phi), bottom);
  return {
    s: stationOfPhi(phi, edges.length),
    top,
    bottom,
    widest: Math.min(Math.max(edges.widest(phi), bottom), top),
    halfBreadth: Math.max(edges.halfBreadth(phi), 0),
    exponentAbove: edges.exponentAbove(phi),
    exponentBelow: edges.exponentBelow(phi),
  };
}

const mm = (v: number): string => `${Number((v * 1000).toPrecision(6))} mm`;

/** One curve may pass another by this share of the length, because that is round-off. */
const ROUND_OFF = 1e-9;

/**
 * The edges of a drawn body: each curve is the monotone piecewise cubic in φ through its knots; exponents are linear in φ
 * (docs/model.md §2). Throws `ShapeError` with the place and the remedy where the knots describe no body.
 */
export function edgesFromKnots(spec: ShapeSpec): Edges {
  const L = spec.length;
  if (!(Number.isFinite(L) && L > 0)) throw new ShapeError("length", `found ${L}`, "give a length above 0");
  const top = edge("top", spec.top, L);
  const bottom = edge("bottom", spec.bottom, L);
  const halfBreadth = edge("halfBreadth", spec.halfBreadth, L);
  spec.halfBreadth.forEach((k, i) => {
    if (k.v < 0) throw new ShapeError(`halfBreadth[${i}]`, `found ${mm(k.v)}`, "half-breadths are 0 or more");
  });
  const exponentAbove = exponent("exponentAbove", spec.exponentAbove, L);
  const exponentBelow = exponent("exponentBelow", spec.exponentBelow, L);
  order("top", top, spec.top, "bottom", bottom, L);
  const widest = spec.widest === undefined ? null : edge("widest", spec.widest, L);
  if (widest && spec.widest) {
    order("top", top, spec.top, "widest", widest, L);
    order("widest", widest, spec.widest, "bottom", bottom, L);
  }
  const lists = [
    spec.top,
    spec.bottom,
    spec.halfBreadth,
    spec.widest ?? [],
    spec.exponentAbove,
    spec.exponentBelow,
  ];
  const breaks = mergedBreaks(lists.flatMap((list) => list.map((k) => phiOfStation(k.s, L))));
  return {
    length: L,
    breaks,
    top: top.at,
    bottom: bottom.at,
    halfBreadth: halfBreadth.at,
    widest: widest ? widest.at : (phi) => (top.at(phi) + bottom.at(phi)) / 2,
    exponentAbove,
    exponentBelow,
  };
}

/** Rising, from 0 to π; values closer than 1e-9 rad count as one. */
function mergedBreaks(phis: readonly number[]): number[] {
  const merged = [0];
  for (const phi of [...phis].sort((a, b) => a - b))
    if (phi - (merged.at(-1) ?? 0) > 1e-9 && Math.PI - phi > 1e-9) merged.push(phi);
  merged.push(Math.PI);
  return merged;
}

function checkKnots(name: string, knots: readonly Knot[], L: number, least: number): void {
  if (knots.length < least)
    throw new ShapeError(
      name,
      `found ${knots.length} points`,
      `give ${least === 1 ? "a point" : "two points"} or more`,
    );
  knots.forEach((k, i) => {
    const place = `${name}[${i}]`;
    if (!Number.isFinite(k.s) || !Number.isFinite(k.v))
      throw new ShapeError(place, `found (${k.s}, ${k.v})`, "station and value are finite numbers");
    const before = knots[i - 1];
    if (before && !(k.s > before.s))
      throw new ShapeError(
        place,
        `station ${mm(k.s)} after ${mm(before.s)}`,
        "stations rise strictly from nose to tail",
      );
    if (k.s < -ROUND_OFF * L || k.s > (1 + ROUND_OFF) * L)
      throw new ShapeError(place, `station ${mm(k.s)}`, `stations lie between 0 and the length, ${mm(L)}`);
  });
}

function edge(name: string, knots: readonly Knot[], L: number): Cubic {
  checkKnots(name, knots, L, 2);
  const first = knots[0];
  const last = knots.at(-1);
  if (first && Math.abs(first.s) > ROUND_OFF * L)
    throw new ShapeError(`${name}[0]`, `station ${mm(first.s)}`, "the first point stands at station 0");
  if (last && Math.abs(last.s - L) > ROUND_OFF * L)
    throw new ShapeError(
      `${name}[${knots.length - 1}]`,
      `station ${mm(last.s)}`,
      `the last point stands at the length, ${mm(L)}`,
    );
  return pchip(
    knots.map((k, i) => (i === 0 ? 0 : i === knots.length - 1 ? Math.PI : phiOfStation(k.s, L))),
    knots.map((k) => k.v),
  );
}

function exponent(name: string, knots: readonly Knot[], L: number): (phi: number) => number {
  checkKnots(name, knots, L, 1);
  knots.forEach((k, i) => {
    if (!(k.v >= 1 && k.v <= 10))
      throw new ShapeError(`${name}[${i}]`, `found ${k.v}`, "exponents lie between 1 and 10");
  });
  return piecewiseLinear(
    knots.map((k) => phiOfStation(k.s, L)),
    knots.map((k) => k.v),
  );
}

/**
 * Refuses a lower curve that rises above the upper one anywhere, and names the worst place. Between two knots the
 * difference is one cubic. Its least value is at an end or where its derivative, a parabola, is zero: so the check is
 * exact.
 */
function order(
  upName: string,
  up: Cubic,
  upKnots: readonly Knot[],
  downName: string,
  down: Cubic,
  L: number,
): void {
  const phis = mergedBreaks([...up.x, ...down.x]);
  const gap = (phi: number): number => up.at(phi) - down.at(phi);
  let worst = 0;
  for (let i = 0; i + 1 < phis.length; i++) {
    const a = phis[i] ?? 0;
    const h = (phis[i + 1] ?? 0) - a;
    for (const t of [0, 1, ...turningPoints(up, down, a, h)])
      if (gap(a + t * h) < gap(worst)) worst = a + t * h;
  }
  if (gap(worst) >= -ROUND_OFF * L) return;
  const s = stationOfPhi(worst, L);
  const off = (k: Knot | undefined): number => Math.abs((k?.s ?? Infinity) - s);
  const nearest = upKnots.reduce((best, k, i) => (off(k) < off(upKnots[best]) ? i : best), 0);
  throw new ShapeError(
    `${upName}[${nearest}]`,
    `${upName} is ${mm(-gap(worst))} below ${downName} at station ${mm(s)}`,
    `keep ${upName} at or above ${downName} along the whole length`,
  );
}

/** Where the difference of two curves has slope 0, as shares of the interval [a, a + h], on which each is one cubic. */
function turningPoints(up: Cubic, down: Cubic, a: number, h: number): number[] {
  const gap = (phi: number): number => up.at(phi) - down.at(phi);
  const slope = (phi: number): number => up.slopeAt(phi) - down.slopeAt(phi);
  const inside = 1e-7 * h; // slopes are read on the inner side of the knots
  const rise = gap(a + h) - gap(a);
  const m0 = h * slope(a + inside);
  const m1 = h * slope(a + h - inside);
  // derivative by the share t: m0 + 2·c2·t + 3·c3·t²
  const c2 = 3 * rise - 2 * m0 - m1;
  const c3 = m0 + m1 - 2 * rise;
  const root = Math.sqrt(Math.max(0, c2 * c2 - 3 * c3 * m0));
  const q = -(c2 + (c2 >= 0 ? root : -root));
  return [q / (3 * c3), m0 / q].filter((t) => t > 0 && t < 1);
}
