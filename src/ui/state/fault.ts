import type { Language } from "../words/base";
import { FILE } from "../words/file";

/** What is known of a fault, in words: those of the program below the page in the language that is read, all others as they came. */
export function faultText(fault: unknown, language: Language = "en"): string {
  return FILE.in(language).of(fault instanceof Error ? fault.message : String(fault));
}
