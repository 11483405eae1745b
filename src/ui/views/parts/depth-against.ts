import type { ResolvedTarget } from "../../../model/bench";
import type { ReachCell } from "../../../runner";
import type { Units } from "../../state";
import type { Language } from "../../words/base";
import { FILE } from "../../words/file";
import { FORMS } from "../../words/forms";

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
  language: Language,
): DepthAgainst {
  const words = FORMS.in(language);
  const at = units.show(speed, "m/s", 2);
  const goal = `${units.show(wanted.value, "m", 2)} ± ${units.show(wanted.tolerance, "m", 2)}`;
  if (cell === null) return { met: null, text: words.tell("depth.wanted", { at, goal }) };
  if (!cell.runs || cell.depth === null) {
    const text =
      cell.why === null
        ? words.tell("depth.stays", { at, goal })
        : words.tell("depth.staysWhy", { at, goal, why: FILE.in(language).of(cell.why) });
    return { met: false, text };
  }
  const now = units.show(cell.depth, "m", 2);
  const off = cell.depth - wanted.value;
  if (Math.abs(off) <= wanted.tolerance)
    return { met: true, text: words.tell("depth.met", { now, at, goal }) };
  const by = units.show(Math.abs(off), "m", 2);
  return { met: false, text: words.tell(off > 0 ? "depth.deep" : "depth.shallow", { by, at, now, goal }) };
}
