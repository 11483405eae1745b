import { toSI } from "../../../units";
import { hasCurve, pointsOf } from "../../../document";
import type { CurveKey } from "../../../document";
import type { BoardLayout, Elevation } from "../../../drawing";
import type { Vec } from "../../../model/base";
import { CURVES_IN } from "./marks";
import type { Handle } from "./parts.svelte";
import { sectionGrips } from "./section";
import type { SectionKey } from "./section";
import type { Board } from "./state.svelte";

/** What a hand takes hold of on the board. */
export type Grip =
  | { readonly kind: "point"; readonly key: CurveKey; readonly index: number }
  | { readonly kind: "length" }
  | { readonly kind: "station" }
  | { readonly kind: "section"; readonly key: SectionKey }
  | { readonly kind: "part"; readonly handle: Handle };

/** A grip at its place in a view. */
export interface Spot {
  readonly elevation: Elevation;
  /** In the view's own plane, m. */
  readonly at: Vec;
  readonly grip: Grip;
  readonly chosen: boolean;
  /** The reason why the drawing is refused stands here. */
  readonly wrong: boolean;
}

/** How far below the upper end of a view the section's grip stands, px. */
const STATION_DOWN = 9;

/** A grip is shown when its middle lies no farther than this outside its view, px. */
const RIM = 3;

/** The curves whose points a view shows: those that the file has, and the chosen one. */
export const curvesShown = (board: Board, elevation: Elevation): readonly CurveKey[] =>
  CURVES_IN[elevation].filter((key) => key === board.curve || hasCurve(board.shown.bait, key));

const plain = (elevation: Elevation, at: Vec, grip: Grip): Spot => ({
  elevation,
  at,
  grip,
  chosen: false,
  wrong: false,
});

/** The grip of the section's station in each view along the bait: it hangs from the upper end of what is shown. */
export const stationSpots = (station: number, { panes, scale }: BoardLayout): readonly Spot[] =>
  panes
    .filter(({ elevation }) => elevation !== "section")
    .map(({ elevation, box }) =>
      plain(
        elevation,
        { x: 0 - toSI(station, "mm"), z: box.maxZ - STATION_DOWN / scale },
        { kind: "station" },
      ),
    );

/** All other grips of some views: they stand on the bait itself. `trouble`: the path in the document that a refusal is about. */
export function spotsOf(
  board: Board,
  elevations: readonly Elevation[],
  trouble: string | null,
): readonly Spot[] {
  const { bait: file } = board.shown;
  const { job, groups } = board;
  const wrongAt = (key: CurveKey, index: number): boolean =>
    trouble === `bait.${key}` || trouble?.startsWith(`bait.${key}[${index}]`) === true;
  return elevations.flatMap((elevation): Spot[] => {
    const side = elevation === "side";
    const out: Spot[] = [];
    if (job === "parts" && side) {
      const part = board.parts.held?.part;
      for (const handle of board.parts.handles)
        out.push({
          ...plain(
            elevation,
            { x: 0 - toSI(handle.at[0], "mm"), z: toSI(handle.at[1], "mm") },
            { kind: "part", handle },
          ),
          chosen: part?.key === handle.part.key && part.index === handle.part.index,
        });
    }
    if (job === "section" && elevation === "section")
      for (const { key, at } of sectionGrips(board))
        out.push({ ...plain(elevation, at, { kind: "section", key }), chosen: board.sectionGrip === key });
    if (job !== "outline") return out;
    if (side) out.push(plain(elevation, { x: 0 - toSI(file.length_mm, "mm"), z: 0 }, { kind: "length" }));
    for (const key of curvesShown(board, elevation)) {
      const which = groups.find(([one]) => one === key)?.[1] ?? [];
      pointsOf(file, key).forEach(([s, v], index) => {
        out.push({
          elevation,
          at: { x: 0 - toSI(s, "mm"), z: toSI(v, "mm") },
          grip: { kind: "point", key, index },
          chosen: which.includes(index),
          wrong: trouble !== null && wrongAt(key, index),
        });
      });
    }
    return out;
  });
}

function sameGrip(a: Grip, b: Grip): boolean {
  switch (a.kind) {
    case "point":
      return b.kind === "point" && a.key === b.key && a.index === b.index;
    case "section":
      return b.kind === "section" && a.key === b.key;
    case "part": {
      if (b.kind !== "part") return false;
      const [one, other] = [a.handle, b.handle];
      return (
        one.id === other.id &&
        one.name === other.name &&
        one.moves === other.moves &&
        one.part.key === other.part.key &&
        one.part.index === other.part.index
      );
    }
    case "length":
    case "station":
      return a.kind === b.kind;
  }
}

/** A grip that is as it was, at the same place. */
export const sameSpot = (a: Spot, b: Spot): boolean =>
  a.elevation === b.elevation &&
  a.at.x === b.at.x &&
  a.at.z === b.at.z &&
  a.chosen === b.chosen &&
  a.wrong === b.wrong &&
  sameGrip(a.grip, b.grip);

const paneOf = ({ panes }: BoardLayout, elevation: Elevation) =>
  panes.find((one) => one.elevation === elevation);

/** What lies beside the part of a view that is shown cannot be taken hold of. */
export function isSeen({ elevation, at }: Pick<Spot, "elevation" | "at">, layout: BoardLayout): boolean {
  const box = paneOf(layout, elevation)?.box;
  if (box === undefined) return false;
  const rim = RIM / layout.scale;
  return at.x > box.minX - rim && at.x < box.maxX + rim && at.z > box.minZ - rim && at.z < box.maxZ + rim;
}

/** A place of a view on the board, px (z downward). What is in no view that is shown lies nowhere near. */
export function onScreen({ elevation, at }: Pick<Spot, "elevation" | "at">, layout: BoardLayout): Vec {
  const pane = paneOf(layout, elevation);
  const { scale } = layout;
  if (pane === undefined) return { x: -Infinity, z: -Infinity };
  return { x: pane.x + at.x * scale, z: pane.y - at.z * scale };
}

/** Where a part is drawn from the side (mm); null where that is not shown. */
export function partSpot(
  place: readonly [station: number, height: number] | null,
  layout: BoardLayout,
): Pick<Spot, "elevation" | "at"> | null {
  if (place === null || paneOf(layout, "side") === undefined) return null;
  return { elevation: "side", at: { x: 0 - toSI(place[0], "mm"), z: toSI(place[1], "mm") } };
}

/** The chosen curve's points, and all the more what is chosen itself, win over what lies this much nearer, px. */
const WINS = { own: 2, chosen: 8 } as const;

/** The nearest spot within a reach, px; null where none is. */
export function nearestSpot(
  spots: readonly Spot[],
  p: Vec,
  reach: number,
  layout: BoardLayout,
  own: CurveKey,
): Spot | null {
  let best: Spot | null = null;
  let least = reach;
  for (const spot of spots) {
    const q = onScreen(spot, layout);
    const ofOwn = spot.grip.kind === "point" && spot.grip.key === own;
    const bonus = spot.chosen ? WINS.chosen : ofOwn ? WINS.own : 0;
    const d = Math.hypot(q.x - p.x, q.z - p.z) - bonus;
    if (d < least) [best, least] = [spot, d];
  }
  return best;
}
