import type { ResolvedTarget } from "../../model/bench";
import { fromSI } from "../../units";
import { resolvedOf } from "./wish";
import type { Target } from "./wish";
import type { Worked } from "../state";

/** A rise takes a search through speeds to become grams: a worker does that. Grams and 'suspends' are known at once. */
const isSlow = ({ scenario }: Pick<Worked, "scenario">): boolean => scenario.target?.netFrom === "rise";

/** What the target's words come to for the bait as it is; null: there is no target, or it is being worked out. */
export const goalOf = (worked: Worked, slow: ResolvedTarget | null): ResolvedTarget | null =>
  isSlow(worked) ? slow : resolvedOf(worked.scenario, worked.compiled);

/** The document's target with the grams that its words come to now; while they are worked out, those of when it was set. */
export function wantedOf(worked: Worked, slow: ResolvedTarget | null): Target | undefined {
  const { target } = worked.scenario;
  const net = goalOf(worked, slow)?.net ?? null;
  if (target === undefined || net === null) return target;
  return { ...target, net_g: fromSI(net.value, "g"), netTolerance_g: fromSI(net.tolerance, "g") };
}
