import { cos, distance, distanceToSegment, sin } from "../base";
import type { BaitSpec } from "../bait";
import { hookMeasure } from "../parts";
import type { HookMeasure } from "../parts";

/**
 * What a hook can touch as it swings from its hanger. Seen in the plane of symmetry, with the body out of the way: a hook
 * reaches as far as it is long, ring and all. Its length is the file's, else that of its size, else it follows from its mass
 * (`hookMeasure`).
 */
export interface HookReach {
  /** Place of the hanger in the document. */
  readonly path: string;
  readonly name: string;
  /** m */
  readonly length: number;
  readonly by: HookMeasure["by"];
  readonly touches: { readonly what: "hook"; readonly name: string } | { readonly what: "bib" | "tie" };
  /** From the hanger to what it touches (of two hooks: between their hangers), m. */
  readonly apart: number;
  /** How far they could be apart and still touch, m. */
  readonly within: number;
}

type HooksOf = Pick<BaitSpec, "hangers" | "bib" | "tie">;

/** Every pair that can touch, hook by hook in the order of the hangers. */
export function hookReaches({ spec }: { readonly spec: HooksOf }): readonly HookReach[] {
  const hooks = spec.hangers.flatMap((h, index) => {
    const measure = hookMeasure(h);
    if (measure === null) return [];
    return [
      { path: `bait.hangers[${index}]`, name: h.name, at: h.at, length: measure.reach, by: measure.by },
    ];
  });
  return hooks.flatMap(({ path, name, at, length, by }, i): HookReach[] => {
    const found: HookReach[] = [];
    const look = (touches: HookReach["touches"], apart: number, within: number): void => {
      if (apart < within) found.push({ path, name, length, by, touches, apart, within });
    };
    for (const other of hooks.slice(i + 1))
      look({ what: "hook", name: other.name }, distance(at, other.at), length + other.length);
    if (spec.bib) {
      const { root, angle, length: long } = spec.bib;
      // The plate runs from its root forward and down, at its angle from the datum line.
      const end = { x: root.x + long * cos(angle), z: root.z - long * sin(angle) };
      look({ what: "bib" }, distanceToSegment(at, root, end), length);
    }
    look({ what: "tie" }, distance(at, spec.tie), length);
    return found;
  });
}
