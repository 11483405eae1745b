import { describe, expect, it } from "vitest";
import { cutterFile } from "../../../src/sheet";
import { sizeOf } from "../../../src/sheet/paper/page";
import { holesOf } from "../../../src/sheet/templates/holes";
import { development } from "../../../src/sheet/templates/wire";
import { templateOf } from "../../../src/sheet/sheets";
import { halfBreadthAt } from "../../../src/model/shape";
import { adoptPlan, parseBox } from "../../../src/document";
import { planFor, usualZone } from "../../../src/runner/weigh";
import { baits, jobOf } from "./baits";
import { scenarioOf } from "../../lib/scenarios";

const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** A DXF file as pairs of group code and value. */
function pairsOf(text: string): (readonly [number, string])[] {
  const lines = text.split("\r\n");
  expect(lines.at(-1)).toBe("");
  return Array.from(
    { length: (lines.length - 1) / 2 },
    (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!] as const,
  );
}

describe.each(baits.slice(0, 3))("files for cutters of %s", (_, from) => {
  const job = jobOf(from);

  it("SVG: in millimetres, with title, and nothing that runs or leads outside", () => {
    const text = textOf(cutterFile(job, "side", "svg")!.bytes);
    // The file is written by this program alone: its form is known, and plain patterns read it.
    const [, width, height, box] = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(
      text,
    )!;
    expect([width, height]).toEqual(box!.split(" ").slice(2));
    const drawn = sizeOf(templateOf(job, "side")!.drawings[0]!.box);
    expect(Number(width)).toBeCloseTo(drawn.width + 4, 2);
    const [, title] = /<title>([^<]*)<\/title>/.exec(text)!;
    for (const words of [from.name, "Scale 1 : 1", "unit mm", job.fingerprint.short])
      expect(title).toContain(words);
    expect(text.match(/<path class="cut"/g)).toHaveLength(1);
    const tags = new Set(Array.from(text.matchAll(/<([a-zA-Z]+)/g), ([, tag]) => tag));
    expect([...tags].sort()).toEqual(["path", "svg", "text", "title"]);
    expect(text).not.toMatch(/href|url\(|style=|\son\w+=/);
  });

  it("SVG: a name with marks of its own stays words", () => {
    const odd = jobOf({ ...from, name: 'A <script>alert("1")</script> & co' });
    const text = textOf(cutterFile(odd, "side", "svg")!.bytes);
    expect(text).not.toContain("<script");
    expect(text).toContain("&lt;script&gt;");
  });

  it("DXF: millimetres, layers, and the outline at its true size", () => {
    const pairs = pairsOf(textOf(cutterFile(job, "side", "dxf")!.bytes));
    const after = (name: string): string => pairs[pairs.findIndex(([, value]) => value === name) + 1]![1];
    expect(after("$INSUNITS")).toBe("4");
    expect(pairs[0]![1]).toContain(job.fingerprint.short);
    const layers = pairs.flatMap(([code, value], i) =>
      code === 2 && pairs[i - 1]![1] === "LAYER" ? [value] : [],
    );
    expect(layers).toEqual(expect.arrayContaining(["CUT", "MARK", "TEXT"]));
    const xs = pairs.flatMap(([code, value], i) =>
      code === 10 && pairs[i - 1]![1] === "CUT" && pairs[i - 2]![1] === "VERTEX" ? [Number(value)] : [],
    );
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(from.bait.length_mm, 3);
    expect(pairs.at(-1)).toEqual([0, "EOF"]);
  });
});

describe("the drill map", () => {
  it.each(baits)("of %s gives every hole the volume of the file", (_, from) => {
    const { compiled, drills } = jobOf(from);
    const holes = holesOf(compiled.bait, drills);
    const inside = compiled.spec.ballast.filter((one) => one.where === "inside");
    expect(holes.map((one) => one.name)).toEqual(inside.map((one) => one.name));
    holes.forEach((hole, i) => {
      const bored = (Math.PI / 4) * hole.diameter ** 2 * hole.depth * (hole.from === "inner" ? 2 : 1);
      const { hole: given, mass, stuff } = inside[i]!;
      expect(bored).toBeCloseTo(given ?? mass / stuff.density, 12);
      expect(drills).toContain(hole.diameter);
    });
  });

  it.each(baits)(
    "of %s says of every hole that comes out of the wood, and of every weight off its place",
    (_, from) => {
      const job = jobOf(from);
      const { bait } = job.compiled;
      const notes = templateOf(job, "drill")!.notes.join(" ");
      for (const hole of holesOf(bait, job.drills)) {
        // Far more places of the rim than the map looks at.
        const inside = Array.from({ length: 720 }, (_, i) => (Math.PI * i) / 360).every((turn) => {
          const s = hole.station + (hole.diameter / 2) * Math.cos(turn);
          const z = hole.height + (hole.diameter / 2) * Math.sin(turn);
          const section = bait.drawn.section(s);
          return z < section.top && z > section.bottom && halfBreadthAt(section, z) > hole.depth;
        });
        if (hole.from === "inner" && !inside) expect(notes).toContain("Do not drill as drawn");
        if (hole.from === "below" && Math.abs(hole.off) > 0.3e-3)
          expect(notes).toMatch(new RegExp(`In these holes lies: .*${hole.name} [\\d.]+.mm`));
      }
    },
  );

  describe("of a weight whose drill the file names", () => {
    const from = scenarioOf("suspender-90");
    const STATION = 40;
    const PLUG = 2;
    const bottom = jobOf(from).compiled.bait.drawn.section(STATION / 1e3).bottom * 1e3;
    /** Pieces on each other in a hole that was bored for them, mm and g/mL; the hole may have been made deeper since. */
    const holeFor = (stack: number, ml: number, drill_mm: number, deeper = 0) => {
      const depth = PLUG + stack + deeper;
      const at_mm: [number, number] = [STATION, Number((bottom + PLUG + stack / 2).toFixed(2))];
      const hole_ml = Number((((Math.PI / 4) * drill_mm ** 2 * depth) / 1000).toFixed(4));
      const mass_g = Number((8.5 * ml).toFixed(4));
      const one = { name: "weight", at_mm, mass_g, density_g_ml: 8.5, hole_ml, drill_mm };
      const ballast = [{ ...one, where: "inside" as const, filler_g_ml: 1.1 }];
      const job = jobOf({ ...from, bench: [], bait: { ...from.bait, ballast, chambers: [] } });
      const [hole] = holesOf(job.compiled.bait, job.drills);
      return { off: hole!.off * 1e3, notes: templateOf(job, "drill")!.notes.join(" ") };
    };
    const ball = (d: number): number => (Math.PI / 6) * (d / 10) ** 3;
    const rod = (d: number, long: number): number => (((Math.PI / 4) * d * d) / 1000) * long;

    it.each([
      ["a ball in its own drill", 5, ball(5), 5],
      ["a ball whose mass was rounded up", 3, ball(3.001), 3],
      ["three balls on each other", 9, 3 * ball(3), 3],
      ["two balls in the next drill", 8, 2 * ball(4), 4.5],
      ["two cut lengths in their drill", 8, 2 * rod(4, 4), 4],
      ["two cut lengths in the next drill", 10, 2 * rod(4, 5), 5],
    ])("%s lies where the file puts it", (_, stack, ml, drill) => {
      const { off, notes } = holeFor(stack, ml, drill);
      expect(Math.abs(off)).toBeLessThan(0.3);
      expect(notes).not.toContain("In these holes lies");
    });

    it("says so where the hole was made deeper and the weight left where it was", () => {
      const { off, notes } = holeFor(5, ball(5), 5, 2);
      expect(off).toBeCloseTo(2, 1);
      expect(notes).toContain("In these holes lies: weight 2.0 mm higher");
      for (const [stack, ml, drill] of [
        [9, 3 * ball(3), 3],
        [8, 2 * rod(4, 4), 4],
      ] as const) {
        const deeper = holeFor(stack, ml, drill, 4);
        expect(deeper.off).toBeGreaterThan(0.3);
        expect(deeper.notes).toContain("In these holes lies: weight");
      }
    });
  });

  it("finds again the drill and the depth of a ballast plan", () => {
    const from = scenarioOf("suspender-90");
    const bare = {
      ...from,
      bait: { ...from.bait, ballast: [] },
      target: { net_g: 1, netTolerance_g: 1 },
    };
    const box = parseBox(
      JSON.stringify({
        format: "trimwright/box",
        version: 1,
        name: "drawer",
        drills_mm: [3, 4, 5, 6],
        things: [
          { kind: "shot", name: "ball 5", count: 6, material: "tungsten", diameter_mm: 5 },
          { kind: "shot", name: "ball 4", count: 6, material: "tungsten", diameter_mm: 4 },
        ],
      }),
    );
    if (!box.ok) throw new Error("the box cannot be read");
    const [plan] = planFor({ scenario: bare, box: box.box, zone: usualZone(bare), places: 2 }).plans;
    const { compiled, drills } = jobOf(adoptPlan(bare, plan!), {}, box.box);
    const holes = holesOf(compiled.bait, drills);
    const bores = plan!.loads.flatMap((load) => load.hole ?? []);
    expect(holes.length).toBe(bores.length);
    holes.forEach((hole, i) => {
      expect(hole.from).toBe("below");
      expect(hole.diameter).toBeCloseTo(bores[i]!.diameter, 9);
      expect(hole.depth).toBeCloseTo(bores[i]!.depth, 4);
    });
  });
});

it("a wire's length and bends are those of its path", () => {
  const wire = (path: readonly (readonly [number, number])[]) =>
    development({
      name: "",
      diameter: 1e-3,
      stuff: { name: "", density: 8000, kind: "metal", given: true },
      path: path.map(([x, z]) => ({ x, z })),
    });
  // Two sides of a square, and back on itself at 45°.
  const { length, bends } = wire([
    [0, 0],
    [-0.03, 0],
    [-0.03, -0.04],
    [-0.06, -0.01],
  ]);
  expect(length).toBeCloseTo(0.07 + 0.03 * Math.SQRT2, 12);
  expect(bends.map(({ along }) => along)).toEqual([0.03, 0.07]);
  expect(bends[0]!.turn).toBeCloseTo(Math.PI / 2, 9);
  expect(bends[1]!.turn).toBeCloseTo((3 / 4) * Math.PI, 9);
  expect(bends.map(({ way }) => way)).toEqual(["up", "down"]);
  expect(
    wire([
      [0, 0],
      [-0.1, 0],
    ]).bends,
  ).toEqual([]);
});
