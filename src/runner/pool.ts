import type { Scenario } from "../document";
import type { Calibration } from "../model/tow";
import { ModelClient } from "./client";
import type { LimitQuery } from "./protocol";
import { cellCount } from "./reach-map";
import type { MeasuredDepth, ReachCell, ReachLimit, ReachMapJob } from "./reach-map";

/** Two: what nearly every machine has; a phone's small cores gain nothing from more. */
const WORKERS = 2;
/** Cells of a piece where a map has one variable or none. */
const PIECE = 5;

/**
 * Maps of steady tows on several workers. A map is handed out in rows (or short pieces of a curve), each to the worker that is
 * free first. As with the client, a newer map in a lane cancels the older, whose promise gives null.
 */
export class ReachPool {
  readonly #clients: readonly ModelClient[];
  readonly #latest = new Map<string, number>();
  #turn = 0;

  constructor(clients: readonly ModelClient[] = Array.from({ length: WORKERS }, () => new ModelClient())) {
    if (clients.length === 0) throw new Error("A pool needs at least one worker.");
    this.#clients = clients;
  }

  /** All cells in the order of their index; `heard` gets each piece as it comes, with the count so far and in all. */
  async map(
    job: ReachMapJob,
    lane: string,
    heard: (cells: readonly ReachCell[], done: number, of: number) => void = () => undefined,
  ): Promise<readonly ReachCell[] | null> {
    const number = this.#take(lane);
    const of = cellCount(job.vary);
    const [, inner] = job.vary;
    const size = inner === undefined ? PIECE : inner.values.length;
    const cells: ReachCell[] = [];
    let next = 0;
    let fault: unknown = null;
    const work = async (client: ModelClient): Promise<void> => {
      while (next < of && fault === null && this.#latest.get(lane) === number) {
        const from = next;
        next = Math.min(of, from + size);
        const piece = await client.reachCells(job, from, next, lane);
        if (piece === null || this.#latest.get(lane) !== number) return;
        cells.push(...piece);
        heard(piece, cells.length, of);
      }
    };
    await Promise.all(
      this.#clients.map((client) =>
        work(client).catch((why: unknown) => {
          fault ??= why;
        }),
      ),
    );
    if (this.#latest.get(lane) !== number) return null;
    if (fault !== null) throw fault instanceof Error ? fault : new Error("A worker failed without a reason.");
    return cells.sort((a, b) => a.index - b.index);
  }

  /** Where a bait stops running, see `ModelClient.reachLimits`. */
  limits(
    job: ReachMapJob,
    queries: readonly LimitQuery[],
    lane: string,
  ): Promise<readonly ReachLimit[] | null> {
    return this.#one(lane, (client) => client.reachLimits(job, queries, lane));
  }

  calibrate(scenario: Scenario, measured: MeasuredDepth, lane: string): Promise<Calibration | null> {
    return this.#one(lane, (client) => client.calibrate(scenario, measured, lane));
  }

  /** Stops what runs in a lane; its promise gives null. */
  cancel(lane: string): void {
    this.#take(lane);
    for (const client of this.#clients) client.cancel(lane);
  }

  close(): void {
    for (const client of this.#clients) client.close();
  }

  #take(lane: string): number {
    const number = (this.#latest.get(lane) ?? 0) + 1;
    this.#latest.set(lane, number);
    return number;
  }

  /** Asks the workers in turn. */
  async #one<T>(lane: string, ask: (client: ModelClient) => Promise<T | null>): Promise<T | null> {
    const number = this.#take(lane);
    const client = this.#clients[this.#turn++ % this.#clients.length];
    if (client === undefined) throw new Error("A pool has at least one worker.");
    const answer = await ask(client);
    return this.#latest.get(lane) === number ? answer : null;
  }
}
