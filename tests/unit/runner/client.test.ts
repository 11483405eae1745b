import { expose } from "comlink";
import { afterEach, describe, expect, it } from "vitest";
import { compile } from "../../../src/document";
import type { RecordingChunk, RecordingMeta } from "../../../src/model/motion";
import { GrowingRecording, record } from "../../../src/model/motion";
import { ModelClient, swimSetup, tubSetup } from "../../../src/runner";
import { createService } from "../../../src/runner/service";
import { sampleScenario } from "../../lib/sample";

/**
 * The client and the worker's service on the two ends of a real message channel, in one thread: everything but
 * the starting of the thread itself, which the browser tests do.
 */
const open: MessagePort[] = [];
const clients: ModelClient[] = [];
function connected(count = { started: 0 }, patience?: number): ModelClient {
  const client = new ModelClient({
    ...(patience === undefined ? {} : { patience }),
    start: () => {
      count.started++;
      const { port1, port2 } = new MessageChannel();
      open.push(port1, port2);
      expose(createService(), port2);
      port1.start();
      return Object.assign(port1, { terminate: () => port1.close() });
    },
  });
  clients.push(client);
  return client;
}
afterEach(() => {
  clients.splice(0).forEach((client) => {
    client.close();
  });
  open.splice(0).forEach((port) => {
    port.close();
  });
});

const scenario = sampleScenario((draft) => {
  draft.bench = [];
  draft.cadence = [
    { do: "settle", for_s: 0.2 },
    { do: "reel", speed_m_s: 0.8, for_s: 0.8 },
  ];
});
const tub = { depth: 0.5, pitch: "rest" as const, duration: 0.5 };

/** Collects a run into a recording. */
function collector() {
  const chunks: RecordingChunk[] = [];
  let meta: RecordingMeta | null = null;
  return {
    sink: {
      meta: (one: RecordingMeta) => {
        meta = one;
      },
      chunk: (one: RecordingChunk) => {
        chunks.push(one);
      },
    },
    chunks,
    recording(begun?: GrowingRecording): GrowingRecording {
      if (meta === null) throw new Error("no meta");
      const recording = begun?.atLength(meta) ?? new GrowingRecording(meta);
      for (const chunk of chunks) recording.append(chunk);
      return recording;
    },
  };
}

