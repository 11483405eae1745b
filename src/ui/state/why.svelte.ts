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
export interface Asking {
  (): Why | null;
  /** Brings what the answer is made of, where that comes only when somebody asks. */
  readonly first?: () => Promise<void>;
}

/** An answer that is made by a module which loads with the first question: few numbers are asked, and answers are long. */
export function whenAsked<M>(load: () => Promise<M>, answer: (from: M) => Why | null): Asking {
  let from: M | undefined;
  return Object.assign((): Why | null => (from === undefined ? null : answer(from)), {
    first: async (): Promise<void> => {
      from = await load();
    },
  });
}

/** Which number is being asked, and the button that asked (focus goes back there). */
export class WhyState {
  asked = $state.raw<{ readonly why: Asking; readonly anchor: HTMLElement } | null>(null);

  /** The last answer that was asked for did not come. */
  failed = $state(false);
  #turn = 0;

  ask(why: Asking, anchor: HTMLElement): void {
    const turn = (this.#turn += 1);
    const show = (): void => {
      if (turn === this.#turn) this.asked = { why, anchor };
    };
    this.failed = false;
    if (why.first === undefined) show();
    else why.first().then(show, () => (this.failed = true));
  }

  /** The panel's own word that it has closed may come when the next answer is on its way already: that one still comes. */
  close(): void {
    this.asked = null;
  }
}
