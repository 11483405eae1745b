import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { constants, setPriority } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's root folder, with a separator at its end. */
export const root = fileURLToPath(new URL("../../", import.meta.url));

/**
 * Path of the script behind a package's command. Started with Node itself, it needs no shell on any system.
 * @param {string} command e.g. "vitest"
 * @param {string} [packageName] where it differs from the command, e.g. "typescript" for "tsc"
 */
export function scriptOf(command, packageName = command) {
  const folder = join(root, "node_modules", packageName);
  /** @type {{ bin?: string | Record<string, string> }} */
  const described = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const script = typeof described.bin === "string" ? described.bin : described.bin?.[command];
  if (script === undefined) throw new Error(`The package ${packageName} has no command ${command}.`);
  return join(folder, script);
}

/**
 * Run a program in the project's root and wait for it.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ env?: Record<string, string>, stdout?: "inherit" | "stderr", shell?: boolean, minutes?: number, hold?: (text: string) => void, yielding?: boolean }} [options]
 *   stdout "stderr": what it prints goes to standard error; minutes: it is ended when it takes longer; hold: hears all that it
 *   prints, instead of the terminal; yielding: it and its children let others have the processor first
 * @returns {Promise<{ code: number, why: string | null }>} exit code, and a sentence where it is not the program's own
 */
export function run(program, args, options = {}) {
  const { env = {}, stdout = "inherit", shell = false, minutes, hold, yielding = false } = options;
  return new Promise((resolve) => {
    // A group of its own where there is a limit in time, so that its children end with it.
    const grouped = minutes !== undefined && process.platform !== "win32";
    const child = spawn(program, args, {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: [
        grouped ? "ignore" : "inherit",
        hold ? "pipe" : stdout === "stderr" ? process.stderr : "inherit",
        hold ? "pipe" : "inherit",
      ],
      shell,
      detached: grouped,
    });
    // A program that could not be started has no number.
    if (yielding && child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_BELOW_NORMAL);
    if (hold) for (const stream of [child.stdout, child.stderr]) stream?.setEncoding("utf8").on("data", hold);
    const end = () => {
      if (grouped && child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
      else child.kill("SIGKILL");
    };
    let late = false;
    const timer =
      minutes === undefined
        ? undefined
        : setTimeout(() => {
            late = true;
            end();
          }, minutes * 60_000);
    const onSignal = () => {
      end();
      process.exit(130);
    };
    process.once("SIGINT", onSignal);
    process.once("SIGTERM", onSignal);
    const settle = (/** @type {number} */ code, /** @type {string | null} */ why) => {
      clearTimeout(timer);
      process.off("SIGINT", onSignal);
      process.off("SIGTERM", onSignal);
      resolve({ code, why });
    };
    child.once("error", (error) => settle(1, `${program} could not be started: ${error.message}`));
    child.once("close", (code, signal) => {
      if (late) settle(1, `ended after ${String(minutes)} minutes without a result`);
      else settle(code ?? 1, signal === null ? null : `ended by the signal ${signal}`);
    });
  });
}

/**
 * Run a package's command with Node.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {Parameters<typeof run>[2] & { packageName?: string }} [options]
 */
export function runCommand(command, args, options = {}) {
  const { packageName = command, ...rest } = options;
  return run(process.execPath, [scriptOf(command, packageName), ...args], rest);
}
