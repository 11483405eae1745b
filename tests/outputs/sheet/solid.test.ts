import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import type { ManifoldToplevel } from "manifold-3d";
import { compile, parseScenario, USUAL_DRILLS } from "../../../src/document";
import { shapeOf } from "../../../src/model/shape";
import { fingerprintOf } from "../../../src/sheet/fingerprint";
import { solidFigures, solidFiles, solidKernel, solveHalf } from "../../../src/sheet";
import { cutsOf } from "../../../src/sheet/solid/cuts";
import { enclosed, halfBody, openEdges } from "../../../src/sheet/solid/mesh";
import type { Mesh } from "../../../src/sheet/solid/mesh";
import { stlOf, threeMfOf } from "../../../src/sheet/solid/write";

/** The solid is a second way to volume, B and G. It shares the drawing with the model, and none of its sums. */

const drills = USUAL_DRILLS.map((one) => one * 1e-3);
const scenarios = readdirSync("scenarios")
  .filter((name) => name.endsWith(".json"))
  .map((name) => {
    const parsed = parseScenario(readFileSync(join("scenarios", name), "utf8"));
    if (!parsed.ok) throw new Error(name);
    return { name, scenario: parsed.scenario, bait: parsed.compiled.bait };
  });

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await solidKernel();
});

/** What a binary STL holds, read by its own definition. */
function readStl(bytes: Uint8Array): Mesh & { readonly head: string } {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const count = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * count);
  const points = new Float64Array(9 * count);
  for (let i = 0; i < count; i++)
    for (let k = 0; k < 9; k++) points[9 * i + k] = view.getFloat32(84 + 50 * i + 12 + 4 * k, true);
  // Corners with the same coordinates are one point.
  const known = new Map<string, number>();
  const triangles = Uint32Array.from({ length: 3 * count }, (_, i) => {
    const key = points.subarray(3 * i, 3 * i + 3).join();
    const at = known.get(key) ?? i;
    known.set(key, at);
    return at;
  });
  return { points, triangles, head: strFromU8(bytes.subarray(0, 80)) };
}

describe("the half of a drawn body", () => {
  it("an ellipsoid has half of 4/3·π·abc, with its centroid 3/8 of b from the plane of symmetry (closed form)", () => {
    // Semi-axes 40 × 7 × 11 mm, as ends of edges that are elliptic arcs in φ: height = 11·sin φ through dense knots.
    const knots = (most: number) =>
      Array.from({ length: 81 }, (_, i) => {
        const phi = (Math.PI * i) / 80;
        return { s: 0.04 * (1 - Math.cos(phi)), v: most * Math.sin(phi) };
      }).map((one, i) => (i === 80 ? { s: 0.08, v: 0 } : one));
    const two = [{ s: 0, v: 2 }];
    const half = halfBody(
      shapeOf({
        length: 0.08,
        top: knots(0.011),
        bottom: knots(-0.011),
        halfBreadth: knots(0.007),
        exponentAbove: two,
        exponentBelow: two,
      }),
    );
    const { volume, x, y, z } = enclosed(half);
    const exact = (2 / 3) * Math.PI * 40 * 7 * 11;
    expect(Math.abs(volume / exact - 1)).toBeLessThan(1e-3);
    expect(x).toBeCloseTo(40, 3);
    expect(y).toBeCloseTo((3 / 8) * 7, 2);
    expect(z).toBeCloseTo(0, 6);
    expect(openEdges(half).open).toBe(0);
    // A triangle less, and its three edges are open.
    expect(openEdges({ ...half, triangles: half.triangles.subarray(3) }).open).toBe(3);
  });
});

describe.each(scenarios)("the solid of $name", ({ bait }) => {
  it("agrees with the model within 0.1 % of volume and 0.05 mm of B and G, and is closed", () => {
    const heard: string[] = [];
    const solved = solveHalf(kernel, bait, drills, (done, of, what) => heard.push(`${done}/${of} ${what}`));
    expect(heard).toHaveLength(solved.cuts.length + 2);
    const { volume, wood, B, G } = solidFigures(bait, solved);
    expect(Math.abs(volume.solid / volume.model - 1)).toBeLessThan(1e-3);
    for (const { solid, model } of [B, G]) {
      expect(Math.abs(solid.x - model.x)).toBeLessThan(5e-5);
      expect(Math.abs(solid.z - model.z)).toBeLessThan(5e-5);
    }
    // Where a hole runs out at the rounded belly the drill takes less wood than the hole's volume: never more than 1 %.
    expect(wood.solid / wood.model - 1).toBeGreaterThan(-1e-3);
    expect(wood.solid / wood.model - 1).toBeLessThan(1e-2);
    expect(solved.out).toEqual([]);
    expect(solved.open).toBe(0);
    expect(solved.edges).toBe((3 * solved.mesh.triangles.length) / 3 / 2);
  });
});

it("a weight that is too large for its place is named, and the halves are closed all the same", () => {
  const [first] = scenarios.filter(({ scenario }) => scenario.bait.ballast.length > 1);
  if (!first) throw new Error("no scenario");
  const [heavy, ...others] = first.scenario.bait.ballast;
  if (!heavy) throw new Error("no weight");
  const ballast = [{ ...heavy, mass_g: 60 }, ...others];
  const { bait } = compile({ ...first.scenario, bait: { ...first.scenario.bait, ballast } });
  const solved = solveHalf(kernel, bait, drills);
  expect(solved.out).toEqual([bait.spec.ballast[0]?.name]);
  expect(solved.open).toBe(0);
});

