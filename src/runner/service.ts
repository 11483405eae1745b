import { releaseProxy, transfer } from "comlink";
import { compile } from "../document";
import { assemble } from "../model/bait";
import { startRun } from "../model/motion";
import type { RecordingChunk } from "../model/motion";
import { band } from "../model/statics";
import { prepareTow, reach, terminalRise, withBibAngle } from "../model/tow";
import type { ReachRow } from "../model/tow";
import { readTub, righting, swapsFor } from "./float";
import { swimSetup, tubSetup } from "./jobs";
import type { Ticket, WorkerApi } from "./protocol";
import { calibrateBy, reachLimit, ReachMapper } from "./reach-map";
import type { ReachCell, ReachLimit } from "./reach-map";
import { effectsOf, planFor, riseBandOf } from "./weigh";
import { baitAt } from "./stage";

/** Work is cut into pieces of about this many ms, so that a newer request is heard between them. */
const PIECE = 12;
/** Frames advanced at a time: a tenth of a second. */
const FRAMES = 6;

/** The worker's side: every door of the model that is too slow for the page. */
export function createService(): WorkerApi {
  const lanes = new Map<string, number>();
  /** Takes the lane, and gives a check that waits for newer requests where a piece of work is over. */
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

  return {
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

    async rise(ticket, scenario) {
      const goOn = enter(ticket);
      await nextTask();
      if (!(await goOn())) return null;
      const compiled = compile(scenario);
      return terminalRise(compiled.bait, compiled.around, { bibFactor: compiled.calibration.bibFactor });
    },

    async reach(ticket, job, row) {
      const goOn = enter(ticket);
      try {
        await nextTask();
        const { spec, bait, around, tackle, calibration } = compile(job.scenario);
        const angles = spec.bib === null ? null : job.angles;
        const of = (angles?.length ?? 1) * job.speeds.length;
        const rows: ReachRow[] = [];
        const told = new Told();
        for (const angle of angles ?? [null]) {
          if (!(await goOn())) return null;
          const tilted = angle === null ? bait : assemble(withBibAngle(spec, angle));
          const tow = prepareTow(tilted, calibration.bibFactor);
          for (const speed of job.speeds) {
            if (!(await goOn())) return null;
            const next = reach(tow, around, tackle, { speed });
            rows.push(next);
            told.of(row(next, rows.length, of));
          }
        }
        await told.all();
        return rows;
      } finally {
        release(row);
      }
    },

    async band(ticket, scenario, options) {
      const goOn = enter(ticket);
      await nextTask();
      if (!(await goOn())) return null;
      const { bait, water } = compile(scenario);
      return band(bait, water.density, options);
    },

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

    async calibrate(ticket, scenario, measured) {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? calibrateBy(scenario, measured) : null;
    },

    async righting(ticket, scenario, stage) {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? righting(scenario, stage) : null;
    },

    async tub(ticket, scenario, reading) {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? readTub(scenario, reading) : null;
    },

    async swaps(ticket, job) {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? swapsFor(job) : null;
    },

    async plan(ticket, job) {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? planFor(job) : null;
    },

    async effects(ticket, scenario, hooks) {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? effectsOf(scenario, hooks) : null;
    },

    async riseBand(ticket, scenario) {
      const goOn = enter(ticket);
      await nextTask();
      return (await goOn()) ? riseBandOf(scenario) : null;
    },

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

/** A callback that came through comlink is let go, so that its channel closes. */
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
