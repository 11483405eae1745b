// npm test [-- STAGE …] [--all]: every stage, or the named ones, each on its own so that one failure hides no other.
import "./lib/node-version.mjs";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inLanes, turns } from "./lib/lanes.mjs";
import { ensurePackages } from "./lib/packages.mjs";
import { run, runCommand } from "./lib/process.mjs";
import { closingLine, fromPlaywright, fromVitest, none, sum, withExit } from "./lib/tally.mjs";

/** @typedef {import("./lib/tally.mjs").Tally} Tally */
/** @typedef {(text: string) => void} Say what a stage prints */
/**
 * @typedef {{ name: string, what: string, lane: "code" | "lint" | "page", run: (say: Say) => Promise<Tally> }} Stage
 * lane: the stages of one lane run one after the other, beside those of the other lanes. The page's is the longest, and
 * often waits for a clock: it has the processor first, and the others take what it leaves.
 */

const reports = mkdtempSync(join(tmpdir(), "trimwright-test-"));
process.once("exit", () => rmSync(reports, { recursive: true, force: true }));

/** For what makes a great many short-lived objects, as compilers do: with room for them a tenth of the time is saved. */
const roomy = { NODE_OPTIONS: `${process.env["NODE_OPTIONS"] ?? ""} --max-semi-space-size=128`.trim() };
const colours = process.stdout.isTTY ? { FORCE_COLOR: "1" } : {};

/** `npm test -- --all`: the long browser tests too. */
const ALL = "--all";
const all = process.argv.includes(ALL);

/** A stage that hangs is ended after this time, in minutes. */
const minutes = 45;

/**
 * @param {{ code: number, why: string | null }} outcome
 * @param {Say} say
 */
function exitOf({ code, why }, say) {
  if (why !== null) say(`${why}\n`);
  return code;
}

/**
 * A package's command as one check that has no cases of its own.
 * @param {Say} say
 * @param {string} name
 * @param {readonly string[]} args
 * @param {{ packageName?: string, yielding?: boolean }} [more]
 * @returns {Promise<Tally>}
 */
async function check(say, name, args, more = {}) {
  const options = { minutes, env: { ...roomy, ...colours }, hold: say, yielding: true, ...more };
  return exitOf(await runCommand(name, args, options), say) === 0
    ? { ...none(), passed: 1 }
    : { ...none(), failed: 1 };
}

/**
 * The same for a script of ours.
 * @param {Say} say
 * @param {readonly string[]} args
 * @returns {Promise<Tally>}
 */
async function script(say, ...args) {
  const options = { minutes, env: { ...roomy, ...colours }, hold: say, yielding: true };
  const outcome = await run(process.execPath, args, options);
  return exitOf(outcome, say) === 0 ? { ...none(), passed: 1 } : { ...none(), failed: 1 };
}

/**
 * @template R
 * @param {string} file
 * @param {(report: any) => R} read
 * @param {R} otherwise
 * @param {Say} say
 * @returns {R}
 */
function reported(file, read, otherwise, say) {
  try {
    return read(JSON.parse(readFileSync(file, "utf8")));
  } catch (error) {
    say(`No report of the cases: ${error instanceof Error ? error.message : String(error)}\n`);
    return otherwise;
  }
}

/** Projects of the Vitest configuration, each a stage. */
const projects = /** @type {const} */ ({
  rules: "each of these rules can fail",
  unit: "each part by itself",
  published: "against published values",
  properties: "laws that hold for any bait",
  golden: "every scenario and what it expects",
  outputs: "what the command and the sheets give, for whole scenarios",
});

/** @type {Promise<Map<string, Tally>> | null} */
let together = null;

/**
 * All projects that were asked for, in one run of Vitest: the first stage waits for it, the others find their cases counted.
 * @param {readonly string[]} names
 * @param {Say} say
 */
async function vitest(names, say) {
  const file = join(reports, "vitest.json");
  const outcome = await runCommand(
    "vitest",
    [
      "run",
      ...names.flatMap((name) => ["--project", name]),
      ...["--reporter=default", "--reporter=json", `--outputFile.json=${file}`],
    ],
    { minutes, env: colours, hold: say, yielding: true },
  );
  const code = exitOf(outcome, say);
  const tallies = reported(
    file,
    (/** @type {Parameters<typeof fromVitest>[0]} */ report) => names.map((name) => fromVitest(report, name)),
    names.map(none),
    say,
  );
  // An end with an error that no case explains counts against every project.
  const explained = sum(tallies).failed > 0;
  return new Map(names.map((name, i) => [name, withExit(tallies[i] ?? none(), explained ? 0 : code)]));
}

