import { entriesOf, mapParts } from "../parts";
import type { Item } from "../parts";
import { assemble } from "./assemble";
import { GROUPS } from "./readings";
import { correctionsLeft } from "./corrections";
import type { Bait, BaitSpec } from "./types";

/**
 * The same bait with only some of its items, as at an earlier stage of making. What is left out is neither fitted nor cut
 * into the body. The body stays as the bench readings gave it. A correction by a tub test stays only where that test lacked
 * everything that is left out here: what a later bait did in the tub tells nothing about the barer one. Hooks and rings that
 * hung on an unfinished bait may be left out all the same.
 *
 * @param keep asked for every row but the body and the corrections; a chamber that is left out takes its balls with it
 */
export function withOnly(bait: Bait, keep: (item: Item) => boolean): Bait {
  const { spec } = bait;
  const parts = mapParts(spec, ({ part, spec: one, index }) => {
    const has = (piece: Item["part"]): boolean =>
      bait.items.some(
        (i) => part.groups.includes(i.group) && i.index === index && i.part === piece && keep(i),
      );
    if (part.only) return part.only(one, has);
    return has("item") ? one : null;
  });
  const left: BaitSpec = { ...spec, ...parts, bench: [], corrections: [] };
  const found = {
    drawn: bait.drawn,
    found: { bodyDensity: bait.bodyDensity, volumeFactor: bait.volumeFactor },
  };
  const bare = assemble(left, found);
  const corrections = correctionsLeft(bait, keep);
  if (corrections.length === 0) return bare;
  // What was missing in the tub and is missing here has no name on this bait any more.
  const words = new Set<string>([
    ...GROUPS,
    ...bare.items.map((row) => row.item),
    ...entriesOf(bare.spec).map((entry) => entry.part.name(entry.spec)),
  ]);
  return assemble(
    {
      ...left,
      corrections: corrections.map((c) => ({ ...c, without: c.without.filter((word) => words.has(word)) })),
    },
    found,
  );
}
