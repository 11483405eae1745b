import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { root } from "../../tools/lib/process.mjs";
import { expect, test } from "./fixture";
import { unfoldAll } from "./page";

const VIEWS = ["draw", "weigh", "float", "swim", "reach", "make", "teach"] as const;

/** What stands on the page to be read or heard: two words or more, so that no name of a unit or a letter is meant. */
const readable = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const said = new Set<string>();
    const take = (text: string | null): void => {
      const plain = (text ?? "").replaceAll(/\s+/g, " ").trim();
      if (/[A-Za-z]{3,}[^A-Za-z]+[A-Za-z]{3,}/.test(plain)) said.add(plain);
    };
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const { parentElement: over } = node;
      // What a program reads is no text of the page.
      if (over !== null && over.closest("script, style, noscript, textarea") === null) take(node.textContent);
    }
    for (const name of ["aria-label", "title", "placeholder", "aria-valuetext", "aria-roledescription"])
      for (const one of document.querySelectorAll(`[${name}]`)) take(one.getAttribute(name));
    return [...said];
  });

/** A name that somebody has given and the notes of a file stay as they are. */
const OWN = readFileSync(`${root}scenarios/suspender-90.json`, "utf8");
const isOwn = (text: string): boolean => text.startsWith("Trimwright") || OWN.includes(text);

for (const view of VIEWS)
  test(`the view ‘${view}’ leaves no English standing where German is read @long`, async ({ page }) => {
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.goto(`./#${view}`);
    await expect(page.locator("main")).toBeVisible();
    await page.waitForTimeout(3000);
    await unfoldAll(page);
    await page.waitForTimeout(500);
    const english = new Set(await readable(page));
    expect(english.size).toBeGreaterThan(10);
    await page.evaluate(() => {
      const key = "trimwright/preferences";
      const kept = JSON.parse(localStorage.getItem(key) ?? "{}") as Record<string, unknown>;
      localStorage.setItem(key, JSON.stringify({ ...kept, language: "de" }));
    });
    await page.reload();
    await expect(page.locator("html")).toHaveAttribute("lang", "de");
    await page.waitForTimeout(3000);
    await unfoldAll(page);
    await page.waitForTimeout(500);
    const german = await readable(page);
    expect(german.filter((text) => english.has(text) && !isOwn(text))).toEqual([]);
  });
