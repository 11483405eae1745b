import { expect, it } from "vitest";
import {
  emptyBox,
  openLibrary,
  parseBox,
  parseScenario,
  serialize,
  serializeBox,
} from "../../../src/document";
import { messages } from "../../../src/languages/de-messages";
import { texts as menuDe } from "../../../src/ui/words/menu/de";
import { texts as menu } from "../../../src/ui/words/menu/en";
import { texts as pageDe } from "../../../src/ui/words/page/de";
import { texts as page } from "../../../src/ui/words/page/en";
import { texts as teachDe } from "../../../src/ui/words/teach/de";
import { texts as teach } from "../../../src/ui/words/teach/en";
import { texts as weighDe } from "../../../src/ui/words/weigh/de";
import { texts as weigh } from "../../../src/ui/words/weigh/en";
import { scenarioOf } from "../../lib/scenarios";

/** What is said of a file that came to the wrong place. */
const said = (read: {
  readonly ok: boolean;
  readonly problems?: readonly { readonly message: string }[];
}): string => read.problems?.[0]?.message ?? "";

const bait = serialize(scenarioOf("slow-floater-72"));
const box = serializeBox(emptyBox());
const many = JSON.stringify({ format: "trimwright/baits", version: 1, baits: [] });
const lesson = JSON.stringify({ format: "trimwright/lesson", version: 1 });

it("a file of the program that came to another one's place is told where it is opened", () => {
  for (const read of [parseBox(bait), openLibrary(bait)])
    expect(said(read)).toContain("the file of one bait");
  for (const read of [parseScenario(box), openLibrary(box)]) expect(said(read)).toContain("view Weigh");
  for (const read of [parseScenario(many), parseBox(many)]) expect(said(read)).toContain("many baits");
  for (const read of [parseScenario(lesson), parseBox(lesson), openLibrary(lesson)])
    expect(said(read)).toContain("view Teach");
});

it("any other file is told that it is none of the program's", () => {
  for (const format of ["else/where", "toString", 7, null]) {
    const text = JSON.stringify({ format, version: 1 });
    expect(said(parseScenario(text))).toContain("not a Trimwright scenario");
    expect(said(parseBox(text))).toContain("not a Trimwright box");
  }
});

it("the names in those words are the page's own, in both languages", () => {
  const told = Object.entries(messages).filter(([text]) =>
    /^This (?:is|file holds) .*\bopen it\b/.test(text),
  );
  expect(told).toHaveLength(4);
  const names = (text: string): string[] =>
    [...text.matchAll(/[“„]([^”“]+)[”“]/g)].map((found) => found[1] ?? "");
  const shown = [
    { texts: told.map(([english]) => english), words: [menu, page, weigh, teach] },
    { texts: told.map(([, german]) => german), words: [menuDe, pageDe, weighDe, teachDe] },
  ];
  for (const { texts, words } of shown) {
    const all = new Set(words.flatMap((one) => Object.values<unknown>(one)));
    const quoted = texts.flatMap(names);
    expect(quoted.length).toBeGreaterThan(4);
    for (const name of quoted) expect(all, name).toContain(name);
  }
});