it("the slot of a bent bib is cut where the model has its tongue", () => {
  const straight = scenarios.find(({ bait }) => (bait.spec.bib?.slot ?? 0) > 0);
  if (!straight) throw new Error("no scenario with a slot");
  const { scenario } = straight;
  const parsed = parseScenario(
    JSON.stringify({
      ...scenario,
      bench: [],
      bait: { ...scenario.bait, bib: { ...scenario.bait.bib, slot_angle_deg: 0 } },
    }),
  );
  if (!parsed.ok) throw new Error("no scenario");
  const bent = parsed.compiled.bait;
  const slot = cutsOf(bent, drills).find((one) => one.is === "slot");
  if (slot?.is !== "slot") throw new Error("no slot");
  const { root, slot: deep } = bent.spec.bib!;
  expect(slot.along[0]).toBeCloseTo(-1, 12);
  expect(slot.along[1]).toBeCloseTo(0, 12);
  expect(slot.middle[0]).toBeCloseTo(1e3 * (-root.x + deep / 2), 9);
  expect(slot.middle[2]).toBeCloseTo(1e3 * root.z, 9);
  const { volume, B, G } = solidFigures(bent, solveHalf(kernel, bent, drills));
  expect(Math.abs(volume.solid / volume.model - 1)).toBeLessThan(1e-3);
  for (const { solid, model } of [B, G]) {
    expect(Math.abs(solid.x - model.x)).toBeLessThan(5e-5);
    expect(Math.abs(solid.z - model.z)).toBeLessThan(5e-5);
  }
});

describe("the files of the halves", () => {
  it("hold what was measured: closed, half of the wood each, on the plate, mirrored, with unit, scale and fingerprint", () => {
    const [first] = scenarios;
    if (!first) throw new Error("no scenario");
    const { scenario, bait } = first;
    const solved = solveHalf(kernel, bait, drills);
    const [right, left, both] = solidFiles(scenario, solved);
    if (!right || !left || !both) throw new Error("three files");
    const print = fingerprintOf(scenario);
    for (const file of [right, left]) {
      const mesh = readStl(file.bytes);
      expect(mesh.head).toContain(`1:1, mm, fingerprint ${print.short}`);
      expect(file.name).toContain(print.plain);
      // Half a microlitre is the rounding of the file's numbers.
      expect(Math.abs(2e-3 * enclosed(mesh).volume - solved.wood.volume)).toBeLessThan(1e-3);
      expect(openEdges(mesh).open).toBe(0);
      expect(Math.min(...[...mesh.points].filter((_, i) => i % 3 === 2).slice(0, 3000))).toBeGreaterThan(
        -1e-4,
      );
    }
    const [a, b] = [readStl(right.bytes), readStl(left.bytes)].map(enclosed);
    expect(b?.x).toBeCloseTo(a?.x ?? NaN, 3);
    expect(b?.y).toBeCloseTo(-(a?.y ?? NaN), 3);

    const parts = unzipSync(both.bytes);
    expect(Object.keys(parts).sort()).toEqual(["3D/3dmodel.model", "[Content_Types].xml", "_rels/.rels"]);
    const xml = strFromU8(parts["3D/3dmodel.model"] ?? new Uint8Array());
    expect(xml).toContain('unit="millimeter"');
    const [triangles, vertices] = ["<triangle ", "<vertex "].map((one) => xml.split(one).length - 1);
    expect(triangles).toBe((2 * solved.mesh.triangles.length) / 3);
    expect(vertices).toBe((2 * solved.mesh.points.length) / 3);
    const again = solidFiles(scenario, solved);
    // Millions of bytes: compared as bytes, not as a list of numbers.
    expect(again.map(({ bytes }, i) => Buffer.compare(bytes, [right, left, both][i]!.bytes))).toEqual([
      0, 0, 0,
    ]);

    const shifts = [...xml.matchAll(/<item objectid="\d" transform="([^"]*)"/g)].map((one) =>
      Number(one[1]?.split(" ")[10]),
    );
    expect(shifts).toHaveLength(2);
    expect(xml.split("<object ")).toHaveLength(3);
    // Every tag that is opened is closed, in its order.
    const open: string[] = [];
    for (const [, end, tag, alone] of xml.matchAll(/<(\/?)([a-z]+)[^<>?]*?(\/?)>/g))
      if (end === "/") {
        const last = open.pop();
        if (last !== tag) expect(last).toBe(tag);
      } else if (alone !== "/") open.push(tag ?? "");
    expect(open).toEqual([]);
    expect(shifts[0]).toBeGreaterThan(0);
    expect(shifts[1]).toBeLessThan(0);
  });

  it("carry any name of a bait as text", () => {
    const tiny: Mesh = {
      points: Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1]),
      triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2]),
    };
    const xml = strFromU8(
      unzipSync(threeMfOf(tiny, 'Mine <b> & "yours"\u0001'))["3D/3dmodel.model"] ?? new Uint8Array(),
    );
    expect(xml).toContain('<metadata name="Title">Mine &lt;b> &amp; &quot;yours&quot;</metadata>');
    expect(xml.split("<triangle ")).toHaveLength(9);
    expect(strFromU8(stlOf(tiny, "Barsch é 🐟").subarray(0, 80))).toMatch(/^Trimwright, Barsch e/);
  });
});
