import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parseLesson, parseResults, serializeResults } from "../../../src/lesson";
import type { Results } from "../../../src/lesson";
import { classRows } from "../../../src/ui/views/teach/class";

it("a class of thirty is read and counted, lesson by lesson", () => {
  const read = parseLesson(readFileSync("lessons/density.json", "utf8"));
  if (!read.ok) throw new Error("refused");
  const began = performance.now();
  const files = Array.from({ length: 30 }, (_, i): Results => {
    const text = serializeResults({
      format: "trimwright/results",
      version: 1,
      group: "8b",
      student: `student ${i}`,
      lessons: [
        {
          lesson: "density",
          predicted: i % 3,
          happened: 0,
          cameTrue: i % 3 === 1,
          answers:
            i % 2 === 0
              ? [{ value: 50, right: true }]
              : [
                  { value: 5, right: false },
                  { value: 50, right: true },
                ],
        },
        ...(i < 3 ? [{ lesson: "own", predicted: 1, happened: 2, cameTrue: false, answers: [] }] : []),
      ],
    });
    const back = parseResults(text);
    if (!back.ok) throw new Error("refused");
    return back.results;
  });
  const [density, own, ...more] = classRows(files, [read.lesson]);
  // Written, read and counted: 20 to 130 ms on a busy machine, with ten times as much in each file.
  expect(performance.now() - began).toBeLessThan(1000);
  expect(more).toEqual([]);
  expect(density).toMatchObject({ id: "density", count: 30, predictedRight: 10, solved: 30, atFirst: 15 });
  expect(density?.spread).toEqual([
    { option: 0, count: 10, happens: false },
    { option: 1, count: 10, happens: true },
    { option: 2, count: 10, happens: false },
  ]);
  expect(own).toMatchObject({ id: "own", lesson: null, count: 3, solved: 0 });
  // Of numbers, too small and too large are told apart.
  expect(own?.sides).toEqual({ low: 3, right: 0, high: 0 });
  expect(density?.sides).toEqual({ low: 0, right: 0, high: 0 });
});
