import { describe, expect, it } from "vitest";
import { BaitError } from "../../../src/model/bait";
import type { BaitSpec, ChamberSpec } from "../../../src/model/bait";
import { at, ELLIPSOID, g, LEAD, make, ml, mm, stuff, TIN } from "./fixtures";

const refusal = (more: Partial<BaitSpec>): BaitError => {
  try {
    make(ELLIPSOID, more);
  } catch (error) {
    if (error instanceof BaitError) return error;
    throw error;
  }
  throw new Error("was not refused");
};
const chamber = (more: Partial<ChamberSpec>): Partial<BaitSpec> => ({
  chambers: [
    {
      name: "c",
      from: 40 * mm,
      to: 60 * mm,
      height: 0,
      tall: 8 * mm,
      wide: 6 * mm,
      balls: null,
      ...more,
    },
  ],
});
const ballast = (more: Partial<BaitSpec["ballast"][number]>): Partial<BaitSpec> => ({
  ballast: [
    { name: "b", at: at(50, -5), mass: 2 * g, stuff: TIN, where: "inside", hole: null, filler: 0, ...more },
  ],
});

describe("impossible layouts are refused with path and remedy", () => {
  it.each([
    ["chamber that ends before it starts", chamber({ to: 40 * mm }), "bait.chambers[0].to_mm"],
    ["chamber beyond the tail", chamber({ to: 101 * mm }), "bait.chambers[0]"],
    ["chamber through the roof", chamber({ height: 9 * mm }), "bait.chambers[0]"],
    ["chamber through the floor", chamber({ height: -9 * mm }), "bait.chambers[0]"],
    // The ellipse is 12·√(1 − (45/50)²) = 5.2 mm high at station 5: below the chamber's 6.
    [
      "chamber that leaves the outline at one end",
      chamber({ from: 5 * mm, tall: 12 * mm }),
      "bait.chambers[0]",
    ],
    ["chamber broader than the body", chamber({ wide: 21 * mm }), "bait.chambers[0]"],
    ["hole below nothing", ballast({ hole: -1 * ml }), "bait.ballast[0].hole_ml"],
    ["mass that is not a number", ballast({ mass: NaN }), "bait.ballast[0].mass_g"],
    ["no density", ballast({ stuff: stuff("air", 0) }), "bait.ballast[0]"],
    ["more removed than there is", ballast({ hole: 30 * ml }), "bait"],
    [
      "wire without length",
      { wires: [{ name: "w", path: [at(1, 1), at(1, 1)], diameter: mm, stuff: LEAD }] },
      "bait.wires[0].path_mm",
    ],
    [
      "coat with neither thickness nor mass",
      { coats: [{ name: "c", thickness: null, mass: null, stuff: LEAD }] },
      "bait.coats[0]",
    ],
    [
      "slot off the body",
      {
        bib: {
          root: at(0, 0),
          angle: Math.PI,
          length: 10 * mm,
          width: 10 * mm,
          slot: 10 * mm,
          thickness: mm,
          outline: "square",
          stuff: LEAD,
        },
      },
      "bait.bib.slot_mm",
    ],
  ] as const)("%s", (_, more, path) => {
    const error = refusal(more);
    expect(error.path).toBe(path);
    expect(error.remedy.length).toBeGreaterThan(10);
    expect(error.message).toContain(path);
  });

  it("a chamber may touch the outline, and its corners are only warned about", () => {
    // Half height of the ellipsoid in the middle is 12, half breadth 10: a box 23.9 tall or 19.9 wide fits, its corners do not.
    const bait = make(ELLIPSOID, chamber({ from: 49.9 * mm, to: 50.1 * mm, tall: 23.9 * mm, wide: 10 * mm }));
    expect(bait.warnings.map((w) => w.text).join()).toMatch(/corners of the chamber break through/);
    expect(make(ELLIPSOID, chamber({})).warnings).toEqual([]);
  });
});

describe("overlaps inside are warned about, not resolved", () => {
  const texts = (more: Partial<BaitSpec>): string[] => make(ELLIPSOID, more).warnings.map((w) => w.text);
  const wire = (path: ReturnType<typeof at>[]): Partial<BaitSpec> => ({
    wires: [{ name: "w", path, diameter: 1 * mm, stuff: LEAD }],
  });
  it("wire through a chamber", () => {
    expect(texts({ ...chamber({}), ...wire([at(-3, 0), at(103, 0)]) })).toHaveLength(1);
    expect(texts({ ...chamber({}), ...wire([at(-3, 0), at(30, 8), at(70, 8), at(103, 0)]) })).toEqual([]);
  });
  it("ballast in a chamber, and both keep their full removal", () => {
    const bait = make(ELLIPSOID, { ...chamber({}), ...ballast({ at: at(50, -4) }) });
    expect(bait.warnings).toHaveLength(1);
    const removed = bait.items.reduce((s, i) => s + i.removed, 0);
    expect(removed).toBeCloseTo(20 * 8 * 6 * mm ** 3 + (2 * g) / 7310, 14);
    expect(texts({ ...chamber({}), ...ballast({ at: at(50, -8.1) }) })).toEqual([]);
  });
  it("two chambers, and a wire through ballast", () => {
    const [c] = chamber({}).chambers ?? [];
    if (!c) throw new Error("no chamber");
    expect(texts({ chambers: [c, { ...c, name: "d", from: 55 * mm, to: 70 * mm }] })).toHaveLength(1);
    expect(texts({ chambers: [c, { ...c, name: "d", from: 60 * mm, to: 70 * mm }] })).toEqual([]);
    expect(texts({ ...ballast({ at: at(50, 0) }), ...wire([at(-3, 0), at(103, 0)]) })).toHaveLength(1);
  });
  it("what counts as inside but lies off the body", () => {
    expect(texts(ballast({ at: at(50, -14) }))).toHaveLength(1);
  });
});
