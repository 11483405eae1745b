import type { en } from "./en";

/** A text, or one form for each plural case. */
type Entry = string | { readonly one: string; readonly other: string };

export type Key = keyof typeof en;

/** The same keys as in English; a text with plural forms has them in every language. */
export type Catalogue = {
  readonly [K in Key]: (typeof en)[K] extends string ? string : Exclude<Entry, string>;
};

type InBraces<T extends string> = T extends `${string}{${infer Name}}${infer Rest}`
  ? Name | InBraces<Rest>
  : never;
type TextOf<E> = E extends string ? E : E extends { readonly other: infer T extends string } ? T : never;

/** The places of a text that have to be filled. */
export type Places<K extends Key> = InBraces<TextOf<(typeof en)[K]>>;

/** What `tell` has to be given beside the key. */
export type Given<K extends Key> = [Places<K>] extends [never]
  ? []
  : [Readonly<Record<Places<K>, string | number>>];
