import { carried, sizeOf, textBox, type Box, type Drawing, type Item, type Point, type Size } from "./page";
import { Pen, TYPE } from "./pen";
import type { Fonts } from "./font";

/** How much two neighbouring sheets show alike, mm. */
export const OVERLAP = 12;
/** Room round the drawing for the registration marks, mm. */
const PAD = 8;

/** A drawing turned so that it is read from the sheet's right side. */
export const turned = ({ label, items, box }: Drawing): Drawing => ({
  label,
  items: carried(items, ({ x, y }) => ({ x: y, y: 0 - x }), true),
  box: { minX: box.minY, maxX: box.maxY, minY: -box.maxX, maxY: -box.minX },
});

/** How many sheets a length takes. */
const count = (length: number, window: number): number =>
  length <= window ? 1 : Math.ceil((length - OVERLAP) / (window - OVERLAP));

export interface Tile {
  readonly items: readonly Item[];
  /** "sheet 1 of 2" */
  readonly label: string;
}

/** The drawing's sheets, each with its items in the window's own place: 0, 0 is its upper left corner. */
export function tiles(fonts: Fonts, drawing: Drawing, window: Size): readonly Tile[] {
  const padded = (one: Drawing): Size => {
    const { width, height } = sizeOf(one.box);
    return { width: width + 2 * PAD, height: height + 2 * PAD };
  };
  const sheets = (size: Size): number => count(size.width, window.width) * count(size.height, window.height);
  const sideways = turned(drawing);
  const chosen = sheets(padded(sideways)) < sheets(padded(drawing)) ? sideways : drawing;
  const size = padded(chosen);
  const origin = { x: chosen.box.minX - PAD, y: chosen.box.minY - PAD };
  const [columns, rows] = [count(size.width, window.width), count(size.height, window.height)];
  const step = (length: number, n: number, at: number): number => (n === 1 ? 0 : (length - at) / (n - 1));
  const across = step(size.width, columns, Math.min(window.width, size.width));
  const down = step(size.height, rows, Math.min(window.height, size.height));
  const marks = seams(fonts, size, { columns, rows, across, down }, window);
  const all = [...carried(chosen.items, ({ x, y }) => ({ x: x - origin.x, y: y - origin.y })), ...marks];
  const windows: Box[] = [];
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const [minX, minY] = [c * across, r * down];
      windows.push({ minX, minY, maxX: minX + window.width, maxY: minY + window.height });
    }
  return windows.map((box, i) => ({
    label: `sheet ${i + 1} of ${windows.length}`,
    items: all.flatMap((item) => within(item, box, i, windows)),
  }));
}

interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly across: number;
  readonly down: number;
}

const LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";

/** Crosses in the strips that two sheets share. */
function seams(fonts: Fonts, size: Size, grid: Grid, window: Size): Item[] {
  const pen = new Pen(fonts);
  let n = 0;
  const mark = (at: Point): void => {
    pen.circle("mark", at, 1.5);
    pen.cross(at, 3);
    pen.text({ x: at.x + 2, y: at.y - 1.2 }, LETTERS[n % LETTERS.length] ?? "", {
      size: TYPE.small,
      weight: "bold",
    });
    n += 1;
  };
  const inset = PAD / 2;
  for (let c = 1; c < grid.columns; c++) {
    const x = (c * grid.across + (c - 1) * grid.across + window.width) / 2;
    mark({ x, y: inset });
    mark({ x, y: size.height - inset });
  }
  for (let r = 1; r < grid.rows; r++) {
    const y = (r * grid.down + (r - 1) * grid.down + window.height) / 2;
    mark({ x: inset, y });
    mark({ x: size.width - inset, y });
  }
  return pen.items;
}

const holds = (outer: Box, inner: Box): boolean =>
  inner.minX >= outer.minX &&
  inner.maxX <= outer.maxX &&
  inner.minY >= outer.minY &&
  inner.maxY <= outer.maxY;

/** What a window shows of an item, in the window's own place. */
function within(item: Item, box: Box, index: number, all: readonly Box[]): Item[] {
  const here = (items: readonly Item[]): Item[] =>
    carried(items, ({ x, y }) => ({ x: x - box.minX, y: y - box.minY }));
  switch (item.kind) {
    case "text": {
      const own = textBox(item);
      if (holds(box, own)) return here([item]);
      if (all.some((one) => holds(one, own))) return [];
      // No window holds all of it: it stands moved in the one that holds its middle best.
      const middle = { x: (own.minX + own.maxX) / 2, y: (own.minY + own.maxY) / 2 };
      const first = all.findIndex(
        (one) => middle.x >= one.minX && middle.x <= one.maxX && middle.y >= one.minY && middle.y <= one.maxY,
      );
      if (first !== index) return [];
      const dx = Math.max(0, box.minX - own.minX) - Math.max(0, own.maxX - box.maxX);
      const dy = Math.max(0, box.minY - own.minY) - Math.max(0, own.maxY - box.maxY);
      return here([{ ...item, at: { x: item.at.x + dx, y: item.at.y + dy } }]);
    }
    case "fill":
      return item.polygons.every((one) =>
        one.every((p) => holds(box, { minX: p.x, maxX: p.x, minY: p.y, maxY: p.y })),
      )
        ? here([item])
        : [];
    case "path": {
      const points = item.closed ? [...item.points, ...item.points.slice(0, 1)] : item.points;
      const pieces = clippedTo(points, box);
      return here(
        pieces.map((piece): Item => {
          const whole = item.closed && piece.length === points.length && pieces.length === 1;
          return whole ? item : { kind: "path", role: item.role, points: piece, closed: false };
        }),
      );
    }
  }
}

/** The pieces of a polyline within a box (Liang and Barsky 1984). */
export function clippedTo(points: readonly Point[], box: Box): Point[][] {
  const pieces: Point[][] = [];
  let piece: Point[] = [];
  const end = (): void => {
    if (piece.length > 1) pieces.push(piece);
    piece = [];
  };
  points.forEach((b, i) => {
    const a = points[i - 1];
    if (!a) return;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    let [t0, t1] = [0, 1];
    for (const [d, low, high] of [
      [dx, box.minX - a.x, box.maxX - a.x],
      [dy, box.minY - a.y, box.maxY - a.y],
    ] as const) {
      if (d === 0) {
        if (low > 0 || high < 0) t1 = -1;
      } else {
        t0 = Math.max(t0, Math.min(low / d, high / d));
        t1 = Math.min(t1, Math.max(low / d, high / d));
      }
    }
    if (t0 > t1) {
      end();
      return;
    }
    if (piece.length === 0 || t0 > 0) {
      end();
      piece.push(t0 === 0 ? a : { x: a.x + dx * t0, y: a.y + dy * t0 });
    }
    piece.push(t1 === 1 ? b : { x: a.x + dx * t1, y: a.y + dy * t1 });
    if (t1 < 1) end();
  });
  end();
  return pieces;
}
