import type { Saying } from "../words/base";
import { FIGURES } from "../words/figures";
import { faultText } from "./fault";

/** A name with the next number behind it. */
export function numbered(name: string): string {
  const found = /^(.*) \((\d+)\)$/.exec(name);
  const number = found === null ? 2 : Number(found[2]) + 1;
  return `${(found?.[1] ?? name).slice(0, 110)} (${String(number)})`;
}

/** Why nothing is kept, and what to do. */
export function unkept(fault: unknown): Saying {
  const full = fault instanceof Error && fault.name === "QuotaExceededError";
  return (language) => {
    const words = FIGURES.in(language);
    return full ? words.tell("kept.noRoom") : words.tell("kept.notNow", { why: faultText(fault, language) });
  };
}

/** The browser's database takes long; it may still answer. */
export const late: Saying = (language) => {
  const words = FIGURES.in(language);
  return words.tell("kept.notNow", { why: words.tell("kept.late") });
};
