import { contours } from "d3-contour";
import type { TraceKey } from "../../../words/trace";
import type { Px } from "./place";

/** A picture's colours, 4 bytes a pixel. */
export interface Pixels {
  readonly data: ArrayLike<number>;
  readonly width: number;
  readonly height: number;
}

/** The outline of what stands out from its ground in a picture. */
export interface Silhouette {
  /** Corners of the closed outline, in px of the picture. */
  readonly ring: readonly Px[];
  /** Where bait and ground part, 0 to 1: 0 is the ground. */
  readonly threshold: number;
  /** By how much the outline moves where the threshold moves by a tenth of the contrast, px: how sharp the edge is. */
  readonly soft: number;
  /** What a person should know of it: the catalogue has the words. */
  readonly notes: readonly Extract<TraceKey, `note.${string}`>[];
}

type Reason = Extract<TraceKey, "no.contrast" | "no.large" | "no.edge">;
export type Found =
  { readonly ok: true; readonly silhouette: Silhouette } | { readonly ok: false; readonly why: Reason };

/** Longest side that is looked at, px: a longer picture is made smaller by whole pixels. */
const LONGEST = 1400;
/** Levels of the histogram. */
const LEVELS = 256;
/** Weights of red, green and blue in brightness. Source: ITU-R BT.601-7, 2.5.1. */
const BRIGHTNESS = [0.299, 0.587, 0.114] as const;

/** What counts as a clean silhouette; from trials with made-up photos, no source. */
const CLEAN = {
  /** Share of the differences of all pixels that lies between bait and ground; two even halves of one slope give 0.75. */
  parted: 0.78,
  /** Levels of 256 between the two. */
  contrast: 24,
  /** Share of the picture. */
  least: 0.004,
  /** A second thing of this share of the first is told. */
  second: 0.1,
  /** px that the outline may move. */
  soft: 2.5,
} as const;

/** How far each pixel is from the ground, 0 to 255, and how well that parts the picture in two. */
interface Plane {
  readonly values: Float32Array;
  readonly level: number;
  readonly parted: number;
  readonly contrast: number;
}

/**
 * Finds the silhouette of the one thing in a picture. Two pictures of the difference from the ground are tried, by brightness
 * and by colour, and the one that parts more cleanly is taken. The threshold is Otsu's, unless one is given.
 */
export function findSilhouette(pixels: Pixels, threshold: number | null = null): Found {
  const small = smaller(pixels);
  const { width, height } = small;
  const planes = [byBrightness(small), byColour(small)].map((values) =>
    planeOf(smoothed(values, width, height)),
  );
  const plane = planes.reduce((best, one) => (one.parted > best.parted ? one : best));
  if (threshold === null && (plane.parted < CLEAN.parted || plane.contrast < CLEAN.contrast))
    return no("no.contrast");
  const level = threshold === null ? plane.level : threshold * (LEVELS - 1);
  const rings = contours()
    .size([width, height])
    .contour(Array.from(plane.values), level)
    .coordinates.flatMap(([outer]) => (outer === undefined ? [] : [outer as [number, number][]]))
    .map((ring) => ({ ring, area: Math.abs(areaOf(ring)) }))
    .sort((a, b) => b.area - a.area);
  const [first, second] = rings;
  if (first === undefined || first.area < CLEAN.least * width * height) return no("no.large");
  const { ring, area } = first;
  const edge = (at: number, most: number): boolean => at < 1 || at > most - 1;
  if (ring.some(([u, v]) => edge(u, width) || edge(v, height))) return no("no.edge");
  const round = ring.reduce((sum, [u, v], i) => {
    const [p, q] = ring[(i + 1) % ring.length] ?? [u, v];
    return sum + Math.hypot(p - u, q - v);
  }, 0);
  const step = plane.contrast / 10;
  let within = 0;
  for (const value of plane.values) if (Math.abs(value - level) < step) within += 1;
  const soft = (small.by * within) / (2 * round);
  const notes = [
    ...(second !== undefined && second.area > CLEAN.second * area ? (["note.second"] as const) : []),
    ...(soft > CLEAN.soft ? (["note.soft"] as const) : []),
  ];
  return {
    ok: true,
    silhouette: {
      ring: ring.slice(0, -1).map(([u, v]) => ({ u: u * small.by, v: v * small.by })),
      threshold: level / (LEVELS - 1),
      soft,
      notes,
    },
  };
}

const no = (why: Reason): Found => ({ ok: false, why });

/** Area of a closed ring, by the shoelace rule. */
function areaOf(ring: readonly (readonly [number, number])[]): number {
  return ring.reduce((sum, [u, v], i) => {
    const [p, q] = ring[(i + 1) % ring.length] ?? [u, v];
    return sum + (u * q - p * v) / 2;
  }, 0);
}

