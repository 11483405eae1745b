import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { History } from "../../../src/document/history";
import type { Trail } from "../../../src/document/history";
import { DeltaError } from "../../../src/document/kept/delta";

interface Doc {
  readonly name: string;
  readonly list: readonly { readonly x: number }[];
}
const renamed = (history: History<Doc>, name: string): Doc => ({ ...history.document, name });
const start: Doc = { name: "a", list: [{ x: 1 }, { x: 2 }] };

describe("undo and redo", () => {
  it("takes steps back and forth with their labels", () => {
    const history = new History(start);
    expect([history.canUndo, history.canRedo]).toEqual([false, false]);
    expect(history.edit("rename", renamed(history, "b"))).toBe(true);
    history.edit("move", { ...history.document, list: [...history.document.list, { x: 3 }] });
    expect(history.undoLabel).toBe("move");
    expect(history.undo()).toBe("move");
    expect(history.document).toEqual({ ...start, name: "b" });
    expect(history.redoLabel).toBe("move");
    expect(history.undo()).toBe("rename");
    expect(history.document).toBe(start);
    expect(history.redo()).toBe("rename");
    expect(history.redo()).toBe("move");
    expect(history.document.list).toHaveLength(3);
    expect(history.redo()).toBeNull();
  });

  it("makes no step of an edit that changes nothing", () => {
    const history = new History(start);
    expect(history.edit("same", renamed(history, "a"))).toBe(false);
    expect(history.canUndo).toBe(false);
  });

  it("makes a drag one step", () => {
    const history = new History(start);
    history.begin("drag the ballast");
    for (const by of [0.1, 0.2, 0.3]) {
      history.move({ ...start, list: start.list.map((one, i) => (i === 0 ? { x: one.x + by } : one)) });
    }
    expect(history.document.list[0]?.x).toBe(1.3);
    expect(history.canUndo).toBe(false);
    expect(history.commit()).toBe(true);
    expect(history.undo()).toBe("drag the ballast");
    expect(history.document).toBe(start);
    expect(history.canUndo).toBe(false);
  });

  it("cancels a drag without a trace, and keeps what could be redone", () => {
    const history = new History(start);
    history.edit("rename", renamed(history, "b"));
    history.undo();
    history.begin("drag");
    history.move(renamed(history, "c"));
    history.cancel();
    expect(history.document).toBe(start);
    expect(history.canRedo).toBe(true);
  });

  it("forgets redo after a new edit", () => {
    const history = new History(start);
    history.edit("one", renamed(history, "b"));
    history.undo();
    history.edit("two", renamed(history, "c"));
    expect(history.canRedo).toBe(false);
  });

  it("joins edits of one kind until they settle", () => {
    const history = new History(start);
    for (const name of ["b", "c", "d"]) history.edit("rename", renamed(history, name), "name");
    history.settle();
    history.edit("rename", renamed(history, "e"), "name");
    history.undo();
    expect(history.document.name).toBe("d");
    history.undo();
    expect(history.document).toBe(start);
  });

  it("leaves no step where joined edits lead back to where they began", () => {
    const history = new History(start);
    history.edit("rename", renamed(history, "b"), "name");
    history.edit("rename", renamed(history, "a"), "name");
    expect(history.canUndo).toBe(false);
    expect(history.document).toEqual(start);
  });

  it("carries on from its steps alone, those taken back and a drag under way included", () => {
    const history = new History(start);
    history.edit("one", renamed(history, "b"));
    history.edit("two", { ...history.document, list: [{ x: 5 }] });
    history.edit("three", renamed(history, "c"));
    history.undo();
    const kept = JSON.parse(JSON.stringify([history.document, history.trail])) as [Doc, Trail];
    const again = new History(...kept);
    expect(again.redo()).toBe("three");
    expect(again.document).toEqual({ name: "c", list: [{ x: 5 }] });
    for (const label of ["three", "two", "one"]) expect(again.undo()).toBe(label);
    expect(again.document).toEqual(start);

    again.begin("drag");
    again.move(renamed(again, "z"));
    expect(again.trail).toEqual({
      past: [{ label: "drag", delta: [{ at: ["name"], from: "a", to: "z" }] }],
      future: [],
    });
    expect(new History(again.document, again.trail).undo()).toBe("drag");
  });

  it("refuses a step that does not belong to the document, and stays as it was", () => {
    const delta = [{ at: ["name"], from: "another", to: "b" }];
    const history = new History(start, { past: [{ label: "odd", delta }], future: [] });
    expect(() => history.undo()).toThrow(DeltaError);
    expect(history.document).toBe(start);
  });

  it("keeps steps bounded in number and in length", () => {
    const many = new History(start);
    for (let i = 0; i < 700; i++) many.edit("rename", renamed(many, String(i)));
    expect(many.trail.past).toHaveLength(500);
    const long = new History(start);
    for (let i = 0; i < 40; i++) long.edit("rename", renamed(long, String(i % 10).repeat(100_000)));
    expect(JSON.stringify(long.trail).length).toBeLessThan(1_010_000);
    expect(long.trail.past.length).toBeGreaterThan(3);
    // One step that is longer than all may be stays: there is always a way back.
    long.edit("rename", renamed(long, "x".repeat(3_000_000)));
    expect(long.trail.past).toHaveLength(1);
  });

  it("refuses verbs that do not fit", () => {
    const history = new History(start);
    expect(() => history.commit()).toThrow(/without a drag/);
    history.begin("drag");
    expect(() => history.begin("again")).toThrow(/during the drag "drag"/);
    expect(() => history.undo()).toThrow(/commit or cancel/);
  });

  it("goes back to every earlier document from any walk (property)", () => {
    const step = fc.oneof(
      fc.record({ kind: fc.constant("edit"), to: fc.integer({ min: 0, max: 5 }) }),
      fc.record({ kind: fc.constant("undo"), to: fc.constant(0) }),
      fc.record({ kind: fc.constant("redo"), to: fc.constant(0) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const history = new History(start);
        // The plain model of an undo list: all documents, and a place in it.
        let documents: Doc[] = [start];
        let at = 0;
        for (const { kind, to } of steps) {
          if (kind === "edit") {
            if (history.edit("to", renamed(history, String(to)))) {
              documents = [...documents.slice(0, at + 1), history.document];
              at++;
            }
          } else if (kind === "undo") at = history.undo() === null ? at : at - 1;
          else at = history.redo() === null ? at : at + 1;
          expect(history.document).toBe(documents[at]);
        }
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
