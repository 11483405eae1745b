import type { Band } from "../../../model/statics";
import { LEVEL_WITHIN_DEG } from "../../../runner";
import type { Units } from "../units";
import type { Worked } from "../workspace.svelte";
import { attitudeWords, degrees, type Figure, HYDROSTATICS, millimetres } from "./figure";

/** `band` is null while it is being worked out. */
export function restFigure({ statics }: Worked, band: Band | null): Figure {
  const { rest } = statics;
  const pitch = rest.pitch === null ? null : degrees(rest.pitch);
  const spread = band?.restTrim ?? null;
  return {
    key: "rest",
    label: "At rest under water",
    value: pitch,
    unit: "°",
    digits: 1,
    signed: true,
    words: pitch === null ? "any attitude: G and B coincide" : attitudeWords(pitch),
    why: (units) => {
      const across = millimetres(rest.B.x - rest.G.x);
      const above = millimetres(rest.B.z - rest.G.z);
      return {
        title: "Attitude at rest under water",
        value: pitch === null ? "any" : `${units.show(pitch, "°", 1, true)} · ${attitudeWords(pitch)}`,
        meaning:
          "Held still under water and let go, the bait turns until its centre of buoyancy B stands above its centre of gravity G. " +
          `Nose-up is positive; 'level' is said within ±${LEVEL_WITHIN_DEG}°.`,
        formula: "θ = atan2(x_B − x_G, z_B − z_G), x forward, z up",
        inputs: [
          { name: "x_B − x_G", value: units.show(across, "mm", 2, true) },
          { name: "z_B − z_G", value: units.show(above, "mm", 2, true) },
          ...(spread === null
            ? []
            : [
                {
                  name: "95 % of baits made so",
                  value: `${units.bare(degrees(spread[0]), "°", 1, true)} to ${units.show(degrees(spread[1]), "°", 1, true)}`,
                },
              ]),
          { name: "station of G", value: units.show(millimetres(-rest.G.x), "mm", 2) },
          { name: "station of B", value: units.show(millimetres(-rest.B.x), "mm", 2) },
          ...(rest.others.length === 0
            ? []
            : [
                {
                  name: "with the balls elsewhere also at",
                  value: rest.others.map((one) => units.show(degrees(one), "°", 1, true)).join(", "),
                },
              ]),
        ],
        source: `${HYDROSTATICS} Hooks hang freely and act at their eyes; loose balls lie at the lowest point.`,
        ...(statics.floating === null
          ? {}
          : {
              note: "For a bait that floats strongly this is only the first moment of its rise; it can be steep while the bait floats nearly level.",
            }),
      };
    },
  };
}

export function leverFigure({ statics }: Worked): Figure {
  const BG = millimetres(statics.BG);
  return {
    key: "BG",
    label: "B above G",
    value: BG,
    unit: "mm",
    digits: 2,
    signed: false,
    words: "",
    why: (units) => ({
      title: "Distance from G to B",
      value: units.show(BG, "mm", 2),
      meaning:
        "The lever that turns the bait upright and to its trim. A small one tips far with little: " +
        `here ${units.show(0.25, "mm", 2)} of G lengthwise is ${BG < 0.1 ? "any angle" : units.show(degrees(Math.atan2(0.25, BG)), "°", 1)}.`,
      formula: "BG = √((x_B − x_G)² + (z_B − z_G)²)",
      inputs: [
        { name: "G: station, height", value: placeText(statics.G, units) },
        { name: "B: station, height", value: placeText(statics.B, units) },
      ],
      source: `${HYDROSTATICS} Below ${units.show(0.1, "mm", 1)} the attitude at rest has no number.`,
    }),
  };
}

function placeText(at: { readonly x: number; readonly z: number }, units: Units): string {
  return `${units.show(millimetres(0 - at.x), "mm", 2)}, ${units.show(millimetres(at.z), "mm", 2, true)}`;
}

/** Upright or not under water, as words for a bait that has no waterline. */
export function uprightUnderWater({ statics }: Worked): string {
  switch (statics.upright.bellyDownUnderWater) {
    case null:
      return "G and B coincide: nothing keeps it upright";
    case true:
      return "belly down under water";
    case false:
      return "belly up under water";
  }
}
