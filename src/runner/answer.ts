import type { Box, Compiled, Scenario } from "../document";
import { compile, movesOf } from "../document";
import { record } from "../model/motion";
import type { Recording } from "../model/motion";
import { band, staticsOf } from "../model/statics";
import type { Statics } from "../model/statics";
import { reachSweep, terminalRise } from "../model/tow";
import type { ReachRow, TerminalRise } from "../model/tow";
import type { Vec } from "../model/base";
import { fromSI, toSI } from "../units";
import { swimSetup } from "./jobs";
import { PARTS } from "./options";
import { plansAnswer } from "./plan-answer";
import type { PlansAnswer } from "./plan-answer";
import type { Part } from "./options";

/**
 * The headless answer, version 1 (docs/scenario-format.md): the same keys and units, numbers not rounded. Keys beyond that
 * page: notes and warnings in words, the other attitudes afloat, what limits a figure.
 */
export interface Answer extends Partial<PlansAnswer> {
  readonly format: "trimwright/answer";
  readonly version: 1;
  readonly scenario: string;
  readonly water?: { readonly density_kg_m3: number; readonly viscosity_Pa_s: number };
  readonly statics?: StaticsAnswer;
  readonly rise?: RiseAnswer;
  readonly reach?: readonly ReachAnswer[];
  /** Null where the scenario has no cadence. */
  readonly run?: RunAnswer | null;
}

/** [station, height], mm. */
type PointMm = readonly [number, number];

export interface StaticsAnswer {
  readonly mass_g: number;
  readonly displaced_ml: number;
  /** Positive floats. */
  readonly netBuoyancy_g: number;
  readonly bodyVolume_ml: number;
  readonly skin_mm2: number;
  readonly G_mm: PointMm;
  readonly B_mm: PointMm;
  readonly BG_mm: number;
  readonly restTrim_deg: number | null;
  readonly otherRestTrims_deg: readonly number[];
  /** Null when it sinks. */
  readonly floating: {
    readonly trim_deg: number;
    readonly draft_mm: number;
    readonly immersedFraction: number;
    readonly GM_mm: number;
    readonly otherTrims_deg: readonly number[];
  } | null;
  /** `filler_g`: how much of the mass closes the hole of a weight; only where there is some. */
  readonly account: readonly {
    item: string;
    mass_g: number;
    displaced_ml: number;
    net_g: number;
    filler_g?: number;
  }[];
  readonly bench: {
    readonly bodyDensity_g_ml: number;
    readonly volumeFactor: number;
    readonly residuals: readonly { kind: string; reading_g: number; model_g: number; residual_g: number }[];
  };
  /** 95 %. */
  readonly band: {
    readonly netBuoyancy_g: readonly [number, number];
    readonly restTrim_deg: readonly [number, number] | null;
    readonly chanceOfSinking: number;
  };
  readonly warnings: readonly { path: string; text: string }[];
  readonly notes: readonly string[];
}

export interface RiseAnswer {
  /** Positive rises. */
  readonly speed_mm_s: number;
  readonly trim_deg: number;
  /** Forward positive. */
  readonly drift_mm_s: number;
  /** Null where it stands still. */
  readonly secondsPer300mm: number | null;
  readonly steady: boolean;
  readonly why: string | null;
}

export interface ReachAnswer {
  readonly speed_m_s: number;
  readonly bibAngle_deg: number | null;
  readonly lineOut_m: number;
  readonly depth_m: number | null;
  readonly trim_deg: number | null;
  readonly tension_N: number | null;
  readonly lineAngle_deg: number | null;
  readonly runs: boolean;
  readonly why: string | null;
  /** All attitudes of steady tow at this speed. */
  readonly attitudes: readonly { trim_deg: number; stable: boolean }[];
}

export interface RunAnswer {
  readonly duration_s: number;
  readonly deepest_m: number;
  readonly endTrim_deg: number;
  readonly time_s: readonly number[];
  readonly depth_m: readonly number[];
  readonly pitch_deg: readonly number[];
  readonly speed_m_s: readonly number[];
  readonly tension_N: readonly number[];
  readonly marks: readonly { time_s: number; label: string }[];
  /** Equal for equal recordings, bit for bit. */
  readonly hash: string;
}

