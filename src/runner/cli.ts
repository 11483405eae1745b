import { readFileSync, writeFileSync } from "node:fs";
import { main } from "./main";

/** `npm run -s answer -- FILE`: the command line's door. */

// A reader that closes early (… | head) is no fault.
process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
  if (fault.code !== "EPIPE") throw fault;
});

process.exitCode = main(process.argv.slice(2), {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  read: (file) => readFileSync(file === "-" ? 0 : file, "utf8"),
  write: (file, text) => {
    writeFileSync(file, text);
  },
});
