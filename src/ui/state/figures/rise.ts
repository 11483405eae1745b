import type { TerminalRise } from "../../../model/tow";
import type { Units } from "../units";
import type { Why } from "../why.svelte";
import type { Worked } from "../workspace.svelte";
import { fromSI } from "../../../units";
import { attitudeWords, degrees, type Figure, grams } from "./figure";

const FORCES =
  "Added mass: Lamb 1932. Cross-flow: Cheng 2013; Jorgensen 1977, NASA TR R-474. Along the body: Hoerner 1965. " +
  "Bib: Polhamus 1966, NASA TN D-3767; Lamar & Gloss 1975; ECN-C--03-025, 2003. Tail: Roddy 1990. docs/model.md §6.";

function movingWords(rise: TerminalRise): string {
  const pitch = degrees(rise.pitch);
  const words = attitudeWords(pitch);
  const drift = fromSI(rise.drift, "mm_s");
  const way = Math.abs(drift) < 1 ? "" : drift > 0 ? ", gliding ahead" : ", backing up";
  return `${words === "level" ? "level" : `${Math.abs(pitch).toFixed(0)}° ${words}`}${way}`;
}

/** `rise` is null while it is being worked out. */
export function riseFigures({ statics }: Worked, rise: TerminalRise | null): readonly Figure[] {
  const speed = rise === null ? null : fromSI(rise.speed, "mm_s");
  const word = speed === null ? "" : speed >= 0 ? "rises" : "sinks";
  const seconds = speed === null || Math.abs(speed) < 0.5 ? null : 300 / Math.abs(speed);
  const why = (units: Units): Why => ({
    title: "Steady rise or sink",
    value: speed === null ? "being worked out" : `${units.show(Math.abs(speed), "mm/s", 0)}, ${word}`,
    meaning:
      "Let go under water without line, the bait soon moves at the speed at which drag and net buoyancy balance, " +
      "in the attitude in which the moments balance. Time it over a marked height in the tub.",
    formula: "ΣX(u, w, θ) = 0, ΣZ(u, w, θ) = 0, ΣM(u, w, θ) = 0, all forces of the model but the line",
    inputs: [
      { name: "net buoyancy", value: units.show(grams(statics.netBuoyancy), "g", 3, true) },
      ...(rise === null
        ? []
        : [
            { name: "attitude while it moves", value: units.show(degrees(rise.pitch), "°", 1, true) },
            { name: "drift, forward positive", value: units.showSI(rise.drift, "mm/s", 0, true) },
          ]),
      ...(seconds === null
        ? []
        : [{ name: `seconds over ${units.show(300, "mm", 0)}`, value: units.show(seconds, "s", 1) }]),
    ],
    source: FORCES,
    note:
      rise !== null && !rise.steady
        ? `It did not settle: ${rise.why ?? "speed and attitude still change after 300 s"}. The figures are those at the end.`
        : "Near neutral, a hundredth of a gram decides: speed goes with the root of the net force.",
  });
  return [
    {
      key: "rise",
      label: speed !== null && speed < 0 ? "Sinks at" : "Rises at",
      value: speed === null ? null : Math.abs(speed),
      unit: "mm/s",
      digits: 0,
      signed: false,
      words: rise === null ? "working …" : rise.steady ? movingWords(rise) : "does not settle",
      why,
    },
    {
      key: "seconds",
      label: "Time for the way",
      labelIn: (units) => `Over ${units.show(300, "mm", units.unit("mm") === "mm" ? 0 : 1)}`,
      value: seconds,
      unit: "s",
      digits: 1,
      signed: false,
      words: rise === null ? "working …" : seconds === null ? "hardly moves" : "",
      why,
    },
  ];
}
