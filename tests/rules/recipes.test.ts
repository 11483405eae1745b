import { readdirSync, readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Copy } from "./copy";

/** What DEVELOPERS.md tells a newcomer holds: its paths and names exist, and its recipe for a force is enough. The recipes for a material, a part of the bait
 * and a view have files of their own here. */

const page = readFileSync("DEVELOPERS.md", "utf8");
const files = ["src", "tests", "tools", "docs", "scenarios"].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).map(
    (file) => `${folder}/${file.replaceAll("\\", "/")}`,
  ),
);

/** Words in `backticks`, without the made-up names of files that a recipe asks for. */
const named = [...new Set([...page.matchAll(/`([^`\n]+)`/g)].map(([, word = ""]) => word))].filter(
  (word) => !/\bKINDS?\b/.test(word),
);

describe("DEVELOPERS.md", () => {
  it("names no file or folder that does not exist", () => {
    const paths = named.filter((word) =>
      /^[\w.-]+(\/[\w.-]+)+$|^[\w-]+\.(ts|mjs|svelte|json|md)$/.test(word),
    );
    expect(paths.length).toBeGreaterThan(20);
    const exists = (path: string): boolean =>
      path === "package.json" ||
      files.some(
        (file) =>
          file === path || file.endsWith(`/${path}`) || `/${file}`.includes(`/${path.replace(/\/$/, "")}/`),
      );
    expect(paths.filter((path) => !exists(path))).toEqual([]);
  });

  it("names nothing of the code that does not exist", () => {
    const words = named.filter(
      (word) => /^[A-Za-z]\w*(\.\w+)*$/.test(word) && !/\.(ts|mjs|svelte|json|md)$/.test(word),
    );
    expect(words.length).toBeGreaterThan(40);
    const code = files
      .filter((file) => /\.(ts|svelte|mjs)$/.test(file) && file !== "tests/rules/recipes.test.ts")
      .map((file) => readFileSync(file, "utf8"))
      .join("\n");
    const known = new Set(code.match(/\w+/g));
    expect(words.filter((word) => !word.split(".").every((part) => known.has(part)))).toEqual([]);
  });

  it("tells what the recipe for a force asks for", () => {
    const recipe = /\*\*A force\.\*\*[\s\S]*?(?=\n\n\*\*)/.exec(page)?.[0] ?? "";
    for (const step of [
      "kernels.ts",
      "ForceKey",
      "types.ts",
      "WATER_FORCES",
      "legend.ts",
      "KERNELS",
      "models.ts",
      "anchors",
      "recordings.json",
    ])
      expect(recipe).toContain(step);
    expect(recipe).toContain("docs/scenario-format.md");
  });
});

/** A made-up force, by the recipe: the drag of a thread that trails from G along the datum line. */
const AREA = 1e-5;
const KERNEL = `
/** Made up: −½ρ A |u| u along the datum line, at G. */
export function thread(situation: Situation, out: Wrench): void {
  out.x -= 0.5 * situation.density * ${AREA} * Math.abs(situation.u) * situation.u;
}
`;
const RECORD = `
  thread: {
    letter: "Y",
    label: "Drag of the thread",
    colour: OKABE_ITO.black,
    formula: "−½ρ A |u| u",
    source: "made up for a test",
    viscous: true,
  },`;
const ENTRY = `
export { FORCE_LEGEND, FORCES, prepareSwimmer, totalWrench, VISCOUS } from "./src/model/forces";
export { parseScenario } from "./src/document";
export { record } from "./src/model/motion";
export { recordingCsv, swimSetup } from "./src/runner";
`;
type Program = Pick<
  typeof import("../../src/model/forces"),
  "FORCE_LEGEND" | "FORCES" | "prepareSwimmer" | "totalWrench" | "VISCOUS"
> &
  Pick<typeof import("../../src/document"), "parseScenario"> &
  Pick<typeof import("../../src/model/motion"), "record"> &
  Pick<typeof import("../../src/runner"), "recordingCsv" | "swimSetup">;

describe("a made-up force, added by the recipe", () => {
  const copy = new Copy("force");
  afterAll(() => {
    copy.remove();
  });

  const THREAD: string = "thread";
  let plain: Program;
  let changed: Program;

  beforeAll(async () => {
    plain = await copy.program(ENTRY, "plain.mjs");
    const kernels = "src/model/forces/kernels.ts";
    copy.write(kernels, `${readFileSync(copy.path(kernels), "utf8")}${KERNEL}`);
    copy.put("src/model/forces/types.ts", '"bib" | "hooks"', ' | "thread"');
    const hooks =
      'source: "wires as cylinders across the flow, ±50 % (common practice, no source)",\n    viscous: true,\n  },';
    copy.put("src/model/forces/legend.ts", hooks, RECORD);
    copy.put("src/model/forces/models.ts", "hooks: kernels.hooks,", "\n  thread: kernels.thread,");
    changed = await copy.program(ENTRY, "with.mjs");
  });

  const compiled = (p: Program) => {
    const file = JSON.parse(readFileSync("scenarios/suspender-90.json", "utf8")) as { cadence: unknown };
    file.cadence = [{ do: "reel", speed_m_s: 0.8, for_s: 1 }];
    const read = p.parseScenario(JSON.stringify(file));
    if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
    return read.compiled;
  };

  it("is in the sum with its own size, and among the viscous forces", () => {
    const around = {
      density: 1000,
      viscosity: 1e-3,
      gravity: 9.80665,
      current: { x: 0, z: 0 },
      surface: false,
      depth: Infinity,
    };
    const state = { u: 2, w: 0.1, q: 0, pitch: 0, X: 0, Z: -1 };
    const [before, after] = [plain, changed].map((p) =>
      p.totalWrench(p.prepareSwimmer(compiled(p).bait), state, around),
    );
    // ½ · 1000 · 1e-5 · 2² = 0.02 N, against the motion; no moment about G.
    expect((after?.x ?? NaN) - (before?.x ?? NaN)).toBeCloseTo(-0.02, 12);
    expect((after?.m ?? NaN) - (before?.m ?? NaN)).toBeCloseTo(0, 12);
    expect<readonly string[]>(changed.VISCOUS).toContain(THREAD);
  });

  it("is in the legend, before the forces of other rooms, with a letter of its own", () => {
    const keys: string[] = changed.FORCE_LEGEND.map(({ key }) => key);
    expect(keys).toEqual([...changed.FORCES.map(({ key }) => key), "line", "contact"]);
    expect(keys).toContain(THREAD);
    const force = changed.FORCE_LEGEND.find(({ key }): boolean => key === THREAD);
    if (!force) throw new Error("not in the legend");
    expect(force.label).toBe("Drag of the thread");
    expect(new Set(changed.FORCE_LEGEND.map(({ letter }) => letter)).size).toBe(keys.length);
  });

  it("has three columns in the recording and in the table", () => {
    const heads = [plain, changed].map((p) => {
      const table = p.recordingCsv(p.record(p.swimSetup(compiled(p))));
      return table.slice(0, table.indexOf("\r\n")).split(",");
    });
    const [before = [], after = []] = heads;
    expect(after.filter((head) => !before.includes(head))).toEqual([
      "thread_x_N",
      "thread_z_N",
      "thread_m_Nm",
    ]);
  });
});
