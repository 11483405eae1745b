import { untrack } from "svelte";
import { correctionEntry } from "../../../document";
import type { Scenario } from "../../../document";
import { notYetAt } from "../../../runner";
import type { TubAnswer, TubReading } from "../../../runner";
import { fromSI } from "../../../units";
import { degrees, keptWith, Later } from "../../state";
import type { App } from "../../state";
import { floatOf } from "./state.svelte";
import type { FloatState } from "./state.svelte";

export type Kind = TubReading["kind"];
/** [station, height], mm. */
export type Mark = readonly [number, number];

const REST_MS = 350;

/** A file's number has no more digits than the hand has. */
const hundredth = (value: number): number => Number(value.toFixed(2));

/** One reading in the tub while it is taken, what it says, and the corrections that came of such readings. */
export class ReadingState {
  readonly app: App;
  readonly float: FloatState;
  kind = $state.raw<Kind>("timed");
  direction = $state.raw<"rises" | "sinks" | null>(null);
  height = $state(300);
  runUp = $state(150);
  times = $state.raw<readonly number[]>([]);
  /** When the watch was started, ms of the page's clock; null: it stands. */
  started = $state.raw<number | null>(null);
  /** Attitude seen, degrees; null: none read yet. */
  pitch = $state.raw<number | null>(null);
  moving = $state(false);
  /** Marks of the waterline; null: none read yet. */
  marks = $state.raw<{ readonly nose: Mark; readonly tail: Mark } | null>(null);
  /** The tub's water where it is not the document's. */
  ownWater = $state.raw<{ readonly temperature: number; readonly salinity: number } | null>(null);
  readonly answer = new Later<TubAnswer>();
  #lineage: number;

  constructor(app: App) {
    this.app = app;
    this.float = floatOf(app);
    this.#lineage = app.work.lineage;
  }

  /** A reading half taken belongs to the bait that was in the tub: with another document it begins anew. */
  #open(lineage: number): void {
    if (lineage === this.#lineage) return;
    this.#lineage = lineage;
    this.direction = null;
    this.times = [];
    this.started = null;
    this.pitch = null;
    this.marks = null;
    this.ownWater = null;
  }

  readonly water = $derived.by(() => {
    const { temperature_C, salinity_g_kg } = this.app.work.scenario.water;
    return this.ownWater ?? { temperature: temperature_C, salinity: salinity_g_kg };
  });

  /** Which way it went; as reckoned until the maker says otherwise. */
  readonly way = $derived.by(
    () => this.direction ?? (this.float.statics.netBuoyancy >= 0 ? "rises" : "sinks"),
  );

  /** Attitude as reckoned at rest under water, degrees. */
  readonly pitchReckoned = $derived.by(() => {
    const { pitch } = this.float.statics.rest;
    return pitch === null ? 0 : hundredth(degrees(pitch));
  });

  /** The waterline as reckoned: its heights over two stations near the ends, mm; null where it sinks or stands on end. */
  readonly marksReckoned = $derived.by((): { readonly nose: Mark; readonly tail: Mark } | null => {
    const { floating } = this.float.statics;
    if (floating === null || floating.surface.cos < 0.25) return null;
    const { sin, cos, level } = floating.surface;
    const length = this.float.bait.shape.length;
    // x sin θ + z cos θ = level with x = −s
    const at = (share: number): Mark => {
      const s = share * length;
      return [hundredth(fromSI(s, "mm")), hundredth(fromSI((level + s * sin) / cos, "mm"))];
    };
    return { nose: at(0.1), tail: at(0.85) };
  });

  /** The reading as the document would hold it; null while there is none. */
  readonly reading = $derived.by((): TubReading | null => {
    const { scenario, compiled } = this.app.work.now;
    const without = notYetAt(scenario, compiled.bait, this.float.stage);
    const { temperature, salinity } = this.water;
    const where = {
      ...(without.length === 0 ? {} : { without }),
      temperature_C: temperature,
      salinity_g_kg: salinity,
    };
    switch (this.kind) {
      case "timed":
        return this.times.length === 0
          ? null
          : {
              kind: "timed",
              direction: this.way,
              height_mm: this.height,
              runUp_mm: this.runUp,
              times_s: this.times,
              ...where,
            };
      case "attitude":
        return this.pitch === null
          ? null
          : { kind: "attitude", pitch_deg: this.pitch, state: this.moving ? "moving" : "rest", ...where };
      case "waterline":
        return this.marks === null
          ? null
          : { kind: "waterline", nose_mm: this.marks.nose, tail_mm: this.marks.tail, ...where };
    }
  });

