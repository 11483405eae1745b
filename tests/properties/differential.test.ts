import fc from "fast-check";
import { expect, test } from "vitest";
import { assemble } from "../../src/model/bait";
import { staticsOf } from "../../src/model/statics";
import { baitSpecs } from "../lib/random-baits";
import { secondWay } from "./second-way";

/** How many random baits: `TRIMWRIGHT_BAITS=5000 npm test -- properties` draws thousands. `TRIMWRIGHT_SEED`: other ones. */
const COUNT = Number(process.env["TRIMWRIGHT_BAITS"] ?? 200);
const SEED = Number(process.env["TRIMWRIGHT_SEED"] ?? 1);
const WATER = 998.6;

test(`the statics of ${COUNT} random baits are those of a plain second way`, () => {
  fc.assert(
    fc.property(baitSpecs, (spec) => {
      const s = staticsOf(assemble(spec), WATER);
      const own = secondWay(spec, s.rest.side);
      const L = spec.shape.length;
      // midpoint sums over 300 stations and 48 slices: up to 3e-4 of volume and mass, of one sign in both
      const near = (a: number, b: number, tolerance: number, what: string): void => {
        if (!(Math.abs(a - b) <= tolerance)) throw new Error(`${what}: ${a}, the second way says ${b}`);
      };
      near(s.mass, own.mass, 6e-4 * own.mass, "mass");
      near(s.displaced, own.displaced, 6e-4 * own.displaced, "displaced");
      near(s.netBuoyancy, WATER * own.displaced - own.mass, 4e-4 * WATER * own.displaced, "net buoyancy");
      near(s.skinArea, own.skinArea, 2e-3 * own.skinArea, "skin");
      near(s.G.x, own.G.x, 1e-4 * L, "G forward");
      near(s.G.z, own.G.z, 1e-4 * L, "G up");
      near(s.B.x, own.B.x, 1e-4 * L, "B forward");
      near(s.B.z, own.B.z, 1e-4 * L, "B up");
      const afloat = s.floating;
      expect(afloat === null).toBe(s.netBuoyancy <= 0);
      if (!afloat) return;
      const held = secondWay(spec, afloat.side);
      const { sin, cos, level } = afloat.surface;
      const there = held.under(sin, cos, level);
      // of everything displaced; patches and bars that the surface cuts are taken as even
      near(there.volume, held.mass / WATER, 1.5e-3 * held.displaced, "volume under water afloat");
      near(there.lever, 0, 1e-3 * L, "righting lever afloat");
      near(afloat.draft, level - held.lowest(sin, cos), 1e-6, "draft");
      // the waterline by stations, where the surface runs along the body
      if (Math.abs(cos) > 0.7)
        near(
          afloat.waterplaneIT,
          held.waterlineIT(sin, cos, level),
          2e-3 * afloat.waterplaneIT + 1e-14,
          "second moment of the waterplane",
        );
      near(
        afloat.GM,
        (afloat.B.x - held.G.x) * sin + (afloat.B.z - held.G.z) * cos + afloat.waterplaneIT / afloat.volume,
        3e-4 * L,
        "GM",
      );
    }),
    { seed: SEED, numRuns: COUNT, endOnFailure: true },
  );
});
