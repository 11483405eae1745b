import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MOMENTS } from "../../../src/document";
import { materials } from "../../../src/model/materials";
import { REASONS } from "../../../src/model/tow";
import { STEPS } from "../../../src/ui/guide/steps";
import { lessonJsonSchema } from "../../../src/lesson";
import { texts as german } from "../../../src/ui/words/form/de";
import { Below, LANGUAGES, Part, Speaker } from "../../../src/ui/words/base";
import type { Entry, Texts } from "../../../src/ui/words/base";
import { steps as drawSteps } from "../../../src/ui/words/draw/steps";
import { FILE } from "../../../src/ui/words/file";
import { texts as fileInGerman } from "../../../src/languages/de";
import { GLOSSARY, termsIn } from "../../../src/ui/words/glossary";

/** The rooms of the page whose text is all in the catalogue, and the part of it that each room speaks. */
const ROOMS: Readonly<Record<string, readonly string[]>> = {
  teach: ["src/ui/views/teach"],
  draw: readdirSync("src/ui/views/draw")
    .filter((name) => name !== "trace")
    .map((name) => `src/ui/views/draw/${name}`),
  page: [
    "src/ui/App.svelte",
    ...["Header", "HeaderMenu", "ViewTabs", "ViewFrame", "Welcome", "SkipLinks", "Kept", "NewRelease"],
    ...["LateDialog", "Modal", "FileAsked", "Notice", "Spoken", "GuideSlot", "WhySlot"],
    "src/ui/views/parts/Failed.svelte",
    "src/ui/views/parts/Guard.svelte",
    "src/ui/views/view.ts",
    ...["draw", "weigh", "float", "swim", "reach", "make", "teach"].map(
      (view) => `src/ui/views/${view}/index.ts`,
    ),
  ].map((place) => (place.includes("/") ? place : `src/ui/shell/${place}.svelte`)),
  weigh: ["src/ui/views/weigh"],
  menu: ["src/ui/shell/MenuInside.svelte"],
  float: ["src/ui/views/float"],
  windows: ["KeysDialog", "ProblemsDialog", "OverwriteDialog", "LinkDialog", "ExamplesDialog"]
    .map((name) => `src/ui/shell/${name}.svelte`)
    .concat("src/ui/shell/keys.ts", "src/ui/shell/actions.ts", "src/ui/views/parts/WhyPanel.svelte")
    .concat("src/ui/shell/ViewPictures.svelte", "src/ui/shell/picture"),
  swim: ["src/ui/views/swim"],
  run: ["src/ui/views/swim/whys.ts"],
  begin: ["src/ui/shell/NewBait.svelte"],
  reach: ["src/ui/views/reach"],
  make: ["src/ui/views/make"],
  parts: [
    ...["Asked", "BaitInputs", "BibAngle", "Caution", "Forces", "Inputs", "MaterialSelect", "Moment"],
    ...["NumberField", "NumberInput", "Plots", "Readout", "Section", "Switches", "Verdict"],
    ...["Fold", "Saves"],
  ]
    .map((name) => `src/ui/views/parts/${name}.svelte`)
    .concat("src/ui/plots"),
  forms: [
    ...["BigField", "CellField", "DepthAgainst", "Form", "FormFields", "FormList", "PointList"],
    "WishFields",
  ]
    .map((name) => `src/ui/views/parts/${name}.svelte`)
    .concat("src/ui/views/parts/depth-against.ts", "src/ui/views/parts/form.ts"),
  why: ["src/ui/views/parts/whys.ts", "src/ui/views/float/whys.ts"],
  recipe: ["src/ui/shell/Recipe.svelte", "src/ui/shell/recipe"],
  figures: [
    ...["figures", "against.ts", "app.svelte.ts", "baits.svelte.ts", "box.svelte.ts", "disk.ts", "fault.ts"],
    ...["files.svelte.ts", "kept-words.ts", "runs.svelte.ts", "session.svelte.ts"],
    ...["telling.svelte.ts", "units.ts", "why.svelte.ts"],
    ...["../kept/start.ts", "../kept/words.ts", "../shell/Spoken.svelte"],
  ].map((place) => join("src/ui/state", place)),
  reasons: ["src/ui/state/figures/why"],
  keeping: ["src/ui/state/library.svelte.ts", "src/ui/state/shelf.svelte.ts", "src/ui/kept/earlier.ts"],
  maker: ["src/ui/maker/planned.ts"],
  stage: ["src/ui/stage"],
  baits: ["src/ui/shell/MyBaits.svelte", "src/ui/shell/LibraryFile.svelte", "src/ui/shell/list"],
  guide: ["src/ui/guide"],
  film: ["src/ui/views/swim/FilmForm.svelte", "src/ui/views/swim/film.ts"],
  trace: ["src/ui/views/draw/trace"],
  glossary: ["src/ui/views/teach/Glossary.svelte"],
};

