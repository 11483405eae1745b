import { z } from "zod";
import { NO_TRAIL } from "../history";
import type { Trail } from "../history";
import { carryForward } from "../migrate";
import { readScenario } from "../parse";
import { scenarioSchema } from "../schema";
import type { Scenario } from "../schema";
import { tagList } from "./tags";

/** What views keep beside the document (readings half typed, what is ticked), each under a key of its own. */
export type Beside = Readonly<Record<string, unknown>>;

/** One bait as the browser keeps it. Never changed in place. */
export interface KeptBait {
  /** Identifies the bait in this browser for ever; two tabs on one bait have the same. */
  readonly id: string;
  /** Rises by one each time the record is written: whoever writes says on which revision the edit was made. */
  readonly revision: number;
  readonly scenario: Scenario;
  readonly trail: Trail;
  readonly beside: Beside;
  /** False: it is a ready bait that nobody has touched, and no list shows it. */
  readonly own: boolean;
  /** When it was made, and when it was last changed, in ms since 1970. */
  readonly made: number;
  readonly changed: number;
  /** When it was put into the bin; null: it is not there. */
  readonly binned: number | null;
  /** The text that was last saved to a file, or opened from one, in short (`fingerprint`); null: there is none. */
  readonly inFile: string | null;
  /** Words by which the list is searched; they are no part of the bait's file. */
  readonly tags?: readonly string[];
}

/** A state of a bait under a name. */
export interface BaitVersion {
  readonly name: string;
  /** ms since 1970. */
  readonly made: number;
  readonly scenario: Scenario;
}

/** What the list of baits needs of a record; the rest is read when the bait is opened. */
export type BaitHead = Omit<KeptBait, "trail" | "beside">;

export type ReadBait =
  | { readonly ok: true; readonly bait: KeptBait; readonly notes: readonly string[] }
  | { readonly ok: false; readonly why: string };

/** Reads a state that was kept of a bait under a name. The model's own rules wait until it is looked at. */
export function readVersion(value: unknown): BaitVersion | null {
  const read = version.safeParse(value);
  if (!read.success) return null;
  const carried = carryForward(read.data.scenario);
  if (!carried.ok) return null;
  const checked = scenarioSchema.safeParse(carried.document);
  return checked.success ? { ...read.data, scenario: checked.data } : null;
}

const way = z.array(z.union([z.string(), z.number().int().min(0)])).max(20);
const change = z.union([
  z.strictObject({
    at: way,
    start: z.number().int().min(0),
    out: z.array(z.unknown()),
    in: z.array(z.unknown()),
  }),
  z.strictObject({ at: way, from: z.unknown().optional(), to: z.unknown().optional() }),
]);
const step = z.strictObject({ label: z.string().max(400), delta: z.array(change) });
const trail = z.strictObject({ past: z.array(step).max(1000), future: z.array(step).max(1000) });
const time = z.number().min(0);
const version = z.object({ name: z.string().min(1).max(120), made: time, scenario: z.unknown() });
const head = z.object({
  id: z.string().min(1).max(64),
  revision: z.number().int().min(0),
  scenario: z.unknown(),
  own: z.boolean(),
  made: time,
  changed: time,
  binned: time.nullable(),
  inFile: z.string().max(64).nullable(),
  tags: z.exactOptional(tagList),
});

/**
 * Reads a record's list entry. What a browser has kept is trusted no more than a file. The model's own rules wait until the
 * bait is opened, because a list may hold hundreds.
 */
export function readHead(value: unknown): BaitHead | null {
  const read = head.safeParse(value);
  if (!read.success) return null;
  const carried = carryForward(read.data.scenario);
  if (!carried.ok) return null;
  const checked = scenarioSchema.safeParse(carried.document);
  return checked.success ? { ...read.data, scenario: checked.data } : null;
}

/**
 * Reads a whole record. Undo steps or views' state that cannot be read are left out, and a note says so: the bait
 * itself still opens.
 */
export function readKept(value: unknown, side: unknown): ReadBait {
  const read = head.safeParse(value);
  if (!read.success) return { ok: false, why: "What this browser kept of the bait is damaged." };
  const carried = carryForward(read.data.scenario);
  const problems = carried.ok ? [] : carried.problems;
  const checked = carried.ok ? readScenario(carried.document) : { ok: false as const, problems };
  if (!checked.ok) return { ok: false, why: checked.problems[0]?.message ?? "The bait is not readable." };
  const notes: string[] = carried.ok ? [...carried.notes] : [];
  const sides = z.object({ trail, beside: z.record(z.string().max(200), z.unknown()) }).safeParse(side);
  if (!sides.success) notes.push("Its steps of undo could not be read, so undo starts here.");
  // Steps were made on the document as it was kept. After a change of format they no longer fit it.
  const fits = sides.success && carried.ok && carried.notes.length === 0;
  return {
    ok: true,
    bait: {
      ...read.data,
      scenario: checked.scenario,
      trail: fits ? sides.data.trail : NO_TRAIL,
      beside: sides.success ? sides.data.beside : {},
    },
    notes,
  };
}
