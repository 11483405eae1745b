import { fieldAt } from "../../../document";
import type { Scenario } from "../../../document";
import { withValue } from "../../state";
import type { Input } from "../../state";

type Target = NonNullable<Scenario["target"]>;
type Key = keyof Target;

/** A target that asks for what the bait does now: a place to start from. */
export const targetFrom = (net_g: number): Target => ({
  net_g: Number(net_g.toFixed(2)),
  netTolerance_g: 0.05,
});

/** The number of the target at a key, with label, unit and ranges from the schema. `usual`: what stands in for none. */
export function targetInput(key: Key, usual: number): Input {
  const path = `target.${key}`;
  const field = fieldAt(path);
  if (field === null || field.kind !== "number") throw new Error(`No number field at ${path}.`);
  const { label, unit, slider, min, max, above, help } = field;
  return {
    id: path,
    label,
    unit,
    slider,
    min,
    max,
    above,
    help,
    read: (from) => from.target?.[key] ?? usual,
    write: (from, value) => (from.target === undefined ? from : withValue(from, ["target", key], value)),
  };
}

/** How far the finished bait is from its target, g: above 0, weight may still be added. */
export const leftOf = (net_g: number, target: Target): number => net_g - target.net_g;
