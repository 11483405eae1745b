import type { Language, Lesson, LessonWords } from "./schema";

/** A text in the language that is read, or in the other one where it stands only there. */
export function inLanguage(words: LessonWords, language: Language): string {
  return words[language] ?? words.en ?? words.de ?? "";
}

/** A lesson's equation in the language that is read. */
export function equationIn({ tex, tex_de }: Lesson["equation"], language: Language): string {
  return language === "de" ? (tex_de ?? tex) : tex;
}

/** The names that stand in {braces} in a text, each once. */
export function placesIn(text: string): readonly string[] {
  return [...new Set([...text.matchAll(/\{([^{}]*)\}/g)].map(([, name = ""]) => name))];
}

/** A text with its {places} filled. */
export function filled(text: string, place: (name: string) => string): string {
  return text.replaceAll(/\{([^{}]*)\}/g, (_, name: string) => place(name));
}
