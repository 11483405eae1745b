import type { Leg } from "./types";

/**
 * A run that cannot start or go on: what is wrong, its value, when, and what to do. So a run never goes on silently with
 * NaN.
 */
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

/**
 * Numbers have grown beyond all bounds: something happens faster than a step can follow. The message says in which move,
 * and how to make the move gentler.
 */
export function beyondModel(
  quantity: string,
  value: unknown,
  time: number,
  legs: readonly Leg[],
): MotionError {
  const leg = legs.find(({ start, end }) => time >= start && time <= end);
  const where = leg === undefined ? "" : ` in ${leg.move.place ?? `cadence[${leg.index}]`} (${leg.move.do})`;
  return new MotionError(
    quantity,
    value,
    time,
    `what happens${where} is beyond the model: faster than its steps can follow`,
    "Give this move more time or a lower speed, or use a line that stretches more, a weaker bib factor, or larger loose balls",
  );
}
