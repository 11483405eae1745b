import { fieldAt, pathText } from "../document";
import type { Scenario } from "../document";
import { fromSI } from "../units";
import type { ReachCell } from "./reach-map";
import { REACH_NAMES, REACH_PATHS } from "./vary";
import type { ReachVariable } from "./vary";

/** Map and curves as one table for other programs: SI or the file's own units, named in the head. Pure. */

/** A map, column by column; null where a cell is not yet worked out. */
interface MapTable {
  readonly across: ReachVariable;
  readonly up: ReachVariable;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly cells: readonly (ReachCell | null)[];
}
interface CurveTable {
  readonly variable: ReachVariable;
  readonly values: readonly number[];
  readonly cells: readonly ReachCell[];
}

const HEAD = [
  "chart",
  "variable",
  "value",
  "unit",
  "second variable",
  "second value",
  "second unit",
  "runs",
  "depth_m",
  "attitude_deg",
  "tension_N",
  "why",
];

/** RFC 4180: a field with a comma, a quote or an end of line stands in quotes. */
const field = (value: string | number | null): string => {
  const text = value === null ? "" : typeof value === "number" ? String(Number(value.toPrecision(9))) : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

const cellOf = ({ runs, depth, pitch, tension, why }: ReachCell): (string | number | null)[] => [
  runs ? "yes" : "no",
  depth,
  pitch === null ? null : fromSI(pitch, "deg"),
  tension,
  why,
];

/** The unit in which the document has a variable. */
function unitOf(scenario: Scenario, variable: ReachVariable): string {
  const path = REACH_PATHS[variable];
  const field = path === null ? null : fieldAt(pathText(path), scenario);
  return field?.kind === "number" ? field.unit : "m/s";
}

export function reachCsv(scenario: Scenario, map: MapTable | null, curves: readonly CurveTable[]): string {
  const named = (variable: ReachVariable, value: number): (string | number)[] => [
    REACH_NAMES[variable],
    value,
    unitOf(scenario, variable),
  ];
  const rows: (string | number | null)[][] = [HEAD];
  map?.cells.forEach((cell, k) => {
    const i = Math.floor(k / map.ys.length);
    const [x, y] = [map.xs[i], map.ys[k % map.ys.length]];
    if (cell === null || x === undefined || y === undefined) return;
    rows.push(["map", ...named(map.across, x), ...named(map.up, y), ...cellOf(cell)]);
  });
  for (const { variable, values, cells } of curves)
    cells.forEach((cell, i) => {
      const value = values[i];
      if (value !== undefined)
        rows.push(["curve", ...named(variable, value), null, null, null, ...cellOf(cell)]);
    });
  return rows.map((row) => row.map(field).join(",")).join("\r\n") + "\r\n";
}
