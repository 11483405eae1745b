import { expect, it } from "vitest";
import {
  emptyBox,
  openLibrary,
  parseBox,
  parseScenario,
  serialize,
  serializeBox,
} from "../../../src/document";
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
