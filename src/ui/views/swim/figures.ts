import { AT_STEADY, beat, BEAT_BAND, STROUHAL } from "../../../model/tow";
import type { Approach } from "../../../model/tow";
import type { RunSummary } from "../../../model/motion";
import { AT_DEPTH } from "../../../model/motion";
import { attitudeWords, degrees } from "../../state";
import type { Figure, Units, Worked } from "../../state";
import { fromSI } from "../../../units";
import type { SwimWords } from "../../words/swim";
import type { Zone } from "./state.svelte";

/** Slower than this it hangs, m/s: it would be shown as 0 mm/s. */
const HANGS = 0.0005;

const figure = (
  one: Omit<Figure, "signed" | "words"> & Partial<Pick<Figure, "signed" | "words">>,
): Figure => ({
  signed: false,
  words: "",
  ...one,
});

/** What it does in the pause. A bait at the surface bobs: it neither rises nor sinks, whatever the mean says. */
function inPause(pause: RunSummary["pause"]): "rises" | "sinks" | "hangs" | "afloat" {
  if (pause === null) return "rises";
  if (pause.top < 0) return "afloat";
  if (Math.abs(pause.rise) < HANGS) return "hangs";
  return pause.rise < 0 ? "sinks" : "rises";
}

/** The run's bait goes down while the reel stands. */
export const sinksInPause = (summary: RunSummary | null): boolean =>
  inPause(summary?.pause ?? null) === "sinks";

/** An attitude in words, of a pitch in rad. */
const attitude = (pitch: number, words: SwimWords): string => attitudeWords(degrees(pitch), words.language);

/** Where a retrieve stands on its way to the depth of the steady tow, in words. */
export function approachWords(approach: Approach | null, units: Units, words: SwimWords): string {
  if (approach === null) return "";
  if (approach === "there") return words.tell("approachThere");
  if (approach === "short") return words.tell("approachShort");
  return words.tell("approachMore", {
    more: units.show(approach.more, "m", approach.more < 10 ? 1 : 0),
    depth: units.show(approach.depth, "m", 2),
  });
}

/** The depth of the steady tow with all the line out: the same figure as in Reach. */
export function steadyFigure(
  depth: number | null,
  speed: number,
  lineOut: number,
  approach: Approach | null,
  words: SwimWords,
): Figure {
  return figure({
    key: "steady",
    label: words.tell("steady.label"),
    value: depth,
    unit: "m",
    digits: 2,
    words: words.tell(depth === null ? "steady.not" : "steady.words"),
    why: (units) => ({
      title: words.tell("steady.title"),
      value: depth === null ? words.tell("doesNotRun") : units.show(depth, "m", 2),
      meaning: words.tell("steady.means"),
      formula: words.tell("steady.formula"),
      inputs: [
        { name: words.tell("speed"), value: units.show(speed, "m/s", 2) },
        { name: words.tell("lineOut"), value: units.show(lineOut, "m", 1) },
        ...(approach === null
          ? []
          : [{ name: words.tell("steady.this"), value: approachWords(approach, units, words) }]),
      ],
      source: words.tell("steady.source", { share: AT_STEADY * 100 }),
      note: words.tell("depthNote"),
    }),
  });
}

