import { distance, lerp } from "../base";
import type { Vec } from "../base";
import { insideOutline, outlineCrossings } from "../shape";
import type { Shape } from "../shape";
import type { Piece } from "./types";

/** A wire cut at the outline: straight pieces inside and outside the body, ends square. */
export interface SplitWire {
  readonly inside: readonly Piece[];
  readonly outside: readonly Piece[];
}

/** Volume, first moment over volume, and second moment ∫r²dV about that centre, of straight thin pieces. */
export function piecesSum(pieces: readonly Piece[]): { volume: number; centre: Vec; inertia: number } | null {
  let volume = 0;
  let x = 0;
  let z = 0;
  for (const p of pieces) {
    volume += p.volume;
    x += (p.volume * (p.a.x + p.b.x)) / 2;
    z += (p.volume * (p.a.z + p.b.z)) / 2;
  }
  if (!(volume > 0)) return null;
  const centre = { x: x / volume, z: z / volume };
  let inertia = 0;
  for (const p of pieces) {
    const l = distance(p.a, p.b); // a rod: l²/12 about its middle, then moved
    const d = distance(lerp(p.a, p.b, 0.5), centre);
    inertia += p.volume * ((l * l) / 12 + d * d);
  }
  return { volume, centre, inertia };
}

/** A path of straight pieces with one diameter. */
interface Round {
  readonly path: readonly Vec[];
  readonly diameter: number;
}

/** Cuts that were made already: the rows, the warnings and a second pass of the account all need the same ones. */
const known = new WeakMap<Round, { readonly shape: Shape; readonly split: SplitWire }>();

/**
 * Cuts a wire at its exact crossings of the outline in the plane of symmetry (docs/model.md §3). Each piece between
 * two crossings is inside or outside as its middle is.
 */
export function splitWire(wire: Round, shape: Shape): SplitWire {
  const found = known.get(wire);
  if (found?.shape === shape) return found.split;
  const split = cut(wire, shape);
  known.set(wire, { shape, split });
  return split;
}

function cut(wire: Round, shape: Shape): SplitWire {
  const section = (Math.PI / 4) * wire.diameter * wire.diameter;
  const inside: Piece[] = [];
  const outside: Piece[] = [];
  for (let i = 1; i < wire.path.length; i++) {
    const a = wire.path[i - 1];
    const b = wire.path[i];
    if (!a || !b) continue;
    const length = distance(a, b);
    if (length === 0) continue;
    const crossings = outlineCrossings(shape, a, b).filter((t) => t > 0 && t < 1);
    const cuts = [0, ...crossings.sort((s, t) => s - t), 1];
    for (let k = 1; k < cuts.length; k++) {
      const t0 = cuts[k - 1] ?? 0;
      const t1 = cuts[k] ?? 1;
      if (t1 <= t0) continue;
      const piece = { a: lerp(a, b, t0), b: lerp(a, b, t1), volume: section * length * (t1 - t0) };
      (insideOutline(shape, lerp(a, b, (t0 + t1) / 2)) ? inside : outside).push(piece);
    }
  }
  return { inside, outside };
}