const filesOf = (place: string): readonly string[] =>
  /\.(ts|svelte)$/.test(place)
    ? [place]
    : readdirSync(place, { recursive: true, encoding: "utf8" })
        .map((file) => join(place, file))
        .filter((file) => /\.(ts|svelte)$/.test(file));
const textsOf = async (part: string, language: string): Promise<Texts> =>
  ((await import(`../../../src/ui/words/${part}/${language}.ts`)) as { texts: Texts }).texts;
const formsOf = (entry: Entry | undefined): readonly string[] =>
  entry === undefined ? [] : typeof entry === "string" ? [entry] : [entry.one, entry.other];
const places = (text: string): readonly string[] =>
  [...text.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();
const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** Keys that a file puts together: `nav.${page}` stands for all that begin with `nav.`. */
const code = filesOf("src/ui")
  .filter((file) => !file.startsWith("src/ui/words/"))
  .map((file) => readFileSync(file, "utf8"))
  .join("\n");
const patterns = (code: string): readonly RegExp[] =>
  [...code.matchAll(/`((?:\w+\.)+)\$\{[^}]*\}(\.\w+)?`/g)].map(
    ([, from = "", to = ""]) => new RegExp(`^${escaped(from)}[^.]+${escaped(to)}$`),
  );

/** What a component says itself instead of asking the catalogue: text between tags, and attributes that are read or heard. */
function strayIn(file: string): readonly string[] {
  if (!file.endsWith(".svelte")) return [];
  const markup = readFileSync(file, "utf8").replace(
    // What stands on a key of the keyboard, and the page's own name, are the same in every language.
    /<script[\s\S]*?<\/script>|<style[\s\S]*?<\/style>|<!--[\s\S]*?-->|<kbd>\w+<\/kbd>|&[en]\w+;|(?<=>)Trimwright(?=<)/g,
    "",
  );
  const bare = markup.replace(/\{(?:[^{}]|\{(?:[^{}]|\{[^{}]*\})*\})*\}/g, "");
  const between = [...bare.matchAll(/>([^<>]*[A-Za-z]{3,}[^<>]*)</g)].map(([, words = ""]) => words.trim());
  const attributes = [
    ...markup.matchAll(/\s(?:aria-label|aria-valuetext|title|alt|placeholder|label|what)="([^"]*)"/g),
  ]
    .map(([, words = ""]) => words.replaceAll(/\{[^}]*\}/g, ""))
    .filter((words) => /[A-Za-z]{2,}/.test(words));
  return [...between, ...attributes].map((words) => `${file}: ${words}`);
}

