import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from "node:fs";
import { main } from "./main";
import type { Exit } from "./main";

/** The entry point of the command line: `npm run -s answer -- FILE`. */

// A reader that closes early (… | head) is no fault.
process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
  if (fault.code !== "EPIPE") throw fault;
});

/**
 * Opens a file for writing at its end and closes it again. Nothing is changed, and the system says whether the file may be
 * written.
 */
function tryToWrite(file: string): void {
  const existed = existsSync(file);
  // A pipe or a device is opened only when there is something to write.
  if (existed && !statSync(file).isFile() && !statSync(file).isDirectory()) return;
  closeSync(openSync(file, "a"));
  if (!existed) unlinkSync(file);
}

const args = process.argv.slice(2);
const io = {
  out: (text: string) => void process.stdout.write(text),
  err: (text: string) => void process.stderr.write(text),
  read: (file: string) => readFileSync(file === "-" ? 0 : file),
};

async function sheets(): Promise<Exit> {
  // Loaded only when sheets are asked for: an answer needs neither the PDF library nor the fonts.
  const [{ sheetsMain }, { sheetFonts }] = await Promise.all([import("./sheets"), import("./fonts")]);
  return sheetsMain(args, {
    ...io,
    fonts: sheetFonts,
    folder: (path) => void mkdirSync(path, { recursive: true }),
    there: (path) => (existsSync(path) ? readFileSync(path) : null),
    put: (path, bytes) => {
      writeFileSync(path, bytes);
    },
  });
}

process.exitCode = args.some((one) => one === "--sheets" || one.startsWith("--sheets="))
  ? await sheets()
  : main(args, {
      ...io,
      tryToWrite,
      now: () => process.uptime(),
      write: (file, text) => {
        writeFileSync(file, text);
      },
    });
