import type { Floating } from "../../../model/statics";
import type { TerminalRise } from "../../../model/tow";
import { LEVEL_WITHIN_DEG } from "../../../runner";
import { fromSI } from "../../../units";
import type { Language } from "../../words/base";
import { FIGURES } from "../../words/figures";
import type { ShownUnit, Units } from "../units";
import type { Asking, Why } from "../why.svelte";

/** One number of the verdict with its words, its difference to a pinned variant's, and its 'why'. */
export interface Figure {
  readonly key: string;
  readonly label: string;
  /** In `unit`; null where there is no such number, and `words` then says why. */
  readonly value: number | null;
  readonly unit: ShownUnit;
  readonly digits: number;
  /** Shown with its sign. */
  readonly signed: boolean;
  readonly words: string;
  /** Null while the texts of the answer are still coming. */
  why(units: Units): Why | null;
  /** Brings what the answer is made of, where that is not with the bait's own answers. */
  readonly first?: (language: Language) => Promise<void>;
}

/** A figure as what is asked: the answer follows the figure. `of` gives null where there is none any longer. */
export function asking(of: () => Pick<Figure, "why" | "first"> | null, units: Units): Asking {
  const first = of()?.first;
  const answer = (): Why | null => of()?.why(units) ?? null;
  return first === undefined ? answer : Object.assign(answer, { first: () => first(units.language) });
}

export const grams = (kg: number): number => fromSI(kg, "g");
export const millilitres = (m3: number): number => fromSI(m3, "mL");
export const millimetres = (m: number): number => fromSI(m, "mm");
export const degrees = (rad: number): number => fromSI(rad, "deg");

/** A pitch by its word, degrees; a bait that has turned over and over counts as where it is now. */
export function attitudeOf(pitchDegrees: number): "level" | "noseUp" | "noseDown" | "bellyUp" {
  const turned = pitchDegrees - 360 * Math.round(pitchDegrees / 360);
  if (Math.abs(turned) > 90) return "bellyUp";
  if (Math.abs(turned) <= LEVEL_WITHIN_DEG) return "level";
  return turned > 0 ? "noseUp" : "noseDown";
}

/** A pitch in words, degrees. */
export const attitudeWords = (pitchDegrees: number, language: Language): string =>
  FIGURES.in(language).tell(`attitude.${attitudeOf(pitchDegrees)}`);

/** The way that a rise is timed over, mm. */
export const WAY = 300;

/** Seconds for the way that is timed; null: it hardly moves. */
export function secondsOf(rise: TerminalRise): number | null {
  const speed = fromSI(rise.speed, "mm_s");
  return Math.abs(speed) < 0.5 ? null : WAY / Math.abs(speed);
}

/** What a bait afloat does when it is rolled a little. */
export function rollWords({ pitch, GM }: Pick<Floating, "pitch" | "GM">, { language }: Units): string {
  const words = FIGURES.in(language);
  if (GM <= 0) return words.tell("roll.over");
  return words.tell(attitudeOf(degrees(pitch)) === "bellyUp" ? "roll.bellyUp" : "roll.upright");
}
