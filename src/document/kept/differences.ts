import { valueAt } from "../fields";
import type { FieldUnit } from "../fields";
import { pathText } from "../fields";
import { fieldAt } from "../schema";
import type { Scenario } from "../schema";
import { deltaOf } from "./delta";
import type { Change } from "./delta";
import type { Way } from "./tree";

/** One difference between two baits, as a list of baits shows it. */
export interface Difference {
  /** The part of the bait, or the field, in words. */
  readonly what: string;
  /** Where it is one value: its own, the other bait's, and their unit. */
  readonly values: {
    readonly own: number | string;
    readonly other: number | string;
    readonly unit: FieldUnit;
  } | null;
}

/** Parts of a scenario in the words of the bench; several keys are one part. */
const PARTS: readonly (readonly [words: string, keys: readonly string[]])[] = [
  [
    "outline",
    ["bait.length_mm", "bait.top", "bait.bottom", "bait.halfBreadth", "bait.widest", "bait.roundover"],
  ],
  ["wood", ["bait.body"]],
  ["chambers", ["bait.chambers"]],
  ["ballast", ["bait.ballast"]],
  ["wire", ["bait.wires", "bait.tie_mm"]],
  ["bib", ["bait.bib"]],
  ["hooks and rings", ["bait.hangers"]],
  ["fittings", ["bait.fittings"]],
  ["coats", ["bait.coats"]],
  ["water", ["water"]],
  ["rod and line", ["tackle"]],
  ["retrieve", ["cadence"]],
  ["target", ["target"]],
  ["weighings", ["bench"]],
  ["tub readings", ["tub"]],
  ["corrections", ["corrections"]],
  ["notes", ["notes"]],
  ["what was set down", ["recipe"]],
];

/** What differs between two baits, the parts in the order of the work. The name is not among it: a list shows it anyway. */
export function differencesOf(own: Scenario, other: Scenario): readonly Difference[] {
  const byPart = new Map<string, Change[]>();
  for (const change of deltaOf(other, own)) {
    const part = partOf(change.at);
    if (part !== null) byPart.set(part, [...(byPart.get(part) ?? []), change]);
  }
  const order = [...PARTS.map(([words]) => words), OTHER];
  return order.flatMap((part) => {
    const changes = byPart.get(part);
    return changes === undefined ? [] : [told(part, changes, own)];
  });
}

const OTHER = "other things";

function partOf(at: Way): string | null {
  const path = pathText(at);
  if (path === "name") return null;
  const within = (key: string): boolean =>
    path === key || path.startsWith(`${key}.`) || path.startsWith(`${key}[`);
  return PARTS.find(([, keys]) => keys.some(within))?.[0] ?? OTHER;
}

function told(part: string, changes: readonly Change[], own: Scenario): Difference {
  const [one] = changes;
  if (one === undefined || changes.length > 1 || "start" in one) return { what: part, values: null };
  const { from, to } = one;
  const field = fieldAt(pathText(one.at), own);
  const shown = (value: unknown): value is number | string =>
    typeof value === "number" || typeof value === "string";
  if (field === null || !shown(from) || !shown(to) || String(from).length + String(to).length > 60)
    return { what: part, values: null };
  const name = valueAt(own, [...one.at.slice(0, 3), "name"]);
  return {
    what: `${typeof name === "string" ? `${name}, ` : ""}${field.label.toLowerCase()}`,
    values: { own: to, other: from, unit: "unit" in field ? field.unit : "" },
  };
}
