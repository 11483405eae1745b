/**
 * The ballast plan for a box of 30 kinds: how long the answer takes, with its draws, for one to three places, with and without
 * a least BG that the target asks for. The target is just floating, a little nose-down, for a scenario's bait without its
 * ballast; the box holds balls of six metals and five sizes.
 */
import { readFileSync } from "node:fs";
import { compile, parseScenario } from "../../src/document";
import { material } from "../../src/model/materials";
import { ballastPlan, type PlanKind, type PlanTarget, type PlanZone } from "../../src/model/plan";

/** Seconds that an answer may take, by its places. */
const ASKED: Readonly<Record<number, number>> = { 1: 1, 2: 1, 3: 2 };
/** Least BG that the target asks for, m. Null: none. */
const LEAST_BG = [null, 1e-3, 3e-3];
const RUNS = 3;
const METALS = ["tin", "carbon steel", "brass", "tungsten", "zinc", "copper"];
const SIZES = [2.5, 3, 4, 5, 6]; // mm

const mm = (value: number): number => value / 1e3;

/** Of each metal a ball of every size, six at hand. */
const kinds: readonly PlanKind[] = METALS.flatMap((name) => {
  const metal = material(name);
  if (metal === null) throw new Error(`no material ${name}`);
  return SIZES.map((d): PlanKind => ({
    name: `${name} ball ${String(d)} mm`,
    stuff: { name, density: metal.density, kind: "metal", given: false },
    mass: (Math.PI / 6) * mm(d) ** 3 * metal.density,
    count: 6,
    lead: false,
    across: mm(d),
    along: mm(d),
    inside: true,
    outside: false,
  }));
});

const column = (value: string | number) => String(value).padStart(10);

console.log(
  `${"scenario".padEnd(28)}${["places", "least BG", "seconds", "asked", "ratio", "plans"].map(column).join("")}`,
);
for (const file of ["suspender-90.json", "slow-floater-72.json", "salt-suspender-115.json"]) {
  const parsed = parseScenario(readFileSync(new URL(`../../scenarios/${file}`, import.meta.url), "utf8"));
  if (!parsed.ok) throw new Error(`${file}: ${parsed.problems[0]?.message ?? "refused"}`);
  const { scenario } = parsed;
  const { spec, water } = compile({ ...scenario, expect: [], bait: { ...scenario.bait, ballast: [] } });
  const length = spec.shape.length;
  const targetOf = (leastBG: number | null): PlanTarget => ({
    net: 0.3e-3,
    netTolerance: 0.05e-3,
    trim: (-5 * Math.PI) / 180,
    trimTolerance: (10 * Math.PI) / 180,
    leastBG,
  });
  const zone: PlanZone = {
    from: 0.1 * length,
    to: 0.9 * length,
    lowest: null,
    highest: null,
    wall: mm(1),
    clearance: mm(1),
  };
  const drills = [2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5].map(mm);
  for (const places of [1, 2, 3])
    for (const leastBG of LEAST_BG) {
      const seconds: number[] = [];
      let plans = 0;
      for (let run = 0; run < RUNS; run++) {
        const start = performance.now();
        plans = ballastPlan(spec, water.density, targetOf(leastBG), kinds, zone, {
          drills,
          filler: 1100,
          places,
        }).plans.length;
        seconds.push((performance.now() - start) / 1000);
      }
      const [middle = NaN] = seconds.sort((a, b) => a - b).slice(1);
      const asked = ASKED[places] ?? NaN;
      const least = leastBG === null ? "none" : `${String(leastBG * 1e3)} mm`;
      console.log(
        file.replace(".json", "").padEnd(28) +
          [places, least, middle.toFixed(2), asked, (asked / middle).toFixed(1), plans].map(column).join(""),
      );
    }
}
console.log(
  "\nSeconds are the middle of three; the ratio is what is asked over what it takes: 1 or more is in time.",
);