describe("the page's door to the worker", () => {
  it("streams a swim that equals the same run made at once, bit for bit", async () => {
    const heard = collector();
    expect(await connected().run({ kind: "swim", scenario }, heard.sink)).toBe(true);
    expect(heard.chunks.length).toBeGreaterThan(5);
    expect(heard.recording().hash()).toBe(record(swimSetup(compile(scenario))).hash());
  });

  it("streams a tub release", async () => {
    const heard = collector();
    expect(await connected().run({ kind: "tub", scenario, tub }, heard.sink)).toBe(true);
    const whole = record(tubSetup(compile(scenario), tub));
    expect(heard.recording().hash()).toBe(whole.hash());
    expect(whole.at(0).eye.z).toBeCloseTo(-0.5, 9);
  });

  it("streams only what follows the frames that are known, the same bit for bit", async () => {
    const heard = collector();
    const known = 11;
    expect(await connected().run({ kind: "tub", scenario, tub, known }, heard.sink)).toBe(true);
    expect(heard.chunks[0]?.firstFrame).toBe(known);
    const rest = heard.recording(record(tubSetup(compile(scenario), { ...tub, duration: 1 / 6 })));
    expect(rest.complete).toBe(true);
    expect(rest.hash()).toBe(record(tubSetup(compile(scenario), tub)).hash());
  });

  it("cancels the older run where a newer one comes in its lane, and nothing of the old arrives after", async () => {
    const client = connected();
    const long = { ...scenario, cadence: [{ do: "settle" as const, for_s: 600 }] };
    const [first, second] = [collector(), collector()];
    const older = client.run({ kind: "swim", scenario: long }, first.sink);
    const newer = client.run({ kind: "tub", scenario, tub }, second.sink);
    expect(await Promise.all([older, newer])).toEqual([null, true]);
    expect(first.chunks).toEqual([]);
    expect(second.recording().frames).toBe(31);
  });

  it("cancels in the middle of a run", async () => {
    const client = connected();
    const long = { ...scenario, cadence: [{ do: "settle" as const, for_s: 600 }] };
    let arrived = 0;
    const run = client.run(
      { kind: "swim", scenario: long },
      {
        meta: () => undefined,
        chunk: () => {
          arrived++;
          if (arrived === 3) client.cancel("run");
        },
      },
    );
    expect(await run).toBeNull();
    expect(arrived).toBe(3);
  });

  it("lets lanes run side by side", async () => {
    const client = connected();
    const [a, b] = [collector(), collector()];
    const both = [
      client.run({ kind: "tub", scenario, tub }, a.sink, "one"),
      client.run({ kind: "tub", scenario, tub }, b.sink, "other"),
    ];
    expect(await Promise.all(both)).toEqual([true, true]);
    expect(a.recording().hash()).toBe(b.recording().hash());
  });

  it("answers rise and band side by side", async () => {
    const client = connected();
    const [rise, band] = await Promise.all([
      client.rise(scenario),
      client.band(scenario, { samples: 500, seed: 3 }),
    ]);
    expect(rise?.speed).toBeGreaterThan(0);
    expect(band?.chanceOfSinking).toBeGreaterThanOrEqual(0);
  });

  it("rejects with the model's message, and goes on after it", async () => {
    const client = connected();
    const impossible = { ...scenario, bait: { ...scenario.bait, body: {} } };
    await expect(client.rise(impossible)).rejects.toThrow(/no density/);
    expect((await client.rise(scenario))?.steady).toBe(true);
  });

  it("starts one worker, and another after the first was closed", async () => {
    const count = { started: 0 };
    const client = connected(count);
    await client.rise(scenario);
    await client.rise(scenario);
    expect(count.started).toBe(1);
    const pending = client.run({ kind: "swim", scenario }, collector().sink);
    client.close();
    await expect(pending).rejects.toThrow(/was closed/);
    await client.rise(scenario);
    expect(count.started).toBe(2);
  });

  it("does not wait for ever for a worker that has ended without a word, and starts another", async () => {
    let mute = true;
    const client = new ModelClient({
      patience: 120,
      start: () => {
        const { port1, port2 } = new MessageChannel();
        open.push(port1, port2);
        if (!mute) expose(createService(), port2);
        port1.start();
        return Object.assign(port1, { terminate: () => port1.close() });
      },
    });
    clients.push(client);
    await expect(client.rise(scenario)).rejects.toThrow(/has not answered for .* s, and was ended/);
    mute = false;
    expect((await client.rise(scenario))?.steady).toBe(true);
  });

  it("does not end a worker that is long at work and gives signs of life", async () => {
    const count = { started: 0 };
    const client = connected(count, 60);
    const long = { ...scenario, cadence: [{ do: "settle" as const, for_s: 8 }] };
    const heard = collector();
    const since = performance.now();
    expect(await client.run({ kind: "swim", scenario: long }, heard.sink)).toBe(true);
    expect(performance.now() - since).toBeGreaterThan(60);
    expect(count.started).toBe(1);
  });

  it("says so where a worker cannot be started, or ends with an error", async () => {
    const refused = new ModelClient({
      start: () => {
        throw new Error("the browser forbids it");
      },
    });
    await expect(refused.rise(scenario)).rejects.toThrow(/could not be started: the browser forbids it/);

    const ports: MessagePort[] = [];
    const missing = new ModelClient({
      start: () => {
        const { port1, port2 } = new MessageChannel();
        open.push(port1, port2);
        ports.push(port1);
        return Object.assign(port1, { terminate: () => port1.close() });
      },
    });
    clients.push(missing);
    const pending = missing.rise(scenario);
    ports[0]?.dispatchEvent(new Event("error"));
    await expect(pending).rejects.toThrow(/could not be started. Reload the page/);
    const unread = missing.rise(scenario);
    ports[1]?.dispatchEvent(new Event("messageerror"));
    await expect(unread).rejects.toThrow(/could not be read/);
  });
});
