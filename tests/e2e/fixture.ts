import { expect, test as plain } from "@playwright/test";
import type { BrowserContext, CDPSession, ConsoleMessage, Request, WebError } from "@playwright/test";

/** All tests of a worker share a context; through `protocol` what it has stored is cleared. */
interface Common {
  readonly context: BrowserContext;
  readonly protocol: CDPSession;
}

/**
 * One browser context and, by the browser's settings, one process for the pages of a worker, kept alive by a page of
 * its own: what the page loads is compiled once and not for each test. Each test begins with nothing stored and ends
 * with all its pages closed.
 */
const shared = plain.extend<object, { common: Common }>({
  common: [
    async ({ browser }, use, { project }) => {
      const { viewport, locale, timezoneId, baseURL, hasTouch, isMobile } = project.use;
      const wished = { viewport, locale, timezoneId, baseURL, hasTouch, isMobile };
      // A worker that keeps the files would answer before a test can: it has tests of its own.
      const given = Object.fromEntries(Object.entries(wished).filter(([, value]) => value !== undefined));
      const context = await browser.newContext({ ...given, serviceWorkers: "block" });
      // No test can press in the system's own dialog of files: a page without one downloads. keep.spec.ts gives it another.
      await context.addInitScript(() => {
        for (const name of ["showSaveFilePicker", "showOpenFilePicker"])
          Object.defineProperty(window, name, { value: undefined, configurable: true, writable: true });
      });
      const stays = await context.newPage();
      // A page of the same site: an empty one would keep a process in which the tests' pages may not be.
      await stays.route("**/favicon.ico", (route) => route.fulfill({ status: 204 }));
      await stays.goto("./icon.svg");
      await use({ context, protocol: await context.newCDPSession(stays) });
      await context.close();
    },
    { scope: "worker" },
  ],
  context: async ({ common: { context, protocol }, baseURL }, use) => {
    const { origin } = new URL(baseURL ?? "");
    const [stays] = context.pages();
    if (stays === undefined) throw new Error("the page that stays has gone");
    // The browser clears what it has; what a page of the test before has written last may still be on its way there, and is
    // known in the pages' own process. So both forget, until nothing is left.
    await expect(async () => {
      await protocol.send("Storage.clearDataForOrigin", { origin, storageTypes: "local_storage,indexeddb" });
      const left = await stays.evaluate(async () => {
        const words = localStorage.length;
        localStorage.clear();
        return words + (await indexedDB.databases()).length;
      });
      expect(left).toBe(0);
    }).toPass();
    await use(context);
    for (const page of context.pages()) {
      if (page === stays) continue;
      // A page writes its last word as it goes. Only when it has gone is it sure that nothing comes after the next test's clearing.
      await page.goto("about:blank").catch(() => undefined);
      await page.close();
    }
  },
});

/**
 * The browser tests' `test`: like Playwright's own, but at its end it fails where the page asked for anything
 * outside its own origin, wrote an error or a warning to the console, or threw an error that nobody caught.
 * A test that provokes such a message on purpose names it with `allow`.
 */
export const test = shared.extend<{ allow: (message: RegExp) => void }>({
  allow: [
    async ({ context, baseURL }, use) => {
      const allowed: RegExp[] = [
        // Chromium's own remark on pictures taken of a drawing surface; says nothing about the page.
        /GPU stall due to ReadPixels/,
        // The shared context gives no service worker.
        /Service Worker registration blocked by Playwright/,
      ];
      const origin = new URL(baseURL ?? "").origin;
      const strayed: string[] = [];
      const complaints: string[] = [];

      const onRequest = (request: Request): void => {
        const url = new URL(request.url());
        const local = url.protocol === "data:" || (url.protocol === "blob:" && url.origin === origin);
        if (!local && url.origin !== origin) strayed.push(request.url());
      };
      const onMessage = (message: ConsoleMessage): void => {
        if (message.type() === "error" || message.type() === "warning")
          complaints.push(`console ${message.type()}: ${message.text()}`);
      };
      const onError = (webError: WebError): void => {
        complaints.push(`uncaught: ${webError.error().message}`);
      };
      context.on("request", onRequest);
      context.on("console", onMessage);
      context.on("weberror", onError);

      await use((message) => allowed.push(message));

      context.off("request", onRequest);
      context.off("console", onMessage);
      context.off("weberror", onError);

      expect(strayed, "requests that left the page's origin").toEqual([]);
      expect(
        complaints.filter((text) => !allowed.some((pattern) => pattern.test(text))),
        "complaints of the page",
      ).toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
