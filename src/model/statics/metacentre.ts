/**
 * Height of the metacentre above the centre of gravity, GM = (Z_B − Z_G) + I/V (m): heights above any common level (m),
 * second moment of the waterplane about the axis of the turn (m⁴), immersed volume (m³). Negative: it falls over.
 * Source: standard hydrostatics of ships (Bouguer 1746, from memory); worked examples in tests/published/stability.test.ts.
 */
export function metacentre(at: {
  readonly I_T: number;
  readonly V: number;
  readonly Z_B: number;
  readonly Z_G: number;
}): number {
  if (!(at.V > 0)) throw new RangeError(`immersed volume ${at.V} m³: nothing floats without one`);
  return at.Z_B - at.Z_G + at.I_T / at.V;
}
