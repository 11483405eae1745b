import type { ResolvedTarget } from "../../model/bench";
import type { Worked } from "../state";
import { isSlow } from "./wanted";
import { resolvedOf } from "./wish";

/** What the target's words come to for the bait as it is; null: there is no target, or it is being worked out. */
export const goalOf = (worked: Worked, slow: ResolvedTarget | null): ResolvedTarget | null =>
  isSlow(worked) ? slow : resolvedOf(worked.scenario, worked.compiled);
