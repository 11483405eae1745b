import type { App } from "../../state";

/** Words of the model of a rise, a depth or a tow: beside `Units.told`, metres and speeds in the units shown too. */
export const toldOfMotion = (units: App["units"], text: string): string =>
  (
    [
      // Its inches have decimals of their own, as in its field.
      ["mm/s", 0],
      ["m/s", null],
      ["m", null],
    ] as const
  ).reduce(
    (words, [unit, digits]) =>
      units.unit(unit) === unit
        ? words
        : words.replace(
            // Not of an area, nor of another speed.
            new RegExp(`(\\d+(?:[.,](\\d+))?)[ \u202f]${unit}(?![\\w/²³])`, "g"),
            (_, figure: string, decimals: string | undefined) =>
              units.show(Number(figure.replace(",", ".")), unit, digits ?? (decimals ?? "").length),
          ),
    units.told(text),
  );