/** How a room names a step of undo: what stands there is kept with the bait, in English, whatever language is read. */
const UNDO =
  /(?:\.edit\(\s*(?:(?:"[^"]*"|`[^`]*`|\w+),\s*|(?="[^"]*",\s*\())|(?<![.#])\bstep\(\s*)(?:"([^"]*)"|`([^`]*)`)/g;
/** Names inside the program, which the page shows in words of its own: moments, materials, small changes, steps of the bench. */
const NAMES: ReadonlySet<string> = new Set<string>([
  ...MOMENTS,
  ...materials.map(({ name }) => name),
  ...REASONS,
  ...["1 mm aft", "1 mm up", "one coat more", "one hook size up", "one hook size down"],
  ...["lay out", "first test", "final test"],
]);

/** Sentences in the code of a room: its messages belong into the catalogue too. What is thrown is for whoever mends it. */
function saidIn(file: string): readonly string[] {
  const source = readFileSync(file, "utf8");
  const script = file.endsWith(".svelte") ? (/<script[\s\S]*?<\/script>/.exec(source)?.[0] ?? "") : source;
  const code = script
    .replaceAll(/\/\*[\s\S]*?\*\/|(?<!:)\/\/.*$/gm, "")
    .replaceAll(/throw new \w+\([\s\S]*?\);/g, "")
    .replaceAll(UNDO, "")
    .replaceAll(/"Source Sans 3"|`color-mix\([^`]*`/g, "")
    .replaceAll("<?xml version=", "")
    // Names on the keys of a keyboard, selectors, and what is said of types, are no text of the page.
    .replaceAll(/\b(?:(?:keys|shown): |generics=)"[^"]*"/g, "")
    .replaceAll(/\.(?:closest|matches|querySelector(?:All)?)\([^)]*(?:\)[^)"]+)*\)/g, "");
  return [...code.matchAll(/(["`])((?:(?!\1)(?:[^\\\n]|\\.))*)\1/g)]
    .map(([, , words = ""]) => words.replaceAll(/\$\{[^}]*\}/g, "…"))
    .filter((words) => !NAMES.has(words))
    .filter((words) => /[A-Za-z]{2,}[,.]? [A-Za-z‘]{2,}/.test(words))
    .map((words) => `${file}: ${words}`);
}

describe.each(Object.entries(ROOMS))("the part ‘%s’ of the catalogue", (part, rooms) => {
  const files = rooms.flatMap(filesOf);

  it("has the same keys in every language, none empty, with the same places", async () => {
    const english = await textsOf(part, "en");
    const keys = Object.keys(english);
    for (const language of LANGUAGES) {
      const texts = await textsOf(part, language);
      expect(Object.keys(texts).sort()).toEqual([...keys].sort());
      for (const key of keys) {
        for (const form of formsOf(texts[key])) expect(form.trim(), `${language} ${key}`).not.toBe("");
        expect(places(formsOf(texts[key]).at(-1) ?? ""), `${language} ${key}`).toEqual(
          places(formsOf(english[key]).at(-1) ?? ""),
        );
      }
    }
  });

  it("has no key that nothing uses", async () => {
    // `termsIn` goes through all words of the trade.
    const composed = patterns(code);
    const used = (key: string): boolean =>
      code.includes(`"${key}"`) || code.includes("termsIn(") || composed.some((pattern) => pattern.test(key));
    expect(Object.keys(await textsOf(part, "en")).filter((key) => !used(key))).toEqual([]);
  });

  it("has every word that its rooms say", () => {
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap(strayIn)).toEqual([]);
    expect(files.flatMap(saidIn)).toEqual([]);
  });
});

it("every part of the catalogue has its rooms here", () => {
  const parts = readdirSync("src/ui/words").filter((one) => !["base", "form", "file"].includes(one));
  expect(parts.sort()).toEqual(Object.keys(ROOMS).sort());
});

it("the form of a lesson has each title and help of the schema in German, and no others", () => {
  const said = new Set<string>();
  const look = (one: unknown): void => {
    if (typeof one !== "object" || one === null) return;
    for (const [key, value] of Object.entries(one))
      if ((key === "title" || key === "description") && typeof value === "string") said.add(value);
      else look(value);
  };
  look(lessonJsonSchema());
  expect(Object.keys(german).sort()).toEqual([...said].sort());
  for (const text of Object.values(german)) expect(text.trim()).not.toBe("");
});

