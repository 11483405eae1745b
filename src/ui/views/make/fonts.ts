import bold from "@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url";
import regular from "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url";
import { readFont } from "../../../sheet";
import type { Fonts } from "../../../sheet";

async function bytesOf(address: string): Promise<Uint8Array<ArrayBuffer>> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`The sheets' font could not be loaded (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}

let loaded: Promise<Fonts> | undefined;

async function load(): Promise<Fonts> {
  const [plain, heavy] = await Promise.all([bytesOf(regular), bytesOf(bold)]);
  // The preview is drawn with the very font that the PDF holds.
  for (const [bytes, weight] of [
    [plain, "400"],
    [heavy, "600"],
  ] as const)
    document.fonts.add(await new FontFace("Source Sans 3", bytes, { weight }).load());
  return { regular: readFont(plain), bold: readFont(heavy) };
}

/** The sheets' fonts: loaded once, and asked for again after a failure. */
export function sheetFonts(): Promise<Fonts> {
  loaded ??= load().catch((fault: unknown) => {
    loaded = undefined;
    throw fault;
  });
  return loaded;
}
