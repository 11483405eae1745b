/** An impossible bait: which value of the document, what is wrong with it, and what to do. */
export class BaitError extends Error {
  /** Path in the document, e.g. "bait.chambers[0].balls.count". */
  readonly path: string;
  readonly remedy: string;

  constructor(path: string, problem: string, remedy: string) {
    super(`${path}: ${problem}. ${remedy}.`);
    this.name = "BaitError";
    this.path = path;
    this.remedy = remedy;
  }
}

/** Lengths, volumes and masses in the words of a message: lengths to a hundredth of a millimetre. */
export const inMm = (metres: number): string => `${Number((metres * 1e3).toFixed(2))} mm`;
export const inMl = (cubicMetres: number): string => `${Number((cubicMetres * 1e6).toPrecision(5))} mL`;
export const inG = (kilograms: number): string => `${Number((kilograms * 1e3).toPrecision(5))} g`;
