import { compile, pathSteps, valueAt } from "../document";
import type { Compiled, Scenario } from "../document";
import { cos, sin } from "../model/base";
import { createEvaluator, cylinderDrag, joined, plateAt, prepareSwimmer } from "../model/forces";
import { band, staticsOf, submergedLever } from "../model/statics";
import type { Statics } from "../model/statics";
import { prepareTow, reach, terminalRise } from "../model/tow";
import type { ReachRow, TerminalRise } from "../model/tow";
import { fromSI, toSI } from "../units";
import { calculate } from "./formula";
import type { Values } from "./formula";
import type { Lesson } from "./schema";

/** One variant with what the model says of it; slow parts are worked out when a figure first asks for them. */
class Subject {
  readonly compiled: Compiled;
  readonly statics: Statics;
  #rise: TerminalRise | null = null;
  #tow: ReachRow | null = null;
  #half: number | null = null;

  constructor(
    readonly scenario: Scenario,
    readonly speed: number | null,
  ) {
    this.compiled = compile(scenario);
    this.statics = staticsOf(this.compiled.bait, this.compiled.around.density);
  }

  get rise(): TerminalRise {
    const { bait, around, calibration } = this.compiled;
    this.#rise ??= terminalRise(bait, around, { bibFactor: calibration.bibFactor });
    if (!this.#rise.steady)
      throw new RangeError(`It comes to no steady rise: ${this.#rise.why ?? "no reason known"}.`);
    return this.#rise;
  }

  get towSpeed(): number {
    if (this.speed === null) throw new RangeError('Figures of "tow" need a run of the kind "cast".');
    return this.speed;
  }

  get tow(): ReachRow {
    const { bait, around, tackle, calibration } = this.compiled;
    this.#tow ??= reach(prepareTow(bait, calibration.bibFactor), around, tackle, { speed: this.towSpeed });
    if (!this.#tow.runs) throw new RangeError(`It does not run: ${this.#tow.why ?? "no reason known"}.`);
    return this.#tow;
  }

  /** Half of the 95 % band of the net buoyancy, kg. */
  get half(): number {
    if (this.#half === null) {
      const [low, high] = band(this.compiled.bait, this.compiled.around.density).netBuoyancy;
      this.#half = (high - low) / 2;
    }
    return this.#half;
  }
}

/** The bib in a steady tow: its force across the plate (N), and its moment about the tie eye (N·m, nose-up positive) with its lever (m). */
function bibOf({ compiled, tow, towSpeed: U }: Subject): { force: number; lever: number; moment: number } {
  const { bait, around, calibration } = compiled;
  const swimmer = prepareSwimmer(bait, { bibFactor: calibration.bibFactor });
  const { blade, tie } = swimmer;
  if (blade === null) throw new RangeError("This bait has no bib.");
  const pitch = needed(tow.pitch);
  const state = { u: U * cos(pitch), w: -U * sin(pitch), q: 0, pitch, X: 0, Z: 0 };
  const evaluator = createEvaluator(swimmer, { ...around, surface: false, current: { x: 0, z: 0 } }, ["bib"]);
  evaluator.evaluate(state);
  const felt = evaluator.parts.get("bib");
  if (felt === undefined) throw new Error("The evaluator has no bib.");
  const { along: t, normal: n, tip, chord, plate, area, added } = blade;
  const vt = state.u * t.x + state.w * t.z;
  const vn = state.u * n.x + state.w * n.z;
  const speed = Math.sqrt(vt * vt + vn * vn);
  const out = { cn: 0, xcp: 0 };
  plateAt(plate, Math.abs(vn) / speed, vt / speed, out);
  const force = 0.5 * around.density * area * joined(out.cn, plate.broadside) * calibration.bibFactor * U * U;
  // From the eye to the centre of pressure, along the plate: the lever of a force square to it.
  const back = out.xcp * chord;
  const lever = Math.abs((tip.x - back * t.x - tie.x) * t.x + (tip.z - back * t.z - tie.z) * t.z);
  // In a steady tow the term of the bib's added mass cancels (docs/model.md §11): it is no part of the bib's own moment.
  const own = felt.m - around.density * added * vn * vt;
  return { force, lever, moment: own - tie.x * felt.z + tie.z * felt.x };
}

const needed = (value: number | null): number => {
  if (value === null) throw new RangeError("This figure does not exist for this bait.");
  return value;
};
const afloat = ({ statics: { floating } }: Subject) => {
  if (floating === null) throw new RangeError("This bait does not float.");
  return floating;
};
const mm = (value: number): number => fromSI(value, "mm");
const grams = (value: number): number => fromSI(value, "g");
const deg = (value: number): number => fromSI(value, "deg");

/** A heel for which levers are told, as the name of the figure says. */
const HEEL = toSI(30, "deg");

/** Figures by their name. Those of the headless answer have the same names and units there (docs/scenario-format.md). */
const FIGURES: Readonly<Record<string, (of: Subject) => number>> = {
  "water.density_g_ml": ({ compiled }) => fromSI(compiled.water.density, "g_mL"),
  "statics.mass_g": ({ statics }) => grams(statics.mass),
  "statics.displaced_ml": ({ statics }) => fromSI(statics.displaced, "mL"),
  "statics.netBuoyancy_g": ({ statics }) => grams(statics.netBuoyancy),
  "statics.bodyVolume_ml": ({ statics }) => fromSI(statics.bodyVolume, "mL"),
  "statics.bodyDensity_g_ml": ({ statics }) => fromSI(statics.bench.bodyDensity, "g_mL"),
  "statics.skin_cm2": ({ statics }) => fromSI(statics.skinArea, "cm2"),
  "statics.G_mm[0]": ({ statics }) => mm(-statics.G.x),
  "statics.G_mm[1]": ({ statics }) => mm(statics.G.z),
  "statics.B_mm[0]": ({ statics }) => mm(-statics.B.x),
  "statics.B_mm[1]": ({ statics }) => mm(statics.B.z),
  "statics.BG_mm": ({ statics }) => mm(statics.BG),
  "statics.restTrim_deg": ({ statics }) => deg(needed(statics.rest.pitch)),
  "statics.rightingLever30_mm": ({ statics }) => mm(submergedLever(statics.BG, HEEL)),
  "statics.floating.immersed_percent": (one) => fromSI(afloat(one).immersedFraction, "percent"),
  "statics.floating.trim_deg": (one) => deg(afloat(one).pitch),
  "statics.floating.GM_mm": (one) => mm(afloat(one).GM),
  "statics.band.half_g": ({ half }) => grams(half),
  "rise.speed_mm_s": ({ rise }) => fromSI(rise.speed, "mm_s"),
  "rise.trim_deg": ({ rise }) => deg(rise.pitch),
  "tow.depth_m": ({ tow }) => needed(tow.depth),
  "tow.trim_deg": ({ tow }) => deg(needed(tow.pitch)),
  "tow.tension_N": ({ tow }) => needed(tow.tension),
  "tow.lineAngle_deg": ({ tow }) => deg(needed(tow.lineAngle)),
  "tow.speed_m_s": ({ towSpeed }) => towSpeed,
  "tow.bib.force_N": (one) => bibOf(one).force,
  "tow.bib.lever_mm": (one) => mm(bibOf(one).lever),
  // N·m to N·mm is the step from m to mm.
  "tow.bib.moment_Nmm": (one) => mm(bibOf(one).moment),
  "line.drag_mN_per_m": ({ compiled, towSpeed: U }) => {
    // ½ρ C d U² on a metre of line square to the flow (docs/model.md §7).
    const { diameter: d } = compiled.tackle.line;
    const { density, viscosity } = compiled.water;
    return fromSI(0.5 * density * cylinderDrag((U * d * density) / viscosity) * d * U * U, "mN");
  },
  "shape.length_mm": ({ compiled }) => mm(compiled.bait.shape.length),
  "shape.breadth_mm": ({ scenario }) => 2 * Math.max(...scenario.bait.halfBreadth.map(([, v]) => v)),
  "shape.height_mm": ({ scenario: { bait } }) =>
    Math.max(...bait.top.map(([, v]) => v)) - Math.min(...bait.bottom.map(([, v]) => v)),
};

/** A row of the account, or a group of rows: "account.belly.net_g". */
const ROW = /^account\.(.+)\.(mass_g|displaced_ml|net_g)$/;
/** A number of the scenario as it stands there: "file.water.temperature_C". */
const FILE = /^file\.(.+)$/;

const FIGURE_NAMES: readonly string[] = Object.keys(FIGURES);

/** What is wrong with a figure's name, in words; null: nothing. Whether a row or a place exists shows when it is asked for. */
export function figureTrouble(is: string): string | null {
  if (Object.hasOwn(FIGURES, is) || ROW.test(is) || FILE.test(is)) return null;
  return `no figure has this name; there are ${FIGURE_NAMES.join(", ")}, account.NAME.net_g (mass_g, displaced_ml) and file.PATH`;
}

function figureOf(one: Subject, is: string): number {
  const known = Object.hasOwn(FIGURES, is) ? FIGURES[is] : undefined;
  if (known !== undefined) return known(one);
  const [, item = "", of = ""] = ROW.exec(is) ?? [];
  if (item !== "") {
    const rows = one.statics.account.filter((row) => row.item === item || row.group === item);
    if (rows.length === 0) throw new RangeError(`The account has no row "${item}".`);
    return rows.reduce(
      (sum, { mass, displaced, net }) =>
        sum + (of === "mass_g" ? grams(mass) : of === "net_g" ? grams(net) : fromSI(displaced, "mL")),
      0,
    );
  }
  const [, path = ""] = FILE.exec(is) ?? [];
  const value = valueAt(one.scenario, pathSteps(path));
  if (typeof value !== "number") throw new RangeError(`The scenario has no number at "${path}".`);
  return value;
}

/** What a lesson comes to with the numbers of one student. */
export interface Outcome {
  /** The student's numbers and the figures, by name. */
  readonly values: Values;
  /** What is predicted: the number that decides. */
  readonly happens: number;
  /** The exercise by hand, and by the model. */
  readonly hand: number;
  readonly model: number;
}

/**
 * Works out every figure of a lesson.
 *
 * @param scenarios the lesson's variants, from `variantsOf`
 * @throws RangeError where a figure does not exist for this bait, in words
 */
export function outcomeOf(lesson: Lesson, scenarios: readonly Scenario[], draws: Values): Outcome {
  const { run } = lesson;
  const subjects = scenarios.map((one) => new Subject(one, run.kind === "cast" ? run.speed_m_s : null));
  const values: Record<string, number> = { ...draws };
  for (const { name, is, of = "A" } of lesson.figures) {
    const subject = subjects["ABC".indexOf(of)];
    if (subject === undefined) throw new RangeError(`Figure "${name}": there is no variant ${of}.`);
    try {
      values[name] = figureOf(subject, is);
    } catch (fault) {
      if (fault instanceof RangeError)
        throw new RangeError(`Figure "${name}" (${is}): ${fault.message}`, { cause: fault });
      throw fault;
    }
  }
  return {
    values,
    happens: calculate(lesson.prediction.of, values),
    hand: calculate(lesson.exercise.hand, values),
    model: calculate(lesson.exercise.model, values),
  };
}

/** How far an answer to an exercise may be off, in its unit. */
export function toleranceOf({ tolerance, share = 0 }: Lesson["exercise"], answer: number): number {
  return Math.max(tolerance, share * Math.abs(answer));
}

/** Hand and model agree within the exercise's tolerance. */
export const outcomeAgrees = ({ exercise }: Lesson, { hand, model }: Outcome): boolean =>
  Math.abs(hand - model) <= toleranceOf(exercise, model);

/** An answer counts as right near the hand formula's result or near the model's. */
export function answersRight(
  exercise: Lesson["exercise"],
  { hand, model }: Outcome,
  answer: number,
): boolean {
  return [hand, model].some((one) => Math.abs(answer - one) <= toleranceOf(exercise, one) * (1 + 1e-9));
}

/** Which option happens: its index; −1 where no range holds the value. */
export function optionOf(
  prediction: Extract<Lesson["prediction"], { kind: "choose" }>,
  happens: number,
): number {
  return prediction.options.findIndex(
    ({ from = -Infinity, to = Infinity }) => happens >= from && happens < to,
  );
}

/** Whether a prediction came true. An option is its index. */
export function cameTrue(prediction: Lesson["prediction"], happens: number, predicted: number): boolean {
  return prediction.kind === "choose"
    ? predicted === optionOf(prediction, happens)
    : Math.abs(predicted - happens) <= prediction.near * (1 + 1e-9);
}
