import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { Pace } from "../../../src/ui/state";

/** Work that ends when it is told to. */
function work(name: string, begun: string[]): { readonly start: () => Promise<void>; end: () => void } {
  let end: () => void = () => undefined;
  const start = (): Promise<void> => {
    begun.push(name);
    return new Promise((then) => (end = then));
  };
  return { start, end: () => end() };
}

describe("work that is mostly over before the hand has moved on", () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it("begins at once, and of what comes meanwhile only the newest begins when it has ended", async () => {
    const begun: string[] = [];
    const pace = new Pace();
    const [a, b, c] = [work("a", begun), work("b", begun), work("c", begun)];
    pace.start(a.start);
    pace.start(b.start);
    pace.start(c.start);
    expect(begun).toEqual(["a"]);
    a.end();
    await vi.advanceTimersByTimeAsync(0);
    expect(begun).toEqual(["a", "c"]);
  });

  it("does not wait for long work when the hand has rested, nor begin the same twice when that ends", async () => {
    const begun: string[] = [];
    const pace = new Pace();
    const [a, b] = [work("a", begun), work("b", begun)];
    pace.start(a.start);
    pace.start(b.start);
    await vi.advanceTimersByTimeAsync(1000);
    expect(begun).toEqual(["a", "b"]);
    a.end();
    b.end();
    await vi.advanceTimersByTimeAsync(1000);
    expect(begun).toEqual(["a", "b"]);
  });

  it("takes a start back that has not begun", async () => {
    const begun: string[] = [];
    const pace = new Pace();
    const [a, b] = [work("a", begun), work("b", begun)];
    pace.start(a.start);
    pace.start(b.start)();
    a.end();
    await vi.advanceTimersByTimeAsync(1000);
    expect(begun).toEqual(["a"]);
  });
});
