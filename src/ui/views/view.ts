import type { Component } from "svelte";

/** One view of the open document. A new view is one folder that exports one of these, and one line in the list. */
export interface View {
  /** Stands in the address. */
  readonly key: string;
  readonly label: string;
  /** Keys that the view listens to itself, for the page's list of keys. */
  readonly keys?: readonly { readonly keys: string; readonly does: string }[];
  /** The large part: drawing, numbers, plots. */
  readonly Main: Component;
  /** The column of inputs. */
  readonly Side: Component;
}
