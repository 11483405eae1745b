import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run, runCommand } from "./process.mjs";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];
const usualPlaces = [
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];

/** What to tell somebody who has none. */
export const howToGetOne =
  "No Chromium was found, and none could be installed. Install Chromium (Debian: apt-get install chromium; " +
  "elsewhere: npx playwright install chromium), or set TRIMWRIGHT_CHROMIUM to the path of one, " +
  "then run the command again.";

/**
 * Does a file start as a browser? Some systems have a placeholder of that name that only asks to install one.
 * @param {string} path
 */
function starts(path) {
  if (!existsSync(path)) return false;
  // On Windows the browser opens a window instead of printing its version.
  if (process.platform === "win32") return true;
  const tried = spawnSync(path, ["--version"], { timeout: 20_000, encoding: "utf8" });
  return tried.status === 0 && /\d+\.\d+/.test(tried.stdout);
}

/** @param {NodeJS.ProcessEnv} env */
function onPath(env) {
  const folders = (env["PATH"] ?? "").split(delimiter).filter((folder) => folder !== "");
  return folders.flatMap((folder) => names.map((name) => join(folder, name)));
}

/** Debian itself: others of its family may ship a placeholder instead of the program. */
function rootOnDebian() {
  if (process.getuid?.() !== 0 || !existsSync("/etc/os-release")) return false;
  return /^ID="?debian"?$/m.test(readFileSync("/etc/os-release", "utf8"));
}

/** The one that Playwright has downloaded, where it has. */
async function playwrightsOwn() {
  const { chromium } = await import("@playwright/test");
  const path = chromium.executablePath();
  return path !== "" && starts(path) ? path : null;
}

/**
 * Path of a Chromium that starts: the one named by TRIMWRIGHT_CHROMIUM or CHROME_PATH, one on the system, one that
 * Playwright has, or, with `install`, Debian's package (as root on Debian) or Playwright's download.
 * Throws with a plain sentence where a named one does not start, or where there is none at all.
 * @param {{ env?: NodeJS.ProcessEnv, places?: readonly string[], own?: () => Promise<string | null>, install?: boolean }} [options]
 * @returns {Promise<string>}
 */
export async function findChromium(options = {}) {
  const { env = process.env, places = usualPlaces, own = playwrightsOwn, install = true } = options;
  for (const variable of ["TRIMWRIGHT_CHROMIUM", "CHROME_PATH"]) {
    const named = env[variable];
    if (named === undefined || named === "") continue;
    if (starts(named)) return named;
    throw new Error(
      `${variable} names "${named}", which does not start as a browser. ` +
        "Set it to the path of a Chromium, or unset it to have one found.",
    );
  }
  const here = [...onPath(env), ...places].find(starts) ?? (await own());
  if (here !== null) return here;
  if (!install) throw new Error(howToGetOne);

  if (rootOnDebian()) {
    console.error("No Chromium found: installing Debian's package …");
    const quiet = { stdout: /** @type {const} */ ("stderr"), env: { DEBIAN_FRONTEND: "noninteractive" } };
    await run("apt-get", ["update", "-qq"], quiet);
    await run(
      "apt-get",
      ["install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-dejavu-core"],
      quiet,
    );
    const packaged = onPath(env).find(starts);
    if (packaged !== undefined) return packaged;
  }
  console.error("No Chromium found: asking Playwright to bring its own …");
  await runCommand("playwright", ["install", "chromium"], { packageName: "playwright", stdout: "stderr" });
  const brought = await own();
  if (brought !== null) return brought;
  throw new Error(howToGetOne);
}
