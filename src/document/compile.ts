import { assemble } from "../model/bait";
import type {
  Bait,
  BaitSpec,
  BenchReading,
  ChamberSpec,
  CoatSpec,
  MaterialClass,
  Stuff,
  UncertaintySpec,
} from "../model/bait";
import type { Vec } from "../model/base";
import type { Surroundings } from "../model/forces";
import type { LineSpec, Tackle } from "../model/line";
import { lineMaterial, lineStiffness, material } from "../model/materials";
import type { Move } from "../model/motion";
import type { Knot, ShapeSpec } from "../model/shape";
import { water as waterAt } from "../model/water";
import type { Scenario, ScenarioBait, ScenarioMove } from "./schema";

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
/** kg/m³: carbon steel hooks and stainless steel rings unless a density is given (docs/model.md §3). */
const HOOK_STEEL = 7820;
const RING_STEEL = 8000;
/** Default standard uncertainties (docs/model.md §3). */
const UNCERTAINTY: UncertaintySpec = {
  wood: 0.1,
  metal: 0.01,
  plastic: 0.02,
  coatThickness: 0.2,
  hook: 0.25,
  drawnLength: 0.2e-3,
};

const mm = (value: number) => value / 1000;
const grams = (value: number) => value / 1000;
const millilitres = (value: number) => value / 1e6;
const gramsPerMillilitre = (value: number) => value * 1000;
const degrees = (value: number) => (value * Math.PI) / 180;

/** [station, height] in mm → body frame in m: x forward, so x = −station. */
const place = ([station, height]: readonly [number, number]): Vec => ({ x: 0 - mm(station), z: mm(height) });

/**
 * Compiles a scenario. Throws the model's own BaitError or ShapeError (with the place in the bait) where the
 * model refuses it; `checkScenario` turns those into problems.
 */
export function compile(scenario: Scenario): Compiled {
  const spec = baitSpec(scenario);
  const bait = assemble(spec);
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
    cadence: scenario.cadence.map(moveOf),
    water: { salinity, temperature, density, viscosity },
    calibration: { bibFactor: scenario.calibration?.bibFactor ?? 1 },
  };
}

/** The bait of a scenario in SI, not yet assembled: sweeps change it and assemble it anew. */
export function baitSpec(scenario: Scenario): BaitSpec {
  const { bait, uncertainty } = scenario;
  const { drawnLength_mm, ...relative } = uncertainty ?? {};
  return {
    name: scenario.name,
    shape: shapeSpec(bait),
    body: stuff(bait.body, "wood", "body"),
    chambers: bait.chambers.map(chamberSpec),
    ballast: bait.ballast.map((one) => ({
      name: one.name,
      at: place(one.at_mm),
      mass: grams(one.mass_g),
      stuff: stuff(one, "metal", one.name),
      where: one.where,
      hole: one.hole_ml === undefined ? null : millilitres(one.hole_ml),
      filler: gramsPerMillilitre(one.filler_g_ml ?? 0),
    })),
    wires: bait.wires.map((one) => ({
      name: one.name,
      path: one.path_mm.map(place),
      diameter: mm(one.diameter_mm),
      stuff: stuff(one, "metal", one.name),
    })),
    bib: bibSpec(bait.bib),
    tie: place(bait.tie_mm),
    hangers: bait.hangers.map(({ name, at_mm, ring, hook }) => ({
      name,
      at: place(at_mm),
      ring: ring
        ? {
            mass: grams(ring.mass_g),
            density: densityOr(ring.density_g_ml, RING_STEEL),
            weighed: ring.weighed ?? false,
          }
        : null,
      hook: hook
        ? {
            mass: grams(hook.mass_g),
            density: densityOr(hook.density_g_ml, HOOK_STEEL),
            size: hook.size ?? null,
            weighed: hook.weighed ?? false,
          }
        : null,
    })),
    fittings: bait.fittings.map((one) => ({
      name: one.name,
      at: place(one.at_mm),
      mass: grams(one.mass_g),
      stuff: stuff(one, "plastic", one.name),
      where: one.where,
    })),
    coats: bait.coats.map((one): CoatSpec => ({
      name: one.name,
      thickness: one.thickness_mm === undefined ? null : mm(one.thickness_mm),
      mass: one.mass_g === undefined ? null : grams(one.mass_g),
      stuff: stuff(one, "plastic", one.name),
    })),
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
              one.pusher.count * (Math.PI / 4) * mm(one.pusher.diameter_mm) ** 2 * mm(one.pusher.depth_mm),
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
    },
  };
}

function shapeSpec(bait: ScenarioBait): ShapeSpec {
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

const densityOr = (given: number | undefined, otherwise: number) =>
  given === undefined ? otherwise : gramsPerMillilitre(given);

/** A material by name, or by a density of the file, which wins. `usual`: its class where only a density is given. */
function stuff(
  thing: { readonly material?: string; readonly density_g_ml?: number },
  usual: MaterialClass,
  what: string,
): Stuff {
  const known = thing.material === undefined ? null : material(thing.material);
  const name = known?.name ?? thing.material ?? "given density";
  const kind = known?.kind ?? usual;
  if (thing.density_g_ml !== undefined) {
    return { name, density: gramsPerMillilitre(thing.density_g_ml), kind, given: true };
  }
  if (known === null) throw new Error(`${what}: no density; check the scenario before compiling it`);
  return { name, density: known.density, kind, given: false };
}

function chamberSpec(one: ScenarioBait["chambers"][number]): ChamberSpec {
  return {
    name: one.name,
    from: mm(one.from_mm),
    to: mm(one.to_mm),
    height: mm(one.height_mm),
    tall: mm(one.tall_mm),
    wide: mm(one.wide_mm),
    balls: one.balls
      ? {
          count: one.balls.count,
          diameter: mm(one.balls.diameter_mm),
          stuff: stuff(one.balls, "metal", `balls of ${one.name}`),
        }
      : null,
  };
}

function bibSpec(bib: ScenarioBait["bib"]): BaitSpec["bib"] {
  if (bib === undefined) return null;
  return {
    root: place(bib.root_mm),
    angle: degrees(bib.angle_deg),
    length: mm(bib.length_mm),
    width: mm(bib.width_mm),
    slot: mm(bib.slot_mm),
    thickness: mm(bib.thickness_mm),
    outline: bib.outline,
    stuff: stuff(bib, "plastic", "bib"),
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

function moveOf(move: ScenarioMove): Move {
  switch (move.do) {
    case "reel":
      return { do: "reel", speed: move.speed_m_s, for: move.for_s ?? null, length: move.length_m ?? null };
    case "twitch":
      return { do: "twitch", travel: move.travel_m, in: move.in_s, back: move.back_s };
    case "lift":
      return { do: "lift", height: move.height_m, in: move.in_s };
    default:
      return { do: move.do, for: move.for_s };
  }
}
