import type { ResolvedTarget } from "../../model/bench";
import type { Scenario } from "../../document";
import { fromSI } from "../../units";
import type { Target } from "./wish";

/** A rise takes a search through speeds to become grams: a worker does that. Grams and 'suspends' are known at once. */
export const isSlow = ({ scenario }: { readonly scenario: Scenario }): boolean =>
  scenario.target?.netFrom === "rise";

/**
 * The document's target with the grams that its words come to now; while they are worked out, those of when it was set.
 * Without a rise its own grams are what its words come to.
 */
export function wantedOf(
  worked: { readonly scenario: Scenario },
  slow: ResolvedTarget | null,
): Target | undefined {
  const { target } = worked.scenario;
  const net = isSlow(worked) ? (slow?.net ?? null) : null;
  if (target === undefined || net === null) return target;
  return { ...target, net_g: fromSI(net.value, "g"), netTolerance_g: fromSI(net.tolerance, "g") };
}
