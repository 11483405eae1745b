import type { Page } from "../../../src/sheet";
import { boxOf, textBox, type Box, type TextItem } from "../../../src/sheet/paper/page";
import { clippedTo } from "../../../src/sheet/paper/tile";

/** Printers leave this much of the paper's edge white, mm (common practice, no source: most need 3 to 6). */
const EDGE = 6;
export const HAIR = 1e-9;

export const texts = (page: Page): TextItem[] => page.items.filter((one) => one.kind === "text");
const meet = (a: Box, b: Box): boolean =>
  a.minX < b.maxX - HAIR && b.minX < a.maxX - HAIR && a.minY < b.maxY - HAIR && b.minY < a.maxY - HAIR;

/** Texts over a drawn line. */
export function overLines(page: Page): string[] {
  const paths = page.items.flatMap((one) => (one.kind === "path" ? [one] : []));
  return texts(page).flatMap((one) => {
    const { minX, minY, maxX, maxY } = textBox(one);
    const box = { minX: minX + HAIR, minY: minY + HAIR, maxX: maxX - HAIR, maxY: maxY - HAIR };
    const under = paths.find(
      ({ points, closed }) => clippedTo(closed ? [...points, ...points.slice(0, 1)] : points, box).length > 0,
    );
    return under === undefined ? [] : [`${page.label}: “${one.words}” over a line (${under.role})`];
  });
}

/** Pairs of texts that lie on each other, and items that reach beyond the printable part. */
export function faults(page: Page): string[] {
  const words = texts(page).map((one) => ({ words: one.words, box: textBox(one) }));
  const pairs = words.flatMap((a, i) =>
    words.slice(i + 1).flatMap((b) => (meet(a.box, b.box) ? [`“${a.words}” on “${b.words}”`] : [])),
  );
  const { width, height } = page.size;
  const off = page.items.flatMap((item) => {
    const { minX, minY, maxX, maxY } = boxOf([item]);
    const inside = minX >= EDGE && minY >= EDGE && maxX <= width - EDGE && maxY <= height - EDGE;
    if (inside) return [];
    return [`${item.kind} ${item.kind === "text" ? item.words : ""} off the page`];
  });
  return [...pairs, ...off].map((fault) => `${page.label}: ${fault}`);
}
