import type { Point } from "../../../drawing";

/** An arrow's words, the place of its tip, and where it points. */
interface Named {
  readonly letter: string;
  readonly says: string;
  readonly to: Point;
  readonly along: Point;
}

/** Width of a sign as a share of the type's size: the page's figures, a little more than they take. */
const SIGN = 0.55;
const LINE = 1.15;

/**
 * Where each arrow's words begin, y down: beyond its tip, on the side to which it points. Words that would lie on others
 * move on, up or down with their arrow.
 */
export function besideArrows(
  arrows: readonly Named[],
  size: number,
): readonly (Point & { readonly letter: string; readonly says: string })[] {
  const placed: (Point & { letter: string; says: string; width: number })[] = [];
  for (const { letter, says, to, along } of arrows) {
    const width = SIGN * size * says.length;
    const x = to.x - width * (1 - along.x) * 0.5;
    let y = to.y + 0.6 * size * along.y;
    const step = (along.y < 0 ? -1 : 1) * LINE * size;
    const meets = (one: (typeof placed)[number]): boolean =>
      Math.abs(one.y - y) < 0.99 * LINE * size && x < one.x + one.width && one.x < x + width;
    while (placed.some(meets)) y += step;
    placed.push({ letter, says, x, y, width });
  }
  return placed;
}
