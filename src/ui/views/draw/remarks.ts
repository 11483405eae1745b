import { fromSI } from "../../../units";
import { hookReaches, stockMisses, thinBetween, USUAL_CLEAR, wallsOf } from "../../../model/checks";
import type { HookReach, StockMiss, Wall } from "../../../model/checks";
import type { Units, Worked } from "../../state";
import { stockOf } from "./stock";

/** Something odd about a part, with its place in the document. */
export interface Remark {
  readonly path: string;
  readonly text: string;
}

/** What the model warns of, walls thinner than `least` (m), hooks that can touch something, and a board that is too small. */
export function remarksAt(now: Worked, least: number, units: Units): readonly Remark[] {
  const { statics, compiled, scenario } = now;
  const mm = (m: number): string => units.show(fromSI(m, "mm"), "mm", 1);
  const walls = wallsOf(compiled.bait).filter((wall) => wall.least < least);
  const stock = stockOf(scenario);
  const misses = stock === null ? [] : stockMisses(compiled.bait.drawn, stock);
  return [
    ...statics.warnings.map(({ path, text }): Remark => ({ path, text: units.told(text) })),
    ...walls.map((wall): Remark => ({ path: wall.path, text: wallText(wall, mm(least), mm) })),
    ...thinBetween(compiled.bait).map(({ path, chamber, least: left }): Remark => ({
      path,
      text: `Only ${mm(left)} of wood are left between it and the chamber “${chamber}”: with less than ${mm(USUAL_CLEAR)} a drill breaks through.`,
    })),
    ...hookReaches(compiled.bait).map((one): Remark => ({ path: one.path, text: touchText(one, mm) })),
    ...misses.map((one): Remark => ({ path: "bait.body", text: missText(one, mm) })),
  ];
}

const STOCK_WORDS: Readonly<Record<StockMiss["along"], { body: string; board: string }>> = {
  length: { body: "long", board: "long" },
  width: { body: "high", board: "wide" },
  thickness: { body: "broad", board: "thick" },
};

/** How the body is larger than its board, with the figures. */
export function missText({ along, needs, has }: StockMiss, mm: (m: number) => string): string {
  const { body, board } = STOCK_WORDS[along];
  return `The body is ${mm(needs)} ${body}, the board ${mm(has)} ${board}: ${mm(needs - has)} of it stand over.`;
}

/** What is nearer to nothing than this shows as nothing, m. */
const NOTHING = 0.05e-3;

const AS: Readonly<Record<Wall["as"], string>> = {
  box: "It",
  bore: "Its hole, from the weight to its end,",
  ball: "It, taken as a ball of its volume,",
  hole: "Its hole, taken as deep as wide,",
};

function wallText({ as, least }: Wall, wanted: string, mm: (m: number) => string): string {
  const it = AS[as];
  if (least <= -NOTHING) return `${it} breaks through the skin by ${mm(-least)}.`;
  if (least < NOTHING) return `${it} reaches the skin: no wall is left.`;
  return `${it} leaves a wall of ${mm(least)} to the skin; the least you want is ${wanted}.`;
}

const BY: Readonly<Record<HookReach["by"], string>> = {
  length: "by the length given",
  size: "as is usual for its size",
  mass: "by its mass",
};

function touchText({ touches, length, by, apart, within }: HookReach, mm: (m: number) => string): string {
  const about = `about ${mm(length)} long with its ring, ${BY[by]}`;
  switch (touches.what) {
    case "hook":
      return `This hook and “${touches.name}” can reach each other: their eyes are ${mm(apart)} apart, together the hooks reach ${mm(within)}.`;
    case "bib":
      return `This hook, ${about}, can reach the bib, ${mm(apart)} from its eye.`;
    case "tie":
      return `This hook, ${about}, can reach the tie eye, ${mm(apart)} away.`;
  }
}
