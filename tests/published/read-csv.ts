import { readFileSync } from "node:fs";

/** Rows of a table beside the tests, by column name; fields may be quoted. */
export function readCsv(name: string): readonly Readonly<Record<string, string>>[] {
  const text = readFileSync(new URL(`./data/${name}`, import.meta.url), "utf8");
  const lines = text.trimEnd().split("\n").map(fields);
  const [head, ...rows] = lines;
  if (!head) throw new Error(`${name} is empty`);
  return rows.map((row) => Object.fromEntries(head.map((key, i) => [key, row[i] ?? ""])));
}

function fields(line: string): string[] {
  const out: string[] = [];
  for (const match of line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g))
    out.push(match[1]?.replaceAll('""', '"') ?? match[2] ?? "");
  return out;
}

/** A field as a number; throws where it is none. */
export function number(row: Readonly<Record<string, string>>, key: string): number {
  const text = row[key];
  const value = Number(text);
  if (text === undefined || text.trim() === "" || !Number.isFinite(value))
    throw new Error(`field ${key} of ${JSON.stringify(row)} is no number`);
  return value;
}
