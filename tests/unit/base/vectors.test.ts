import { describe, expect, it } from "vitest";
import {
  addForce,
  addWrench,
  clearWrench,
  cross,
  footOn,
  heightAbove,
  momentAbout,
  pieceUnder,
  sphereUnder,
  turn,
  turnBack,
  vec,
  wrench,
} from "../../../src/model/base";

const surface = (pitch: number, level: number) => ({ sin: Math.sin(pitch), cos: Math.cos(pitch), level });

describe("signs", () => {
  it("counts a moment nose-up: a lift ahead of the reference raises the nose", () => {
    const w = wrench();
    addForce(w, 0.1, 0, 0, 2);
    expect(w.m).toBeCloseTo(0.2, 15);
    // a forward push above the reference lowers it
    addForce(w, 0, 0.1, 3, 0);
    expect(w.m).toBeCloseTo(-0.1, 15);
    expect(cross(vec(0.1, 0), vec(0, 2))).toBeCloseTo(0.2, 15);
  });

  it("moves a moment to another point", () => {
    const w = wrench();
    addForce(w, 0.3, -0.2, 5, 7);
    expect(momentAbout(w, 0.3, -0.2)).toBeCloseTo(0, 15);
    const sum = wrench();
    addWrench(sum, w);
    expect(sum).toEqual(w);
    clearWrench(sum);
    expect(sum).toEqual(wrench());
  });

  it("turns the nose up for a positive pitch", () => {
    const nose = turn(vec(1, 0), Math.sin(0.3), Math.cos(0.3));
    expect(nose.z).toBeGreaterThan(0);
    const back = turnBack(nose, Math.sin(0.3), Math.cos(0.3));
    expect(back.x).toBeCloseTo(1, 15);
    expect(back.z).toBeCloseTo(0, 15);
  });
});

describe("surface", () => {
  it("measures heights, and finds the nearest point of it", () => {
    const s = surface(0.4, 0.02);
    const p = vec(-0.03, 0.05);
    const foot = footOn(s, p);
    expect(heightAbove(s, foot)).toBeCloseTo(0, 16);
    expect(Math.hypot(p.x - foot.x, p.z - foot.z)).toBeCloseTo(Math.abs(heightAbove(s, p)), 15);
  });

  it("cuts a straight piece at the water", () => {
    const level = surface(0, 0);
    expect(pieceUnder(level, vec(0, -1), vec(0, 3))).toEqual({ share: 0.25, middle: { x: 0, z: -0.5 } });
    expect(pieceUnder(level, vec(2, 3), vec(2, -1))).toEqual({ share: 0.25, middle: { x: 2, z: -0.5 } });
    expect(pieceUnder(level, vec(0, -1), vec(2, -1))).toEqual({ share: 1, middle: { x: 1, z: -1 } });
    expect(pieceUnder(level, vec(0, 1), vec(2, 1))).toEqual({ share: 0, middle: { x: 1, z: 0 } });
  });

  it("cuts a sphere: half a sphere's centroid lies 3R/8 deep", () => {
    expect(sphereUnder(0, 2)).toEqual({ share: 0.5, below: 0.75 });
    expect(sphereUnder(2, 2).share).toBe(0);
    expect(sphereUnder(-2, 2)).toEqual({ share: 1, below: 0 });
    // closed form: cap of height 5 of a sphere R = 10: volume 654.498469, centroid 6.75 from the centre
    const cap = sphereUnder(5, 10);
    expect((cap.share * 4 * Math.PI * 1000) / 3).toBeCloseTo(654.498469, 6);
    expect(cap.below).toBeCloseTo(6.75, 12);
  });
});
