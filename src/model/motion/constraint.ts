import type { Wrench } from "../base";
import { wrench } from "../base";

/**
 * λ: the wrench with which joints and contacts hold the bait (world axes; N, and N·m about G). The engine finds it anew in
 * each step. So at any moment it is known for the step that has just ended and for the one before it.
 */
export class Constraint {
  /** Of the last step. */
  readonly now: Wrench = wrench();
  /** Of the step before the last. */
  readonly before: Wrench = wrench();

  /** Adds a weight (N, downwards) at `arm` metres in front of G to the first guess. */
  hang(arm: number, weight: number): void {
    this.now.z -= weight;
    this.now.m -= arm * weight;
  }

  /** The first guess holds for the step before it as well. */
  settle(): void {
    Object.assign(this.before, this.now);
  }

  /** A new step has ended, in which λ was greater by this. */
  take(x: number, z: number, m: number): void {
    const { now, before } = this;
    before.x = now.x;
    before.z = now.z;
    before.m = now.m;
    now.x += x;
    now.z += z;
    now.m += m;
  }
}

/**
 * Estimate of the steady part of a constraint force: of the values in the last two steps the one nearer to zero, and zero
 * where their signs differ. So a single impact does not count as a pull that lasts.
 */
export function steadyPart(now: number, before: number): number {
  if (now > 0) return before > 0 ? Math.min(now, before) : 0;
  return before < 0 ? Math.max(now, before) : 0;
}
