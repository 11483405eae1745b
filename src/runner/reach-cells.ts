import type { Compiled, Scenario } from "../document";
import { BaitError } from "../model/bait";
import { ShapeError } from "../model/shape";
import { beat, prepareTow, reachFrom, towAttitude } from "../model/tow";
import type { TowAttitude, TowBait } from "../model/tow";
import { BIB_SPREAD, cellCount, LINE_SPREAD, MUNK_BAND } from "./reach-map";
import type { DepthBands, ReachCell, ReachMapJob } from "./reach-map";
import { changesBait, tackleWith, withVariable } from "./vary";
import type { ReachVariable } from "./vary";

interface Made {
  readonly compiled: Compiled;
  readonly tow: TowBait;
  /** Prepared for the ends of the bands at their first use: bib low and high, k_M low and high. */
  readonly ends: Map<string, TowBait>;
  readonly attitudes: Map<string, TowAttitude>;
}

/**
 * Works out the cells of a map one by one. What several cells share (the bait, its attitudes at a speed) is made once.
 */
export class ReachCells {
  readonly #job: ReachMapJob;
  readonly #compile: (scenario: Scenario) => Compiled;
  #last: { readonly key: string; readonly made: Made | string } | null = null;

  constructor(job: ReachMapJob, compile: (scenario: Scenario) => Compiled) {
    this.#job = job;
    this.#compile = compile;
    if (job.vary.length > 2) throw new RangeError(`A map has at most two variables, not ${job.vary.length}.`);
  }

  get count(): number {
    return cellCount(this.#job.vary);
  }

  /** @throws RangeError for an index outside the map */
  cell(index: number): ReachCell {
    const { vary, speed: usual } = this.#job;
    if (!(index >= 0 && index < this.count))
      throw new RangeError(`Cell ${index} of a map of ${this.count}: there is none.`);
    let rest = index;
    const at = [...vary].reverse().map(({ variable, values }) => {
      const i = rest % values.length;
      rest = (rest - i) / values.length;
      return { variable, value: values[i] ?? NaN };
    });
    return this.at(at, usual, index);
  }

  /** The cell with these values. */
  at(
    values: readonly { readonly variable: ReachVariable; readonly value: number }[],
    usual = this.#job.speed,
    index = 0,
  ): ReachCell {
    const speed = values.find(({ variable }) => variable === "speed")?.value ?? usual;
    const made = this.#make(values.filter(({ variable }) => changesBait(variable)));
    if (typeof made === "string") {
      const nothing = { depth: null, pitch: null, tension: null, lineAngle: null, bands: null, whole: null };
      return { index, built: false, runs: false, why: made, ...nothing };
    }
    const tackle = values.reduce(
      (sofar, { variable, value }) => tackleWith(sofar, variable, value),
      made.compiled.tackle,
    );
    const { around, bait } = made.compiled;
    const attitude = (tow: TowBait, key: string): TowAttitude => {
      const name = `${key} ${speed}`;
      const known = made.attitudes.get(name) ?? towAttitude(tow, around, speed);
      made.attitudes.set(name, known);
      return known;
    };
    const base = attitude(made.tow, "");
    const row = reachFrom(made.tow, base, around, tackle);
    const { depth, pitch, tension, lineAngle, runs, why } = row;

    const end = (key: string, factor: number, munkShare?: number): number | null => {
      const tow =
        made.ends.get(key) ?? prepareTow(bait, factor, munkShare === undefined ? {} : { munkShare });
      made.ends.set(key, tow);
      return reachFrom(tow, attitude(tow, key), around, tackle).depth;
    };
    const lined = (lineDrag: number): number | null =>
      reachFrom(made.tow, base, around, tackle, { lineDrag }).depth;
    const factor = made.compiled.calibration.bibFactor;
    const measured = this.#job.scenario.calibration !== undefined;
    const bands = (): DepthBands => ({
      bib:
        bait.spec.bib === null || measured
          ? null
          : [end("bib low", factor * (1 - BIB_SPREAD)), end("bib high", factor * (1 + BIB_SPREAD))],
      munk: [end("munk low", factor, MUNK_BAND[0]), end("munk high", factor, MUNK_BAND[1])],
      // More drag on the line lifts the bait: the greater drag is the low end of the depth.
      line: [lined(1 + LINE_SPREAD), lined(1 - LINE_SPREAD)],
    });
    return {
      index,
      built: true,
      runs,
      why,
      depth,
      pitch,
      tension,
      lineAngle,
      bands: this.#job.bands ? bands() : null,
      whole: this.#job.whole ? { row, beat: pitch === null ? null : beat(bait, speed, pitch) } : null,
    };
  }

  #make(values: readonly { readonly variable: ReachVariable; readonly value: number }[]): Made | string {
    const key = values.map(({ variable, value }) => `${variable} ${value}`).join(", ");
    if (this.#last?.key === key) return this.#last.made;
    const scenario = values.reduce(
      (sofar, { variable, value }) => withVariable(sofar, variable, value),
      this.#job.scenario,
    );
    let made: Made | string;
    try {
      const compiled = this.#compile(scenario);
      const tow = prepareTow(compiled.bait, compiled.calibration.bibFactor);
      made = { compiled, tow, ends: new Map(), attitudes: new Map() };
    } catch (fault) {
      if (!(fault instanceof BaitError || fault instanceof ShapeError)) throw fault;
      made = fault.message;
    }
    this.#last = { key, made };
    return made;
  }
}

/**
 * The one steady tow of a document as it stands, on the page's own thread: of a bait that is assembled already it takes
 * a millisecond or two, less than the way to a worker and back.
 */
export function towHere(scenario: Scenario, compiled: Compiled, speed: number): ReachCell {
  return new ReachCells({ scenario, speed, vary: [], bands: false, whole: true }, () => compiled).cell(0);
}
