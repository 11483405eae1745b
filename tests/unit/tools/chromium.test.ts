import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findChromium, howToGetOne } from "../../../tools/lib/chromium.mjs";

const folder = mkdtempSync(join(tmpdir(), "trimwright-chromium-"));
const placeholder = join(folder, "first/chromium");
const browser = join(folder, "second/chromium");

function program(path: string, text: string): void {
  mkdirSync(join(path, ".."), { recursive: true });
  writeFileSync(path, `#!/bin/sh\n${text}\n`);
  chmodSync(path, 0o755);
}
beforeAll(() => {
  program(placeholder, "echo please install me; exit 1");
  program(browser, "echo Chromium 120.0.1");
});
afterAll(() => rmSync(folder, { recursive: true }));

const nowhere = { places: [], own: () => Promise.resolve(null), install: false };
const PATH = [join(folder, "first"), join(folder, "second")].join(delimiter);

describe.skipIf(process.platform === "win32")("finding a Chromium", () => {
  it("takes the one that is named", async () => {
    expect(await findChromium({ ...nowhere, env: { TRIMWRIGHT_CHROMIUM: browser, PATH: "" } })).toBe(browser);
    expect(await findChromium({ ...nowhere, env: { CHROME_PATH: browser, PATH: "" } })).toBe(browser);
  });
  it("does not quietly take another than the one that is named", async () => {
    await expect(findChromium({ ...nowhere, env: { CHROME_PATH: placeholder, PATH } })).rejects.toThrow(
      `CHROME_PATH names "${placeholder}", which does not start as a browser.`,
    );
  });
  it("passes over a placeholder on the path", async () => {
    expect(await findChromium({ ...nowhere, env: { PATH } })).toBe(browser);
  });
  it("falls back on the one that Playwright has", async () => {
    const own = (): Promise<string> => Promise.resolve(browser);
    expect(await findChromium({ ...nowhere, env: { PATH: "" }, own })).toBe(browser);
  });
  it("says what to install where there is none", async () => {
    await expect(findChromium({ ...nowhere, env: { PATH: "" } })).rejects.toThrow(howToGetOne);
  });
});
