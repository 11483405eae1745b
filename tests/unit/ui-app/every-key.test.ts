import { readdirSync, readFileSync } from "node:fs";
import { render } from "svelte/server";
import { describe, expect, test } from "vitest";
import {
  buildAnew,
  CURVES,
  fileEntries,
  formAt,
  noteDown,
  pathSteps,
  pointsOf,
  readScenario,
  scenarioJsonSchema,
  setDown,
  setPoint,
  switched,
  valueAt,
  valueFrom,
  valueWords,
} from "../../../src/document";
import type { FormKey, Scenario } from "../../../src/document";
import {
  bodyInputs,
  columnInputs,
  inputAt,
  moveInputs,
  moveSteps,
  provideApp,
  reelInputs,
  tackleInputs,
  waterInputs,
} from "../../../src/ui/state";
import type { App, Input } from "../../../src/ui/state";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { documentEditor } from "../../../src/ui/views/parts/form";
import FormFields from "../../../src/ui/views/parts/FormFields.svelte";
import { scenario } from "./scenario";

/**
 * Nobody needs a text editor: every key of the published schema is written by an input of the page. The keys come from the
 * schema; who writes them comes from the page's own code: the forms that its components hold are rendered, and the inputs
 * and verbs are asked to write.
 */

const steady = { temperature_C: 15, salinity_g_kg: 0 };
/** One of everything: each kind of move, of bench reading and of tub reading. Invented numbers. */
const full = scenario((plain) => {
  Object.assign(plain, {
    stock: { pieces: "halves", length_mm: 100, width_mm: 30, thickness_mm: 10 },
    bench: [
      { kind: "displacement", reading_g: 6, resolution_g: 0.1, with: ["body"], tap_C: 15 },
      { kind: "weighing", reading_g: 2.5, resolution_g: 0.01, with: ["body"] },
    ],
    tub: [
      { kind: "timed", direction: "rises", height_mm: 300, runUp_mm: 100, times_s: [4, 4.2], ...steady },
      { kind: "attitude", pitch_deg: -5, state: "rest", ...steady },
      { kind: "waterline", nose_mm: [8, 2], tail_mm: [70, 1], ...steady },
    ],
    corrections: [{ name: "tub", mass_g: 0.1, shift_mm: [0.1, 0] }],
    cadence: [
      { do: "settle", for_s: 1 },
      { do: "reel", speed_m_s: 0.8, for_s: 4 },
      { do: "reel", speed_m_s: 0.8, length_m: 2 },
      { do: "pause", for_s: 2 },
      { do: "twitch", travel_m: 0.3, in_s: 0.2, back_s: 0.4 },
      { do: "slack", for_s: 2 },
      { do: "lift", height_m: 0.3, in_s: 0.5 },
      {
        do: "repeat",
        times: 2,
        moves: [
          { do: "settle", for_s: 1 },
          { do: "reel", speed_m_s: 0.8, for_s: 1 },
          { do: "reel", speed_m_s: 0.8, length_m: 1 },
          { do: "pause", for_s: 2 },
          { do: "twitch", travel_m: 0.3, in_s: 0.2, back_s: 0.4 },
          { do: "slack", for_s: 2 },
          { do: "lift", height_m: 0.3, in_s: 0.5 },
        ],
      },
      { do: "repeat", times: 1, moves: [{ do: "release", for_s: 1 }] },
      { do: "release", for_s: 5 },
    ],
    expect: [{ path: "statics.netBuoyancy_g", value: 1, why: "invented" }],
  });
  Object.assign(plain.water as object, { weed_m: 2, strikeZone: { from_m: 1, to_m: 2 } });
  Object.assign(plain.tackle as object, { reel: { ratio: 5, spool_mm: 140 } });
});

type Node = Readonly<Record<string, unknown>>;
const entriesOf = (node: unknown): readonly (readonly [string, Node])[] =>
  Object.entries((node ?? {}) as Record<string, Node>);

/** The keys that hold a value, by their paths: "[]" is any place of a list or a point, "{kind}" a kind of thing. */
function leaves(node: Node, path = ""): readonly string[] {
  const { type, properties, items, prefixItems } = node;
  const kinds = (node["oneOf"] ?? node["anyOf"]) as readonly Node[] | undefined;
  if (node["$ref"] !== undefined) return [`${path}.*`];
  if (kinds !== undefined && kinds.every((one) => one["type"] === "object"))
    return kinds.flatMap((one) => {
      const tag = entriesOf(one["properties"]).find(([, { const: fixed }]) => fixed !== undefined)?.[1][
        "const"
      ];
      return leaves(one, `${path}{${String(tag)}}`);
    });
  if (type === "object")
    return entriesOf(properties).flatMap(([key, one]) => leaves(one, path === "" ? key : `${path}.${key}`));
  if (type === "array") return prefixItems === undefined ? leaves(items as Node, `${path}[]`) : [`${path}[]`];
  // The program itself writes what can have one value only.
  return node["const"] === undefined ? [path] : [];
}

