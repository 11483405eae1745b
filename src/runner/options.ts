import { parseArgs } from "node:util";
import { LANGUAGES } from "../languages";
import type { Language } from "../languages";

export const PARTS = ["water", "statics", "rise", "reach", "run"] as const;
/** What can be asked for. Plans need a box beside the scenario, and are made only when they are asked for. */
const ASKED = [...PARTS, "plan"] as const;
export type Part = (typeof ASKED)[number];

/** What the command line asks for. Angles in degrees, speeds in m/s. */
export interface Options {
  readonly file: string | null;
  readonly json: boolean;
  readonly parts: readonly Part[];
  readonly speeds: readonly number[] | null;
  readonly angles: readonly number[] | null;
  readonly csv: string | null;
  /** The box file that plans are made from, and the greatest number of places for weights. */
  readonly box: string | null;
  readonly places: number;
  /** Where sheets are written, and what is chosen of them: lengths in mm. */
  readonly sheets: string | null;
  readonly stations: readonly number[] | null;
  readonly measured: readonly [across: number, down: number] | null;
  readonly language: Language;
  readonly overwrite: boolean;
  readonly schema: boolean;
  /** A lesson file to be checked and worked out, instead of a scenario. */
  readonly lesson: string | null;
  /** Class code and name of the student whose numbers the lesson has; null: the usual ones. */
  readonly student: { readonly group: string; readonly name: string } | null;
  readonly lessonSchema: boolean;
  readonly resultsSchema: boolean;
  readonly help: boolean;
}

/** A command line that cannot be followed, told so that the user can mend it. */
export class UsageError extends Error {}

export const USAGE = `Usage: npm run -s answer -- FILE [options]

FILE is a scenario (scenarios/NAME.json), or - for standard input.

  --json                 one JSON object on standard output instead of tables
  --only PARTS           some of ${ASKED.join(",")}
  --box FILE             the box: ballast plans are made from it (--only plan), sheets name it in their parts list
  --places N             greatest number of places for weights in a plan: 1 to 3 (3)
  --reach-speeds LIST    m/s: 0.6,0.9 or 0.4:1.2:0.2 (from:to:step)
  --reach-angles LIST    bib angles in degrees: 35,40 or 20:60:5
  --csv FILE             writes the recording of the run
  --sheets DIR           writes templates, build sheet and solid halves (PDF, SVG, DXF, STL, 3MF) into a folder, and answers nothing else
  --stations LIST        with --sheets: stations of the section gauges, mm: 10,25,40 or 10:80:10
  --measured ACROSS,DOWN with --sheets: what the printed rulers of 100 mm measured, mm
  --language CODE        with --sheets: the language of the sheets: ${LANGUAGES.join(" or ")} (en)
  --overwrite            with --sheets: files that are there already may be written over
  --schema               prints the JSON Schema of a scenario file
  --lesson FILE          checks a lesson file and works it out, instead of a scenario
  --student CLASS/NAME   with the numbers of this student
  --lesson-schema        prints the JSON Schema of a lesson file
  --results-schema       prints the JSON Schema of what a student hands in
  --help                 prints this

Exit 0: answered; 2: a bad file or command line; 1: a fault.
`;

/** Most values of one sweep. */
const MOST = 1000;

/** @throws UsageError */
export function parseOptions(args: readonly string[]): Options {
  const { values, positionals } = parse(args);
  const file = positionals[0] ?? null;
  const schema = values.schema === true;
  const help = values.help === true;
  const lessonSchema = values["lesson-schema"] === true;
  const resultsSchema = values["results-schema"] === true;
  const lesson = values.lesson ?? null;
  if (lesson !== null && file !== null)
    throw new UsageError(`--lesson ${lesson}: a lesson names its own scenario; leave ${file} out`);
  if (positionals.length > 1)
    throw new UsageError(`one scenario at a time, not ${positionals.length}: ${positionals.join(" ")}`);
  if (file === null && !schema && !help && !lessonSchema && !resultsSchema && lesson === null)
    throw new UsageError("no scenario file given");
  const asked: readonly Part[] = values.only === undefined ? PARTS : partsOf(values.only);
  const box = values.box ?? null;
  if (asked.includes("plan") && box === null)
    throw new UsageError("--only plan: name the box that the weights come from with --box FILE");
  return {
    file,
    json: values.json === true,
    parts: box === null || asked.includes("plan") ? asked : [...asked, "plan"],
    speeds:
      values["reach-speeds"] === undefined
        ? null
        : numbersOf("--reach-speeds", values["reach-speeds"], 0.01, 10, "m/s"),
    angles:
      values["reach-angles"] === undefined
        ? null
        : numbersOf("--reach-angles", values["reach-angles"], 0, 180, "degrees"),
    csv: values.csv ?? null,
    box,
    places: placesOf(values.places),
    ...sheetsOf(values),
    schema,
    lesson,
    student: values.student === undefined ? null : studentOf(values.student),
    lessonSchema,
    resultsSchema,
    help,
  };
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: "boolean" },
        only: { type: "string" },
        "reach-speeds": { type: "string" },
        "reach-angles": { type: "string" },
        csv: { type: "string" },
        box: { type: "string" },
        places: { type: "string" },
        sheets: { type: "string" },
        stations: { type: "string" },
        measured: { type: "string" },
        language: { type: "string" },
        overwrite: { type: "boolean" },
        schema: { type: "boolean" },
        lesson: { type: "string" },
        student: { type: "string" },
        "lesson-schema": { type: "boolean" },
        "results-schema": { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    });
  } catch (fault) {
    throw new UsageError(fault instanceof Error ? fault.message : String(fault));
  }
}

