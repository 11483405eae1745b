import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { History } from "../../../src/document/history";

interface Doc {
  readonly name: string;
  readonly list: readonly { readonly x: number }[];
}
const start: Doc = { name: "a", list: [{ x: 1 }, { x: 2 }] };

describe("undo and redo", () => {
  it("takes steps back and forth with their labels", () => {
    const history = new History(start);
    expect([history.canUndo, history.canRedo, history.changed]).toEqual([false, false, false]);
    expect(history.edit("rename", (d) => void (d.name = "b"))).toBe(true);
    history.edit("move", (d) => void d.list.push({ x: 3 }));
    expect(history.undoLabel).toBe("move");
    expect(history.undo()).toBe("move");
    expect(history.document).toEqual({ ...start, name: "b" });
    expect(history.redoLabel).toBe("move");
    expect(history.undo()).toBe("rename");
    expect(history.document).toBe(start);
    expect(history.changed).toBe(false);
    expect(history.redo()).toBe("rename");
    expect(history.redo()).toBe("move");
    expect(history.document.list).toHaveLength(3);
    expect(history.redo()).toBeNull();
  });

  it("makes no step of an edit that changes nothing", () => {
    const history = new History(start);
    expect(history.edit("same", (d) => void (d.name = "a"))).toBe(false);
    expect(history.canUndo).toBe(false);
  });

  it("makes a drag one step, computed from the snapshot at its start", () => {
    const history = new History(start);
    history.begin("drag the ballast");
    for (const by of [0.1, 0.2, 0.3]) {
      history.move((d) => {
        const first = d.list[0];
        if (first) first.x += by;
      });
    }
    expect(history.document.list[0]?.x).toBe(1.3); // 1 + 0.3, not 1 + 0.1 + 0.2 + 0.3
    expect(history.canUndo).toBe(false);
    expect(history.commit()).toBe(true);
    expect(history.undo()).toBe("drag the ballast");
    expect(history.document).toBe(start);
    expect(history.canUndo).toBe(false);
  });

  it("cancels a drag without a trace, and keeps what could be redone", () => {
    const history = new History(start);
    history.edit("rename", (d) => void (d.name = "b"));
    history.undo();
    history.begin("drag");
    history.move((d) => void (d.name = "c"));
    history.cancel();
    expect(history.document).toBe(start);
    expect(history.canRedo).toBe(true);
  });

  it("forgets redo after a new edit", () => {
    const history = new History(start);
    history.edit("one", (d) => void (d.name = "b"));
    history.undo();
    history.edit("two", (d) => void (d.name = "c"));
    expect(history.canRedo).toBe(false);
  });

  it("joins edits of one kind until they settle", () => {
    const history = new History(start);
    for (const name of ["b", "c", "d"]) history.edit("rename", (d) => void (d.name = name), "name");
    history.settle();
    history.edit("rename", (d) => void (d.name = "e"), "name");
    history.undo();
    expect(history.document.name).toBe("d");
    history.undo();
    expect(history.document).toBe(start);
  });

  it("replaces the whole document as one step", () => {
    const history = new History(start);
    const other: Doc = { name: "other", list: [] };
    history.replace("open", other);
    history.markSaved();
    expect(history.changed).toBe(false);
    history.undo();
    expect(history.document).toBe(start);
    expect(history.changed).toBe(true);
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
            if (history.edit("to", (d) => void (d.name = String(to)))) {
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
