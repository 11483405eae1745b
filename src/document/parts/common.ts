import { choice, flag, maybe, name, number } from "../fields";

/** Fields that several kinds of parts share. */

export const material = () => maybe(name("Material", "A name from the table of published densities."));
export const density = () =>
  maybe(
    number("Density", "g/mL", [0.01, 25], [0.1, 20, 0.01], "Wins over the material's published density."),
  );
export const mass = (label: string, slider: readonly [number, number, number], help = "") =>
  number(label, "g", [0, 2000], slider, help);
export const weighed = () =>
  maybe(flag("Weighed", "Read off a scale; otherwise a catalogue value with a wide uncertainty."));
export const inOut = (label: string) =>
  choice(
    label,
    ["inside", "outside"],
    "Inside counts in full; outside counts by what it exceeds the water it displaces.",
  );
