import { AT_STEADY, beat, BEAT_BAND, STROUHAL } from "../../../model/tow";
import type { Approach } from "../../../model/tow";
import type { RunSummary } from "../../../model/motion";
import { AT_DEPTH } from "../../../model/motion";
import { attitudeWords, degrees } from "../../state";
import type { Figure, Units, Worked } from "../../state";
import { fromSI } from "../../../units";
import type { Zone } from "./state.svelte";

const RUN = "Simulated: the equations of motion of docs/model.md §6 to §8, 960 steps a second, 60 kept.";
/** Slower than this it hangs, m/s: it would be shown as 0 mm/s. */
const HANGS = 0.0005;
const DEPTH_NOTE =
  "Depth under tow is good to 20–30 % until a measured run calibrates it, the running attitude to about 6°.";

const figure = (
  one: Omit<Figure, "signed" | "words"> & Partial<Pick<Figure, "signed" | "words">>,
): Figure => ({
  signed: false,
  words: "",
  ...one,
});

/** What it does in the pause. A bait at the surface bobs: it neither rises nor sinks, whatever the mean says. */
function pauseLabel(pause: RunSummary["pause"]): string {
  if (pause === null) return "Rises in the pause";
  if (pause.top < 0) return "In the pause";
  if (Math.abs(pause.rise) < HANGS) return "Hangs in the pause";
  return pause.rise < 0 ? "Sinks in the pause" : "Rises in the pause";
}

/** Where a retrieve stands on its way to the depth of the steady tow, in words. */
export function approachWords(approach: Approach | null, units: Units): string {
  if (approach === null) return "";
  if (approach === "there") return "at the depth of a steady tow for the line still out";
  if (approach === "short") return "not yet at depth, and the line is in before it comes there: cast farther";
  return `not yet at depth: reel ${units.show(approach.more, "m", approach.more < 10 ? 1 : 0)} more, then about ${units.show(approach.depth, "m", 2)}`;
}

/** The depth of the steady tow with all the line out: the same figure as in Reach. */
export function steadyFigure(
  depth: number | null,
  speed: number,
  lineOut: number,
  approach: Approach | null,
): Figure {
  return figure({
    key: "steady",
    label: "Steady tow",
    value: depth,
    unit: "m",
    digits: 2,
    words: depth === null ? "does not run; Reach says why" : "with all the line out, as in Reach",
    why: (units) => ({
      title: "Depth in a steady tow",
      value: depth === null ? "does not run" : units.show(depth, "m", 2),
      meaning:
        "How deep the tie eye runs after a long, even retrieve at the speed of the first reel. A cast is shorter: the bait starts at the surface, and the line gets shorter while it comes down.",
      formula:
        "steady line and attitude: docs/model.md §7. On the way there dd/ds = (D − d)/ℓ, ℓ from this run's own slope",
      inputs: [
        { name: "speed", value: units.show(speed, "m/s", 2) },
        { name: "line out", value: units.show(lineOut, "m", 1) },
        ...(approach === null ? [] : [{ name: "this retrieve", value: approachWords(approach, units) }]),
      ],
      source: `Towed line: docs/model.md §7. At depth: ${AT_STEADY * 100} % of the steady depth of the line that is out; common practice, no source.`,
      note: DEPTH_NOTE,
    }),
  });
}

