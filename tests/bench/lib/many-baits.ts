import { serializeLibrary } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { FORMS } from "../../../src/model/shaping";
import { SIZES, usualAnswers, usualSizes } from "../../../src/ui/maker/answers";
import { baitOf } from "../../../src/ui/maker/starter";

const WOODS = ["basswood", "balsa", "western red cedar", "beech", "poplar"] as const;
const TAGS = ["pond", "river", "sea", "for the class", "first run", "to be painted"] as const;
const [SHORTEST] = SIZES.length;

/** The same row of numbers from 0 to 1 each time (minimal standard generator; Park and Miller 1988). */
function chances(seed: number): () => number {
  let now = seed;
  return () => (now = (now * 48271) % 2147483647) / 2147483647;
}

/** Invented baits, each unlike every other: form, wood, sizes, water. `from`: the number of the first. */
export function inventedBaits(count: number, from = 1): readonly Scenario[] {
  const chance = chances(from);
  const one = <T>(of: readonly T[]): T => of[Math.floor(chance() * of.length)] as T;
  const made: Scenario[] = [];
  for (let tries = 0; made.length < count; tries++) {
    if (tries > 4 * count) throw new Error("too many of the invented baits cannot be made");
    const form = one(FORMS).key;
    const length = Math.max(SHORTEST, Math.round(500 + 800 * chance()) / 10);
    const answers = {
      ...usualAnswers(),
      ...usualSizes(form, length),
      form,
      length,
      wood: one(WOODS),
      temperature: Math.round(4 + 20 * chance()),
      name: `Invented ${String(from + made.length)}`,
    };
    try {
      made.push(baitOf(answers));
    } catch (fault) {
      // A blank of such sizes may not carry its own bib and hooks: the next one is tried.
      if (!(fault instanceof RangeError)) throw fault;
    }
  }
  return made;
}

/** Bytes that begin as a JPEG does and are as many as a small photo has. Base64. */
const photo = (): string => {
  const bytes = Buffer.alloc(60_000, 0x5a);
  bytes.set([0xff, 0xd8, 0xff, 0xe0]);
  return bytes.toString("base64");
};

/** The text of a file that holds them: each with a tag or two, every third with two versions, every tenth with a photo. */
export const fileOf = (baits: readonly Scenario[]): string =>
  serializeLibrary(
    baits.map((scenario, i) => ({
      scenario,
      tags: TAGS.filter((_, k) => i % TAGS.length === k || i % 7 === k),
      versions:
        i % 3 === 0 ? ["drawn", "before paint"].map((name, k) => ({ name, made: k + 1, scenario })) : [],
      photos: i % 10 === 0 ? { bait: photo() } : {},
    })),
    null,
  );
