export const LANGUAGES = ["en", "de"] as const;
export type Language = (typeof LANGUAGES)[number];

/** A number's text with the decimal mark of the language: where it was written with a point, German has a comma. */
export const marked = (number: string, language: Language): string =>
  language === "de" ? number.replace(".", ",") : number;
