import type { KeptBait, Scenario } from "../../../src/document";
import type { BaitStore, Tabs } from "../../../src/ui/kept";
import { Baits } from "../../../src/ui/state/baits.svelte";
import { BesideState } from "../../../src/ui/state/beside.svelte";
import { aNumber, listOf } from "../../../src/ui/state/readers";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { scenario } from "../ui-app/scenario";

/** A storage as browsers give it, in memory. */
class Slips {
  readonly held = new Map<string, string>();
  get length(): number {
    return this.held.size;
  }
  key = (i: number): string | null => [...this.held.keys()][i] ?? null;
  getItem = (key: string): string | null => this.held.get(key) ?? null;
  setItem = (key: string, text: string): void => void this.held.set(key, text);
  removeItem = (key: string): void => void this.held.delete(key);
}

/** One page: its document, what a hand has entered, and its keeping. No channel tells it of the others. */
export function page(store: BaitStore, kept: KeptBait | null, slips = new Slips()) {
  const work = kept === null ? new Workspace(scenario()) : new Workspace(kept.scenario, kept);
  const beside = new BesideState();
  beside.open(kept?.beside ?? {});
  const hand = { times: [] as readonly number[] };
  beside.keep("times", "work", hand, { times: listOf(aNumber) });
  const tabs = { tell: () => undefined, listen: () => () => undefined } as unknown as Tabs;
  const baits = new Baits(
    { store, tabs, slips, remember: () => undefined, now: () => Date.now(), persist: () => undefined },
    work,
    beside,
    kept,
  );
  const set = (key: keyof Scenario["water"], value: number): void =>
    void work.edit(key, `set ${key}`, (from) => ({ ...from, water: { ...from.water, [key]: value } }));
  return { work, beside, hand, baits, set, slips };
}

export async function kept(store: BaitStore, id: string): Promise<KeptBait> {
  const read = await store.read(id);
  if (read?.ok !== true) throw new Error(`no bait ${id}`);
  return read.bait;
}
