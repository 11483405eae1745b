import type { ReachCell } from "../../../runner";
import type { Scenario } from "../../../document";
import { degrees } from "../../state";
import type { CurveShown, MapShown } from "./working";
import { formOf } from "./variables";

/** Map and curves as one table for other programs: SI or the file's own units, named in the head. Pure. */

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
  pitch === null ? null : degrees(pitch),
  tension,
  why,
];

export function reachCsv(scenario: Scenario, map: MapShown | null, curves: readonly CurveShown[]): string {
  const named = (variable: MapShown["across"], value: number): (string | number)[] => {
    const form = formOf(scenario, variable);
    return [form.label, value, form.unit];
  };
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
