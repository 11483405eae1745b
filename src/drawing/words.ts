import type { Lengths } from "./lengths";
import type { Rival } from "./types";

/** Writes a number in the way of the language that is read; it comes with a decimal point. */
export type NumberWriter = (number: string) => string;

/** What stands beside the marks of a picture of the water, told by whoever shows it in the language that is read. */
export interface PictureWords {
  readonly number: NumberWriter;
  /** What the program knows by an English name: weed, the strike zone, a force, the ruler of the arrows. */
  readonly name: (english: string) => string;
  /** The head of the depth scale. */
  readonly depth: string;
  /** How far a bait lies that is out of the picture: the bait itself, the pinned one, another variant. */
  readonly away: (who: "bait" | "pinned" | Rival["letter"], distance: string) => string;
  readonly variant: (letter: Rival["letter"]) => string;
  /** The head of the list of forces too small to draw, with the first of them. */
  readonly small: (first: string) => string;
  /** The ruler of arrows that stand head to tail from G. */
  readonly chain: (ruler: string) => string;
}

/** How a picture speaks: its words, and the units of its scales and distances. */
export interface Speech {
  readonly lengths: Lengths;
  readonly words: PictureWords;
}
