import { describe, expect, test } from "vitest";
import {
  addPart,
  addPoint,
  doublePart,
  fileEntries,
  formAt,
  movePoints,
  partHandles,
  partKinds,
  pointsOf,
  readScenario,
  removePart,
  removePoints,
  reversed,
  scaled,
  serialize,
  setAt,
  setPoint,
  shifted,
  switched,
  withBody,
  withLength,
  valueOn,
  withoutCurve,
} from "../../../src/document";
import type { FormKey } from "../../../src/document";
import { staticsOf } from "../../../src/model/statics";
import { bodyOfForm, FORMS } from "../../../src/model/shaping";
import { scenario } from "../ui-app/scenario";

const one = scenario();
const same = (value: number): number => value;
const anywhere = (): boolean => true;
/** The sample's body, as new parts are put into it. mm. */
const body = {
  length: 80,
  at: (station: number) => {
    const read = readScenario(one);
    if (!read.ok) throw new Error("the sample is valid");
    const found = read.compiled.bait.drawn.section(station / 1e3);
    return { top: found.top * 1e3, bottom: found.bottom * 1e3, half: found.halfBreadth * 1e3 };
  },
};

describe("points of a curve", () => {
  test("the ends of an edge keep their stations while a drag moves them up and down", () => {
    const next = movePoints(one, "top", [0, 1, 2], [1.25, 0.5]);
    expect(next.bait.top).toEqual([
      [0, 0.5],
      [31.25, 9.5],
      [80, 2],
    ]);
    expect(next.bait.bottom).toBe(one.bait.bottom);
  });

  test("the tail's station is the length: typed, it moves the end of every edge and no other point", () => {
    const next = setPoint(one, "bottom", 2, [84, -2]);
    expect(next.bait.length_mm).toBe(84);
    for (const key of ["top", "bottom", "halfBreadth", "widest"] as const)
      expect(pointsOf(next.bait, key).at(-1)?.[0]).toBe(84);
    expect(next.bait.top[1]).toEqual([30, 9]);
    expect(readScenario(next).ok).toBe(true);
    expect(withLength(next, 80).bait.top).toEqual(one.bait.top);
  });

  test("a point is added in its order, and removed again without a trace in the file", () => {
    const added = addPoint(one, "top", [55, 6]);
    expect(added?.index).toBe(2);
    expect(addPoint(one, "top", [30.01, 6])).toBeNull();
    const back = removePoints(added!.scenario, "top", [2]);
    expect(serialize(back)).toBe(serialize(one));
    expect(removePoints(one, "top", [0, 1, 2]).bait.top).toEqual([
      [0, 0],
      [80, 1.5],
    ]);
  });

  test("a section's exponent at a station: where the file has none, the rest stays an ellipse", () => {
    const plain = withoutCurve(withoutCurve(one, "above"), "widest");
    expect(plain.bait).not.toHaveProperty("roundover");
    expect(plain.bait).not.toHaveProperty("widest");
    const next = setAt(plain, "above", 40, 3);
    expect(next.bait.roundover).toEqual({
      above: [
        [0, 2],
        [40, 3],
        [80, 2],
      ],
      below: [
        [0, 2],
        [80, 2],
      ],
    });
    expect(setAt(next, "above", 40, 4).bait.roundover?.above[1]).toEqual([40, 4]);
  });
});

