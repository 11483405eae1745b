/** Round steps and their words for the scales at the edges of the stage. */

/**
 * The smallest step of the form 1, 2 or 5 × 10ⁿ whose ticks stand at least `minPx` apart.
 * @param pxPerUnit pixels to one unit of the scale
 */
export function niceStep(pxPerUnit: number, minPx: number): number {
  if (!(pxPerUnit > 0) || !(minPx > 0) || !Number.isFinite(pxPerUnit))
    throw new RangeError(
      `niceStep: ${pxPerUnit} px per unit and ${minPx} px apart must be finite and above 0`,
    );
  const least = minPx / pxPerUnit;
  let power = Math.floor(Math.log10(least));
  for (;;) {
    for (const m of [1, 2, 5]) {
      // Integer powers of ten by parsing, so that 0.02 is the double nearest to 0.02.
      const step = Number(`${m}e${power}`);
      if (step >= least * (1 - 1e-9)) return step;
    }
    power++;
  }
}

/** Multiples of `step` from `from` to `to`, inclusive; by index, so that nothing adds up. */
export function ticksBetween(from: number, to: number, step: number): number[] {
  const out: number[] = [];
  const inverse = Math.round(1 / step);
  const exact = Math.abs(inverse * step - 1) < 1e-9 ? (i: number) => i / inverse : (i: number) => i * step;
  for (let i = Math.ceil(from / step - 1e-9); i <= Math.floor(to / step + 1e-9); i++)
    out.push(i === 0 ? 0 : exact(i));
  return out;
}

/** Digits after the point that tell ticks of this step apart. */
export function decimalsOf(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}

/** A tick's value in words, with a real minus sign. */
export function tickText(value: number, step: number): string {
  return value.toFixed(decimalsOf(step)).replace("-", "−");
}
