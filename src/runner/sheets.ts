import { join } from "node:path";
import { compile, visible } from "../document";
import {
  allFiles,
  AS_PRINTED,
  measuredTrouble,
  sheetJob,
  solidFiles,
  solidKernel,
  solveHalf,
  stationsTrouble,
  TEMPLATES,
} from "../sheet";
import type { Fonts, MadeFile, Measured, SheetJob } from "../sheet";
import { OF_SHEETS, toldIn } from "../languages";
import { toSI } from "../units";
import { faultExit, readBoxFile, readScenarioFile, wordsOf } from "./main";
import type { Exit, Io } from "./main";
import { parseOptions, UsageError } from "./options";
import type { Options } from "./options";

/** What the command needs from outside to write sheets; tests give their own. */
export interface SheetIo extends Pick<Io, "out" | "err" | "read"> {
  readonly fonts: () => Fonts;
  /** Makes a folder where there is none. */
  readonly folder: (path: string) => void;
  /** Bytes of a file; null where there is none. Throws where it cannot be read. */
  readonly there: (path: string) => Uint8Array | null;
  readonly put: (path: string, bytes: Uint8Array) => void;
}

/** `--sheets DIR`: writes all sheets of a scenario, and prints which. */
export async function sheetsMain(args: readonly string[], io: SheetIo): Promise<Exit> {
  try {
    const options = parseOptions(args);
    return await writeSheets(options, options.sheets ?? ".", io);
  } catch (fault) {
    return faultExit(fault, io);
  }
}

function measuredOf({ measured }: Options): Measured {
  if (measured === null) return AS_PRINTED;
  const [across, down] = measured;
  for (const value of measured) {
    const trouble = measuredTrouble(value);
    if (trouble !== null) throw new UsageError(`--measured: ${trouble}`);
  }
  return { across, down };
}

const same = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, i) => byte === b[i]);

async function writeSheets(options: Options, folder: string, io: SheetIo): Promise<Exit> {
  const measured = measuredOf(options);
  const scenario = readScenarioFile(options.file ?? "-", io);
  if (scenario === null) return 2;
  const box = options.box === null ? null : readBoxFile(options.box, io);
  if (options.box !== null && box === null) return 2;
  const stations = options.stations?.map((one) => toSI(one, "mm")) ?? null;
  if (stations !== null) {
    const trouble = stationsTrouble(stations, toSI(scenario.bait.length_mm, "mm"));
    if (trouble !== null) throw new UsageError(`--stations: ${trouble}`);
  }
  const choice = {
    paper: "A4",
    measured,
    stations,
    templates: TEMPLATES.map((one) => one.key),
    build: true,
  } as const;
  const told = await toldIn(options.language, OF_SHEETS);
  const words = (text: string): string => told.of(text);
  const job = sheetJob(scenario, io.fonts(), choice, box, compile(scenario), words);
  const [files, solids] = [await allFiles(job), await solidsOf(job)];
  if (typeof solids === "string") io.err(`answer: --sheets: without the solid halves: ${solids}\n`);
  const exit = put([...files, ...(typeof solids === "string" ? [] : solids)], folder, options.overwrite, io);
  return exit === 0 && typeof solids === "string" ? 1 : exit;
}

/** The two halves as solids; in words, why there are none. */
async function solidsOf({ scenario, compiled, drills }: SheetJob): Promise<readonly MadeFile[] | string> {
  try {
    return solidFiles(scenario, solveHalf(await solidKernel(), compiled.bait, drills));
  } catch (fault) {
    return wordsOf(fault);
  }
}

/** Writes the files, all or none: what is there already is kept unless it may be written over. */
function put(files: readonly MadeFile[], folder: string, overwrite: boolean, io: SheetIo): Exit {
  const told = (path: string): string => visible(path);
  try {
    io.folder(folder);
    const placed = files.map((file) => {
      const path = join(folder, file.name);
      const there = io.there(path);
      return { file, path, state: there === null ? "new" : same(there, file.bytes) ? "same" : "other" };
    });
    const others = placed.filter(({ state }) => state === "other");
    if (others.length > 0 && !overwrite) {
      io.err(
        `answer: --sheets: nothing was written, because other files of these names are there already:\n${others
          .map(({ path }) => `  ${told(path)}\n`)
          .join("")}Name another folder, move them away, or add --overwrite.\n`,
      );
      return 2;
    }
    for (const { file, path, state } of placed) {
      if (state !== "same") io.put(path, file.bytes);
      const words = state === "same" ? "unchanged" : state === "other" ? "written over" : "written";
      io.out(`${words}  ${told(path)}  ${file.bytes.length} bytes\n`);
    }
    return 0;
  } catch (fault) {
    throw new UsageError(
      `--sheets: cannot write into ${folder}: ${wordsOf(fault)}. Name a folder that you may write to`,
    );
  }
}
