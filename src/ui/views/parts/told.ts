import type { App } from "../../state";

/** Words of the model of a rise, a depth or a tow: beside `Units.told`, metres and speeds in the units shown too. */
export const toldOfMotion = (units: App["units"], text: string): string =>
  (
    [
      ["cm/s", "mm/s", 10],
      ["m/s", "m/s", 1],
      ["m", "m", 1],
    ] as const
  ).reduce(
    (words, [written, unit, times]) =>
      units.unit(unit) === unit
        ? words
        : words.replace(
            // Not of an area, nor of another speed.
            new RegExp(`(\\d+(?:[.,](\\d+))?)[ \u202f]${written}(?![\\w/²³])`, "g"),
            (_, figure: string, decimals: string | undefined) =>
              units.show(
                times * Number(figure.replace(",", ".")),
                unit,
                times === 1 ? (decimals ?? "").length : 0,
              ),
          ),
    units.told(text),
  );
