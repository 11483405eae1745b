import { readKept } from "../../document";
import type { KeptBait } from "../../document";

/** The parts of the browser's storage that are used; null where it gives none. */
export type Slips = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length"> | null;

const PREFIX = "trimwright/words/";

/** What a page that goes leaves behind: the record as it was, and as it is now. */
export interface Words {
  readonly slip: string;
  readonly base: KeptBait | null;
  readonly mine: KeptBait;
}

/**
 * Leaves a last word as the page goes. A database's write takes longer than a going page lives; this storage is
 * written at once. False where it did not take it.
 */
export function leaveWords(slips: Slips, page: string, base: KeptBait | null, mine: KeptBait): boolean {
  try {
    if (slips === null) return false;
    slips.setItem(PREFIX + page, JSON.stringify({ base, mine }));
    return true;
  } catch {
    return false;
  }
}

/** Takes the last word back: the database has it. */
export function dropWords(slips: Slips, page: string): void {
  try {
    slips?.removeItem(PREFIX + page);
  } catch {
    // Forbidden meanwhile: there is nothing to take back either.
  }
}

/** All last words that pages have left. What cannot be read among them is dropped. */
export function hearWords(slips: Slips): readonly Words[] {
  try {
    if (slips === null) return [];
    const keys = Array.from({ length: slips.length }, (_, i) => slips.key(i)).filter(
      (key): key is string => key?.startsWith(PREFIX) === true,
    );
    return keys.flatMap((key) => {
      const read = readWords(slips.getItem(key));
      if (read === null) slips.removeItem(key);
      return read === null ? [] : [{ slip: key.slice(PREFIX.length), ...read }];
    });
  } catch {
    return [];
  }
}

function readWords(text: string | null): Omit<Words, "slip"> | null {
  try {
    const { base, mine } = JSON.parse(text ?? "null") as { readonly base: unknown; readonly mine: unknown };
    const [was, is] = [base === null ? null : readSide(base), readSide(mine)];
    return is === null ? null : { base: was, mine: is };
  } catch {
    return null;
  }
}

function readSide(value: unknown): KeptBait | null {
  const { trail, beside } = value as Record<string, unknown>;
  const read = readKept(value, { trail, beside });
  return read.ok ? read.bait : null;
}
