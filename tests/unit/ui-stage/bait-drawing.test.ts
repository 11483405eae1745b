import { render } from "svelte/server";
import { describe, expect, test } from "vitest";
import { sceneOf } from "../../../src/drawing";
import { BaitDrawing } from "../../../src/ui/stage";
import { bait } from "../../lib/drawn";

const scene = sceneOf(bait, null, 2);
const drawn = (props: { xray?: boolean }): string =>
  render(BaitDrawing, { props: { scene, label: "Drawn 80, level", ...props } }).body;

describe("BaitDrawing", () => {
  test("is a picture with a name, framed round every part", () => {
    const svg = drawn({});
    expect(svg).toContain('role="img"');
    expect(svg).toContain('aria-label="Drawn 80, level"');
    const [x, y, width, height] = (/viewBox="([^"]+)"/.exec(svg)?.[1] ?? "").split(" ").map(Number);
    // 6000 units to a metre: from the hanging tail hook 84 mm aft to the tie eye 4 mm ahead, and hooks below.
    expect(x).toBeLessThan(-84e-3 * 6000);
    expect((x ?? 0) + (width ?? 0)).toBeGreaterThan(4e-3 * 6000);
    expect(y).toBeLessThan(-10e-3 * 6000);
    expect((y ?? 0) + (height ?? 0)).toBeGreaterThan(30e-3 * 6000);
    expect(svg).not.toContain("NaN");
  });

  test("shows the parts inside only where asked for", () => {
    const dashes = (svg: string): number => svg.split("stroke-dasharray").length - 1;
    expect(dashes(drawn({ xray: true }))).toBeGreaterThan(0);
    expect(dashes(drawn({ xray: false }))).toBe(0);
    // Two loose balls, each a disc with its light, and one weight; a hole is drawn as the drill makes it.
    const circles = (svg: string): number => svg.split("<circle").length - 1;
    expect(circles(drawn({ xray: true })) - circles(drawn({ xray: false }))).toBe(1 + 2 * 2);
  });
});
