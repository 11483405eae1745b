import { untrack } from "svelte";
import { correctionEntry, freeCorrection, MOMENTS, notYetAt, readingWords, same } from "../../../document";
import type { Moment, Scenario } from "../../../document";
import type { TubAnswer, TubReading } from "../../../runner";
import { fromSI, toSI } from "../../../units";
import { aFlag, aNumber, aText, degrees, groupOf, keptWith, Later, listOf, oneOf, orNull } from "../../state";
import type { App } from "../../state";
import { BOUNCE_MS } from "../parts/press";
import { floatOf } from "./state.svelte";
import type { FloatState } from "./state.svelte";

export type Kind = TubReading["kind"];
/** [station, height], mm. */
export type Mark = readonly [number, number];
/** What of a reading has been taken. */
type Taken =
  | "pitchErrs"
  | "marksErr"
  | "direction"
  | "times"
  | "typed"
  | "startedAt"
  | "pitch"
  | "moving"
  | "marks"
  | "ownWater"
  | "of"
  | "laidBy";

/** What was read of the bait at one moment of its making. */
interface Read {
  readonly of: Moment;
  readonly direction: "rises" | "sinks" | null;
  readonly times: readonly number[];
  readonly pitch: number | null;
  readonly moving: boolean;
  readonly marks: { readonly nose: Mark; readonly tail: Mark } | null;
}

const nothingRead = (of: Moment): Read => ({
  of,
  direction: null,
  times: [],
  pitch: null,
  moving: false,
  marks: null,
});

const aPair = (value: unknown): Mark | undefined => {
  const [a, b, ...more] = listOf(aNumber)(value) ?? [];
  return a === undefined || b === undefined || more.length > 0 ? undefined : [a, b];
};

