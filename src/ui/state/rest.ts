/** While a hand moves a slider or types, slow work waits this long for it to rest, ms. */
const REST_MS = 160;

/**
 * Starts slow work: at once, or, with `waiting`, when the hand has rested. Gives the function that takes the start back,
 * so that an effect can return it: then only the last of several quick changes starts the work.
 */
export function atRest(work: () => void, waiting = true): () => void {
  const timer = setTimeout(work, waiting ? REST_MS : 0);
  return () => clearTimeout(timer);
}
