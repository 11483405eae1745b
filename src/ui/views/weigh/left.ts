import type { Scenario } from "../../../document";

type Target = NonNullable<Scenario["target"]>;

/** How far the finished bait is from its target, g: above 0, weight may still be added. */
export const leftOf = (net_g: number, target: Target): number => net_g - target.net_g;