/** Red, green and blue as numbers, of a picture small enough. */
interface Small {
  readonly rgb: readonly [Float32Array, Float32Array, Float32Array];
  readonly width: number;
  readonly height: number;
  /** px of the picture to one of these. */
  readonly by: number;
}

function smaller({ data, width: W, height: H }: Pixels): Small {
  const by = Math.max(1, Math.ceil(Math.max(W, H) / LONGEST));
  const [width, height] = [Math.floor(W / by), Math.floor(H / by)];
  const plane = (channel: number): Float32Array => {
    const out = new Float32Array(width * height);
    for (let v = 0; v < height; v++)
      for (let u = 0; u < width; u++) {
        let sum = 0;
        for (let j = 0; j < by; j++)
          for (let i = 0; i < by; i++) sum += data[4 * ((v * by + j) * W + u * by + i) + channel] ?? 0;
        out[v * width + u] = sum / (by * by);
      }
    return out;
  };
  return { rgb: [plane(0), plane(1), plane(2)], width, height, by };
}

/** The ground is what lies along the picture's edge: the middle of its values. */
function groundOf(values: Float32Array, width: number, height: number): number {
  const along: number[] = [];
  for (let u = 0; u < width; u++) along.push(values[u] ?? 0, values[(height - 1) * width + u] ?? 0);
  for (let v = 0; v < height; v++) along.push(values[v * width] ?? 0, values[v * width + width - 1] ?? 0);
  along.sort((a, b) => a - b);
  return along[along.length >> 1] ?? 0;
}

function byBrightness({ rgb: [red, green, blue], width, height }: Small): Float32Array {
  const values = red.map(
    (r, i) => BRIGHTNESS[0] * r + BRIGHTNESS[1] * (green[i] ?? 0) + BRIGHTNESS[2] * (blue[i] ?? 0),
  );
  const ground = groundOf(values, width, height);
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  // Brighter or darker than the ground: as most of the rest is.
  const sign = mean > ground ? 1 : -1;
  return values.map((v) => Math.max(0, sign * (v - ground)));
}

function byColour({ rgb, width, height }: Small): Float32Array {
  const grounds = rgb.map((plane) => groundOf(plane, width, height));
  return rgb[0].map((_, i) =>
    Math.sqrt(rgb.reduce((sum, plane, k) => sum + ((plane[i] ?? 0) - (grounds[k] ?? 0)) ** 2, 0) / 3),
  );
}

/** Each pixel with its neighbours, by weights 1, 2, 1 along and across: noise of single pixels goes, edges stay. */
function smoothed(values: Float32Array, width: number, height: number): Float32Array {
  const pass = (from: Float32Array, step: number, at: (i: number) => number, most: number): Float32Array =>
    from.map((value, i) => {
      const k = at(i);
      const before = k > 0 ? (from[i - step] ?? value) : value;
      const after = k + 1 < most ? (from[i + step] ?? value) : value;
      return (before + 2 * value + after) / 4;
    });
  const along = pass(values, 1, (i) => i % width, width);
  return pass(along, width, (i) => Math.floor(i / width), height);
}

/**
 * The threshold that parts a histogram in two so that the share of the variance between the two is greatest. Source: Otsu 1979,
 * IEEE Trans. Syst. Man Cybern. 9(1):62–66, eqs. 12–18 (η = σ_B²/σ_T²). Where a run of levels is equally good, its middle.
 */
function planeOf(values: Float32Array): Plane {
  const counts = new Float64Array(LEVELS);
  for (const value of values) {
    const level = Math.min(LEVELS - 1, Math.floor(value));
    counts[level] = (counts[level] ?? 0) + 1;
  }
  const count = values.length;
  let [total, squares] = [0, 0];
  counts.forEach((n, k) => {
    total += n * k;
    squares += n * k * k;
  });
  const variance = squares / count - (total / count) ** 2;
  let [below, sum] = [0, 0];
  let best = { between: -1, from: 0, to: 0, contrast: 0 };
  counts.forEach((n, k) => {
    below += n;
    sum += n * k;
    const above = count - below;
    if (below === 0 || above === 0) return;
    const contrast = (total - sum) / above - sum / below;
    const between = (below * above * contrast * contrast) / (count * count);
    if (between > best.between * (1 + 1e-12)) best = { between, from: k, to: k, contrast };
    else if (between > best.between * (1 - 1e-12) && best.to === k - 1) best = { ...best, to: k };
  });
  return {
    values,
    level: (best.from + best.to) / 2 + 1,
    parted: variance > 0 ? best.between / variance : 0,
    contrast: best.contrast,
  };
}
