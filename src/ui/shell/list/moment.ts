import type { Language } from "../../words/base";

const made = new Map<Language, Intl.DateTimeFormat>();

/** Writes day and time in a language; English in the browser's own way. Made once: it takes longer than the rest of a row. */
export function momentOf(language: Language): Intl.DateTimeFormat {
  let moment = made.get(language);
  if (moment === undefined) {
    moment = new Intl.DateTimeFormat(language === "en" ? undefined : language, {
      dateStyle: "medium",
      timeStyle: "short",
    });
    made.set(language, moment);
  }
  return moment;
}
