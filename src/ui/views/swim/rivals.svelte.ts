import { untrack } from "svelte";
import type { Scenario } from "../../../document";
import type { Snapshot } from "../../../model/motion";
import type { ModelClient } from "../../../runner";
import { LETTERS, RunSlot } from "../../state";
import type { Compare, Letter, Session, Variant, Worked, Workspace } from "../../state";

/** A pinned variant with its run. */
export interface Rival extends Variant {
  readonly run: RunSlot;
}

/**
 * The pinned variants, each through the cadence that the open document has now; bait, water and tackle are their own.
 * They run one after the other, and only while the open document's run waits for nobody.
 */
export class Rivals {
  readonly #slots: Readonly<Record<Letter, RunSlot>>;
  readonly #made: Partial<
    Record<Letter, { readonly worked: Worked; readonly cadence: Scenario["cadence"] } | undefined>
  > = {};
  readonly #work: Workspace;
  readonly #compare: Compare;
  readonly #session: Session;

  constructor(client: ModelClient, work: Workspace, compare: Compare, session: Session) {
    this.#work = work;
    this.#compare = compare;
    this.#session = session;
    const slot = (letter: Letter): RunSlot =>
      new RunSlot(client, `swim ${letter}`, () => 0, { motionOnly: true });
    this.#slots = { A: slot("A"), B: slot("B"), C: slot("C"), D: slot("D") };
  }

  get list(): readonly Rival[] {
    return this.#compare.variants.map((one) => ({ ...one, run: this.#slots[one.letter] }));
  }

  /** What each of them does at a moment; those whose run has come so far. */
  at(time: number): readonly { readonly rival: Rival; readonly snapshot: Snapshot }[] {
    return this.list.flatMap((rival) => {
      const { recording, frames } = rival.run;
      // A run that has not come so far would be shown where it is not.
      const there = recording !== null && frames > 0 && (recording.complete || recording.duration >= time);
      return there ? [{ rival, snapshot: recording.at(time) }] : [];
    });
  }

  /** Follows pins and cadence for the life of the component that calls it. */
  follow(): void {
    $effect(() => {
      const { variants } = this.#compare;
      const { cadence } = this.#work.scenario;
      const busy = this.#session.run.busy || Object.values(this.#slots).some((slot) => slot.busy);
      untrack(() => this.#go(variants, cadence, busy));
    });
  }

  #go(variants: readonly Variant[], cadence: Scenario["cadence"], busy: boolean): void {
    for (const letter of LETTERS)
      if (this.#made[letter] !== undefined && variants.every((one) => one.letter !== letter)) {
        this.#slots[letter].clear();
        this.#made[letter] = undefined;
      }
    for (const { letter, worked } of variants) {
      const made = this.#made[letter];
      if (made?.worked === worked && made.cadence === cadence) continue;
      // What runs through an older cadence is of no use any longer.
      if (made !== undefined && this.#slots[letter].busy) this.#slots[letter].clear();
      if (busy) continue;
      this.#made[letter] = { worked, cadence };
      void this.#slots[letter].record({ kind: "swim", scenario: { ...worked.scenario, cadence } }, worked);
      return;
    }
  }
}