/** "tub[1].pitch_deg" → "tub[]{attitude}.pitch_deg". */
function general(path: string, document: Scenario): string {
  let out = "";
  const at: (string | number)[] = [];
  for (const step of pathSteps(path)) {
    at.push(step);
    if (typeof step === "string") out += out === "" ? step : `.${step}`;
    else {
      const { kind, do: move } = (valueAt(document, at) ?? {}) as { kind?: string; do?: string };
      const tag = kind ?? move;
      out += tag === undefined ? "[]" : `[]{${tag}}`;
    }
  }
  return out;
}

/** Places where two documents differ. */
function changes(a: unknown, b: unknown, path = ""): readonly string[] {
  if (Object.is(a, b)) return [];
  const parts = [a, b].filter((one): one is object => typeof one === "object" && one !== null);
  if (parts.length === 0) return [path];
  const keys = new Set(parts.flatMap((one) => Object.keys(one)));
  const list = parts.every((one) => Array.isArray(one));
  const of = (one: unknown, key: string): unknown => (one as Record<string, unknown> | undefined)?.[key];
  return [...keys].flatMap((key) =>
    changes(of(a, key), of(b, key), list ? `${path}[${key}]` : path === "" ? key : `${path}.${key}`),
  );
}
const written = (from: Scenario, to: Scenario): readonly string[] =>
  changes(from, to).map((path) => general(path, to));

const prefs = new Prefs(null, 1200);
const pageOf = (work: Workspace): App =>
  ({ work, units: new Units(prefs), prefs, beside: { typed: {} } }) as unknown as App;
type Component = (out: unknown, props: unknown) => void;

/** What a form shows of one key, without the switch that leaves the key out. */
function shownBy(work: Workspace, key: FormKey, steps: readonly (string | number)[]): string {
  const page: Component = (out, props) => {
    provideApp(pageOf(work));
    (FormFields as unknown as Component)(out, props);
  };
  const { body } = render(page as unknown as typeof FormFields, {
    context: new Map(),
    props: { keys: [key], steps, of: "it", editor: documentEditor(work) },
  });
  const switchOff = /^(<!--[^>]*-->|\s)*<label class="switch[^>]*>.*?<\/label>/s;
  return key.optional ? body.replace(switchOff, "") : body;
}

const CONTROL = /<(input|select|textarea)\b/;

/** The keys of a form that have a control; a key that is not there is switched on first. */
function formKeys(from: Scenario, steps: readonly (string | number)[], keys: readonly FormKey[]): string[] {
  return keys.flatMap((key): string[] => {
    const at = [...steps, key.key];
    const there = valueAt(from, at) !== undefined;
    const on = there ? from : switched(from, steps, key, true, keys);
    if (key.keys.length > 0) return formKeys(on, at, key.keys);
    // What a key begins with is a document, too.
    expect(readScenario(on), at.join(".")).toMatchObject({ ok: true });
    if (!CONTROL.test(shownBy(new Workspace(on), key, steps))) return [];
    const path = general(at.map((one) => (typeof one === "number" ? `[${one}]` : `.${one}`)).join(""), on);
    return [
      path + (key.points !== null ? "[][]" : key.field.kind === "point" || key.list !== null ? "[]" : ""),
    ];
  });
}

interface Placed {
  readonly file: string;
  readonly at: string;
  readonly only: readonly string[] | null;
}

const VIEWS = new URL("../../../src/ui/views/", import.meta.url);
const components = readdirSync(VIEWS, { recursive: true, encoding: "utf8" }).filter((one) =>
  one.endsWith(".svelte"),
);
const sourceOf = (file: string): string => readFileSync(new URL(file, VIEWS), "utf8");

/** The forms that the views hold. */
const placed: readonly Placed[] = components.flatMap((file) =>
  [...sourceOf(file).matchAll(/<(Form|FormList)\s(.*?)\/>/gs)].flatMap(([, kind, props = ""]): Placed[] => {
    const at = /\bat=(?:"([^"]*)"|\{([^}]*)\})/.exec(props);
    const only = /\bonly=\{\[([^\]]*)\]\}/.exec(props)?.[1];
    const path = at?.[1] ?? at?.[2];
    if (path === undefined) throw new Error(`A form in ${file} does not say where it stands.`);
    // What a list opens is told by the list itself.
    if (path === "{at}[{i}]") return [];
    return [
      {
        file,
        at: kind === "FormList" ? `${path}[]` : path.replace("{i}", ""),
        only: only === undefined ? null : [...only.matchAll(/"(\w+)"/g)].map((one) => one[1] ?? ""),
      },
    ];
  }),
);

