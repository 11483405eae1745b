import { distance } from "../base";
import type { Vec } from "../base";
import type { BaitSpec } from "../bait";
import { BaitError, ballRadius, checkLayout, gap, keepOuts, overlap } from "../parts";
import type { KeepOut, PartSpecs, Solid } from "../parts";
import { insideOutline, sectionAt, phiOfStation } from "../shape";
import type { Shape } from "../shape";
import { USUAL_CLEAR } from "./between";
import { hookReaches } from "./reach";
import { wallsOf } from "./walls";
import type { Fitted } from "./walls";

/** Looks along a wire from eye to eye, and the share of the body at either end in which it may lie beside it. */
const LOOKS = 40;
const ENDS = 0.06;

const isHollow = ({ is }: Solid): boolean => is === "box" || is === "hole";

/** Fittings on the skin as balls of their volume: they take no room inside. */
const onSkin = ({ fittings }: PartSpecs): readonly { readonly at: Vec; readonly radius: number }[] =>
  fittings
    .filter(({ where }) => where === "outside")
    .map(({ at, mass, stuff }) => ({ at, radius: ballRadius(mass / stuff.density) }));

/** False where the edges or the flanks right beside a hollow leave less than `least`: a quick look before the search over the skin. */
function mayHaveWall({ solid, key }: KeepOut, { edges, length }: Shape, least: number): boolean {
  if (!isHollow(solid)) return true;
  const [x, low, high, radius] =
    solid.is === "box"
      ? [(solid.minX + solid.maxX) / 2, solid.minZ, solid.maxZ, 0]
      : solid.is === "hole"
        ? [solid.at.x, solid.at.z, solid.at.z, ballRadius(solid.volume)]
        : [0, 0, 0, 0];
  if (x > 0 || -x > length) return false;
  const section = sectionAt(edges, phiOfStation(-x, length));
  return (
    section.top - high >= radius + least &&
    // A drilled hole begins at the bottom edge.
    ((key === "ballast" && solid.is === "box") || low - section.bottom >= radius + least) &&
    section.halfBreadth >= radius + least
  );
}

/** A wire lies in the body from end to end, and its bends between leave a wall. */
function isWithin({ path, diameter }: PartSpecs["wires"][number], shape: Shape, least: number): boolean {
  const off = diameter / 2 + least;
  if (path.slice(1, -1).some(({ x, z }) => [off, -off].some((up) => !insideOutline(shape, { x, z: z + up }))))
    return false;
  return path.slice(1).every((b, i) => {
    const a = path[i] ?? b;
    return Array.from({ length: LOOKS + 1 }, (_, k) => k / LOOKS).every((t) => {
      const at = { x: a.x + t * (b.x - a.x), z: a.z + t * (b.z - a.z) };
      const share = -at.x / shape.length;
      return share < ENDS || share > 1 - ENDS || insideOutline(shape, at);
    });
  });
}

/**
 * Whether a new part stands free in a bait: it can be built there, leaves a wall of `least` (m) to the skin, touches nothing,
 * and no hook reaches what none reached before.
 */
export function roomIn(
  bait: Fitted & { readonly spec: Pick<BaitSpec, "tie"> },
  least: number,
): (fresh: PartSpecs) => boolean {
  const { drawn, spec: here } = bait;
  const around = keepOuts(here, bait);
  const reaches = hookReaches(bait).length;
  const skin = onSkin(here);

  const touches = (fresh: PartSpecs): boolean =>
    keepOuts(fresh, bait).some(
      (one) =>
        !mayHaveWall(one, drawn, least) ||
        around.some(
          (other) =>
            !(other.key === one.key && one.part.mayTouch === true) &&
            (overlap(one.solid, other.solid) > 0 || gap(one.solid, other.solid) < USUAL_CLEAR),
        ),
    );
  const canBeBuilt = (fresh: PartSpecs): boolean => {
    try {
      return checkLayout(fresh, drawn).length === 0;
    } catch (fault) {
      if (fault instanceof BaitError) return false;
      throw fault;
    }
  };
  return (fresh) =>
    !touches(fresh) &&
    onSkin(fresh).every(
      ({ at, radius }) =>
        insideOutline(drawn, at) && skin.every((other) => distance(at, other.at) >= radius + other.radius),
    ) &&
    fresh.hangers.every(({ at }) => at.x <= 0 && -at.x <= drawn.length) &&
    fresh.wires.every((wire) => isWithin(wire, drawn, least)) &&
    hookReaches({
      spec: { tie: here.tie, bib: fresh.bib ?? here.bib, hangers: [...here.hangers, ...fresh.hangers] },
    }).length === reaches &&
    canBeBuilt(fresh) &&
    wallsOf({ ...bait, spec: fresh }).every((wall) => wall.least >= least);
}
