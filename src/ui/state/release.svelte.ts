/** How often a page that stays open asks for a newer release, ms. */
const AGAIN_MS = 3_600_000;

/** How long the page has the network for itself, ms. */
const QUIET_MS = 1500;

/**
 * Whether the page opens without a network, and whether a newer release of it waits. Nothing of it changes an open page:
 * a newer release is taken when a person asks, or when no page of the earlier one is open any more.
 */
export class Release {
  /** The page opens without a network. */
  offline = $state(false);
  /** A newer release is here and waits. */
  waiting = $state.raw<ServiceWorker | null>(null);
  /** Another tab has taken a newer release; this one goes on with the earlier. */
  passed = $state(false);
  #asked = false;
  #looked = 0;

  /** Registers the worker at this address. `leave` is done before the page is loaded anew. */
  async follow(workers: ServiceWorkerContainer, address: string, leave: () => Promise<void>): Promise<void> {
    let controlled = workers.controller !== null;
    this.offline = controlled;
    workers.addEventListener("controllerchange", () => {
      this.offline = true;
      if (this.#asked) void leave().finally(() => location.reload());
      else if (controlled) [this.passed, this.waiting] = [true, null];
      controlled = true;
    });
    // What the page itself needs is fetched first.
    await new Promise((then) => setTimeout(then, QUIET_MS));
    const found = await workers.register(address, { updateViaCache: "none" });
    const look = (next: ServiceWorker | null): void => {
      // Without one that works already it is the first release, and there is nothing to choose.
      if (next?.state === "installed" && workers.controller !== null) this.waiting = next;
    };
    look(found.waiting);
    found.addEventListener("updatefound", () => {
      const next = found.installing;
      next?.addEventListener("statechange", () => look(next));
    });
    this.#looked = Date.now();
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden" || Date.now() - this.#looked < AGAIN_MS) return;
      this.#looked = Date.now();
      // Without a network there is none to be had.
      found.update().catch(() => undefined);
    });
  }

  /** Takes the newer release: the page is loaded anew once it has taken over. */
  take(): void {
    this.#asked = true;
    if (this.waiting === null) location.reload();
    else this.waiting.postMessage("take over");
  }

  /** Later: at the next start. */
  putOff(): void {
    [this.waiting, this.passed] = [null, false];
  }
}
