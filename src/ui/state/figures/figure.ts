import { LEVEL_WITHIN_DEG } from "../../../runner";
import { fromSI } from "../../../units";
import type { ShownUnit, Units } from "../units";
import type { Why } from "../why.svelte";

/** One number of the verdict with its words, its difference to a pinned variant's, and its 'why'. */
export interface Figure {
  readonly key: string;
  readonly label: string;
  /** The label where it holds a length, in the unit shown. */
  readonly labelIn?: (units: Units) => string;
  /** In `unit`; null where there is no such number, and `words` then says why. */
  readonly value: number | null;
  readonly unit: ShownUnit;
  readonly digits: number;
  /** Shown with its sign. */
  readonly signed: boolean;
  readonly words: string;
  why(units: Units): Why;
}

export const grams = (kg: number): number => fromSI(kg, "g");
export const millilitres = (m3: number): number => fromSI(m3, "mL");
export const millimetres = (m: number): number => fromSI(m, "mm");
export const degrees = (rad: number): number => fromSI(rad, "deg");

/** A pitch in words, degrees; a bait that has turned over and over counts as where it is now. */
export function attitudeWords(pitchDegrees: number): string {
  const turned = pitchDegrees - 360 * Math.round(pitchDegrees / 360);
  if (Math.abs(turned) > 90) return "belly up";
  if (Math.abs(turned) <= LEVEL_WITHIN_DEG) return "level";
  return turned > 0 ? "nose-up" : "nose-down";
}

export const HYDROSTATICS =
  "E. V. Lewis (ed.), Principles of Naval Architecture, vol. I, SNAME 1988; docs/model.md §5.";
export const WATER =
  "Water: UNESCO equation of state EOS-80, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44.";
