import { z } from "zod";
import { PART_GROUPS } from "../model/parts";
import { above, choice, flag, maybe, name, number, point, text, whole } from "./fields";

/** Keys of the scenario that the bench and the tub fill: target, readings, corrections. */

/** Groups of items that a bench reading may name. */
const GROUPS = ["body", ...PART_GROUPS];

/** Stages of making, in their order. */
export const STAGES = [
  "blank",
  "sealed",
  "laid out",
  "closed",
  "painted",
  "clear-coated",
  "dressed",
] as const;
export type Stage = (typeof STAGES)[number];
/** A stage in the file. */
export const stage = () =>
  maybe(choice("Stage", STAGES, "When it comes onto the bait; absent: the usual one for its kind of item."));

const notYet = (label: string, help: string) =>
  maybe(z.array(name("Part")).max(400).meta({ title: label, description: help }));

const reading = {
  reading_g: number("Reading", "g", [0, 5000], [0, 60, 0.01]),
  resolution_g: above("Scale's resolution", "g", [0, 100], [0.01, 1, 0.01]),
  with: z
    .array(name("Part on the scale"))
    .min(1)
    .max(400)
    .meta({ title: "On the scale", description: `Groups (${GROUPS.join(", ")}) or names of single items.` }),
  air: maybe(flag("Correct for air buoyancy", "m = W + ρ_air (V − W/8.0)")),
  before: notYet(
    "Read before these were cut",
    "Groups or names of what was not yet cut into the body: a blank weighed before it was drilled.",
  ),
  repeats_g: maybe(
    z
      .array(number("Repeat", "g", [0, 5000], [0, 60, 0.01]))
      .min(1)
      .max(50)
      .meta({ title: "Repeats", description: "The single readings that reading_g is the mean of." }),
  ),
};
const pusher = z
  .strictObject({
    diameter_mm: number("Pin diameter", "mm", [0, 20], [0.2, 3, 0.05]),
    depth_mm: number("Pin's depth under water", "mm", [0, 1000], [0, 100, 1]),
    count: whole("Pins", [1, 20], [1, 6, 1]),
  })
  .meta({
    title: "Pusher",
    description: "Pins or wires that go under with the piece; their volume is taken off.",
  });
export const bench = z
  .discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("displacement"),
      ...reading,
      tap_C: number("Tap water", "°C", [-2, 40], [0, 30, 0.5], "Temperature of the water in the container."),
      pusher: maybe(pusher),
    }),
    z.strictObject({ kind: z.literal("weighing"), ...reading }),
  ])
  .meta({ title: "Bench reading" });

export const target = z
  .strictObject({
    net_g: number(
      "Net buoyancy wanted",
      "g",
      [-2000, 2000],
      [-2, 5, 0.01],
      "Of the finished bait; positive floats.",
    ),
    netTolerance_g: above("Tolerance of net buoyancy", "g", [0, 100], [0.005, 0.5, 0.005]),
    trim_deg: maybe(
      number("Rest trim wanted", "°", [-180, 180], [-45, 45, 0.5], "Nose-up positive; absent: any."),
    ),
    trimTolerance_deg: maybe(above("Tolerance of trim", "°", [0, 180], [0.5, 15, 0.5])),
    leastBG_mm: maybe(
      number("Least BG", "mm", [0, 100], [0, 5, 0.1], "How far B must stand above G: the upright margin."),
    ),
    behaves: maybe(
      choice("It", ["floats", "suspends", "sinks"], "What the finished bait does when the line is slack."),
    ),
    netFrom: maybe(
      choice(
        "Net buoyancy follows",
        ["grams", "rise"],
        "Absent: grams, net_g. With rise: the speed wanted; net_g is then what that came to when it was set.",
      ),
    ),
    rise_mm_s: maybe(number("Rise wanted", "mm/s", [-3000, 3000], [-200, 300, 1], "Negative sinks.")),
    secondsPer300mm: maybe(
      above(
        "Time for 300 mm",
        "s",
        [0, 3600],
        [1, 60, 0.5],
        "Wins over rise_mm_s; it sinks where behaves says so.",
      ),
    ),
    depth_m: maybe(number("Depth wanted", "m", [0, 100], [0, 10, 0.1])),
    depthTolerance_m: maybe(above("Tolerance of depth", "m", [0, 100], [0.05, 2, 0.05])),
    speed_m_s: maybe(above("Speed at that depth", "m/s", [0, 10], [0.2, 3, 0.1])),
    coldest_C: maybe(number("Coldest water", "°C", [-2, 40], [0, 30, 0.5])),
    warmest_C: maybe(number("Warmest water", "°C", [-2, 40], [0, 30, 0.5])),
    water: maybe(choice("Water", ["fresh", "brackish", "salt"], "Absent: that of the scenario.")),
    salinity_g_kg: maybe(
      number(
        "Salinity",
        "g/kg",
        [0, 42],
        [0, 40, 0.5],
        "Wins over the kind of water: fresh 0, brackish 10, salt 35.",
      ),
    ),
  })
  .meta({ title: "Target", description: "What the bait is meant to do; the verdict is against it." });

