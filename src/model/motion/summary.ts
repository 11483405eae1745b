import type { Recorded, RunEvent } from "./events";

/** A value and the time when it occurred. */
export interface Extreme {
  readonly value: number;
  /** s */
  readonly time: number;
  /** Of the tie eye, m. */
  readonly x: number;
}

/** The figures of a run. m, s, rad, m/s, N; null where the run has no such thing. */
export interface RunSummary {
  /** Greatest depth of the tie eye. */
  readonly deepest: Extreme | null;
  /** From the start to nine tenths of the greatest depth, s. */
  readonly toDepth: number | null;
  /** Of the bait while it runs on the line: means over the time it does. */
  readonly running: {
    readonly seconds: number;
    readonly depth: number;
    readonly pitch: number;
    readonly speed: number;
    readonly tension: number;
  } | null;
  /**
   * In the second half of the pauses: means over their time. `rise` is up positive; `top` is the depth of the highest
   * point, negative where the bait breaks the surface.
   */
  readonly pause: {
    readonly seconds: number;
    readonly pitch: number;
    readonly rise: number;
    readonly top: number;
  } | null;
  readonly pull: Extreme | null;
  /** Seconds in the strike zone, and of all that is recorded; null without a zone. */
  readonly zone: { readonly seconds: number; readonly of: number } | null;
}

/** The greatest depth counts as reached at this share of it. Common practice, no source. */
export const AT_DEPTH = 0.9;
/**
 * A pause shorter than this tells nothing about rest, s. Of longer ones the second half counts. Common practice, no source.
 */
const LEAST_PAUSE = 0.5;

function greatest(values: Float64Array, x: Float64Array, rate: number): Extreme | null {
  let best = -1;
  for (let i = 0; i < values.length; i++)
    if (best < 0 || (values[i] ?? NaN) > (values[best] ?? NaN)) best = i;
  return best < 0 ? null : { value: values[best] ?? NaN, time: best / rate, x: x[best] ?? NaN };
}

/** Sums channels over stretches of frames. */
class Means {
  frames = 0;
  private readonly sums = new Map<string, number>();

  add(
    run: Recorded,
    names: readonly ("depth" | "pitch" | "speed" | "tension" | "rise" | "top")[],
    from: number,
    to: number,
  ): void {
    this.frames += to - from;
    for (const name of names) {
      const values = run.channel(name);
      let sum = 0;
      for (let i = from; i < to; i++) sum += values[i] ?? NaN;
      this.sums.set(name, (this.sums.get(name) ?? 0) + sum);
    }
  }

  of(name: string): number {
    return (this.sums.get(name) ?? NaN) / this.frames;
  }
}

/**
 * The figures of a run as far as it is recorded.
 * @param events of the same recording
 * @param zone depths of the strike zone, m, the upper one first
 */
export function summaryOf(
  run: Recorded,
  events: readonly RunEvent[],
  zone: { readonly from: number; readonly to: number } | null,
): RunSummary {
  const { frameRate, legs } = run.meta;
  const depth = run.channel("depth");
  const x = run.channel("x");
  const frames = depth.length;
  const deepest = greatest(depth, x, frameRate);
  const wet = deepest !== null && deepest.value > 0;
  const reached = wet ? depth.findIndex((d) => d >= AT_DEPTH * deepest.value) : -1;

  const running = new Means();
  for (const one of events)
    if (one.kind === "runs")
      running.add(
        run,
        ["depth", "pitch", "speed", "tension"],
        Math.round(one.time * frameRate),
        Math.round(one.end * frameRate) + 1,
      );
  const pauses = new Means();
  for (const { move, start, end } of legs) {
    if (move.do !== "pause" || end - start < LEAST_PAUSE || end * frameRate > frames) continue;
    pauses.add(
      run,
      ["pitch", "rise", "top"],
      Math.ceil(((start + end) / 2) * frameRate),
      Math.floor(end * frameRate),
    );
  }
  let inside = 0;
  if (zone !== null) for (const d of depth) if (d >= zone.from && d <= zone.to) inside++;

  return {
    deepest: wet ? deepest : null,
    toDepth: reached < 0 ? null : reached / frameRate,
    running:
      running.frames === 0
        ? null
        : {
            seconds: running.frames / frameRate,
            depth: running.of("depth"),
            pitch: running.of("pitch"),
            speed: running.of("speed"),
            tension: running.of("tension"),
          },
    pause:
      pauses.frames === 0
        ? null
        : {
            seconds: pauses.frames / frameRate,
            pitch: pauses.of("pitch"),
            rise: pauses.of("rise"),
            top: pauses.of("top"),
          },
    pull: greatest(run.channel("tension"), x, frameRate),
    zone: zone === null ? null : { seconds: inside / frameRate, of: frames / frameRate },
  };
}
