import { describe, expect, it } from "vitest";
import { TRACE } from "../../../src/ui/words/trace";
import { makeShape, shapeOf, edgesFromKnots, stationOfPhi } from "../../../src/model/shape";
import type { Edges } from "../../../src/model/shape";
import { tracedOutline } from "../../../src/model/shaping";
import { firstPlace, onBait } from "../../../src/ui/views/draw/trace/place";
import { findSilhouette } from "../../../src/ui/views/draw/trace/silhouette";
import { edgeAt, photograph, TRUTH } from "./photo";
import type { Photo, PhotoOptions } from "./photo";

const BASE: PhotoOptions = { pxPerMm: 4, turn: 7, quality: 75, seed: 1 };
const look = ({ rgba, width, height }: Photo, threshold: number | null = null) =>
  findSilhouette({ data: rgba, width, height }, threshold);
const mm = 1e-3;

/** Distance of a place (mm) from the true outline, measured to close points of it. */
function offTruth(): (s: number, z: number) => number {
  const truth = Array.from({ length: 6001 }, (_, i) => {
    const s = (TRUTH.length * (1 - Math.cos((Math.PI * i) / 6000))) / 2;
    return [
      [s, edgeAt(TRUTH.top, s, TRUTH.length)],
      [s, -edgeAt(TRUTH.bottom, s, TRUTH.length)],
    ] as const;
  }).flat();
  return (s, z) => Math.sqrt(Math.min(...truth.map(([a, b]) => (a - s) ** 2 + (b - z) ** 2)));
}

describe("a silhouette in a photo of 4 px to the mm, turned by 7°, with JPEG noise", () => {
  it.each([
    { ...BASE },
    // A light bait on dark ground that looks to the left, and one that only its colour tells from the ground: both have
    // the same brightness.
    {
      ...BASE,
      seed: 2,
      quality: 50,
      left: true,
      bait: [228, 224, 205] as const,
      ground: [52, 60, 66] as const,
    },
    { ...BASE, seed: 3, bait: [190, 60, 40] as const, ground: [66, 117, 96] as const },
  ])("gives curves within 0.3 mm of the truth and the volume within 1.5 %: $seed", (options) => {
    const photo = photograph(TRUTH, options);
    const found = look(photo);
    if (!found.ok) throw new Error(found.why);
    expect(found.silhouette.notes).toEqual([]);
    const place = {
      ...firstPlace(photo, TRUTH.length),
      nose: photo.at(0, 0),
      tail: photo.at(TRUTH.length, 0),
      mirrored: options.left ?? false,
    };
    const ring = found.silhouette.ring.map((px) => {
      const [s, z] = onBait(place, px);
      return { s: s * mm, v: z * mm };
    });
    const traced = tracedOutline(ring, 0.3 * mm);
    expect(traced.worst).toBeLessThanOrEqual(0.3 * mm);
    expect(traced.folded).toBeLessThan(0.3 * mm);
    // As few points as that allows: by hand one sets some ten an edge.
    expect(traced.top.length + traced.bottom.length).toBeLessThanOrEqual(14);

    const across = { halfBreadth: breadth(traced.length), ...ROUND };
    const spec = { length: traced.length, top: traced.top, bottom: traced.bottom, ...across };
    const edges = edgesFromKnots(spec);
    const off = offTruth();
    for (let i = 0; i <= 200; i++) {
      const phi = (Math.PI * i) / 200;
      const s = (stationOfPhi(phi, traced.length) + traced.start) / mm;
      expect(off(s, edges.top(phi) / mm)).toBeLessThan(0.3);
      expect(off(s, edges.bottom(phi) / mm)).toBeLessThan(0.3);
    }
    expect(Math.abs(shapeOf(spec).volume / trueVolume() - 1)).toBeLessThan(0.015);
  });
});

const ROUND = { exponentAbove: [{ s: 0, v: 2 }], exponentBelow: [{ s: 0, v: 2 }] };
const breadth = (length: number) => [
  { s: 0, v: 0 },
  { s: 0.4 * length, v: 7 * mm },
  { s: length, v: 0 },
];

/** Of the true edges themselves, with the same half-breadths. */
function trueVolume(): number {
  const L = TRUTH.length * mm;
  const knots = [
    { s: 0, v: -1 },
    { s: L, v: -1 },
  ];
  const drawn = edgesFromKnots({
    length: L,
    top: knots.map(({ s }) => ({ s, v: 1 })),
    bottom: knots,
    halfBreadth: breadth(L),
    ...ROUND,
  });
  const peak = (share: number): number => Math.acos(1 - 2 * share);
  const top = (phi: number): number => edgeAt(TRUTH.top, stationOfPhi(phi, L) / mm, TRUTH.length) * mm;
  const bottom = (phi: number): number => -edgeAt(TRUTH.bottom, stationOfPhi(phi, L) / mm, TRUTH.length) * mm;
  const edges: Edges = {
    ...drawn,
    breaks: [0, peak(TRUTH.top.peak), peak(0.4), peak(TRUTH.bottom.peak), Math.PI],
    top,
    bottom,
    widest: (phi) => (top(phi) + bottom(phi)) / 2,
  };
  return makeShape(edges).volume;
}

describe("where there is no clean silhouette", () => {
  const why = (photo: Photo, threshold: number | null = null): string => {
    const found = look(photo, threshold);
    return found.ok ? "" : TRACE.in("en").tell(found.why);
  };
  const small = {
    ...TRUTH,
    length: 40,
    top: { ...TRUTH.top, depth: 5 },
    bottom: { ...TRUTH.bottom, depth: 4 },
  };

  it("says that the bait does not stand out", () => {
    const photo = photograph(small, { ...BASE, bait: [214, 210, 204], ground: [222, 218, 210] });
    expect(why(photo)).toMatch(/does not stand out/);
  });

  it("says that it runs off the picture", () => {
    const whole = photograph(small, BASE);
    // The left half alone.
    const width = whole.width >> 1;
    const rgba = new Uint8Array(width * whole.height * 4);
    for (let v = 0; v < whole.height; v++)
      rgba.set(whole.rgba.subarray(4 * v * whole.width, 4 * (v * whole.width + width)), 4 * v * width);
    expect(why({ ...whole, width, rgba })).toMatch(/runs off the picture/);
  });

  it("says that nothing is there: even ground, and a threshold that nothing reaches", () => {
    const photo = photograph(small, BASE);
    expect(why({ ...photo, rgba: new Uint8Array(photo.rgba.length).fill(200) })).toMatch(/not stand out/);
    expect(why(photo, 0.98)).toMatch(/Nothing large enough/);
  });

  it("tells of a second thing, and fills holes", () => {
    const photo = photograph(small, BASE);
    const paint = (u0: number, v0: number, size: number, shade: number): Uint8Array => {
      const rgba = photo.rgba.slice();
      for (let v = v0; v < v0 + size; v++)
        for (let u = u0; u < u0 + size; u++)
          rgba.fill(shade, 4 * (v * photo.width + u), 4 * (v * photo.width + u) + 3);
      return rgba;
    };
    const beside = look({ ...photo, rgba: paint(12, 12, 22, 40) });
    expect(beside.ok && beside.silhouette.notes).toContain("note.second");
    const { u, v } = photo.at(16, 0);
    const plain = look(photo);
    const holed = look({ ...photo, rgba: paint(Math.round(u), Math.round(v), 6, 220) });
    if (!plain.ok || !holed.ok) throw new Error("no silhouette");
    expect(holed.silhouette.ring.length).toBe(plain.silhouette.ring.length);
  });
});
