import { parseArgs } from "node:util";

export const PARTS = ["water", "statics", "rise", "reach", "run"] as const;
export type Part = (typeof PARTS)[number];

/** What the command line asks for. Angles in degrees, speeds in m/s. */
export interface Options {
  readonly file: string | null;
  readonly json: boolean;
  readonly parts: readonly Part[];
  readonly speeds: readonly number[] | null;
  readonly angles: readonly number[] | null;
  readonly csv: string | null;
  readonly schema: boolean;
  readonly help: boolean;
}

/** A command line that cannot be followed, said so that it can be mended. */
export class UsageError extends Error {}

export const USAGE = `Usage: npm run -s answer -- FILE [options]

FILE is a scenario (scenarios/NAME.json), or - for standard input.

  --json                 one JSON object on standard output instead of tables
  --only PARTS           some of ${PARTS.join(",")}
  --reach-speeds LIST    m/s: 0.6,0.9 or 0.4:1.2:0.2 (from:to:step)
  --reach-angles LIST    bib angles in degrees: 35,40 or 20:60:5
  --csv FILE             writes the recording of the run
  --schema               prints the JSON Schema of a scenario file
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
  if (positionals.length > 1)
    throw new UsageError(`one scenario at a time, not ${positionals.length}: ${positionals.join(" ")}`);
  if (file === null && !schema && !help) throw new UsageError("no scenario file given");
  return {
    file,
    json: values.json === true,
    parts: values.only === undefined ? PARTS : partsOf(values.only),
    speeds:
      values["reach-speeds"] === undefined
        ? null
        : numbersOf("--reach-speeds", values["reach-speeds"], 0.01, 10, "m/s"),
    angles:
      values["reach-angles"] === undefined
        ? null
        : numbersOf("--reach-angles", values["reach-angles"], 0, 180, "degrees"),
    csv: values.csv ?? null,
    schema,
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
        schema: { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    });
  } catch (fault) {
    throw new UsageError(fault instanceof Error ? fault.message : String(fault));
  }
}

function partsOf(list: string): Part[] {
  const asked = list.split(",").map((word) => word.trim());
  for (const word of asked) {
    if (!(PARTS as readonly string[]).includes(word)) {
      throw new UsageError(`--only knows ${PARTS.join(", ")}; found "${word}"`);
    }
  }
  return PARTS.filter((part) => asked.includes(part));
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
