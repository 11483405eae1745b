import { gap, keepOuts } from "../parts";
import type { KeepOut } from "../parts";
import type { Fitted } from "./walls";

/** Less wood than this beside a chamber is said, m. The ballast plan keeps as much clear. Common practice, no source. */
export const USUAL_CLEAR = 1e-3;

/** Wood between a chamber and another chamber, hole or inside fitting. */
export interface Between {
  /** Place of the other part in the document. */
  readonly path: string;
  readonly chamber: string;
  /** m */
  readonly least: number;
}

/**
 * Thin wood between a chamber and what else is hollowed out of the body: a drill breaks through it, and what is poured into the
 * hole runs into the chamber. Wood between two weights may be as thin as it likes: their holes are filled. What overlaps has
 * a warning of its own, and is not listed here.
 */
export function thinBetween(bait: Fitted): readonly Between[] {
  const hollows = keepOuts(bait.spec, bait).filter(({ solid }) => solid.is === "box" || solid.is === "hole");
  const chambers = hollows.filter(({ key }) => key === "chambers");
  const later = (a: KeepOut, b: KeepOut): boolean => b.key !== "chambers" || b.index > a.index;
  return chambers.flatMap((chamber) =>
    hollows
      .filter((other) => later(chamber, other))
      .flatMap(({ path, solid }): Between[] => {
        const least = gap(chamber.solid, solid);
        const name = bait.spec.chambers[chamber.index]?.name ?? "";
        return least > 0 && least < USUAL_CLEAR ? [{ path, chamber: name, least }] : [];
      }),
  );
}
