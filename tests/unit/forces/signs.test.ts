import { describe, expect, test } from "vitest";
import { wrench, type Wrench } from "../../../src/model/base";
import {
  FORCES,
  VISCOUS,
  inertiaTerms,
  joined,
  plateAt,
  prepareSwimmer,
  skinFriction,
  towWrench,
  type ForceKey,
  type State,
} from "../../../src/model/forces";
import { at, ellipsoidBait, freshWater, hanger, minnow } from "../../lib/towed";

const DEG = Math.PI / 180;
const swimmer = prepareSwimmer(minnow(40));

function pull(key: ForceKey, state: Partial<State>, of = swimmer): Wrench {
  const out = wrench();
  const force = FORCES.find((f) => f.key === key);
  if (!force) throw new Error(`no force ${key}`);
  force.add(of, at(state), freshWater, out);
  return out;
}

describe("weight and lift of the water", () => {
  test("level: down and up; nose-up by 30°: weight pulls aft in body axes", () => {
    const mg = swimmer.rigid.mass * freshWater.gravity;
    expect(pull("weight", {})).toEqual({ x: 0, z: -mg, m: 0 });
    const tilted = pull("weight", { pitch: 30 * DEG });
    expect(Math.abs(tilted.x + mg / 2)).toBeLessThan(1e-12);
    expect(tilted.z).toBeLessThan(0);
    const lift = pull("buoyancy", {});
    expect(Math.abs(lift.z - freshWater.density * 9.80665 * swimmer.rigid.displaced)).toBeLessThan(1e-12);
  });

  test("B ahead of G lifts the nose", () => {
    expect(swimmer.rigid.B.x).toBeGreaterThan(swimmer.rigid.G.x);
    expect(pull("buoyancy", {}).m).toBeGreaterThan(0);
  });

  test("B above G rights it: nose-up by 90° it turns nose-down, belly-up it holds nothing upright", () => {
    const even = prepareSwimmer(
      ellipsoidBait(0.05, 0.008, 0.01, { hangers: [hanger("belly", -50, -10, 1e-3)] }),
    );
    expect(even.rigid.B.z).toBeGreaterThan(even.rigid.G.z);
    expect(pull("buoyancy", { pitch: 90 * DEG }, even).m).toBeLessThan(0);
    expect(pull("buoyancy", { pitch: -90 * DEG }, even).m).toBeGreaterThan(0);
  });
});

describe("drag", () => {
  test("across: against w, and against turning", () => {
    expect(pull("crossflow", { w: 0.3 }).z).toBeLessThan(0);
    expect(pull("crossflow", { w: -0.3 }).z).toBeGreaterThan(0);
    expect(pull("crossflow", { q: 5 }).m).toBeLessThan(0);
    expect(pull("crossflow", { q: -5 }).m).toBeGreaterThan(0);
  });

  test("along: against u, through the body's centroid above G, so that it lifts the nose", () => {
    const drag = pull("axial", { u: 1 });
    expect(drag.x).toBeLessThan(0);
    expect(swimmer.hull.centroid.z).toBeGreaterThan(0);
    expect(Math.abs(drag.m - -swimmer.hull.centroid.z * drag.x)).toBeLessThan(1e-15);
    expect(drag.m).toBeGreaterThan(0);
    expect(pull("axial", { u: -1 }).x).toBeGreaterThan(0);
  });

  test("along, by hand: an ellipsoid 100 × 16 × 20 mm at 0.5 m/s", () => {
    const of = prepareSwimmer(ellipsoidBait(0.05, 0.008, 0.01));
    const re = (0.5 * 0.1) / (1.002e-3 / 998.2); // 4.98e4: laminar
    const cf = 1.328 / Math.sqrt(re);
    const d = Math.sqrt(0.016 * 0.02);
    const cd = 0.44 * (d / 0.1) + 4 * cf * (0.1 / d) + 4 * cf * Math.sqrt(d / 0.1);
    const X = -0.5 * 998.2 * 0.25 * ((Math.PI / 4) * 0.016 * 0.02) * cd;
    expect(Math.abs(pull("axial", { u: 0.5 }, of).x / X - 1)).toBeLessThan(1e-12);
  });

  test("hooks under the belly: dragged aft they turn the nose down", () => {
    const drag = pull("hooks", { u: 1 });
    expect(drag.x).toBeLessThan(0);
    const belly = swimmer.hooks.find((h) => h.name === "belly");
    expect(belly?.at.z).toBeLessThan(0);
    // by hand: −½ρ C_dA u² each, moments −z X
    const X = swimmer.hooks.map((h) => -0.5 * 998.2 * h.dragArea);
    expect(Math.abs(drag.x - X.reduce((a, b) => a + b, 0))).toBeLessThan(1e-15);
    expect(
      Math.abs(drag.m - swimmer.hooks.reduce((sum, h, i) => sum - h.at.z * (X[i] ?? NaN), 0)),
    ).toBeLessThan(1e-15);
  });

  test("nothing moves, nothing drags", () => {
    expect(VISCOUS.length).toBeGreaterThan(0);
    for (const key of VISCOUS) {
      const { x, z, m } = pull(key, {});
      expect([Math.abs(x), Math.abs(z), Math.abs(m)]).toEqual([0, 0, 0]);
    }
  });
});

