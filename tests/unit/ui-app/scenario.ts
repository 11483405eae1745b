import { readScenario } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { sample } from "../../lib/sample";

/** The sample of the document's tests, with a cadence that repeats some of its moves. Invented numbers. */
export function scenario(change: (plain: ReturnType<typeof sample>) => void = () => undefined): Scenario {
  const plain = sample();
  Object.assign(plain, {
    cadence: [
      { do: "reel", speed_m_s: 0.8, for_s: 4 },
      { do: "pause", for_s: 2 },
      { do: "twitch", travel_m: 0.3, in_s: 0.2, back_s: 0.4 },
      { do: "pause", for_s: 2 },
      { do: "twitch", travel_m: 0.3, in_s: 0.2, back_s: 0.4 },
      { do: "pause", for_s: 5 },
    ],
  });
  change(plain);
  const read = readScenario(plain);
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  return read.scenario;
}
