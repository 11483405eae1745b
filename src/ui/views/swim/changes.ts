import { differencesOf } from "../../../document";
import type { Scenario } from "../../../document";
import type { Units } from "../../state";

/** The document has its numbers with as many digits as were typed: no more than these are shown. */
const DIGITS = 6;

/**
 * What has been changed since a variant was pinned, a line each: by name, and by how much where it is one number. The
 * retrieve is not among it, since variants go through that of now. `of` tells texts of the document in the language read.
 */
export function changesSince(
  now: Scenario,
  pinned: Scenario,
  units: Units,
  of: (text: string) => string,
): readonly string[] {
  return differencesOf(now, pinned)
    .filter(({ what }) => what !== "retrieve")
    .map(({ what: english, values }) => {
      const what = of(english);
      if (values === null) return what;
      const { own, other, unit } = values;
      if (typeof own !== "number" || typeof other !== "number")
        return `${what}: ${of(String(other))} → ${of(String(own))}`;
      const convert = units.converter(unit);
      const digits = Math.max(decimals(convert(own)), decimals(convert(other)));
      const by = units.show(own - other, unit, digits, true);
      const from = units.bare(other, unit, digits);
      // A difference of temperatures is none that a thermometer shows.
      return `${what} ${from} → ${units.show(own, unit, digits)}${unit === "°C" ? "" : ` (${by})`}`;
    });
}

/** Decimals that a number needs. */
function decimals(value: number): number {
  const [, after = ""] = String(Number(value.toPrecision(DIGITS))).split(".");
  return Math.min(DIGITS, after.length);
}
