import { readFileSync } from "node:fs";
import module from "node:module";
import { readFont } from "../sheet";
import type { Fonts } from "../sheet";

/** The sheets' fonts, from their package: the very files that the page loads. */
export function sheetFonts(): Fonts {
  const find = module.createRequire(import.meta.url);
  const font = (file: string) =>
    readFont(readFileSync(find.resolve(`@expo-google-fonts/source-sans-3/${file}.ttf`)));
  return {
    regular: font("400Regular/SourceSans3_400Regular"),
    bold: font("600SemiBold/SourceSans3_600SemiBold"),
  };
}
