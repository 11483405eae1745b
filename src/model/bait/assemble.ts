import type { Vec } from "../base";
import { shapeOf } from "../shape";
import type { Shape } from "../shape";
import { ballPlaces } from "./balls";
import {
  benchBodyMass,
  benchBodyVolume,
  prepareBench,
  refuseReadings,
  residuals,
  rowsNamed,
  sizesOf,
} from "./bench";
import { checkLayout, checkNumbers } from "./check";
import { BaitError, inMl } from "./error";
import { ballsRow, bodyRow, correctionRows, fittedItems } from "./items";
import { overlapWarnings } from "./overlaps";
import { rigidOf } from "./rigid";
import type { Bait, BaitSpec, BallSide, Item, RigidSet } from "./types";
import { splitWire } from "./wires";

/** The side at which `Bait.items` has the balls. */
export const MID: BallSide = { end: "mid", face: "floor" };

export interface AssembleOptions {
  /**
   * The body as drawn, where it is already made from this very `spec.shape` (a ballast plan tries many weights in one
   * body). Absent: made here.
   */
  readonly drawn?: Shape;
  /**
   * The body as the bench has already found it (a bait at an earlier stage of making, one with other weights): then the
   * readings are not looked at again.
   */
  readonly found?: { readonly bodyDensity: number; readonly volumeFactor: number };
}

/** The cuts of wires and the layout checks look at the side view alone, which no volume factor changes. */
const OUTSIDE_FACTOR = { low: 0.9, high: 1.1 };

/**
 * Puts a bait together from what the maker says: rows of mass, displacement and body material replaced, reconciled with
 * the bench readings (docs/model.md §3). First a volume factor from the displacement readings, then the body density
 * from the weighings, each the mean weighted by 1/resolution², all else as computed.
 *
 * @param spec SI, body frame
 * @throws BaitError (path, remedy) for a layout that cannot be, ShapeError for edges that cannot be
 */
export function assemble(spec: BaitSpec, options: AssembleOptions = {}): Bait {
  checkNumbers(spec);
  const drawn = options.drawn ?? shapeOf(spec.shape);
  const warnings = checkLayout(spec, drawn);
  const split = spec.wires.map((w) => splitWire(w, drawn));

  // 1. Volume factor. What is fitted outside does not depend on it, the bib's tongue (inside) may.
  let fitted = fittedItems(spec, drawn, drawn, split, MID);
  const bench = options.found ? [] : prepareBench(spec, fitted);
  const shown = (i: number): number => bench[i]?.reading.reading ?? 0;
  const measured = benchBodyVolume(bench, sizesOf(fitted), shown);
  if (measured !== null && !(measured > 0)) refuseReadings(bench, "displacement", inMl(measured));
  const volumeFactor = options.found?.volumeFactor ?? (measured === null ? 1 : measured / drawn.volume);
  const shape = volumeFactor === 1 ? drawn : drawn.withBreadthFactor(volumeFactor);
  if (shape !== drawn && spec.bib) fitted = fittedItems(spec, drawn, shape, split, MID);
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
  spec.corrections?.forEach((c, i) => rowsNamed(spec, fitted, c.without, `corrections[${i}].without`));
  const items: readonly Item[] = [...computed, ...correctionRows(spec, computed)];
  warnings.push(
    ...overlapWarnings(
      spec,
      items,
      split.map((s) => s.inside),
    ),
  );

  const sides = new Map<string, readonly Item[]>();
  const itemsWith = (side: BallSide): readonly Item[] => {
    const key = `${side.end} ${side.face}`;
    let rows = sides.get(key);
    if (!rows) {
      rows = items.map((i) => (i.part === "balls" ? (ballsRow(spec, i.index, i.item, side) ?? i) : i));
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
    ballCentres: (side): readonly Vec[] => spec.chambers.flatMap((c) => ballPlaces(c, side)),
    rigid: (side): RigidSet => rigidOf(itemsWith(side)),
    rigidWithout: ({ hooks, balls }, side = MID): RigidSet =>
      rigidOf(
        itemsWith(side).filter((i) => !(hooks && i.group === "hangers") && !(balls && i.group === "balls")),
      ),
    warnings,
  };
}
