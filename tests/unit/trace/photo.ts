import jpeg from "jpeg-js";
import { random } from "../../../src/model/base";

/**
 * A made-up photo of a bait whose outline is known: no camera, no file. The outline is not of the drawn curve's own family
 * (monotone cubics in φ): each half of an edge is depth·(1 − uᵃ)ᵖ, u counted from the edge's peak to the end.
 */
interface EdgeTruth {
  readonly depth: number;
  readonly peak: number;
  readonly fore: readonly [a: number, p: number];
  readonly aft: readonly [a: number, p: number];
}

export interface Truth {
  readonly length: number;
  readonly top: EdgeTruth;
  readonly bottom: EdgeTruth;
}

/** mm. The back is humped, the belly flat; the tail runs out slimmer than the nose. */
export const TRUTH: Truth = {
  length: 92,
  top: { depth: 12.5, peak: 0.36, fore: [2.2, 0.5], aft: [2, 0.75] },
  bottom: { depth: 8.5, peak: 0.44, fore: [2, 0.55], aft: [2.4, 0.7] },
};

export function edgeAt({ depth, peak, fore, aft }: EdgeTruth, s: number, length: number): number {
  const t = Math.min(1, Math.max(0, s / length));
  const u = t < peak ? (peak - t) / peak : (t - peak) / (1 - peak);
  const [a, p] = t < peak ? fore : aft;
  return depth * Math.max(0, 1 - u ** a) ** p;
}

/** Says of a place whether the bait is there; edges from a table of 1/500 mm. */
function insideOf({ length, top, bottom }: Truth): (s: number, z: number) => boolean {
  const FINE = 500;
  const table = (edge: EdgeTruth): Float64Array =>
    Float64Array.from({ length: length * FINE + 2 }, (_, i) => edgeAt(edge, i / FINE, length));
  const [up, down] = [table(top), table(bottom)];
  return (s, z) => {
    if (s < 0 || s > length) return false;
    const edge = z >= 0 ? up : down;
    const i = Math.floor(s * FINE);
    const [a, b] = [edge[i] ?? 0, edge[i + 1] ?? 0];
    return Math.abs(z) <= a + (b - a) * (s * FINE - i);
  };
}

export interface PhotoOptions {
  readonly pxPerMm: number;
  /** Counter-clockwise, degrees. */
  readonly turn: number;
  /** The bait looks to the left. */
  readonly left?: boolean;
  readonly quality: number;
  readonly seed: number;
  /** Brightness of the bait and of its ground, 0 to 255. */
  readonly bait?: readonly [number, number, number];
  readonly ground?: readonly [number, number, number];
}

/** Where a place of the bait lies in the photo, px: [station, height] in mm from the nose. */
export type Placed = (s: number, z: number) => { readonly u: number; readonly v: number };

export interface Photo {
  readonly jpeg: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
  readonly at: Placed;
}

/** How the bait lies in the photo. */
export function frameOf(
  { length }: Truth,
  { pxPerMm: k, turn, left = false }: Pick<PhotoOptions, "pxPerMm" | "turn" | "left">,
) {
  const [width, height] = [Math.round((length + 24) * k), Math.round((length * 0.5 + 24) * k)];
  const a = (turn * Math.PI) / 180;
  const [c, s] = [Math.cos(a), Math.sin(a)];
  const side = left ? -1 : 1;
  const middle = length / 2;
  // Seen with the nose to the right: aft is −u; turned counter-clockwise about the bait's middle, then mirrored.
  const at: Placed = (station, z) => {
    const [x, y] = [middle - station, z];
    const [p, q] = [x * c - y * s, x * s + y * c];
    return { u: width / 2 + side * k * p, v: height / 2 - k * q };
  };
  const back = (u: number, v: number): readonly [number, number] => {
    const [p, q] = [(side * (u - width / 2)) / k, (height / 2 - v) / k];
    return [middle - (p * c + q * s), q * c - p * s];
  };
  return { width, height, at, back };
}

/** Photographs a bait: soft edge of about a pixel, uneven light, noise of the sensor, spots on the bait, JPEG. */
export function photograph(truth: Truth, options: PhotoOptions): Photo {
  const { quality, seed } = options;
  const bait = options.bait ?? [70, 96, 62];
  const ground = options.ground ?? [226, 222, 212];
  const r = random(seed);
  const { width, height, at, back } = frameOf(truth, options);
  const spots = Array.from({ length: 14 }, () => ({
    s: truth.length * r.uniform(),
    z: 10 * (r.uniform() - 0.5),
    size: 1 + 2 * r.uniform(),
    by: 26 * (r.uniform() - 0.5),
  }));
  const inside = insideOf(truth);
  const data = new Uint8Array(width * height * 4);
  const SUB = 4;
  for (let v = 0; v < height; v++)
    for (let u = 0; u < width; u++) {
      // A lens spreads each point over a little more than a pixel.
      const lit = (du: number, dv: number): number =>
        inside(...back(u + 0.5 + 1.4 * du, v + 0.5 + 1.4 * dv)) ? 1 : 0;
      let share = [-1, -0.5, 0, 0.5, 1].reduce((sum, d) => sum + lit(d, -d) + lit(d, d), 0) / 10;
      if (share > 0 && share < 1) {
        share = 0;
        for (let i = 0; i < SUB; i++)
          for (let j = 0; j < SUB; j++)
            share += lit((i + 0.5) / SUB - 0.5, (j + 0.5) / SUB - 0.5) / (SUB * SUB);
      }
      const light = 1 - 0.12 * (u / width) - 0.06 * (v / height);
      const [ss, sz] = back(u + 0.5, v + 0.5);
      const spot = spots.reduce(
        (sum, one) => sum + ((ss - one.s) ** 2 + (sz - one.z) ** 2 < one.size ** 2 ? one.by : 0),
        0,
      );
      const noise = 5 * r.normal();
      for (let channel = 0; channel < 3; channel++) {
        const own = (bait[channel] ?? 0) + spot;
        const value = light * (share * own + (1 - share) * (ground[channel] ?? 0)) + noise;
        data[4 * (v * width + u) + channel] = Math.min(255, Math.max(0, Math.round(value)));
      }
      data[4 * (v * width + u) + 3] = 255;
    }
  const file = jpeg.encode({ data, width, height }, quality).data;
  const rgba = jpeg.decode(file, { useTArray: true }).data;
  return { jpeg: new Uint8Array(file), width, height, rgba, at };
}
