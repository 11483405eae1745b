import { formatNumber } from "../../units";
import type { Fonts } from "./font";
import type { Box, Item, Size } from "./page";
import { Pen, TYPE, type Words } from "./pen";

/** Sizes of paper, mm (ISO 216 A4; ANSI/ASME Y14.1 A, "Letter"). */
export const PAPERS = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
} as const satisfies Record<string, Size>;

export type PaperKey = keyof typeof PAPERS;

/** Length of the check rulers, mm. */
export const RULER = 100;

/** How much the rulers of a first print were off, and so by what the next print is stretched. */
export interface Measured {
  /** What the two rulers measured on the paper, mm; 100 where they were right. */
  readonly across: number;
  readonly down: number;
}

export const AS_PRINTED: Measured = { across: RULER, down: RULER };

/** A print that is further off was fitted to the page: that is mended in the print dialog, not by stretching. */
export const OFF_AT_MOST = 5;

/** What to stretch by so that a ruler is right on this printer. */
export const factorsOf = ({ across, down }: Measured): { readonly x: number; readonly y: number } => ({
  x: RULER / across,
  y: RULER / down,
});

/** What holds a measured ruler within its bounds; null: it is. */
export function measuredTrouble(value: number): string | null {
  if (Number.isFinite(value) && Math.abs(value - RULER) <= OFF_AT_MOST) return null;
  return `A ruler of ${RULER} mm that measures ${Number.isFinite(value) ? value : "nothing"} was fitted to the page. Print at 100 % (“actual size”) and measure again: ${RULER - OFF_AT_MOST} to ${RULER + OFF_AT_MOST} mm can be corrected.`;
}

const LEFT = 18;
const RIGHT = 10;
const TOP = 18;
const BOTTOM = 31;
/** Where ruler and words of the frame begin. */
const EDGE = 9;

/** The part of the page that drawings and words may fill. */
export const room = ({ width, height }: Size): Box => ({
  minX: LEFT,
  minY: TOP,
  maxX: width - RIGHT,
  maxY: height - BOTTOM,
});

export interface FrameWords {
  readonly name: string;
  /** The sheet's part: "Templates", "Build sheet". */
  readonly part: string;
  readonly page: number;
  readonly of: number;
  readonly fingerprint: string;
  readonly measured: Measured;
  readonly told: Words;
}

const TICK = { one: 1.2, five: 2, ten: 3 } as const;
const tick = (i: number): number => (i % 10 === 0 ? TICK.ten : i % 5 === 0 ? TICK.five : TICK.one);

/** Head, foot and the two rulers: on every page alike. */
export function frame(fonts: Fonts, { width, height }: Size, words: FrameWords): Item[] {
  const pen = new Pen(fonts, words.told);
  const grey = 0.2;
  const right = width - RIGHT;
  const paging = pen.text({ x: right, y: 12 }, `page ${words.page} of ${words.of}`, { anchor: 1, grey });
  const part = pen.text({ x: paging.at.x - 6, y: 12 }, words.part, { anchor: 1, grey });
  pen.text({ x: EDGE, y: 12 }, words.name, { weight: "bold", within: part.at.x - EDGE - 6, own: true });
  pen.line("rule", { x: EDGE, y: 14.5 }, { x: right, y: 14.5 });

  const { x: kx, y: ky } = factorsOf(words.measured);
  const base = height - 26;
  const from = 20;
  pen.line("ruler", { x: from, y: base }, { x: from + RULER * kx, y: base });
  for (let i = 0; i <= RULER; i++)
    pen.line("ruler", { x: from + i * kx, y: base }, { x: from + i * kx, y: base - tick(i) });
  for (let i = 0; i <= RULER; i += 10)
    pen.text({ x: from + i * kx, y: base + 2.6 }, String(i), { size: TYPE.tiny, anchor: 0.5 });
  pen.text({ x: from + RULER * kx + 4, y: base }, "mm: check this ruler", { size: TYPE.small, grey });

  pen.line("ruler", { x: EDGE, y: from }, { x: EDGE, y: from + RULER * ky });
  for (let i = 0; i <= RULER; i++)
    pen.line("ruler", { x: EDGE, y: from + i * ky }, { x: EDGE + tick(i), y: from + i * ky });
  for (let i = 0; i <= RULER; i += 10)
    pen.text({ x: EDGE + TICK.ten + 2.4, y: from + i * ky }, String(i), {
      size: TYPE.tiny,
      anchor: 0.5,
      upright: true,
    });
  pen.text({ x: EDGE + TICK.ten + 2, y: from + RULER * ky + 5 }, "mm: and this one", {
    size: TYPE.small,
    anchor: 1,
    upright: true,
    grey,
  });

  const foot = { size: TYPE.small, within: right - EDGE };
  pen.text(
    { x: EDGE, y: height - 17.5 },
    `Print at 100 % (“actual size”, not “fit to page”). Each ruler must measure ${RULER} mm on the paper; if not, the templates are wrong.`,
    foot,
  );
  pen.text({ x: EDGE, y: height - 13.5 }, correctionWords(words.measured), foot);
  pen.text(
    { x: EDGE, y: height - 9.5 },
    `Scale 1 : 1, lengths in millimetres. Fingerprint of the bait's file: ${words.fingerprint}`,
    foot,
  );
  return pen.items;
}

function correctionWords({ across, down }: Measured): string {
  if (across === RULER && down === RULER) return "Not corrected for the printer.";
  const { x, y } = factorsOf({ across, down });
  const one = (value: number): string => formatNumber(value, 2);
  const factor = (value: number): string => `× ${formatNumber(value, 4)}`;
  return `Corrected for one printer, whose rulers measured ${one(across)} mm across and ${one(down)} mm down: drawn ${factor(x)} across, ${factor(y)} down.`;
}
