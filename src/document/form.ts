import { z } from "zod";
import { lineMaterial, lineStiffness, material } from "../model/materials";
import { hookOfSize } from "../model/parts";
import { UNCERTAINTY } from "./compile";
import { bare, fieldOf, pathSteps, schemasAt } from "./fields";
import type { Field, NumberField, Path } from "./fields";
import { scenarioSchema } from "./schema";
import type { Scenario } from "./schema";
import { mm, toMm } from "./si";

/** The form of a thing in the document, made from its schema: a maker reaches every key that the format has. */

/** A figure of any kind: a number, words, yes or no, none. */
export interface ValueField {
  readonly kind: "value";
  readonly label: string;
  readonly help: string;
}

interface Bounds {
  readonly least: number;
  readonly most: number;
}

export interface FormKey {
  readonly key: string;
  readonly field: Field | ValueField;
  /** The key may be left out. */
  readonly optional: boolean;
  /** The keys of a group. */
  readonly keys: readonly FormKey[];
  /** A list of points: its fewest and most points. */
  readonly points: Bounds | null;
  /** A list of single numbers or words: one of them, and how many there may be. */
  readonly list: (Bounds & { readonly each: Field }) | null;
  /** The numbers of a point, in their order. */
  readonly items: readonly NumberField[];
  /** Words that may fill a paragraph. */
  readonly long: boolean;
  /** The material's name is looked up in the table of lines, not in that of things. */
  readonly ofLine: boolean;
}

/**
 * The keys of the object at a path ("" is the whole document), in the order of the file. `value`, the document, decides
 * between kinds where keys of one name differ.
 */
export function formAt(path: string, value?: unknown): readonly FormKey[] {
  const schema = schemasAt(scenarioSchema, pathSteps(path), value)[0];
  return schema instanceof z.ZodObject ? keysOf(schema, path.startsWith("tackle")) : [];
}

function keysOf(schema: z.ZodObject, ofLine = false): readonly FormKey[] {
  return Object.entries(schema.shape as Record<string, z.core.$ZodType>).flatMap(([key, one]): FormKey[] => {
    const inner = bare(one);
    const field = valueFieldOf(inner) ?? fieldOf(inner);
    if (field === null) return [];
    const element = inner instanceof z.ZodArray ? bare(inner.element) : null;
    const bounds = { least: sizeOf(inner, "min_length") ?? 0, most: sizeOf(inner, "max_length") ?? Infinity };
    const each = element instanceof z.ZodNumber || element instanceof z.ZodString ? fieldOf(element) : null;
    return [
      {
        key,
        field,
        optional: one instanceof z.ZodOptional || one instanceof z.ZodExactOptional,
        keys: inner instanceof z.ZodObject ? keysOf(inner) : [],
        points: element instanceof z.ZodTuple ? bounds : null,
        list: each === null ? null : { ...bounds, each },
        items: inner instanceof z.ZodTuple ? inner.def.items.flatMap(numberFieldOf) : [],
        long: inner instanceof z.ZodString && (inner.maxLength ?? 0) > LINE,
        ofLine,
      },
    ];
  });
}

const numberFieldOf = (schema: z.core.$ZodType): readonly NumberField[] => {
  const field = fieldOf(bare(schema));
  return field?.kind === "number" ? [field] : [];
};

/** What is longer than so many letters takes more than one line of a form. */
const LINE = 400;

/** A union of plain kinds is a figure of any kind; one that a key decides is a choice of things. */
function valueFieldOf(schema: z.core.$ZodType): ValueField | null {
  if (!(schema instanceof z.ZodUnion) || schema instanceof z.ZodDiscriminatedUnion) return null;
  const { title = "", description = "" } = z.globalRegistry.get(schema) ?? {};
  return { kind: "value", label: title, help: description };
}

/** A bound of a list's length. */
function sizeOf(schema: z.core.$ZodType, kind: "min_length" | "max_length"): number | null {
  for (const check of (schema._zod.def as { checks?: readonly z.core.$ZodCheck[] }).checks ?? []) {
    const def = check._zod.def as { check?: string; minimum?: number; maximum?: number };
    if (def.check === kind) return (kind === "min_length" ? def.minimum : def.maximum) ?? null;
  }
  return null;
}

/** Keys of which an entry has exactly one: switching one on switches the other off. */
const EITHER: Readonly<Record<string, string>> = { thickness_mm: "mass_g", mass_g: "thickness_mm" };

