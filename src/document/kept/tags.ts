import { z } from "zod";

const LONGEST = 40;

/** A tag as it is kept: with no more space than needed. */
export const tidyTag = (text: string): string => text.trim().replaceAll(/\s+/g, " ").slice(0, LONGEST);

/** The tags of one bait. */
export const tagList = z.array(z.string().min(1).max(LONGEST)).max(20);
