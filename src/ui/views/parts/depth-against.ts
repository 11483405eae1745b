import type { ResolvedTarget } from "../../../model/bench";
import type { ReachCell } from "../../../runner";
import type { Units } from "../../state";

/** The depth that the target asks for, beside that of the steady tow. */
export interface DepthAgainst {
  /** Null: it is being worked out. */
  readonly met: boolean | null;
  readonly text: string;
}

/** @param cell the steady tow at the wanted speed with all the line out; null: not worked out yet */
export function depthAgainst(
  wanted: NonNullable<ResolvedTarget["depth"]>,
  cell: Pick<ReachCell, "runs" | "why" | "depth"> | null,
  speed: number,
  units: Units,
): DepthAgainst {
  const at = `at ${units.show(speed, "m/s", 2)}`;
  const goal = `${units.show(wanted.value, "m", 2)} ± ${units.show(wanted.tolerance, "m", 2)}`;
  if (cell === null) return { met: null, text: `Wanted ${at}: ${goal} deep` };
  if (!cell.runs || cell.depth === null)
    return {
      met: false,
      text: `Does not run ${at}${cell.why === null ? "" : ` (${cell.why})`}; wanted: ${goal} deep`,
    };
  const now = units.show(cell.depth, "m", 2);
  const off = cell.depth - wanted.value;
  if (Math.abs(off) <= wanted.tolerance)
    return { met: true, text: `Runs ${now} deep ${at}, as wanted: ${goal}` };
  return {
    met: false,
    text: `Runs ${units.show(Math.abs(off), "m", 2)} too ${off > 0 ? "deep" : "shallow"} ${at}: ${now}; wanted: ${goal}`,
  };
}
