import { describe, expect, test } from "vitest";
import { emptyBox, readBox } from "../../../src/document";
import { emptyDraft, KINDS, thingOf } from "../../../src/ui/views/weigh/things";
import type { Draft } from "../../../src/ui/views/weigh/things";

const kinds = Object.keys(KINDS) as Draft["kind"][];
const draft = (kind: Draft["kind"], change: Partial<Draft> = {}): Draft => ({
  ...emptyDraft(kind),
  name: "mine",
  ...change,
});

describe("A thing for the box", () => {
  test("that the box would refuse is told in the form's own words, whatever is missing", () => {
    const measures = [{}, { diameter: 4 }, { diameter: 4, length: 8, cut: 8, across: 3, thickness: 0.1 }];
    const tried = kinds.flatMap((kind) =>
      measures.flatMap((measured) =>
        [null, 2.85].flatMap((together) =>
          [KINDS[kind].usual, ""].flatMap((material) =>
            [null, 7].map((density) =>
              thingOf(draft(kind, { measures: measured, together, material, density }), []),
            ),
          ),
        ),
      ),
    );
    const things = tried.flatMap((made) => (made.ok ? [made.thing] : []));
    expect(things.length).toBeGreaterThan(20);
    for (const thing of things)
      expect(readBox({ ...emptyBox(), things: [thing] })).toMatchObject({ ok: true });
  });

  test("lacks a mass, a stuff, or a name that no other has", () => {
    const lacks = (one: Draft, others: readonly string[] = []): string => {
      const made = thingOf(one, others);
      return made.ok ? "nothing" : made.lacks;
    };
    expect(lacks(draft("hook"))).toBe("mass");
    expect(lacks(draft("hook", { mass: 0.3 }))).toBe("nothing");
    expect(lacks(draft("shot", { measures: { diameter: 4 } }))).toBe("nothing");
    expect(lacks(draft("shot", { together: 3, material: "" }))).toBe("stuff");
    expect(lacks(draft("hook", { together: 3, name: " mine " }), ["mine"])).toBe("taken");
  });
});
