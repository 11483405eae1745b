import type { Box, Item, LineRole, Point } from "../paper/page";

/** Layers of the file: a cutter follows CUT alone. */
const LAYERS = { CUT: 1, MARK: 5, TEXT: 8 } as const;
const layerOf = (role: LineRole): keyof typeof LAYERS => (role === "cut" ? "CUT" : "MARK");

/**
 * A drawing as DXF of release 12, which every cutter's program reads: closed and open polylines and texts, in millimetres,
 * y up. (Group codes: the publisher's DXF reference of that release.)
 */
export function dxfFile(items: readonly Item[], box: Box, title: string): string {
  const lines: string[] = [];
  const put = (code: number, value: string | number): void => {
    lines.push(String(code).padStart(3), typeof value === "number" ? number(value) : value);
  };
  const number = (value: number): string =>
    Number.isInteger(value) ? String(value) : Number(value.toFixed(4)).toString();
  // y up, and the lower left corner at 0, 0.
  const x = (p: Point): number => p.x - box.minX;
  const y = (p: Point): number => box.maxY - p.y;
  const point = (codes: readonly [number, number], p: Point): void => {
    put(codes[0], x(p));
    put(codes[1], y(p));
  };
  /** Release 12 knows ASCII alone. */
  const plain = (words: string): string =>
    words.replaceAll(
      /[^\x20-\x7e]/g,
      (sign) => `\\U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`,
    );

  put(999, plain(title));
  put(0, "SECTION");
  put(2, "HEADER");
  put(9, "$ACADVER");
  put(1, "AC1009");
  // 4: millimetres; 1: metric.
  put(9, "$INSUNITS");
  put(70, 4);
  put(9, "$MEASUREMENT");
  put(70, 1);
  put(9, "$EXTMIN");
  put(10, 0);
  put(20, 0);
  put(9, "$EXTMAX");
  put(10, box.maxX - box.minX);
  put(20, box.maxY - box.minY);
  put(0, "ENDSEC");
  put(0, "SECTION");
  put(2, "TABLES");
  put(0, "TABLE");
  put(2, "LTYPE");
  put(70, 1);
  put(0, "LTYPE");
  put(2, "CONTINUOUS");
  put(70, 0);
  put(3, "Solid line");
  put(72, 65);
  put(73, 0);
  put(40, 0);
  put(0, "ENDTAB");
  put(0, "TABLE");
  put(2, "LAYER");
  put(70, Object.keys(LAYERS).length);
  for (const [name, colour] of Object.entries(LAYERS)) {
    put(0, "LAYER");
    put(2, name);
    put(70, 0);
    put(62, colour);
    put(6, "CONTINUOUS");
  }
  put(0, "ENDTAB");
  put(0, "ENDSEC");
  put(0, "SECTION");
  put(2, "ENTITIES");
  const polyline = (layer: string, points: readonly Point[], closed: boolean): void => {
    put(0, "POLYLINE");
    put(8, layer);
    put(66, 1);
    put(10, 0);
    put(20, 0);
    put(30, 0);
    put(70, closed ? 1 : 0);
    for (const p of points) {
      put(0, "VERTEX");
      put(8, layer);
      point([10, 20], p);
      put(30, 0);
    }
    put(0, "SEQEND");
    put(8, layer);
  };
  for (const item of items)
    switch (item.kind) {
      case "path":
        polyline(layerOf(item.role), item.points, item.closed);
        break;
      case "fill":
        for (const one of item.polygons) polyline("MARK", one, true);
        break;
      case "text":
        put(0, "TEXT");
        put(8, "TEXT");
        point([10, 20], item.at);
        put(30, 0);
        // Height of capitals.
        put(40, 0.66 * item.size);
        put(1, plain(item.words));
        if (item.upright) put(50, 90);
    }
  put(0, "ENDSEC");
  put(0, "EOF");
  return `${lines.join("\r\n")}\r\n`;
}
