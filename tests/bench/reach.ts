/**
 * Steady tow: one evaluation of reach, and the map of 25 bib angles by 12 speeds as a worker makes it. Time is processor time:
 * what other programs take does not count. Two workers share a map evenly, since its rows are handed out as they come.
 */
import { compile } from "../../src/document";
import { scenarioOf, SCENARIOS } from "../lib/scenarios";
import { prepareTow, reach } from "../../src/model/tow";
import { ReachMapper } from "../../src/runner/reach-mapper";

/** Asked for: ms for one evaluation; s for the map on two cores. */
const ONE_MS = 3;
const MAP_SECONDS = 2;
const CORES = 2;
const TRIES = 60;

/** Processor time of some work, ms. */
function cost(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const spaced = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

const column = (value: string | number) => String(value).padStart(12);
console.log(
  `${"scenario".padEnd(28)}${["reach, ms", "asked", "map, s", "on 2 cores", "asked", "does not run"].map(column).join("")}`,
);
for (const name of [...SCENARIOS].sort()) {
  const scenario = scenarioOf(name);
  const { bait, around, tackle, calibration } = compile(scenario);
  const tow = prepareTow(bait, calibration.bibFactor);
  const round = () => {
    for (let i = 0; i < TRIES; i++) reach(tow, around, tackle, { speed: 0.5 + i / TRIES });
  };
  round();
  const one = cost(round) / TRIES;

  const angles = { variable: "bibAngle" as const, values: spaced(15, 87, 25) };
  const heights = { variable: "tieHeight" as const, values: spaced(-6, 6, 25) };
  const mapper = new ReachMapper({
    scenario,
    speed: 1,
    vary: [
      scenario.bait.bib === undefined ? heights : angles,
      { variable: "speed", values: spaced(0.15, 1.8, 12) },
    ],
    bands: false,
    whole: false,
  });
  let still = 0;
  const map =
    cost(() => {
      for (let i = 0; i < mapper.count; i++) if (!mapper.cell(i).runs) still++;
    }) / 1000;
  console.log(
    name.padEnd(28) +
      [one.toFixed(2), ONE_MS, map.toFixed(2), (map / CORES).toFixed(2), MAP_SECONDS, `${still} of 300`]
        .map(column)
        .join(""),
  );
}
console.log(`\nThe page itself is timed in tests/bench/page.ts.`);
