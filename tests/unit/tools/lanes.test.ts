import { describe, expect, it } from "vitest";
import { inLanes, turns } from "../../../tools/lib/lanes.mjs";

describe("stages that speak at once", () => {
  it("are heard in their order, the first of them at once", () => {
    let heard = "";
    const { say, end } = turns(["a", "b", "c"], (text) => (heard += text));
    say("b", "b1 ");
    say("a", "a1 ");
    expect(heard).toBe("a1 ");
    say("c", "c1 ");
    end("c");
    say("a", "a2 ");
    expect(heard).toBe("a1 a2 ");
    end("a");
    expect(heard).toBe("a1 a2 b1 ");
    say("b", "b2 ");
    expect(heard).toBe("a1 a2 b1 b2 ");
    end("b");
    expect(heard).toBe("a1 a2 b1 b2 c1 ");
  });
});

describe("jobs in lanes", () => {
  it("run side by side, those of one lane in their order, and answer in the order of the list", async () => {
    const log: string[] = [];
    const settle: Record<string, () => void> = {};
    const work = async (job: string): Promise<string> => {
      log.push(job);
      await new Promise<void>((done) => (settle[job] = done));
      return job.toUpperCase();
    };
    const results = inLanes(["a1", "b1", "a2", "b2"], (job) => job.slice(0, 1), work);
    const next = async (job: string): Promise<void> => {
      settle[job]?.();
      await new Promise((done) => setTimeout(done));
    };
    expect(log).toEqual(["a1", "b1"]);
    await next("b1");
    expect(log).toEqual(["a1", "b1", "b2"]);
    await next("b2");
    await next("a1");
    expect(log).toEqual(["a1", "b1", "b2", "a2"]);
    await next("a2");
    expect(await results).toEqual(["A1", "B1", "A2", "B2"]);
  });
});
