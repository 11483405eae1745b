import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { back, deltaOf, DeltaError, forth } from "../../../src/document/kept/delta";
import { merge } from "../../../src/document/kept/merge";

/** Any JSON value, with names that are dangerous as keys of an object among its keys. */
const json = fc.jsonValue({ maxDepth: 4 });
const odd = JSON.parse('{"__proto__": {"polluted": 1}, "constructor": 2, "a": {"__proto__": 3}}') as object;

/** A plain copy, so that nothing is equal by being the same object. */
const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

describe("a delta", () => {
  it("leads forth and back between any two values (property)", () => {
    fc.assert(
      fc.property(json, json, (a, b) => {
        const from = copy({ a, same: [1, { deep: a }] });
        const to = copy({ a: b, same: [1, { deep: a }] });
        const delta = copy(deltaOf(from, to));
        expect(forth(from, delta)).toEqual(to);
        expect(back(to, delta)).toEqual(from);
        // What is the same in both stays the same object.
        expect((forth(from, delta) as typeof from).same).toBe(from.same);
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  it("is small where little changed, in long lists too", () => {
    const from = { list: Array.from({ length: 200 }, (_, x) => ({ x })) };
    const to = { list: [...from.list.slice(0, 100), { x: -1 }, ...from.list.slice(100)] };
    expect(deltaOf(from, to)).toEqual([{ at: ["list"], start: 100, out: [], in: [{ x: -1 }] }]);
  });

  it("takes keys as they are, names of an object's own machinery included", () => {
    const to = copy(odd);
    const delta = deltaOf({}, to);
    const made = forth({}, delta) as Record<string, unknown>;
    expect(JSON.stringify(made)).toBe(JSON.stringify(odd));
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
    expect(back(to, delta)).toEqual({});
  });

  it("refuses a document that it was not made for", () => {
    const delta = deltaOf({ a: { b: 1 } }, { a: { b: 2 } });
    expect(() => forth({ a: 5 }, delta)).toThrow(DeltaError);
    expect(() => forth({ a: { b: 7 } }, delta)).toThrow(/something else at a\.b/);
    const spliced = deltaOf([1, 2, 3], [1, 3]);
    expect(() => forth([1, 9, 3], spliced)).toThrow(DeltaError);
  });
});

describe("two edits of one thing", () => {
  const base = {
    name: "a",
    water: { t: 4, s: 0 },
    list: [
      { name: "x", g: 1 },
      { name: "y", g: 2 },
    ],
  };

  it("are put together where they touch different branches", () => {
    const mine = { ...base, water: { t: 9, s: 0 }, list: [{ name: "x", g: 1 }] };
    const theirs = {
      ...base,
      name: "b",
      water: { t: 4, s: 35 },
      list: [
        { name: "x", g: 5 },
        { name: "y", g: 2 },
        { name: "z", g: 3 },
      ],
    };
    const { value, clashes } = merge(base, mine, theirs);
    expect(clashes).toEqual([]);
    expect(value).toEqual({
      name: "b",
      water: { t: 9, s: 35 },
      list: [
        { name: "x", g: 5 },
        { name: "z", g: 3 },
      ],
    });
  });

  it("clash where both changed one place, or one changed what the other took out", () => {
    expect(merge(base, { ...base, name: "b" }, { ...base, name: "c" }).clashes).toEqual([["name"]]);
    const without = { ...base, list: base.list.slice(1) };
    const changed = {
      ...base,
      list: [
        { name: "x", g: 7 },
        { name: "y", g: 2 },
      ],
    };
    expect(merge(base, without, changed).clashes).toEqual([["list", "x"]]);
    expect(merge(base, changed, without).clashes).toEqual([["list", "x"]]);
    const [one, two] = [{ t: [1, 2] }, { t: [1, 2, 3] }];
    expect(merge({ t: [1] }, one, two).clashes).toEqual([["t"]]);
  });

  it("agree with either side alone, and with each other the other way round (property)", () => {
    fc.assert(
      fc.property(json, json, json, (a, b, c) => {
        const [from, mine, theirs] = [a, b, c].map((one) => copy({ one })) as [object, object, object];
        expect(merge(from, mine, from).value).toEqual(mine);
        expect(merge(from, from, theirs).value).toEqual(theirs);
        expect(merge(from, mine, mine)).toEqual({ value: mine, clashes: [] });
        const [ahead, behind] = [merge(from, mine, theirs), merge(from, theirs, mine)];
        expect(ahead.clashes.length === 0).toBe(behind.clashes.length === 0);
        if (ahead.clashes.length === 0) expect(ahead.value).toEqual(behind.value);
      }),
      { seed: 12, numRuns: 400 },
    );
  });
});
