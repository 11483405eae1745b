import { describe, expect, it } from "vitest";
import { BaitError } from "../../../src/model/bait";
import type { BaitSpec, ChamberSpec } from "../../../src/model/bait";
import { makeShape } from "../../../src/model/shape";
import { at, g, ml, mm, stuff } from "../../lib/si";
import { ELLIPSOID, LEAD, make, TIN } from "../../lib/baits";
import { prismEdges } from "../../lib/bodies";

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

  it("a chamber that touches roof or floor fits; a tenth of a millimetre more is refused, with both heights", () => {
    // Edges 12 mm above and below the datum line all along, and square sections: nothing but roof and floor decides.
    const body = makeShape(prismEdges(100 * mm, 10 * mm, 12 * mm, 10));
    const build = (roof: number, floor: number) => () =>
      make(body, chamber({ height: ((roof + floor) / 2) * mm, tall: (roof - floor) * mm }));
    expect(build(12, 4)).not.toThrow();
    expect(build(-4, -12)).not.toThrow();
    expect(build(12.1, 4)).toThrow(/its roof is at 12\.1 mm, the top edge at 12 mm/);
    expect(build(13, 4)).toThrow(/its roof is at 13 mm/);
    expect(build(-4, -12.1)).toThrow(/its floor is at -12\.1 mm, the bottom edge at -12 mm/);
    expect(build(-4, -13)).toThrow(/its floor is at -13 mm/);
  });

  it("a weight that counts as inside and lies wholly outside is refused; half out it is remarked on", () => {
    // 2 g of tin: a ball 8.06 mm across. The body is 24 mm high in its middle.
    const build = (station: number, height: number) => () =>
      make(ELLIPSOID, ballast({ at: at(station, height), hole: null }));
    expect(build(50, -11)().warnings).toEqual([]);
    expect(build(50, -13)().warnings.map((w) => w.path)).toEqual(["bait.ballast[0].at_mm"]);
    expect(build(50, -17)).toThrow(/counts as inside, but it lies outside the body, 5 mm from its outline/);
    expect(build(-2, 0)().warnings).toHaveLength(1);
    expect(build(-30, 0)).toThrow(/30 mm from its outline/);
    expect(build(140, 0)).toThrow(/choose "outside" for it/);
    // Outside is where it says: a weight below the belly hangs there.
    expect(() => make(ELLIPSOID, ballast({ at: at(50, -17), where: "outside" }))).not.toThrow();
  });

  it("a weight that stands above the end of its drilled hole is remarked on, with the depth that it needs", () => {
    // 8 mm wide and 8 mm deep from the bottom edge at −12 mm: it ends at −4 mm. 2 g of tin fill 5.44 mm of it.
    const volume = Math.PI * 16 * 8 * mm ** 3;
    const half = (2 * g) / 7310 / (2 * Math.PI * (4 * mm) ** 2) / mm;
    const said = (height: number): string[] =>
      make(ELLIPSOID, ballast({ at: at(50, height), hole: volume, drill: 8 * mm })).warnings.map(
        (w) => w.text,
      );
    expect(said(-4 - half)).toEqual([]);
    expect(said(-4 - half + 0.09)).toEqual([]);
    expect(said(-4 - half + 0.2)).toHaveLength(1);
    expect(said(0)).toEqual([
      "Its hole is 8 mm deep from the bottom edge: so high up, the weight needs 14.72 mm at the least. Drill it deeper, or lower the weight by 6.72 mm.",
    ]);
    // Without a drill the hole's shape is not known.
    expect(make(ELLIPSOID, ballast({ at: at(50, 0), hole: volume })).warnings).toEqual([]);
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
