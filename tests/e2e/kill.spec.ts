import { expect, test } from "./fixture";
import { open, type, unfold } from "./page";

/** What is lost when the page dies while a hand edits. */

/** Kills of the page: as many as the aim is told for. */
const KILLS = Number(process.env["TRIMWRIGHT_MOMENTS"] ?? 20);
/** Most work that a kill may take, ms. */
const MOST_LOST = 1000;

/**
 * Watches, in the page, how late its own clock is: what a busy machine takes from it. Stands as text: what runs this file
 * adds helpers to functions, which a page does not have.
 */
const WATCH = `(() => {
  let was = performance.now();
  globalThis.late = 0;
  setInterval(() => {
    const now = performance.now();
    globalThis.late = Math.max(globalThis.late, now - was - 20);
    was = now;
  }, 20);
})()`;

test("a page that is killed while a hand edits comes back less at most its last second @long", async ({
  browser,
}) => {
  // Many starts of the page: a minute or two on a free machine, more on a busy one.
  test.setTimeout(900_000);
  // A context of its own has a process of its own: the others go on.
  const context = await browser.newContext({ reducedMotion: "reduce", serviceWorkers: "block" });
  try {
    let seed = 11;
    const chance = (): number => (seed = (seed * 48271) % 2147483647) / 2147483647;
    let page = await context.newPage();
    await open(page, "float");
    const made: { readonly density: number; readonly at: number }[] = [];
    const losses: { readonly lost: number; readonly late: number }[] = [];
    for (let kill = 0; kill < KILLS; kill++) {
      const body = await unfold(page, "Body");
      await page.evaluate(WATCH);
      for (let i = 0; i < 1 + Math.floor(3 * chance()); i++) {
        const density = Number((0.3 + made.length / 1000).toFixed(3));
        await type(body, "Body density", String(density));
        made.push({ density, at: Date.now() });
      }
      await page.waitForTimeout(900 * chance());
      const late = await page.evaluate<number>("globalThis.late");
      const killer = await context.newCDPSession(page);
      const dead = page.waitForEvent("crash");
      const killed = Date.now();
      void killer.send("Page.crash").catch(() => undefined);
      await dead;
      const next = await context.newPage();
      await next.goto("./");
      await expect(next.getByRole("link", { name: "Float" })).toHaveAttribute("aria-current", "page");
      const field = (await unfold(next, "Body")).getByRole("textbox", { name: "Body density", exact: true });
      await expect(field.first()).toHaveValue(/^0\.[345]/);
      const back = Number(await field.first().inputValue());
      expect(made.map(({ density }) => density)).toContain(back);
      const lost = made.filter(({ density }) => density > back);
      losses.push({ lost: lost.length === 0 ? 0 : killed - Math.min(...lost.map(({ at }) => at)), late });
      // What is lost is lost: the next edits go on from what came back.
      made.splice(made.length - lost.length, lost.length);
      await page.close();
      page = next;
    }
    const most = Math.max(...losses.map(({ lost }) => lost));
    const any = losses.filter(({ lost }) => lost > 0).length;
    const description = `${most} ms at most of ${KILLS} kills, ${any} of them lost an edit`;
    test.info().annotations.push({ type: "work lost by a kill", description });
    // An edit is written after 0.7 s at the latest, by the page's own clock.
    expect(losses.filter(({ lost, late }) => lost >= MOST_LOST + late)).toEqual([]);
  } finally {
    await context.close();
  }
});
