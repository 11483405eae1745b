import type { Scenario } from "../../document";
import { moveAt } from "./cadence";
import { inputAt } from "./inputs";
import type { Input, MoveSteps } from "./inputs";
import { lineTurn } from "./retrieve";

/** The numbers of a move, as inputs: they come when a move is chosen. Pure. */

/** The numbers of one move, as inputs. */
export function moveInputs(scenario: Scenario, at: MoveSteps): readonly Input[] {
  const move = moveAt(scenario, at);
  const keys: readonly string[] = {
    reel: ["speed_m_s", move.do === "reel" && move.length_m !== undefined ? "length_m" : "for_s"],
    twitch: ["travel_m", "in_s", "back_s"],
    lift: ["height_m", "in_s"],
    pause: ["for_s"],
    slack: ["for_s"],
    settle: ["for_s"],
    release: ["for_s"],
  }[move.do];
  return keys.map((key) => inputAt(scenario, [...at, key]));
}

/** The speed of a reel told in turns of the handle a minute; null where it cannot be. */
export function turnsInput(scenario: Scenario, at: MoveSteps): Input | null {
  const turn = lineTurn(scenario);
  const speed = moveInputs(scenario, at).find((one) => one.id.endsWith(".speed_m_s"));
  if (turn === null || speed === undefined) return null;
  const perMinute = 60 / turn;
  return {
    ...speed,
    // The same number as the speed: a refusal shows there.
    id: `${speed.id} turns`,
    label: "Handle turns / min",
    unit: "",
    help: `One turn takes in ${turn.toFixed(2)} m of line: gear ratio × spool circumference.`,
    slider: { min: 5, max: 200, step: 1 },
    max: speed.max * perMinute,
    read: (from) => Number((speed.read(from) * perMinute).toFixed(1)),
    write: (from, value) => speed.write(from, Number((value / perMinute).toFixed(4))),
  };
}
