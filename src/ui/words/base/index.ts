/**
 * All text of the page in one catalogue, part by part, with typed keys and typed places: a key that does not exist, or a
 * place that is not filled, is an error of types. A module of our own: a library that writes its modules at build time
 * would have to run before types, lint and tests each time.
 */
export { Below } from "./below.svelte";
export type { Entry, Texts, Translated } from "./catalogue";
export { languageHere, provideLanguage } from "./here";
export { Part } from "./part.svelte";
export { LANGUAGES, marked } from "../../../languages";
export type { Echoes, Language, Told } from "../../../languages";
export { inside, LANGUAGE_NAMES, Speaker } from "./speaker";
export type { Saying } from "./speaker";
