import type { Component } from "svelte";
import type { Player } from "../stage";
import type { App } from "../state";
import type { Language } from "../words/base";
import type { ViewKey } from "../words/page";
import type { KeyHelp } from "../words/windows";

/** The two parts of a view that has been loaded. */
export interface ViewParts {
  /** The large part: drawing, numbers, plots. */
  readonly Main: Component;
  /** The column of inputs. */
  readonly Side: Component;
}

/** One view of the open document. A new view is one folder that exports one of these, and one line in the list. */
export interface View {
  /** Stands in the address. The catalogue has the view's name and what it answers under this key. */
  readonly key: ViewKey;
  /** All its text is in the catalogue: it speaks the language that is read. Else it speaks English. */
  readonly speaks?: true;
  /** Keys that the view listens to itself, for the page's list of keys. */
  readonly keys?: readonly { readonly keys: string; readonly does: KeyHelp }[];
  /** Loads the parts, and what the view says in the language; the page asks for them when the view is first opened. */
  load(language: Language): Promise<ViewParts>;
  /** The clock that its keys act on, where the view shows a run; null while it shows none. */
  clock?(app: App): Player | null;
}

/** The default exports of a view's two files, as `import()` gives them. */
type Loaded = { readonly default: Component };

/** A view's two parts from its two lazy imports; `told`: its texts are there. */
export async function both(
  main: Promise<Loaded>,
  side: Promise<Loaded>,
  told?: Promise<unknown>,
): Promise<ViewParts> {
  const [{ default: Main }, { default: Side }] = await Promise.all([main, side, told]);
  return { Main, Side };
}
