import { draftOf } from "../../../document";
import type { Scenario } from "../../../document";

/** A drawing that the checks refuse, with what led to it. */
export interface Draft {
  readonly label: string;
  readonly scenario: Scenario;
}

/** A refused drawing as it is kept with the bait. */
export const aDraft = (value: unknown): Draft | null | undefined => {
  if (value === null) return null;
  const { label, scenario } = (typeof value === "object" ? value : {}) as Partial<Record<string, unknown>>;
  const read = draftOf(scenario);
  return typeof label === "string" && read !== null ? { label, scenario: read } : undefined;
};
