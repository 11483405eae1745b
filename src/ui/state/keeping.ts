import type { Beside, KeptBait, Scenario, Settled } from "../../document";
import type { BaitStore, Slips, Tabs } from "../kept";

/** What the keeping of baits needs of the browser. */
export interface Keeping {
  readonly store: BaitStore;
  readonly tabs: Tabs;
  readonly slips: Slips;
  /** Remembers which bait this tab shows; a reload asks for it. */
  readonly remember: (id: string) => void;
  readonly now: () => number;
  /** Asks the browser not to drop what it keeps; called once there is something of one's own. */
  readonly persist: () => void;
}

/** A write that has been done: what was sent, and what became of it. */
export interface Written {
  readonly sent: KeptBait;
  readonly settled: Settled;
}

export interface Seen {
  readonly scenario: Scenario;
  readonly beside: Beside;
  readonly inFile: string | null;
}
