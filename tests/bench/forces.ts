/**
 * What one evaluation of forces, mass matrix, inertia terms and accelerations costs: a minnow with a bib and two hooks,
 * deep under water and cut by the surface; and what preparing its fixed model costs.
 */
import {
  createEvaluator,
  prepareSwimmer,
  type Acceleration,
  type Surroundings,
} from "../../src/model/forces";
import { at, freshWater, minnow, openWater } from "../lib/towed";

const bait = minnow(40);
const swimmer = prepareSwimmer(bait);
const out: Acceleration = [0, 0, 0];

/** Processor time in µs for one call, after a warm-up: not disturbed by what else runs on the machine. */
function cost(work: (i: number) => void, times: number): number {
  for (let i = 0; i < times; i++) work(i);
  const before = process.cpuUsage();
  for (let i = 0; i < times; i++) work(i);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / times;
}

function evaluation(around: Surroundings, Z: number): number {
  const evaluator = createEvaluator(swimmer, around);
  const state = at({ u: 0.8, w: 0.1, q: 0.5, pitch: -0.2, Z });
  return cost((i) => {
    state.u = 0.8 + 1e-7 * i;
    evaluator.evaluate(state);
    evaluator.accelerate(null, out);
  }, 200_000);
}

const deep = evaluation(freshWater, -1);
const cut = evaluation(openWater, -0.003);
const prepare = cost(() => prepareSwimmer(bait), 500);
const line = (name: string, value: number, asked: number): string =>
  `${name.padEnd(34)}${value.toFixed(2).padStart(9)} µs   asked ${asked} µs   ratio ${(asked / value).toFixed(2)}`;
console.log(line("evaluation under water", deep, 4));
console.log(line("evaluation through the surface", cut, 10));
console.log(line("fixed model of a bait", prepare, 500));
