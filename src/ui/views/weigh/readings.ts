import { byStage, isOnAt, stageOf } from "../../../document";
import type { Moment, Scenario, Stage } from "../../../document";
import { assemble } from "../../../model/bait";
import type { Bait, BenchReading, Item } from "../../../model/bait";
import type { Measured, Reconciled } from "../../../model/bench";
import { reconcile } from "../../../model/bench";
import type { App, Worked } from "../../state";
import type { WeighWords } from "../../words/weigh";
import type { FileWords } from "./plan";

type Reading = Scenario["bench"][number];

/** What a scale can have said, g. */
export const ON_A_SCALE = { min: 0, max: 5000, above: true } as const;

/** A reading stands in its field that can be taken: the press that leaves the field takes it. */
export function isTyped({ beside, units }: App, key: string): boolean {
  const text = beside.typed[`reading/${key}`] ?? "";
  return text.trim() !== "" && units.read(text, "g", ON_A_SCALE).ok;
}

/** A number that still stands in its field, as when the page has come back with it; the field is empty then. Null: none. */
export function takeTyped(app: App, key: string): number | null {
  const place = `reading/${key}`;
  if (!isTyped(app, key)) return null;
  const read = app.units.read(app.beside.typed[place] ?? "", "g", ON_A_SCALE);
  app.beside.type(place, null);
  return read.ok ? read.value : null;
}

/** Items that can lie on a scale, by their labels in the account: all that weighs or displaces, without corrections. */
export const weighable = (bait: Bait): readonly Item[] =>
  bait.items.filter((one) => one.group !== "corrections" && (one.mass > 0 || one.displaced > 0));

/** Sets of items that a maker weighs at once: bare or sealed blank, the bait as it is at a stage, the whole. */
export function sets(
  { scenario, compiled }: Worked,
  stage: Moment,
  words: WeighWords,
  file: FileWords,
): readonly { readonly label: string; readonly names: readonly string[] }[] {
  const items = weighable(compiled.bait);
  const there = (at: Stage, test: (item: Item) => boolean = () => true): string[] =>
    items.filter((one) => byStage(stageOf(scenario.bait, one), at) && test(one)).map((one) => one.item);
  const blank = ["body"];
  const sealed = there("sealed", (one) => one.group === "body" || one.group === "coats");
  const now = namesAt({ scenario, compiled }, stage);
  const all = items.map((one) => one.item);
  const same = (a: readonly string[], b: readonly string[]): boolean => a.join("\n") === b.join("\n");
  const named = [
    { label: words.tell("set.bare"), names: blank },
    ...(same(sealed, blank) ? [] : [{ label: words.tell("set.sealed"), names: sealed }]),
    { label: words.tell("set.all"), names: all },
  ];
  if (named.some((one) => same(one.names, now))) return named;
  return [
    ...named.slice(0, -1),
    { label: words.tell("set.now", { stage: file.of(stage) }), names: now },
    ...named.slice(-1),
  ];
}

/** What is on the bait at a moment of making, by its names in the account. */
export const namesAt = (
  { scenario, compiled }: Pick<Worked, "scenario" | "compiled">,
  at: Moment,
): readonly string[] =>
  weighable(compiled.bait)
    .filter((one) => isOnAt(scenario.bait, one, at))
    .map((one) => one.item);

/** Items that take wood away, and are not among those on the scale. */
export const cuttable = (bait: Bait, parts: readonly string[]): readonly Item[] =>
  bait.items.filter((one) => one.removed > 0 && !parts.includes(one.item));

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length;

/** Two decimals more than the scale shows: the mean of repeats without tails of binary digits. */
export const tidyMean = (values: readonly number[], resolution: number): number =>
  Number(mean(values).toFixed(Math.max(0, Math.ceil(-Math.log10(resolution))) + 2));

/**
 * The drawn volume (m³) with its standard uncertainty: length, height and breadth each err by that of a drawn length
 * (docs/model.md §3), and the volume is proportional to each.
 */
export function drawnVolume(bait: Bait): Measured {
  const { drawn } = bait;
  const mm = bait.spec.uncertainty.drawnLength;
  const share = Math.hypot(mm / drawn.length, mm / drawn.maxHeight, mm / (2 * drawn.maxHalfBreadth));
  return { value: drawn.volume, deviation: drawn.volume * share };
}

/** Drawing and one reading of the body's volume side by side, as if no other reading were there. */
export function reconciled(worked: Worked, reading: BenchReading, deviation: number): Reconciled {
  const { bait, spec } = worked.compiled;
  const { volumeFactor } = assemble({ ...spec, bench: [reading] }, { drawn: bait.drawn });
  return reconcile(drawnVolume(bait), { value: bait.drawn.volume * volumeFactor, deviation });
}

/** The document with one more bench reading. */
export const withReading = (from: Scenario, ...readings: readonly Reading[]): Scenario => ({
  ...from,
  bench: [...from.bench, ...readings],
});

export const withoutReading = (from: Scenario, index: number): Scenario => ({
  ...from,
  bench: from.bench.filter((_, i) => i !== index),
});
