import type { Vec } from "../../model/base";

/**
 * Force arrows. Forces on one bait run from thousandths of a newton (drag while it rises) to several newtons
 * (a twitch), so an arrow's length follows the square root of the force: 0.01 N is a tenth as long as 1 N.
 * The key drawn beside them says so.
 */

/** Forces smaller than this are not drawn: their arrow would be shorter than its head. N. */
export const LEAST_FORCE = 2e-4;

/** Pixels to an arrow of 1 N on a stage of this size. */
export function pxPerRootNewton(width: number, height: number): number {
  return Math.max(70, Math.min(220, 0.42 * Math.min(width, height)));
}

/** Length of the arrow of a force of `newton`, px; 0 below LEAST_FORCE. */
export function arrowLength(newton: number, unit: number): number {
  const size = Math.abs(newton);
  return size < LEAST_FORCE ? 0 : unit * Math.sqrt(size);
}

export interface Arrow {
  /** Screen px, y down. */
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  /** Where the shaft ends and the head begins. */
  readonly neck: { readonly x: number; readonly y: number };
  /** The head's three corners, tip first. */
  readonly head: readonly [
    { readonly x: number; readonly y: number },
    { readonly x: number; readonly y: number },
    { readonly x: number; readonly y: number },
  ];
}

/** An arrow on the screen for a force in world axes (N), or null where it is too small to draw. */
export function arrowOf(from: { x: number; y: number }, force: Vec, unit: number): Arrow | null {
  const size = Math.hypot(force.x, force.z);
  const length = arrowLength(size, unit);
  if (length === 0) return null;
  const dx = force.x / size;
  const dy = -force.z / size;
  const headLength = Math.min(11, 0.6 * length);
  const half = 0.36 * headLength;
  const to = { x: from.x + dx * length, y: from.y + dy * length };
  const neck = { x: to.x - dx * headLength, y: to.y - dy * headLength };
  return {
    from: { x: from.x, y: from.y },
    to,
    neck,
    head: [
      to,
      { x: neck.x - dy * half, y: neck.y + dx * half },
      { x: neck.x + dy * half, y: neck.y - dx * half },
    ],
  };
}

/** Reference bars for the key: round forces whose bars fit into `room` px, and the length of each. */
export function arrowKey(unit: number, room: number): { readonly newton: number; readonly length: number }[] {
  return [0.01, 0.1, 1]
    .map((newton) => ({ newton, length: arrowLength(newton, unit) }))
    .filter((bar) => bar.length >= 5 && bar.length <= room);
}

/** A force in words: three significant digits, mN below a tenth of a newton. */
export function forceText(newton: number): string {
  const size = Math.abs(newton);
  const [value, unit] = size < 0.1 ? [size * 1000, "mN"] : [size, "N"];
  if (value === 0) return "0 N";
  const digits = Math.max(0, Math.min(3, 2 - Math.floor(Math.log10(value))));
  return `${value.toFixed(digits)} ${unit}`;
}
