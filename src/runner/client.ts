import { proxy } from "comlink";
import type { Moment, Scenario } from "../document";
import type { Lesson, Outcome, Values } from "../lesson";
import type { ResolvedTarget, RiseBand, SensitivityRow } from "../model/bench";
import type { PlanResult } from "../model/plan";
import type { Band, BandOptions } from "../model/statics";
import type { Calibration, TerminalRise } from "../model/tow";
import { Broker } from "./broker";
import { startWorker } from "./connection";
import type { WorkerLike } from "./connection";
import type { Righting, SwapAnswer, SwapJob, TubAnswer, TubReading } from "./float";
import type { LimitQuery, RunJob, RunSink } from "./protocol";
import { cellCount } from "./reach-map";
import type { MeasuredDepth, ReachCell, ReachLimit, ReachMapJob } from "./reach-map";
import type { PlanJob } from "./weigh";

/** Cells in one piece of a map with one variable or none. */
const PIECE = 5;

interface ClientOptions {
  readonly start?: () => WorkerLike;
  /** Workers that share the requests; one, unless said otherwise. */
  readonly workers?: number;
  /** Silence after which a worker counts as ended, ms. */
  readonly patience?: number;
}

/**
 * The page asks for the model's slow work here. In one lane a newer request cancels the older one, whose promise then gives
 * null. Documents must be plain data, not state proxies. A fault of the model rejects with its message. A worker that has
 * ended rejects too, and the next request starts another.
 */
export class ModelClient {
  readonly #broker: Broker;

  constructor({ start = startWorker, workers = 1, patience }: ClientOptions = {}) {
    this.#broker = new Broker(start, workers, patience);
  }

  /** A run in chunks; true when all have arrived, null where it was cancelled. */
  run(job: RunJob, sink: RunSink, lane = "run"): Promise<true | null> {
    return this.#broker.ask(lane, (api, ticket, current) =>
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
    return this.#broker.ask(lane, (api, ticket) => api.rise(ticket, scenario));
  }

  /** The band of the statics by seeded Monte Carlo. */
  band(scenario: Scenario, options: BandOptions = {}, lane = "band"): Promise<Band | null> {
    return this.#broker.ask(lane, (api, ticket) => api.band(ticket, scenario, options));
  }

  /**
   * A map of steady tows: all its cells in the order of their index. `heard` gets each row (or short piece of a curve) as
   * it comes, with the count of cells so far and in all.
   */
  async map(
    job: ReachMapJob,
    lane: string,
    heard: (cells: readonly ReachCell[], done: number, of: number) => void = () => undefined,
  ): Promise<readonly ReachCell[] | null> {
    const of = cellCount(job.vary);
    const size = job.vary[1]?.values.length ?? PIECE;
    const cells: ReachCell[] = [];
    const whole = await this.#broker.pieces(
      lane,
      Math.ceil(of / size),
      (api, ticket, i) => api.reachCells(ticket, job, i * size, Math.min(of, (i + 1) * size)),
      (piece) => {
        cells.push(...piece);
        heard(piece, cells.length, of);
      },
    );
    return whole === null ? null : cells.sort((a, b) => a.index - b.index);
  }

  /** Where along one variable the bait stops running. */
  limits(
    job: ReachMapJob,
    queries: readonly LimitQuery[],
    lane: string,
  ): Promise<readonly ReachLimit[] | null> {
    return this.#broker.ask(lane, (api, ticket) => api.reachLimits(ticket, job, queries));
  }

  /** The interference factor of the bib that gives a measured depth. */
  calibrate(scenario: Scenario, measured: MeasuredDepth, lane = "calibrate"): Promise<Calibration | null> {
    return this.#broker.ask(lane, (api, ticket) => api.calibrate(ticket, scenario, measured));
  }

  /** Trimming moments over a whole turn, at a moment of making. */
  righting(scenario: Scenario, at: Moment, lane = "righting"): Promise<Righting | null> {
    return this.#broker.ask(lane, (api, ticket) => api.righting(ticket, scenario, at));
  }

  /** What a reading in the tub says of the account. */
  tub(scenario: Scenario, reading: TubReading, lane = "tub"): Promise<TubAnswer | null> {
    return this.#broker.ask(lane, (api, ticket) => api.tub(ticket, scenario, reading));
  }

  /** Swaps that bring the bait to a goal in another water. */
  swaps(job: SwapJob, lane = "swaps"): Promise<SwapAnswer | null> {
    return this.#broker.ask(lane, (api, ticket) => api.swaps(ticket, job));
  }

  /** What the words of the document's target come to; null also where it has no target. */
  target(scenario: Scenario, lane = "target"): Promise<ResolvedTarget | null> {
    return this.#broker.ask(lane, (api, ticket) => api.target(ticket, scenario));
  }

  /** Ballast plans for the document's target. */
  plan(job: PlanJob, lane = "plan"): Promise<PlanResult | null> {
    return this.#broker.ask(lane, (api, ticket) => api.plan(ticket, job));
  }

  /** What small changes do; `hooks`: masses of the hooks in the box, kg. */
  effects(
    scenario: Scenario,
    hooks: readonly number[],
    lane = "effects",
  ): Promise<readonly SensitivityRow[] | null> {
    return this.#broker.ask(lane, (api, ticket) => api.effects(ticket, scenario, hooks));
  }

  /** The band of the steady rise, and what brings it about. */
  riseBand(scenario: Scenario, lane = "rise band"): Promise<RiseBand | null> {
    return this.#broker.ask(lane, (api, ticket) => api.riseBand(ticket, scenario));
  }

  /** What a lesson comes to with the numbers of one student. */
  lesson(
    lesson: Lesson,
    scenarios: readonly Scenario[],
    draws: Values,
    lane = "lesson",
  ): Promise<Outcome | null> {
    return this.#broker.ask(lane, (api, ticket) => api.lesson(ticket, lesson, scenarios, draws));
  }

  /** Stops what runs in a lane; its promise gives null. */
  cancel(lane: string): void {
    this.#broker.cancel(lane);
  }

  /** Ends the workers. What is under way rejects. */
  close(): void {
    this.#broker.close();
  }
}
