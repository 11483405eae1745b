/** The same type with nothing in it that can be changed in place, at any depth. */
export type Immutable<T> = { readonly [K in keyof T]: Immutable<T[K]> };
