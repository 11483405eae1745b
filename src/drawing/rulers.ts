import type { Vec } from "../model/base";
import { onScreen, type Ground } from "./ground";
import type { Anchor, Mark, TextMark } from "./mark";
import { toSI, UNITS, type UnitName } from "../units";
import { scaleUnit } from "./lengths";
import { decimalsOf, niceStep, ticksBetween, tickText } from "./ticks";
import type { Posed } from "./types";
import type { NumberWriter, Speech } from "./words";

/**
 * The depth scale at the left edge with the tie eye's depth, and the distance scale along the bottom. In screen px. The ticks
 * are round in the unit of the lengths.
 */
export function rulerMarks(
  ground: Ground,
  bait: Posed,
  { lengths, words: { depth, number } }: Speech,
): Mark[] {
  const unit = scaleUnit(lengths, ground.size.height / ground.view.scale);
  const { symbol } = UNITS[unit];
  /** Metres in a unit, and pixels to a unit. */
  const metres = toSI(1, unit);
  const scale = ground.view.scale * metres;
  const { view, at } = ground;
  const { width, height } = ground.size;
  const { left, bottom } = ground.rulers;
  const foot = height - bottom;
  const words: TextMark[] = [];
  const say = (text: string, x: number, y: number, anchor: Anchor): void => {
    words.push({
      kind: "text",
      what: null,
      at: onScreen(x, y),
      words: text,
      size: ground.narrow ? 10.5 : 11.5,
      anchor,
      fill: { role: "inkSoft" },
    });
  };
  const ticks: (readonly Vec[])[] = [[onScreen(left, 0), onScreen(left, foot), onScreen(width, foot)]];
  const step = niceStep(scale, 44);
  const fine = niceStep(scale, 8);
  const low = view.z / metres - height / 2 / scale;
  const high = view.z / metres + height / 2 / scale;
  for (const z of ticksBetween(low, high, fine)) {
    const { y } = at({ x: 0, z: z * metres });
    if (y < foot) ticks.push([onScreen(left - 4, y), onScreen(left, y)]);
  }
  for (const z of ticksBetween(low, high, step)) {
    const { y } = at({ x: 0, z: z * metres });
    if (y > foot - 8 || y < 36) continue;
    ticks.push([onScreen(left - 8, y), onScreen(left, y)]);
    say(number(tickText(z === 0 ? 0 : -z, step)), left - 10, y, { x: 1, y: 0.5 });
  }
  const x0 = view.x / metres - (width / 2 - left) / scale;
  const x1 = view.x / metres + width / 2 / scale;
  for (const x of ticksBetween(x0, x1, fine)) {
    const px = at({ x: x * metres, z: 0 }).x;
    ticks.push([onScreen(px, foot), onScreen(px, foot + 3)]);
  }
  const wide = niceStep(scale, 84);
  for (const x of ticksBetween(x0, x1, wide)) {
    const px = at({ x: x * metres, z: 0 }).x;
    if (px < left + 16 || px > width - 52) continue;
    ticks.push([onScreen(px, foot), onScreen(px, foot + 6)]);
    say(number(tickText(x, wide)), px, foot + 7, { x: 0.5, y: 0 });
  }
  say(depth, 4, 3, { x: 0, y: 0 });
  say(symbol, 4, 16, { x: 0, y: 0 });
  say(symbol, width - 6, foot + 7, { x: 1, y: 0 });
  const backdrop = (points: readonly Vec[]): Mark => ({
    kind: "polygon",
    what: null,
    points,
    fill: { role: "paper", alpha: 0.9 },
  });
  return [
    backdrop([onScreen(0, 0), onScreen(left, 0), onScreen(left, height), onScreen(0, height)]),
    backdrop([onScreen(left, foot), onScreen(width, foot), onScreen(width, height), onScreen(left, height)]),
    { kind: "lines", what: null, paths: ticks, stroke: { role: "ink", px: 1, alpha: 0.55 } },
    ...words,
    ...depthMarks(ground, bait, step, unit, number),
  ];
}

/** A flag at the depth scale with the tie eye's depth: the depth that every readout means. */
function depthMarks(
  { at, size, rulers: { left, bottom } }: Ground,
  bait: Posed,
  step: number,
  unit: UnitName,
  number: NumberWriter,
): Mark[] {
  const { eye } = bait.snapshot;
  const { y } = at(eye);
  if (y <= 10 || y >= size.height - bottom - 8) return [];
  // A tenth of a tick; never coarser than a centimetre far off, close by than a millimetre or 0.01 in.
  const finest = Math.min(unit === "mm" ? 1 : 0.01, Math.max(step / 10, 1e-4));
  const words = number(tickText(-eye.z / toSI(1, unit), finest));
  const w = 6.6 * Math.max(words.length, decimalsOf(finest) + 2) + 8;
  return [
    {
      kind: "polygon",
      what: null,
      points: (
        [
          [left + 1, y],
          [left + 8, y - 9],
          [left + 8 + w, y - 9],
          [left + 8 + w, y + 9],
          [left + 8, y + 9],
        ] as const
      ).map(([px, py]) => onScreen(px, py)),
      fill: { role: "ink", alpha: 0.92 },
    },
    {
      kind: "text",
      what: null,
      at: onScreen(left + 8 + w / 2, y),
      words,
      size: 12,
      bold: true,
      anchor: { x: 0.5, y: 0.5 },
      fill: { role: "paper" },
    },
  ];
}