describe("Munk moment and the tail", () => {
  const slim = prepareSwimmer(ellipsoidBait(0.05, 0.008, 0.01));

  test("moving ahead and up turns the nose down, away from the stream: broadside is where it wants to be", () => {
    const m = inertiaTerms(slim, at({ u: 1, w: 0.1 }), freshWater).m;
    expect(m).toBeLessThan(0);
    const { a11, a33 } = slim.addedBody;
    expect(Math.abs(m / (-998.2 * (a33 - a11) * 0.1) - 1)).toBeLessThan(1e-9);
    expect(inertiaTerms(slim, at({ u: 1, w: -0.1 }), freshWater).m).toBeGreaterThan(0);
  });

  test("the tail gives back a fifth of it, ahead and astern", () => {
    for (const u of [1, -1]) {
      const munk = inertiaTerms(slim, at({ u, w: 0.1 }), freshWater).m;
      const tail = pull("tail", { u, w: 0.1 }, slim);
      expect(Math.abs(tail.m / munk + 0.2)).toBeLessThan(1e-9);
      expect(tail.z).toBeLessThan(0);
    }
  });

  test("the tail's power is never above 0", () => {
    for (const [u, w, q] of [
      [1, 0.1, 3],
      [-1, 0.1, 30],
      [0.2, -0.4, -20],
      [1, 0, -9],
    ] as const) {
      const f = pull("tail", { u, w, q });
      expect(f.x * u + f.z * w + f.m * q).toBeLessThanOrEqual(0);
    }
  });

  test("a body shorter than it is deep has no such tail", () => {
    const disc = prepareSwimmer(ellipsoidBait(0.01, 0.008, 0.05));
    expect(disc.hull.heave).toBeLessThan(disc.hull.surge);
    expect(pull("tail", { u: 1, w: 0.3 }, disc)).toEqual({ x: 0, z: 0, m: 0 });
  });
});

