import { readScenario } from "../../document";
import type { Compiled, Scenario } from "../../document";
import { staticsOf } from "../../model/statics";
import { toSI } from "../../units";
import { withWish } from "./wish";
import { usualAnswers } from "./answers";
import type { Answers } from "./answers";
import { BELLY, blankOf, hookRoom, hungOn } from "./parts";
import { firstWeight } from "./weight";
import type { Weights } from "./weight";

/** Net buoyancy of a bait for which nobody has said a target, as a share of what it displaces: it floats upright. Common practice, no source. */
const RESERVE = 0.06;
/** Wood between the belly eye and the hole of a weight, mm. */
const CLEAR = 2.5;
const NEAREST = 1.5;

/** The belly eye stands in a hole of the weights, or too near to one. */
const inTheWay = (belly: number, { takes }: Weights): boolean =>
  takes !== null && belly > takes[0] - NEAREST && belly < takes[1] + NEAREST;

interface Read {
  readonly scenario: Scenario;
  readonly compiled: Compiled;
}

function read(plain: Record<string, unknown>): Read {
  const found = readScenario(plain);
  if (!found.ok) throw new RangeError(found.problems.map((one) => one.message).join("\n"));
  return found;
}

/**
 * The bait that the answers describe: a lipped blank with a first weight that brings it near its target, so that its first
 * picture is right. A document of its own each time: undo tells one from the next.
 *
 * @throws RangeError where no such bait can be: the message says which number to change
 */
export function baitOf(answers: Answers): Scenario {
  const { name, notes, length, temperature, salinity, wish } = answers;
  const blank = blankOf(answers);
  const speed = wish?.speed_m_s ?? 0.8;
  const documentOf = (belly: number, { ballast }: Pick<Weights, "ballast">): Read =>
    read({
      format: "trimwright/scenario",
      version: 1,
      name: name.trim(),
      notes,
      bait: { ...blank.body, ...hungOn(blank, belly), ballast },
      water: { temperature_C: temperature, salinity_g_kg: salinity, depth_m: 4 },
      tackle: { line: { material: "nylon", diameter_mm: 0.25 }, lineOut_m: 20, rodTip_m: 1 },
      cadence: [
        { do: "settle", for_s: 2 },
        { do: "reel", speed_m_s: speed, for_s: 8 },
        { do: "pause", for_s: 6 },
      ],
    });
  const place = BELLY * length;
  const bare = documentOf(place, { ballast: [] });
  const { displaced, density } = staticsOf(bare.compiled.bait, bare.compiled.around.density);
  // Meant to rest level where nothing else is said: a rise then needs what it needs of a level bait.
  const trim = wish?.trim_deg ?? 0;
  const goal = wish === null ? undefined : withWish(bare.scenario, { ...wish, trim_deg: trim }).target;
  const net = goal === undefined ? RESERVE * displaced * density : toSI(goal.net_g, "g");
  let before = bare;
  let belly = place;
  let weights = firstWeight(before.compiled, blank, net, trim);
  // The belly eye moves out of the way of the weight, to the side where a hook has more room, else to the nearer one; that moves
  // the weight a little.
  for (let round = 0; round < 3 && inTheWay(belly, weights); round++) {
    const [fore, aft] = weights.takes ?? [place, place];
    const more = hookRoom(blank, fore - CLEAR) - hookRoom(blank, aft + CLEAR);
    belly = more > 0 || (more === 0 && place - fore <= aft - place) ? fore - CLEAR : aft + CLEAR;
    before = documentOf(belly, { ballast: [] });
    weights = firstWeight(before.compiled, blank, net, trim);
  }
  const found = documentOf(belly, weights);
  return wish === null ? found.scenario : withWish(found.scenario, wish);
}

/** The plain bait of the usual answers. */
export const starter = (): Scenario => baitOf(usualAnswers());
