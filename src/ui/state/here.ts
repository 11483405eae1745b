import { same } from "../../document";
import type { Scenario } from "../../document";

/** The baits that are here while a file is taken over, by their names. */
export class Here {
  readonly #byName = new Map<string, Scenario[]>();

  add(one: Scenario): void {
    this.#byName.set(one.name, [...(this.#byName.get(one.name) ?? []), one]);
  }

  /** A bait that is the same in all. */
  has(one: Scenario): boolean {
    return this.#byName.get(one.name)?.some((other) => same(other, one)) === true;
  }

  named(name: string): boolean {
    return this.#byName.has(name);
  }
}
