/**
 * How a page notices that a worker has ended, whatever ended it. The worker holds a lock of the browser for as long as its
 * thread lives, and the page waits for the same lock. A browser without locks, or one that refuses them, gives no sign.
 */
function locksOf(): LockManager | null {
  const { navigator } = globalThis as { readonly navigator?: { readonly locks?: LockManager } };
  return navigator?.locks ?? null;
}

/** In the worker: holds the lock `name` until the thread ends. False where there are no locks, or they are refused. */
export function holdForLife(name: string): Promise<boolean> {
  const locks = locksOf();
  if (locks === null) return Promise.resolve(false);
  return new Promise((resolve) => {
    const held = (): Promise<never> => {
      resolve(true);
      return new Promise<never>(() => undefined);
    };
    locks.request(name, held).catch(() => resolve(false));
  });
}

/** On the page: calls `gone` when whoever holds the lock `name` has ended. Gives the function that stops waiting. */
export function whenGone(name: string, gone: () => void): () => void {
  const stop = new AbortController();
  locksOf()
    ?.request(name, { signal: stop.signal }, gone)
    .catch(() => undefined);
  return () => stop.abort();
}
