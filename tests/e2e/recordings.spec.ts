import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import type { RunJob } from "../../src/runner/protocol";
import { parseScenario } from "../../src/document";
import type { Scenario } from "../../src/document";
import { expect, test } from "./fixture";
import { open } from "./page";

const root = fileURLToPath(new URL("../../", import.meta.url));
const stored = JSON.parse(readFileSync(`${root}tests/golden/recordings.json`, "utf8")) as Record<
  string,
  { readonly swim: string; readonly release: string }
>;

interface Tools {
  readonly ModelClient: typeof import("../../src/runner/client").ModelClient;
  readonly GrowingRecording: typeof import("../../src/model/motion").GrowingRecording;
}
declare global {
  var tools: Tools | undefined;
}

/** What talks to a worker, as one script that defines `tools`. */
async function toolsScript(): Promise<string> {
  const { outputFiles } = await build({
    absWorkingDir: root,
    stdin: {
      contents:
        'export { ModelClient } from "./src/runner/client"; export { GrowingRecording } from "./src/model/motion";',
      resolveDir: root,
      loader: "ts",
    },
    bundle: true,
    write: false,
    format: "iife",
    globalName: "tools",
    logLevel: "error",
    logOverride: { "empty-import-meta": "silent" },
  });
  return `${outputFiles[0]?.text ?? ""}\nglobalThis.tools = tools;`;
}

/** Each scenario's two recordings as tests/golden makes them, by the worker that the page runs. */
const jobs = (scenario: Scenario): Record<"swim" | "release", RunJob> => ({
  swim: { kind: "swim", scenario },
  release: { kind: "tub", scenario, tub: { depth: 0.5, pitch: "rest", duration: 4 } },
});

test("the page's worker records every scenario as it is stored, bit for bit", async ({ page }) => {
  await open(page, "weigh", true);
  await expect.poll(() => page.workers().length).toBeGreaterThan(0);
  const worker = page.workers()[0]?.url() ?? "";
  await page.evaluate(await toolsScript());
  const files = readdirSync(`${root}scenarios`).filter((name) => name.endsWith(".json"));
  const asked = files.map((name) => {
    const read = parseScenario(readFileSync(`${root}scenarios/${name}`, "utf8"));
    if (!read.ok) throw new Error(`${name} is refused`);
    return { name, jobs: jobs(read.scenario) };
  });
  const found = await page.evaluate(
    async ({ asked, worker }) => {
      if (globalThis.tools === undefined) throw new Error("The script of this test did not load.");
      const { ModelClient, GrowingRecording } = globalThis.tools;
      const client = new ModelClient({ start: () => new Worker(worker, { type: "module" }) });
      const hash = async (job: RunJob): Promise<string> => {
        let recording: InstanceType<Tools["GrowingRecording"]> | null = null;
        await client.run(job, {
          meta: (meta) => (recording = new GrowingRecording(meta)),
          chunk: (chunk) => recording?.append(chunk),
        });
        return (recording as InstanceType<Tools["GrowingRecording"]> | null)?.hash() ?? "nothing";
      };
      const out: Record<string, { swim: string; release: string }> = {};
      for (const { name, jobs } of asked)
        out[name] = { swim: await hash(jobs.swim), release: await hash(jobs.release) };
      return out;
    },
    { asked, worker },
  );
  expect(found).toEqual(stored);
});
