import fc from "fast-check";
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { CURVES, parseScenario } from "../../src/document";
import type { Scenario } from "../../src/document";
import { Workspace } from "../../src/ui/state/workspace.svelte";
import { Board, JOBS } from "../../src/ui/views/draw/state.svelte";

const folder = fileURLToPath(new URL("../../scenarios/", import.meta.url));
const files = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => ({ name, text: readFileSync(folder + name, "utf8") }));

function opened(text: string) {
  const parsed = parseScenario(text);
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
  const work = new Workspace(parsed.scenario);
  const board = new Board(work);
  board.open();
  return { work, board };
}

/** Looks at everything, and changes nothing. */
function look(board: Board): void {
  for (const key of JOBS) {
    board.show(key);
    for (const curve of CURVES) {
      board.take(curve);
      board.all();
      board.step(1);
      board.finish();
    }
    for (const view of ["side", "above", "section"] as const) board.look(view);
    board.station = 20;
    board.back();
  }
}

/** A change by the hand on a curve: which one, and by how much. */
const change = fc.record({
  verb: fc.constantFrom("drag", "nudge", "add", "remove"),
  curve: fc.constantFrom("top", "bottom", "halfBreadth"),
  point: fc.nat(30),
  by: fc.tuple(fc.double({ min: -4, max: 4, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })),
});
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;

function act(board: Board, { verb, curve, point, by }: Change): void {
  const at = point % board.points.length;
  board.take(curve);
  board.choose(curve, at % board.points.length, false);
  if (verb === "drag") board.dragPoints(by);
  else if (verb === "nudge") board.nudge(...by);
  else if (verb === "add") board.addBetween();
  else board.remove();
  board.finish();
}

/** All that the board's curves do not draw. */
function rest(scenario: Scenario): unknown {
  const { top, bottom, halfBreadth, ...bait } = scenario.bait;
  void [top, bottom, halfBreadth];
  return { ...scenario, bait };
}

describe("the drawing board", () => {
  test.each(files)("that is only looked at leaves $name as it was, byte for byte", ({ text }) => {
    const { work, board } = opened(text);
    const before = work.text();
    look(board);
    expect(work.text()).toBe(before);
    // The files are written as the program saves them.
    expect(before).toBe(text);
    expect(work.undoLabel).toBeNull();
  });

  test("keeps every key that it does not draw, and undo gives the same file", () => {
    fc.assert(
      fc.property(
        fc.nat(files.length - 1),
        fc.array(change, { minLength: 1, maxLength: 6 }),
        (which, changes) => {
          const { work, board } = opened(files[which]?.text ?? "");
          const [text, kept] = [work.text(), rest(work.scenario)];
          for (const one of changes) act(board, one);
          expect(rest(board.shown)).toEqual(kept);
          for (let i = 0; i <= 2 * changes.length && work.undoLabel !== null; i++) work.undo();
          expect(work.text()).toBe(text);
        },
      ),
      { numRuns: 30, seed: 5 },
    );
  });
});
