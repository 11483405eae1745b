/** A run that cannot start or go on: what is wrong, its value, when, and what to do. Never NaN in silence. */
export class MotionError extends Error {
  /** What is at fault, e.g. "cadence[2].speed" or "pitch". */
  readonly quantity: string;
  readonly value: unknown;
  /** Seconds into the run; null before it starts. */
  readonly time: number | null;
  readonly remedy: string;

  constructor(quantity: string, value: unknown, time: number | null, problem: string, remedy: string) {
    const when = time === null ? "" : ` at ${time.toFixed(4)} s`;
    super(`${quantity} = ${String(value)}${when}: ${problem}. ${remedy}.`);
    this.name = "MotionError";
    this.quantity = quantity;
    this.value = value;
    this.time = time;
    this.remedy = remedy;
  }
}

/** What is said when numbers grow beyond sense: the step is too coarse for the forces. */
export const RUN_AWAY = {
  problem: "the motion has run away from the step",
  remedy: "Raise the rate, or look for an extreme speed, mass or size in the scenario",
} as const;
