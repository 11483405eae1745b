/** What is known of a fault, in words. */
export function faultText(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
