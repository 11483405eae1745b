import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { scenarioJsonSchema, valueAt } from "../../src/document";
import { random as seeded } from "../../src/model/base";
import { sample } from "../lib/sample";

/**
 * A thousand spoilt files: each must be refused with exit 2, nothing on standard output, and a message that
 * has the place and a remedy. What is spoilt is drawn with a fixed seed from the scenarios of the project.
 */

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];

export interface Spoilt {
  readonly what: string;
  readonly text: string | Uint8Array;
  /** The message names this path; "" where the file as a whole is at fault. */
  readonly path: string;
}

export const originals: readonly Json[] = [
  sample() as Json,
  ...readdirSync("scenarios").map(
    (name) => JSON.parse(readFileSync(join("scenarios", name), "utf8")) as Json,
  ),
];

export const random = seeded(20_260_101);
export const pick = <T>(list: readonly T[]): T => {
  const one = list[Math.floor(random.uniform() * list.length)];
  if (one === undefined) throw new Error("nothing to pick from");
  return one;
};

/** Paths of all values that pass the test, expectations left out: their `value` may be anything. */
export function places(root: Json, test: (value: Json, path: Path) => boolean): Path[] {
  const out: Path[] = [];
  const walk = (value: Json, path: Path) => {
    if (path[0] === "expect") return;
    if (path.length > 0 && test(value, path)) out.push(path);
    if (Array.isArray(value))
      value.forEach((one, i) => {
        walk(one, [...path, i]);
      });
    else if (typeof value === "object" && value !== null) {
      for (const [key, one] of Object.entries(value)) walk(one, [...path, key]);
    }
  };
  walk(root, []);
  return out;
}

/** A deep copy with the value at a path replaced. */
export function put(root: Json, path: Path, value: Json): Json {
  const copy = structuredClone(root);
  const parent = valueAt(copy, path.slice(0, -1)) as Record<string | number, Json>;
  parent[path.at(-1) ?? ""] = value;
  return copy;
}

export const isNumber = (value: Json) => typeof value === "number";
export const isObject = (value: Json) => typeof value === "object" && value !== null && !Array.isArray(value);
export const text = (value: Json) => JSON.stringify(value, null, 2);

/** The text with one number replaced by a word that JSON has not. */
export function withWord(root: Json, path: Path, word: string): string {
  const mark = "<<<mark>>>";
  return text(put(root, path, mark)).replace(JSON.stringify(mark), word);
}

interface Schema {
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  oneOf?: Schema[];
}

/** Keys that the published JSON Schema requires of the group at a path. */
export function required(root: Json, path: Path): string[] {
  let schemas: Schema[] = [scenarioJsonSchema()];
  for (const step of path) {
    schemas = schemas.flatMap((one) => {
      const next = typeof step === "number" ? one.items : one.properties?.[step];
      return next === undefined ? [] : (next.oneOf ?? [next]);
    });
  }
  const group = valueAt(root, path) as Record<string, Json>;
  const fitting = schemas.filter((one) => Object.keys(group).every((key) => key in (one.properties ?? {})));
  return fitting[0]?.required ?? [];
}
