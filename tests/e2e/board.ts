import { readFile } from "node:fs/promises";
import type { Locator, Page } from "@playwright/test";
import { expect } from "./fixture";
import { fromMenu, numberIn, press, undo } from "./page";

/** The drawing board's words and places, for its tests. */

export async function openBoard(page: Page): Promise<void> {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto("./#draw");
  await expect(board(page)).toBeVisible();
}

export const board = (page: Page): Locator => page.getByRole("application", { name: "Drawing board" });
export const chosen = (page: Page): Locator => page.getByRole("status", { name: "Chosen" });
export const inputs = (page: Page): Locator => page.getByRole("complementary", { name: "Inputs" });
export const job = (page: Page, name: string): Promise<void> =>
  press(
    page,
    page.getByRole("group", { name: "What the hand works on" }).getByRole("button", { name, exact: true }),
  );

export interface Place {
  readonly x: number;
  readonly y: number;
}

export async function middleOf(what: Locator): Promise<Place> {
  const box = await what.boundingBox();
  if (box === null) throw new Error("it is not drawn");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The middle of a point of the curve in hand. */
export const pointAt = (page: Page, index: number): Promise<Place> =>
  middleOf(page.locator("line.point.own").nth(index));

/** Grams, millilitres or degrees of one of the board's figures. */
export async function figure(page: Page, label: string): Promise<number> {
  const strip = page.getByRole("region", { name: "Figures of the drawing" });
  return numberIn(await strip.getByRole("button", { name: new RegExp(`^${label}`) }).innerText());
}

export async function saved(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    fromMenu(page, "Save", "Save to a file"),
  ]);
  return readFile(await download.path(), "utf8");
}

export async function undoAll(page: Page): Promise<number> {
  const button = page.getByRole("button", { name: /^Undo/ });
  let steps = 0;
  for (; await button.isEnabled(); steps += 1) await undo(page);
  return steps;
}

/** Fingers on the page: each moves from its place by the same way, in a few steps. */
export async function fingers(page: Page, from: readonly Place[], to: readonly Place[]): Promise<void> {
  const client = await page.context().newCDPSession(page);
  const at = (share: number) =>
    from.map((one, id) => ({
      x: one.x + share * ((to[id]?.x ?? one.x) - one.x),
      y: one.y + share * ((to[id]?.y ?? one.y) - one.y),
      id,
    }));
  await client.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: at(0) });
  for (const share of [0.2, 0.4, 0.6, 0.8, 1])
    await client.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: at(share) });
  await client.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await client.detach();
}