describe("bib", () => {
  const { blade } = swimmer;
  if (!blade) throw new Error("the minnow has a bib");

  test("axes: at 40° the tip lies ahead of and below the root, the front face looks ahead and up", () => {
    expect(blade.along.x).toBeGreaterThan(0);
    expect(blade.along.z).toBeLessThan(0);
    expect(Math.abs(blade.normal.x - Math.sin(40 * DEG))).toBeLessThan(1e-15);
    expect(Math.abs(blade.normal.z - Math.cos(40 * DEG))).toBeLessThan(1e-15);
    // n is t turned by +90°
    expect(Math.abs(-blade.along.z - blade.normal.x) + Math.abs(blade.along.x - blade.normal.z)).toBeLessThan(
      1e-15,
    );
  });

  test("moving ahead it pushes the nose down and back", () => {
    const f = pull("bib", { u: 1 });
    expect(f.x).toBeLessThan(0);
    expect(f.z).toBeLessThan(0);
    expect(f.m).toBeLessThan(0);
  });

  test("moving ahead, by hand", () => {
    const U = 0.9;
    const f = pull("bib", { u: U });
    const p = { cn: NaN, xcp: NaN };
    plateAt(blade.plate, Math.sin(40 * DEG), Math.cos(40 * DEG), p);
    const N = -0.5 * 998.2 * blade.area * joined(p.cn, blade.plate.broadside) * U * U;
    const vt = U * Math.cos(40 * DEG);
    const cf = skinFriction((vt * blade.chord) / (1.002e-3 / 998.2));
    const T = -2 * blade.area * cf * 0.5 * 998.2 * vt * vt;
    const x = N * blade.normal.x + T * blade.along.x;
    const z = N * blade.normal.z + T * blade.along.z;
    expect(Math.abs(f.x / x - 1)).toBeLessThan(1e-12);
    expect(Math.abs(f.z / z - 1)).toBeLessThan(1e-12);
    const cx = blade.tip.x - p.xcp * blade.chord * blade.along.x;
    const cz = blade.tip.z - p.xcp * blade.chord * blade.along.z;
    const moment =
      N * (cx * blade.normal.z - cz * blade.normal.x) +
      T * (blade.tip.x * blade.along.z - blade.tip.z * blade.along.x) +
      998.2 * blade.added * (U * blade.normal.x) * vt;
    expect(Math.abs(f.m / moment - 1)).toBeLessThan(1e-12);
  });

  test("its added mass gives no steady couple: the moment term undoes Kirchhoff's, q = 0", () => {
    const heavy = {
      ...swimmer,
      blade: { ...blade, added: 3 * blade.added },
      addedBib: { ...swimmer.addedBib },
    };
    for (const key of ["a11", "a13", "a15", "a33", "a35", "a55"] as const) heavy.addedBib[key] *= 3;
    for (const [u, w] of [
      [1, 0],
      [0.5, 0.4],
      [-0.3, 0.7],
    ] as const) {
      const state = at({ u, w });
      const sum = (of: typeof swimmer): number =>
        pull("bib", { u, w }, of).m + inertiaTerms(of, state, freshWater).m;
      // with three times the added mass the couples are three times as large, and their sum is the same
      expect(Math.abs(pull("bib", { u, w }, heavy).m - pull("bib", { u, w }).m)).toBeGreaterThan(1e-5);
      expect(Math.abs(sum(heavy) - sum(swimmer))).toBeLessThan(1e-14);
    }
    const bare = prepareSwimmer(minnow(null));
    expect(bare.blade).toBeNull();
    expect(bare.addedBib).toEqual({ a11: 0, a13: 0, a15: 0, a33: 0, a35: 0, a55: 0 });
  });

  test("pushed from behind (sinking level) it is pushed up", () => {
    expect(pull("bib", { w: -0.5 }).z).toBeGreaterThan(0);
  });

  test("the interference factor scales the normal force alone", () => {
    const more = prepareSwimmer(minnow(40), { bibFactor: 1.25 });
    const a = pull("bib", { u: 1 });
    const b = pull("bib", { u: 1 }, more);
    const nz = blade.normal;
    const along = (w: Wrench) => w.x * blade.along.x + w.z * blade.along.z;
    const across = (w: Wrench) => w.x * nz.x + w.z * nz.z;
    expect(Math.abs(along(a) - along(b))).toBeLessThan(1e-15);
    expect(Math.abs(across(b) / across(a) - 1.25)).toBeLessThan(1e-12);
  });
});

describe("tow", () => {
  test("all forces, less the steady couple of the body's added mass alone", () => {
    const state = at({ u: 0.9 * Math.cos(0.3), w: 0.9 * Math.sin(0.3), q: 2, pitch: -0.3 });
    const steady = towWrench(swimmer, state, freshWater);
    // by hand: the forces at q = 0, the bib's without its +a_n v_n v_t, and p of the body
    const forces = wrench();
    for (const force of FORCES) force.add(swimmer, { ...state, q: 0 }, freshWater, forces);
    const { blade, addedBody: a } = swimmer;
    if (!blade) throw new Error("the minnow has a bib");
    const { u, w } = state;
    const vn = u * blade.normal.x + w * blade.normal.z;
    const vt = u * blade.along.x + w * blade.along.z;
    const couple = 998.2 * (u * (a.a13 * u + a.a33 * w) - w * (a.a11 * u + a.a13 * w));
    expect(Math.abs(steady.m - (forces.m - 998.2 * blade.added * vn * vt - couple))).toBeLessThan(1e-15);
    expect(Math.abs(steady.x - forces.x)).toBeLessThan(1e-15);
    expect(Math.abs(steady.z - forces.z)).toBeLessThan(1e-15);
  });
});
