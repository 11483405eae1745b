import { Part } from "../base";
import type { Language } from "../base";
import { texts } from "./en";

export const GLOSSARY = new Part<typeof texts>(texts, { de: () => import("./de") });

/** A word of the trade: the one used here first, then what others say. */
export interface Term {
  readonly word: string;
  readonly also: readonly string[];
  readonly means: string;
}

export function termsIn(language: Language): readonly Term[] {
  const speaker = GLOSSARY.in(language);
  return Object.keys(texts).map((key) => {
    const [word = "", also = "", means = ""] = speaker.tell(key as keyof typeof texts).split(" | ");
    return { word, also: also === "" ? [] : also.split(", "), means };
  });
}
