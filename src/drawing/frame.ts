import { formatIn, toSI, type UnitName } from "../units";
import { onScreen } from "./ground";
import { farUnit, nearUnit, type Lengths } from "./lengths";
import type { Mark, TextMark } from "./mark";
import { decimalsOf, niceStep } from "./ticks";
import type { Size } from "./types";
import type { NumberWriter } from "./words";

/** What a saved picture says of itself. */
export interface Caption {
  /** What it shows: the bait's name. */
  readonly title: string;
  /** When, in words ("2.14 s"), or under what; null: at no moment. */
  readonly moment: string | null;
  /** px of the picture to a metre: the scale bar follows from it; null: the picture has no single scale. */
  readonly scale: number | null;
  /** The units of the scale bar. */
  readonly lengths: Lengths;
  readonly number: NumberWriter;
}

/** Height of the strip under the picture, px. */
const STRIP = 40;
const PAD = 12;
/** Least and greatest length of the scale bar, px: the greatest as a share of the width. */
const BAR_LEAST = 48;
const BAR_MOST = 0.3;
/** Rough breadth of a letter as a share of its size, to cut a title that would run into the bar. */
const LETTER = 0.56;

export interface Framed {
  /** The picture with its strip. */
  readonly size: Size;
  /** What is drawn over the picture and under it, in px from the picture's own top left corner. */
  readonly marks: readonly Mark[];
}

/** Size of a saved picture with its strip, of a drawing of this size. */
export const withStrip = ({ width, height }: Size): Size => ({ width, height: height + STRIP });

/** Frame of a saved picture: a border, and a strip under it with title, moment and scale bar. In screen px. */
export function frameOf(size: Size, { title, moment, scale, lengths, number }: Caption): Framed {
  const { width, height } = size;
  const whole = withStrip(size);
  const middle = height + STRIP / 2;
  const bar = scale === null ? [] : barMarks(width, middle, scale, lengths, number);
  const taken = scale === null ? PAD : barLength(width, scale, lengths).px + 2 * PAD;
  const words = (text: string, x: number, bold: boolean): TextMark => ({
    kind: "text",
    what: null,
    at: onScreen(x, middle),
    words: text,
    size: 14,
    bold,
    anchor: { x: 0, y: 0.5 },
    fill: { role: bold ? "ink" : "inkSoft" },
  });
  const momentWidth = moment === null ? 0 : 14 * LETTER * moment.length + 16;
  const shown = cutTo(title, (width - taken - PAD - momentWidth) / (15 * LETTER));
  const rectangle = (y0: number, y1: number) => [
    onScreen(0, y0),
    onScreen(width, y0),
    onScreen(width, y1),
    onScreen(0, y1),
  ];
  return {
    size: whole,
    marks: [
      { kind: "polygon", what: null, points: rectangle(height, whole.height), fill: { role: "paper" } },
      words(shown, PAD, true),
      ...(moment === null ? [] : [words(moment, PAD + 15 * LETTER * shown.length + 16, false)]),
      ...bar,
      {
        kind: "path",
        what: null,
        points: [onScreen(0, height), onScreen(width, height)],
        stroke: { role: "ink", px: 1 },
      },
      { kind: "polygon", what: null, points: rectangle(0, whole.height), stroke: { role: "ink", px: 2 } },
    ],
  };
}

/** A text of at most so many letters, its end cut with an ellipsis. */
function cutTo(text: string, letters: number): string {
  const most = Math.max(4, Math.floor(letters));
  const all = Array.from(text);
  return all.length <= most ? text : `${all.slice(0, most - 1).join("")}…`;
}

interface Bar {
  readonly length: number;
  readonly unit: UnitName;
  readonly px: number;
}

/** The longest bar of a round length that has room, or the shortest that can be read; in the small unit below one great one. */
function barLength(width: number, scale: number, lengths: Lengths): Bar {
  const far = barIn(farUnit(lengths), width, scale);
  return far.length >= 1 ? far : barIn(nearUnit(lengths), width, scale);
}

function barIn(unit: UnitName, width: number, scale: number): Bar {
  const px = scale * toSI(1, unit);
  let length = niceStep(px, BAR_LEAST);
  for (let next = niceStep(px, 1.5 * length * px); next * px <= BAR_MOST * width;) {
    length = next;
    next = niceStep(px, 1.5 * length * px);
  }
  return { length, unit, px: length * px };
}

function barMarks(
  width: number,
  middle: number,
  scale: number,
  lengths: Lengths,
  number: NumberWriter,
): Mark[] {
  const { length, unit, px } = barLength(width, scale, lengths);
  const [from, to, y] = [width - PAD - px, width - PAD, middle + 9];
  return [
    {
      kind: "lines",
      what: null,
      paths: [
        [onScreen(from, y), onScreen(to, y)],
        ...[from, to].map((x) => [onScreen(x, y - 4), onScreen(x, y + 4)]),
      ],
      stroke: { role: "ink", px: 2 },
    },
    {
      kind: "text",
      what: null,
      at: onScreen((from + to) / 2, y - 6),
      words: number(formatIn(toSI(length, unit), unit, decimalsOf(length))),
      size: 12,
      anchor: { x: 0.5, y: 1 },
      fill: { role: "ink" },
    },
  ];
}
