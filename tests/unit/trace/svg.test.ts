// @vitest-environment jsdom
import { describe, expect, it } from "vitest";
import { TRACE } from "../../../src/ui/words/trace";
import { readDrawing } from "../../../src/ui/views/draw/trace/svg";

const svg = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 60">${inside}</svg>`;
const read = (text: string) => {
  const found = readDrawing(text);
  if (!found.ok) throw new Error(found.why(TRACE.in("en")));
  return found.drawing;
};
const why = (text: string): string => {
  const found = readDrawing(text);
  return found.ok ? "" : found.why(TRACE.in("en"));
};
function area(ring: readonly { u: number; v: number }[]): number {
  const sum = ring.reduce((all, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return all + p.u * q.v - q.u * p.v;
  }, 0);
  return Math.abs(sum) / 2;
}

describe("an outline from SVG", () => {
  it("cuts an ellipse's arcs finely, in px of its own", () => {
    const { rings, width, height } = read("M0 20 A50 20 0 1 1 100 20 A50 20 0 1 1 0 20 Z");
    expect(width).toBeCloseTo(2000, 6);
    expect(height).toBeCloseTo(800, 0);
    expect(area(rings[0] ?? []) / (Math.PI * 1000 * 400)).toBeCloseTo(1, 3);
  });

  it("knows relative and smooth curves, quadratic ones, and several lines in a path", () => {
    const { rings } = read("m10,10 c0,-10 20,-10 20,0 s-20,10 -20,0 z M50 10 q10 -20 20 0 t20 0 V30 H50 Z");
    expect(rings).toHaveLength(2);
  });

  it("takes shapes with all transforms around them, the largest first, and leaves out what is not drawn", () => {
    const { rings, width, height } = read(
      svg(`<defs><rect width="500" height="500"/></defs>
        <clipPath><circle r="900"/></clipPath>
        <g transform="translate(5 5) scale(2)"><polygon transform="rotate(90)" points="0,0 10,0 10,4 0,4"/></g>
        <circle cx="20" cy="20" r="2"/><path d="M0 0L300 0"/>`),
    );
    expect(rings).toHaveLength(2);
    // The polygon is 8 × 20, turned to stand upright, from −3 to 5; the circle reaches to 22.
    expect(width / height).toBeCloseTo((22 + 3) / 20, 3);
    // Corners lie within 1e-4 of the drawing's size, 25, so within 0.0025 of the small circle's 2.
    expect((area(rings[0] ?? []) / area(rings[1] ?? []) / 160) * Math.PI * 4).toBeCloseTo(1, 1);
  });

  it("loads and runs nothing of a file", () => {
    const before = document.documentElement.outerHTML;
    const { rings } = read(
      svg(`<script>document.body.innerHTML = "run"</script><image href="https://example.org/a.png"/>
        <use href="https://example.org/b.svg#c"/><style>@import url(https://example.org/d.css);</style>
        <path onload="document.body.innerHTML = 'run'" d="M0 0h10v5h-10z"/>`),
    );
    expect(rings).toHaveLength(1);
    expect(document.documentElement.outerHTML).toBe(before);
  });

  it("says in words why there is none", () => {
    expect(why("  ")).toMatch(/no text/);
    expect(why("hello")).toMatch(/no path/);
    expect(why("<html></html>")).toMatch(/no SVG/);
    expect(why("<svg xmlns='http://www.w3.org/2000/svg'><path d='M0 0")).toMatch(/no SVG|damaged/);
    expect(why(svg("<text>nothing</text>"))).toMatch(/no path, polygon/);
    expect(why(svg('<path d="M0 0 L100 0 L100 30"/>'))).toMatch(/closed/);
    expect(why(`<!DOCTYPE svg [<!ENTITY a "aaaa">]>${svg("<path d='M0 0h9v9z'/>")}`)).toMatch(/entities/);
    expect(why(svg('<path d="M0 0h1v1z"/>'.repeat(2001)))).toMatch(/2001 shapes/);
    expect(why("M0 0" + " L1 1".repeat(300_000))).toMatch(/longer than/);
    expect(why("M0 0" + "l1 1 -1 1".repeat(10_001) + "z")).toMatch(/too many corners/);
  });
});
