import type { Remote } from "comlink";
import { Connection } from "./connection";
import type { WorkerLike } from "./connection";
import type { Ticket, WorkerApi } from "./protocol";

type Api = Remote<WorkerApi>;

/**
 * Hands requests to one worker or several. Every request has a lane. In one lane a newer request cancels the older one,
 * whose promise then gives null. After that nothing of the older one is passed on, not even its fault.
 */
export class Broker {
  readonly #workers: readonly Connection[];
  readonly #tickets = new Map<string, number>();

  /** `patience`: ms of silence after which a worker counts as ended. */
  constructor(start: () => WorkerLike, count: number, patience?: number) {
    if (count < 1) throw new Error("A broker needs at least one worker.");
    this.#workers = Array.from({ length: count }, () => new Connection(start, patience));
  }

  /**
   * One request, to the worker that has least to do. Callbacks first ask `current`: it says whether the request is still
   * the newest of its lane, and it counts as a sign that the worker lives.
   */
  async ask<T>(
    lane: string,
    request: (api: Api, ticket: Ticket, current: () => boolean) => Promise<T | null>,
  ): Promise<T | null> {
    const ticket = this.#take(lane);
    const worker = this.#workers.reduce((best, one) => (one.load < best.load ? one : best));
    const current = (): boolean => {
      worker.heard();
      return this.#isCurrent(ticket);
    };
    try {
      const answer = await worker.ask((api) => request(api, ticket, current));
      return this.#isCurrent(ticket) ? answer : null;
    } catch (fault) {
      if (!this.#isCurrent(ticket)) return null;
      throw fault;
    }
  }

  /**
   * Work in `count` pieces, each to the worker that is free first; `heard` gets each as it comes. True when all have
   * come, null where the work was cancelled. The first fault ends it.
   */
  async pieces<T>(
    lane: string,
    count: number,
    request: (api: Api, ticket: Ticket, index: number) => Promise<T | null>,
    heard: (piece: T) => void,
  ): Promise<true | null> {
    const ticket = this.#take(lane);
    const faults: unknown[] = [];
    let next = 0;
    const work = async (worker: Connection): Promise<void> => {
      while (next < count && faults.length === 0 && this.#isCurrent(ticket)) {
        const index = next++;
        const piece = await worker.ask((api) => request(api, ticket, index));
        if (piece === null || !this.#isCurrent(ticket)) return;
        heard(piece);
      }
    };
    await Promise.all(
      this.#workers.map((one) => work(one).catch((fault: unknown) => void faults.push(fault))),
    );
    if (!this.#isCurrent(ticket)) return null;
    if (faults.length > 0) throw faults[0];
    return true;
  }

  /** Stops what runs in a lane; its promise gives null. */
  cancel(lane: string): void {
    this.#take(lane);
  }

  /** Ends the workers. Requests under way are refused. */
  close(): void {
    for (const one of this.#workers) one.close();
  }

  /** The next ticket of a lane. Every worker hears of it, so that none goes on with older work. */
  #take(lane: string): Ticket {
    const ticket = { lane, number: (this.#tickets.get(lane) ?? 0) + 1 };
    this.#tickets.set(lane, ticket.number);
    for (const one of this.#workers) one.tell((api) => api.cancel(ticket));
    return ticket;
  }

  #isCurrent({ lane, number }: Ticket): boolean {
    return this.#tickets.get(lane) === number;
  }
}
