import type { Component } from "svelte";
import type { Player } from "../stage";
import type { App } from "../state";

/** The two parts of a view that has been loaded. */
export interface ViewParts {
  /** The large part: drawing, numbers, plots. */
  readonly Main: Component;
  /** The column of inputs. */
  readonly Side: Component;
}

/** One view of the open document. A new view is one folder that exports one of these, and one line in the list. */
export interface View {
  /** Stands in the address. */
  readonly key: string;
  readonly label: string;
  /** In one plain sentence: what the view answers. */
  readonly answers: string;
  /** Keys that the view listens to itself, for the page's list of keys. */
  readonly keys?: readonly { readonly keys: string; readonly does: string }[];
  /** Loads the parts; the page asks for them when the view is first opened. */
  load(): Promise<ViewParts>;
  /** The clock that its keys act on, where the view shows a run; null while it shows none. */
  clock?(app: App): Player | null;
}

/** The default exports of a view's two files, as `import()` gives them. */
type Loaded = { readonly default: Component };

/** A view's two parts from its two lazy imports. */
export async function both(main: Promise<Loaded>, side: Promise<Loaded>): Promise<ViewParts> {
  const [{ default: Main }, { default: Side }] = await Promise.all([main, side]);
  return { Main, Side };
}
