// npm test [-- STAGE …]: everything, or the named stages, each on its own so that one failure hides no other.
import "./lib/node-version.mjs";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ensurePackages } from "./lib/packages.mjs";
import { run, runCommand } from "./lib/process.mjs";
import { closingLine, fromPlaywright, fromVitest, none, sum, withExit } from "./lib/tally.mjs";

/** @typedef {import("./lib/tally.mjs").Tally} Tally */
/**
 * @typedef {{ name: string, what: string, run: (hold?: (text: string) => void) => Promise<Tally>, beside?: boolean }} Stage
 * beside: runs on the second core beside the stages before it; what it prints is held until its turn.
 */

const reports = mkdtempSync(join(tmpdir(), "trimwright-test-"));
process.once("exit", () => rmSync(reports, { recursive: true, force: true }));

/** For what makes a great many short-lived objects, as compilers do: with room for them a tenth of the time is saved. */
const roomy = { NODE_OPTIONS: `${process.env["NODE_OPTIONS"] ?? ""} --max-semi-space-size=128`.trim() };

/** A stage that hangs is ended after this time, in minutes. */
const minutes = 10;

/** @param {{ code: number, why: string | null }} outcome */
function exitOf({ code, why }) {
  if (why !== null) console.error(why);
  return code;
}

/**
 * One check that has no cases of its own.
 * @param {{ code: number, why: string | null }} outcome
 * @returns {Tally}
 */
const check = (outcome) => (exitOf(outcome) === 0 ? { ...none(), passed: 1 } : { ...none(), failed: 1 });

/**
 * @param {string} file
 * @param {(report: any) => Tally} read
 * @returns {Tally}
 */
function reported(file, read) {
  try {
    return read(JSON.parse(readFileSync(file, "utf8")));
  } catch (error) {
    console.error(`No report of the cases: ${error instanceof Error ? error.message : String(error)}`);
    return none();
  }
}

/**
 * A project of the Vitest configuration.
 * @param {string} project
 * @returns {Promise<Tally>}
 */
async function cases(project) {
  const file = join(reports, `${project}.json`);
  const outcome = await runCommand(
    "vitest",
    ["run", "--project", project, "--reporter=default", "--reporter=json", `--outputFile.json=${file}`],
    { minutes },
  );
  return withExit(reported(file, fromVitest), exitOf(outcome));
}

/** @returns {Promise<Tally>} */
async function browserCases() {
  const { browserTests } = await import("./browser.mjs");
  const report = join(reports, "browser.json");
  const outcome = await browserTests({ report, minutes: 2 * minutes });
  return withExit(reported(report, fromPlaywright), exitOf(outcome));
}

const node = (/** @type {string} */ script, /** @type {string[]} */ ...args) =>
  run(process.execPath, [script, ...args], { minutes });
/** @param {((text: string) => void) | undefined} hold */
const held = (hold) => ({ minutes, env: roomy, ...(hold ? { hold } : {}) });
const command = (/** @type {string} */ name, /** @type {string[]} */ ...args) =>
  runCommand(name, args, { minutes, env: roomy });

/** @type {readonly Stage[]} */
const stages = [
  {
    name: "types",
    what: "TypeScript and Svelte agree with every type",
    run: async () =>
      // It goes through the plain TypeScript and JavaScript too.
      check(
        await command("svelte-check", "--fail-on-warnings", "--output", "human", "--threshold", "warning"),
      ),
  },
  {
    name: "imports",
    what: "imports go one way, through the doors",
    run: async () =>
      check(
        await runCommand("depcruise", ["-c", "tools/import-rules.config.mjs", "src"], {
          packageName: "dependency-cruiser",
          minutes,
        }),
      ),
  },
  {
    name: "unused",
    what: "no dead code",
    run: async () => check(await command("knip", "-c", "tools/knip.json")),
  },
  {
    name: "lock",
    what: "packages are pinned, from anywhere",
    run: async () => check(await node("tools/lock.mjs")),
  },
  { name: "rules", what: "each of these rules can fail", run: () => cases("rules") },
  { name: "unit", what: "each part by itself", run: () => cases("unit") },
  { name: "published", what: "against published values", run: () => cases("published") },
  { name: "properties", what: "laws that hold for any bait", run: () => cases("properties") },
  { name: "golden", what: "every scenario and what it expects", run: () => cases("golden") },
  {
    name: "lint",
    what: "lint rules, and one layout for all code",
    beside: true,
    run: async (hold) =>
      sum([
        check(
          await runCommand(
            "eslint",
            ["-c", "tools/eslint.config.mjs", "--max-warnings", "0", "."],
            held(hold),
          ),
        ),
        check(await run(process.execPath, ["tools/format.mjs", "--check"], held(hold))),
      ]),
  },
  {
    name: "build",
    what: "the page builds, and stays light",
    run: async () => {
      const built = check(await command("vite", "build", "--logLevel", "warn"));
      return built.failed > 0 ? built : sum([built, check(await node("tools/size.mjs"))]);
    },
  },
  { name: "browser", what: "the built page, in Chromium", run: browserCases },
];

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !stages.some((stage) => stage.name === name));
if (unknown.length > 0) {
  console.error(
    `There is no stage ${unknown.join(", ")}. The stages are: ${stages.map(({ name }) => name).join(", ")}.`,
  );
  process.exit(2);
}

await ensurePackages();

/**
 * @param {Stage} stage
 * @param {(text: string) => void} [hold]
 */
async function timed(stage, hold) {
  const start = performance.now();
  /** @type {Tally} */
  let tally;
  try {
    tally = await stage.run(hold);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    if (hold) hold(`${why}\n`);
    else console.error(why);
    tally = { ...none(), failed: 1 };
  }
  return { stage, tally, seconds: (performance.now() - start) / 1000 };
}

const chosen = stages.filter(({ name }) => asked.length === 0 || asked.includes(name));
const beside = new Map(
  chosen
    .filter((stage) => stage.beside)
    .map((stage) => {
      /** @type {string[]} */
      const said = [];
      return [stage, { said, outcome: timed(stage, (text) => said.push(text)) }];
    }),
);
/** @type {Awaited<ReturnType<typeof timed>>[]} */
const results = [];
for (const stage of chosen) {
  console.log(`\n── ${stage.name}: ${stage.what}`);
  const waiting = beside.get(stage);
  results.push(await (waiting?.outcome ?? timed(stage)));
  if (waiting) process.stdout.write(waiting.said.join(""));
}

const total = sum(results.map(({ tally }) => tally));
console.log();
for (const { stage, tally, seconds } of results) {
  const skipped = tally.skipped > 0 ? `, ${String(tally.skipped)} skipped` : "";
  console.log(
    `${tally.failed > 0 ? "✗" : "✓"} ${stage.name.padEnd(10)} ${seconds.toFixed(1).padStart(6)} s   ` +
      `${closingLine(tally)}${skipped}`,
  );
}
console.log(`\n${closingLine(total)}`);
process.exitCode = total.failed > 0 ? 1 : 0;
