import type { App } from "../../state";

/**
 * Words of the model of a target, a rise, a depth or a tow: beside `Units.told`, metres, speeds and temperatures in the units
 * shown too.
 */
export const toldOfMotion = (units: App["units"], text: string): string =>
  (
    [
      // Its inches have decimals of their own, as in its field.
      ["mm/s", 0],
      ["m/s", null],
      ["m", null],
      ["°C", 1],
    ] as const
  ).reduce(
    (words, [unit, digits]) =>
      units.unit(unit) === unit
        ? words
        : words.replace(
            // Not of an area, nor of another speed.
            new RegExp(`(\u2212?\\d+(?:[.,](\\d+))?)[ \u202f]${unit}(?![\\w/²³])`, "g"),
            (_, figure: string, decimals: string | undefined) =>
              units.show(
                Number(figure.replace(",", ".").replace("\u2212", "-")),
                unit,
                digits ?? (decimals ?? "").length,
              ),
          ),
    units.told(text),
  );
