import type { Scenario } from "../../document";
import type { Bait } from "../../model/bait";
import type { Fonts } from "../paper/font";
import type { Words } from "../paper/pen";
import type { Column } from "../paper/flow";
import type { Drawing } from "../paper/page";

/** What templates are drawn from. */
export interface TemplateJob {
  readonly scenario: Scenario;
  readonly bait: Bait;
  readonly fonts: Fonts;
  readonly words: Words;
  /** Stations of the section gauges, m aft of the nose tip, rising. */
  readonly stations: readonly number[];
  /** Drills at hand, m. */
  readonly drills: readonly number[];
}

/** One template: words, drawings at 1 : 1, and perhaps a table. */
export interface Template {
  readonly title: string;
  readonly notes: readonly string[];
  readonly drawings: readonly Drawing[];
  readonly table?: { readonly columns: readonly Column[]; readonly rows: readonly (readonly string[])[] };
}
