import { parseScenario } from "../../../document";
import { parseLesson } from "../../../lesson";
import type { Collection, Lesson } from "../../../lesson";
import { examples } from "../../state";

const files = import.meta.glob<string>("../../../../lessons/*.json", { query: "?raw", import: "default" });

/** The order in which the lessons build on one another; others come after these. */
const ORDER = [
  "density",
  "jug-on-the-scale",
  "inside-or-outside",
  "coat",
  "waters",
  "balance",
  "moving-a-weight",
  "hanging-hook",
  "heel",
  "drag",
  "rise-speed",
  "bib",
  "line",
  "copy",
  "how-sure",
];

export interface Loaded {
  readonly lessons: readonly Lesson[];
  readonly collection: Collection;
}

/** All lessons of the collection and the scenarios that lessons may name. */
export async function loadLessons(): Promise<Loaded> {
  const collection = new Map(
    (await examples()).flatMap(({ file, text }) => {
      const read = parseScenario(text);
      return read.ok ? [[file.replace(/\.json$/, ""), read.scenario] as const] : [];
    }),
  );
  const texts = await Promise.all(Object.values(files).map((one) => one()));
  const lessons = texts.map((text) => {
    const read = parseLesson(text);
    if (!read.ok) throw new Error(read.problems[0]?.message);
    return read.lesson;
  });
  const place = ({ id }: Lesson): number => (ORDER.includes(id) ? ORDER.indexOf(id) : ORDER.length);
  return { collection, lessons: lessons.sort((a, b) => place(a) - place(b)) };
}
