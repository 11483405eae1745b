/**
 * Lists that are made anew at each move of a hand, though most of what they hold is as before. What is the same stays the
 * object that it was, and where all is the same the list does too: so the page looks only at what has changed.
 */
export function steady<T>(same: (a: T, b: T) => boolean): (next: readonly T[]) => readonly T[] {
  let last: readonly T[] = [];
  return (next) => {
    if (next === last) return last;
    const kept = next.map((one, i) => {
      const before = last[i];
      return before !== undefined && (before === one || same(before, one)) ? before : one;
    });
    if (kept.length !== last.length || kept.some((one, i) => one !== last[i])) last = kept;
    return last;
  };
}

/** Two groups with the same values under the same keys. */
export function sameValues(a: object, b: object): boolean {
  const [of, to] = [a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>];
  const keys = Object.keys(of);
  return keys.length === Object.keys(to).length && keys.every((key) => key in to && of[key] === to[key]);
}
