import type { Scenario } from "../../../document";
import type { Palette } from "../../../drawing";

/** A bait that the list's worker is asked for. `of` names the bait's state: while it stays the same, so does the answer. */
export interface GlanceAsked {
  readonly id: string;
  readonly of: string;
  readonly scenario: Scenario;
}

/** A few baits that the list's worker is asked for at once. It answers them at once, too. */
export interface GlancesAsked {
  readonly baits: readonly GlanceAsked[];
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
