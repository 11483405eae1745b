import { lineMaterial, lineMaterials, material, nearestNames } from "../model/materials";
import { cadenceRules } from "./cadence-rules";
import { denseThings, partRules } from "./parts";
import { describe, problem } from "./problem";
import type { Problem } from "./problem";
import type { Scenario, ScenarioBait } from "./schema";
import type { WithDensity } from "./si";

/**
 * Checks that need more than one field: stations that rise, a density for everything with a volume, names that exist. They
 * run after the schema, so types and ranges are right already.
 */
export function rules(scenario: Scenario): Problem[] {
  const { bait } = scenario;
  return [
    ...curves(bait),
    ...partRules(bait),
    ...densities(bait),
    ...lineOf(scenario),
    ...cadenceRules(scenario),
    ...room(scenario),
    ...marks(scenario),
  ];
}

type Points = readonly (readonly [number, number])[];

function curves(bait: ScenarioBait): Problem[] {
  const length = bait.length_mm;
  const edges: [string, Points | undefined][] = [
    ["bait.top", bait.top],
    ["bait.bottom", bait.bottom],
    ["bait.halfBreadth", bait.halfBreadth],
    ["bait.widest", bait.widest],
  ];
  const exponents: [string, Points | undefined][] = [
    ["bait.roundover.above", bait.roundover?.above],
    ["bait.roundover.below", bait.roundover?.below],
  ];
  return [
    ...edges.flatMap(([path, points]) =>
      points ? [...rising(path, points), ...ends(path, points, length)] : [],
    ),
    ...exponents.flatMap(([path, points]) =>
      points ? [...rising(path, points), ...within(path, points, length)] : [],
    ),
    ...crossing(bait),
  ];
}

function rising(path: string, points: Points): Problem[] {
  return points.flatMap(([station], i) => {
    const before = points[i - 1]?.[0];
    if (before === undefined || station > before) return [];
    const remedy = "Order the points from nose to tail, each station once.";
    return [problem(`${path}[${i}][0]`, String(station), `a station above ${before} mm`, remedy)];
  });
}

function ends(path: string, points: Points, length: number): Problem[] {
  const out: Problem[] = [];
  const first = points[0]?.[0];
  const last = points.at(-1)?.[0];
  if (first !== 0) {
    out.push(
      problem(`${path}[0][0]`, describe(first), "0", "The first point stands at the nose tip, station 0."),
    );
  }
  if (last !== length) {
    const remedy = "The last point stands at the tail: its station is the bait's length_mm.";
    out.push(problem(`${path}[${points.length - 1}][0]`, describe(last), String(length), remedy));
  }
  return out;
}

function within(path: string, points: Points, length: number): Problem[] {
  return points.flatMap(([station], i) =>
    station <= length
      ? []
      : [
          problem(
            `${path}[${i}][0]`,
            String(station),
            `0 to ${length} mm`,
            "Keep the point within the bait's length.",
          ),
        ],
  );
}

/** Top above bottom where both have a point at one station; between points the shape room looks. */
function crossing(bait: ScenarioBait): Problem[] {
  const bottoms = new Map(bait.bottom.map(([station, height]) => [station, height]));
  return bait.top.flatMap(([station, height], i) => {
    const bottom = bottoms.get(station);
    if (bottom === undefined || height >= bottom) return [];
    const remedy =
      "The top edge lies above the bottom edge: raise it, or lower the bottom's point at this station.";
    return [
      problem(`bait.top[${i}][1]`, String(height), `at least ${bottom} mm (the bottom edge there)`, remedy),
    ];
  });
}

/** Everything with a volume needs a density. */
function densities(bait: ScenarioBait): Problem[] {
  const things = [["bait.body", bait.body] as const, ...denseThings(bait)];
  return things.flatMap(([path, thing]) => density(path, thing));
}

function density(path: string, thing: WithDensity): Problem[] {
  if (thing.material !== undefined && material(thing.material) === null && thing.density_g_ml === undefined) {
    return [unknownMaterial(`${path}.material`, thing.material, nearestNames(thing.material))];
  }
  if (thing.material === undefined && thing.density_g_ml === undefined) {
    const remedy = 'Add "material" (a name from the table) or "density_g_ml": its volume matters.';
    return [problem(path, "neither a material nor a density", "one of the two", remedy)];
  }
  return [];
}

function unknownMaterial(path: string, name: string, near: readonly string[]): Problem {
  const hint = near.length > 0 ? `Did you mean ${near.map((one) => `"${one}"`).join(" or ")}? ` : "";
  const remedy = `${hint}A material of your own needs its density beside it.`;
  return problem(path, describe(name), "a name from the table of materials", remedy);
}

function lineOf(scenario: Scenario): Problem[] {
  const { line } = scenario.tackle;
  const whole = line.density_kg_m3 !== undefined && line.stiffness_N !== undefined;
  if (whole || lineMaterial(line.material) !== null) return [];
  const hint = nearestNames(line.material, 1, lineMaterials)[0];
  const own = "A line of your own needs density_kg_m3 and stiffness_N.";
  const remedy = hint === undefined ? own : `Did you mean "${hint}"? ${own}`;
  const known = lineMaterials.map((one) => `"${one.name}"`).join(", ");
  return [problem("tackle.line.material", describe(line.material), known, remedy)];
}

/** What a swim needs: the bait must float or hang at its start, and the rod tip must be away from it. */
function room(scenario: Scenario): Problem[] {
  const { cadence, bait, water, tackle } = scenario;
  if (cadence.length === 0) return [];
  const length = bait.length_mm / 1000;
  // One and a half lengths and a hook below it take every attitude; common practice, no source.
  const deep = 1.5 * length + 0.05;
  const long = tackle.rodTip_m + 2 * length;
  const out: Problem[] = [];
  if (water.depth_m < deep) {
    const remedy = "Give deeper water, or leave the cadence out.";
    out.push(
      problem(
        "water.depth_m",
        String(water.depth_m),
        `at least ${round(deep)} m for this bait's cadence`,
        remedy,
      ),
    );
  }
  if (tackle.lineOut_m < long) {
    const remedy = "Give more line, or lower the rod tip.";
    const allowed = `at least ${round(long)} m with the rod tip at ${tackle.rodTip_m} m`;
    out.push(problem("tackle.lineOut_m", String(tackle.lineOut_m), allowed, remedy));
  }
  return out;
}

/** What is marked in the water column must lie in it, the right way up. */
function marks({ water: { depth_m, weed_m, strikeZone } }: Scenario): Problem[] {
  const out: Problem[] = [];
  if (weed_m !== undefined && weed_m > depth_m) {
    const remedy = "Weed tops lie above the bottom: give a smaller depth, or leave the weed out.";
    out.push(problem("water.weed_m", String(weed_m), `at most the water's depth, ${depth_m} m`, remedy));
  }
  if (strikeZone !== undefined && strikeZone.to_m <= strikeZone.from_m) {
    const remedy = "The zone runs from its upper edge down to its lower one: the larger depth in to_m.";
    out.push(
      problem(
        "water.strikeZone.to_m",
        String(strikeZone.to_m),
        `above from_m, ${strikeZone.from_m} m`,
        remedy,
      ),
    );
  }
  return out;
}

const round = (metres: number) => Number(metres.toPrecision(4));
