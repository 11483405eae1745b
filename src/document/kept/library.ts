import { z } from "zod";
import { readBox } from "../box";
import type { Box } from "../box-schema";
import { placeOf } from "../formats";
import { readJson } from "../json";
import { carryForward } from "../migrate";
import { readScenario } from "../parse";
import { problem } from "../problem";
import type { Problem } from "../problem";
import type { Scenario } from "../schema";
import { print, serialize } from "../serialize";
import type { BaitVersion } from "./record";
import { tagList } from "./tags";
import { PHOTO_PLACES } from "./photo-places";
import type { PhotoPlace } from "./photo-places";

/** A file of one bait or many, with what is kept beside them (docs/scenario-format.md, "Many baits in one file"). */
const LIBRARY_FORMAT = "trimwright/baits";
const LIBRARY_VERSION = 1;

/** Bounds: longest text in characters, and the most baits. */
export const LARGEST_LIBRARY = 60_000_000;
const MOST_BAITS = 2000;
const MOST_VERSIONS = 200;
/** Longest photo in the file, in characters of base64. */
const LONGEST_PHOTO = 2_000_000;

/** A bait as the file holds it. */
export interface LibraryBait {
  readonly scenario: Scenario;
  readonly tags: readonly string[];
  readonly versions: readonly BaitVersion[];
  /** JPEG in base64, by their place. */
  readonly photos: Readonly<Partial<Record<PhotoPlace, string>>>;
}

export type OpenedLibrary =
  | { readonly ok: true; readonly baits: readonly unknown[]; readonly box: Box | null }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export type ReadLibraryBait =
  | { readonly ok: true; readonly bait: LibraryBait }
  | { readonly ok: false; readonly name: string; readonly why: string };

const entry = z.strictObject({
  scenario: z.unknown(),
  tags: z.exactOptional(tagList),
  versions: z.exactOptional(
    z
      .array(
        z.strictObject({
          name: z.string().min(1).max(120),
          made_ms: z.number().min(0),
          scenario: z.unknown(),
        }),
      )
      .max(MOST_VERSIONS),
  ),
  photos: z.exactOptional(z.partialRecord(z.enum(PHOTO_PLACES), z.string().max(LONGEST_PHOTO))),
});

/** The text of the file; `box` goes along where it is given. */
export function serializeLibrary(baits: readonly LibraryBait[], box: Box | null): string {
  const lean = baits.map(({ scenario, tags, versions, photos }) => ({
    scenario: plain(scenario),
    ...(tags.length === 0 ? {} : { tags }),
    ...(versions.length === 0
      ? {}
      : {
          versions: versions.map((one) => ({
            name: one.name,
            made_ms: one.made,
            scenario: plain(one.scenario),
          })),
        }),
    ...(Object.keys(photos).length === 0 ? {} : { photos }),
  }));
  const whole = {
    format: LIBRARY_FORMAT,
    version: LIBRARY_VERSION,
    baits: lean,
    ...(box === null ? {} : { box }),
  };
  return `${print(whole, 0, true)}\n`;
}

const plain = (scenario: Scenario): unknown => JSON.parse(serialize(scenario));

/** Opens the text of such a file. Its baits are read one by one (`readLibraryBait`): there may be many. */
export function openLibrary(text: string): OpenedLibrary {
  const read = readJson(text, LARGEST_LIBRARY, false);
  if (!read.ok) return read;
  const refuse = (path: string, found: string, allowed: string, remedy: string): OpenedLibrary => ({
    ok: false,
    problems: [problem(path, found, allowed, remedy)],
  });
  const value = typeof read.value === "object" && read.value !== null ? read.value : {};
  const { format, version, baits, box, ...rest } = value as Record<string, unknown>;
  if (format !== LIBRARY_FORMAT)
    return refuse(
      "format",
      "another format",
      `"${LIBRARY_FORMAT}"`,
      placeOf(format) ?? "Open a file that holds baits.",
    );
  if (version !== LIBRARY_VERSION)
    return refuse(
      "version",
      "another version",
      String(LIBRARY_VERSION),
      "The file was saved by a newer release: load the page anew, or save it there for this version.",
    );
  const [odd] = Object.keys(rest);
  if (odd !== undefined)
    return refuse("", `the unknown key ${JSON.stringify(odd.slice(0, 40))}`, "baits, box", "Remove it.");
  if (!Array.isArray(baits) || baits.length > MOST_BAITS)
    return refuse(
      "baits",
      Array.isArray(baits) ? `${String(baits.length)} baits` : "no list",
      `a list of at most ${String(MOST_BAITS)} baits`,
      "Make several files of it.",
    );
  if (box === undefined) return { ok: true, baits, box: null };
  const readable = readBox(box);
  return readable.ok ? { ok: true, baits, box: readable.box } : readable;
}

/** Reads one bait of such a file, in full: schema, rules, and the model's own refusals. Its versions too. */
export function readLibraryBait(value: unknown): ReadLibraryBait {
  const read = entry.safeParse(value);
  if (!read.success) {
    const [issue] = read.error.issues;
    const at =
      issue === undefined || issue.path.length === 0 ? "the entry" : issue.path.map(String).join(".");
    return { ok: false, name: nameIn(value), why: `${at}: ${issue?.message ?? "not as the format says"}` };
  }
  const { scenario, tags = [], versions = [], photos = {} } = read.data;
  const checked = readOne(scenario);
  if (typeof checked === "string") return { ok: false, name: nameIn(value), why: checked };
  const states: BaitVersion[] = [];
  for (const one of versions) {
    const state = readOne(one.scenario);
    if (typeof state === "string")
      return { ok: false, name: nameIn(value), why: `its version ‘${one.name}’: ${state}` };
    states.push({ name: one.name, made: one.made_ms, scenario: state });
  }
  return { ok: true, bait: { scenario: checked, tags, versions: states, photos } };
}

/** A scenario, or why it is none. */
function readOne(value: unknown): Scenario | string {
  const carried = carryForward(value);
  if (!carried.ok) return carried.problems[0]?.message ?? "it cannot be read";
  const read = readScenario(carried.document);
  return read.ok ? read.scenario : (read.problems[0]?.message ?? "it cannot be read");
}

function nameIn(value: unknown): string {
  const { scenario } = (typeof value === "object" && value !== null ? value : {}) as Record<string, unknown>;
  const { name } = (typeof scenario === "object" && scenario !== null ? scenario : {}) as Record<
    string,
    unknown
  >;
  return typeof name === "string" ? name.slice(0, 120) : "a bait without a name";
}