function claimedByForm({ at, only }: Placed): readonly string[] {
  const list = at.endsWith("[]") ? at.slice(0, -2) : null;
  const paths =
    at === "one.path"
      ? fileEntries(full.bait).map(({ path }) => path)
      : list === null
        ? [at]
        : (valueAt(full, pathSteps(list)) as readonly unknown[]).map((_, i) => `${list}[${i}]`);
  return paths.flatMap((path) =>
    formKeys(
      full,
      pathSteps(path),
      formAt(path, full).filter(({ key }) => only === null || only.includes(key)),
    ),
  );
}

/** A value that an input allows and the document does not have. */
function another(input: Input): number {
  const { min, max, step } = input.slider;
  const now = input.read(full);
  return [min + step, max - step].find((one) => one !== now && (now - one) * one >= 0) ?? max;
}

function claimedByInputs(): readonly string[] {
  const inputs = [
    ...[...waterInputs(full), ...bodyInputs(full), ...tackleInputs(full)].flatMap((group) => group.inputs),
    ...columnInputs(full),
    ...reelInputs(full),
    ...full.cadence.flatMap((entry, i) =>
      entry.do === "repeat"
        ? [
            inputAt(full, ["cadence", i, "times"]),
            ...entry.moves.flatMap((_, inner) => moveInputs(full, moveSteps(i, inner))),
          ]
        : moveInputs(full, moveSteps(i, null)),
    ),
  ];
  return inputs.flatMap((input) => written(full, input.write(full, another(input))));
}

const claimedByBoard = (): readonly string[] =>
  CURVES.flatMap((key) => {
    const [[s, v] = [0, 0]] = pointsOf(full.bait, key).slice(-1);
    const index = pointsOf(full.bait, key).length - 1;
    return written(full, setPoint(full, key, index, [s, v + 0.5]));
  });

function claimedByRecipe(): readonly string[] {
  const day = "2026-03-04";
  const keys = ["design", "built", "tested"] as const;
  const down = keys.reduce((from, key) => noteDown(setDown(from, key, day), key, "noted"), full);
  return [...written(full, down), ...written(down, buildAnew(down, "The second one"))].map((path) =>
    path.replace(/^(recipe\.\w+\.(?:bait|bench|tub|corrections)).*/, "$1.*"),
  );
}

/** The target is answered in words: what its questions write stands in their component. */
const claimedByWishes = (): readonly string[] => {
  const source =
    sourceOf("parts/WishFields.svelte") + readFileSync(new URL("../maker/wish.ts", VIEWS), "utf8");
  const asked = [...source.matchAll(/\bput\("(\w+)"|\b(\w+)(?:: (?!_|readonly)|\b(?= }))/g)];
  const names = new Set(asked.flatMap(([, a, b]) => [a ?? b ?? ""]));
  return formAt("target").flatMap(({ key }) => (names.has(key) ? [`target.${key}`] : []));
};

describe("every key of the schema", () => {
  const all = leaves(scenarioJsonSchema());
  const forms = placed.map((one) => ({ ...one, keys: claimedByForm(one) }));
  const others = [...claimedByInputs(), ...claimedByBoard(), ...claimedByRecipe(), ...claimedByWishes()];
  const missing = (used: readonly { readonly keys: readonly string[] }[]): readonly string[] => {
    const known = new Set([...others, ...used.flatMap(({ keys }) => keys)]);
    return all.filter((path) => !known.has(path));
  };

  test("is written by an input of the page", () => {
    expect(all.length).toBeGreaterThan(150);
    expect(missing(forms)).toEqual([]);
  });

  test("would be missed if its form went", () => {
    const without = (part: string): readonly string[] => missing(forms.filter(({ file }) => file !== part));
    expect(without("weigh/Bands.svelte")).toEqual(all.filter((path) => path.startsWith("uncertainty.")));
    expect(without("draw/About.svelte")).toEqual(
      all.filter((path) => /^(notes|limits|expect\[\].*)$/.test(path)),
    );
    expect(without("draw/Parts.svelte")).toContain("bait.ballast[].filler_g_ml");
    expect(without("draw/Stock.svelte")).toContain("stock.pieces");
    expect(without("float/Corrections.svelte")).toContain("tub[]{waterline}.deviation_mm");
  });

  test("no form writes a key that the schema has not", () => {
    const strange = forms.flatMap(({ file, keys }) =>
      keys.filter((path) => !all.includes(path)).map((path) => `${file}: ${path}`),
    );
    expect(strange).toEqual([]);
  });
});

describe("a figure of any kind", () => {
  test.each([1.5, -0.02, 3e-7, true, false, null, "rises", "12 mm"])("%s is typed as it is read", (value) => {
    expect(valueFrom(valueWords(value))).toBe(value);
  });

  test("takes a comma and a true minus", () => {
    expect([valueFrom(" −0,5 "), valueFrom("none of it")]).toEqual([-0.5, "none of it"]);
  });
});
