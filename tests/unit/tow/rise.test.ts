import { describe, expect, it } from "vitest";
import { prepareSwimmer } from "../../../src/model/forces";
import { Swimmers } from "../../../src/model/tow/attitude";
import { changeSwimmer, releaseStep } from "../../../src/model/tow/rise";
import { rattler, water } from "../../lib/swum";

/** Velocity of a point of the bait in body axes, and its place in the world. */
function seenAt(
  p: { readonly x: number; readonly z: number },
  s: { u: number; w: number; q: number; pitch: number; X: number; Z: number },
  G: { readonly x: number; readonly z: number },
): number[] {
  const [sin, cos] = [Math.sin(s.pitch), Math.cos(s.pitch)];
  const [x, z] = [p.x - G.x, p.z - G.z];
  return [s.u - s.q * z, s.w + s.q * x, s.X + x * cos - z * sin, s.Z + x * sin + z * cos];
}

describe("when the balls roll to another side in a free rise", () => {
  it("every point of the bait stays where it is and keeps its velocity", () => {
    const bait = rattler(3e-3);
    const from = prepareSwimmer(bait, { side: { end: "tail", face: "floor" } });
    const to = prepareSwimmer(bait, { side: { end: "nose", face: "roof" } });
    const before = { u: 0.3, w: -0.2, q: 4, pitch: 0.7, X: 0.1, Z: -0.5 };
    const after = { ...before };
    changeSwimmer(after, from, to);
    expect(Math.abs(to.rigid.G.x - from.rigid.G.x)).toBeGreaterThan(1e-4);
    expect(Math.abs(to.rigid.G.z - from.rigid.G.z)).toBeGreaterThan(1e-5);
    for (const p of [
      { x: 0, z: 0 },
      { x: -0.06, z: 0.004 },
    ]) {
      const now = seenAt(p, after, to.rigid.G);
      seenAt(p, before, from.rigid.G).forEach((value, i) => {
        expect(now[i]).toBeCloseTo(value, 14);
      });
    }
    expect([after.q, after.pitch]).toEqual([before.q, before.pitch]);
  });

  it("the step in which they roll changes a point's motion by no more than the forces of that step", () => {
    const swimmers = new Swimmers(rattler(3e-3));
    const around = { ...water(), surface: false, depth: Infinity };
    const before = { u: 0.3, w: -0.2, q: -20, pitch: 1e-6, X: 0.1, Z: -0.5 };
    const swimmer = swimmers.at(before.pitch);
    const after = { ...before };
    const h = 1e-6; // s: the bait turns through level in it
    const next = releaseStep(swimmers, swimmer, around, after, h);
    expect(after.pitch).toBeLessThan(0);
    expect(next).not.toBe(swimmer);
    expect(next).toBe(swimmers.at(after.pitch));
    // In a step of 1e-6 s the place changes by 1e-6 m; the velocity by 1e-6 s of some 100 m/s². A velocity that stayed at G,
    // while G moves by some tenths of a millimetre at 20 rad/s, would be off by some mm/s.
    const shift = Math.abs(next.rigid.G.x - swimmer.rigid.G.x);
    expect(shift * 20).toBeGreaterThan(2e-3);
    const p = { x: -0.06, z: 0.004 };
    const was = seenAt(p, before, swimmer.rigid.G);
    seenAt(p, after, next.rigid.G).forEach((value, i) => {
      expect(Math.abs(value - (was[i] ?? NaN))).toBeLessThan(i < 2 ? 5e-4 : 3e-6);
    });
  });
});