it("the steps of the guide each have an aim and what to do", async () => {
  const keys = Object.keys(await textsOf("guide", "en"));
  const wanted = STEPS.flatMap(({ key }) => [`aim.${key}`, `do.${key}`]);
  expect(keys.filter((key) => /^(aim|do)\./.test(key)).sort()).toEqual(wanted.sort());
});

describe("the guide", () => {
  /** The control that a step quotes, in the catalogue; of a field, a part of its label is quoted. */
  const QUOTED: Readonly<Record<string, readonly [part: string, key: string]>> = {
    "do.floats": ["forms", "wish.floats"],
    "do.net": ["forms", "wish.pullsUp"],
    "do.down": ["forms", "rests.down"],
    "do.trim": ["forms", "rests.downBy"],
    "do.box": ["weigh", "plan.usual"],
    "do.plan": ["weigh", "plan.take"],
  };

  it.each(LANGUAGES)("names each control as it stands on the page: %s", async (language) => {
    const texts = await textsOf("guide", language);
    const quoting = Object.entries(texts).flatMap(([key, entry]) => {
      const quoted = formsOf(entry).flatMap((text) => [...text.matchAll(/[“„]([^“”„]+)[”“]/g)]);
      // What stands in a place is read off the page itself.
      return quoted.flatMap(([, name = ""]) => (/^\{\w+\}$/.test(name) ? [] : [{ key, name }]));
    });
    expect(quoting.map(({ key }) => key).sort()).toEqual(Object.keys(QUOTED).sort());
    for (const { key, name } of quoting) {
      const [part, of] = QUOTED[key] ?? ["", ""];
      const [own = ""] = formsOf((await textsOf(part, language))[of]);
      if (key === "do.net") expect(own, key).toContain(name);
      else expect(name, key).toBe(own);
    }
  });
});

describe("a speaker", () => {
  const english = {
    hello: "{name}, good day",
    tries: { one: "{count} try", other: "{count} tries" },
  } as const;
  const german = {
    hello: "Guten Tag, {name}",
    tries: { one: "{count} Versuch", other: "{count} Versuche" },
  };

  it("tells numbers in the language's own way", () => {
    const [en, de] = [new Speaker<typeof english>(english, "en"), new Speaker<typeof english>(german, "de")];
    expect(en.number(-1234.5, 1)).toBe("\u22121234.5");
    expect(de.number(-1234.5, 1)).toBe("\u22121234,5");
    expect(de.number(-0.001, 2)).toBe("0,00");
    expect(de.quantity(2, "g", 1)).toBe("2,0\u202fg");
    expect(() => de.number(NaN, 1)).toThrow();
    expect([1, 2].map((count) => en.tell("tries", { count }))).toEqual(["1 try", "2 tries"]);
    expect([1, 2].map((count) => de.tell("tries", { count }))).toEqual(["1 Versuch", "2 Versuche"]);
  });

  it("tells English until the other language is there; one that does not come is asked for again", async () => {
    let asked = 0;
    const part = new Part<typeof english>(english, {
      de: () => {
        asked += 1;
        return asked === 1 ? Promise.reject(new Error("no network")) : Promise.resolve({ texts: german });
      },
    });
    expect(part.in("en").tell("hello", { name: "Ada" })).toBe("Ada, good day");
    expect(asked).toBe(0);
    const early = part.in("de");
    expect([early.language, early.tell("hello", { name: "Ada" })]).toEqual(["en", "Ada, good day"]);
    await expect(part.ready("de")).rejects.toThrow("no network");
    await part.ready("de");
    const late = part.in("de");
    expect([late.language, late.tell("hello", { name: "Ada" })]).toEqual(["de", "Guten Tag, Ada"]);
    await part.ready("de");
    expect(asked).toBe(2);
  });
});

