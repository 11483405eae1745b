import { toSI } from "../units";
import { wrap } from "comlink";
import type { Endpoint, Remote } from "comlink";
import { whenGone } from "./life";
import type { WorkerApi } from "./protocol";

/** Something that is talked to like a worker. */
export interface WorkerLike extends Endpoint {
  terminate(): void;
}

export function startWorker(): WorkerLike {
  return new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "model" });
}

/**
 * A worker that says nothing for this long while something is asked of it counts as ended, ms. The longest work in one
 * piece is a search for ballast plans: some 15 s on a developer's machine, a minute on a slow phone.
 */
const PATIENCE_MS = 180_000;
/** The wait is divided into this many checks: if the machine slept meanwhile, that counts as one of them, not all. */
const LOOKS = 6;

let started = 0;

/**
 * The page's connection to one worker. It starts the worker when something is asked, and starts another where it has ended.
 * What was asked of a worker that ends is refused with the reason, whether or not the worker gave one.
 */
export class Connection {
  #worker: WorkerLike | null = null;
  #remote: Remote<WorkerApi> | null = null;
  readonly #waiting = new Set<(fault: Error) => void>();
  readonly #start: () => WorkerLike;
  readonly #patience: number;
  #looks: ReturnType<typeof setInterval> | undefined;
  #silent = 0;
  #stopWaiting: () => void = () => undefined;

  constructor(start: () => WorkerLike, patience = PATIENCE_MS) {
    this.#start = start;
    this.#patience = patience;
  }

  /** Requests under way. */
  get load(): number {
    return this.#waiting.size;
  }

  async ask<T>(request: (api: Remote<WorkerApi>) => Promise<T>): Promise<T> {
    const api = this.#connect();
    let refuse: (fault: Error) => void = () => undefined;
    const ended = new Promise<never>((_, reject) => (refuse = reject));
    this.#waiting.add(refuse);
    this.#watch();
    try {
      return await Promise.race([request(api), ended]);
    } finally {
      this.#waiting.delete(refuse);
      this.heard();
      if (this.load === 0) this.#rest();
    }
  }

  /** Tells a worker that is at work something that needs no answer. */
  tell(message: (api: Remote<WorkerApi>) => Promise<unknown>): void {
    if (this.#remote !== null && this.load > 0) message(this.#remote).catch(() => undefined);
  }

  /** The worker has given a sign of life. */
  heard(): void {
    this.#silent = 0;
  }

  /** Ends the worker. What is under way is refused. */
  close(): void {
    this.#drop("The worker that calculates was closed.");
  }

  #connect(): Remote<WorkerApi> {
    if (this.#remote !== null) return this.#remote;
    let worker: WorkerLike;
    try {
      worker = this.#start();
    } catch (fault) {
      const why = fault instanceof Error ? fault.message : String(fault);
      throw new Error(`The worker that calculates could not be started: ${why}`, { cause: fault });
    }
    let lives = false;
    worker.addEventListener("error", (event) => {
      if (worker !== this.#worker) return;
      const why = (event as ErrorEvent).message;
      if (why) this.#drop(`The worker that calculates stopped: ${why}`);
      else if (lives) this.#drop("The worker that calculates stopped without a reason.");
      else
        this.#drop(
          "The worker that calculates could not be started. Reload the page; save the document before.",
        );
    });
    worker.addEventListener("messageerror", () => {
      if (worker === this.#worker) this.#drop("An answer of the worker that calculates could not be read.");
    });
    this.#worker = worker;
    this.#remote = wrap<WorkerApi>(worker);
    const name = `trimwright/worker/${String(Date.now())}/${String(started++)}`;
    this.#remote
      .begin(name)
      .then((held) => {
        lives = true;
        if (!held || worker !== this.#worker) return;
        this.#stopWaiting = whenGone(name, () => {
          if (worker === this.#worker) this.#drop("The worker that calculates ended without a reason.");
        });
      })
      .catch(() => undefined);
    return this.#remote;
  }

  /** While something is asked of it, the worker is watched. */
  #watch(): void {
    if (this.#looks !== undefined) return;
    this.#silent = 0;
    this.#looks = setInterval(() => {
      this.#silent += 1;
      if (this.#silent > LOOKS)
        this.#drop(
          `The worker that calculates has not answered for ${toSI(this.#patience, "ms").toFixed(0)} s, and was ended.`,
        );
      else this.tell((api) => api.here().then(() => this.heard()));
    }, this.#patience / LOOKS);
  }

  #rest(): void {
    clearInterval(this.#looks);
    this.#looks = undefined;
  }

  #drop(why: string): void {
    this.#rest();
    this.#stopWaiting();
    this.#stopWaiting = () => undefined;
    this.#worker?.terminate();
    this.#worker = null;
    this.#remote = null;
    for (const refuse of this.#waiting) refuse(new Error(why));
    this.#waiting.clear();
  }
}
