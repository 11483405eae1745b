import { fieldAt, pathText } from "../../../document";
import type { FieldUnit, Scenario } from "../../../document";
import { REACH_PATHS, variableOf, withVariable } from "../../../runner";
import type { ReachVariable } from "../../../runner";
import type { Input } from "../../state";
import { STEPS } from "../../words/reach";
import type { Mark } from "./types";

/** How one variable of the tow is named, entered and drawn. */
export interface VariableForm {
  readonly variable: ReachVariable;
  readonly unit: FieldUnit;
  readonly digits: number;
  /** Allowed, as the document's schema has it; `above`: not `min` itself. */
  readonly min: number;
  readonly max: number;
  readonly above: boolean;
}

/** Speeds of a tow, m/s: the allowed range of a retrieve, but for standing still. */
const SPEED: VariableForm = {
  variable: "speed",
  unit: "m/s",
  digits: 2,
  min: 0,
  max: 10,
  above: true,
};

const DIGITS: Readonly<Record<Exclude<ReachVariable, "speed">, number>> = {
  lineOut: 1,
  lineDiameter: 3,
  rodTip: 2,
  bibAngle: 1,
  bibLength: 2,
  bibWidth: 2,
  tieStation: 2,
  tieHeight: 2,
};

export function formOf(scenario: Scenario, variable: ReachVariable): VariableForm {
  const path = REACH_PATHS[variable];
  if (variable === "speed" || path === null) return SPEED;
  const field = fieldAt(pathText(path), scenario);
  if (field === null || field.kind !== "number")
    throw new Error(`No number field at ${pathText(path)}: name a field of the scenario schema.`);
  const { unit, min, max, above } = field;
  return { variable, unit, digits: DIGITS[variable], min, max, above };
}

/** The depth that is wanted, as an input of a document that has a target. */
export const wantedInput = (target: NonNullable<Scenario["target"]>, depth: number): Input => ({
  id: "target.depth_m",
  label: STEPS.wanted,
  unit: "m",
  read: (from) => from.target?.depth_m ?? depth,
  slider: { min: 0, max: 10, step: 0.05 },
  min: 0,
  max: 100,
  above: false,
  help: "",
  write: (from, value) => ({ ...from, target: { ...(from.target ?? target), depth_m: value } }),
});

/** The variables that a document has, in the order in which they are shown. */
export function variablesOf(scenario: Scenario): readonly ReachVariable[] {
  const all: readonly ReachVariable[] = [
    "speed",
    "lineOut",
    "lineDiameter",
    "rodTip",
    "bibAngle",
    "bibLength",
    "bibWidth",
    "tieStation",
    "tieHeight",
  ];
  return all.filter((one) => one === "speed" || variableOf(scenario, one) !== null);
}

/** What a map or a curve runs over: the usual range, in round steps, stretched to hold the document's own value. */
export function rangeOf(scenario: Scenario, variable: ReachVariable, speed: number): [number, number] {
  const { bait } = scenario;
  const length = bait.length_mm;
  const heights = [...bait.top, ...bait.bottom].map(([, height]) => height);
  const usual: Readonly<Record<ReachVariable, readonly [number, number]>> = {
    speed: [0.15, 1.8],
    lineOut: [5, 53],
    lineDiameter: [0.08, 0.44],
    rodTip: [0, 3],
    bibAngle: [15, 87],
    bibLength: [whole(0.05 * length), whole(0.05 * length) + whole(0.4 * length)],
    bibWidth: [whole(0.05 * length), whole(0.05 * length) + whole(0.32 * length)],
    tieStation: [-Math.max(3, whole(0.06 * length)), whole(0.3 * length)],
    tieHeight: [Math.floor(Math.min(...heights)), Math.ceil(Math.max(...heights))],
  };
  const value = variable === "speed" ? speed : variableOf(scenario, variable);
  const [low, high] = usual[variable];
  return value === null ? [low, high] : [Math.min(low, value), Math.max(high, value)];
}

/** The same for a curve: speeds from a crawl to a burn, so that the limits in speed are found. */
export function curveRangeOf(scenario: Scenario, variable: ReachVariable, speed: number): [number, number] {
  if (variable !== "speed") return rangeOf(scenario, variable, speed);
  return [Math.min(0.05, speed), Math.max(2.45, speed)];
}

const whole = (value: number): number => Math.max(1, Math.round(value));

/** `count` values from end to end, without tails of binary digits. */
export function valuesOf([low, high]: readonly [number, number], count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) =>
    Number((low + ((high - low) * i) / (count - 1)).toPrecision(9)),
  );
}

/** The index whose value is nearest. */
export function nearest(values: readonly number[], value: number): number {
  let best = 0;
  values.forEach((one, i) => {
    if (Math.abs(one - value) < Math.abs((values[best] ?? Infinity) - value)) best = i;
  });
  return best;
}

/** The same tackle with a line of another material: its published density and stiffness, the same diameter. */
export function withLine(scenario: Scenario, material: string): Scenario {
  const { diameter_mm } = scenario.tackle.line;
  return { ...scenario, tackle: { ...scenario.tackle, line: { material, diameter_mm } } };
}

/** The document with the values at a mark. */
export const atMark = (from: Scenario, mark: Mark): Scenario =>
  (Object.entries(mark) as [ReachVariable, number][]).reduce(
    (sofar, [variable, value]) => withVariable(sofar, variable, value),
    from,
  );
