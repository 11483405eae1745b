import { serialize } from "../document";
import type { Scenario } from "../document";
import { sha256 } from "./sha256";

/**
 * What tells one document from another on paper: SHA-256 of the file as the program saves it, in UTF-8. So `sha256sum` of the
 * saved file begins with the same digits.
 */
export interface Fingerprint {
  /** 64 hexadecimal digits. */
  readonly full: string;
  /** Its first 12 digits, in fours: what stands on the sheets. */
  readonly short: string;
  /** The same digits without dashes: for names of files. */
  readonly plain: string;
}

const DIGITS = 12;

export function fingerprintOf(scenario: Scenario): Fingerprint {
  const full = sha256(new TextEncoder().encode(serialize(scenario)));
  const plain = full.slice(0, DIGITS);
  return { full, plain, short: plain.replace(/(.{4})(?=.)/g, "$1-") };
}
