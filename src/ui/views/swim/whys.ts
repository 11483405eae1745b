import { AT_DEPTH } from "../../../model/motion";
import type { RunSummary } from "../../../model/motion";
import { AT_STEADY, BEAT_BAND, STROUHAL } from "../../../model/tow";
import type { Beat } from "../../../model/tow";
import { degrees } from "../../state";
import type { Units, Why } from "../../state";
import type { Language } from "../../words/base";
import { RUN } from "../../words/run";
import { SWIM } from "../../words/swim";
import type { Zone } from "./state.svelte";

/** What the figures of a run answer to 'why'. It loads with the first question. */

export const ready = (language: Language): Promise<void> => RUN.ready(language);

type Pause = RunSummary["pause"];
const wordsOf = (units: Units) => ({ run: RUN.in(units.language), swim: SWIM.in(units.language) });

/** `approach`: where this retrieve stands on its way there, in words; empty: not known. */
function steady(depth: number | null, speed: number, lineOut: number, approach: string, units: Units): Why {
  const { run, swim } = wordsOf(units);
  return {
    title: run.tell("steady.title"),
    value: depth === null ? swim.tell("doesNotRun") : units.show(depth, "m", 2),
    meaning: run.tell("steady.means"),
    formula: run.tell("steady.formula"),
    inputs: [
      { name: run.tell("speed"), value: units.show(speed, "m/s", 2) },
      { name: run.tell("lineOut"), value: units.show(lineOut, "m", 1) },
      ...(approach === "" ? [] : [{ name: run.tell("steady.this"), value: approach }]),
    ],
    source: run.tell("steady.source", { share: AT_STEADY * 100 }),
    note: run.tell("depthNote"),
  };
}

function deepest(at: RunSummary["deepest"], units: Units): Why {
  const { run, swim } = wordsOf(units);
  return {
    title: run.tell("deepest.title"),
    value: at === null ? swim.tell("none") : units.show(at.value, "m", 2),
    meaning: run.tell("deepest.means"),
    formula: run.tell("deepest.formula"),
    inputs:
      at === null
        ? []
        : [
            { name: run.tell("after"), value: units.show(at.time, "s", 1) },
            { name: run.tell("fromSplash"), value: units.show(at.x, "m", 1) },
          ],
    source: run.tell("run"),
    note: run.tell("depthNote"),
  };
}

function toDepth(seconds: number | null, at: RunSummary["deepest"], units: Units): Why {
  const { run, swim } = wordsOf(units);
  return {
    title: swim.tell("toDepth.label"),
    value: seconds === null ? swim.tell("none") : units.show(seconds, "s", 1),
    meaning: run.tell("toDepth.means", { share: AT_DEPTH * 100 }),
    formula: run.tell("toDepth.formula", { share: run.number(AT_DEPTH, 1) }),
    inputs: at === null ? [] : [{ name: run.tell("toDepth.deepest"), value: units.show(at.value, "m", 2) }],
    source: run.tell("run"),
    note: run.tell("toDepth.note"),
  };
}

function running(one: RunSummary["running"], units: Units): Why {
  const { run, swim } = wordsOf(units);
  return {
    title: swim.tell("running.label"),
    value: one === null ? swim.tell("running.not") : units.show(degrees(one.pitch), "°", 1, true),
    meaning: run.tell("running.means"),
    formula: run.tell("running.formula"),
    inputs:
      one === null
        ? []
        : [
            { name: run.tell("running.seconds"), value: units.show(one.seconds, "s", 1) },
            { name: run.tell("running.depth"), value: units.show(one.depth, "m", 2) },
            { name: run.tell("running.speed"), value: units.show(one.speed, "m/s", 2) },
            { name: run.tell("running.tension"), value: units.show(one.tension, "N", 2) },
          ],
    source: run.tell("run"),
    note: run.tell("running.note", { depth: run.tell("depthNote") }),
  };
}

function ofPause(pause: Pause, title: string, value: string, formula: string, units: Units): Why {
  const { run } = wordsOf(units);
  return {
    title,
    value,
    meaning: run.tell("pause.means"),
    formula,
    inputs:
      pause === null ? [] : [{ name: run.tell("pause.seconds"), value: units.show(pause.seconds, "s", 1) }],
    source: run.tell("run"),
    note: run.tell("pause.note"),
  };
}

function pauseTrim(pause: Pause, units: Units): Why {
  const { run, swim } = wordsOf(units);
  const value = pause === null ? swim.tell("none") : units.show(degrees(pause.pitch), "°", 1, true);
  return ofPause(pause, swim.tell("pause.trim"), value, run.tell("pause.trimFormula"), units);
}

function pauseRise(pause: Pause, units: Units): Why {
  const { run, swim } = wordsOf(units);
  const value = pause === null ? swim.tell("none") : units.showSI(pause.rise, "mm/s", 0, true);
  return ofPause(pause, run.tell("pause.title"), value, run.tell("pause.formula"), units);
}

function pull(one: RunSummary["pull"], units: Units): Why {
  const { run, swim } = wordsOf(units);
  return {
    title: run.tell("pull.title"),
    value: one === null ? swim.tell("none") : units.show(one.value, "N", 2),
    meaning: run.tell("pull.means"),
    formula: run.tell("pull.formula"),
    inputs: one === null ? [] : [{ name: run.tell("after"), value: units.show(one.time, "s", 2) }],
    source: run.tell("run"),
  };
}

function zone(wanted: Zone, inside: RunSummary["zone"], units: Units): Why {
  const { run } = wordsOf(units);
  return {
    title: run.tell("zone.title"),
    value: inside === null ? run.tell("zone.working") : units.show(inside.seconds, "s", 1),
    meaning: run.tell("zone.means"),
    formula: run.tell("zone.formula"),
    inputs: [
      { name: run.tell("zone.from"), value: units.show(wanted.from, "m", 2) },
      { name: run.tell("zone.to"), value: units.show(wanted.to, "m", 2) },
    ],
    source: run.tell("run"),
    note: run.tell("depthNote"),
  };
}

/** `band`: the beats as shown. */
function beats(found: Beat, band: string, one: NonNullable<RunSummary["running"]>, units: Units): Why {
  const { run } = wordsOf(units);
  return {
    title: run.tell("beat.title"),
    value: run.tell("beat.value", { band }),
    meaning: run.tell("beat.means"),
    formula: run.tell("beat.formula", { band: BEAT_BAND * 100 }),
    inputs: [
      { name: "St", value: units.bare(STROUHAL, "", 2) },
      { name: run.tell("beat.speed"), value: units.show(one.speed, "m/s", 2) },
      { name: run.tell("beat.width"), value: units.showSI(found.width, "mm", 1) },
      { name: run.tell("beat.attitude"), value: units.show(degrees(one.pitch), "°", 1, true) },
      {
        name: run.tell("beat.middle"),
        value: run.tell("beat.value", { band: units.bare(found.frequency, "", 1) }),
      },
    ],
    source: run.tell("beat.source"),
    note: run.tell("beat.note"),
  };
}

/** Each answer by what is asked. */
export const whys = { steady, deepest, toDepth, running, pauseTrim, pauseRise, pull, zone, beats };
