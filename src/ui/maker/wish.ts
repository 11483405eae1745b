import { compile, targetWords } from "../../document";
import type { Compiled, Scenario } from "../../document";
import { resolveTarget } from "../../model/bench";
import type { ResolvedTarget } from "../../model/bench";
import { fromSI } from "../../units";

export type Target = NonNullable<Scenario["target"]>;

/** A target as a maker says it: grams and their tolerance may be left to what the words come to. Units of the file. */
export type Wish = Omit<Target, "net_g" | "netTolerance_g"> &
  Partial<Pick<Target, "net_g" | "netTolerance_g">>;

/** How fast a bait shall rise or sink, by plain words: seconds for 300 mm. Common practice, no source. */
export const PACES = [
  { words: "slowly", seconds: 10 },
  { words: "at an even pace", seconds: 5 },
  { words: "fast", seconds: 2 },
] as const;
const EVEN = PACES[1].seconds;

/** What a word alone asks for: a bait that floats or sinks does so at an even pace until another is said. */
export function wishOf(behaves: NonNullable<Target["behaves"]>): Wish {
  return behaves === "suspends" ? { behaves } : { behaves, netFrom: "rise", secondsPer300mm: EVEN };
}

const tidy = (value: number, digits: number): number => Number(value.toFixed(digits));

/** What the words of a document's target come to for its bait; null where it has none. */
export function resolvedOf(
  scenario: Scenario,
  { bait, around, calibration }: Compiled = compile(scenario),
): ResolvedTarget | null {
  const words = targetWords(scenario);
  return words === null ? null : resolveTarget(bait, around, words, { bibFactor: calibration.bibFactor });
}

/**
 * The document with this target: grams that its words come to are written beside them, and a tolerance where none is given.
 * Where the words cannot be met the grams stay as they were: the page says what stands in the way.
 */
export function withWish(from: Scenario, wish: Wish): Scenario {
  const asked: Target = { net_g: 0, netTolerance_g: 1, ...wish };
  const compiled = compile({ ...from, target: asked });
  const words = targetWords({ ...from, target: asked });
  if (words === null) throw new Error("There is a target: it was just put there.");
  const { bait, around, calibration } = compiled;
  const given = { ...words, netTolerance: wish.netTolerance_g === undefined ? null : words.netTolerance };
  const { net } = resolveTarget(bait, around, given, { bibFactor: calibration.bibFactor });
  const target: Target = {
    ...wish,
    net_g: net === null ? (wish.net_g ?? from.target?.net_g ?? 0) : tidy(fromSI(net.value, "g"), 3),
    netTolerance_g:
      net === null
        ? (wish.netTolerance_g ?? from.target?.netTolerance_g ?? 0.05)
        : Math.max(0.001, tidy(fromSI(net.tolerance, "g"), 3)),
  };
  return { ...from, target };
}
