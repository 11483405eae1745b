/**
 * How many full statics a second: shape from its knots, assembly, account, rest trim, floating and stability, of a bait
 * whose breadth changes a little each time, so that nothing can be kept from the time before. And one band.
 */
import { readdirSync, readFileSync } from "node:fs";
import { baitSpec, parseScenario, type Scenario } from "../../src/document";
import { assemble, type BaitSpec } from "../../src/model/bait";
import { shapeOf } from "../../src/model/shape";
import { band, staticsOf } from "../../src/model/statics";
import { water } from "../../src/model/water";

/** What is asked for: full statics a second, and seconds for a band of 10 000 samples. */
const WANTED = 500;
const BAND_SAMPLES = 10_000;
const BAND_SECONDS = 1;
/** Statics in a part, and how long each kind of work is repeated, s. */
const PART = 10;
const SECONDS = 2;

const folder = new URL("../../scenarios/", import.meta.url);

function scenarioOf(file: string): Scenario {
  const parsed = parseScenario(readFileSync(new URL(file, folder), "utf8"));
  if (!parsed.ok) throw new Error(`${file}: ${parsed.problems[0]?.message ?? "refused"}`);
  return parsed.scenario;
}

/** The same bait, broader by 1e-6 for each `i`. */
function broader(spec: BaitSpec, i: number): BaitSpec {
  const halfBreadth = spec.shape.halfBreadth.map(({ s, v }) => ({ s, v: v * (1 + 1e-6 * i) }));
  return { ...spec, shape: { ...spec.shape, halfBreadth } };
}

/** Runs a second: by the least time of short parts over two seconds. The machine's other work is left out. */
function rate(work: (i: number) => void): number {
  let i = 0;
  let least = Infinity;
  for (const end = performance.now() + SECONDS * 1000; performance.now() < end;) {
    const start = performance.now();
    for (const last = i + PART; i < last;) work(i++);
    least = Math.min(least, performance.now() - start);
  }
  return (1000 * PART) / least;
}

const column = (value: string | number) => String(value).padStart(10);

console.log(
  `${"scenario".padEnd(28)}${["statics/s", "asked", "ratio", "shape", "assembly", "rest", "band s"].map(column).join("")}`,
);
for (const file of readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .sort()) {
  const scenario = scenarioOf(file);
  const spec = baitSpec(scenario);
  const { density } = water(scenario.water.salinity_g_kg, scenario.water.temperature_C);

  const full = rate((i) => staticsOf(assemble(broader(spec, i)), density));
  // Shares of the time of one: shape alone, assembly beyond the shape, the statics proper.
  const shape = full / rate((i) => shapeOf(broader(spec, i).shape));
  const assembly = full / rate((i) => assemble(broader(spec, i))) - shape;

  const bait = assemble(spec);
  band(bait, density, { samples: 100 });
  const start = performance.now();
  band(bait, density, { samples: BAND_SAMPLES });
  const seconds = (performance.now() - start) / 1000;

  const share = (part: number) => column(`${(100 * part).toFixed(0)} %`);
  console.log(
    file.replace(".json", "").padEnd(28) +
      [full.toFixed(0), WANTED, (full / WANTED).toFixed(1)].map(column).join("") +
      [shape, assembly, 1 - shape - assembly].map(share).join("") +
      column(seconds.toFixed(2)),
  );
}
console.log(`\nA band takes ${BAND_SAMPLES} samples; under ${BAND_SECONDS} s is asked for.`);
