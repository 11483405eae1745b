/** What one tab tells the others: which bait it has written (`box` for the box). */
export interface News {
  readonly about: string;
  readonly revision: number;
}

/** Talks to the other tabs on this browser. Where the browser has no such channel, tabs look again when they are shown. */
export class Tabs {
  readonly #channel: BroadcastChannel | null;
  readonly #listeners = new Set<(news: News) => void>();

  constructor() {
    let channel: BroadcastChannel | null = null;
    try {
      channel = new BroadcastChannel("trimwright-kept");
      channel.onmessage = ({ data }: MessageEvent<unknown>) => this.#hear(data);
    } catch {
      // Missing or forbidden: nothing is lost by it, writes look at what is kept.
    }
    this.#channel = channel;
  }

  tell(news: News): void {
    this.#channel?.postMessage(news);
  }

  /** Calls `then` with what other tabs tell; gives back what ends it. */
  listen(then: (news: News) => void): () => void {
    this.#listeners.add(then);
    return () => this.#listeners.delete(then);
  }

  #hear(data: unknown): void {
    if (typeof data !== "object" || data === null) return;
    const { about, revision } = data as Record<string, unknown>;
    if (typeof about !== "string" || typeof revision !== "number") return;
    for (const then of this.#listeners) then({ about, revision });
  }
}
