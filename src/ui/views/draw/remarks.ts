import { fromSI } from "../../../units";
import { hookReaches, stockMisses, thinBetween, USUAL_CLEAR, wallsOf } from "../../../model/checks";
import type { HookReach, StockMiss, Wall } from "../../../model/checks";
import type { Units, Worked } from "../../state";
import type { Language } from "../../words/base";
import { DRAW } from "../../words/draw";
import type { DrawWords } from "../../words/draw";
import { FILE } from "../../words/file";
import { stockOf } from "./stock";

/** Something odd about a part, with its place in the document. */
export interface Remark {
  readonly path: string;
  readonly text: string;
}

/** What was looked for on a drawing, without words: the walls take some milliseconds each. */
export interface Looked {
  readonly now: Worked;
  readonly walls: readonly Wall[];
  readonly thin: ReturnType<typeof thinBetween>;
  readonly reaches: readonly HookReach[];
  readonly misses: readonly StockMiss[];
}

export function lookAt(now: Worked): Looked {
  const { bait } = now.compiled;
  const stock = stockOf(now.scenario);
  return {
    now,
    walls: wallsOf(bait),
    thin: thinBetween(bait),
    reaches: hookReaches(bait),
    misses: stock === null ? [] : stockMisses(bait.drawn, stock),
  };
}

/** What the model warns of, walls thinner than `least` (m), hooks that can touch something, and a board that is too small. */
export function remarksOf(
  { now, walls, thin, reaches, misses }: Looked,
  least: number,
  units: Units,
  language: Language,
): readonly Remark[] {
  const words = DRAW.in(language);
  const below = FILE.in(language);
  const mm = (m: number): string => units.show(fromSI(m, "mm"), "mm", 1);
  /** What is below a limit never reads as the limit itself. */
  const less = (m: number, limit: number): string =>
    mm(m) === mm(limit) ? units.show(fromSI(Math.floor(m / FINE) * FINE, "mm"), "mm", 2) : mm(m);
  return [
    ...now.statics.warnings.map(({ path, text }): Remark => ({ path, text: units.told(below.of(text)) })),
    ...walls
      .filter((wall) => wall.least < least)
      .map((wall): Remark => {
        const shown = { wall: less(wall.least, least), least: mm(least) };
        const text = [wallText(wall, shown, mm, words), words.tell(`mend.${wall.as}`)].join(" ");
        return { path: wall.path, text };
      }),
    ...thin.map(({ path, chamber, least: left }): Remark => ({
      path,
      text: `${words.tell("thin", { left: less(left, USUAL_CLEAR), chamber: below.of(chamber), clear: mm(USUAL_CLEAR) })} ${words.tell("mend.thin")}`,
    })),
    ...reaches.map((one): Remark => ({
      path: one.path,
      text: touchText(one, mm, words, (name) => below.of(name)),
    })),
    ...misses.map((one): Remark => ({
      path: "bait.body",
      text: `${missText(one, mm, words)} ${words.tell("mend.over")}`,
    })),
  ];
}

type Shown = (m: number) => string;

/** How the body is larger than its board, with the figures. */
export const missText = ({ along, needs, has }: StockMiss, mm: Shown, words: DrawWords): string =>
  words.tell(`over.${along}`, { needs: mm(needs), has: mm(has), over: mm(needs - has) });

/** Steps of a figure that is told more finely, m. */
const FINE = 1e-5;

/** What is to be moved farther off is told no less than needed, m. */
const TENTH = 1e-4;

/** What is nearer to nothing than this shows as nothing, m. */
const NOTHING = 0.05e-3;

function wallText(
  { as, least }: Wall,
  shown: { readonly wall: string; readonly least: string },
  mm: Shown,
  words: DrawWords,
): string {
  if (least <= -NOTHING) return words.tell(`through.${as}`, { by: mm(-least) });
  if (least < NOTHING) return words.tell(`noWall.${as}`);
  return words.tell(`wall.${as}`, shown);
}

function touchText(
  { touches, length, by, apart, within }: HookReach,
  mm: Shown,
  words: DrawWords,
  called: (name: string) => string,
): string {
  const far = { long: mm(length), apart: mm(apart) };
  const more = mm(Math.ceil((within - apart) / TENTH) * TENTH);
  switch (touches.what) {
    case "hook":
      return `${words.tell("hooks", { other: called(touches.name), apart: far.apart, within: mm(within) })} ${words.tell("mend.hooks", { more })}`;
    case "bib":
      return `${words.tell(`reachBib.${by}`, far)} ${words.tell("mend.reach", { more })}`;
    case "tie":
      return `${words.tell(`reachTie.${by}`, far)} ${words.tell("mend.reach", { more })}`;
  }
}
