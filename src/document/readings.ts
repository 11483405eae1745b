import type { Scenario } from "./schema";

/** A reading in the tub in a few words, as the file keeps it beside its correction. */
export function readingWords(reading: Scenario["tub"][number]): string {
  switch (reading.kind) {
    case "timed": {
      const { times_s: times, direction, height_mm } = reading;
      const mean = times.reduce((sum, one) => sum + one, 0) / times.length;
      return `${direction} ${String(height_mm)} mm in ${mean.toFixed(2)} s (${String(times.length)} timed)`;
    }
    case "attitude":
      return `seen at ${reading.pitch_deg.toFixed(1)}° ${reading.state === "rest" ? "at rest" : "moving"}`;
    case "waterline": {
      const place = ([station, height]: readonly [number, number]): string =>
        `${station.toFixed(1)}/${height.toFixed(1)}`;
      return `waterline through ${place(reading.nose_mm)} and ${place(reading.tail_mm)} mm`;
    }
  }
}

/** The name of the next correction by the tub or by hand, with the next number where it is taken. */
export function freeCorrection(kind: "tub" | "own", taken: Scenario["corrections"]): string {
  for (let n = 1; ; n++) {
    const name = `${kind} correction${n === 1 ? "" : ` ${String(n)}`}`;
    if (!taken.some((one) => one.name === name)) return name;
  }
}
