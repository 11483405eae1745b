import { expect, it } from "vitest";
import { parseScenario, serialize } from "../../../src/document";
import { startRun } from "../../../src/model/motion";
import { secondsLeft, swimSetup, waitWords } from "../../../src/runner";
import type { ModelClient, RunJob, RunSink } from "../../../src/runner";
import { main } from "../../../src/runner/main";
import { RunSlot } from "../../../src/ui/state/runs.svelte";
import type { Worked } from "../../../src/ui/state/workspace.svelte";
import { sampleScenario } from "../../lib/sample";

const scenario = sampleScenario((draft) => {
  draft.cadence = [{ do: "reel", speed_m_s: 0.8, for_s: 6 }];
});
const text = serialize(scenario);

it("what is left of a run follows from what has been done", () => {
  expect(secondsLeft(30, 0.25)).toBeCloseTo(90, 12);
  expect(secondsLeft(60, 0.5)).toBeCloseTo(60, 12);
  // Neither in the first seconds, nor at the end, nor before anything is done.
  expect(secondsLeft(1, 0.01)).toBeNull();
  expect(secondsLeft(30, 1)).toBeNull();
  expect(secondsLeft(30, 0)).toBeNull();
});

it("a wait is told in round words", () => {
  const words = [0.1, 12, 88, 95, 600, 5399, 7300].map(waitWords);
  expect(words.slice(0, 4)).toEqual(["about 5 s", "about 10 s", "about 90 s", "about 2 minutes"]);
  expect(words.slice(4)).toEqual(["about 10 minutes", "about 2 hours", "about 2 hours"]);
});

it("the command says beside its answer how much longer a long run takes, and the answer stays as it is", () => {
  const command = (clock?: () => number) => {
    let out = "";
    let err = "";
    main(["a.json", "--only", "run", "--json"], {
      out: (words) => (out += words),
      err: (words) => (err += words),
      read: () => Buffer.from(text),
      tryToWrite: () => undefined,
      write: () => undefined,
      ...(clock === undefined ? {} : { now: clock }),
    });
    return { out, err };
  };
  let time = 0;
  const slow = command(() => (time += 5));
  const still = command();
  expect(slow.out).toBe(still.out);
  expect(still.err).toBe("");
  // Every 5 s another 120 of 361 frames: after 5 s a third is done, so that 10 s are left; 10 s later it says so again.
  expect(slow.err).toMatch(
    /^The run is 33 % done: about 10 s more\.\nThe run is 9\d % done: about 5 s more\.\n$/,
  );
});

it("the page's run says how much longer it takes while it runs, and nothing when it is there", async () => {
  const read = parseScenario(text);
  if (!read.ok) throw new Error("refused");
  let time = 0;
  const clock = performance.now.bind(performance);
  performance.now = () => time;
  const frame = globalThis.requestAnimationFrame;
  globalThis.requestAnimationFrame = () => 1;
  globalThis.cancelAnimationFrame = () => undefined;
  try {
    const told: (string | null)[] = [];
    const slot: RunSlot = new RunSlot(
      {
        run: (_: RunJob, sink: RunSink) => {
          const run = startRun(swimSetup(read.compiled));
          void sink.meta(run.meta);
          while (!run.done) {
            time += 20_000;
            void sink.chunk(run.advance(90));
            told.push(slot.wait);
          }
          return Promise.resolve(true);
        },
      } as unknown as ModelClient,
      "swim",
      () => 0,
    );
    await slot.record({ kind: "swim", scenario }, {} as Worked);
    // Four parts of 20 s each.
    expect(told.slice(0, 3)).toEqual(["about 60 s", "about 40 s", "about 20 s"]);
    expect(slot.wait).toBeNull();
    expect(slot.failure).toBeNull();
  } finally {
    performance.now = clock;
    globalThis.requestAnimationFrame = frame;
  }
});
