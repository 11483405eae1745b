import { assemble } from "../model/bait";
import type { Bait, BaitSpec, BenchReading, UncertaintySpec } from "../model/bait";
import { square } from "../model/base";
import type { Surroundings } from "../model/forces";
import type { LineSpec, Tackle } from "../model/line";
import { lineMaterial, lineStiffness } from "../model/materials";
import type { Move } from "../model/motion";
import type { Knot, Shape, ShapeSpec } from "../model/shape";
import { water as waterAt } from "../model/water";
import { movesDone } from "./cadence";
import { compileParts } from "./parts";
import type { Scenario, ScenarioBait } from "./schema";
import { grams, mm, place, stuff } from "./si";

/** A scenario in SI and in the body frame: everything the model needs, and nothing of the file's form. */
export interface Compiled {
  readonly spec: BaitSpec;
  readonly bait: Bait;
  readonly around: Surroundings;
  readonly tackle: Tackle;
  readonly cadence: readonly Move[];
  readonly water: {
    /** g/kg and °C, as given. */
    readonly salinity: number;
    readonly temperature: number;
    /** kg/m³ and Pa·s. */
    readonly density: number;
    readonly viscosity: number;
  };
  readonly calibration: { readonly bibFactor: number };
}

/** Standard acceleration of free fall, m/s² (3rd General Conference on Weights and Measures, 1901). */
const GRAVITY = 9.80665;
/** Default standard uncertainties (docs/model.md §3). */
export const UNCERTAINTY: UncertaintySpec = {
  wood: 0.1,
  metal: 0.01,
  plastic: 0.02,
  coatThickness: 0.2,
  hook: 0.25,
  drawnLength: 0.2e-3,
};

/** What a bait is made of in the document, and what its shape. */
const OF_BAIT = ["name", "bait", "bench", "corrections", "uncertainty"] as const;
const OF_SHAPE = ["length_mm", "top", "bottom", "halfBreadth", "widest", "roundover"] as const;
type OfBait = Pick<Scenario, (typeof OF_BAIT)[number]>;
type OfShape = Pick<ScenarioBait, (typeof OF_SHAPE)[number]>;

/** A document that is compiled already. */
export interface Before {
  readonly scenario: Scenario;
  readonly compiled: Compiled;
}

/** What need not be made anew. */
export interface Made {
  readonly bait?: Bait;
  readonly drawn?: Shape;
}

/**
 * What an edit has left as it was, of what was compiled before it: a branch that is still the same object says the same. So a
 * turn of the reel's speed need not assemble the bait, nor a turn of its density integrate its shape.
 */
export function leftAlone(scenario: Scenario, { scenario: from, compiled: { bait } }: Before): Made {
  if (OF_BAIT.every((key) => scenario[key] === from[key])) return { bait };
  if (OF_SHAPE.every((key) => scenario.bait[key] === from.bait[key])) return { drawn: bait.drawn };
  return {};
}

/**
 * Compiles a scenario; `made`: what there is of it already. Throws the model's own BaitError or ShapeError (with the place in
 * the bait) where the model refuses it; `checkScenario` turns those into problems.
 */
export function compile(scenario: Scenario, made: Made = {}): Compiled {
  const bait = made.bait ?? assemble(baitSpec(scenario), made);
  const { spec } = bait;
  const { salinity_g_kg: salinity, temperature_C: temperature, depth_m, current_m_s } = scenario.water;
  const { density, viscosity } = waterAt(salinity, temperature);
  return {
    spec,
    bait,
    around: {
      density,
      viscosity,
      gravity: GRAVITY,
      current: { x: current_m_s ?? 0, z: 0 },
      surface: true,
      depth: depth_m,
    },
    tackle: {
      line: lineSpec(scenario.tackle.line),
      lineOut: scenario.tackle.lineOut_m,
      rodTip: scenario.tackle.rodTip_m,
    },
    cadence: movesDone(scenario),
    water: { salinity, temperature, density, viscosity },
    calibration: { bibFactor: scenario.calibration?.bibFactor ?? 1 },
  };
}

/** The bait of a scenario in SI, not yet assembled: sweeps change it and assemble it anew. */
export function baitSpec(scenario: OfBait): BaitSpec {
  const { bait, uncertainty } = scenario;
  const { drawnLength_mm, ...relative } = uncertainty ?? {};
  return {
    name: scenario.name,
    shape: shapeSpec(bait),
    body: stuff(bait.body, "wood", "body"),
    tie: place(bait.tie_mm),
    ...compileParts(bait),
    bench: scenario.bench.map((one): BenchReading => ({
      kind: one.kind,
      reading: grams(one.reading_g),
      resolution: grams(one.resolution_g),
      tapTemperature: one.kind === "displacement" ? one.tap_C : null,
      with: one.with,
      air: one.air ?? false,
      ...(one.before === undefined ? {} : { before: one.before }),
      ...(one.kind === "displacement" && one.pusher !== undefined
        ? {
            pusher:
              one.pusher.count * (Math.PI / 4) * square(mm(one.pusher.diameter_mm)) * mm(one.pusher.depth_mm),
          }
        : {}),
    })),
    corrections: scenario.corrections.map((one) => ({
      name: one.name,
      mass: grams(one.mass_g),
      shift: { x: 0 - mm(one.shift_mm[0]), z: mm(one.shift_mm[1]) },
      deviation: {
        mass: one.netDeviation_g === undefined ? null : grams(one.netDeviation_g),
        x: one.aftDeviation_mm === undefined ? null : mm(one.aftDeviation_mm),
        z: one.upDeviation_mm === undefined ? null : mm(one.upDeviation_mm),
      },
      without: one.without ?? [],
    })),
    uncertainty: {
      ...UNCERTAINTY,
      ...relative,
      ...(drawnLength_mm === undefined ? {} : { drawnLength: mm(drawnLength_mm) }),
      given: (["wood", "metal", "plastic"] as const).filter((kind) => relative[kind] !== undefined),
    },
  };
}

function shapeSpec(bait: OfShape): ShapeSpec {
  const length = mm(bait.length_mm);
  const heights = (points: readonly (readonly [number, number])[]): Knot[] =>
    points.map(([s, v]) => ({ s: mm(s), v: mm(v) }));
  const exponents = (points: readonly (readonly [number, number])[] | undefined): Knot[] =>
    // Absent: ellipses.
    points?.map(([s, v]) => ({ s: mm(s), v })) ?? [
      { s: 0, v: 2 },
      { s: length, v: 2 },
    ];
  return {
    length,
    top: heights(bait.top),
    bottom: heights(bait.bottom),
    halfBreadth: heights(bait.halfBreadth),
    ...(bait.widest === undefined ? {} : { widest: heights(bait.widest) }),
    exponentAbove: exponents(bait.roundover?.above),
    exponentBelow: exponents(bait.roundover?.below),
  };
}

function lineSpec(line: Scenario["tackle"]["line"]): LineSpec {
  const known = lineMaterial(line.material);
  const diameter = mm(line.diameter_mm);
  const density = line.density_kg_m3 ?? known?.density;
  const EA = line.stiffness_N ?? (known === null ? undefined : lineStiffness(known, diameter));
  if (density === undefined || EA === undefined) {
    throw new Error(
      `line "${line.material}": no density or stiffness; check the scenario before compiling it`,
    );
  }
  return { material: line.material, diameter, density, EA };
}
