import type { Fonts } from "./font";
import type { Box, Item, Size } from "./page";
import { Pen } from "./pen";

/** The words of a page that is read and not cut: it has no rulers, and says its few words in the reader's language. */
export interface PlainWords {
  readonly paging: (page: number, of: number) => string;
  readonly continued: (title: string) => string;
}

const SIDE = 18;
const TOP = 20;
const BOTTOM = 14;

export const plainRoom = ({ width, height }: Size): Box => ({
  minX: SIDE,
  minY: TOP,
  maxX: width - SIDE,
  maxY: height - BOTTOM,
});

/** The head of such a page: what it belongs to, which part it is, which page. */
export function plainFrame(
  fonts: Fonts,
  { width }: Size,
  { name, part, paging }: { readonly name: string; readonly part: string; readonly paging: string },
): Item[] {
  const pen = new Pen(fonts);
  const grey = 0.2;
  const right = width - SIDE;
  const page = pen.text({ x: right, y: 12 }, paging, { anchor: 1, grey });
  const own = pen.text({ x: page.at.x - 6, y: 12 }, part, { anchor: 1, grey });
  pen.text({ x: SIDE, y: 12 }, name, { weight: "bold", within: own.at.x - SIDE - 6 });
  pen.line("rule", { x: SIDE, y: 14.5 }, { x: right, y: 14.5 });
  return pen.items;
}
