import type { Scenario } from "../../../document";

type Target = NonNullable<Scenario["target"]>;

/** How far the finished bait is from its target, g: above 0, weight may still be added. */
export const leftOf = (net_g: number, target: Target): number => net_g - target.net_g;

/** The band of the bait as it is; of one before, only while this number still lies in it: a band beside a number has it within. */
export const bandAround = <B extends { readonly netBuoyancy: readonly [number, number] }>(
  net: number,
  { value, stale }: { readonly value: B | null; readonly stale: boolean },
): B | null =>
  value === null || (stale && (net < value.netBuoyancy[0] || net > value.netBuoyancy[1])) ? null : value;
