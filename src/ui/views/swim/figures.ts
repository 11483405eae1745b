import { beat } from "../../../model/tow";
import type { Approach } from "../../../model/tow";
import type { RunSummary } from "../../../model/motion";
import { attitudeWords, degrees } from "../../state";
import type { Figure, Units, Worked } from "../../state";
import { fromSI } from "../../../units";
import type { SwimWords } from "../../words/swim";
import { answers } from "./answers.svelte";
import type { Zone } from "./state.svelte";

/** Slower than this it hangs, m/s: it would be shown as 0 mm/s. */
const HANGS = 0.0005;

const figure = (
  one: Omit<Figure, "signed" | "words"> & Partial<Pick<Figure, "signed" | "words">>,
): Figure => ({
  signed: false,
  words: "",
  first: answers.load,
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

/**
 * Where a retrieve stands on its way to the depth of the steady tow, in words. Beside a `deepest` place, m, that was deeper
 * than this depth (in a pause, say, in which it sank) nothing is missing.
 */
export function approachWords(
  approach: Approach | null,
  units: Units,
  words: SwimWords,
  deepest: number | null = null,
): string {
  if (approach === null) return "";
  if (typeof approach === "object" && deepest !== null && approach.depth <= deepest) return "";
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
    why: (units) =>
      answers.now?.steady(depth, speed, lineOut, approachWords(approach, units, words), units) ?? null,
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
  const wait = summary === null ? words.tell("wait") : "";
  const pauseWords = summary !== null && pause === null ? words.tell("pause.none") : wait;
  return [
    figure({
      key: "deepest",
      label: words.tell("deepest.label"),
      value: deepest?.value ?? null,
      unit: "m",
      digits: 2,
      words: summary !== null && deepest === null ? words.tell("deepest.surface") : wait,
      why: (units) => answers.now?.deepest(deepest, units) ?? null,
    }),
    figure({
      key: "toDepth",
      label: words.tell("toDepth.label"),
      value: toDepth,
      unit: "s",
      digits: 1,
      words: wait,
      why: (units) => answers.now?.toDepth(toDepth, deepest, units) ?? null,
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
      why: (units) => answers.now?.running(running, units) ?? null,
    }),
    figure({
      key: "pauseTrim",
      label: words.tell("pause.trim"),
      value: pause === null ? null : degrees(pause.pitch),
      unit: "°",
      digits: 1,
      signed: true,
      words: pause === null ? pauseWords : attitude(pause.pitch, words),
      why: (units) => answers.now?.pauseTrim(pause, units) ?? null,
    }),
    figure({
      key: "pauseRise",
      label: words.tell(`pause.${inPause(pause)}`),
      value: pause === null ? null : fromSI(Math.abs(pause.rise), "mm_s"),
      unit: "mm/s",
      digits: 0,
      words: pause !== null && pause.top < 0 ? words.tell("pause.atSurface") : pauseWords,
      why: (units) => answers.now?.pauseRise(pause, units) ?? null,
    }),
    figure({
      key: "pull",
      label: words.tell("pull.label"),
      value: pull?.value ?? null,
      unit: "N",
      digits: 2,
      words: wait,
      why: (units) => answers.now?.pull(pull, units) ?? null,
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
            why: (units: Units) => answers.now?.zone(zone, inside, units) ?? null,
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
  readonly why: Figure["why"];
  readonly first: NonNullable<Figure["first"]>;
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
    first: answers.load,
    why: (units) => answers.now?.beats(found, text(units), running, units) ?? null,
  };
}