/** @param {Say} say @returns {Promise<Tally>} */
async function browserCases(say) {
  const { browserTests } = await import("./browser.mjs");
  const report = join(reports, "browser.json");
  const outcome = await browserTests({ report, short: !all, minutes, hold: say });
  return withExit(reported(report, fromPlaywright, none(), say), exitOf(outcome, say));
}

/** @type {readonly Stage[]} */
const stages = [
  {
    name: "types",
    what: "TypeScript and Svelte agree with every type",
    lane: "code",
    // It goes through the plain TypeScript and JavaScript too.
    run: (say) =>
      check(say, "svelte-check", ["--fail-on-warnings", "--output", "human", "--threshold", "warning"]),
  },
  {
    name: "imports",
    what: "imports go one way, through the doors",
    lane: "code",
    run: (say) =>
      check(say, "depcruise", ["-c", "tools/import-rules.config.mjs", "src"], {
        packageName: "dependency-cruiser",
      }),
  },
  {
    name: "unused",
    what: "no dead code, and none that only tests use",
    lane: "code",
    run: (say) => script(say, "tools/unused.mjs"),
  },
  {
    name: "lock",
    what: "packages are pinned, from anywhere",
    lane: "code",
    run: (say) => script(say, "tools/lock.mjs"),
  },
  ...Object.entries(projects).map(([name, what]) => ({
    name,
    what,
    lane: /** @type {const} */ ("code"),
    run: async (/** @type {Say} */ say) => {
      together ??= vitest(
        Object.keys(projects).filter((one) => chosen.some((stage) => stage.name === one)),
        say,
      );
      return (await together).get(name) ?? { ...none(), failed: 1 };
    },
  })),
  {
    name: "lint",
    what: "lint rules, and one layout for all code",
    lane: "lint",
    run: async (say) =>
      sum([
        await script(say, "tools/typed-lint.mjs"),
        await check(say, "eslint", ["-c", "tools/eslint.config.mjs", "--max-warnings", "0", "."]),
        await script(say, "tools/format.mjs", "--check"),
      ]),
  },
  {
    name: "build",
    what: "the page builds, and stays light",
    lane: "page",
    run: async (say) => {
      const built = await check(say, "vite", ["build", "--logLevel", "warn"], { yielding: false });
      return built.failed > 0 ? built : sum([built, await script(say, "tools/size.mjs")]);
    },
  },
  {
    name: "browser",
    what: all ? "the built page, in Chromium, all of it" : "the built page, in Chromium",
    lane: "page",
    run: browserCases,
  },
];

const asked = process.argv.slice(2).filter((word) => word !== ALL);
const unknown = asked.filter((name) => !stages.some((stage) => stage.name === name));
if (unknown.length > 0) {
  console.error(
    `There is no stage ${unknown.join(", ")}. The stages are: ${stages.map(({ name }) => name).join(", ")}.`,
  );
  process.exit(2);
}

await ensurePackages();

const chosen = stages.filter(({ name }) => asked.length === 0 || asked.includes(name));
const { say, end } = turns(
  chosen.map(({ name }) => name),
  (text) => void process.stdout.write(text),
);

/** @param {Stage} stage */
async function timed(stage) {
  const start = performance.now();
  const tell = (/** @type {string} */ text) => say(stage.name, text);
  tell(`\n── ${stage.name}: ${stage.what}\n`);
  /** @type {Tally} */
  let tally;
  try {
    tally = await stage.run(tell);
  } catch (error) {
    tell(`${error instanceof Error ? error.message : String(error)}\n`);
    tally = { ...none(), failed: 1 };
  }
  end(stage.name);
  return { stage, tally, seconds: (performance.now() - start) / 1000 };
}

const began = performance.now();
const results = await inLanes(chosen, ({ lane }) => lane, timed);

const total = sum(results.map(({ tally }) => tally));
console.log();
for (const { stage, tally, seconds } of results) {
  const skipped = tally.skipped > 0 ? `, ${String(tally.skipped)} skipped` : "";
  const second = tally.second > 0 ? `, ${String(tally.second)} only at a second try: look into it` : "";
  console.log(
    `${tally.failed > 0 ? "✗" : "✓"} ${stage.name.padEnd(10)} ${seconds.toFixed(1).padStart(6)} s   ` +
      `${closingLine(tally)}${skipped}${second}`,
  );
}
console.log(
  `\n${((performance.now() - began) / 1000).toFixed(0)} s. Rules, unit, published, properties, golden and outputs share one run.`,
);
console.log(closingLine(total));
process.exitCode = total.failed > 0 ? 1 : 0;
