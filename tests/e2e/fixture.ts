import { expect, test as plain } from "@playwright/test";

/**
 * The browser tests' `test`: like Playwright's own, but at its end it fails where the page asked for anything
 * outside its own origin, wrote an error or a warning to the console, or threw an error that nobody caught.
 * A test that provokes such a message on purpose names it with `allow`.
 */
export const test = plain.extend<{ allow: (message: RegExp) => void }>({
  allow: [
    async ({ context, baseURL }, use) => {
      const allowed: RegExp[] = [
        // Chromium's own remark on pictures taken of a drawing surface; says nothing about the page.
        /GPU stall due to ReadPixels/,
      ];
      const origin = new URL(baseURL ?? "").origin;
      const strayed: string[] = [];
      const complaints: string[] = [];

      context.on("request", (request) => {
        const url = new URL(request.url());
        const local = url.protocol === "data:" || (url.protocol === "blob:" && url.origin === origin);
        if (!local && url.origin !== origin) strayed.push(request.url());
      });
      context.on("console", (message) => {
        if (message.type() === "error" || message.type() === "warning")
          complaints.push(`console ${message.type()}: ${message.text()}`);
      });
      context.on("weberror", (webError) => complaints.push(`uncaught: ${webError.error().message}`));

      await use((message) => allowed.push(message));

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
