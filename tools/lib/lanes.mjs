// Stages side by side, and what they print one after the other.

/**
 * Lets many speak at once and one be heard: the first in the order writes at once, what the others say is kept until
 * all before them have ended.
 * @param {readonly string[]} order
 * @param {(text: string) => void} write
 */
export function turns(order, write) {
  let current = 0;
  /** @type {Map<string, string[]>} */
  const kept = new Map(order.map((name) => [name, []]));
  /** @type {Set<string>} */
  const ended = new Set();
  const hear = () => {
    const name = order[current];
    if (name === undefined) return;
    for (const text of kept.get(name)?.splice(0) ?? []) write(text);
    if (!ended.has(name)) return;
    current += 1;
    hear();
  };
  return {
    /** @param {string} name @param {string} text */
    say(name, text) {
      kept.get(name)?.push(text);
      hear();
    },
    /** @param {string} name */
    end(name) {
      ended.add(name);
      hear();
    },
  };
}

/**
 * Runs jobs: those of one lane one after the other, the lanes side by side. Gives the results in the order of the jobs.
 * @template J, R
 * @param {readonly J[]} jobs
 * @param {(job: J) => string} laneOf
 * @param {(job: J) => Promise<R>} work must not reject
 * @returns {Promise<R[]>}
 */
export async function inLanes(jobs, laneOf, work) {
  /** @type {Map<J, R>} */
  const results = new Map();
  const lanes = [...new Set(jobs.map(laneOf))];
  await Promise.all(
    lanes.map(async (lane) => {
      for (const job of jobs.filter((one) => laneOf(one) === lane)) results.set(job, await work(job));
    }),
  );
  return jobs.map((job) => /** @type {R} */ (results.get(job)));
}
