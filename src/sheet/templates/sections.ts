import { sectionCurve } from "../../drawing";
import { formatNumber } from "../../units";
import { Pen, TYPE } from "../paper/pen";
import { mm } from "./figure";
import type { Template, TemplateJob } from "./types";
import { mmNumber, mmText } from "./words";

/** Card round the opening of a gauge, mm. */
const CARD = 7;

/** One gauge for each station: a card with the section cut out, parted along the middle. */
export function sectionsTemplate({ bait, fonts, words, stations }: TemplateJob): Template {
  const drawings = stations.map((station) => {
    const pen = new Pen(fonts, words);
    const section = bait.drawn.section(station);
    const points = sectionCurve(section).map(({ x, z }) => ({ x: mm(x), y: -mm(z) }));
    pen.ring("cut", points);
    const [half, top, bottom] = [mm(section.halfBreadth), -mm(section.top), -mm(section.bottom)];
    const side = Math.max(half + CARD, 11);
    pen.rect("cut", -side, top - CARD, 2 * side, bottom - top + 2 * CARD);
    pen.line("cut", { x: 0, y: top - CARD }, { x: 0, y: top });
    pen.line("cut", { x: 0, y: bottom }, { x: 0, y: bottom + CARD });
    // The datum line, where it passes the card.
    if (top - CARD < 0 && bottom + CARD > 0)
      for (const sign of [1, -1]) pen.line("mark", { x: sign * side, y: 0 }, { x: sign * (side - 4), y: 0 });
    pen.text({ x: -side, y: bottom + CARD + 3.6 }, `${mmNumber(station)} from the nose`, {
      size: TYPE.small,
    });
    pen.text(
      { x: -side, y: bottom + CARD + 7 },
      `${formatNumber(2 * half, 1)} broad, ${formatNumber(bottom - top, 1)} high`,
      { size: TYPE.tiny },
    );
    return pen.drawing(`section ${mmText(station)} from the nose`);
  });
  return {
    title: "Section gauges",
    notes: [
      "Cut the card along all full lines: the gauge comes apart into two, and its opening is the bare body at that station. Here the middle piece is the waste: cut inside its line and trim to the middle of the line. The ticks at the sides are the datum line.",
    ],
    drawings,
  };
}