export const correction = z
  .strictObject({
    name: name("Name"),
    mass_g: number("Mass", "g", [-500, 500], [-2, 2, 0.01], "Heavier than computed; below 0 lighter."),
    shift_mm: z
      .tuple([
        number("G further aft", "mm", [-200, 200], [-5, 5, 0.05]),
        number("G further up", "mm", [-200, 200], [-5, 5, 0.05]),
      ])
      .meta({ title: "Shift of G", description: "[aft, up] of the whole bait's centre of gravity." }),
    netDeviation_g: maybe(above("Standard uncertainty of net buoyancy", "g", [0, 100], [0.001, 0.5, 0.001])),
    aftDeviation_mm: maybe(above("Standard uncertainty along", "mm", [0, 100], [0.01, 2, 0.01])),
    upDeviation_mm: maybe(above("Standard uncertainty in height", "mm", [0, 100], [0.01, 2, 0.01])),
    without: notYet(
      "Not yet on the bait",
      "Groups or names of items that the bait in the tub did not carry.",
    ),
    from: maybe(text("From", 400, "The reading it came from, in words.")),
  })
  .meta({ title: "Correction by a tub reading" });

const tubReading = {
  without: notYet("Not yet on the bait", "Groups or names of items that the bait in the tub did not carry."),
  temperature_C: number("Tub temperature", "°C", [-2, 40], [0, 30, 0.5]),
  salinity_g_kg: number("Tub salinity", "g/kg", [0, 42], [0, 40, 0.5]),
};
export const tub = z
  .discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("timed"),
      direction: choice("Direction", ["rises", "sinks"]),
      height_mm: above("Height between the marks", "mm", [0, 5000], [50, 1000, 5]),
      runUp_mm: number("Run-up before the first mark", "mm", [0, 5000], [0, 500, 5]),
      times_s: z
        .array(above("Time", "s", [0, 3600], [0.2, 60, 0.1]))
        .min(1)
        .max(50)
        .meta({ title: "Times" }),
      ...tubReading,
    }),
    z.strictObject({
      kind: z.literal("attitude"),
      pitch_deg: number("Attitude seen", "°", [-180, 180], [-90, 90, 1], "Nose-up positive."),
      state: choice("While it", ["rest", "moving"], "Rests under water, or rises or sinks steadily."),
      deviation_deg: maybe(above("Standard uncertainty", "°", [0, 90], [0.5, 10, 0.5], "Default 2.")),
      ...tubReading,
    }),
    z.strictObject({
      kind: z.literal("waterline"),
      nose_mm: point("Mark at the nose", "Where the water meets the outline."),
      tail_mm: point("Mark at the tail", "Where the water meets the outline."),
      deviation_mm: maybe(above("Standard uncertainty", "mm", [0, 20], [0.1, 3, 0.1], "Default 0.5.")),
      ...tubReading,
    }),
  ])
  .meta({ title: "Tub reading" });
