import { assemble } from "./assemble";
import type { Bait, BaitSpec, Item } from "./types";

/**
 * The same bait with some of its items only: at an earlier stage of making, say. What is left out is neither fitted nor cut
 * into the body; the body stays as the bench has found it. Corrections stay.
 *
 * @param keep asked of every row but the body and the corrections; a chamber left out takes its balls with it
 */
export function withOnly(bait: Bait, keep: (item: Item) => boolean): Bait {
  const { spec } = bait;
  const has = (group: Item["group"], index: number, part: Item["part"] = "item"): boolean =>
    bait.items.some((i) => i.group === group && i.index === index && i.part === part && keep(i));
  const kept = <T>(group: Item["group"], list: readonly T[]): T[] => list.filter((_, i) => has(group, i));
  const left: BaitSpec = {
    ...spec,
    chambers: spec.chambers.flatMap((c, i) =>
      has("chambers", i) ? [has("balls", i, "balls") ? c : { ...c, balls: null }] : [],
    ),
    ballast: kept("ballast", spec.ballast),
    wires: kept("wires", spec.wires),
    bib: spec.bib && has("bib", 0) ? spec.bib : null,
    hangers: spec.hangers.map((h, i) => ({
      ...h,
      ring: has("hangers", i, "ring") ? h.ring : null,
      hook: has("hangers", i, "hook") ? h.hook : null,
    })),
    fittings: kept("fittings", spec.fittings),
    coats: kept("coats", spec.coats),
    bench: [],
    ...(spec.corrections ? { corrections: spec.corrections.map((c) => ({ ...c, without: [] })) } : {}),
  };
  return assemble(left, {
    drawn: bait.drawn,
    found: { bodyDensity: bait.bodyDensity, volumeFactor: bait.volumeFactor },
  });
}
