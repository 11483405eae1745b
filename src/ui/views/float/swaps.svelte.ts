import { adoptSwap, swapParts } from "../../../document";
import type { BoxThing, Scenario } from "../../../document";
import type { Swap } from "../../../model/bench";
import { lineMaterial } from "../../../model/materials";
import { ModelClient } from "../../../runner";
import type { SwapAnswer } from "../../../runner";
import { toSI } from "../../../units";
import { boxOf } from "../../state/box.svelte";
import type { BoxState } from "../../state/box.svelte";
import { degrees, Later } from "../../state";
import { keptWith } from "../../state";
import type { App } from "../../state";

/** What the maker wants of the bait elsewhere, in units of the form. */
export interface Wish {
  readonly temperature: number;
  readonly salinity: number;
  /** g; null: as it has it now, in the document's water. */
  readonly net: number | null;
  /** Degrees; null: as it rests now. */
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

/** How near is near enough: a fiftieth of a gram and three degrees; common practice, no source. */
const NET_WITHIN_G = 0.02;
const TRIM_WITHIN_DEG = 3;

/** Hooks, rings and strips of round masses, named by them: a place to start from, all unweighed. */
const ROUND: readonly BoxThing[] = [
  ...[0.2, 0.3, 0.4, 0.5, 0.6, 0.8].map((g): BoxThing => ({
    kind: "hook",
    name: `treble of ${g.toFixed(2)} g`,
    count: 2,
    mass_g: g,
    density_g_ml: 7.8,
  })),
  ...[0.05, 0.08, 0.12, 0.18].map((g): BoxThing => ({
    kind: "ring",
    name: `ring of ${g.toFixed(2)} g`,
    count: 3,
    mass_g: g,
    density_g_ml: 7.8,
  })),
  ...[0.05, 0.1, 0.2].map((g): BoxThing => ({
    kind: "strip",
    name: `tin strip of ${g.toFixed(2)} g`,
    count: 4,
    mass_g: g,
    material: "tin",
  })),
];

interface Found {
  readonly answer: SwapAnswer;
  readonly scenario: Scenario;
}

/** Swaps from the box for another water, another float, or a leader that hangs at the nose. */
export class SwapState {
  readonly app: App;
  readonly box: BoxState;
  wish = $state.raw<Wish>({ temperature: 15, salinity: 35, net: null, trim: null, anyTrim: false });
  leader = $state.raw<Leader>({ on: false, length_mm: 300, diameter_mm: 0.35, material: "fluorocarbon" });
  readonly found = new Later<Found>();
  readonly #client = new ModelClient();

  constructor(app: App) {
    this.app = app;
    this.box = boxOf(app);
  }

  readonly parts = $derived.by(() => swapParts(this.box.now));

  /** Net wanted, g, and trim wanted, degrees (null: any). */
  readonly goal = $derived.by(() => {
    const { netBuoyancy, rest } = this.app.work.now.statics;
    const { net, trim, anyTrim } = this.wish;
    return {
      net: net ?? Number((netBuoyancy * 1e3).toFixed(2)),
      trim: anyTrim ? null : (trim ?? (rest.pitch === null ? null : Number(degrees(rest.pitch).toFixed(1)))),
    };
  });

  /** What was found belongs to another state of the document. */
  readonly old = $derived.by(
    () => this.found.value !== null && this.found.value.scenario !== this.app.work.scenario,
  );

  /** Puts hooks, rings and strips of round masses into the box, where they are not in it yet. */
  addRound(): void {
    const { things } = this.box.now;
    const missing = ROUND.filter((one) => things.every((other) => other.name !== one.name));
    this.box.put({ ...this.box.now, things: [...things, ...missing] });
  }

  async find(): Promise<void> {
    const { scenario } = this.app.work;
    const { temperature, salinity } = this.wish;
    const { net, trim } = this.goal;
    const line = lineMaterial(this.leader.material);
    if (line === null) throw new Error(`No line material ‘${this.leader.material}’ in the table.`);
    const job = {
      scenario,
      temperature,
      salinity,
      leader: this.leader.on
        ? {
            length: toSI(this.leader.length_mm, "mm"),
            diameter: toSI(this.leader.diameter_mm, "mm"),
            density: line.density,
          }
        : null,
      goal: {
        net: toSI(net, "g"),
        netTolerance: toSI(NET_WITHIN_G, "g"),
        trim: trim === null ? null : toSI(trim, "deg"),
        trimTolerance: toSI(TRIM_WITHIN_DEG, "deg"),
      },
      parts: this.parts,
    };
    await this.found.ask(async () => {
      const answer = await this.#client.swaps(job);
      return answer === null ? null : { answer, scenario };
    });
  }

  /** The swap goes into the document, and the water with it: one step of undo. */
  adopt(swap: Swap): void {
    const found = this.found.value;
    if (found === null || this.old) return;
    const { temperature, salinity } = this.wish;
    this.app.work.edit("swap", "a swap", (from) => {
      const next = adoptSwap(from, found.answer.spec, swap);
      return { ...next, water: { ...next.water, temperature_C: temperature, salinity_g_kg: salinity } };
    });
  }
}

/** The swaps of this page, kept while the page lives. */
export const swapsOf = keptWith((app) => new SwapState(app));
