import type { Vec } from "../model/base";
import { onPane, tall, wide } from "./board";
import type { BoardLayout, Elevation, Pane } from "./board";
import type { Box } from "./types";

/** The drawing board looked at from closer or farther away: one scale and one place for all its views. */

/** Where a board looks when it does not show the whole bait: the place in the middle of its views, one for all of them. */
export interface BoardView {
  /** px to the metre. */
  readonly scale: number;
  /** m: x forward of the nose tip, y from the plane of symmetry, z up from the datum line. */
  readonly at: { readonly x: number; readonly y: number; readonly z: number };
}

type Boxes = Readonly<Record<Elevation, Box>>;

/** Which two of the three directions a view shows, to the right and up. */
const AXES: Readonly<Record<Elevation, readonly ["x" | "y", "y" | "z"]>> = {
  side: ["x", "z"],
  above: ["x", "y"],
  section: ["y", "z"],
};

/** How much closer and farther than the whole bait a board looks, and the closest, px to the metre. */
const NEARER = { least: 0.6, most: 200_000 } as const;

const middle = (low: number, high: number): number => (low + high) / 2;

/** What a board that shows the whole bait looks at. */
export const wholeView = ({ side }: Boxes, { scale }: BoardLayout): BoardView => ({
  scale,
  at: { x: middle(side.minX, side.maxX), y: 0, z: middle(side.minZ, side.maxZ) },
});

/** The board as it looks closer or from farther away: every view stays where it is on the page, all to one scale. */
export function lookedAt(whole: BoardLayout, view: BoardView | null): BoardLayout {
  if (view === null) return whole;
  const { scale, at } = view;
  const panes = whole.panes.map(({ elevation, x, y, box }): Pane => {
    const [u, v] = AXES[elevation];
    const [half, high] = [(wide(box) * whole.scale) / 2, (tall(box) * whole.scale) / 2];
    const centre = {
      x: x + box.minX * whole.scale + half,
      y: y - box.maxZ * whole.scale + high,
    };
    return {
      elevation,
      x: centre.x - at[u] * scale,
      y: centre.y + at[v] * scale,
      box: {
        minX: at[u] - half / scale,
        maxX: at[u] + half / scale,
        minZ: at[v] - high / scale,
        maxZ: at[v] + high / scale,
      },
    };
  });
  return { ...whole, scale, panes };
}

/**
 * The view after a move of the hand over one of the panes: what lay under the px `from` lies under the px `to`, `factor`
 * times as large. The middle stays within what the whole bait takes up, so that nothing gets lost.
 */
export function movedView(
  view: BoardView,
  whole: BoardLayout,
  boxes: Boxes,
  elevation: Elevation,
  { from, to, factor }: { readonly from: Vec; readonly to: Vec; readonly factor: number },
): BoardView {
  const pane = lookedAt(whole, view).panes.find((one) => one.elevation === elevation);
  if (pane === undefined) return view;
  const scale = Math.min(
    Math.max(NEARER.most, whole.scale),
    Math.max(NEARER.least * whole.scale, view.scale * factor),
  );
  const [u, v] = AXES[elevation];
  const held = onPane(pane, view.scale, from.x, from.z);
  const centre = {
    x: pane.x + view.at[u] * view.scale,
    y: pane.y - view.at[v] * view.scale,
  };
  const box = boxes[elevation];
  const kept = (mid: number, low: number, high: number): number => Math.min(high, Math.max(low, mid));
  return {
    scale,
    at: {
      ...view.at,
      [u]: kept(held.x - (to.x - centre.x) / scale, box.minX, box.maxX),
      [v]: kept(held.z + (to.z - centre.y) / scale, box.minZ, box.maxZ),
    },
  };
}
