import { toSI } from "../../../units";
import { tidy } from "../../../document";
import type { CurveKey } from "../../../document";
import type { Vec } from "../../../model/base";

/** What a section needs of the board. */
interface Ground {
  readonly station: number;
  valueAt(key: CurveKey, station: number): number | null;
}

/** What of a section is set at a station: by a handle on the drawing, by keys or by number. */
export const SECTION_KEYS = ["above", "below", "widest"] as const;
export type SectionKey = (typeof SECTION_KEYS)[number];

/** A half section's curve |y/b|ⁿ + |z/h|ⁿ = 1 meets the diagonal y/b = z/h at this share of both. */
const onDiagonal = (n: number): number => 2 ** (-1 / n);
/** The exponent of a half section that meets the diagonal at the share k. */
const exponentAt = (k: number): number => Math.LN2 / -Math.log(k);

/** Bounds of an exponent as a hand drags it: a diamond, and nearly a box. */
const EXPONENT = { least: 1, most: 10 } as const;

interface Cut {
  readonly half: number;
  readonly widest: number;
  readonly rise: number;
  readonly fall: number;
}

/** The section at the board's station, mm; null where the curves give none. */
function cutOf(board: Ground): Cut | null {
  const at = (key: CurveKey): number => board.valueAt(key, board.station) ?? NaN;
  const [half, widest] = [at("halfBreadth"), at("widest")];
  const [rise, fall] = [at("top") - widest, widest - at("bottom")];
  return [half, widest, rise, fall].every(Number.isFinite) ? { half, widest, rise, fall } : null;
}

/** Where the handles of the section stand in its own plane, m. A half of no height has no handle. */
export function sectionGrips(board: Ground): readonly { readonly key: SectionKey; readonly at: Vec }[] {
  const cut = cutOf(board);
  if (cut === null || !(cut.half > 0)) return [];
  const { half, widest, rise, fall } = cut;
  const place = (y: number, z: number): Vec => ({ x: toSI(y, "mm"), z: toSI(z, "mm") });
  const corner = (key: "above" | "below", height: number) => {
    const k = onDiagonal(board.valueAt(key, board.station) ?? 2);
    return { key, at: place(half * k, widest + height * k) };
  };
  return [
    ...(rise > 0 ? [corner("above", rise)] : []),
    ...(fall > 0 ? [corner("below", -fall)] : []),
    { key: "widest", at: place(half, widest) },
  ];
}

/** The value that a handle at a place of the section (mm) stands for; `round`: to what a hand can read. */
export function sectionValue(board: Ground, key: SectionKey, y: number, z: number, round: boolean): number {
  const cut = cutOf(board);
  if (cut === null) return NaN;
  const { half, widest, rise, fall } = cut;
  if (key === "widest") return tidy(Math.min(widest + rise, Math.max(widest - fall, z)));
  const high = key === "above" ? (z - widest) / rise : (widest - z) / fall;
  // The handle runs along the diagonal: what lies beside it is dropped onto it.
  const k = Math.min(onDiagonal(EXPONENT.most), Math.max(onDiagonal(EXPONENT.least), (y / half + high) / 2));
  const n = exponentAt(k);
  return Number(n.toFixed(round ? 1 : 2));
}
