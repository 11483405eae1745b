import { z } from "zod";

/**
 * Helpers that make one schema field in one line. Each line gives the TypeScript type, the check, the
 * unit, the range, the form field (label, slider, help) and the entry of the published JSON Schema.
 */

// The app's content security policy forbids `unsafe-eval`, which zod's compiled fast path would need.
z.config({ jitless: true });

/** Units as they stand in key names and on screen; "" for a pure number. */
export type FieldUnit =
  "mm" | "mm²" | "m" | "g" | "mL" | "g/mL" | "kg/m³" | "°" | "°C" | "g/kg" | "m/s" | "mm/s" | "s" | "N" | "";

declare module "zod" {
  interface GlobalMeta {
    /** Unit of the number, as shown. */
    unit?: FieldUnit;
    /** Range and step that a slider offers: what is usual, inside what is allowed. */
    slider?: { min: number; max: number; step: number };
  }
}

/** What a form needs to know about one number of the document. */
export interface NumberField {
  readonly kind: "number";
  readonly label: string;
  readonly unit: FieldUnit;
  /** Allowed, both ends included (`above` true: the lower end is excluded). */
  readonly min: number;
  readonly max: number;
  readonly above: boolean;
  readonly whole: boolean;
  readonly slider: { readonly min: number; readonly max: number; readonly step: number };
  readonly help: string;
}
export interface TextField {
  readonly kind: "text";
  readonly label: string;
  readonly help: string;
}
export interface ChoiceField {
  readonly kind: "choice";
  readonly label: string;
  readonly options: readonly string[];
  readonly help: string;
}
export interface FlagField {
  readonly kind: "flag";
  readonly label: string;
  readonly help: string;
}
/** A group (object), a list or a point: `label` and `help` only. */
export interface GroupField {
  readonly kind: "group" | "list" | "point";
  readonly label: string;
  readonly help: string;
}
export type Field = NumberField | TextField | ChoiceField | FlagField | GroupField;

type Range = readonly [min: number, max: number];
type Slider = readonly [min: number, max: number, step: number];

function meta(label: string, help: string, unit?: FieldUnit, slider?: Slider) {
  return {
    title: label,
    ...(help === "" ? {} : { description: help }),
    ...(unit === undefined ? {} : { unit }),
    ...(slider === undefined ? {} : { slider: { min: slider[0], max: slider[1], step: slider[2] } }),
  };
}

/** A finite number from `range[0]` to `range[1]`, both included. */
export function number(label: string, unit: FieldUnit, range: Range, slider: Slider, help = "") {
  return z
    .number()
    .min(range[0])
    .max(range[1])
    .meta(meta(label, help, unit, slider));
}

/** A finite number above `range[0]` (excluded) and up to `range[1]`. */
export function above(label: string, unit: FieldUnit, range: Range, slider: Slider, help = "") {
  return z
    .number()
    .gt(range[0])
    .max(range[1])
    .meta(meta(label, help, unit, slider));
}

/** A whole number. */
export function whole(label: string, range: Range, slider: Slider, help = "") {
  return z
    .int()
    .min(range[0])
    .max(range[1])
    .meta(meta(label, help, "", slider));
}

export function text(label: string, longest: number, help = "") {
  return z.string().max(longest).meta(meta(label, help));
}

/** A name: text that is not empty. */
export function name(label: string, help = "") {
  return z.string().min(1).max(120).meta(meta(label, help));
}

export function choice<const T extends readonly [string, ...string[]]>(label: string, options: T, help = "") {
  return z.enum(options).meta(meta(label, help));
}

export function flag(label: string, help = "") {
  return z.boolean().meta(meta(label, help));
}

/** [station, height] in mm. */
export function point(label: string, help = "") {
  return z
    .tuple([
      number(
        "Station",
        "mm",
        [-2000, 4000],
        [-20, 200, 0.5],
        "Aft of the nose tip along the datum line; negative lies ahead of the nose.",
      ),
      number("Height", "mm", [-1000, 1000], [-60, 60, 0.5], "Up from the datum line."),
    ])
    .meta(meta(label, help));
}

/** A curve along the bait: points of station and value. */
export function curve(label: string, value: z.ZodNumber, least: number, help = "") {
  const station = number(
    "Station",
    "mm",
    [0, 2000],
    [0, 200, 0.5],
    "Aft of the nose tip along the datum line.",
  );
  return z
    .array(z.tuple([station, value]))
    .min(least)
    .max(400)
    .meta(meta(label, help));
}

/** A list; absent means empty. */
export function list<T extends z.ZodType>(label: string, element: T, longest: number, help = "") {
  return z.array(element).max(longest).meta(meta(label, help)).default([]);
}

/** A key that may be left out. `undefined` is no value: leave the key out. */
export function maybe<T extends z.ZodType>(schema: T) {
  return z.exactOptional(schema);
}

