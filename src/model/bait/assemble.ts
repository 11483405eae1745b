import {
  BaitError,
  bodyRow,
  checkBody,
  checkLayout,
  checkNumbers,
  entriesOf,
  fittedItems,
  inMl,
  itemsOnSide,
  point,
} from "../parts";
import type { Ball, BallSide, Item } from "../parts";
import { shapeOf } from "../shape";
import type { Shape } from "../shape";
import { benchBodyMass, benchBodyVolume, prepareBench, refuseReadings, residuals, sizesOf } from "./readings";
import { checkCorrections, correctionRows } from "./corrections";
import { overlapWarnings } from "./overlaps";
import { rigidOf } from "./rigid";
import type { Bait, BaitSpec, RigidSet } from "./types";

/** The side at which `Bait.items` has the balls. */
export const MID: BallSide = { end: "mid", face: "floor" };

export interface AssembleOptions {
  /**
   * The body as drawn, where it is already made from this same `spec.shape` (a ballast plan tries many weights in one
   * body). Absent: it is made here.
   */
  readonly drawn?: Shape;
  /**
   * The body as the bench readings have already given it (for a bait at an earlier stage of making, or with other weights):
   * then the readings are not evaluated again.
   */
  readonly found?: { readonly bodyDensity: number; readonly volumeFactor: number };
}

/** The cuts of wires and the layout checks use the side view alone, which no volume factor changes. */
const OUTSIDE_FACTOR = { low: 0.9, high: 1.1 };

/**
 * Puts a bait together from what the maker says: rows of mass, displacement and body material replaced, reconciled with the
 * bench readings (docs/model.md §3). First the displacement readings give a volume factor, then the weighings give the body
 * density. Each is the mean weighted by 1/resolution²; everything else is as computed.
 *
 * @param spec SI, body frame
 * @throws BaitError (path, remedy) for a layout that cannot be, ShapeError for edges that cannot be
 */
export function assemble(spec: BaitSpec, options: AssembleOptions = {}): Bait {
  checkBody(spec.body);
  point("bait.tie_mm", spec.tie);
  checkNumbers(spec);
  checkCorrections(spec);
  const drawn = options.drawn ?? shapeOf(spec.shape);
  const warnings = checkLayout(spec, drawn);

  // 1. Volume factor. What is fitted outside does not depend on it. A part in the body may depend on it, as the bib's
  //    tongue does.
  let fitted = fittedItems(spec, { drawn, shape: drawn }, MID);
  const bench = options.found ? [] : prepareBench(spec, fitted);
  const shown = (i: number): number => bench[i]?.reading.reading ?? 0;
  const measured = benchBodyVolume(bench, sizesOf(fitted), shown);
  if (measured !== null && !(measured > 0)) refuseReadings(bench, "displacement", inMl(measured));
  const volumeFactor = options.found?.volumeFactor ?? (measured === null ? 1 : measured / drawn.volume);
  const shape = volumeFactor === 1 ? drawn : drawn.withBreadthFactor(volumeFactor);
  const bodies = { drawn, shape };
  if (shape !== drawn) fitted = fittedItems(spec, bodies, MID);
  if (!options.found && (volumeFactor < OUTSIDE_FACTOR.low || volumeFactor > OUTSIDE_FACTOR.high))
    warnings.push({
      path: "bench",
      text: `The displacement readings say ${(volumeFactor * 100).toFixed(1)} % of the drawn volume: drawing and reading do not belong together, look for the error before trusting either.`,
    });

  // 2. Body density.
  const removed = fitted.reduce((sum, i) => sum + i.removed, 0);
  const left = shape.volume - removed;
  if (!(left > 0))
    throw new BaitError(
      "bait",
      `chambers, holes, wires and the slot take ${inMl(removed)} of a body of ${inMl(shape.volume)}`,
      "Make them smaller or the body larger",
    );
  const sizes = sizesOf(fitted);
  const weighed = benchBodyMass(bench, sizes, shape.volume, left, shown);
  if (weighed !== null && !(weighed > 0))
    refuseReadings(bench, "weighing", `a mass of ${(weighed * 1e3).toPrecision(4)} g`);
  const bodyDensity = options.found?.bodyDensity ?? (weighed === null ? spec.body.density : weighed / left);

  const body = bodyRow(shape, bodyDensity, fitted);
  const computed: readonly Item[] = [body, ...fitted];
  const items: readonly Item[] = [...computed, ...correctionRows(spec, computed)];
  warnings.push(...overlapWarnings(spec, bodies, items));

  const sides = new Map<string, readonly Item[]>();
  const itemsWith = (side: BallSide): readonly Item[] => {
    const key = `${side.end} ${side.face}`;
    let rows = sides.get(key);
    if (!rows) {
      rows = itemsOnSide(items, spec, bodies, side);
      sides.set(key, rows);
    }
    return rows;
  };
  return {
    spec,
    shape,
    drawn,
    bodyDensity,
    volumeFactor,
    bench: residuals(bench, sizes, shape.volume, bodyDensity, left),
    items,
    itemsWith,
    balls: (side): readonly Ball[] => entriesOf(spec).flatMap((e) => e.part.loose?.(e.spec, side) ?? []),
    rigid: (side): RigidSet => rigidOf(itemsWith(side)),
    rigidWithout: ({ hooks, balls }, side = MID): RigidSet =>
      rigidOf(
        itemsWith(side).filter((i) => !(hooks && i.apart === "hooks") && !(balls && i.apart === "balls")),
      ),
    warnings,
  };
}
