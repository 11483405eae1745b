import { resolve } from "node:path";
import {
  decodeText,
  parseBox,
  parseScenario,
  scenarioJsonSchema,
  visible,
  visibleIn,
  visibleJson,
} from "../document";
import type { Box, Problem, Scenario } from "../document";
import { lessonJsonSchema, parseLesson, resultsJsonSchema } from "../lesson";
import { MotionError } from "../model/motion";
import { answer } from "./answer";
import { recordingCsv } from "./csv";
import { USAGE, UsageError, parseOptions } from "./options";
import type { Options } from "./options";
import { lessonAnswer, lessonTable } from "./lesson-answer";
import { secondsLeft, waitWords } from "./progress";
import { table } from "./table";

/** What the command needs from outside; tests give their own. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Bytes of a file ("-": standard input). Throws where it cannot be read. */
  readonly read: (file: string) => Uint8Array;
  /** Throws where a file cannot be written; changes nothing. */
  readonly tryToWrite: (file: string) => void;
  readonly write: (file: string, text: string) => void;
  /** A clock, s; without one no run says how long it will take. */
  readonly now?: () => number;
}

/** Exit codes: 0 answered, 1 a fault, 2 a bad file or command line. */
export type Exit = 0 | 1 | 2;

/** The headless command. Standard output carries the answer and nothing else. */
export function main(args: readonly string[], io: Io): Exit {
  try {
    const options = parseOptions(args);
    if (options.help) return print(io, USAGE);
    if (options.schema) return print(io, `${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`);
    if (options.lessonSchema) return print(io, `${JSON.stringify(lessonJsonSchema(), null, 2)}\n`);
    if (options.resultsSchema) return print(io, `${JSON.stringify(resultsJsonSchema(), null, 2)}\n`);
    if (options.lesson !== null) return lessonFile(options.lesson, options, io);
    return answerFile(options, io);
  } catch (fault) {
    return faultExit(fault, io);
  }
}

/** Tells what went wrong, in words. */
export function faultExit(fault: unknown, io: Pick<Io, "err">): Exit {
  if (fault instanceof UsageError) {
    io.err(`answer: ${visible(fault.message)}\n\n${USAGE}`);
    return 2;
  }
  // What the engine refuses before the first step is the fault of the scenario.
  if (fault instanceof MotionError && fault.time === null) {
    io.err(`answer: ${visible(fault.message)}\n`);
    return 2;
  }
  io.err(`answer: ${visible(wordsOf(fault))}\n`);
  return 1;
}

export const wordsOf = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));

function print(io: Io, text: string): Exit {
  io.out(text);
  return 0;
}

/** The scenario of a file; null where it is refused, and then the problems have been told. */
export function readScenarioFile(file: string, io: Pick<Io, "read" | "err">): Scenario | null {
  let bytes: Uint8Array;
  try {
    bytes = io.read(file);
  } catch (fault) {
    throw new UsageError(`cannot read ${file}: ${wordsOf(fault)}`);
  }
  const decoded = decodeText(bytes);
  const read = decoded.ok ? parseScenario(decoded.text) : decoded;
  if (!read.ok) {
    io.err(problemsText(file, read.problems));
    return null;
  }
  for (const note of read.notes) io.err(visible(`${file}: carried forward: ${note}`) + "\n");
  return read.scenario;
}

/** The box of a file; null where it is refused, and then the problems have been told. */
export function readBoxFile(file: string, io: Pick<Io, "read" | "err">): Box | null {
  const read = readBox(file, io);
  if ("box" in read) return read.box;
  io.err(problemsText(file, read.problems));
  return null;
}

