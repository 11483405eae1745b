import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readFont } from "../../../src/sheet";
import type { Fonts } from "../../../src/sheet";

const folder = new URL("../../../node_modules/@expo-google-fonts/source-sans-3/", import.meta.url);
const font = (file: string) => readFont(readFileSync(fileURLToPath(new URL(file, folder))));

/** The fonts that the page and the command use. */
export const fonts: Fonts = {
  regular: font("400Regular/SourceSans3_400Regular.ttf"),
  bold: font("600SemiBold/SourceSans3_600SemiBold.ttf"),
};
