import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { STEPS } from "../../../src/ui/guide/steps";
import { GLOSSARY } from "../../../src/ui/views/teach/glossary";
import { CATALOGUES, Speaker, SPOKEN } from "../../../src/ui/words";

/** The parts of the page whose text is all in the catalogue. */
const files = ["src/ui/views/teach", "src/ui/guide"].flatMap((folder) =>
  readdirSync(folder).map((file) => `${folder}/${file}`),
);
const code = files.map((file) => readFileSync(file, "utf8")).join("\n");
const formsOf = (entry: string | { readonly one: string; readonly other: string }): readonly string[] =>
  typeof entry === "string" ? [entry] : [entry.one, entry.other];
const places = (text: string): readonly string[] =>
  [...text.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();

describe("the catalogue", () => {
  const keys = Object.keys(CATALOGUES.en) as (keyof typeof CATALOGUES.en)[];

  it("has the same keys in every language, none empty, with the same places", () => {
    for (const language of SPOKEN) {
      const catalogue = CATALOGUES[language];
      expect(Object.keys(catalogue).sort()).toEqual([...keys].sort());
      for (const key of keys) {
        const forms = formsOf(catalogue[key]);
        for (const form of forms) expect(form.trim(), `${language} ${key}`).not.toBe("");
        const wanted = formsOf(CATALOGUES.en[key]).at(-1) ?? "";
        expect(places(forms.at(-1) ?? ""), `${language} ${key}`).toEqual(places(wanted));
      }
    }
  });

  it("has no key that nothing uses", () => {
    // Keys that are put together from a part: those of the pages, and of the guide's steps.
    const steps = STEPS.flatMap(({ key }) => [`guide.aim.${key}`, `guide.do.${key}`]);
    const used = (key: string): boolean =>
      code.includes(`"${key}"`) ||
      (key.startsWith("nav.") && code.includes("`nav.${page}`")) ||
      steps.includes(key);
    expect(keys.filter((key) => !used(key))).toEqual([]);
  });

  it("has every word that a part of Teach, or the guide, says", () => {
    // What stands between tags of a component is text; all of it comes from the catalogue.
    const stray = files
      .filter((file) => file.endsWith(".svelte"))
      .flatMap((file) => {
        const text = readFileSync(file, "utf8");
        const markup = text.replace(/<script[\s\S]*?<\/script>|<style[\s\S]*?<\/style>|<!--[\s\S]*?-->/g, "");
        const bare = markup.replace(/\{(?:[^{}]|\{(?:[^{}]|\{[^{}]*\})*\})*\}/g, "");
        return [...bare.matchAll(/>([^<>]*[A-Za-z]{3,}[^<>]*)</g)].map(
          ([, words = ""]) => `${file}: ${words.trim()}`,
        );
      });
    expect(stray).toEqual([]);
  });

  it("tells numbers in the language's own way", () => {
    const [en, de] = [new Speaker("en"), new Speaker("de")];
    expect(en.number(-1234.5, 1)).toBe("\u22121234.5");
    expect(de.number(-1234.5, 1)).toBe("\u22121234,5");
    expect(de.number(-0.001, 2)).toBe("0,00");
    expect(de.quantity(2, "g", 1)).toBe("2,0\u202fg");
    expect(() => de.number(NaN, 1)).toThrow();
    expect([1, 2].map((count) => en.tell("exercise.tries", { count }))).toEqual(["1 try", "2 tries"]);
    expect([1, 2].map((count) => de.tell("exercise.tries", { count }))).toEqual(["1 Versuch", "2 Versuche"]);
  });
});

it("the words of the trade stand once each, with a meaning, and no word is its own twin", () => {
  for (const language of SPOKEN) {
    const terms = GLOSSARY[language];
    expect(terms.length).toBeGreaterThanOrEqual(25);
    expect(new Set(terms.map(({ word }) => word)).size).toBe(terms.length);
    for (const { word, also, means } of terms) {
      expect(means).toMatch(/\.$/);
      expect(also).not.toContain(word);
    }
  }
});
