import type { Point, Size } from "../../drawing";

/**
 * A page before any file format: lines, texts and fills in millimetres, x to the right and y down from the page's upper
 * left corner. PDF, SVG, DXF and the preview are all written from this.
 */
export type { Point, Size };

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** What a line is for. A cutter follows `cut` alone. */
export type LineRole = "cut" | "mark" | "hidden" | "axis" | "ruler" | "rule";

/** Width and dashes of each role, mm, and its grey: 0 black, 1 white. */
export const LINES: Readonly<
  Record<LineRole, { readonly width: number; readonly dash: readonly number[]; readonly grey: number }>
> = {
  cut: { width: 0.15, dash: [], grey: 0 },
  mark: { width: 0.15, dash: [], grey: 0.35 },
  hidden: { width: 0.15, dash: [1.2, 0.8], grey: 0.2 },
  axis: { width: 0.1, dash: [5, 1, 1, 1], grey: 0.45 },
  ruler: { width: 0.12, dash: [], grey: 0 },
  rule: { width: 0.1, dash: [], grey: 0.55 },
};

export interface PathItem {
  readonly kind: "path";
  readonly role: LineRole;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** A filled area without an edge: the modules of a QR code, the body of an arrow. */
export interface FillItem {
  readonly kind: "fill";
  /** 0 black, 1 white. */
  readonly grey: number;
  readonly polygons: readonly (readonly Point[])[];
}

export type Weight = "regular" | "bold";

export interface TextItem {
  readonly kind: "text";
  /** Left end of the base line. */
  readonly at: Point;
  /** Height of the type, mm. */
  readonly size: number;
  readonly weight: Weight;
  readonly words: string;
  /** Width of the words as the font has it, mm. */
  readonly width: number;
  /** Turned to be read from below. */
  readonly upright: boolean;
  readonly grey: number;
}

export type Item = PathItem | FillItem | TextItem;

export interface Page {
  readonly size: Size;
  /** Which page it is, in words. */
  readonly label: string;
  readonly items: readonly Item[];
}

/** A drawing at 1 : 1 with an origin of its own, still without a page. */
export interface Drawing {
  readonly label: string;
  readonly items: readonly Item[];
  readonly box: Box;
}

/** How far type reaches above and below its base line, as a share of its size. */
export const RISE = 0.75;
export const FALL = 0.22;

/** The place that a text takes. */
export const textBox = ({ at, size, width, upright }: TextItem): Box =>
  upright
    ? { minX: at.x - RISE * size, maxX: at.x + FALL * size, minY: at.y - width, maxY: at.y }
    : { minX: at.x, maxX: at.x + width, minY: at.y - RISE * size, maxY: at.y + FALL * size };

export const pointsOf = (item: Item): readonly Point[] => {
  switch (item.kind) {
    case "path":
      return item.points;
    case "fill":
      return item.polygons.flat();
    case "text": {
      const { minX, minY, maxX, maxY } = textBox(item);
      return [
        { x: minX, y: minY },
        { x: maxX, y: maxY },
      ];
    }
  }
};

/** The box round items; lines count by their middle. */
export function boxOf(items: readonly Item[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const item of items)
    for (const { x, y } of pointsOf(item)) {
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
  if (!(minX <= maxX)) throw new RangeError("boxOf: there is nothing to enclose");
  return { minX, minY, maxX, maxY };
}

export const sizeOf = ({ minX, minY, maxX, maxY }: Box): Size => ({
  width: maxX - minX,
  height: maxY - minY,
});

/** Each item with its points carried elsewhere; type keeps its size. */
export function carried(items: readonly Item[], to: (p: Point) => Point, upright = false): Item[] {
  return items.map((item): Item => {
    switch (item.kind) {
      case "path":
        return { ...item, points: item.points.map(to) };
      case "fill":
        return { ...item, polygons: item.polygons.map((one) => one.map(to)) };
      case "text":
        return { ...item, at: to(item.at), upright: item.upright !== upright };
    }
  });
}