function studentOf(word: string): { group: string; name: string } {
  const at = word.indexOf("/");
  const [group, name] = [word.slice(0, Math.max(0, at)).trim(), word.slice(at + 1).trim()];
  if (group === "" || name === "") throw new UsageError(`--student: write CLASS/NAME; found "${word}"`);
  return { group, name };
}

type Values = ReturnType<typeof parse>["values"];

/** What is said of sheets. They are files: with them nothing else is answered. */
function sheetsOf(
  values: Values,
): Pick<Options, "sheets" | "stations" | "measured" | "language" | "overwrite"> {
  const { sheets, stations, measured, language, overwrite } = values;
  if (sheets === undefined) {
    const alone = (["stations", "measured", "language", "overwrite"] as const).find(
      (name) => values[name] !== undefined,
    );
    if (alone !== undefined) throw new UsageError(`--${alone} goes with --sheets DIR`);
    return { sheets: null, stations: null, measured: null, language: "en", overwrite: false };
  }
  const other = (
    ["json", "only", "csv", "reach-speeds", "reach-angles", "places", "schema", "lesson"] as const
  ).find((name) => values[name] !== undefined);
  if (other !== undefined)
    throw new UsageError(`--sheets writes files and answers nothing: leave out --${other}`);
  const rulers = measured === undefined ? null : numbersOf("--measured", measured, 0, MOST, "mm");
  const [across, down] = rulers ?? [];
  if (rulers !== null && (across === undefined || down === undefined || rulers.length !== 2))
    throw new UsageError('--measured: two numbers, across and down, for example "98.5,99"');
  return {
    sheets,
    stations: stations === undefined ? null : numbersOf("--stations", stations, 0, MOST, "mm"),
    measured: across === undefined || down === undefined ? null : [across, down],
    language: language === undefined ? "en" : languageOf(language),
    overwrite: overwrite === true,
  };
}

function languageOf(word: string): Language {
  const found = LANGUAGES.find((one) => one === word);
  if (found === undefined) throw new UsageError(`--language knows ${LANGUAGES.join(", ")}; found "${word}"`);
  return found;
}

function partsOf(list: string): Part[] {
  const asked = list.split(",").map((word) => word.trim());
  for (const word of asked) {
    if (!(ASKED as readonly string[]).includes(word)) {
      throw new UsageError(`--only knows ${ASKED.join(", ")}; found "${word}"`);
    }
  }
  return ASKED.filter((part) => asked.includes(part));
}

/** Greatest number of places for the weights of a plan; 3 where nothing is said. */
function placesOf(word: string | undefined): number {
  if (word === undefined) return 3;
  if (!/^[123]$/.test(word)) throw new UsageError(`--places: write 1, 2 or 3; found "${word}"`);
  return Number(word);
}

/** "0.6,0.9" or "20:60:5"; both ends included. */
function numbersOf(option: string, list: string, least: number, most: number, unit: string): number[] {
  const out = list.split(",").flatMap((word) => {
    const ends = word.split(":").map((one) => numberOf(option, one));
    const [from, to, step] = ends;
    if (from === undefined || ends.length === 2 || ends.length > 3) {
      throw new UsageError(`${option}: write numbers as 0.6,0.9 or a range as from:to:step; found "${word}"`);
    }
    if (to === undefined || step === undefined) return [from];
    if (!(step > 0) || to < from)
      throw new UsageError(`${option}: a range rises by a step above 0; found "${word}"`);
    const count = Math.floor((to - from) / step + 1e-9) + 1;
    if (count > MOST) throw new UsageError(`${option}: ${count} values; at most ${MOST}`);
    return Array.from({ length: count }, (_, i) => Number((from + i * step).toPrecision(12)));
  });
  for (const value of out) {
    if (value < least || value > most)
      throw new UsageError(`${option}: ${value} lies outside ${least} to ${most} ${unit}`);
  }
  if (out.length > MOST) throw new UsageError(`${option}: ${out.length} values; at most ${MOST}`);
  return out;
}

function numberOf(option: string, word: string): number {
  const value = /^\s*-?(\d+\.?\d*|\.\d+)\s*$/.test(word) ? Number(word) : NaN;
  if (!Number.isFinite(value)) throw new UsageError(`${option}: "${word}" is not a number`);
  return value;
}
