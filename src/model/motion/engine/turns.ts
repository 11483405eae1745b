import { cos, sin } from "../../base";

/**
 * Base's sine and cosine, bit for bit, with the last few angles stored: in each step the engine turns both bodies of every
 * contact and joint anew, and these have few different angles.
 */
const SLOTS = 64;
const angles = new Float64Array(SLOTS).fill(NaN);
/** NaN: not asked for yet. */
const sines = new Float64Array(SLOTS);
const cosines = new Float64Array(SLOTS);

const bits = new Float64Array(1);
const words = new Uint32Array(bits.buffer);

/** The place kept for an angle; whatever was kept there for another is dropped. */
function slotOf(angle: number): number {
  bits[0] = angle;
  const mixed = (words[0] as number) ^ (words[1] as number);
  const slot = (mixed ^ (mixed >>> 13) ^ (mixed >>> 7)) & (SLOTS - 1);
  if (angles[slot] !== angle) {
    angles[slot] = angle;
    sines[slot] = NaN;
    cosines[slot] = NaN;
  }
  return slot;
}

/** As base's `sin`. */
export function keptSin(angle: number): number {
  if (!(Math.abs(angle) > 0)) return sin(angle); // keeps the zero's sign
  const slot = slotOf(angle);
  const kept = sines[slot] as number;
  return kept === kept ? kept : (sines[slot] = sin(angle));
}

/** As base's `cos`. */
export function keptCos(angle: number): number {
  if (!(Math.abs(angle) > 0)) return cos(angle);
  const slot = slotOf(angle);
  const kept = cosines[slot] as number;
  return kept === kept ? kept : (cosines[slot] = cos(angle));
}
