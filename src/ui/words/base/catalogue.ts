/** A text, or one form for each plural case. */
export type Entry = string | { readonly one: string; readonly other: string };
/** The texts of one part of the page. */
export type Texts = Readonly<Record<string, Entry>>;

/** The same keys as in English; a text with plural forms has them in every language. */
export type Translated<T extends Texts> = {
  readonly [K in keyof T]: T[K] extends string ? string : Exclude<Entry, string>;
};

type InBraces<T extends string> = T extends `${string}{${infer Name}}${infer Rest}`
  ? Name | InBraces<Rest>
  : never;
type TextOf<E> = E extends string ? E : E extends { readonly other: infer T extends string } ? T : never;

/** The places of a text that have to be filled. */
export type Places<E> = InBraces<TextOf<E>>;

/** What `tell` has to be given beside the key. */
export type Given<E> = [Places<E>] extends [never] ? [] : [Readonly<Record<Places<E>, string | number>>];
