import type { Echoes, Told } from "./echo";
import type { Language } from "./language";

/**
 * What document, model and sheets say in English, told in other languages: for the page, and for the sheets of the headless
 * command. A language, and what tells it, come when they are asked for.
 */
export type { Echoes, Told } from "./echo";
export { LANGUAGES, marked } from "./language";
export type { Language } from "./language";

/** Where the other languages of some texts come from. */
export type Sources = Readonly<Record<Exclude<Language, "en">, () => Promise<{ readonly texts: Echoes }>>>;

/** What the scenario's file and the model say of a bait. */
export const OF_FILE: Sources = { de: () => import("./de") };
/** The same with what the printed sheets say. */
export const OF_SHEETS: Sources = { de: () => import("./de-sheet") };

/** English texts stay as they are. */
export const ENGLISH: Told = { language: "en", of: (english) => english };

/** Who tells the texts of a source in a language. */
export async function toldIn(language: Language, sources: Sources): Promise<Told> {
  if (language === "en") return ENGLISH;
  const [{ texts }, { Echo }] = await Promise.all([sources[language](), import("./echo")]);
  return new Echo(texts, language);
}
