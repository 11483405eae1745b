import type { Band, Statics } from "../../../../model/statics";
import { LEVEL_WITHIN_DEG } from "../../../../runner";
import { REASONS } from "../../../words/reasons";
import type { Units } from "../../units";
import type { Why } from "../../why.svelte";
import { attitudeWords, degrees, millimetres } from "../figure";

/** `band` is null while it is being worked out. */
export function restWhy(statics: Statics, band: Band | null, units: Units): Why {
  const words = REASONS.in(units.language);
  const { rest } = statics;
  const pitch = rest.pitch === null ? null : degrees(rest.pitch);
  const spread = band?.restTrim ?? null;
  const across = millimetres(rest.B.x - rest.G.x);
  const above = millimetres(rest.B.z - rest.G.z);
  return {
    title: words.tell("rest.title"),
    value:
      pitch === null
        ? words.tell("rest.any")
        : `${units.show(pitch, "°", 1, true)} · ${attitudeWords(pitch, units.language)}`,
    meaning: words.tell("rest.meaning", { within: LEVEL_WITHIN_DEG }),
    formula: words.tell("rest.formula"),
    inputs: [
      { name: "x_B − x_G", value: units.show(across, "mm", 2, true) },
      { name: "z_B − z_G", value: units.show(above, "mm", 2, true) },
      ...(spread === null
        ? []
        : [
            {
              name: words.tell("most"),
              value: words.tell("range", {
                low: units.bare(degrees(spread[0]), "°", 1, true),
                high: units.show(degrees(spread[1]), "°", 1, true),
              }),
            },
          ]),
      { name: words.tell("rest.G"), value: units.show(millimetres(-rest.G.x), "mm", 2) },
      { name: words.tell("rest.B"), value: units.show(millimetres(-rest.B.x), "mm", 2) },
      ...(rest.others.length === 0
        ? []
        : [
            {
              name: words.tell("rest.others"),
              value: rest.others.map((one) => units.show(degrees(one), "°", 1, true)).join(", "),
            },
          ]),
    ],
    source: words.tell("rest.source", { book: words.tell("hydrostatics") }),
    ...(statics.floating === null ? {} : { note: words.tell("rest.note") }),
  };
}

export function leverWhy(statics: Statics, units: Units): Why {
  const words = REASONS.in(units.language);
  const BG = millimetres(statics.BG);
  const place = (at: { readonly x: number; readonly z: number }): string =>
    `${units.show(millimetres(0 - at.x), "mm", 2)}, ${units.show(millimetres(at.z), "mm", 2, true)}`;
  return {
    title: words.tell("lever.title"),
    value: units.show(BG, "mm", 2),
    meaning: words.tell("lever.meaning", {
      step: units.show(0.25, "mm", 2),
      angle: BG < 0.1 ? words.tell("lever.any") : units.show(degrees(Math.atan2(0.25, BG)), "°", 1),
    }),
    formula: "BG = √((x_B − x_G)² + (z_B − z_G)²)",
    inputs: [
      { name: words.tell("lever.G"), value: place(statics.G) },
      { name: words.tell("lever.B"), value: place(statics.B) },
    ],
    source: words.tell("lever.source", {
      book: words.tell("hydrostatics"),
      least: units.show(0.1, "mm", 1),
    }),
  };
}
