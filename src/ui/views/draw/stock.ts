import { toSI } from "../../../units";
import type { Scenario } from "../../../document";
import type { boardBoxes, Elevation, Mark } from "../../../drawing";
import { bodyRoom } from "../../../model/checks";
import type { StockSpec } from "../../../model/checks";
import type { Shape } from "../../../model/shape";

/** The maker's board in SI; null: none is given. */
export function stockOf({ stock }: Scenario): StockSpec | null {
  if (stock === undefined) return null;
  return {
    pieces: stock.pieces,
    length: toSI(stock.length_mm, "mm"),
    width: toSI(stock.width_mm, "mm"),
    thickness: toSI(stock.thickness_mm, "mm"),
  };
}

type Boxes = ReturnType<typeof boardBoxes>;
type Box = Boxes["side"];

/** Where the board lies in each view, m: the body in its middle. */
function stockBoxes(body: Shape, stock: StockSpec): Boxes {
  const { low, high } = bodyRoom(body);
  const half = (stock.pieces === "halves" ? 1 : 0.5) * stock.thickness;
  const along = {
    minX: 0 - body.length / 2 - stock.length / 2,
    maxX: 0 - body.length / 2 + stock.length / 2,
  };
  const up = { minZ: (low + high) / 2 - stock.width / 2, maxZ: (low + high) / 2 + stock.width / 2 };
  return {
    side: { ...along, ...up },
    above: { ...along, minZ: 0 - half, maxZ: half },
    section: { minX: 0 - half, maxX: half, ...up },
  };
}

const both = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  maxX: Math.max(a.maxX, b.maxX),
  minZ: Math.min(a.minZ, b.minZ),
  maxZ: Math.max(a.maxZ, b.maxZ),
});

/** What each view has to hold with the board in it. */
export function aroundStock(boxes: Boxes, body: Shape, stock: StockSpec | null): Boxes {
  if (stock === null) return boxes;
  const { side, above, section } = stockBoxes(body, stock);
  return {
    side: both(boxes.side, side),
    above: both(boxes.above, above),
    section: both(boxes.section, section),
  };
}

/** The board as it lies round the body; of two halves the joint too. */
export function stockMarks(elevation: Elevation, body: Shape, stock: StockSpec): Mark[] {
  const { minX, maxX, minZ, maxZ } = stockBoxes(body, stock)[elevation];
  const line = { role: "accent", px: 1.3 } as const;
  const marks: Mark[] = [
    {
      kind: "polygon",
      what: null,
      points: [
        { x: minX, z: maxZ },
        { x: maxX, z: maxZ },
        { x: maxX, z: minZ },
        { x: minX, z: minZ },
      ],
      stroke: { ...line, dash: [10, 4] },
    },
  ];
  if (stock.pieces === "one" || elevation === "side") return marks;
  const points =
    elevation === "above"
      ? [
          { x: minX, z: 0 },
          { x: maxX, z: 0 },
        ]
      : [
          { x: 0, z: minZ },
          { x: 0, z: maxZ },
        ];
  return [...marks, { kind: "path", what: null, points, stroke: line }];
}
