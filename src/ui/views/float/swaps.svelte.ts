import { untrack } from "svelte";
import { adoptSwap, boxLeft, swapParts, targetWords } from "../../../document";
import type { BoxThing, Scenario } from "../../../document";
import type { Swap } from "../../../model/bench";
import { lineMaterial, lineMaterials } from "../../../model/materials";
import { ModelClient } from "../../../runner";
import type { SwapAnswer } from "../../../runner";
import { fromSI, toSI } from "../../../units";
import { wantedOf } from "../../maker";
import { FLOAT } from "../../words/float";
import { aFlag, aNumber, boxOf, degrees, atRest, groupOf, keptWith, Later, oneOf, orNull } from "../../state";
import type { App, BoxState, Units } from "../../state";

/** What the maker wants of the bait elsewhere, in units of the form. Null: not said; the target says it, or the bait as it is. */
export interface Wish {
  readonly temperature: number | null;
  readonly salinity: number | null;
  /** g */
  readonly net: number | null;
  /** Degrees. */
  readonly trim: number | null;
  /** No matter how it hangs. */
  readonly anyTrim: boolean;
}
export interface Leader {
  readonly on: boolean;
  readonly length_mm: number;
  readonly diameter_mm: number;
  readonly material: string;
}

/** Where neither the maker nor a target says anything: the sea in its usual season. */
const SEA = { temperature: 15, salinity: 35 } as const;

/** How near is near enough: a fiftieth of a gram and three degrees; common practice, no source. */
const NET_WITHIN_G = 0.02;
const TRIM_WITHIN_DEG = 3;

/**
 * Hooks, rings and strips of round masses, named by them in the unit shown, all unweighed: what is looked through where the
 * box has none.
 */
function roundThings(units: Units): readonly BoxThing[] {
  const words = FLOAT.in(units.language);
  // A name is plain text in a file: no narrow space.
  const of = (what: "treble" | "ring" | "tin", g: number): string =>
    words.tell(`round.${what}`, { mass: units.show(g, "g", 2).replace(/\s/g, " ") });
  return [
    ...[0.2, 0.3, 0.4, 0.5, 0.6, 0.8].map((g): BoxThing => ({
      kind: "hook",
      name: of("treble", g),
      count: 2,
      mass_g: g,
      density_g_ml: 7.8,
    })),
    ...[0.05, 0.08, 0.12, 0.18].map((g): BoxThing => ({
      kind: "ring",
      name: of("ring", g),
      count: 3,
      mass_g: g,
      density_g_ml: 7.8,
    })),
    ...[0.05, 0.1, 0.2].map((g): BoxThing => ({
      kind: "strip",
      name: of("tin", g),
      count: 4,
      mass_g: g,
      material: "tin",
    })),
  ];
}

interface Found {
  readonly answer: SwapAnswer;
  readonly scenario: Scenario;
  /** What was asked of it. */
  readonly key: string;
}

/** Swaps from the box for another water, another float, or a leader that hangs at the nose. */
export class SwapState {
  readonly app: App;
  readonly box: BoxState;
  wish = $state.raw<Wish>({ temperature: null, salinity: null, net: null, trim: null, anyTrim: false });
  /** The section is open and in sight: only then is anything looked for. */
  seen = $state(false);
  leader = $state.raw<Leader>({ on: false, length_mm: 300, diameter_mm: 0.35, material: "fluorocarbon" });
  readonly found = new Later<Found>();
  readonly #client = new ModelClient();
  /** What was last looked for. */
  #asked: { readonly scenario: Scenario; readonly key: string } | null = null;

  constructor(app: App) {
    this.app = app;
    this.box = boxOf(app);
    app.beside.keep<Pick<SwapState, "wish" | "leader">>("float/swaps", "place", this, {
      wish: groupOf<Wish>({
        temperature: orNull(aNumber),
        salinity: orNull(aNumber),
        net: orNull(aNumber),
        trim: orNull(aNumber),
        anyTrim: aFlag,
      }),
      leader: groupOf<Leader>({
        on: aFlag,
        length_mm: aNumber,
        diameter_mm: aNumber,
        material: oneOf(...lineMaterials.map((one) => one.name)),
      }),
    });
  }

  readonly #own = $derived.by(() => swapParts(boxLeft(this.box.now, this.app.work.scenario.bait)));

