/** The answer to 'why this number': what it is, how it is computed, from what, and by which source. */
export interface Why {
  readonly title: string;
  /** The number as shown, with its unit. */
  readonly value: string;
  /** What it means at the bench, in a sentence or two. */
  readonly meaning: string;
  readonly formula: string;
  readonly inputs: readonly { readonly name: string; readonly value: string }[];
  /** Rows of a longer computation, such as the weight account. */
  readonly table?: {
    readonly head: readonly string[];
    readonly rows: readonly (readonly string[])[];
    readonly foot: readonly string[];
  };
  readonly source: string;
  readonly note?: string;
}

/** Asked again whenever its inputs change; null while there is no such number, as during a run. */
export type Asking = () => Why | null;

/** Which number is being asked, and the button that asked (focus goes back there). */
export class WhyState {
  asked = $state.raw<{ readonly why: Asking; readonly anchor: HTMLElement } | null>(null);

  ask(why: Asking, anchor: HTMLElement): void {
    this.asked = { why, anchor };
  }

  close(): void {
    this.asked = null;
  }
}
