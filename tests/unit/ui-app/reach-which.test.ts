import { describe, expect, test } from "vitest";
import type { ReachCell } from "../../../src/runner/reach-map";
import { ReachMapper } from "../../../src/runner/reach-mapper";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { reachCsv } from "../../../src/runner/reach-csv";
import { REACH } from "../../../src/ui/words/reach";
import { ANGLES, fieldOf, speedsOf, whichAngle, whichWords } from "../../../src/ui/views/reach/which";
import { scenario } from "./scenario";

const units = new Units(new Prefs(null, 1200));
const words = REACH.in("en");

/** Depth = 2 + (speed − 1) − ((angle − 45)/30)², and nothing from 75° on. */
const field = {
  angles: ANGLES,
  speeds: [0.9, 1, 1.1],
  depths: [0.9, 1, 1.1].flatMap((speed) =>
    ANGLES.map((angle) => (angle >= 75 ? null : 2 + (speed - 1) - ((angle - 45) / 30) ** 2)),
  ),
};

describe("which bib angle gives a depth", () => {
  test("all angles that do, the one nearest to the present first", () => {
    // 1.5 m at 1 m/s: (angle − 45)/30 = ±√½, 23.8° and 66.2°; straight lines between steps of 3° err by less than 0.2°.
    const { angles, other } = whichAngle(field, 1.5, 1, 60);
    expect(angles).toHaveLength(2);
    expect(Math.abs((angles[0] ?? 0) - (45 + 30 * Math.SQRT1_2))).toBeLessThan(0.2);
    expect(Math.abs((angles[1] ?? 0) - (45 - 30 * Math.SQRT1_2))).toBeLessThan(0.2);
    expect(other).not.toBeNull();
    expect(whichWords(field, 1.5, 1, 30, units, words)).toBe(
      "1.50\u202fm at 1.00\u202fm/s: a bib angle of 24° or 66° gives it.",
    );
  });

  test("none: the nearest, and the speed next to it that does", () => {
    expect(whichWords(field, 2.05, 0.9, 40, units, words)).toBe(
      "2.05\u202fm: no bib angle gives it at 0.90\u202fm/s; 45° comes nearest with 1.90\u202fm; at 1.10\u202fm/s 38° does.",
    );
    expect(whichWords(field, 9, 0.9, 40, units, words)).toMatch(/nor does one at the speeds around\.$/);
  });

  test("without a wish it tells what there is; nothing that runs is said too", () => {
    expect(whichWords(field, null, 1, 40, units, words)).toMatch(
      /^At 1\.00.m\/s its bib angle can make it run 1\.00 to 2\.00.m deep/,
    );
    const none = { ...field, depths: field.depths.map(() => null) };
    expect(whichWords(none, null, 1, 40, units, words)).toMatch(/runs with no bib angle/);
    expect(whichWords(none, 1, 1, 40, units, words)).toMatch(/it runs at none; nor does one/);
  });

  test("the field holds the tow's own speed, and the model's answer at the angle is the depth that was wanted", () => {
    const speed = 0.83;
    const speeds = speedsOf(speed);
    expect(speeds).toContain(speed);
    expect([...speeds].sort((a, b) => a - b)).toEqual([...speeds]);
    const doc = scenario();
    const vary = [
      { variable: "bibAngle" as const, values: ANGLES },
      { variable: "speed" as const, values: speeds },
    ];
    const mapper = new ReachMapper({ scenario: doc, speed, vary, bands: false, whole: false });
    const cells = Array.from({ length: mapper.count }, (_, i): ReachCell => mapper.cell(i));
    const found = fieldOf(speeds, cells);
    const own = found.depths.slice(speeds.indexOf(speed) * ANGLES.length).slice(0, ANGLES.length);
    const runs = own.flatMap((depth) => (depth === null ? [] : [depth]));
    const wanted = (Math.min(...runs) + Math.max(...runs)) / 2;
    const { angles } = whichAngle(found, wanted, speed, 40);
    const [angle] = angles;
    if (angle === undefined) throw new Error("no angle for a depth between two that are reached");
    const depth = mapper.at([
      { variable: "bibAngle", value: angle },
      { variable: "speed", value: speed },
    ]).depth;
    expect(Math.abs((depth ?? NaN) - wanted)).toBeLessThan(0.01);
  });
});

describe("map and curves as a table", () => {
  test("a row a cell with its units; what does not run says why, and commas stay in their field", () => {
    const doc = scenario();
    const cell = { index: 0, built: true, bands: null, whole: null, lineAngle: 0.1 };
    const runs: ReachCell = { ...cell, runs: true, why: null, depth: 1.25, pitch: -0.1, tension: 0.5 };
    const not: ReachCell = {
      ...cell,
      runs: false,
      why: "nose, tail",
      depth: null,
      pitch: null,
      tension: null,
    };
    const map = {
      across: "bibAngle",
      up: "speed",
      xs: [30, 40],
      ys: [1],
      cells: [runs, null],
      done: 1,
      of: 2,
    } as const;
    const curve = { variable: "speed", values: [0.5, 1], cells: [not, runs], others: [] } as const;
    const rows = reachCsv(doc, map, [curve]).split("\r\n");
    expect(rows[0]?.split(",")).toHaveLength(12);
    expect(rows[1]).toBe("map,Bib angle,30,°,Tow speed,1,m/s,yes,1.25,-5.72957795,0.5,");
    expect(rows[2]).toBe('curve,Tow speed,0.5,m/s,,,,no,,,,"nose, tail"');
    expect(rows).toHaveLength(5);
  });
});