/** As the file's defaults are (docs/scenario-format.md): degrees of an attitude, mm of a mark. */
const USUAL_ERROR = { pitch: 2, marks: 0.5 } as const;

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
  /** A time that is being typed. */
  typed = $state("");
  /** When the watch was started, ms of the page's clock; null: it stands. */
  started = $state.raw<number | null>(null);
  /** Attitude seen, degrees; null: none read yet. */
  pitch = $state.raw<number | null>(null);
  moving = $state(false);
  /** How far such readings err, one standard deviation: degrees, and mm. */
  pitchErrs = $state<number>(USUAL_ERROR.pitch);
  marksErr = $state<number>(USUAL_ERROR.marks);
  /** Marks of the waterline; null: none read yet. */
  marks = $state.raw<{ readonly nose: Mark; readonly tail: Mark } | null>(null);
  /** The tub's water where it is not the document's. */
  ownWater = $state.raw<{ readonly temperature: number; readonly salinity: number } | null>(null);
  /** The bait that all this was read of. A bait at another moment of its making has readings of its own. */
  of = $state.raw<Moment>("dressed");
  /** Readings of the bait at other moments. */
  laidBy = $state.raw<readonly Read[]>([]);
  readonly answer = new Later<TubAnswer>();

  constructor(app: App) {
    this.app = app;
    this.float = floatOf(app);
    const { beside } = app;
    const mark = aPair;
    const moment = oneOf(...MOMENTS);
    // A reading half taken belongs to the bait that was in the tub, and comes back with it.
    beside.keep<Pick<ReadingState, Taken>>("float/reading", "work", this, {
      direction: orNull(oneOf("rises", "sinks")),
      times: listOf(aNumber),
      typed: aText,
      startedAt: orNull(aNumber),
      pitch: orNull(aNumber),
      pitchErrs: aNumber,
      marksErr: aNumber,
      moving: aFlag,
      marks: orNull(groupOf({ nose: mark, tail: mark })),
      of: moment,
      laidBy: listOf(
        groupOf<Read>({
          of: moment,
          direction: orNull(oneOf("rises", "sinks")),
          times: listOf(aNumber),
          pitch: orNull(aNumber),
          moving: aFlag,
          marks: orNull(groupOf({ nose: mark, tail: mark })),
        }),
      ),
      ownWater: orNull(groupOf({ temperature: aNumber, salinity: aNumber })),
    });
    beside.keep<Pick<ReadingState, "kind" | "height" | "runUp">>("float/reading/way", "place", this, {
      kind: oneOf("timed", "attitude", "waterline"),
      height: aNumber,
      runUp: aNumber,
    });
  }

  /** When the watch was started, ms since 1970: so it goes on through a reload. Null: it stands. */
  get startedAt(): number | null {
    return this.started === null ? null : Math.round(performance.timeOrigin + this.started);
  }
  set startedAt(at: number | null) {
    this.started = at === null ? null : at - performance.timeOrigin;
  }

  readonly water = $derived.by(() => {
    const { temperature_C, salinity_g_kg } = this.app.work.scenario.water;
    return this.ownWater ?? { temperature: temperature_C, salinity: salinity_g_kg };
  });

  /** Which way it went; as calculated until the maker says otherwise. */
  readonly way = $derived.by(
    () => this.direction ?? (this.float.statics.netBuoyancy >= 0 ? "rises" : "sinks"),
  );

  /** Attitude as calculated at rest under water, degrees. */
  readonly pitchReckoned = $derived.by(() => {
    const { pitch } = this.float.statics.rest;
    return pitch === null ? 0 : hundredth(degrees(pitch));
  });

  /** The waterline as calculated: its heights over two stations near the ends, mm; null where it sinks or stands on end. */
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
          : {
              kind: "attitude",
              pitch_deg: this.pitch,
              state: this.moving ? "moving" : "rest",
              ...(this.pitchErrs === USUAL_ERROR.pitch ? {} : { deviation_deg: this.pitchErrs }),
              ...where,
            };
      case "waterline":
        return this.marks === null
          ? null
          : {
              kind: "waterline",
              nose_mm: this.marks.nose,
              tail_mm: this.marks.tail,
              ...(this.marksErr === USUAL_ERROR.marks ? {} : { deviation_mm: this.marksErr }),
              ...where,
            };
    }
  });

  /** Takes up the readings of the bait that is in the tub now, and lays the others by. */
  #turnTo(of: Moment): void {
    if (of === this.of) return;
    const { direction, times, pitch, moving, marks } = this;
    const own: Read = { of: this.of, direction, times, pitch, moving, marks };
    const next = this.laidBy.find((one) => one.of === of) ?? nothingRead(of);
    this.laidBy = [...this.laidBy.filter((one) => one.of !== of && one.of !== own.of), own];
    Object.assign(this, next);
  }

  /** The reading as it stands here is in the account already. */
  readonly taken = $derived.by((): boolean => {
    const { reading } = this;
    if (reading === null) return false;
    const { corrections } = this.app.work.scenario;
    const without = JSON.stringify(reading.without ?? []);
    return corrections.some(
      (one) => one.from === readingWords(reading) && JSON.stringify(one.without ?? []) === without,
    );
  });

  /** Starts the watch, or stops it and keeps the time. `now`: ms of the page's clock. */
  tap(now: number): void {
    if (this.started === null) {
      this.started = now;
      return;
    }
    // A wet finger presses twice: no bait is at its second mark so soon.
    if (now - this.started < BOUNCE_MS) return;
    const seconds = hundredth(toSI(now - this.started, "ms"));
    this.started = null;
    this.times = [...this.times, seconds];
  }

  addTime(seconds: number): void {
    this.times = [...this.times, seconds];
  }

  /** The time that is being typed is meant: why it was not taken; null: it was, or there is none. */
  takeTyped(): string | null {
    if (this.typed.trim() === "") return null;
    const found = this.app.units.read(this.typed, "s", { min: 0, max: 3600, above: true });
    if (!found.ok) return found.text;
    this.addTime(found.value);
    this.typed = "";
    return null;
  }

  dropTime(index: number): void {
    this.times = this.times.filter((_, i) => i !== index);
  }

  /** The reading whose correction was asked for before its answer was there. */
  #awaited: TubReading | null = null;

  /**
   * The correction that the reading asks for goes into the account, and the reading beside it: one step of undo. Where the
   * answer to this reading is still being worked out, it goes in when it comes.
   */
  correct(): boolean {
    const { reading } = this;
    const { value, stale } = this.answer;
    this.#awaited = stale ? reading : null;
    if (reading === null || value === null || stale) return false;
    const { corrections } = this.app.work.scenario;
    const name = freeCorrection("tub", corrections);
    const entry = tidy(correctionEntry({ ...value.tub.correction, name }, readingWords(reading)));
    return this.app.work.edit("corrections", "the tub's correction", (from) => ({
      ...from,
      tub: [...from.tub, reading],
      corrections: [...from.corrections, entry],
    }));
  }

  /** A correction of nothing yet: its numbers are typed. */
  byHand(): void {
    this.app.work.edit("corrections", "a correction by hand", (from) => ({
      ...from,
      corrections: [
        ...from.corrections,
        {
          name: freeCorrection("own", from.corrections),
          mass_g: 0,
          shift_mm: [0, 0],
        },
      ],
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
      const { stage } = this.float;
      untrack(() => this.#turnTo(stage));
    });
    $effect(() => {
      const { stale } = this.answer;
      const { reading } = this;
      untrack(() => {
        if (reading === null || !same(reading, this.#awaited)) this.#awaited = null;
        else if (!stale) this.correct();
      });
    });
    this.answer.follow(
      () => (this.reading === null ? null : { scenario: this.app.work.now.scenario, reading: this.reading }),
      ({ scenario, reading }) => this.float.client.tub(scenario, reading),
    );
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

/** The reading of this page, kept while the page lives. */
export const readingOf = keptWith((app) => new ReadingState(app));
