import { toSI } from "../../../units";
import { hasCurve, pointsOf } from "../../../document";
import type { CurveKey } from "../../../document";
import type { BoardLayout, Pane } from "../../../drawing";
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
  readonly pane: Pane;
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
export const curvesShown = (board: Board, pane: Pane): readonly CurveKey[] =>
  CURVES_IN[pane.elevation].filter((key) => key === board.curve || hasCurve(board.shown.bait, key));

/** All grips of the board. `trouble`: the path in the document that a refusal is about. */
export function spotsOf(board: Board, layout: BoardLayout, trouble: string | null): readonly Spot[] {
  const { bait: file } = board.shown;
  const { groups } = board;
  const wrongAt = (key: CurveKey, index: number): boolean =>
    trouble === `bait.${key}` || trouble?.startsWith(`bait.${key}[${index}]`) === true;
  return layout.panes.flatMap((pane): Spot[] => {
    const { box, elevation } = pane;
    const plain = (at: Vec, grip: Grip): Spot => ({ pane, at, grip, chosen: false, wrong: false });
    const side = elevation === "side";
    const out: Spot[] = [];
    if (elevation !== "section")
      out.push(
        plain(
          { x: 0 - toSI(board.station, "mm"), z: box.maxZ - STATION_DOWN / layout.scale },
          { kind: "station" },
        ),
      );
    if (board.job === "parts" && side) {
      const part = board.parts.held?.part;
      for (const handle of board.parts.handles)
        out.push({
          ...plain(
            { x: 0 - toSI(handle.at[0], "mm"), z: toSI(handle.at[1], "mm") },
            { kind: "part", handle },
          ),
          chosen: part?.key === handle.part.key && part.index === handle.part.index,
        });
    }
    if (board.job === "section" && elevation === "section")
      for (const { key, at } of sectionGrips(board))
        out.push({ ...plain(at, { kind: "section", key }), chosen: board.sectionGrip === key });
    if (board.job !== "outline") return out;
    if (side) out.push(plain({ x: 0 - toSI(file.length_mm, "mm"), z: 0 }, { kind: "length" }));
    for (const key of curvesShown(board, pane))
      pointsOf(file, key).forEach(([s, v], index) => {
        out.push({
          ...plain({ x: 0 - toSI(s, "mm"), z: toSI(v, "mm") }, { kind: "point", key, index }),
          chosen: groups.some(([one, which]) => one === key && which.includes(index)),
          wrong: wrongAt(key, index),
        });
      });
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
  a.pane === b.pane &&
  a.at.x === b.at.x &&
  a.at.z === b.at.z &&
  a.chosen === b.chosen &&
  a.wrong === b.wrong &&
  sameGrip(a.grip, b.grip);

/** What lies beside the part of a view that is shown cannot be taken hold of. */
export function isSeen({ pane: { box }, at }: Pick<Spot, "pane" | "at">, scale: number): boolean {
  const rim = RIM / scale;
  return at.x > box.minX - rim && at.x < box.maxX + rim && at.z > box.minZ - rim && at.z < box.maxZ + rim;
}

/** A spot's place on the board, px (z downward). */
export const onScreen = ({ pane, at }: Pick<Spot, "pane" | "at">, scale: number): Vec => ({
  x: pane.x + at.x * scale,
  z: pane.y - at.z * scale,
});

/** Where a part is drawn from the side (mm); null where that is not shown. */
export function partSpot(
  place: readonly [station: number, height: number] | null,
  { panes }: BoardLayout,
): Pick<Spot, "pane" | "at"> | null {
  const pane = panes.find(({ elevation }) => elevation === "side");
  if (place === null || pane === undefined) return null;
  return { pane, at: { x: 0 - toSI(place[0], "mm"), z: toSI(place[1], "mm") } };
}

/** The chosen curve's points, and all the more what is chosen itself, win over what lies this much nearer, px. */
const WINS = { own: 2, chosen: 8 } as const;

/** The nearest spot within a reach, px; null where none is. */
export function nearestSpot(
  spots: readonly Spot[],
  p: Vec,
  reach: number,
  scale: number,
  own: CurveKey,
): Spot | null {
  let best: Spot | null = null;
  let least = reach;
  for (const spot of spots) {
    const q = onScreen(spot, scale);
    const ofOwn = spot.grip.kind === "point" && spot.grip.key === own;
    const bonus = spot.chosen ? WINS.chosen : ofOwn ? WINS.own : 0;
    const d = Math.hypot(q.x - p.x, q.z - p.z) - bonus;
    if (d < least) [best, least] = [spot, d];
  }
  return best;
}
