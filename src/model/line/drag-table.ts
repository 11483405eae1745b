import { square } from "../base";
import { cylinderDrag } from "../forces";
import type { LineSpec } from "./types";

/** ½ρ d C_n(Re) v per metre of line and per m/s: a table over v^¼, and the curve itself for what is beyond it. */
export interface NormalDrag {
  readonly table: Float64Array;
  readonly direct: (speed: number) => number;
}

const CELLS = 1024;
const SCALE = CELLS / 1.8; // up to 10.5 m/s

/**
 * The drag across a line in a fluid (density kg/m³, viscosity Pa·s). The cylinder curve rises as v^¼ from rest: over v^¼ it
 * is smooth, and straight pieces hold it to 1e-5.
 */
export function normalDrag(
  line: LineSpec,
  fluid: { readonly density: number; readonly viscosity: number },
): NormalDrag {
  const nu = fluid.viscosity / fluid.density;
  const direct = (v: number): number =>
    v < 1e-9 ? 0 : 0.5 * fluid.density * line.diameter * cylinderDrag((v * line.diameter) / nu) * v;
  const table = new Float64Array(CELLS + 2);
  for (let i = 0; i <= CELLS + 1; i++) table[i] = direct(square(square(i / SCALE)));
  return { table, direct };
}

/** Its value at a speed across the line, m/s. */
export function dragAt({ table, direct }: NormalDrag, speed: number): number {
  const y = Math.sqrt(Math.sqrt(speed)) * SCALE;
  if (!(y < CELLS)) return direct(speed);
  const i = y | 0;
  const a = table[i] as number;
  return a + (y - i) * ((table[i + 1] as number) - a);
}
