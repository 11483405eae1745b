/**
 * Readers of what the browser has kept for a view: the value where it is of the right kind, undefined where not. Then
 * the view begins with its own.
 */

/** More entries than a hand makes: a list that is longer has been spoiled. */
const MOST_ENTRIES = 1000;
const MOST_LETTERS = 2000;

export const aNumber = (value: unknown): number | undefined =>
  typeof value === "number" && Number.isFinite(value) ? value : undefined;

export const aCount = (value: unknown): number | undefined =>
  Number.isSafeInteger(value) && (value as number) >= 0 ? (value as number) : undefined;

export const aFlag = (value: unknown): boolean | undefined =>
  typeof value === "boolean" ? value : undefined;

export const aText = (value: unknown): string | undefined =>
  typeof value === "string" && value.length <= MOST_LETTERS ? value : undefined;

export const oneOf =
  <T extends string>(...allowed: readonly T[]) =>
  (value: unknown): T | undefined =>
    allowed.find((one) => one === value);

export const orNull =
  <T>(reader: (value: unknown) => T | undefined) =>
  (value: unknown): T | null | undefined =>
    value === null ? null : reader(value);

export const listOf =
  <T>(reader: (value: unknown) => T | undefined) =>
  (value: unknown): readonly T[] | undefined => {
    if (!Array.isArray(value) || value.length > MOST_ENTRIES) return undefined;
    const read = value.flatMap((one: unknown) => reader(one) ?? []) as readonly T[];
    return read.length === value.length ? read : undefined;
  };

/** A group of which every key must be readable. */
export const groupOf =
  <T extends object>(readers: { readonly [K in keyof T]: (value: unknown) => T[K] | undefined }) =>
  (value: unknown): T | undefined => {
    if (typeof value !== "object" || value === null) return undefined;
    const keys = Object.keys(readers) as (keyof T & string)[];
    const read = keys.map((key) => [key, readers[key]((value as Record<string, unknown>)[key])] as const);
    return read.some(([, one]) => one === undefined) ? undefined : (Object.fromEntries(read) as T);
  };

/** A group under any keys, each of which must be readable. */
export const aRecord =
  <T>(reader: (value: unknown) => T | undefined) =>
  (value: unknown): Readonly<Record<string, T>> | undefined => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
    const entries = Object.entries(value);
    if (entries.length > MOST_ENTRIES) return undefined;
    const read = entries.map(([key, one]) => [key, reader(one)] as const);
    return read.some(([, one]) => one === undefined)
      ? undefined
      : (Object.fromEntries(read) as Readonly<Record<string, T>>);
  };
