// The drawing board in Chromium: how soon the figures follow a drag, and how long the board takes to draw itself anew.
import type { Browser, Page } from "@playwright/test";
import { parseScenario, serialize } from "../../src/document";
import type { Scenario } from "../../src/document";
import { starter } from "../../src/ui/maker/starter";
import { withBuiltPage } from "./lib/built-page";

const sorted = (times: readonly number[]): number[] => [...times].sort((a, b) => a - b);
const share = (times: readonly number[], of: number): number =>
  sorted(times)[Math.min(times.length - 1, Math.floor(times.length * of))] ?? NaN;
const ms = (time: number): string => `${time.toFixed(1)} ms`;

/** A bait of 60 points an edge and 40 parts: nobody draws one, everybody's is lighter. */
function heavy(): Scenario {
  const plain = starter();
  const { bait } = plain;
  const L = bait.length_mm;
  const edge = (depth: number): [number, number][] =>
    Array.from({ length: 60 }, (_, i): [number, number] => {
      const phi = (Math.PI * i) / 59;
      const s = i === 59 ? L : Number(((L * (1 - Math.cos(phi))) / 2).toFixed(3));
      return [s, Number((depth * Math.sin(phi)).toFixed(3))];
    });
  const held = bait.ballast.length + bait.wires.length + bait.hangers.length + bait.fittings.length + 3;
  const shot = Array.from({ length: 40 - held }, (_, i) => ({
    name: `shot ${i + 1}`,
    at_mm: [18 + (i * (L - 40)) / (40 - held), i % 2 === 0 ? -2 : 2] as [number, number],
    mass_g: 0.02,
    material: "tin",
    where: "inside" as const,
  }));
  const next = {
    ...plain,
    name: "Heavy",
    bait: {
      ...bait,
      top: edge(9),
      bottom: edge(-9),
      halfBreadth: edge(6.5),
      ballast: [...bait.ballast, ...shot],
    },
  };
  const read = parseScenario(serialize(next));
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  return read.scenario;
}

/**
 * One drag of many small moves. Of each frame: from the start of the hand's turn to the end of all that follows from it, with the
 * page laid out anew. As text: what runs this file adds helpers to named functions, which a page does not have.
 */
const DRAG = `(async ({ x, y, moves }) => {
  const host = document.querySelector("[role=application]");
  const times = [];
  for (let k = 1; k <= moves; k++) {
    let since = 0;
    requestAnimationFrame(() => { since = performance.now(); });
    host.dispatchEvent(new PointerEvent("pointermove", {
      pointerId: 1, pointerType: "mouse", bubbles: true, altKey: true,
      clientX: x + 6 * Math.sin(k / 5), clientY: y - 6 * Math.sin(k / 7),
    }));
    await new Promise((resolve) => requestAnimationFrame(() => {
      host.getBoundingClientRect();
      times.push(performance.now() - since);
      resolve();
    }));
  }
  return times;
})`;

const REDRAW = `(async ({ x, y, moves }) => {
  const host = document.querySelector("[role=application]");
  const times = [];
  for (let k = 1; k <= moves; k++) {
    await new Promise((resolve) => requestAnimationFrame(resolve));
    const since = performance.now();
    host.dispatchEvent(new WheelEvent("wheel", { deltaY: k % 2 ? -40 : 40, clientX: x, clientY: y, bubbles: true, cancelable: true }));
    await null;
    await null;
    host.getBoundingClientRect();
    times.push(performance.now() - since);
  }
  return times;
})`;

interface Times {
  readonly drag: readonly number[];
  readonly redraw: readonly number[];
}

async function board(browser: Browser, address: string, scenario: Scenario | null): Promise<Times> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    baseURL: address,
    reducedMotion: "reduce",
    serviceWorkers: "block",
  });
  try {
    const page: Page = await context.newPage();
    // The file is given by the plain chooser: the other one is the browser's own window.
    await page.addInitScript("delete globalThis.showOpenFilePicker");
    await page.goto("./#draw");
    const place = page.getByRole("application", { name: "Drawing board" });
    await place.waitFor();
    if (scenario !== null) {
      const [chooser] = await Promise.all([
        page.waitForEvent("filechooser"),
        page.getByRole("button", { name: "Open", exact: true }).click(),
      ]);
      await chooser.setFiles({
        name: "heavy.json",
        mimeType: "application/json",
        buffer: Buffer.from(serialize(scenario)),
      });
      await page.waitForFunction("document.querySelectorAll('line.point.own').length === 60");
    }
    // Nobody finds a point to drag sooner; by then the page has gone through a move by itself.
    await page.waitForTimeout(2000);
    const points = page.locator("line.point.own");
    const box = await points.nth(Math.floor((await points.count()) / 2)).boundingBox();
    if (box === null) throw new Error("there is no point to drag");
    const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    const drag = await page.evaluate<number[]>(`${DRAG}(${JSON.stringify({ ...at, moves: 120 })})`);
    await page.mouse.up();
    const redraw = await page.evaluate<number[]>(`${REDRAW}(${JSON.stringify({ ...at, moves: 60 })})`);
    return { drag, redraw };
  } finally {
    await context.close();
  }
}

await withBuiltPage(async (browser, address) => {
  console.log(
    "bait                          a drag's figures: middle     p95   asked   ratio   board anew: middle   asked",
  );
  for (const [words, scenario] of [
    ["the demo", null],
    ["60 points an edge, 40 parts", heavy()],
  ] as const) {
    const { drag, redraw } = await board(browser, address, scenario);
    const p95 = share(drag, 0.95);
    console.log(
      [
        words.padEnd(30),
        ms(share(drag, 0.5)).padStart(24),
        ms(p95).padStart(8),
        "16 ms".padStart(8),
        (16 / p95).toFixed(1).padStart(8),
        ms(share(redraw, 0.5)).padStart(21),
        "8 ms".padStart(8),
      ].join(""),
    );
  }
});