  /** The box holds nothing that could be swapped: round masses stand in. */
  readonly round = $derived(this.#own.length === 0);

  readonly parts = $derived.by(() =>
    this.round ? swapParts({ ...this.box.now, things: [...roundThings(this.app.units)] }) : this.#own,
  );

  /** The water that the bait is wanted for: as said, else the target's, else, without a target, the sea. */
  readonly water = $derived.by(() => {
    const { target, water } = this.app.work.scenario;
    const { coldest_C: coldest, warmest_C: warmest } = target ?? {};
    const season =
      coldest !== undefined && warmest !== undefined ? (coldest + warmest) / 2 : (coldest ?? warmest);
    const own = targetWords(this.app.work.scenario)?.salinity ?? null;
    // Without a target the bait is as it should be in its own water: it is another one that is asked for.
    return {
      temperature: this.wish.temperature ?? season ?? (own === null ? SEA.temperature : water.temperature_C),
      salinity: this.wish.salinity ?? own ?? SEA.salinity,
    };
  });

  /** Net wanted, g, and trim wanted, degrees (null: any): as said, else the target's, else those of the bait as it is. */
  readonly goal = $derived.by(() => {
    const { netBuoyancy, rest } = this.app.work.now.statics;
    const { net, trim, anyTrim } = this.wish;
    const target = wantedOf(this.app.work.now, this.app.figures.goal.value);
    const own = rest.pitch === null ? null : Number(degrees(rest.pitch).toFixed(1));
    return {
      net: net ?? Number((target?.net_g ?? fromSI(netBuoyancy, "g")).toFixed(2)),
      netWithin: target?.netTolerance_g ?? NET_WITHIN_G,
      trim: anyTrim ? null : (trim ?? target?.trim_deg ?? own),
      trimWithin: target?.trimTolerance_deg ?? TRIM_WITHIN_DEG,
      fromTarget: target !== undefined,
    };
  });

  /** What was found answers another question: of another state of the document, or with other wishes. */
  readonly old = $derived.by((): boolean => {
    const { value } = this.found;
    if (value === null) return false;
    const { scenario, ...rest } = this.#job();
    return value.scenario !== scenario || value.key !== JSON.stringify(rest);
  });

  #job() {
    const { scenario } = this.app.work.now;
    const { net, netWithin, trim, trimWithin } = this.goal;
    const line = lineMaterial(this.leader.material);
    if (line === null) throw new Error(`No line material ‘${this.leader.material}’ in the table.`);
    return {
      scenario,
      ...this.water,
      leader: this.leader.on
        ? {
            length: toSI(this.leader.length_mm, "mm"),
            diameter: toSI(this.leader.diameter_mm, "mm"),
            density: line.density,
          }
        : null,
      goal: {
        net: toSI(net, "g"),
        netTolerance: toSI(netWithin, "g"),
        trim: trim === null ? null : toSI(trim, "deg"),
        trimTolerance: toSI(trimWithin, "deg"),
      },
      parts: this.parts,
    };
  }

  /**
   * Looks through the box for the life of the component that calls it: when the section comes into sight, and whenever what
   * it asks has changed and the hand rests. Out of sight, what was found stays.
   */
  follow(): void {
    $effect(() => {
      if (!this.seen) return;
      const job = this.#job();
      const { scenario, ...rest } = job;
      const key = JSON.stringify(rest);
      const same = this.#asked?.scenario === scenario && this.#asked.key === key;
      if (same && !untrack(() => this.found.stale)) return;
      const waiting = untrack(() => this.found.value !== null);
      this.found.outdate();
      return atRest(() => {
        this.#asked = { scenario, key };
        void this.found.ask(async () => {
          const answer = await this.#client.swaps(job);
          return answer === null ? null : { answer, scenario, key };
        });
      }, waiting);
    });
  }

  /** The swap goes into the document, and the water with it: one step of undo. */
  adopt(swap: Swap): void {
    const found = this.found.value;
    if (found === null || this.old) return;
    const { temperature, salinity } = this.water;
    this.app.work.edit("swap", "a swap", (from) => {
      const next = adoptSwap(from, found.answer.spec, swap);
      return { ...next, water: { ...next.water, temperature_C: temperature, salinity_g_kg: salinity } };
    });
  }
}

/** The swaps of this page, kept while the page lives. */
export const swapsOf = keptWith((app) => new SwapState(app));
