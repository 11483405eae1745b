import type { Scenario } from "../document";
import type { Tackle } from "../model/line";
import { toSI } from "../units";

/** What a tow can be varied in. Values are in the units of the document (mm, m, °, m/s). */
export type ReachVariable =
  | "speed"
  | "lineOut"
  | "lineDiameter"
  | "rodTip"
  | "bibAngle"
  | "bibLength"
  | "bibWidth"
  | "tieStation"
  | "tieHeight";

/** The path of each in the document; the speed of a tow is not in the document. */
export const REACH_PATHS: Readonly<Record<ReachVariable, readonly (string | number)[] | null>> = {
  speed: null,
  lineOut: ["tackle", "lineOut_m"],
  lineDiameter: ["tackle", "line", "diameter_mm"],
  rodTip: ["tackle", "rodTip_m"],
  bibAngle: ["bait", "bib", "angle_deg"],
  bibLength: ["bait", "bib", "length_mm"],
  bibWidth: ["bait", "bib", "width_mm"],
  tieStation: ["bait", "tie_mm", 0],
  tieHeight: ["bait", "tie_mm", 1],
};

/** What each is called in tables and in steps of undo, whatever language is read. */
export const REACH_NAMES: Readonly<Record<ReachVariable, string>> = {
  speed: "Tow speed",
  lineOut: "Line out",
  lineDiameter: "Line diameter",
  rodTip: "Rod tip",
  bibAngle: "Bib angle",
  bibLength: "Bib length",
  bibWidth: "Bib width",
  tieStation: "Tie eye station",
  tieHeight: "Tie eye height",
};

/** True for what changes the bait itself: it is assembled anew for every value. */
export const changesBait = (variable: ReachVariable): boolean => REACH_PATHS[variable]?.[0] === "bait";

/**
 * The document with another value of one variable; all else stays as it is. Speed changes nothing in it.
 *
 * @throws Error for a dimension of a bib where there is no bib
 */
export function withVariable(scenario: Scenario, variable: ReachVariable, value: number): Scenario {
  const { bait, tackle } = scenario;
  switch (variable) {
    case "speed":
      return scenario;
    case "lineOut":
      return { ...scenario, tackle: { ...tackle, lineOut_m: value } };
    case "lineDiameter":
      return { ...scenario, tackle: { ...tackle, line: { ...tackle.line, diameter_mm: value } } };
    case "rodTip":
      return { ...scenario, tackle: { ...tackle, rodTip_m: value } };
    case "tieStation":
      return { ...scenario, bait: { ...bait, tie_mm: [value, bait.tie_mm[1]] } };
    case "tieHeight":
      return { ...scenario, bait: { ...bait, tie_mm: [bait.tie_mm[0], value] } };
    case "bibAngle":
    case "bibLength":
    case "bibWidth": {
      const { bib } = bait;
      if (bib === undefined) throw new Error(`There is no bib whose ${variable} could be ${value}.`);
      const key = { bibAngle: "angle_deg", bibLength: "length_mm", bibWidth: "width_mm" } as const;
      return { ...scenario, bait: { ...bait, bib: { ...bib, [key[variable]]: value } } };
    }
  }
}

/** What a document has for a variable; null where it has no such thing (speed; a bib where there is none). */
export function variableOf(scenario: Scenario, variable: ReachVariable): number | null {
  const { bait, tackle } = scenario;
  switch (variable) {
    case "speed":
      return null;
    case "lineOut":
      return tackle.lineOut_m;
    case "lineDiameter":
      return tackle.line.diameter_mm;
    case "rodTip":
      return tackle.rodTip_m;
    case "tieStation":
      return bait.tie_mm[0];
    case "tieHeight":
      return bait.tie_mm[1];
    case "bibAngle":
      return bait.bib?.angle_deg ?? null;
    case "bibLength":
      return bait.bib?.length_mm ?? null;
    case "bibWidth":
      return bait.bib?.width_mm ?? null;
  }
}

/**
 * Tackle (SI) with another value of one of its variables, without a new compilation of the document. Its stiffness stays:
 * it has no effect on a steady line.
 */
export function tackleWith(tackle: Tackle, variable: ReachVariable, value: number): Tackle {
  switch (variable) {
    case "lineOut":
      return { ...tackle, lineOut: value };
    case "rodTip":
      return { ...tackle, rodTip: value };
    case "lineDiameter":
      return { ...tackle, line: { ...tackle.line, diameter: toSI(value, "mm") } };
    default:
      return tackle;
  }
}
