import { compile, USUAL_DRILLS } from "../document";
import type { Box, Compiled, Scenario } from "../document";
import { fromSI, toSI } from "../units";
import { fingerprintOf, type Fingerprint } from "./fingerprint";
import type { Fonts } from "./paper/font";
import type { Measured, PaperKey } from "./paper/frame";
import { inEnglish, type Words } from "./paper/pen";
import type { TemplateKey } from "./templates";

/** What a person chooses of the sheets. */
export interface SheetChoice {
  readonly paper: PaperKey;
  readonly measured: Measured;
  /** Stations of the section gauges, m; null: the usual ones. */
  readonly stations: readonly number[] | null;
  readonly templates: readonly TemplateKey[];
  /** The build sheet before them. */
  readonly build: boolean;
}

/** A document on its way to paper. */
export interface SheetJob {
  readonly scenario: Scenario;
  readonly compiled: Compiled;
  readonly fonts: Fonts;
  /** In which words the sheets are told: English where nobody says otherwise. */
  readonly words: Words;
  readonly fingerprint: Fingerprint;
  readonly choice: SheetChoice;
  readonly stations: readonly number[];
  readonly drills: readonly number[];
  /** What the maker has; null: no box was given. */
  readonly box: Box | null;
}

/** Shares of the length at which gauges help most: where the body swells, at its middle, where it tapers. Common practice. */
const USUAL = [0.1, 0.25, 0.4, 0.55, 0.75, 0.9] as const;
/** Most gauges of one bait. */
export const MOST_STATIONS = 24;

/** The usual stations of a body, m: whole millimetres. */
export function usualStations(length: number): number[] {
  const whole = USUAL.map((share) => toSI(Math.max(1, Math.round(fromSI(length * share, "mm"))), "mm"));
  return [...new Set(whole)].filter((s) => s < length);
}

/** Why stations (m) cannot be drawn; null: they can. */
export function stationsTrouble(stations: readonly number[], length: number): string | null {
  const end = fromSI(length, "mm");
  if (stations.length === 0) return "Name one station or more.";
  if (stations.length > MOST_STATIONS) return `${stations.length} stations; at most ${MOST_STATIONS}.`;
  const off = stations.find((s) => !(s > 0 && s < length));
  return off === undefined
    ? null
    : `The station ${Number(fromSI(off, "mm").toFixed(3))} mm lies off the body: use numbers between 0 and ${Number(end.toFixed(3))} mm.`;
}

/** @throws RangeError where a station lies off the body */
export function sheetJob(
  scenario: Scenario,
  fonts: Fonts,
  choice: SheetChoice,
  box: Box | null = null,
  compiled: Compiled = compile(scenario),
  words: Words = inEnglish,
): SheetJob {
  const { length } = compiled.bait.drawn;
  const stations = [...new Set(choice.stations ?? usualStations(length))].sort((a, b) => a - b);
  const trouble = stationsTrouble(stations, length);
  if (trouble !== null) throw new RangeError(trouble);
  const drills = box !== null && box.drills_mm.length > 0 ? box.drills_mm : USUAL_DRILLS;
  return {
    scenario,
    compiled,
    fonts,
    words,
    fingerprint: fingerprintOf(scenario),
    choice,
    stations,
    drills: drills.map((one) => toSI(one, "mm")),
    box,
  };
}