  /** Starts the watch, or stops it and keeps the time. `now`: ms of the page's clock. */
  tap(now: number): void {
    if (this.started === null) {
      this.started = now;
      return;
    }
    const seconds = hundredth((now - this.started) / 1000);
    this.started = null;
    if (seconds > 0) this.times = [...this.times, seconds];
  }

  addTime(seconds: number): void {
    this.times = [...this.times, seconds];
  }

  dropTime(index: number): void {
    this.times = this.times.filter((_, i) => i !== index);
  }

  /** The correction that the reading asks for goes into the account, and the reading beside it: one step of undo. */
  correct(): boolean {
    const { reading } = this;
    const { value, stale } = this.answer;
    if (reading === null || value === null || stale) return false;
    const { corrections } = this.app.work.scenario;
    const name = freeName(corrections.map((one) => one.name));
    const entry = tidy(correctionEntry({ ...value.tub.correction, name }, said(reading)));
    return this.app.work.edit("corrections", "the tub's correction", (from) => ({
      ...from,
      tub: [...from.tub, reading],
      corrections: [...from.corrections, entry],
    }));
  }

  /** Takes a correction out of the account again; its reading stays in the file. */
  remove(index: number): void {
    this.app.work.edit("corrections", "taking a correction out", (from) => ({
      ...from,
      corrections: from.corrections.filter((_, i) => i !== index),
    }));
  }

  /** Follows the document for the life of the component that calls it. */
  follow(): void {
    $effect.pre(() => {
      const { lineage } = this.app.work;
      untrack(() => this.#open(lineage));
    });
    $effect(() => {
      const { scenario } = this.app.work.now;
      const { reading } = this;
      if (reading === null) {
        this.answer.clear();
        return;
      }
      this.answer.stale = true;
      const timer = setTimeout(
        () => void this.answer.ask(() => this.float.client.tub(scenario, reading)),
        REST_MS,
      );
      return () => clearTimeout(timer);
    });
  }
}

type Correction = Scenario["corrections"][number];

/** Ten-thousandths of a gram and of a millimetre: finer than any reading, and no tails in the file. */
function tidy(entry: Correction): Correction {
  const fine = (value: number): number => Number(value.toFixed(4)) + 0;
  const { mass_g, shift_mm, netDeviation_g: net, aftDeviation_mm: aft, upDeviation_mm: up } = entry;
  return {
    ...entry,
    mass_g: fine(mass_g),
    shift_mm: [fine(shift_mm[0]), fine(shift_mm[1])],
    ...(net === undefined ? {} : { netDeviation_g: Number(net.toPrecision(3)) }),
    ...(aft === undefined ? {} : { aftDeviation_mm: Number(aft.toPrecision(3)) }),
    ...(up === undefined ? {} : { upDeviation_mm: Number(up.toPrecision(3)) }),
  };
}

/** "tub correction", or with the next number where that is taken. */
export function freeName(taken: readonly string[]): string {
  const stem = "tub correction";
  for (let n = 1; ; n++) {
    const name = n === 1 ? stem : `${stem} ${String(n)}`;
    if (!taken.includes(name)) return name;
  }
}

/** A reading in a few words, as the file keeps it beside its correction. */
export function said(reading: Scenario["tub"][number]): string {
  switch (reading.kind) {
    case "timed": {
      const { times_s: times, direction, height_mm } = reading;
      const mean = times.reduce((sum, one) => sum + one, 0) / times.length;
      return `${direction} ${String(height_mm)} mm in ${mean.toFixed(2)} s (${String(times.length)} timed)`;
    }
    case "attitude":
      return `seen at ${reading.pitch_deg.toFixed(1)}° ${reading.state === "rest" ? "at rest" : "moving"}`;
    case "waterline": {
      const place = ([station, height]: Mark): string => `${station.toFixed(1)}/${height.toFixed(1)}`;
      return `waterline through ${place(reading.nose_mm)} and ${place(reading.tail_mm)} mm`;
    }
  }
}

/** The reading of this page, kept while the page lives. */
export const readingOf = keptWith((app) => new ReadingState(app));
