import { expose } from "comlink";
import { afterEach, describe, expect, test } from "vitest";
import { compile, readScenario } from "../../../src/document";
import { scenarioOf } from "../../lib/scenarios";
import type { Scenario } from "../../../src/document";
import { prepareTow, reach } from "../../../src/model/tow";
import { changesBait, ModelClient, towHere, variableOf, withVariable } from "../../../src/runner";
import type { ReachCell, ReachMapJob, ReachVariable } from "../../../src/runner";
import { reachLimit, ReachMapper } from "../../../src/runner/reach-mapper";
import { createService } from "../../../src/runner/service";
import { tackleWith } from "../../../src/runner/vary";

const scenario = scenarioOf("suspender-90");
const job = (vary: ReachMapJob["vary"], more: Partial<ReachMapJob> = {}): ReachMapJob => ({
  scenario,
  speed: 0.9,
  vary,
  bands: false,
  whole: false,
  ...more,
});

/** What the model says of a document by itself. */
function direct(from: Scenario, speed: number) {
  const { bait, around, tackle, calibration } = compile(from);
  return reach(prepareTow(bait, calibration.bibFactor), around, tackle, { speed });
}

const VALUES: Readonly<Record<Exclude<ReachVariable, "speed">, number>> = {
  lineOut: 17,
  lineDiameter: 0.18,
  rodTip: 0.4,
  bibAngle: 33,
  bibLength: 19,
  bibWidth: 16,
  tieStation: 4,
  tieHeight: 2.5,
};

describe("variables", () => {
  test.each(Object.entries(VALUES) as [Exclude<ReachVariable, "speed">, number][])(
    "%s: a cell is what the model says of the document so changed",
    (variable, value) => {
      const changed = withVariable(scenario, variable, value);
      expect(variableOf(changed, variable)).toBe(value);
      expect(variableOf(scenario, variable)).not.toBe(value);
      const cell = new ReachMapper(job([{ variable, values: [value] }])).cell(0);
      const { depth, pitch, tension } = direct(changed, 0.9);
      expect(depth).not.toBeNull();
      expect(cell).toMatchObject({ built: true, runs: true, depth, pitch, tension });
      // … and differs from the document as it is: a variable that does nothing would pass the lines above.
      expect(Math.abs((cell.depth ?? 0) - (direct(scenario, 0.9).depth ?? 0))).toBeGreaterThan(1e-3);
    },
  );

  test("tackle is changed without compiling anew, to the same numbers", () => {
    const { tackle } = compile(scenario);
    for (const variable of ["lineOut", "lineDiameter", "rodTip"] as const) {
      expect(changesBait(variable)).toBe(false);
      const compiled = compile(withVariable(scenario, variable, VALUES[variable])).tackle;
      const { EA, ...line } = compiled.line;
      expect(EA).toBeGreaterThan(0);
      expect(tackleWith(tackle, variable, VALUES[variable])).toMatchObject({ ...compiled, line });
    }
  });

  test("a bib's dimension is refused where there is no bib", () => {
    const { bib, ...bait } = scenario.bait;
    expect(bib).toBeDefined();
    const bare = { ...scenario, bait };
    expect(variableOf(bare, "bibAngle")).toBeNull();
    expect(() => withVariable(bare, "bibAngle", 30)).toThrow(/no bib/);
  });
});