/** The figures of one run. `summary` null: nothing recorded yet. */
export function runFigures(summary: RunSummary | null, zone: Zone | null): readonly Figure[] {
  const deepest = summary?.deepest ?? null;
  const running = summary?.running ?? null;
  const pause = summary?.pause ?? null;
  const pull = summary?.pull ?? null;
  const toDepth = summary?.toDepth ?? null;
  const inside = summary?.zone ?? null;
  const wait = summary === null ? "working …" : "";
  const pauseWords = summary === null ? "working …" : pause === null ? "no pause of half a second" : "";
  const whyPause = (units: Units, title: string, value: string, formula: string) => ({
    title,
    value,
    meaning:
      "What the bait does while the reel stands: the second half of every pause of half a second or more, averaged over time.",
    formula,
    inputs: pause === null ? [] : [{ name: "time averaged over", value: units.show(pause.seconds, "s", 1) }],
    source: RUN,
    note: "The line's pull still counts here. The trim at rest without line stands under ‘At rest under water’.",
  });
  return [
    figure({
      key: "deepest",
      label: "Deepest",
      value: deepest?.value ?? null,
      unit: "m",
      digits: 2,
      words: summary === null ? wait : deepest === null ? "stays at the surface" : "",
      why: (units) => ({
        title: "Greatest depth",
        value: deepest === null ? "none" : units.show(deepest.value, "m", 2),
        meaning: "The greatest depth of the tie eye in this run.",
        formula: "max(−Z of the tie eye) over all frames",
        inputs:
          deepest === null
            ? []
            : [
                { name: "after", value: units.show(deepest.time, "s", 1) },
                { name: "from the splash", value: units.show(deepest.x, "m", 1) },
              ],
        source: RUN,
        note: DEPTH_NOTE,
      }),
    }),
    figure({
      key: "toDepth",
      label: "Time to depth",
      value: toDepth,
      unit: "s",
      digits: 1,
      words: wait,
      why: (units) => ({
        title: "Time to depth",
        value: toDepth === null ? "none" : units.show(toDepth, "s", 1),
        meaning: `From the splash to the first moment at ${AT_DEPTH * 100} % of the greatest depth of this run.`,
        formula: `first t with depth(t) ≥ ${AT_DEPTH} · greatest depth`,
        inputs:
          deepest === null ? [] : [{ name: "greatest depth", value: units.show(deepest.value, "m", 2) }],
        source: RUN,
        note: "The share is common practice, no source.",
      }),
    }),
    figure({
      key: "running",
      label: "Running attitude",
      value: running === null ? null : degrees(running.pitch),
      unit: "°",
      digits: 1,
      signed: true,
      words:
        summary === null
          ? wait
          : running === null
            ? "does not come to run"
            : attitudeWords(degrees(running.pitch), "en"),
      why: (units) => ({
        title: "Running attitude",
        value: running === null ? "does not come to run" : units.show(degrees(running.pitch), "°", 1, true),
        meaning:
          "Mean pitch while it runs: in a reel, pitch within 4° over 0.6 s or more, the line pulling, and at least half the reel's speed.",
        formula: "mean of θ over the frames in which it runs",
        inputs:
          running === null
            ? []
            : [
                { name: "time it runs", value: units.show(running.seconds, "s", 1) },
                { name: "mean depth", value: units.show(running.depth, "m", 2) },
                { name: "mean speed of the bait", value: units.show(running.speed, "m/s", 2) },
                { name: "mean tension", value: units.show(running.tension, "N", 2) },
              ],
        source: RUN,
        note: `${DEPTH_NOTE} What counts as running is common practice, no source.`,
      }),
    }),
    figure({
      key: "pauseTrim",
      label: "Trim in the pause",
      value: pause === null ? null : degrees(pause.pitch),
      unit: "°",
      digits: 1,
      signed: true,
      words: pause === null ? pauseWords : attitudeWords(degrees(pause.pitch), "en"),
      why: (units) =>
        whyPause(
          units,
          "Trim in the pause",
          pause === null ? "none" : units.show(degrees(pause.pitch), "°", 1, true),
          "mean of θ over the second half of the pauses",
        ),
    }),
    figure({
      key: "pauseRise",
      label: pauseLabel(pause),
      value: pause === null ? null : fromSI(Math.abs(pause.rise), "mm_s"),
      unit: "mm/s",
      digits: 0,
      words: pause !== null && pause.top < 0 ? "afloat at the surface" : pauseWords,
      why: (units) =>
        whyPause(
          units,
          "Rise or sink in the pause",
          pause === null ? "none" : units.showSI(pause.rise, "mm/s", 0, true),
          "mean of the upward velocity of G over the second half of the pauses",
        ),
    }),
    figure({
      key: "pull",
      label: "Greatest pull",
      value: pull?.value ?? null,
      unit: "N",
      digits: 2,
      words: wait,
      why: (units) => ({
        title: "Greatest pull of the line",
        value: pull === null ? "none" : units.show(pull.value, "N", 2),
        meaning: "The greatest tension at the tie eye in the frames of this run. A result, not a setting.",
        formula: "max(tension) over all frames",
        inputs: pull === null ? [] : [{ name: "after", value: units.show(pull.time, "s", 2) }],
        source: RUN,
      }),
    }),
    ...(zone === null
      ? []
      : [
          figure({
            key: "zone",
            label: "In the strike zone",
            value: inside?.seconds ?? null,
            unit: "s",
            digits: 1,
            words:
              inside === null || inside.of === 0
                ? wait
                : `${((100 * inside.seconds) / inside.of).toFixed(0)} % of the run`,
            why: (units: Units) => ({
              title: "Time in the strike zone",
              value: inside === null ? "being worked out" : units.show(inside.seconds, "s", 1),
              meaning: "How long the tie eye is within the depths in which the bait is wanted.",
              formula: "frames with from ≤ depth ≤ to, over frames a second",
              inputs: [
                { name: "from", value: units.show(zone.from, "m", 2) },
                { name: "to", value: units.show(zone.to, "m", 2) },
              ],
              source: RUN,
              note: DEPTH_NOTE,
            }),
          }),
        ]),
  ];
}

/** How fast it beats from side to side while it runs: an estimate, as a band. Null without a bib, or where it does not run. */
export function beatBand(
  { compiled: { bait, around } }: Worked,
  summary: RunSummary | null,
): {
  readonly text: (units: Units) => string;
  readonly why: (units: Units) => ReturnType<Figure["why"]>;
} | null {
  const running = summary?.running ?? null;
  if (running === null) return null;
  const through = Math.abs(around.current.x) > 0 ? null : running.speed;
  const found = through === null ? null : beat(bait, through, running.pitch);
  if (found === null) return null;
  const digits = found.high < 10 ? 1 : 0;
  const text = (units: Units): string =>
    `${units.bare(found.low, "", digits)} to ${units.bare(found.high, "", digits)}`;
  return {
    text,
    why: (units) => ({
      title: "Beats a second, an estimate",
      value: `${text(units)} a second`,
      meaning:
        "How often the bait swings from side to side while it runs. The model moves in one plane and does not simulate this: " +
        "it is the rate at which the bib sheds vortices, good for an order of size and for comparing bibs.",
      formula: `f = St · U / b, b the bib's width; ± ${BEAT_BAND * 100} %`,
      inputs: [
        { name: "St", value: units.bare(STROUHAL, "", 2) },
        { name: "U, mean speed while it runs", value: units.show(running.speed, "m/s", 2) },
        { name: "b, width of the bib", value: units.showSI(found.width, "mm", 1) },
        { name: "θ, running attitude", value: units.show(degrees(running.pitch), "°", 1, true) },
        { name: "middle of the band", value: `${units.bare(found.frequency, "", 1)} a second` },
      ],
      source:
        "Shedding behind a bluff plate, St ≈ 0.15 on its projected width: from memory. docs/model.md §10.",
      note: "Half to one and a half times the middle. Count a filmed run to know it.",
    }),
  };
}
