import fc from "fast-check";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { deflateSync } from "fflate";
import { describe, expect, it } from "vitest";
import {
  emptyBox,
  fingerprint,
  linkOf,
  openLibrary,
  parseScenario,
  readLibraryBait,
  readLink,
  serializeLibrary,
  toBase64,
} from "../../src/document";
import type { LibraryBait, Scenario } from "../../src/document";

/** Links and files of baits come from others: whatever has happened to them, they give the bait itself or a refusal in words. */

const scenarios: readonly Scenario[] = readdirSync("scenarios")
  .filter((name) => name.endsWith(".json"))
  .map((name) => {
    const parsed = parseScenario(readFileSync(join("scenarios", name), "utf8"));
    if (!parsed.ok) throw new Error(name);
    return parsed.scenario;
  });

const links = scenarios.map((one) => `#${linkOf(one)}`);

/** A text with something done to it. */
const spoil = (text: string): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom("replace", "cut", "drop", "double", "insert", "swap"),
      fc.nat(text.length - 1),
      fc.integer({ min: 1, max: 40 }),
      fc.string({ minLength: 1, maxLength: 6, unit: "grapheme" }),
    )
    .map(([kind, at, length, put]) => {
      const [before, piece, after] = [
        text.slice(0, at),
        text.slice(at, at + length),
        text.slice(at + length),
      ];
      if (kind === "replace") return before + put + after;
      if (kind === "cut") return before;
      if (kind === "drop") return before + after;
      if (kind === "double") return before + piece + piece + after;
      if (kind === "insert") return before + put + piece + after;
      return before + after.slice(0, length) + piece + after.slice(length);
    });

describe("a link", () => {
  it("gives back the bait that it was made of, with and without '#', in characters that no program changes", () => {
    for (const scenario of scenarios) {
      const link = linkOf(scenario);
      expect(link).toMatch(/^[\w.=-]+$/);
      for (const hash of [link, `#${link}`]) expect(readLink(hash)).toMatchObject({ ok: true, scenario });
      // Some mail programs break longer addresses: the page tells the length.
      expect(link.length).toBeLessThan(8000);
    }
  });

  it("is refused in words, or is still the same bait, after any of 1,000 changes", () => {
    let refused = 0;
    const spoilt = fc.nat(scenarios.length - 1).chain((i) => spoil(links[i]!).map((link) => ({ i, link })));
    fc.assert(
      fc.property(spoilt, ({ i, link }) => {
        const read = readLink(link);
        if (read.ok) expect(read.scenario).toEqual(scenarios[i]);
        else {
          refused++;
          expect(read.why).toMatch(/^[A-Z].*\.$/s);
        }
      }),
      { numRuns: 1000, seed: 20_261_129 },
    );
    expect(refused).toBeGreaterThan(900);
  });

  it("is refused where it unpacks to more than a file may hold, is too long, or is of a newer release", () => {
    const large = " ".repeat(8_000_000);
    const bomb = toBase64(deflateSync(new TextEncoder().encode(large), { level: 9 }));
    expect(bomb.length).toBeLessThan(100_000);
    expect(readLink(`bait=1.${fingerprint(large)}.${bomb}`)).toMatchObject({ ok: false });
    expect(readLink(`bait=1.${"0".repeat(16)}.${"A".repeat(500_000)}`)).toMatchObject({
      ok: false,
      why: expect.stringContaining("too long") as string,
    });
    expect(readLink(linkOf(scenarios[0]!).replace("bait=1.", "bait=2."))).toMatchObject({
      ok: false,
      why: expect.stringContaining("newer release") as string,
    });
  });

  it("with a bait that the program refuses says what is wrong with it", () => {
    const text = JSON.stringify({ format: "trimwright/scenario", version: 1, name: "No bait" });
    const link = `bait=1.${fingerprint(text)}.${toBase64(deflateSync(new TextEncoder().encode(text)))}`;
    expect(readLink(link)).toMatchObject({ ok: false, why: expect.stringContaining("bait") as string });
  });
});

describe("a file of many baits", () => {
  const entries = scenarios.map((scenario, i): LibraryBait => ({
    scenario,
    tags: i % 2 === 0 ? ["first run", "tail-heavy"] : [],
    versions: i === 0 ? [{ name: "before paint", made: 1_700_000_000_000, scenario }] : [],
    photos: i === 1 ? { bait: "/9j/4AAQ" } : {},
  }));
  const text = serializeLibrary(entries, { ...emptyBox("bench drawer"), drills_mm: [3, 4] });

  it("gives back its baits with their tags, versions and photos, and the box", () => {
    const opened = openLibrary(text);
    if (!opened.ok) throw new Error(opened.problems[0]?.message);
    expect(opened.box).toMatchObject({ name: "bench drawer", drills_mm: [3, 4] });
    expect(opened.baits.map(readLibraryBait)).toEqual(entries.map((bait) => ({ ok: true, bait })));
  });

  it("is refused in words after any of 1,000 changes, or holds only baits that can be", () => {
    const small = serializeLibrary(entries.slice(1, 2), null);
    fc.assert(
      fc.property(spoil(small), (spoilt) => {
        const opened = openLibrary(spoilt);
        if (!opened.ok) {
          expect(opened.problems[0]?.message).toMatch(/\S/);
          return;
        }
        for (const read of opened.baits.map(readLibraryBait)) {
          if (read.ok) expect(read.bait.scenario.format).toBe("trimwright/scenario");
          else expect(read.why).toMatch(/\S/);
        }
      }),
      { numRuns: 1000, seed: 20_261_129 },
    );
  });

  it("keeps the good baits where one is spoilt, and names the other", () => {
    const value = JSON.parse(text) as { baits: { scenario: { bait: { length_mm: number } } }[] };
    value.baits[2]!.scenario.bait.length_mm = -5;
    const opened = openLibrary(JSON.stringify(value));
    if (!opened.ok) throw new Error("refused");
    const read = opened.baits.map(readLibraryBait);
    expect(read.filter((one) => !one.ok)).toEqual([
      {
        ok: false,
        name: scenarios[2]!.name,
        why: expect.stringContaining("bait.length_mm") as string,
      },
    ]);
  });

  it("of 2,001 baits is refused, and so is one with a foreign key", () => {
    const many = `{"format":"trimwright/baits","version":1,"baits":[${Array(2001).fill("{}").join()}]}`;
    expect(openLibrary(many)).toMatchObject({ ok: false });
    expect(openLibrary('{"format":"trimwright/baits","version":1,"baits":[],"script":"x"}')).toMatchObject({
      ok: false,
    });
  });
});