describe("map", () => {
  test("the first variable is outside, and both change what they name", () => {
    const mapper = new ReachMapper(
      job([
        { variable: "bibAngle", values: [30, 45] },
        { variable: "speed", values: [0.6, 0.9, 1.2] },
      ]),
    );
    expect(mapper.count).toBe(6);
    const cell = mapper.cell(4);
    expect(cell.depth).toBe(direct(withVariable(scenario, "bibAngle", 45), 0.9).depth);
    expect(() => mapper.cell(6)).toThrow(/none/);
  });

  test("what cannot be built says why, and does not stop the others", () => {
    const mapper = new ReachMapper(job([{ variable: "bibLength", values: [-1, 15] }]));
    const [bad, good] = [mapper.cell(0), mapper.cell(1)];
    expect(bad).toMatchObject({ built: false, runs: false, depth: null });
    expect(bad.why).toMatch(/bib/);
    expect(good.runs).toBe(true);
  });

  test("what does not run keeps the model's own reason", () => {
    const cell = new ReachMapper(job([{ variable: "bibAngle", values: [88] }])).cell(0);
    const { runs, why } = direct(withVariable(scenario, "bibAngle", 88), 0.9);
    expect(runs).toBe(false);
    expect(cell).toMatchObject({ runs, why, depth: null, built: true });
  });

  test("bands: more bib factor and less line drag run deeper, and the middle lies between", () => {
    const cell = new ReachMapper(job([], { bands: true })).cell(0);
    const depth = cell.depth ?? NaN;
    const { bib, line, munk } = cell.bands ?? { bib: null, line: [null, null], munk: [null, null] };
    expect(bib?.[0]).toBeLessThan(depth);
    expect(bib?.[1]).toBeGreaterThan(depth);
    expect(line[0]).toBeLessThan(depth);
    expect(line[1]).toBeGreaterThan(depth);
    const ends = munk.map((one) => one ?? NaN).sort((a, b) => a - b);
    expect(ends[0]).toBeLessThan(depth);
    expect(ends[1]).toBeGreaterThan(depth);
    const { bait, around, tackle } = compile(scenario);
    expect(bib?.[0]).toBe(reach(prepareTow(bait, 0.75), around, tackle, { speed: 0.9 }).depth);
  });

  test("on the page's own thread, from the bait that is assembled there, it is the worker's cell", async () => {
    const read = readScenario(scenario);
    if (!read.ok) throw new Error("refused");
    for (const speed of [0.05, 0.9, 2.4]) {
      const asked = job([], { speed, whole: true });
      expect(towHere(scenario, read.compiled, speed)).toEqual(new ReachMapper(asked).cell(0));
      expect(await two().map(asked, `here ${speed}`)).toEqual([towHere(scenario, read.compiled, speed)]);
    }
  });

  test("a measured run takes the bib's band away", () => {
    const calibrated = { ...scenario, calibration: { bibFactor: 0.9 } };
    const cell = new ReachMapper(job([], { scenario: calibrated, bands: true })).cell(0);
    expect(cell.bands?.bib).toBeNull();
    expect(cell.depth).toBe(direct(calibrated, 0.9).depth);
  });

  test("a limit is closed in from both sides", () => {
    const mapper = new ReachMapper(job([]));
    const limit = reachLimit(mapper, "bibAngle", 40, 88);
    expect(Math.abs(limit.runs - limit.fails)).toBeLessThan(0.05);
    expect(mapper.at([{ variable: "bibAngle", value: limit.runs }]).runs).toBe(true);
    const beyond = mapper.at([{ variable: "bibAngle", value: limit.fails }]);
    expect(beyond.runs).toBe(false);
    expect(limit.why).toBe(beyond.why);
  });
});

const open: MessagePort[] = [];
const clients: ModelClient[] = [];
function two(): ModelClient {
  const made = new ModelClient({
    workers: 2,
    start: () => {
      const { port1, port2 } = new MessageChannel();
      open.push(port1, port2);
      expose(createService(), port2);
      port1.start();
      return Object.assign(port1, { terminate: () => port1.close() });
    },
  });
  clients.push(made);
  return made;
}
afterEach(() => {
  for (const one of clients.splice(0)) one.close();
  for (const port of open.splice(0)) port.close();
});

describe("maps on two workers", () => {
  const map = job([
    { variable: "bibAngle", values: [30, 40, 50] },
    { variable: "speed", values: [0.7, 1.1] },
  ]);

  test("two workers give the same cells as one pass, in their order, with progress", async () => {
    const heard: [number, number][] = [];
    const cells = await two().map(map, "map", (_, done, of) => heard.push([done, of]));
    const mapper = new ReachMapper(map);
    expect(cells).toEqual(Array.from({ length: 6 }, (_, i) => mapper.cell(i)));
    expect(heard).toEqual([
      [2, 6],
      [4, 6],
      [6, 6],
    ]);
  });

  test("a newer map and a cancel end the older, of which nothing more is heard", async () => {
    const both = two();
    const late: (readonly ReachCell[])[] = [];
    const older = both.map(map, "map", (cells) => late.push(cells));
    const newer = both.map(map, "map");
    expect(await older).toBeNull();
    expect(late).toEqual([]);
    expect((await newer)?.length).toBe(6);
    const stopped = both.map(map, "map");
    both.cancel("map");
    expect(await stopped).toBeNull();
  });

  test("a fault rejects with its message", async () => {
    const broken = { ...map, speed: 1, vary: [{ variable: "speed" as const, values: [0.5, -1] }] };
    await expect(two().map(broken, "map")).rejects.toThrow(/speed above 0 m\/s, not -1/);
  });

  test("calibration by a measured run", async () => {
    const depth = direct({ ...scenario, calibration: { bibFactor: 0.8 } }, 0.9).depth ?? NaN;
    const found = await two().calibrate(
      scenario,
      { speed: 0.9, lineOut: scenario.tackle.lineOut_m, depth },
      "calibrate",
    );
    expect(found?.factor).toBeCloseTo(0.8, 4);
  });
});
