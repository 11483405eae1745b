import { lineMaterials } from "../../../model/materials";
import { changesBait } from "../../../runner";
import type { ReachCell, ReachLimit, ReachMapJob, ModelClient, ReachVariable } from "../../../runner";
import { curveRangeOf, rangeOf, valuesOf, withLine } from "./variables";

export interface MapShown {
  readonly across: ReachVariable;
  readonly up: ReachVariable;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Column by column; null where not yet worked out. */
  readonly cells: readonly (ReachCell | null)[];
  readonly done: number;
  readonly of: number;
}

export interface CurveShown {
  readonly variable: ReachVariable;
  readonly values: readonly number[];
  readonly cells: readonly ReachCell[];
  /** Depth with lines of other materials, by their name; only where the line is what varies. */
  readonly others: readonly { readonly material: string; readonly cells: readonly ReachCell[] }[];
}

/** A limit in speed: below or above it the bait does not run. */
export interface SpeedLimit extends ReachLimit {
  readonly side: "below" | "above";
}

const COLUMNS = 25;
const ROWS = 12;
const CURVE_POINTS = 25;

/** Cells of a map. */
export const CELLS = COLUMNS * ROWS;

/** Works a map out piece by piece, and shows it after each. False where it was cancelled. */
export async function mapOf(
  client: ModelClient,
  plain: ReachMapJob,
  across: ReachVariable,
  up: ReachVariable,
  show: (map: MapShown) => void,
): Promise<boolean> {
  const xs = valuesOf(rangeOf(plain.scenario, across, plain.speed), COLUMNS);
  const ys = valuesOf(rangeOf(plain.scenario, up, plain.speed), ROWS);
  const [x, y] = [
    { variable: across, values: xs },
    { variable: up, values: ys },
  ];
  // What changes the bait is outside: it is assembled once a row.
  const swapped = changesBait(up) && !changesBait(across);
  const cells: (ReachCell | null)[] = Array<null>(CELLS).fill(null);
  const put = (cell: ReachCell): void => {
    const [outer, inner] = swapped
      ? [cell.index % COLUMNS, Math.floor(cell.index / COLUMNS)]
      : [Math.floor(cell.index / ROWS), cell.index % ROWS];
    cells[outer * ROWS + inner] = cell;
  };
  const vary = swapped ? [y, x] : [x, y];
  const all = await client.map({ ...plain, vary }, "map", (piece, done, of) => {
    piece.forEach(put);
    show({ across, up, xs, ys, cells: [...cells], done, of });
  });
  return all !== null;
}

/** Depth over one variable; null where it was cancelled. */
export async function curveOf(
  client: ModelClient,
  plain: ReachMapJob,
  variable: ReachVariable,
): Promise<CurveShown | null> {
  const { scenario } = plain;
  const values = valuesOf(curveRangeOf(scenario, variable, plain.speed), CURVE_POINTS);
  const vary = [{ variable, values }];
  const cells = await client.map({ ...plain, vary, bands: true }, "curve");
  if (cells === null) return null;
  const others: { material: string; cells: readonly ReachCell[] }[] = [];
  if (variable === "lineDiameter")
    for (const { name, otherNames } of lineMaterials) {
      const { material } = scenario.tackle.line;
      if (material === name || otherNames?.includes(material) === true) continue;
      const other = withLine(scenario, name);
      const found = await client.map({ ...plain, scenario: other, vary }, "curve");
      if (found === null) return null;
      others.push({ material: name, cells: found });
    }
  return { variable, values, cells, others };
}

/** The speeds at which the bait begins and ceases to run, from a curve over speed; null where it was cancelled. */
export async function speedLimitsOf(
  client: ModelClient,
  plain: ReachMapJob,
  curve: CurveShown,
): Promise<readonly SpeedLimit[] | null> {
  type Side = Pick<SpeedLimit, "side" | "runs" | "fails">;
  const sides = curve.cells.flatMap((cell, i): Side[] => {
    const before = curve.cells[i - 1];
    const [from, to] = [curve.values[i - 1], curve.values[i]];
    if (before === undefined || from === undefined || to === undefined || before.runs === cell.runs)
      return [];
    return cell.runs
      ? [{ side: "below", runs: to, fails: from }]
      : [{ side: "above", runs: from, fails: to }];
  });
  const found = await client.limits(
    plain,
    sides.map(({ runs, fails }) => ({ variable: "speed", runs, fails })),
    "limits",
  );
  if (found === null) return null;
  return found.flatMap((limit, i) => {
    const side = sides[i]?.side;
    return side === undefined ? [] : [{ ...limit, side }];
  });
}
