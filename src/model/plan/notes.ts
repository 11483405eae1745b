import { atan2, square } from "../base";
import { assemble } from "../bait";
import { draws } from "../statics";
import { SURE_TRIM, trimHalfWidth, Z95 } from "./chance";
import type { Planner } from "./planner";
import type { Plan, PlanResult } from "./types";
import { degrees, grams, millimetres } from "./words";

/** Below this chance the notes say what makes the plan unsure; common practice, no source. */
const DOUBTFUL = 0.5;

interface Doubt {
  readonly input: string;
  /** Half of the central 95 % that this input alone causes: kg, rad. */
  readonly net: number;
  readonly trim: number;
}

/** The inputs that make a plan's net buoyancy, and its trim, most unsure. */
function doubts(planner: Planner, plan: Plan): { readonly net: Doubt | null; readonly trim: Doubt | null } {
  const whole = assemble(plan.spec, { drawn: planner.bait.drawn });
  const { own, inputs } = draws(whole, planner.goal.density, 0, 1);
  const BG2 = square(own.x) + square(own.z);
  const all = inputs.map(({ input, up, down }): Doubt => {
    const dx = (up.x - down.x) / 2;
    const dz = (up.z - down.z) / 2;
    return {
      input,
      net: (Z95 * Math.abs(up.net - down.net)) / 2,
      // Only the part of the shift across B − G turns the bait.
      trim: atan2(Z95 * Math.abs(dx * own.z - dz * own.x), BG2),
    };
  });
  const greatest = (of: (d: Doubt) => number): Doubt | null =>
    all.reduce<Doubt | null>((a, b) => (a === null || of(b) > of(a) ? b : a), null);
  return { net: greatest((d) => d.net), trim: greatest((d) => d.trim) };
}

/**
 * What a reader of the plans should know: how sure the trim is and why, and what the chance depends on. Where none fits,
 * only what is true of the nearest: its chance is small because it misses the target, which the limits say.
 */
export function notesOf(planner: Planner, best: Plan, leastBG: PlanResult["leastBG"]): string[] {
  const notes: string[] = [];
  const width = trimHalfWidth(best.sure);
  const certain = best.sure.trim === null ? "not certain at all" : `certain only to ±${degrees(width)}`;
  const doubt = doubts(planner, best);
  const need = millimetres(planner.ownBG);
  if (best.fits && leastBG.from === "own" && width <= SURE_TRIM)
    notes.push(
      `The target asks for no least BG. In these plans the trim is certain to ±15°: for that, B has to be about ${need} above G in this bait.`,
    );
  if (width > SURE_TRIM)
    notes.push(
      `The trim is ${certain}: B is ${millimetres(best.BG)} above G, and ±15° would need about ${need}.` +
        (doubt.trim && doubt.trim.trim > SURE_TRIM / 2
          ? ` The least certain input is “${doubt.trim.input}”: it ${doubt.trim.trim < 0.9 * width ? `alone turns the bait by ±${degrees(doubt.trim.trim)}` : "causes nearly all of this"}. Weigh or measure it, and plan again.`
          : " Denser weights or a thinner wall bring G lower."),
    );
  if (best.fits && best.sure.chance < DOUBTFUL && doubt.net && doubt.net.net > planner.goal.netTolerance)
    notes.push(
      `The chance is small mostly because of “${doubt.net.input}”: it moves the net buoyancy by ±${grams(doubt.net.net)} (95 %), and the target allows ±${grams(planner.goal.netTolerance)}. Weigh or measure it, and plan again.`,
    );
  return notes;
}
