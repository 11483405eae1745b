import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { compile, parseScenario, USUAL_DRILLS } from "../../src/document";
import { USUAL_WALL } from "../../src/model/checks";
import { holesOf } from "../../src/sheet/templates/holes";
import { Prefs } from "../../src/ui/state/prefs.svelte";
import { Units } from "../../src/ui/state/units";
import { Workspace } from "../../src/ui/state/workspace.svelte";
import { lookAt, remarksOf } from "../../src/ui/views/draw/remarks";
import { toSI } from "../../src/units";

/**
 * Every ready bait can be made as it is drawn: Draw warns of nothing, and the drill map has a place in the wood for each
 * weight. The exceptions stand here by name, each with the words of the scenario's notes that say why.
 */
type Exceptions = Readonly<Record<string, RegExp>>;
const WARNED: Exceptions = {};
const NOT_DRILLED: Exceptions = { "ellipsoid-80.json": /It is not meant to be made: its weight is thicker/ };

const folder = "scenarios";
const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
const drills = USUAL_DRILLS.map((drill) => toSI(drill, "mm"));
/** The drill map says so where a weight comes to lie this far off its place. */
const OFF = toSI(0.3, "mm");
const units = new Units(new Prefs(null, 1200));

it("names as exceptions only what is there", () => {
  for (const name of [...Object.keys(WARNED), ...Object.keys(NOT_DRILLED)]) expect(files).toContain(name);
});

describe.each(files)("%s", (file) => {
  const read = parseScenario(readFileSync(join(folder, file), "utf8"));
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  const { scenario } = read;

  function none(found: readonly unknown[], exceptions: Exceptions): void {
    const why = exceptions[file];
    if (why === undefined) expect(found).toEqual([]);
    else {
      expect(found).not.toEqual([]);
      expect(scenario.notes).toMatch(why);
    }
  }

  it("opens in Draw without a warning, or its notes say why not", () => {
    none(remarksOf(lookAt(new Workspace(scenario).now), USUAL_WALL, units, "en"), WARNED);
  });

  it("has a hole for each weight where it is drawn, with the usual wall round it, or its notes say why not", () => {
    const { bait } = compile(scenario);
    const holes = holesOf(bait, drills);
    expect(holes).toHaveLength(bait.spec.ballast.length);
    none(
      holes.filter(({ wall, off }) => wall < USUAL_WALL || Math.abs(off) >= OFF),
      NOT_DRILLED,
    );
  });
});
