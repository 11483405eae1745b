import { expect, test } from "vitest";
import { random } from "../../../src/model/base";
import { areApart, overlap, roomOf } from "../../../src/model/parts";
import type { Solid } from "../../../src/model/parts";

test("rectangles that share nothing never hide an overlap, and part most pairs", () => {
  const r = random(11);
  const at = () => ({ x: -0.09 * r.uniform(), z: 0.02 * (r.uniform() - 0.5) });
  const solid = (): Solid => {
    const kind = r.uniform();
    if (kind < 0.35) return { is: "hole", at: at(), volume: 1e-7 * r.uniform() };
    if (kind < 0.65) {
      const [{ x, z }, wide, tall] = [at(), 0.01 * r.uniform(), 0.005 * r.uniform()];
      return { is: "box", minX: x - wide, maxX: x, minZ: z, maxZ: z + tall };
    }
    const pieces = Array.from({ length: Math.floor(3 * r.uniform()) }, () => ({ a: at(), b: at() }));
    return { is: "rods", path: pieces, inside: pieces, radius: 0.5e-3 };
  };
  let [apart, overlaps] = [0, 0];
  for (let k = 0; k < 20_000; k++) {
    const [a, b] = [solid(), solid()];
    const parted = areApart(roomOf(a), roomOf(b));
    const depth = overlap(a, b);
    if (parted) expect(depth).toBe(0);
    apart += parted ? 1 : 0;
    overlaps += depth > 0 ? 1 : 0;
  }
  expect(overlaps).toBeGreaterThan(1000);
  expect(apart).toBeGreaterThan(8000);
});
