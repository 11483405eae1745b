import type { z } from "zod";
import { bare, fieldOf, pathText, schemasAt, valueAt } from "./fields";
import type { Field } from "./fields";
import { describe, nearest, problem } from "./problem";
import type { Place, Problem } from "./problem";

/** For this many problems the key that was meant is looked for: nobody reads more of them, and each search takes time. */
const LOOKED_FOR = 100;

/** Turns what the schema found into problems that name the place, what stands there, what may, and the remedy. */
export function problemsOf(
  root: z.core.$ZodType,
  value: unknown,
  issues: readonly z.core.$ZodIssue[],
  place: (path: string) => Place | null,
): Problem[] {
  return issues.flatMap((issue) => {
    const path = pathText(issue.path);
    if (issue.code === "unrecognized_keys") {
      const known = keysAt(root, value, issue.path);
      const allowed = known.join(", ");
      return issue.keys.map((key, i) =>
        unknownKey(issue.path, key, i < LOOKED_FOR ? known : [], allowed, place),
      );
    }
    const found = valueAt(value, issue.path);
    const schema = schemasAt(root, schemaPath(issue.path), value)[0];
    const field = schema === undefined ? null : fieldOf(bare(schema));
    if (issue.code === "invalid_union" && issue.discriminator !== undefined) {
      return [wrongKind(path, found, optionsOf(issue), place)];
    }
    if (issue.code === "invalid_value") {
      const options = issue.values.map((one) => JSON.stringify(one));
      const close = typeof found === "string" ? nearest(found, issue.values.map(String), 1) : [];
      const hint = close.length > 0 ? `Did you mean "${close[0]}"?` : `Write ${options.join(" or ")}.`;
      return [problem(path, describe(found), options.join(" or "), hint, place(path))];
    }
    const allowed = field === null ? allowedByIssue(issue) : allowedBy(field, issue);
    return [problem(path, describe(found), allowed, remedyFor(found, field, issue), place(path))];
  });
}

const schemaPath = (path: readonly PropertyKey[]) =>
  path.map((step) => (typeof step === "number" ? step : String(step)));

function optionsOf(issue: z.core.$ZodIssue): string[] {
  const options = (issue as { options?: unknown }).options;
  return Array.isArray(options) ? options.map(String) : [];
}

function wrongKind(
  path: string,
  found: unknown,
  options: readonly string[],
  place: (path: string) => Place | null,
) {
  const close = typeof found === "string" ? nearest(found, options, 1) : [];
  const list = options.map((one) => `"${one}"`).join(", ");
  const remedy = close.length > 0 ? `Did you mean "${close[0]}"?` : "Write one of these words.";
  return problem(path, describe(found), list, remedy, place(path));
}

/** The keys that a group may have. */
function keysAt(root: z.core.$ZodType, value: unknown, path: readonly PropertyKey[]): string[] {
  return schemasAt(root, schemaPath(path), value).flatMap((schema) => {
    const shape = (schema as { shape?: Record<string, unknown> }).shape;
    return shape === undefined ? [] : Object.keys(shape);
  });
}

/**
 * @param alike the keys among which the one that was meant is looked for
 * @param allowed all keys that may stand there, as words
 */
function unknownKey(
  path: readonly PropertyKey[],
  key: string,
  alike: readonly string[],
  allowed: string,
  place: (path: string) => Place | null,
): Problem {
  const at = pathText([...path, key]);
  const close = nearest(key, alike, 1);
  const remedy = close.length > 0 ? `Did you mean "${close[0]}"? Otherwise remove it.` : "Remove it.";
  const shown = key.length > 40 ? `${key.slice(0, 40)}…` : key;
  return problem(at, `the unknown key ${JSON.stringify(shown)}`, allowed, remedy, place(at));
}

const span = (field: Extract<Field, { kind: "number" }>) => {
  const unit = field.unit === "" ? "" : ` ${field.unit}`;
  const kind = field.whole ? "a whole number" : "a number";
  return `${kind} ${field.above ? "above" : "from"} ${field.min} ${field.above ? "up " : ""}to ${field.max}${unit}`;
};

function allowedBy(field: Field, issue: z.core.$ZodIssue): string {
  switch (field.kind) {
    case "number":
      return span(field);
    case "choice":
      return field.options.map((one) => `"${one}"`).join(" or ");
    case "flag":
      return "true or false";
    case "point":
      return "two numbers [station, value] in mm";
    case "group":
      return "a group of keys in { }";
    case "list":
      return issue.code === "invalid_type" ? "a list in [ ]" : allowedByIssue(issue);
    case "text":
      return issue.code === "invalid_type" ? "text in double quotes" : allowedByIssue(issue);
  }
}

function allowedByIssue(issue: z.core.$ZodIssue): string {
  if (issue.code === "too_big" || issue.code === "too_small") {
    const bound = issue.code === "too_big" ? `at most ${issue.maximum}` : `at least ${issue.minimum}`;
    const of = issue.origin === "string" ? "characters" : issue.origin === "array" ? "entries" : "";
    return `${bound} ${of}`.trim();
  }
  if (issue.code === "invalid_type") return issue.expected;
  if (issue.code === "invalid_union") return "a number, text, true, false or null";
  return issue.message;
}

function remedyFor(found: unknown, field: Field | null, issue: z.core.$ZodIssue): string {
  const what = field === null || field.label === "" ? "a value" : `"${field.label}"`;
  if (found === undefined) return `Add this key: ${what} is needed.`;
  if (field?.kind === "number" && typeof found === "string") {
    return /^\s*-?\d+,\d+\s*$/.test(found)
      ? "Write the number without quotes, and with a point for the decimals."
      : "Write the number without quotes and without a unit.";
  }
  if (found === null) return "Give a value, or leave the key out where it is optional.";
  if (issue.code === "too_big" || issue.code === "too_small") {
    if (field?.kind === "list" || field?.kind === "text" || field?.kind === "point") {
      return issue.code === "too_big" ? "Shorten it." : "Add what is missing.";
    }
    return `Give ${what} within this range.`;
  }
  return `Give ${what} as allowed.`;
}