describe("texts from below the page", () => {
  const below = new Below({
    de: () =>
      Promise.resolve({
        texts: {
          belly: "Bauch",
          "{what} of the {part}": "{what}: {part}",
          "{what} of the {part}'s eye": "{what} der Öse: {part}",
          "Wall of {mm} mm.": "Wand von {mm} mm.",
          "(a) {b}?": "(ä) {b}?",
          "{length} from {name}": "{length} von {name}",
          "{a} from the {b}": "vom {b} her {a}",
          "{name}, {known}": "{name}; {known}",
          "Look at {what}": "Sieh nach: {what}",
        },
      }),
  });

  it("are found by their English, and what stands in their places too", async () => {
    await below.ready("de");
    const { of } = { of: (text: string): string => below.in("de").of(text) };
    expect(of("belly")).toBe("Bauch");
    expect(of("weight of the belly")).toBe("weight: Bauch");
    expect(of("weight of the belly's eye")).toBe("weight der Öse: Bauch");
    expect(of("Wall of 1.25 mm.")).toBe("Wand von 1,25 mm.");
    expect(of("(a) belly?")).toBe("(ä) Bauch?");
  });

  it("are found without their capital or full stop, sentence by sentence, and by what says most", async () => {
    await below.ready("de");
    const of = (text: string): string => below.in("de").of(text);
    expect(of("Belly.")).toBe("Belly.");
    expect(of("belly.")).toBe("Bauch.");
    expect(of("look at 7.5 mm.")).toBe("look at 7.5 mm.");
    expect(of("Look at 7.5 mm.")).toBe("Sieh nach: 7,5\u202fmm.");
    expect(of("Wall of 1.25 mm. Look at belly.")).toBe("Wand von 1,25 mm. Sieh nach: Bauch.");
    expect(of("7.5 from the belly")).toBe("vom Bauch her 7,5");
    expect(of("7.5°, -2.25°")).toBe("7,5°; -2,25°");
  });

  it("leave names as they are, and hold no text for known that is not", async () => {
    await below.ready("de");
    const of = (text: string): string => below.in("de").of(text);
    expect(of("1.5 g from belly")).toBe("1,5\u202fg von belly");
    expect(of("belly, belly")).toBe("belly; Bauch");
    expect(of("belly, back, belly")).toBe("belly, back, belly");
  });

  it("stay as they came where the language does not know them, and in English", async () => {
    await below.ready("de");
    expect(below.in("de").of("Anna's 12.5 minnow")).toBe("Anna's 12.5 minnow");
    expect(below.in("de").of("constructor")).toBe("constructor");
    expect(below.in("en").of("belly")).toBe("belly");
  });
});

it("the steps of undo that the rooms name are told in German", async () => {
  await FILE.ready("de");
  const code = Object.values(ROOMS)
    .flatMap((rooms) => rooms.flatMap(filesOf))
    .map((file) => readFileSync(file, "utf8"))
    .join("\n");
  const labels = [...code.matchAll(UNDO)].map(([, plain, filled]) =>
    (plain ?? filled ?? "").replaceAll(/\$\{[^}]*\}/g, "Anna"),
  );
  expect(labels.filter((label) => FILE.in("de").of(label) === label)).toEqual([]);
});

it("the steps of undo that Draw names are each told in German, as they are written there", () => {
  const names = Object.values<Entry>(drawSteps).flatMap(formsOf);
  expect(names.filter((name) => fileInGerman[name] === undefined)).toEqual([]);
});

it("the words of the trade stand once each, with a meaning, and no word is its own twin", async () => {
  await GLOSSARY.ready("de");
  for (const language of LANGUAGES) {
    const terms = termsIn(language);
    expect(terms.length).toBeGreaterThanOrEqual(25);
    expect(new Set(terms.map(({ word }) => word)).size).toBe(terms.length);
    for (const { word, also, means } of terms) {
      expect(means).toMatch(/\.$/);
      expect(also).not.toContain(word);
    }
  }
});
