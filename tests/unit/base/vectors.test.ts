import { describe, expect, it } from "vitest";
import {
  addForce,
  addWrench,
  clearWrench,
  cross,
  footOn,
  heightAbove,
  rotate,
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

  it("adds and clears wrenches", () => {
    const w = wrench();
    addForce(w, 0.3, -0.2, 5, 7);
    expect(w.m).toBeCloseTo(0.3 * 7 + 0.2 * 5, 15);
    const sum = wrench();
    addWrench(sum, w);
    expect(sum).toEqual(w);
    clearWrench(sum);
    expect(sum).toEqual(wrench());
  });

  it("turns the nose up for a positive pitch", () => {
    const nose = rotate(vec(1, 0), Math.sin(0.3), Math.cos(0.3));
    expect(nose.z).toBeGreaterThan(0);
    const back = rotate(nose, -Math.sin(0.3), Math.cos(0.3));
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
});
