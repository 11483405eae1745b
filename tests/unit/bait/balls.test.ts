import { describe, expect, it } from "vitest";
import { assemble, ballPlaces, ballRoom, lowSide } from "../../../src/model/bait";
import type { BallSide, ChamberSpec } from "../../../src/model/bait";
import { sideAt } from "../../../src/model/statics";
import { Swimmers } from "../../../src/model/tow/attitude";
import { MINNOW, STEEL } from "../../lib/baits";
import { mm } from "../../lib/si";

/** 18 × 8 × 6 mm from station 40, middle at height −3: one ball of 4 mm across, four ranks, two layers. */
const chamber = (count: number, diameter = 4): ChamberSpec => ({
  name: "rattle",
  from: 40 * mm,
  to: 58 * mm,
  height: -3 * mm,
  tall: 8 * mm,
  wide: 6 * mm,
  balls: { count, diameter: diameter * mm, stuff: STEEL },
});
const places = (c: ChamberSpec, end: BallSide["end"], face: BallSide["face"] = "floor"): number[][] =>
  ballPlaces(c, { end, face }).map((p) => [Math.round(-p.x * 1e6) / 1e3, Math.round(p.z * 1e6) / 1e3]);

describe("loose balls (docs/model.md §3)", () => {
  it("lie on one side at a pitch, exactly level too: at rest, under tow and at the start of a swim", () => {
    const bait = assemble({ ...MINNOW, chambers: [chamber(3)] });
    const swimmers = new Swimmers(bait);
    for (const pitch of [0, -0, 0.1, -0.1, Math.PI / 2, -Math.PI / 2, 2.5, -2.5]) {
      const side = lowSide(Math.sin(pitch), Math.cos(pitch));
      expect(sideAt(pitch)).toEqual(side);
      expect(swimmers.at(pitch).options.side).toEqual(side);
    }
    expect(lowSide(0, 1)).toEqual({ end: "tail", face: "floor" });
    expect(lowSide(-0.1, -0.9)).toEqual({ end: "nose", face: "roof" });
  });

  it("pack from the lower end, rank j at (j + ½)d", () => {
    expect(places(chamber(3), "nose")).toEqual([
      [42, -5],
      [46, -5],
      [50, -5],
    ]);
    expect(places(chamber(3), "tail")).toEqual([
      [56, -5],
      [52, -5],
      [48, -5],
    ]);
  });
  it("lie on the roof when belly-up", () => {
    expect(places(chamber(2), "tail", "roof")).toEqual([
      [56, -1],
      [52, -1],
    ]);
  });
  it("start a second layer one diameter higher when ⌊length/d⌋ ranks are full", () => {
    expect(ballRoom(chamber(5), { count: 5, diameter: 4 * mm, stuff: STEEL })).toEqual({
      perRank: 1,
      ranks: 4,
      layers: 2,
      capacity: 8,
    });
    expect(places(chamber(5), "nose")).toEqual([
      [42, -5],
      [46, -5],
      [50, -5],
      [54, -5],
      [42, -1],
    ]);
  });
  it("stand ⌊wide/d⌋ abreast", () => {
    expect(places(chamber(5, 2), "nose")).toEqual([
      [41, -6],
      [41, -6],
      [41, -6],
      [43, -6],
      [43, -6],
    ]);
  });
  it("are at mid-length, in their layers, on the side 'mid'", () => {
    expect(places(chamber(5), "mid")).toEqual([
      [49, -5],
      [49, -5],
      [49, -5],
      [49, -5],
      [49, -1],
    ]);
  });
  it("refuse more than fit, with the number that does", () => {
    const [c] = MINNOW.chambers;
    if (!c) throw new Error("fixture without chamber");
    const spec = (count: number) => ({
      ...MINNOW,
      chambers: [{ ...c, balls: { count, diameter: 4 * mm, stuff: STEEL } }],
    });
    expect(() => assemble(spec(8))).not.toThrow();
    expect(() => assemble(spec(9))).toThrow(/balls\.count.*takes 8.*fewer or smaller/);
  });
  it("move G and nothing else", () => {
    const bait = assemble(MINNOW);
    const nose = bait.rigid({ end: "nose", face: "floor" });
    const tail = bait.rigid({ end: "tail", face: "floor" });
    // Four balls in one layer: means 10 mm behind the nose end of 40, 10 mm before the tail end of 58.
    const balls = 4 * (Math.PI / 6) * (4 * mm) ** 3 * STEEL.density;
    expect(nose.G.x - tail.G.x).toBeCloseTo((balls * ((58 - 8) * mm - (40 + 8) * mm)) / nose.mass, 12);
    expect(nose.displaced).toBe(tail.displaced);
    expect(nose.B).toEqual(tail.B);
    expect(nose.mass).toBeCloseTo(tail.mass, 15);
  });
});
