import { describe, expect, test } from "vitest";
import { Later } from "../../../src/ui/state/runs.svelte";

function deferred<T>(): {
  promise: Promise<T>;
  resolve: (value: T) => void;
  reject: (fault: unknown) => void;
} {
  let resolve: (value: T) => void = () => undefined;
  let reject: (fault: unknown) => void = () => undefined;
  const promise = new Promise<T>((done, failed) => {
    resolve = done;
    reject = failed;
  });
  return { promise, resolve, reject };
}

describe("a figure that takes a while", () => {
  test("keeps the old answer, marked stale, until the new one is there", async () => {
    const later = new Later<number>();
    await later.ask(() => Promise.resolve(1));
    const next = deferred<number | null>();
    const asked = later.ask(() => next.promise);
    expect([later.value, later.stale]).toEqual([1, true]);
    next.resolve(2);
    await asked;
    expect([later.value, later.stale]).toEqual([2, false]);
  });

  test("an older answer that comes late is dropped, and so is its failure", async () => {
    const later = new Later<number>();
    const [old, older] = [deferred<number | null>(), deferred<number | null>()];
    const first = later.ask(() => older.promise);
    const second = later.ask(() => old.promise);
    const third = later.ask(() => Promise.resolve(3));
    old.reject(new Error("late"));
    older.resolve(1);
    await Promise.all([first, second, third]);
    expect([later.value, later.failure, later.stale]).toEqual([3, null, false]);
  });

  test("an answer to what was asked before the question changed is shown, but still as an old one", async () => {
    const later = new Later<number>();
    const [first, second] = [deferred<number | null>(), deferred<number | null>()];
    const one = later.ask(() => first.promise);
    later.outdate();
    first.resolve(1);
    await one;
    expect([later.value, later.stale]).toEqual([1, true]);
    const two = later.ask(() => second.promise);
    second.resolve(2);
    await two;
    expect([later.value, later.stale]).toEqual([2, false]);
  });

  test("a failure is said, and no number stands beside it", async () => {
    const later = new Later<number>();
    await later.ask(() => Promise.resolve(1));
    await later.ask(() => Promise.reject(new Error("the worker stopped")));
    expect([later.value, later.failure]).toEqual([null, "the worker stopped"]);
  });
});