describe("the whole bait", () => {
  const bare = {
    ...one,
    bait: { ...one.bait, chambers: [], ballast: [], wires: [], hangers: [], fittings: [], coats: [] },
  };

  test("scaled alike in all three directions, the body's volume grows with the cube", () => {
    const volume = (s: typeof one): number => {
      const read = readScenario(s);
      if (!read.ok) throw new Error(read.problems[0]?.message);
      return read.compiled.bait.drawn.volume;
    };
    const grown = scaled(bare, { length: 1.1, height: 1.1, breadth: 1.1 });
    // Points are rounded to a thousandth of a millimetre: 1e-3 of 9 mm, three times.
    expect(volume(grown) / volume(bare)).toBeCloseTo(1.1 ** 3, 3);
    const longer = scaled(bare, { length: 1.01, height: 1, breadth: 1 });
    expect(volume(longer) / volume(bare)).toBeCloseTo(1.01, 4);
  });

  const restOf = (s: typeof one) => {
    const read = readScenario(s);
    if (!read.ok) throw new Error(read.problems[0]?.message);
    const { bait, around } = read.compiled;
    return staticsOf(bait, around.density);
  };

  test("shifted up as a whole it is the same bait, its water marks with it; shifted back it is the same file", () => {
    const marked = {
      ...one,
      tub: [
        {
          kind: "waterline" as const,
          nose_mm: [4, 3] as [number, number],
          tail_mm: [70, 2] as [number, number],
          temperature_C: 15,
          salinity_g_kg: 0,
        },
      ],
    };
    const up = shifted(marked, "bait", { aft: 4, up: 2.5 });
    const [was, now] = [restOf(marked), restOf(up)];
    expect(now.netBuoyancy).toBeCloseTo(was.netBuoyancy, 12);
    expect(now.rest.pitch).toBeCloseTo(was.rest.pitch ?? NaN, 9);
    expect(up.bait.top[1]).toEqual([30, 11.5]);
    expect(up.tub[0]).toMatchObject({ nose_mm: [4, 5.5], tail_mm: [70, 4.5] });
    expect(serialize(shifted(up, "bait", { aft: 0, up: -2.5 }))).toBe(serialize(marked));
  });

  test("the outline shifted one way is all parts shifted the other way, but for the datum line", () => {
    const wood = shifted(one, "outline", { aft: 1.5, up: 0.4 });
    const parts = shifted(one, "parts", { aft: -1.5, up: -0.4 });
    expect(wood.bait.ballast[0]?.at_mm).toEqual(
      one.bait.ballast[0]?.at_mm.map((v, i) => (i === 0 ? v - 1.5 : v)),
    );
    expect(parts.bait.top).toEqual(one.bait.top);
    const [a, b] = [restOf(wood), restOf(parts)];
    expect(a.netBuoyancy).toBeCloseTo(b.netBuoyancy, 12);
    expect(a.rest.pitch).toBeCloseTo(b.rest.pitch ?? NaN, 9);
    expect(a.rest.pitch).not.toBeCloseTo(restOf(one).rest.pitch ?? NaN, 3);
  });

  test("a curve reversed has at each station what it had as far from the other end; twice, it is the same file", () => {
    const round = setAt(one, "above", 20, 3);
    const all = reversed(round, "all");
    for (const key of ["top", "bottom", "halfBreadth", "widest", "above", "below"] as const)
      for (const s of [0, 7, 20, 33.3, 61, 80])
        expect(valueOn(all.bait, key, s), `${key} at ${s}`).toBeCloseTo(
          valueOn(round.bait, key, 80 - s) ?? NaN,
          9,
        );
    expect(serialize(reversed(all, "all"))).toBe(serialize(round));
    const edge = reversed(one, "top");
    expect(edge.bait.top[1]).toEqual([50, 9]);
    expect({ ...edge.bait, top: one.bait.top }).toEqual(one.bait);
  });

  test("every form by words makes a body that the checks take, and the parts stay as they are", () => {
    for (const { height, breadth, form } of FORMS) {
      const spec = bodyOfForm({ ...form, length: 0.09, height: height * 0.09, breadth: breadth * 0.09 });
      const next = withBody(bare, spec);
      const read = readScenario(next);
      if (!read.ok) throw new Error(read.problems[0]?.message);
      expect(next.bait.body).toBe(one.bait.body);
      expect(read.compiled.bait.drawn.length).toBeCloseTo(0.09, 12);
    }
  });
});

