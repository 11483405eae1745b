import { getContext, setContext } from "svelte";
import type { Language } from "../../../languages";

const KEY = Symbol("language");

/** Says to all components below which language is read. */
export const provideLanguage = (of: () => Language): void => void setContext(KEY, of);

/** The language that is read; English where nobody has said. For components that know nothing of the page's state. */
export const languageHere = (): (() => Language) =>
  getContext<(() => Language) | undefined>(KEY) ?? (() => "en");
