import { scenarioSchema } from "./schema";
import type { Scenario } from "./schema";

/** Width of a line of the file; a list or group that fits on one line stays on one. */
const WIDTH = 110;

/**
 * The text of a scenario file: keys in the order of the format, empty lists left out, lists and groups that
 * fit on one line. Reading it back gives an equal scenario, number by number (JavaScript prints the
 * shortest decimal that reads back exactly).
 */
export function serialize(scenario: Scenario): string {
  // The schema puts keys in their order, and refuses what could not be read back.
  const ordered = scenarioSchema.parse(scenario);
  const lean = {
    ...withoutEmptyLists(ordered),
    bait: withoutEmptyLists(ordered.bait),
    ...(ordered.recipe === undefined ? {} : { recipe: leanRecipe(ordered.recipe) }),
  };
  return `${print(lean, 0, true)}\n`;
}

/** What is set down, without its empty lists. */
const leanRecipe = (recipe: object): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(recipe).map(([key, one]: [string, unknown]) =>
      typeof one === "object" && one !== null && "bait" in one && typeof one.bait === "object"
        ? [key, { ...withoutEmptyLists(one), bait: withoutEmptyLists(one.bait ?? {}) }]
        : [key, one],
    ),
  );

/** A group without its empty lists. */
export function withoutEmptyLists(group: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(group).filter(([, value]) => !(Array.isArray(value) && value.length === 0)),
  );
}

/** A value as JSON text: what fits on a line stays on one. */
export function print(value: unknown, indent: number, broken: boolean): string {
  const flat = inline(value);
  if (!broken && indent + flat.length <= WIDTH) return flat;
  const pad = " ".repeat(indent + 2);
  const close = " ".repeat(indent);
  if (Array.isArray(value) && value.length > 0) {
    const entries = value.map((one) => pad + print(one, indent + 2, false));
    return `[\n${entries.join(",\n")}\n${close}]`;
  }
  if (typeof value === "object" && value !== null && !Array.isArray(value) && Object.keys(value).length > 0) {
    const entries = Object.entries(value).map(([key, one]) => {
      const head = `${pad}${JSON.stringify(key)}: `;
      // The text before a value on its line counts towards the width.
      return (
        head + print(one, indent + 2, indent + 2 + head.length - pad.length + inline(one).length > WIDTH)
      );
    });
    return `{\n${entries.join(",\n")}\n${close}}`;
  }
  return flat;
}

function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(", ")}]`;
  if (typeof value === "object" && value !== null) {
    const entries = Object.entries(value).map(([key, one]) => `${JSON.stringify(key)}: ${inline(one)}`);
    return entries.length === 0 ? "{}" : `{ ${entries.join(", ")} }`;
  }
  return JSON.stringify(value);
}
