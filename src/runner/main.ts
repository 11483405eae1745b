import { parseScenario, scenarioJsonSchema } from "../document";
import type { Problem } from "../document";
import { MotionError } from "../model/motion";
import { answer } from "./answer";
import { recordingCsv } from "./csv";
import { USAGE, UsageError, parseOptions } from "./options";
import type { Options } from "./options";
import { table } from "./table";

/** What the command needs of the world; tests give their own. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Text of a file ("-": standard input). Throws where it cannot be read. */
  readonly read: (file: string) => string;
  readonly write: (file: string, text: string) => void;
}

/** Exit codes: 0 answered, 1 a fault, 2 a bad file or command line. */
export type Exit = 0 | 1 | 2;

/** The headless command. Standard output carries the answer and nothing else. */
export function main(args: readonly string[], io: Io): Exit {
  try {
    const options = parseOptions(args);
    if (options.help) return print(io, USAGE);
    if (options.schema) return print(io, `${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`);
    return answerFile(options, io);
  } catch (fault) {
    if (fault instanceof UsageError) {
      io.err(`answer: ${fault.message}\n\n${USAGE}`);
      return 2;
    }
    // What the engine refuses before the first step is the scenario's doing.
    if (fault instanceof MotionError && fault.time === null) {
      io.err(`answer: ${fault.message}\n`);
      return 2;
    }
    io.err(`answer: ${fault instanceof Error ? fault.message : String(fault)}\n`);
    return 1;
  }
}

function print(io: Io, text: string): Exit {
  io.out(text);
  return 0;
}

function answerFile(options: Options, io: Io): Exit {
  const file = options.file ?? "-";
  let text: string;
  try {
    text = io.read(file);
  } catch (fault) {
    throw new UsageError(`cannot read ${file}: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
  const read = parseScenario(text);
  if (!read.ok) {
    io.err(problemsText(file, read.problems));
    return 2;
  }
  const { scenario } = read;
  for (const note of read.notes) io.err(`${file}: carried forward: ${note}\n`);
  if (options.angles !== null && scenario.bait.bib === undefined) {
    throw new UsageError("--reach-angles: this bait has no bib");
  }
  if (options.csv !== null && scenario.cadence.length === 0) {
    throw new UsageError("--csv: this scenario has no cadence, so there is no recording");
  }
  const wantsRun = options.csv !== null && !options.parts.includes("run");
  const { answer: whole, recording } = answer(scenario, {
    parts: wantsRun ? [...options.parts, "run"] : options.parts,
    speeds: options.speeds,
    angles: options.angles,
  });
  if (options.csv !== null && recording !== null) io.write(options.csv, recordingCsv(recording));
  const { run, ...withoutRun } = whole;
  const shown = wantsRun || run === undefined ? withoutRun : { ...withoutRun, run };
  return print(io, options.json ? `${JSON.stringify(shown)}\n` : table(shown));
}

/** Most problems printed; one wrong bracket can make hundreds. */
const MOST = 20;

function problemsText(file: string, problems: readonly Problem[]): string {
  const shown = problems.slice(0, MOST).map((one) => `${file}: ${one.message}\n`);
  const more = problems.length - shown.length;
  return shown.join("") + (more > 0 ? `${file}: and ${more} more\n` : "");
}