export interface AnswerOptions {
  readonly parts?: readonly Part[];
  /** m/s; null: each different reel speed of the cadence, 1 where there is none. */
  readonly speeds?: readonly number[] | null;
  /** Degrees; null: the file's own. */
  readonly angles?: readonly number[] | null;
  /** What plans are made from; absent: no plans. */
  readonly plan?: { readonly box: Box; readonly places: number };
  /** Hears again and again how far the run has come: the share of it that is done. */
  readonly onRun?: (share: number) => void;
}

export interface Answered {
  readonly answer: Answer;
  /** The recording of the run, where the run was asked for and there is a cadence. */
  readonly recording: Recording | null;
}

/**
 * Answers a checked scenario.
 *
 * @throws RangeError with the key where a figure came out as no finite number
 */
export function answer(scenario: Scenario, options: AnswerOptions = {}): Answered {
  const parts = options.parts ?? PARTS;
  const compiled = compile(scenario);
  const wants = (part: Part) => parts.includes(part);
  const recording =
    wants("run") && compiled.cadence.length > 0 ? record(swimSetup(compiled), options.onRun) : null;
  const whole: Answer = {
    format: "trimwright/answer",
    version: 1,
    scenario: scenario.name,
    ...(wants("water") ? { water: waterAnswer(compiled) } : {}),
    ...(wants("statics") ? { statics: staticsAnswer(compiled) } : {}),
    ...(wants("rise") ? { rise: riseAnswer(compiled) } : {}),
    ...(wants("reach") ? { reach: reachAnswer(scenario, compiled, options) } : {}),
    ...(wants("run") ? { run: recording === null ? null : runAnswer(recording) } : {}),
    ...(wants("plan") && options.plan !== undefined
      ? plansAnswer(scenario, options.plan.box, options.plan.places)
      : {}),
  };
  refuseNonFinite(whole, "");
  return { answer: whole, recording };
}

const mm = (metres: number) => fromSI(metres, "mm");
const grams = (kilograms: number) => fromSI(kilograms, "g");
const millilitres = (cubicMetres: number) => fromSI(cubicMetres, "mL");
const degrees = (radians: number) => fromSI(radians, "deg");
const orNull = <T>(value: T | null, of: (value: T) => number) => (value === null ? null : of(value));
/** Body frame, m → [station, height], mm. */
const pointMm = ({ x, z }: Vec): PointMm => [mm(0 - x), mm(z)];

function waterAnswer({ water }: Compiled) {
  return { density_kg_m3: water.density, viscosity_Pa_s: water.viscosity };
}

function staticsAnswer(compiled: Compiled): StaticsAnswer {
  const s: Statics = staticsOf(compiled.bait, compiled.water.density);
  const { floating, rest } = s;
  const spread = band(compiled.bait, compiled.water.density);
  return {
    mass_g: grams(s.mass),
    displaced_ml: millilitres(s.displaced),
    netBuoyancy_g: grams(s.netBuoyancy),
    bodyVolume_ml: millilitres(s.bodyVolume),
    skin_mm2: fromSI(s.skinArea, "mm2"),
    G_mm: pointMm(s.G),
    B_mm: pointMm(s.B),
    BG_mm: mm(s.BG),
    restTrim_deg: orNull(rest.pitch, degrees),
    otherRestTrims_deg: rest.others.map(degrees),
    floating:
      floating === null
        ? null
        : {
            trim_deg: degrees(floating.pitch),
            draft_mm: mm(floating.draft),
            immersedFraction: floating.immersedFraction,
            GM_mm: mm(floating.GM),
            otherTrims_deg: floating.others.map((one) => degrees(one.pitch)),
          },
    account: s.account.map((row) => ({
      item: row.item,
      mass_g: grams(row.mass),
      displaced_ml: millilitres(row.displaced),
      net_g: grams(row.net),
      ...(row.filler > 0 ? { filler_g: grams(row.filler) } : {}),
    })),
    bench: {
      bodyDensity_g_ml: fromSI(s.bench.bodyDensity, "g_mL"),
      volumeFactor: s.bench.volumeFactor,
      residuals: s.bench.residuals.map((one) => ({
        kind: one.kind,
        reading_g: grams(one.reading),
        model_g: grams(one.model),
        residual_g: grams(one.residual),
      })),
    },
    band: {
      netBuoyancy_g: [grams(spread.netBuoyancy[0]), grams(spread.netBuoyancy[1])],
      restTrim_deg:
        spread.restTrim === null ? null : [degrees(spread.restTrim[0]), degrees(spread.restTrim[1])],
      chanceOfSinking: spread.chanceOfSinking,
    },
    warnings: s.warnings,
    notes: s.notes,
  };
}

