import { faultText } from "./fault";

/** A name with the next number behind it. */
export function numbered(name: string): string {
  const found = /^(.*) \((\d+)\)$/.exec(name);
  const number = found === null ? 2 : Number(found[2]) + 1;
  return `${(found?.[1] ?? name).slice(0, 110)} (${String(number)})`;
}

/** Why nothing is kept, and what to do, in words. */
export function unkept(fault: unknown): string {
  const full = fault instanceof Error && fault.name === "QuotaExceededError";
  return full
    ? "This browser has no room left for your baits. Empty the bin under ‘My baits’, or save this bait to a file."
    : `This browser does not keep your work now (${faultText(fault)}). Save the bait to a file.`;
}
