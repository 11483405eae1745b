/** Where a dragged place keeps to: other points and the datum line within a few px, else the grid. */

interface SnapGround {
  /** Step of the grid, mm. */
  readonly step: number;
  /** How near another point or the datum line has to be, mm. */
  readonly reach: number;
  /** What else a coordinate keeps to, mm. */
  readonly others: readonly number[];
}

export interface Snapped {
  readonly at: number;
  readonly to: "grid" | "point" | "datum";
}

/** The nearest of the others within reach (0, the datum line, among them where `datum` is true), else the grid. */
export function snapTo(mm: number, { step, reach, others }: SnapGround, datum: boolean): Snapped {
  let best: Snapped = { at: Math.round(mm / step) * step, to: "grid" };
  let least = reach;
  const look = (at: number, to: Snapped["to"]): void => {
    const off = Math.abs(at - mm);
    if (off < least) [best, least] = [{ at, to }, off];
  };
  if (datum) look(0, "datum");
  for (const one of others) look(one, "point");
  return best;
}

/** What a drag keeps to just now, to be shown on the board; null along a direction that is free. mm. */
export interface SnapMark {
  readonly elevation: "side" | "above" | "section";
  readonly s: Snapped | null;
  readonly v: Snapped | null;
}
