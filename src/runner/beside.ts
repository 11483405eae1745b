import { exchanges, readScenario } from "../document";
import type { Exchange, Scenario } from "../document";
import { restTrim, wrap } from "../model/statics";
import { toSI } from "../units";

/** What a bait weighs in water and how it hangs: enough to tell what a difference does. SI. */
interface Hang {
  /** Net buoyancy, kg. */
  readonly net: number;
  /** Rest trim under water, rad; null where it rests in any attitude. */
  readonly trim: number | null;
}

/** What one difference does to the first bait when it alone is taken over. */
export type Effect =
  | { readonly ok: true; readonly net: number; readonly trim: number | null }
  | { readonly ok: false; readonly why: string };

export interface RankedExchange {
  readonly exchange: Exchange;
  readonly effect: Effect;
}

/** Two baits side by side. */
export interface SideBySide {
  /** The largest effect first; what cannot be taken over alone stands last. */
  readonly ranked: readonly RankedExchange[];
  /** All differences together: what the other bait has more than the first. */
  readonly all: Effect;
}

/**
 * What counts as much as what in the order: 0.05 g of net buoyancy is about 3 cm/s of rise of a 16 mL bait, and 2° is what an
 * eye sees in a tub. Common practice, no source.
 */
const GRAMS = 5e-5;
const ANGLE = toSI(2, "deg");

function hangOf(scenario: Scenario): Hang | string {
  const read = readScenario(scenario);
  if (!read.ok) return read.problems[0]?.message ?? "it cannot be built";
  const { bait, around } = read.compiled;
  const rest = restTrim(bait);
  const { mass, displaced } = bait.rigid(rest.side);
  return { net: around.density * displaced - mass, trim: rest.pitch };
}

/** The differences of two baits, each with its effect by the model, the largest first. */
export function sideBySide(own: Scenario, other: Scenario): SideBySide {
  const base = hangOf(own);
  const effect = (next: Scenario): Effect => {
    if (typeof base === "string") return { ok: false, why: base };
    const then = hangOf(next);
    if (typeof then === "string") return { ok: false, why: then };
    return {
      ok: true,
      net: then.net - base.net,
      trim: then.trim === null || base.trim === null ? null : wrap(then.trim - base.trim),
    };
  };
  const size = (one: Effect): number =>
    one.ok ? Math.max(Math.abs(one.net) / GRAMS, Math.abs(one.trim ?? 0) / ANGLE) : -1;
  const ranked = exchanges(own, other)
    .map((exchange) => ({ exchange, effect: effect(exchange.scenario) }))
    .sort((a, b) => size(b.effect) - size(a.effect));
  return { ranked, all: effect(other) };
}
