import type { Knot, ShapeSpec } from "../shape";
import { stationOfPhi } from "../shape";
import { halfPoints } from "./half";

/**
 * A body by a few plain words, before anybody has drawn it. Lengths in m, all else shares.
 *
 * The outline is made of two halves that meet level at the place of greatest depth. The aim of each half is
 * f = e + (1 − e)(1 − uᵃ)ᵖ, u from 0 at the greatest depth to 1 at the end. With fullness ½, a = 2 and p = ½: an ellipse.
 * Fuller: a rises to 4, so the depth is held longer. Slimmer: p rises to 1¼; above p = 1 the end is hollow, with one change of
 * curvature. The family is our own.
 *
 * The drawn curve has no other change of curvature (`halfPoints`). For this it leaves the aim a little: of what a half falls by,
 * under 0.5 % down to fullness 0.45, 1.1 % down to 0.3, 2.5 % down to 1/6 and 7.5 % where it is hollow; of a usual bait a few
 * hundredths of a millimetre, and one to three tenths at a thin tail.
 */
export interface BodyForm {
  readonly length: number;
  /** Greatest height between the edges if both were deepest at one station, and greatest breadth, m. */
  readonly height: number;
  readonly breadth: number;
  /** Where the back stands highest, the belly hangs lowest and the body is broadest: share of the length, 0.15–0.85. */
  readonly backAt: number;
  readonly bellyAt: number;
  readonly broadestAt: number;
  /** Share of the height that lies above the datum line, 0.1–0.9: half is even, more is a humped back over a flat belly. */
  readonly backShare: number;
  /** 0 slim to 1 full. */
  readonly foreFullness: number;
  readonly aftFullness: number;
  /** What stands at the end of the greatest height and breadth: 0 runs out to nothing, up to 0.8 is cut off blunt. */
  readonly noseBluntness: number;
  readonly tailBluntness: number;
  /** Exponents of the sections above and below the widest line, 1–10; 2 is an ellipse. */
  readonly roundAbove: number;
  readonly roundBelow: number;
}

/** Bounds of each share and exponent of a form. */
export const FORM_LIMITS = {
  backAt: [0.15, 0.85],
  bellyAt: [0.15, 0.85],
  broadestAt: [0.15, 0.85],
  backShare: [0.1, 0.9],
  foreFullness: [0, 1],
  aftFullness: [0, 1],
  noseBluntness: [0, 0.8],
  tailBluntness: [0, 0.8],
  roundAbove: [1, 10],
  roundBelow: [1, 10],
} as const satisfies Partial<Record<keyof BodyForm, readonly [number, number]>>;

function check(form: BodyForm): void {
  for (const key of ["length", "height", "breadth"] as const)
    if (!(Number.isFinite(form[key]) && form[key] > 0))
      throw new RangeError(`${key} ${form[key]} m: give a length above 0`);
  for (const [key, [low, high]] of Object.entries(FORM_LIMITS) as [
    keyof typeof FORM_LIMITS,
    readonly [number, number],
  ][])
    if (!(form[key] >= low && form[key] <= high))
      throw new RangeError(`${key} ${form[key]}: give a number from ${low} to ${high}`);
}

/**
 * The knots of a body of this form: of each edge its greatest depth, its two ends and five points on either side between them.
 *
 * @throws RangeError where a number of the form is out of its bounds
 */
