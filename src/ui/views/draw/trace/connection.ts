/** A worker that finds and fits an outline. It is ended when it has answered, or when its answer is no longer wanted. */
export const startTracer = (): Worker =>
  new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "trace" });