function riseAnswer({ bait, around, calibration }: Compiled): RiseAnswer {
  const rise: TerminalRise = terminalRise(bait, around, { bibFactor: calibration.bibFactor });
  return {
    speed_mm_s: fromSI(rise.speed, "mm_s"),
    trim_deg: degrees(rise.pitch),
    drift_mm_s: fromSI(rise.drift, "mm_s"),
    secondsPer300mm: rise.speed === 0 ? null : toSI(300, "mm") / Math.abs(rise.speed),
    steady: rise.steady,
    why: rise.why,
  };
}

function reachAnswer(scenario: Scenario, compiled: Compiled, options: AnswerOptions): ReachAnswer[] {
  const { spec, around, tackle, calibration } = compiled;
  const angles = options.angles ?? null;
  return reachSweep(spec, around, tackle, {
    speeds: options.speeds ?? reelSpeeds(scenario),
    angles: angles === null ? null : angles.map((angle) => toSI(angle, "deg")),
    bibFactor: calibration.bibFactor,
  }).map(reachRow);
}

/** Each different reel speed of the cadence, in its order; 1 m/s where there is none. */
function reelSpeeds(scenario: Scenario): readonly number[] {
  const speeds = movesOf(scenario.cadence).flatMap((move) => (move.do === "reel" ? [move.speed_m_s] : []));
  return speeds.length === 0 ? [1] : [...new Set(speeds)];
}

function reachRow(row: ReachRow): ReachAnswer {
  return {
    speed_m_s: row.speed,
    bibAngle_deg: orNull(row.bibAngle, degrees),
    lineOut_m: row.lineOut,
    depth_m: row.depth,
    trim_deg: orNull(row.pitch, degrees),
    tension_N: row.tension,
    lineAngle_deg: orNull(row.lineAngle, degrees),
    runs: row.runs,
    why: row.why,
    attitudes: row.roots.map((root) => ({ trim_deg: degrees(root.pitch), stable: root.stable })),
  };
}

function runAnswer(recording: Recording): RunAnswer {
  const depth = [...recording.channel("depth")];
  const pitch = [...recording.channel("pitch")].map(degrees);
  return {
    duration_s: recording.duration,
    deepest_m: depth.reduce((deepest, one) => Math.max(deepest, one), -Infinity),
    endTrim_deg: pitch.at(-1) ?? NaN,
    time_s: depth.map((_, frame) => frame / recording.frameRate),
    depth_m: depth,
    pitch_deg: pitch,
    speed_m_s: [...recording.channel("speed")],
    tension_N: [...recording.channel("tension")],
    marks: recording.marks.map(({ time, label }) => ({ time_s: time, label })),
    hash: recording.hash(),
  };
}

/** JSON would write NaN and Infinity as null: so a number that is not finite is reported as a fault, and not as an answer. */
function refuseNonFinite(value: unknown, path: string): void {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new RangeError(
      `${path} came out as ${value}; this is a fault of the program, please report the file`,
    );
  }
  if (typeof value !== "object" || value === null) return;
  for (const [key, one] of Object.entries(value)) {
    refuseNonFinite(one, Array.isArray(value) ? `${path}[${key}]` : path === "" ? key : `${path}.${key}`);
  }
}
