import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "@playwright/test";
import { root } from "../../tools/lib/process.mjs";
import { listen, networkAddresses, serverOf } from "../../tools/server.mjs";
import { expect, test } from "./fixture";
import { expectNet, fromMenu, net, netGrams, type, unfold } from "./page";

/** Without a network, and with a newer release: on a server of its own, which can be stopped and can serve other files. */

/** A server that stops as if the machine had gone, and comes back under the same address. */
class Shore {
  readonly folder = mkdtempSync(join(tmpdir(), "trimwright-offline-"));
  constructor() {
    cpSync(join(root, "dist"), this.folder, { recursive: true });
  }
  address = "";
  #server: Server | null = null;

  async up(network = false): Promise<void> {
    this.#server = serverOf(this.folder);
    this.address = await listen(
      this.#server,
      this.address === "" ? "0" : new URL(this.address).port,
      network,
    );
  }
  async down(): Promise<void> {
    const server = this.#server;
    this.#server = null;
    server?.closeAllConnections();
    await new Promise((done) => server?.close(done));
  }
  /** The same files under a release of another name. */
  renew(name: string): void {
    const file = join(this.folder, "offline.js");
    writeFileSync(file, readFileSync(file, "utf8").replace(/"release":"\w+"/, `"release":"${name}"`));
  }
}

const caches = (page: Page): Promise<readonly string[]> => page.evaluate(() => globalThis.caches.keys());
const controlled = (page: Page): Promise<boolean> =>
  page.evaluate(() => navigator.serviceWorker.controller !== null);

async function visitor(browser: Browser): Promise<{ context: BrowserContext; complaints: string[] }> {
  const context = await browser.newContext({ reducedMotion: "reduce", serviceWorkers: "allow" });
  const complaints: string[] = [];
  context.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  return { context, complaints };
}

test("opens without a network after the first load, all views; a newer release waits until it is asked for", async ({
  browser,
}) => {
  const shore = new Shore();
  await shore.up();
  const { context, complaints } = await visitor(browser);
  try {
    const page = await context.newPage();
    await page.goto(`${shore.address}#float`);
    await expect(net(page)).toBeVisible();
    await expect.poll(() => controlled(page)).toBe(true);
    const session = await context.newCDPSession(page);
    // The browser's own list of what keeps the page from being installed as a program. Guests have none at all.
    const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
    expect(installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito")).toEqual([]);
    const [first] = await caches(page);

    await shore.down();
    await page.reload();
    await expect(net(page)).toBeVisible();
    const views = page.getByRole("navigation", { name: "Views" });
    for (const name of ["Weigh", "Swim", "Reach", "Float"]) {
      await views.getByRole("link", { name, exact: true }).click();
      const main = page.getByRole("main", { name });
      await expect(main).toBeVisible();
      await expect(main.getByText(/^Loading/)).toHaveCount(0);
      await expect(page.getByRole("alert")).toHaveCount(0);
    }
    await type(await unfold(page, "Body"), "Body density", "0.437");
    const verdict = await netGrams(page);
    await fromMenu(page, "My baits", "My baits");
    await expect(page.getByText("This page opens without a network too.")).toBeVisible();
    await page.keyboard.press("Escape");

    // A newer release: told, and neither a reload nor another tab takes it.
    shore.renew("newer");
    await shore.up();
    await page.reload();
    const load = page.getByRole("button", { name: "Load it now" });
    await expect(load).toBeVisible();
    await expectNet(page, verdict);
    expect((await caches(page)).length).toBe(2);
    const other = await context.newPage();
    await other.goto(`${shore.address}#float`);
    await expectNet(other, verdict);
    await load.click();
    await expect(load).toHaveCount(0);
    await expectNet(page, verdict);
    await expect(other.getByText(/Another tab has loaded a newer release/)).toBeVisible();
    await other.getByRole("button", { name: "Later" }).click();
    await other.getByRole("link", { name: "Weigh", exact: true }).click();
    await expect(other.getByRole("main", { name: "Weigh" })).toBeVisible();

    // The next start, when no earlier page is open, forgets the earlier files.
    await page.close();
    await other.close();
    const next = await context.newPage();
    await next.goto(shore.address);
    await expectNet(next, verdict);
    await expect.poll(() => caches(next)).toEqual(["trimwright/newer"]);
    expect(first).not.toBe("trimwright/newer");
    // While there was no server the browser said so of itself.
    expect(complaints.filter((text) => !/ERR_CONNECTION|Failed to (load|update)/.test(text))).toEqual([]);
  } finally {
    await context.close();
    await shore.down();
    rmSync(shore.folder, { recursive: true });
  }
});

test("over a network's address, which is no secure context, all but the offline copy works, and it is said @phone-only @long", async ({
  browser,
}) => {
  const shore = new Shore();
  await shore.up(true);
  const [address] = networkAddresses(shore.address);
  test.skip(address === undefined, "this machine is in no network");
  const { context, complaints } = await visitor(browser);
  try {
    const page = await context.newPage();
    await page.setViewportSize({ width: 360, height: 740 });
    await page.goto(`${address ?? ""}#float`);
    await expect(net(page)).toBeVisible();
    expect(await page.evaluate(() => [isSecureContext, "serviceWorker" in navigator])).toEqual([
      false,
      false,
    ]);
    await type(await unfold(page, "Body"), "Body density", "0.437");
    const verdict = await netGrams(page);
    await expect(page.locator("[data-kept=yes]")).toHaveCount(1);
    await page.reload();
    await expectNet(page, verdict);
    await fromMenu(page, "My baits", "My baits");
    await expect(page.getByText("This page needs the server that it came from")).toBeVisible();
    // The browser says that it keeps to one header only where the page came over a secure way.
    expect(complaints.filter((text) => !text.includes("Cross-Origin-Opener-Policy"))).toEqual([]);
  } finally {
    await context.close();
    await shore.down();
    rmSync(shore.folder, { recursive: true });
  }
});