/** The schema inside optional and default wrappers. */
export function bare(schema: z.core.$ZodType): z.core.$ZodType {
  let inner = schema;
  while (
    inner instanceof z.ZodOptional ||
    inner instanceof z.ZodExactOptional ||
    inner instanceof z.ZodDefault
  ) {
    inner = inner.def.innerType;
  }
  return inner;
}

export type Path = readonly (string | number)[];

/**
 * The schemas that a value at `path` may follow (several where the path crosses a choice of kinds, such as
 * the moves of a cadence); empty where no key of that path exists. Where `value` is given, its kind decides.
 */
export function schemasAt(root: z.core.$ZodType, path: Path, value?: unknown): readonly z.core.$ZodType[] {
  let schemas: z.core.$ZodType[] = [bare(root)];
  let at = value;
  for (const step of path) {
    const found: z.core.$ZodType[] = [];
    for (const schema of schemas.flatMap((one) => variants(one, at))) {
      const next = child(schema, step);
      if (next !== null) found.push(bare(next));
    }
    schemas = found;
    at = typeof at === "object" && at !== null ? (at as Record<string | number, unknown>)[step] : undefined;
  }
  return schemas.flatMap((one) => variants(one, at));
}

function variants(schema: z.core.$ZodType, value: unknown): z.core.$ZodType[] {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return [schema];
  const options = schema.options as z.core.$ZodType[];
  const key = schema.def.discriminator;
  const kind =
    typeof value === "object" && value !== null ? (value as Record<string, unknown>)[key] : undefined;
  const matching = options.filter((option) => {
    const tag = option instanceof z.ZodObject ? (option.shape as Record<string, unknown>)[key] : undefined;
    return tag instanceof z.ZodLiteral && tag.values.has(kind as string);
  });
  return matching.length > 0 ? matching : options;
}

function child(schema: z.core.$ZodType, step: string | number): z.core.$ZodType | null {
  if (schema instanceof z.ZodObject) {
    const shape = schema.shape as Record<string, z.core.$ZodType>;
    return Object.hasOwn(shape, step) ? (shape[step] ?? null) : null;
  }
  if (schema instanceof z.ZodArray && typeof step === "number") return schema.element;
  if (schema instanceof z.ZodTuple && typeof step === "number") {
    return schema.def.items[step] ?? null;
  }
  return null;
}

/** A check that excludes the lower end itself. */
function isAbove(check: { readonly _zod: { readonly def: object } }): boolean {
  const def = check._zod.def as { check?: string; inclusive?: boolean };
  return def.check === "greater_than" && def.inclusive === false;
}

/** Form metadata of one schema. */
export function fieldOf(schema: z.core.$ZodType): Field | null {
  const about = z.globalRegistry.get(schema) ?? {};
  const label = about.title ?? "";
  const help = about.description ?? "";
  if (schema instanceof z.ZodNumber) {
    const min = schema.minValue ?? -Infinity;
    const max = schema.maxValue ?? Infinity;
    return {
      kind: "number",
      label,
      unit: about.unit ?? "",
      min,
      max,
      above: (schema.def.checks ?? []).some(isAbove),
      whole: schema.format === "safeint",
      slider: about.slider ?? { min, max, step: 1 },
      help,
    };
  }
  if (schema instanceof z.ZodString) return { kind: "text", label, help };
  if (schema instanceof z.ZodEnum)
    return { kind: "choice", label, options: schema.options.map(String), help };
  if (schema instanceof z.ZodBoolean) return { kind: "flag", label, help };
  if (schema instanceof z.ZodObject) return { kind: "group", label, help };
  if (schema instanceof z.ZodArray) return { kind: "list", label, help };
  if (schema instanceof z.ZodTuple) return { kind: "point", label, help };
  return null;
}

/** "bait.ballast[0].mass_g" → ["bait", "ballast", 0, "mass_g"]. */
export function pathSteps(path: string): Path {
  const steps: (string | number)[] = [];
  for (const found of path.matchAll(/\[(\d+)\]|([^.[\]]+)/g)) {
    if (found[1] !== undefined) steps.push(Number(found[1]));
    else if (found[2] !== undefined) steps.push(found[2]);
  }
  return steps;
}

/** ["bait", "ballast", 0, "mass_g"] → "bait.ballast[0].mass_g"; a key that is no plain word is quoted. */
export function pathText(path: readonly PropertyKey[]): string {
  let out = "";
  for (const step of path) {
    if (typeof step === "number") out += `[${step}]`;
    else if (/^[A-Za-z_$][\w$]*$/.test(String(step))) out += out === "" ? String(step) : `.${String(step)}`;
    else out += `[${JSON.stringify(String(step).slice(0, 60))}]`;
  }
  return out;
}

/** The value at a path, or undefined. */
export function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let at = root;
  for (const step of path) {
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return at;
}
