import { describe, expect, it } from "vitest";
import { endsOf, isUntouched, offTips } from "../../../src/ui/views/draw/trace/ends";
import { firstPlace, flipped } from "../../../src/ui/views/draw/trace/place";
import { findSilhouette } from "../../../src/ui/views/draw/trace/silhouette";
import { photograph, TRUTH } from "./photo";

/** A closed outline turned about the origin, px. */
function turned(points: readonly (readonly [number, number])[], degrees: number) {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return points.map(([u, v]) => ({ u: 600 + c * u + s * v, v: 400 - s * u + c * v }));
}

const ellipse = Array.from({ length: 400 }, (_, i): [number, number] => {
  const t = (2 * Math.PI * i) / 400;
  return [300 * Math.cos(t), 60 * Math.sin(t)];
});
// A round nose to the right, a belly that hangs, and a tail cut off square, 40 px high; points close together on its face.
const cut = [
  ...Array.from({ length: 41 }, (_, i): [number, number] => [-300, -20 + i]),
  ...Array.from({ length: 200 }, (_, i): [number, number] => {
    const t = i / 200;
    return [-300 + 600 * t, 20 * (1 - t) + 380 * t * (1 - t)];
  }),
  ...Array.from({ length: 200 }, (_, i): [number, number] => {
    const t = i / 200;
    return [300 - 600 * t, -20 * t - 100 * t * (1 - t)];
  }),
];

describe("the ends of a silhouette", () => {
  it.each([-40, -7, 0, 7, 40])("of an ellipse are those of its long axis, turned by %d°", (degrees) => {
    const ends = endsOf(turned(ellipse, degrees), false)!;
    const [nose, tail] = turned(
      [
        [300, 0],
        [-300, 0],
      ],
      degrees,
    );
    for (const [found, truth] of [
      [ends.nose, nose!],
      [ends.tail, tail!],
    ] as const)
      expect(Math.hypot(found.u - truth.u, found.v - truth.v)).toBeLessThan(0.1);
  });

  it.each([-30, 0, 12])(
    "lie at the nose and in the middle of a tail that is cut off, turned by %d°",
    (degrees) => {
      const ends = endsOf(turned(cut, degrees), false)!;
      const [nose, tail] = turned(
        [
          [300, 0],
          [-300, 0],
        ],
        degrees,
      );
      // The hanging belly makes the nose's tip lopsided by a share of a per cent of the length.
      expect(Math.hypot(ends.nose.u - nose!.u, ends.nose.v - nose!.v)).toBeLessThan(3);
      expect(Math.hypot(ends.tail.u - tail!.u, ends.tail.v - tail!.v)).toBeLessThan(3);
    },
  );

  it.each([
    { turn: 7, left: false },
    { turn: -25, left: false },
    { turn: 7, left: true },
  ])("in a photo turned by $turn° lie within 0.7 mm of the truth", ({ turn, left }) => {
    const photo = photograph(TRUTH, { pxPerMm: 4, turn, quality: 75, seed: 4, left });
    const found = findSilhouette({ data: photo.rgba, width: photo.width, height: photo.height });
    if (!found.ok) throw new Error(found.why);
    const ends = endsOf(found.silhouette.ring, left)!;
    for (const [end, truth] of [
      [ends.nose, photo.at(0, 0)],
      [ends.tail, photo.at(TRUTH.length, 0)],
    ] as const)
      // 0.3 % of the length behind the tip the back stands 1.7 mm over the datum line and the belly 0.9 mm under it: the middle
      // of the two lies 0.4 mm off, and the picture's noise adds a pixel.
      expect(Math.hypot(end.u - truth.u, end.v - truth.v)).toBeLessThan(0.7 * 4);
  });

  it("are none of a line", () => {
    expect(endsOf([{ u: 1, v: 1 }], false)).toBeNull();
  });
});

describe("nose and tail", () => {
  const size = { width: 1200, height: 700 };
  const first = firstPlace(size, 90);

  it("are the program's until a hand has moved one of them, whatever length is known", () => {
    expect(isUntouched({ ...first, apart: 77 }, size, null)).toBe(true);
    expect(isUntouched(flipped(first, size), size, null)).toBe(true);
    expect(isUntouched({ ...first, tail: { ...first.tail, v: 1 } }, size, null)).toBe(false);
  });

  it("stand off the tips of an outline by the farther of the two, in mm", () => {
    const ends = { nose: first.nose, tail: { ...first.tail, v: first.tail.v + 100 } };
    // 90 mm lie between 8 % and 92 % of 1200 px.
    expect(offTips(first, ends)).toBeCloseTo((100 * 90) / (0.84 * 1200), 9);
    expect(offTips({ ...first, ...ends }, ends)).toBe(0);
  });

  it("are the program's where it proposed them, flipped too", () => {
    const put = { ...first, nose: { u: 1000, v: 300 }, tail: { u: 90, v: 340 } };
    expect(isUntouched(put, size, null)).toBe(false);
    expect(isUntouched(put, size, put)).toBe(true);
    expect(isUntouched(flipped(put, size), size, put)).toBe(true);
    expect(isUntouched({ ...put, nose: { u: 1001, v: 300 } }, size, put)).toBe(false);
  });
});
