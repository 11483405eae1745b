import { isOnAt, type Moment, type ScenarioBait } from "../document";
import type { Bait } from "../model/bait";
import type { Snapshot } from "../model/motion";
import { whatOf } from "../model/parts";
import type { Mark, Paint, Stroke } from "./mark";
import { posedMarks } from "./still";
import type { Scene } from "./types";

/**
 * How a drawing shows the bait in the making. What is not on it yet is a faint dashed outline. One part may be lit: the one
 * whose row of the account is pointed at.
 */
export interface Look {
  /** Parts that are not on the bait yet, by what a pointer finds on them ("ballast:belly", "coat:clear" …). */
  readonly notYet?: ReadonlySet<string>;
  /** The lit part, by the same words; null: none. */
  readonly lit?: string | null;
}

/** The parts that come onto the bait only after a moment of making. */
export function notYetOn(file: ScenarioBait, { items, spec }: Bait, at: Moment): ReadonlySet<string> {
  const late = items.filter((item) => !isOnAt(file, item, at));
  return new Set(late.flatMap((item) => whatOf(spec, item) ?? []));
}

/** The share of their strength that the other marks keep beside a lit one. */
const BESIDE = 0.4;
const LIT_PX = 2.2;

function lit(m: Mark): Mark {
  const stroke: Stroke = { ...m.stroke, role: "accent", t: 0, px: Math.max(LIT_PX, m.stroke?.px ?? 0) };
  const fill: Paint | undefined = m.fill && { role: "accent", alpha: 0.55 * (m.fill.alpha ?? 1) };
  return { ...m, stroke, ...(fill ? { fill } : {}) };
}

const faded = <P extends Paint>(paint: P): P => ({ ...paint, alpha: BESIDE * (paint.alpha ?? 1) });

function beside(m: Mark): Mark {
  return {
    ...m,
    ...(m.fill ? { fill: faded(m.fill) } : {}),
    ...(m.stroke ? { stroke: faded(m.stroke) } : {}),
  };
}

/** A part that is not on yet: its outline, faint and dashed. Its small strokes (hatching, lights) are left out. */
function awaited(m: Mark): Mark[] {
  if (m.kind === "lines" || m.kind === "text" || !m.stroke) return [];
  const { fill: _, ...bare } = m;
  return [{ ...bare, stroke: { role: "inkSoft", px: 0.9, dash: [2.5, 3], alpha: 0.6 } }];
}

/** Every mark of the bait at a snapshot as it looks in the making, with one part lit. */
export function lookedMarks(
  scene: Scene,
  snapshot: Snapshot,
  xray: boolean,
  { notYet = new Set(), lit: shown = null }: Look,
): Mark[] {
  const coats = scene.coats.filter(({ what }) => !notYet.has(what));
  const marks = posedMarks({ ...scene, coats }, snapshot, xray).flatMap((m) =>
    m.what !== null && notYet.has(m.what) ? awaited(m) : [m],
  );
  if (shown === null || !marks.some((m) => m.what === shown)) return marks;
  const [others, own] = [marks.filter((m) => m.what !== shown), marks.filter((m) => m.what === shown)];
  // The body lies under everything else, also when it is lit: then only its outline is lit.
  if (shown === "body") return marks.map((m) => (m.what === "body" ? (m.fill ? m : lit(m)) : beside(m)));
  return [...others.map(beside), ...own.map(lit)];
}
