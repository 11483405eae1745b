import { cos, sin } from "../../model/base";
import { spelled, widthOf, type Fonts } from "./font";
import {
  boxOf,
  type Drawing,
  type Item,
  type LineRole,
  type Point,
  type TextItem,
  type Weight,
} from "./page";

/** How a text is told in the language of whoever reads the sheets. */
export type Words = (english: string) => string;
export const inEnglish: Words = (english) => english;

/** Sizes of type, mm. */
export const TYPE = { title: 5, heading: 3.9, text: 3.2, small: 2.7, tiny: 2.2 } as const;

export interface Letters {
  readonly size?: number;
  readonly weight?: Weight;
  /** Which part of the words stands at the place: 0 their left end, ½ the middle, 1 the right end. */
  readonly anchor?: number;
  readonly upright?: boolean;
  readonly grey?: number;
  /** A name that somebody has given: it stays as it is. */
  readonly own?: boolean;
  /** Greatest width, mm: what is longer ends with "…". */
  readonly within?: number;
}

/** A text at a place of its base line. */
export function textAt(fonts: Fonts, at: Point, words: string, letters: Letters = {}): TextItem {
  const { size = TYPE.text, weight = "regular", anchor = 0, upright = false, grey = 0, within } = letters;
  const font = fonts[weight];
  let shown = spelled(words, font);
  let width = widthOf(shown, size, font);
  if (within !== undefined && width > within) {
    const signs = Array.from(shown);
    do {
      signs.pop();
      shown = `${signs.join("").trimEnd()}…`;
      width = widthOf(shown, size, font);
    } while (width > within && signs.length > 0);
  }
  const back = anchor * width;
  const from = upright ? { x: at.x, y: at.y + back } : { x: at.x - back, y: at.y };
  return { kind: "text", at: from, size, weight, words: shown, width, upright, grey };
}

/** Words as lines that are no wider than a width. A word that is too long alone is broken. */
export function wrapped(
  fonts: Fonts,
  words: string,
  width: number,
  size: number,
  weight: Weight = "regular",
): string[] {
  const font = fonts[weight];
  const lines: string[] = [];
  let line = "";
  const take = (word: string): void => {
    const longer = line === "" ? word : `${line} ${word}`;
    if (widthOf(longer, size, font) <= width) {
      line = longer;
      return;
    }
    if (line !== "") {
      lines.push(line);
      line = "";
      take(word);
      return;
    }
    const signs = Array.from(word);
    let fits = signs.length - 1;
    while (fits > 1 && widthOf(signs.slice(0, fits).join(""), size, font) > width) fits -= 1;
    lines.push(signs.slice(0, Math.max(1, fits)).join(""));
    if (signs.length > 1) take(signs.slice(Math.max(1, fits)).join(""));
  };
  for (const word of spelled(words, font).split(/ +/)) if (word !== "") take(word);
  if (line !== "") lines.push(line);
  return lines;
}

/** Collects the items of a drawing or of a page. What it writes, it tells in the words of the reader. */
export class Pen {
  readonly items: Item[] = [];
  constructor(
    readonly fonts: Fonts,
    readonly words: Words = inEnglish,
  ) {}

  line(role: LineRole, ...points: readonly Point[]): void {
    this.items.push({ kind: "path", role, points, closed: false });
  }

  ring(role: LineRole, points: readonly Point[]): void {
    this.items.push({ kind: "path", role, points, closed: true });
  }

  rect(role: LineRole, x: number, y: number, width: number, height: number): void {
    this.ring(role, [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ]);
  }

  circle(role: LineRole, at: Point, radius: number): void {
    // A polygon of n sides lies within r(1 − cos(π/n)) of its circle: below 0.01 mm up to 20 mm.
    const n = 96;
    const points = Array.from({ length: n }, (_, i) => {
      const t = (2 * Math.PI * i) / n;
      return { x: at.x + radius * cos(t), y: at.y + radius * sin(t) };
    });
    this.ring(role, points);
  }

  /** A centre mark. */
  cross(at: Point, arm = 2, role: LineRole = "mark"): void {
    this.line(role, { x: at.x - arm, y: at.y }, { x: at.x + arm, y: at.y });
    this.line(role, { x: at.x, y: at.y - arm }, { x: at.x, y: at.y + arm });
  }

  fill(grey: number, ...polygons: readonly (readonly Point[])[]): void {
    this.items.push({ kind: "fill", grey, polygons });
  }

  text(at: Point, words: string, letters: Letters = {}): TextItem {
    const item = textAt(this.fonts, at, letters.own === true ? words : this.words(words), letters);
    this.items.push(item);
    return item;
  }

  drawing(label: string): Drawing {
    return { label, items: this.items, box: boxOf(this.items) };
  }
}