function answerFile(options: Options, io: Io): Exit {
  const file = options.file ?? "-";
  const scenario = readScenarioFile(file, io);
  if (scenario === null) return 2;
  if (options.angles !== null && scenario.bait.bib === undefined) {
    throw new UsageError("--reach-angles: this bait has no bib");
  }
  if (options.csv !== null && scenario.cadence.length === 0) {
    throw new UsageError("--csv: this scenario has no cadence, so there is no recording");
  }
  // Before the run, which may take minutes.
  if (options.csv !== null) refuseUnlessWritable(options.csv, file, io);
  const wantsRun = options.csv !== null && !options.parts.includes("run");
  const box = options.box === null ? null : readBoxFile(options.box, io);
  if (options.box !== null && box === null) return 2;
  if (box !== null && scenario.target === undefined)
    throw new UsageError(
      `--box: ${file} has no target to plan for. Add "target" with net_g and netTolerance_g`,
    );
  const { answer: whole, recording } = answer(scenario, {
    parts: wantsRun ? [...options.parts, "run"] : options.parts,
    speeds: options.speeds,
    angles: options.angles,
    onRun: progress(io),
    ...(box === null ? {} : { plan: { box, places: options.places } }),
  });
  if (options.csv !== null && recording !== null) io.write(options.csv, recordingCsv(recording));
  const { run, ...withoutRun } = whole;
  const shown = wantsRun || run === undefined ? withoutRun : { ...withoutRun, run };
  return print(io, options.json ? `${visibleJson(shown)}\n` : table(visibleIn(shown)));
}

/** Seconds between two words of how much longer a run will take. */
const EVERY = 10;

/** Says beside the answer how much longer a run will take: first after a few seconds, then now and again. */
function progress({ now, err }: Io): (share: number) => void {
  if (now === undefined) return () => undefined;
  const start = now();
  let next = start;
  return (share) => {
    const time = now();
    const left = secondsLeft(time - start, share);
    if (left === null || time < next) return;
    next = time + EVERY;
    err(`The run is ${Math.floor(100 * share)} % done: ${waitWords(left)} more.\n`);
  };
}

/** A lesson, checked and worked out. A scenario of the collection is read from the folder scenarios. */
function lessonFile(file: string, { student, json }: Options, io: Io): Exit {
  const read = (name: string): ReturnType<typeof decodeText> => {
    try {
      return decodeText(io.read(name));
    } catch (fault) {
      throw new UsageError(`cannot read ${name}: ${wordsOf(fault)}`);
    }
  };
  const decoded = read(file);
  const parsed = decoded.ok ? parseLesson(decoded.text) : decoded;
  if (!parsed.ok) {
    io.err(problemsText(file, parsed.problems));
    return 2;
  }
  const { lesson } = parsed;
  const named = lesson.scenario.from === "collection" ? lesson.scenario.file : null;
  const collection = new Map<string, Scenario>();
  if (named !== null) {
    const name = `scenarios/${named}.json`;
    const text = read(name);
    const scenario = text.ok ? parseScenario(text.text) : text;
    if (!scenario.ok) {
      io.err(problemsText(name, scenario.problems));
      return 2;
    }
    collection.set(named, scenario.scenario);
  }
  const answered = lessonAnswer(lesson, collection, student);
  if ("problems" in answered) {
    io.err(problemsText(file, answered.problems));
    return 2;
  }
  return print(io, json ? `${visibleJson(answered)}\n` : lessonTable(visibleIn(answered)));
}

/** The box of a plan, or what is wrong with its file. */
function readBox(
  file: string,
  io: Pick<Io, "read">,
): { readonly box: Box } | { readonly problems: readonly Problem[] } {
  let bytes: Uint8Array;
  try {
    bytes = io.read(file);
  } catch (fault) {
    throw new UsageError(`--box: cannot read ${file}: ${wordsOf(fault)}`);
  }
  const decoded = decodeText(bytes);
  return decoded.ok ? parseBox(decoded.text) : decoded;
}

function refuseUnlessWritable(csv: string, scenario: string, io: Io): void {
  if (resolve(csv) === resolve(scenario))
    throw new UsageError(`--csv: ${csv} is the scenario file itself. Name another file`);
  try {
    io.tryToWrite(csv);
  } catch (fault) {
    throw new UsageError(
      `--csv: cannot write ${csv}: ${wordsOf(fault)}. Name a file in a folder that exists and that you may write to`,
    );
  }
}

/** Most problems printed; one wrong bracket can make hundreds. */
const MOST = 20;

function problemsText(file: string, problems: readonly Problem[]): string {
  const name = visible(file);
  const shown = problems.slice(0, MOST).map((one) => `${name}: ${one.message}\n`);
  const more = problems.length - shown.length;
  return shown.join("") + (more > 0 ? `${name}: and ${more} more\n` : "");
}
