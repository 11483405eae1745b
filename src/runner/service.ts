import { releaseProxy, transfer } from "comlink";
import { baitAt, compile } from "../document";
import { outcomeOf } from "../lesson";
import { startRun } from "../model/motion";
import type { RecordingChunk } from "../model/motion";
import { band } from "../model/statics";
import { terminalRise } from "../model/tow";
import { readTub, righting, swapsFor } from "./float";
import { swimSetup, tubSetup } from "./jobs";
import { holdForLife } from "./life";
import type { Ticket, WorkerApi } from "./protocol";
import type { ReachCell, ReachLimit } from "./reach-map";
import { calibrateBy, reachLimit, ReachMapper } from "./reach-mapper";
import { effectsOf, planFor, resolvedTarget, riseBandOf } from "./weigh";

/** Work is cut into pieces of about this many ms, so that a newer request is heard between them. */
const PIECE = 12;
/** Frames advanced at a time: a tenth of a second. */
const FRAMES = 6;

/** The worker's side: every function of the model that is too slow for the page. */
export function createService(): WorkerApi {
  const lanes = new Map<string, number>();
  /** Takes the lane, and returns a check to call after each piece of work: it waits until newer requests are heard. */
  const enter = ({ lane, number }: Ticket) => {
    lanes.set(lane, Math.max(number, lanes.get(lane) ?? 0));
    const current = () => lanes.get(lane) === number;
    let since = performance.now();
    return async (): Promise<boolean> => {
      if (performance.now() - since >= PIECE) {
        await nextTask();
        since = performance.now();
      }
      return current();
    };
  };

  /** Work in one piece: it starts unless a newer request has come meanwhile. */
  const whole =
    <A extends readonly unknown[], T>(work: (...from: A) => T) =>
    async (ticket: Ticket, ...from: A): Promise<T | null> => {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? work(...from) : null;
    };

  return {
    begin: holdForLife,
    here: () => Promise.resolve(true),

    async run(ticket, job, meta, chunk) {
      const goOn = enter(ticket);
      try {
        await nextTask();
        if (!(await goOn())) return null;
        const compiled = compile(job.scenario);
        const run = startRun(
          job.kind === "swim"
            ? swimSetup(compiled)
            : tubSetup(compiled, job.tub, baitAt(job.scenario, compiled.bait, job.tub.stage ?? "dressed")),
        );
        const told = new Told();
        told.of(meta(run.meta));
        // What comes after frames that are there already hangs on them: the run has to go through them.
        for (let left = job.known ?? 0; left > 0 && !run.done;) {
          left -= run.advance(Math.min(FRAMES, left)).frames;
          if (!(await goOn())) return null;
        }
        while (!run.done) {
          told.of(chunk(movable(run.advance(FRAMES))));
          if (!(await goOn())) return null;
        }
        await told.all();
        return true;
      } finally {
        release(meta);
        release(chunk);
      }
    },

    rise: whole((scenario) => {
      const { bait, around, calibration } = compile(scenario);
      return terminalRise(bait, around, { bibFactor: calibration.bibFactor });
    }),

    band: whole((scenario, options) => {
      const { bait, water } = compile(scenario);
      return band(bait, water.density, options);
    }),

    async reachCells(ticket, job, from, to) {
      const goOn = enter(ticket);
      await nextTask();
      const mapper = new ReachMapper(job);
      const cells: ReachCell[] = [];
      for (let i = from; i < to; i++) {
        if (!(await goOn())) return null;
        cells.push(mapper.cell(i));
      }
      return cells;
    },

    async reachLimits(ticket, job, queries) {
      const goOn = enter(ticket);
      await nextTask();
      const mapper = new ReachMapper(job);
      const limits: ReachLimit[] = [];
      for (const { variable, runs, fails } of queries) {
        if (!(await goOn())) return null;
        limits.push(reachLimit(mapper, variable, runs, fails));
      }
      return limits;
    },

    calibrate: whole(calibrateBy),
    righting: whole(righting),
    tub: whole(readTub),
    swaps: whole(swapsFor),
    target: whole(resolvedTarget),
    plan: whole(planFor),
    effects: whole(effectsOf),
    riseBand: whole(riseBandOf),
    lesson: whole(outcomeOf),

    cancel({ lane, number }) {
      lanes.set(lane, Math.max(number, lanes.get(lane) ?? 0));
      return Promise.resolve();
    },
  };
}

/** What the page has been told. Answers of one callback come in order: the last says that all were heard. */
class Told {
  private last: Promise<void> = Promise.resolve();
  private fault: Error | null = null;

  of(answer: unknown): void {
    this.last = Promise.resolve(answer).then(
      () => undefined,
      (fault: unknown) => {
        this.fault ??= fault instanceof Error ? fault : new Error(String(fault));
      },
    );
  }

  /** Waits until all was heard; throws what the page threw on hearing. */
  async all(): Promise<void> {
    await this.last;
    if (this.fault !== null) throw this.fault;
  }
}

/** A chunk is moved to the page, not copied; where nothing separates the two (tests), it is passed on. */
function movable(chunk: RecordingChunk): RecordingChunk {
  return transfer(chunk, [chunk.data.buffer]);
}

/** A callback that came through comlink is released, so that its channel closes. */
function release(callback: object): void {
  const close = (callback as { [releaseProxy]?: () => void })[releaseProxy];
  if (typeof close === "function") close();
}

/** Waits until messages that have arrived are heard. (A timer of 0 would wait 4 ms in browsers.) */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