/** What an optional key begins with. Usual sizes: common practice, no source. */
const STARTS: Readonly<Record<string, unknown>> = {
  hole_ml: 0.2,
  drill_mm: 5,
  filler_g_ml: 1.1,
  thickness_mm: 0.1,
  mass_g: 0.3,
  ring: { mass_g: 0.1 },
  hook: { mass_g: 0.5 },
  balls: { count: 1, diameter_mm: 3, material: "carbon steel" },
  size: "6",
  weighed: true,
  material: "tin",
  // Those of docs/scenario-format.md, tub.
  deviation_deg: 2,
  deviation_mm: 0.5,
  netDeviation_g: 0.05,
  aftDeviation_mm: 0.5,
  upDeviation_mm: 0.5,
  current_m_s: 0,
  calibration: { bibFactor: 1 },
  measured: { speed_m_s: 1, lineOut_m: 20, depth_m: 1 },
  pusher: { diameter_mm: 1, depth_mm: 10, count: 2 },
  tolerance: 0.01,
};

type Json = Record<string | number, unknown>;

type Share = Exclude<keyof typeof UNCERTAINTY, "drawnLength">;
const isShare = (key: string): key is Share => key !== "drawnLength" && Object.hasOwn(UNCERTAINTY, key);

/** What a key of this thing begins with when it is switched on. */
function startOf({ key, field }: FormKey, thing: Json): unknown {
  if (key === "density_g_ml") {
    const found = typeof thing["material"] === "string" ? material(thing["material"]) : null;
    return found === null ? 1 : Number((found.density / 1e3).toFixed(4));
  }
  if (key === "length_mm" || key === "gape_mm") {
    const sized = typeof thing["size"] === "string" ? hookOfSize(thing["size"]) : null;
    const start = sized ?? { length: 0.022, gape: 0.0075 };
    return toMm(key === "length_mm" ? start.length : start.gape);
  }
  if (key === "density_kg_m3" || key === "stiffness_N") {
    const { material: name, diameter_mm } = thing as Scenario["tackle"]["line"];
    const line = lineMaterial(name);
    if (line !== null)
      return key === "density_kg_m3" ? line.density : Math.round(lineStiffness(line, mm(diameter_mm)));
  }
  if (key === "repeats_g") return [thing["reading_g"]];
  if (key === "drawnLength_mm") return toMm(UNCERTAINTY.drawnLength);
  if (field.kind === "number" && isShare(key)) return UNCERTAINTY[key];
  const known = STARTS[key];
  if (known !== undefined) return known;
  if (field.kind === "list") return [];
  if (field.kind === "choice") return field.options[0];
  if (field.kind === "number") return field.slider.min;
  return field.kind === "flag" ? true : field.kind === "text" ? "" : {};
}

/** A copy of a document with an optional key of the thing at `path` switched on or off. */
export function switched<T>(root: T, path: Path, key: FormKey, on: boolean, others: readonly FormKey[]): T {
  return changedAt(root, path, (held) => {
    const thing = { ...held };
    if (!on) {
      delete thing[key.key];
      return thing;
    }
    thing[key.key] = startOf(key, held);
    const other = EITHER[key.key];

    if (other !== undefined && others.some((one) => one.key === other && one.optional)) delete thing[other];
    return thing;
  });
}

function changedAt<T>(root: T, path: Path, change: (held: Json) => Json): T {
  const [head, ...rest] = path;
  if (head === undefined) return change(root as Json) as T;
  const copy = (Array.isArray(root) ? [...(root as unknown[])] : { ...(root as object) }) as Json;
  copy[head] = changedAt(copy[head], rest, change);
  return copy as T;
}

/** A figure of any kind as a person reads it. */
export function valueWords(value: unknown): string {
  if (value === null) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "number" || typeof value === "string" ? String(value) : "";
}

/** What was typed, as a figure: a number where it reads as one, yes, no or none; else the words themselves. */
export function valueFrom(text: string): number | string | boolean | null {
  const said = text.trim();
  const number = /^[-+−]?\d+([.,]\d+)?(e[-+]?\d+)?$/i.test(said)
    ? Number(said.replace("−", "-").replace(",", "."))
    : NaN;
  if (Number.isFinite(number)) return number;
  const plain: Readonly<Record<string, boolean | null>> = { yes: true, no: false, none: null };
  return Object.hasOwn(plain, said) ? (plain[said] ?? null) : said;
}
