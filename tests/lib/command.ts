import { main } from "../../src/runner/main";

/** The command in this process, over files that exist only here; what it writes is handed back. `/nowhere/` takes no file. */
export function command(
  args: readonly string[],
  files: Readonly<Record<string, string | Uint8Array>> = {},
): {
  readonly exit: ReturnType<typeof main>;
  readonly out: string;
  readonly err: string;
  readonly written: Readonly<Record<string, string>>;
} {
  const written: Record<string, string> = {};
  let out = "";
  let err = "";
  const exit = main(args, {
    out: (text) => (out += text),
    err: (text) => (err += text),
    read: (file) => {
      const text = files[file];
      if (text === undefined) throw new Error("no such file");
      return Buffer.from(text);
    },
    tryToWrite: (file) => {
      if (file.startsWith("/nowhere/")) throw new Error("no such folder");
    },
    write: (file, text) => (written[file] = text),
  });
  return { exit, out, err, written };
}
