import { placeOf } from "./formats";
import { FORMAT, VERSION } from "./schema";
import { describe, problem } from "./problem";
import type { Problem } from "./problem";

/**
 * Versions of the scenario file. `version` rises when the meaning of a key changes; keys that are only added do not raise
 * it. A step carries a document from one version to the next, as plain data. It may rely on the old format only, because
 * the check against the schema comes after the last step.
 *
 * To raise the version: set VERSION in schema.ts, add one step here, and one test that carries an old file forward.
 */
export interface Step {
  readonly from: number;
  readonly to: number;
  /** What changed, for people. */
  readonly note: string;
  /** Returns the document of version `to`; must not change what it was given. */
  readonly up: (document: Readonly<Record<string, unknown>>) => Record<string, unknown>;
}

/** Version 1 is the first that was published: nothing to carry forward yet. */
const STEPS: readonly Step[] = [];

export type Carried =
  | { readonly ok: true; readonly document: Record<string, unknown>; readonly notes: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Checks `format` and `version` and carries the document to the current version. */
export function carryForward(
  value: unknown,
  current: number = VERSION,
  steps: readonly Step[] = STEPS,
): Carried {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    const remedy = `A scenario is a group of keys that begins with "format": "${FORMAT}".`;
    return { ok: false, problems: [problem("", describe(value), "a JSON object", remedy)] };
  }
  let document = value as Record<string, unknown>;
  const { format, version } = document;
  if (format !== FORMAT) {
    const remedy =
      placeOf(format) ??
      'This is not a Trimwright scenario, or its "format" key was lost: add it if the rest is right.';
    return { ok: false, problems: [problem("format", describe(format), `"${FORMAT}"`, remedy)] };
  }
  const known = [...steps.map((step) => step.from), current];
  if (typeof version !== "number" || !known.includes(version)) {
    const newer = typeof version === "number" && version > current;
    const remedy = newer
      ? "The file was saved by a newer release: update the program, or save it there for this version."
      : `Set "version": ${current} if the file follows that version.`;
    const allowed = known.length === 1 ? String(current) : known.join(", ");
    return { ok: false, problems: [problem("version", describe(version), allowed, remedy)] };
  }
  const notes: string[] = [];
  for (let at = version; at !== current;) {
    const step = steps.find((one) => one.from === at);
    if (step === undefined || step.to <= at)
      throw new Error(`no step carries version ${at} towards ${current}`);
    document = { ...step.up(document), format: FORMAT, version: step.to };
    notes.push(step.note);
    at = step.to;
  }
  return { ok: true, document, notes };
}
