/**
 * How many full statics a second: shape from its knots, assembly, account, rest trim, floating and stability, of a bait
 * whose breadth changes a little each time, so that nothing can be kept from the time before. And one band.
 */
import { baitSpec } from "../../src/document";
import { scenarioOf, SCENARIOS } from "../lib/scenarios";
import { assemble, type BaitSpec } from "../../src/model/bait";
import { shapeOf } from "../../src/model/shape";
import { band, staticsOf } from "../../src/model/statics";
import { water } from "../../src/model/water";
import { Clock, inTurn } from "./lib/clock";

/** What is asked for: full statics a second, and seconds for a band of 10 000 samples. */
const WANTED = 500;
const BAND_SAMPLES = 10_000;
const BAND_SECONDS = 1;
/** Statics in a part, parts in a round, and rounds. */
const PART = 10;
const PARTS = 5;
const ROUNDS = 30;

/** The same bait, broader by 1e-6 for each `i`. */
function broader(spec: BaitSpec, i: number): BaitSpec {
  const halfBreadth = spec.shape.halfBreadth.map(({ s, v }) => ({ s, v: v * (1 + 1e-6 * i) }));
  return { ...spec, shape: { ...spec.shape, halfBreadth } };
}

/** A clock of work that is done with the next number each time. */
function counted(work: (i: number) => void): Clock {
  let next = 0;
  return new Clock(() => ({
    steps: PARTS * PART,
    parts: PARTS,
    part: () => {
      for (const last = next + PART; next < last;) work(next++);
    },
  }));
}

const perSecond = (clock: Clock): number => 1e6 / clock.time;

const column = (value: string | number) => String(value).padStart(10);

console.log(
  `${"scenario".padEnd(28)}${["statics/s", "asked", "ratio", "shape", "assembly", "rest", "band s"].map(column).join("")}`,
);
const scenes = [...SCENARIOS].sort().map((name) => {
  const scenario = scenarioOf(name);
  const spec = baitSpec(scenario);
  const { density } = water(scenario.water.salinity_g_kg, scenario.water.temperature_C);
  return {
    name,
    spec,
    density,
    whole: counted((i) => void staticsOf(assemble(broader(spec, i)), density)),
    drawn: counted((i) => void shapeOf(broader(spec, i).shape)),
    assembled: counted((i) => void assemble(broader(spec, i))),
  };
});
inTurn(
  scenes.flatMap(({ whole, drawn, assembled }) => [whole, drawn, assembled]),
  ROUNDS,
);

for (const { name, spec, density, whole, drawn, assembled } of scenes) {
  // Shares of the time of one: shape alone, assembly beyond the shape, the statics proper.
  const full = perSecond(whole);
  const shape = full / perSecond(drawn);
  const assembly = full / perSecond(assembled) - shape;

  const bait = assemble(spec);
  band(bait, density, { samples: 100 });
  const start = performance.now();
  band(bait, density, { samples: BAND_SAMPLES });
  const seconds = (performance.now() - start) / 1000;

  const share = (part: number) => column(`${(100 * part).toFixed(0)} %`);
  console.log(
    name.padEnd(28) +
      [full.toFixed(0), WANTED, (full / WANTED).toFixed(1)].map(column).join("") +
      [shape, assembly, 1 - shape - assembly].map(share).join("") +
      column(seconds.toFixed(2)),
  );
}
console.log(`\nA band takes ${BAND_SAMPLES} samples; under ${BAND_SECONDS} s is asked for.`);