/** The figures of one run. `summary` null: nothing recorded yet. */
export function runFigures(
  summary: RunSummary | null,
  zone: Zone | null,
  words: SwimWords,
): readonly Figure[] {
  const deepest = summary?.deepest ?? null;
  const running = summary?.running ?? null;
  const pause = summary?.pause ?? null;
  const pull = summary?.pull ?? null;
  const toDepth = summary?.toDepth ?? null;
  const inside = summary?.zone ?? null;
  const source = words.tell("run");
  const note = words.tell("depthNote");
  const none = words.tell("none");
  const wait = summary === null ? words.tell("wait") : "";
  const pauseWords = summary !== null && pause === null ? words.tell("pause.none") : wait;
  const whyPause = (units: Units, title: string, value: string, formula: string) => ({
    title,
    value,
    meaning: words.tell("pause.means"),
    formula,
    inputs:
      pause === null ? [] : [{ name: words.tell("pause.seconds"), value: units.show(pause.seconds, "s", 1) }],
    source,
    note: words.tell("pause.note"),
  });
  return [
    figure({
      key: "deepest",
      label: words.tell("deepest.label"),
      value: deepest?.value ?? null,
      unit: "m",
      digits: 2,
      words: summary !== null && deepest === null ? words.tell("deepest.surface") : wait,
      why: (units) => ({
        title: words.tell("deepest.title"),
        value: deepest === null ? none : units.show(deepest.value, "m", 2),
        meaning: words.tell("deepest.means"),
        formula: words.tell("deepest.formula"),
        inputs:
          deepest === null
            ? []
            : [
                { name: words.tell("after"), value: units.show(deepest.time, "s", 1) },
                { name: words.tell("fromSplash"), value: units.show(deepest.x, "m", 1) },
              ],
        source,
        note,
      }),
    }),
    figure({
      key: "toDepth",
      label: words.tell("toDepth.label"),
      value: toDepth,
      unit: "s",
      digits: 1,
      words: wait,
      why: (units) => ({
        title: words.tell("toDepth.label"),
        value: toDepth === null ? none : units.show(toDepth, "s", 1),
        meaning: words.tell("toDepth.means", { share: AT_DEPTH * 100 }),
        formula: words.tell("toDepth.formula", { share: words.number(AT_DEPTH, 1) }),
        inputs:
          deepest === null
            ? []
            : [{ name: words.tell("toDepth.deepest"), value: units.show(deepest.value, "m", 2) }],
        source,
        note: words.tell("toDepth.note"),
      }),
    }),
    figure({
      key: "running",
      label: words.tell("running.label"),
      value: running === null ? null : degrees(running.pitch),
      unit: "°",
      digits: 1,
      signed: true,
      words:
        summary === null
          ? wait
          : running === null
            ? words.tell("running.not")
            : attitude(running.pitch, words),
      why: (units) => ({
        title: words.tell("running.label"),
        value:
          running === null ? words.tell("running.not") : units.show(degrees(running.pitch), "°", 1, true),
        meaning: words.tell("running.means"),
        formula: words.tell("running.formula"),
        inputs:
          running === null
            ? []
            : [
                { name: words.tell("running.seconds"), value: units.show(running.seconds, "s", 1) },
                { name: words.tell("running.depth"), value: units.show(running.depth, "m", 2) },
                { name: words.tell("running.speed"), value: units.show(running.speed, "m/s", 2) },
                { name: words.tell("running.tension"), value: units.show(running.tension, "N", 2) },
              ],
        source,
        note: words.tell("running.note", { depth: note }),
      }),
    }),
    figure({
      key: "pauseTrim",
      label: words.tell("pause.trim"),
      value: pause === null ? null : degrees(pause.pitch),
      unit: "°",
      digits: 1,
      signed: true,
      words: pause === null ? pauseWords : attitude(pause.pitch, words),
      why: (units) =>
        whyPause(
          units,
          words.tell("pause.trim"),
          pause === null ? none : units.show(degrees(pause.pitch), "°", 1, true),
          words.tell("pause.trimFormula"),
        ),
    }),
    figure({
      key: "pauseRise",
      label: words.tell(`pause.${inPause(pause)}`),
      value: pause === null ? null : fromSI(Math.abs(pause.rise), "mm_s"),
      unit: "mm/s",
      digits: 0,
      words: pause !== null && pause.top < 0 ? words.tell("pause.atSurface") : pauseWords,
      why: (units) =>
        whyPause(
          units,
          words.tell("pause.title"),
          pause === null ? none : units.showSI(pause.rise, "mm/s", 0, true),
          words.tell("pause.formula"),
        ),
    }),
    figure({
      key: "pull",
      label: words.tell("pull.label"),
      value: pull?.value ?? null,
      unit: "N",
      digits: 2,
      words: wait,
      why: (units) => ({
        title: words.tell("pull.title"),
        value: pull === null ? none : units.show(pull.value, "N", 2),
        meaning: words.tell("pull.means"),
        formula: words.tell("pull.formula"),
        inputs: pull === null ? [] : [{ name: words.tell("after"), value: units.show(pull.time, "s", 2) }],
        source,
      }),
    }),
    ...(zone === null
      ? []
      : [
          figure({
            key: "zone",
            label: words.tell("zone.label"),
            value: inside?.seconds ?? null,
            unit: "s",
            digits: 1,
            words:
              inside === null || inside.of === 0
                ? wait
                : words.tell("zone.share", { share: words.number((100 * inside.seconds) / inside.of, 0) }),
            why: (units: Units) => ({
              title: words.tell("zone.title"),
              value: inside === null ? words.tell("zone.working") : units.show(inside.seconds, "s", 1),
              meaning: words.tell("zone.means"),
              formula: words.tell("zone.formula"),
              inputs: [
                { name: words.tell("zone.from"), value: units.show(zone.from, "m", 2) },
                { name: words.tell("zone.to"), value: units.show(zone.to, "m", 2) },
              ],
              source,
              note,
            }),
          }),
        ]),
  ];
}

/** How fast it beats from side to side while it runs: an estimate, as a band. Null without a bib, or where it does not run. */
export function beatBand(
  { compiled: { bait, around } }: Worked,
  summary: RunSummary | null,
  words: SwimWords,
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
    words.tell("beat.band", {
      low: units.bare(found.low, "", digits),
      high: units.bare(found.high, "", digits),
    });
  return {
    text,
    why: (units) => ({
      title: words.tell("beat.title"),
      value: words.tell("beat.value", { band: text(units) }),
      meaning: words.tell("beat.means"),
      formula: words.tell("beat.formula", { band: BEAT_BAND * 100 }),
      inputs: [
        { name: "St", value: units.bare(STROUHAL, "", 2) },
        { name: words.tell("beat.speed"), value: units.show(running.speed, "m/s", 2) },
        { name: words.tell("beat.width"), value: units.showSI(found.width, "mm", 1) },
        { name: words.tell("beat.attitude"), value: units.show(degrees(running.pitch), "°", 1, true) },
        {
          name: words.tell("beat.middle"),
          value: words.tell("beat.value", { band: units.bare(found.frequency, "", 1) }),
        },
      ],
      source: words.tell("beat.source"),
      note: words.tell("beat.note"),
    }),
  };
}
