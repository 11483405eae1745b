import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, it } from "vitest";
import { PAPERS, pdfFile } from "../../../src/sheet";
import { jobOf } from "./baits";
import { scenarioOf } from "../../lib/scenarios";

/** Dots of the picture to a millimetre. */
const DOTS = 10;
const MM_PER_POINT = 25.4 / 72;

interface CanvasFactory {
  create(
    width: number,
    height: number,
  ): { readonly canvas: HTMLCanvasElement; readonly context: CanvasRenderingContext2D };
}

/** A page of a PDF as another program draws it: how dark each dot is, 0 white to 1 black. */
async function drawn(bytes: Uint8Array, number = 1) {
  const pdf = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const page = await pdf.getPage(number);
  const viewport = page.getViewport({ scale: DOTS * MM_PER_POINT });
  const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
  // The library brings a canvas of its own for Node.
  const { canvas, context } = (pdf.canvasFactory as CanvasFactory).create(width, height);
  await page.render({ canvas, canvasContext: context, viewport, background: "white" }).promise;
  const { data } = context.getImageData(0, 0, width, height);
  const words = (await page.getTextContent()).items.flatMap((one) => ("str" in one ? [one.str] : []));
  await pdf.destroy();
  return {
    words: words.join("\n"),
    size: { width: width / DOTS, height: height / DOTS },
    dark: (x: number, y: number) => 1 - (data[4 * (y * width + x)] ?? 255) / 255,
  };
}

/** Middle of the dark dots near a place on a line, mm; the line is read across the tick. */
function middle(dark: (at: number) => number, near: number): number {
  let [sum, weight] = [0, 0];
  for (let at = Math.round((near - 0.45) * DOTS); at <= (near + 0.45) * DOTS; at++) {
    sum += dark(at) * (at + 0.5);
    weight += dark(at);
  }
  return sum / weight / DOTS;
}

describe.each(["A4", "Letter"] as const)("a PDF on %s, drawn by another program", (paper) => {
  it("has the paper's size, rulers of 100.0 mm in both directions, and Greek that can be read", async () => {
    const from = { ...scenarioOf("suspender-90"), name: "Kleiner Köder β 5°" };
    const { bytes } = await pdfFile(jobOf(from, { paper, templates: ["side"] }));
    const page = await drawn(bytes);
    const { width, height } = PAPERS[paper];
    expect(page.size.width).toBeCloseTo(width, 0);
    expect(page.size.height).toBeCloseTo(height, 0);
    expect(page.words).toContain("Kleiner Köder β 5°");
    // The long ticks at 0 and 100, read 2.5 mm from their ruler.
    const row = Math.round((height - 26 - 2.5) * DOTS);
    const across = [20, 120].map((x) => middle((at) => page.dark(at, row), x));
    const column = Math.round((9 + 2.5) * DOTS);
    const down = [20, 120].map((y) => middle((at) => page.dark(column, at), y));
    for (const [from, to] of [across, down]) expect(Math.abs(to! - from! - 100)).toBeLessThan(0.1);
  });
});

it("the same document gives the same bytes, whatever was printed before", async () => {
  const one = await pdfFile(jobOf(scenarioOf("timed-sinker-70")));
  await pdfFile(jobOf(scenarioOf("slow-floater-72")));
  const again = await pdfFile(jobOf(scenarioOf("timed-sinker-70")));
  expect(again.name).toBe(one.name);
  expect(Buffer.compare(Buffer.from(again.bytes), Buffer.from(one.bytes))).toBe(0);
  const text = Buffer.from(one.bytes).toString("latin1");
  expect(text).toContain("/PrintScaling /None");
});
