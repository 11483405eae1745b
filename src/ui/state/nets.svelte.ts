import { SvelteMap } from "svelte/reactivity";
import type { BaitHead, Scenario } from "../../document";
import { MID } from "../../model/bait";
import { compiledOf } from "./compiled";
import { keptWith } from "./kept.svelte";
import { quietly } from "./quiet";

const keyOf = ({ id, revision }: BaitHead): string => `${id}/${revision}`;

/** Net buoyancy of the baits in a list, kg, each worked out once, while nothing else is to be done. */
class Nets {
  readonly #known = new SvelteMap<string, number | null>();
  readonly #asked = new Set<string>();

  /** What is known: null where the bait cannot be built, undefined where it has not been worked out. */
  of(head: BaitHead): number | null | undefined {
    return this.#known.get(keyOf(head));
  }

  want(heads: readonly BaitHead[]): void {
    for (const head of heads) {
      const key = keyOf(head);
      if (this.#asked.has(key)) continue;
      this.#asked.add(key);
      quietly(() => this.#known.set(key, netOf(key, head.scenario)));
    }
  }
}

function netOf(key: string, scenario: Scenario): number | null {
  try {
    const tried = compiledOf(key, scenario);
    if (!tried.ok) return null;
    const { bait, around } = tried.compiled;
    // Where loose balls lie changes neither mass nor volume.
    const { mass, displaced } = bait.rigid(MID);
    return around.density * displaced - mass;
  } catch {
    return null;
  }
}

export const netsOf = keptWith(() => new Nets());