export function bodyOfForm(form: BodyForm): ShapeSpec {
  check(form);
  const L = form.length;
  const fore = (peak: number, depth: number): readonly Knot[] =>
    halfPoints(form.foreFullness, peak).map(({ phi, share }) => ({
      s: stationOfPhi(phi, L),
      v: depth * (form.noseBluntness + (1 - form.noseBluntness) * share),
    }));
  const aft = (peak: number, depth: number): readonly Knot[] =>
    halfPoints(form.aftFullness, 1 - peak).map(({ phi, share }) => ({
      s: L - stationOfPhi(phi, L),
      v: depth * (form.tailBluntness + (1 - form.tailBluntness) * share),
    }));
  const edge = (peak: number, depth: number): Knot[] => [
    ...fore(peak, depth).slice(0, -1),
    { s: peak * L, v: depth },
    ...aft(peak, depth).slice(0, -1).reverse(),
  ];
  return {
    length: L,
    top: edge(form.backAt, form.backShare * form.height),
    bottom: edge(form.bellyAt, (form.backShare - 1) * form.height),
    halfBreadth: edge(form.broadestAt, form.breadth / 2),
    exponentAbove: [
      { s: 0, v: form.roundAbove },
      { s: L, v: form.roundAbove },
    ],
    exponentBelow: [
      { s: 0, v: form.roundBelow },
      { s: L, v: form.roundBelow },
    ],
  };
}

/** A form without its three sizes. */
export type FormWords = Omit<BodyForm, "length" | "height" | "breadth">;

/** Starting forms by plain words; their numbers are invented. Typical height and breadth as shares of the length. */
export const FORMS: readonly {
  readonly key: string;
  readonly words: string;
  readonly height: number;
  readonly breadth: number;
  readonly form: FormWords;
}[] = [
  {
    key: "slender",
    words: "Slender: long and low, its depth even along the middle",
    height: 0.18,
    breadth: 0.13,
    form: {
      backAt: 0.38,
      bellyAt: 0.38,
      broadestAt: 0.35,
      backShare: 0.5,
      foreFullness: 0.45,
      aftFullness: 0.3,
      noseBluntness: 0.1,
      tailBluntness: 0.12,
      roundAbove: 2,
      roundBelow: 2,
    },
  },
  {
    key: "stout",
    words: "Stout: short, deep and broad, fullest well forward",
    height: 0.36,
    breadth: 0.27,
    form: {
      backAt: 0.36,
      bellyAt: 0.4,
      broadestAt: 0.36,
      backShare: 0.5,
      foreFullness: 0.6,
      aftFullness: 0.35,
      noseBluntness: 0.15,
      tailBluntness: 0.1,
      roundAbove: 2,
      roundBelow: 2.2,
    },
  },
  {
    key: "flat-sided",
    words: "Flat-sided: deep and narrow, its sides nearly flat",
    height: 0.3,
    breadth: 0.12,
    form: {
      backAt: 0.4,
      bellyAt: 0.42,
      broadestAt: 0.4,
      backShare: 0.5,
      foreFullness: 0.5,
      aftFullness: 0.35,
      noseBluntness: 0.1,
      tailBluntness: 0.15,
      roundAbove: 3.5,
      roundBelow: 3.5,
    },
  },
  {
    key: "deep-bellied",
    words: "Deep-bellied: a nearly straight back over a full belly",
    height: 0.28,
    breadth: 0.16,
    form: {
      backAt: 0.35,
      bellyAt: 0.45,
      broadestAt: 0.4,
      backShare: 0.35,
      foreFullness: 0.5,
      aftFullness: 0.35,
      noseBluntness: 0.1,
      tailBluntness: 0.12,
      roundAbove: 2,
      roundBelow: 2.4,
    },
  },
  {
    key: "drop",
    words: "Drop: full and round in front, drawn out to a thin tail",
    height: 0.3,
    breadth: 0.24,
    form: {
      backAt: 0.3,
      bellyAt: 0.3,
      broadestAt: 0.3,
      backShare: 0.5,
      foreFullness: 0.6,
      aftFullness: 0.1,
      noseBluntness: 0,
      tailBluntness: 0.06,
      roundAbove: 2,
      roundBelow: 2,
    },
  },
  {
    key: "spindle",
    words: "Spindle: round and alike at both ends, as turned on a lathe",
    height: 0.18,
    breadth: 0.18,
    form: {
      backAt: 0.5,
      bellyAt: 0.5,
      broadestAt: 0.5,
      backShare: 0.5,
      foreFullness: 0.5,
      aftFullness: 0.5,
      noseBluntness: 0,
      tailBluntness: 0,
      roundAbove: 2,
      roundBelow: 2,
    },
  },
];