describe("parts", () => {
  test("a new one of every kind is taken by the checks where it begins, and removing it gives the same file", () => {
    for (const { key, many } of partKinds) {
      const from = many ? one : removePart(one, key, 0);
      const added = addPart(from, key, body, anywhere);
      const read = readScenario(added!.scenario);
      if (!read.ok) throw new Error(`${key}: ${read.problems[0]?.message}`);
      expect(serialize(removePart(added!.scenario, key, added!.index))).toBe(serialize(from));
    }
  });

  test("a bait has one bib; a second part like another gets a name of its own", () => {
    const bib = addPart(removePart(one, "bib", 0), "bib", body, anywhere);
    expect(addPart(bib!.scenario, "bib", body, anywhere)).toBeNull();
    const twice = doublePart(one, "ballast", 0, body, anywhere)!;
    const names = twice.scenario.bait.ballast.map(({ name }) => name);
    expect(names.slice(0, 2)).toEqual(["belly", "belly 2"]);
    expect(twice.scenario.bait.ballast[1]?.at_mm[0]).toBeCloseTo(26 + 0.06 * 80, 9);
  });

  test("each handle stands on the part, and the first one moves all of it", () => {
    for (const entry of fileEntries(one.bait)) {
      const [first] = partHandles(entry);
      if (first === undefined) continue;
      const moved = entry.file.stretch(entry.entry, {
        station: (s) => s + 2,
        height: (z) => z + 1,
        tall: same,
        wide: same,
      });
      const [now] = partHandles({ key: entry.key, entry: moved as object });
      expect(now?.at[0]).toBeCloseTo(first.at[0] + 2, 9);
      expect(now?.at[1]).toBeCloseTo(first.at[1] + 1, 9);
    }
  });
});

describe("forms", () => {
  const keys = (list: readonly FormKey[]): string[] =>
    list.flatMap(({ key, keys: inner }) => [key, ...keys(inner).map((one) => `${key}.${one}`)]);

  test("a part's form has every key that the format has", () => {
    expect(keys(formAt("bait.hangers[0]"))).toEqual([
      "name",
      "at_mm",
      "ring",
      "ring.mass_g",
      "ring.density_g_ml",
      "ring.weighed",
      "hook",
      "hook.mass_g",
      "hook.size",
      "hook.length_mm",
      "hook.gape_mm",
      "hook.density_g_ml",
      "hook.weighed",
      "stage",
    ]);
    expect(formAt("bait.wires[0]").find(({ key }) => key === "path_mm")?.points).toEqual({
      least: 2,
      most: 200,
    });
  });

  test("every optional key of every part can be switched on and off, and off gives the same file", () => {
    for (const { steps, path, entry } of fileEntries(one.bait)) {
      const form = formAt(path);
      for (const key of form.filter(({ optional }) => optional)) {
        // Weight by material or density, coat by thickness or mass: one of the two has to be there.
        if (key.key in entry || key.key === "mass_g" || key.key === "thickness_mm") continue;
        const on = switched(one, steps, key, true, form);
        const read = readScenario(on);
        if (!read.ok) throw new Error(`${path}.${key.key}: ${read.problems[0]?.message}`);
        expect(serialize(switched(on, steps, key, false, form))).toBe(serialize(one));
      }
    }
  });

  test("a coat has a thickness or a mass: switching one on switches the other off", () => {
    const form = formAt("bait.coats[0]");
    const mass = form.find(({ key }) => key === "mass_g")!;
    const thin = {
      ...one,
      bait: { ...one.bait, coats: [{ name: "clear", thickness_mm: 0.1, density_g_ml: 1.1 }] },
    };
    expect(switched(thin, ["bait", "coats", 0], mass, true, form).bait.coats[0]).toEqual({
      name: "clear",
      mass_g: 0.3,
      density_g_ml: 1.1,
    });
  });
});
