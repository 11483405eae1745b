import type { App } from "./app.svelte";

/**
 * One T for each page: made when it is first asked for, and kept while the page lives. It is made under an effect root of
 * its own. What a component makes as it starts would end with that component, and its derived values would no longer
 * change.
 */
export function keptWith<T>(make: (app: App) => T): (app: App) => T {
  const known = new WeakMap<App, { readonly made: T }>();
  return (app) => {
    const found = known.get(app);
    if (found !== undefined) return found.made;
    let one: { readonly made: T } | undefined;
    $effect.root(() => {
      one = { made: make(app) };
    });
    if (one === undefined) throw new Error("A root's function runs at once.");
    known.set(app, one);
    return one.made;
  };
}
