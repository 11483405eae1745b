import { rangeOf } from "./decimate";
import { marked } from "../words/base";
import type { Language } from "../words/base";
import type { PARTS } from "../words/parts";
import type { PlotMark, Series } from "./types";

/** Least span of a plot's value axis by unit, so that the round-off of a bait at rest does not fill the plot. */
const LEAST_SPAN: Readonly<Record<string, number>> = {
  "°": 4,
  m: 0.05,
  mm: 2,
  "m/s": 0.05,
  "mm/s": 10,
  N: 0.05,
  g: 1,
};

/** Domain of the value axis over all series: their range with a little room, never less than the unit's least span. */
export function domainOf(series: readonly Pick<Series, "values" | "unit">[]): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const s of series) {
    const range = rangeOf(s.values);
    if (!range) continue;
    low = Math.min(low, range.low);
    high = Math.max(high, range.high);
  }
  const least = LEAST_SPAN[series[0]?.unit ?? ""] ?? 1e-3;
  if (!(low <= high)) return [0, least];
  const room = 0.06 * (high - low);
  low -= room;
  high += room;
  if (high - low < least) {
    const middle = (low + high) / 2;
    low = middle - least / 2;
    high = middle + least / 2;
  }
  return [low, high];
}

/** The one unit of a plot's series. @throws Error where they differ: one axis cannot serve two units */
export function unitOf(title: string, series: readonly Pick<Series, "unit" | "label">[]): string {
  const unit = series[0]?.unit ?? "";
  const odd = series.find((s) => s.unit !== unit);
  if (odd)
    throw new Error(
      `TimePlot "${title}": "${odd.label}" is in ${odd.unit}, the others in ${unit}; give each unit a plot of its own`,
    );
  return unit;
}

export interface PlacedMark extends PlotMark {
  /** Of the mark's line, px. */
  readonly x: number;
  /**
   * Left end of the label, px, its row from the top, and whether it ends at the mark instead of starting there;
   * null where there is no room for it.
   */
  readonly text: { readonly x: number; readonly row: number; readonly ends: boolean } | null;
}

/**
 * Labels of the moves along the time axis: each starts at its mark, or ends there where it would leave the plot on
 * the right, in the first row where it clears those before it. Labels without room are left out.
 * @param measure width of a label, px
 */
export function placeMarks(
  marks: readonly PlotMark[],
  xOf: (time: number) => number,
  right: number,
  measure: (label: string) => number,
  rows = 2,
  gap = 8,
): PlacedMark[] {
  const ends = Array<number>(rows).fill(-Infinity);
  return marks.map((mark) => {
    const x = xOf(mark.time);
    const width = measure(mark.label);
    const turned = x + width > right;
    const left = turned ? x - width : x;
    const row = ends.findIndex((end) => left >= end + gap);
    if (row < 0 || left < xOf(0)) return { ...mark, x, text: null };
    ends[row] = left + width;
    return { ...mark, x, text: { x: left, row, ends: turned } };
  });
}

/** The mark at or before a time: the move that is being made. */
export function moveAt(marks: readonly PlotMark[], time: number): PlotMark | null {
  let found: PlotMark | null = null;
  for (const mark of marks) if (mark.time <= time + 1e-9) found = mark;
  return found;
}

/** Digits that a maker reads in a unit, whatever the span: tenths of a degree, centimetres, hundredths of a newton. */
const LEAST_DECIMALS: Readonly<Record<string, number>> = {
  "°": 1,
  m: 2,
  "m/s": 2,
  N: 2,
  ft: 2,
  "ft/s": 2,
  in: 2,
};

/** Digits after the point that suit a value axis of this span: three figures of the span, and what the unit asks for. */
export function decimalsFor(span: number, unit = ""): number {
  const figures = Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(Math.max(span, 1e-9)))));
  return Math.max(figures, LEAST_DECIMALS[unit] ?? 0);
}

/** A value in words with a real minus sign and the language's decimal mark; "–" for a gap. */
export function valueText(value: number, decimals: number, language: Language = "en"): string {
  if (!Number.isFinite(value)) return "–";
  const text = marked(value.toFixed(decimals), language);
  return text.replace("-", /[1-9]/.test(text) ? "−" : "");
}

/** What the plot shows, for those who do not see it. */
export function summaryOf(
  title: string,
  series: readonly Series[],
  duration: number,
  words: ReturnType<typeof PARTS.in>,
): string {
  const time = (seconds: number): string => valueText(seconds, 1, words.language);
  const parts = series.map((s) => {
    const { label } = s;
    const range = rangeOf(s.values);
    if (!range) return words.tell("plot.nothing", { label });
    const decimals = decimalsFor(range.high - range.low || 1, s.unit);
    const value = (v: number): string => `${valueText(v, decimals, words.language)} ${s.unit}`;
    const when = (i: number): string => time(s.time[i] ?? NaN);
    return words.tell("plot.range", {
      label,
      low: value(range.low),
      lowAt: when(range.lowAt),
      high: value(range.high),
      highAt: when(range.highAt),
    });
  });
  return words.tell("plot.all", { title, duration: time(duration), parts: parts.join(". ") });
}

/** Widths of labels in a font, px, each measured once; null where the browser offers no canvas. */
export function textMeasure(font: string): ((label: string) => number) | null {
  const context = document.createElement("canvas").getContext("2d");
  if (!context) return null;
  context.font = font;
  const known = new Map<string, number>();
  return (label) => {
    const width = known.get(label) ?? context.measureText(label).width;
    known.set(label, width);
    return width;
  };
}
