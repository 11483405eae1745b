import type { Scenario } from "../../../document";
import type { Palette } from "../../../drawing";

/** What the list's worker is asked. `of` names the bait's state: while it stays the same, so does the answer. */
export interface GlanceAsked {
  readonly id: string;
  readonly of: string;
  readonly scenario: Scenario;
  readonly palette: Palette;
}

export interface GlanceTold {
  readonly id: string;
  readonly of: string;
  /** Net buoyancy, kg; null: the bait cannot be built. */
  readonly net: number | null;
  /** The small picture as an address; null: the bait cannot be built. */
  readonly picture: string | null;
}
