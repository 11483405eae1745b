import { proxy, wrap } from "comlink";
import type { Endpoint, Remote } from "comlink";
import type { Scenario, Stage } from "../document";
import type { RiseBand, SensitivityRow } from "../model/bench";
import type { Band, BandOptions, PlanResult } from "../model/statics";
import type { Calibration, ReachRow, TerminalRise } from "../model/tow";
import type { Righting, SwapAnswer, SwapJob, TubAnswer, TubReading } from "./float";
import type { LimitQuery, ReachJob, RunJob, RunSink, Ticket, WorkerApi } from "./protocol";
import type { MeasuredDepth, ReachCell, ReachLimit, ReachMapJob } from "./reach-map";
import type { PlanJob } from "./weigh";

/** Something that is talked to like a worker. */
export interface WorkerLike extends Endpoint {
  terminate(): void;
}

function startWorker(): WorkerLike {
  return new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "model" });
}

/**
 * The page's door to the model's slow work. In one lane a newer request cancels the older, whose promise then
 * gives null; nothing of it arrives after that. Documents must be plain data (no state proxies). A fault
 * of the model rejects with its message; a worker that died is replaced at the next request.
 */
export class ModelClient {
  private worker: WorkerLike | null = null;
  private remote: Remote<WorkerApi> | null = null;
  private readonly tickets = new Map<string, number>();
  private readonly waiting = new Set<(fault: Error) => void>();

  constructor(private readonly start: () => WorkerLike = startWorker) {}

  /** A run in chunks; true when all have arrived, null where it was cancelled. */
  run(job: RunJob, sink: RunSink, lane = "run"): Promise<true | null> {
    const ticket = this.take(lane);
    const current = () => this.isCurrent(ticket);
    return this.ask(ticket, (api) =>
      api.run(
        ticket,
        job,
        proxy((meta) => {
          if (current()) sink.meta(meta);
        }),
        proxy((chunk) => {
          if (current()) sink.chunk(chunk);
        }),
      ),
    );
  }

  /** Terminal rise or sink of a release in still water. */
  rise(scenario: Scenario, lane = "rise"): Promise<TerminalRise | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.rise(ticket, scenario));
  }

  /** A sweep of steady tows; `row` hears each as it comes, with the count so far and in all. */
  reach(
    job: ReachJob,
    row: (row: ReachRow, done: number, of: number) => void = () => undefined,
    lane = "reach",
  ): Promise<readonly ReachRow[] | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) =>
      api.reach(
        ticket,
        job,
        proxy((next, done, of) => {
          if (this.isCurrent(ticket)) row(next, done, of);
        }),
      ),
    );
  }

  /** The band of the statics by seeded Monte Carlo. */
  band(scenario: Scenario, options: BandOptions = {}, lane = "band"): Promise<Band | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.band(ticket, scenario, options));
  }

  /** Some cells of a map of steady tows, `from` included, `to` excluded. */
  reachCells(
    job: ReachMapJob,
    from: number,
    to: number,
    lane = "cells",
  ): Promise<readonly ReachCell[] | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.reachCells(ticket, job, from, to));
  }

  /** Where along one variable the bait stops running. */
  reachLimits(
    job: ReachMapJob,
    queries: readonly LimitQuery[],
    lane = "limits",
  ): Promise<readonly ReachLimit[] | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.reachLimits(ticket, job, queries));
  }

  /** The interference factor of the bib that gives a measured depth. */
  calibrate(scenario: Scenario, measured: MeasuredDepth, lane = "calibrate"): Promise<Calibration | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.calibrate(ticket, scenario, measured));
  }

  /** Trimming moments over a whole turn, at a stage of making. */
  righting(scenario: Scenario, stage: Stage, lane = "righting"): Promise<Righting | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.righting(ticket, scenario, stage));
  }

  /** What a reading in the tub says of the account. */
  tub(scenario: Scenario, reading: TubReading, lane = "tub"): Promise<TubAnswer | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.tub(ticket, scenario, reading));
  }

  /** Swaps that bring the bait to a goal in another water. */
  swaps(job: SwapJob, lane = "swaps"): Promise<SwapAnswer | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.swaps(ticket, job));
  }

  /** Ballast plans for the document's target. */
  plan(job: PlanJob, lane = "plan"): Promise<PlanResult | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.plan(ticket, job));
  }

  /** What small changes do; `hooks`: masses of the hooks in the box, kg. */
  effects(
    scenario: Scenario,
    hooks: readonly number[],
    lane = "effects",
  ): Promise<readonly SensitivityRow[] | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.effects(ticket, scenario, hooks));
  }

  /** The band of the steady rise, and what brings it about. */
  riseBand(scenario: Scenario, lane = "rise band"): Promise<RiseBand | null> {
    const ticket = this.take(lane);
    return this.ask(ticket, (api) => api.riseBand(ticket, scenario));
  }

  /** Stops what runs in a lane; its promise gives null. */
  cancel(lane: string): void {
    const ticket = this.take(lane);
    if (this.remote !== null) void this.remote.cancel(ticket).catch(() => undefined);
  }

  /** Ends the worker. What is under way rejects. */
  close(): void {
    this.drop(new Error("the model's worker was closed"));
  }

  private take(lane: string): Ticket {
    const number = (this.tickets.get(lane) ?? 0) + 1;
    this.tickets.set(lane, number);
    return { lane, number };
  }

  private isCurrent({ lane, number }: Ticket): boolean {
    return this.tickets.get(lane) === number;
  }

  private async ask<T>(
    ticket: Ticket,
    request: (api: Remote<WorkerApi>) => Promise<T | null>,
  ): Promise<T | null> {
    const api = this.connect();
    let reject: (fault: Error) => void = () => undefined;
    const died = new Promise<never>((_, refuse) => (reject = refuse));
    this.waiting.add(reject);
    try {
      const answer = await Promise.race([request(api), died]);
      return this.isCurrent(ticket) ? answer : null;
    } catch (fault) {
      // What fails after a newer request no longer matters to anybody.
      if (!this.isCurrent(ticket)) return null;
      throw fault;
    } finally {
      this.waiting.delete(reject);
    }
  }

  private connect(): Remote<WorkerApi> {
    if (this.remote !== null) return this.remote;
    const worker = this.start();
    worker.addEventListener("error", (event) => {
      const why = (event as ErrorEvent).message;
      this.drop(new Error(`the model's worker stopped${why ? `: ${why}` : "; reload the page"}`));
    });
    this.worker = worker;
    this.remote = wrap<WorkerApi>(worker);
    return this.remote;
  }

  private drop(fault: Error): void {
    this.worker?.terminate();
    this.worker = null;
    this.remote = null;
    for (const reject of this.waiting) reject(fault);
    this.waiting.clear();
  }
}
