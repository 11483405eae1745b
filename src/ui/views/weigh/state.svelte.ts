import { adoptPlan, pieceMass } from "../../../document";
import type { Box, Scenario, Stage } from "../../../document";
import type { RiseBand, SensitivityRow } from "../../../model/bench";
import type { Plan, PlanResult } from "../../../model/statics";
import { ModelClient } from "../../../runner";
import { faultText, keptWith, Later } from "../../state";
import type { App } from "../../state";
import { boxOf } from "../../state/box.svelte";
import type { BoxState } from "../../state/box.svelte";
import { withoutBallast } from "./plan";

/** The jobs of the bench, in the order of the work. */
export const JOBS = [
  { key: "account", label: "Account" },
  { key: "volume", label: "Under water" },
  { key: "weighings", label: "On the scale" },
  { key: "plan", label: "Ballast plan" },
  { key: "box", label: "Own box" },
  { key: "effects", label: "What changes what" },
  { key: "bands", label: "How sure" },
] as const;
export type Job = (typeof JOBS)[number]["key"];

/** How a piece is brought under water. */
export type Way = "held" | "hung" | "sample";

/** A weighing under water as it is being done; nothing of it is in the document until it is taken. Units of the file. */
export class UnderWater {
  way = $state<Way>("held");
  /** Steps that have been seen to. */
  checked = $state.raw<readonly string[]>([]);
  readings = $state.raw<readonly number[]>([]);
  /** In air, of a piece hung on a thread or of a sample. */
  inAir = $state.raw<readonly number[]>([]);
  resolution = $state(0.01);
  tap = $state(20);
  pins = $state.raw({ diameter: 1, depth: 20, count: 0 });
  thread = $state.raw({ diameter: 0.2, depth: 20, count: 0 });
  air = $state(false);
  /** Items on the scale, by their labels in the account. */
  parts = $state.raw<readonly string[]>(["body"]);
  /** Items whose place had been cut into the body already (of a piece that is weighed in air too). */
  cut = $state.raw<readonly string[]>([]);

  /** For the next one: same scale, same water, same pusher. */
  clear(): void {
    this.readings = [];
    this.inAir = [];
    this.checked = [];
  }
}

/** A weighing in air as it is being done. */
export class OnScale {
  readings = $state.raw<readonly number[]>([]);
  resolution = $state(0.01);
  air = $state(false);
  parts = $state.raw<readonly string[]>(["body"]);
  /** Items whose place had been cut into the body already. */
  cut = $state.raw<readonly string[]>([]);

  clear(): void {
    this.readings = [];
  }
}

/** Where weights may go, mm. */
export interface Zone {
  readonly from: number;
  readonly to: number;
  /** Heights above the datum line; null: as the body allows. */
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly wall: number;
  readonly clearance: number;
}

/** An answer with what it was asked of: it is of yesterday when the document or the box has changed. */
interface Planned {
  readonly result: PlanResult;
  /** The open document then, and the one that the plans' weights go onto. */
  readonly of: Scenario;
  readonly onto: Scenario;
  readonly box: Box;
  readonly key: string;
}

/** Ballast plans: what is asked, and the answer. */
export class Planning {
  /** Null: not said yet, then a tenth of the length stays free at either end. */
  #zone = $state.raw<Partial<Zone>>({});
  places = $state(2);
  /** The ballast that is there makes room. */
  replace = $state(true);
  answer = $state.raw<Planned | null>(null);
  busy = $state(false);
  failure = $state.raw<string | null>(null);
  readonly #app: App;
  readonly #box: BoxState;
  readonly #client: ModelClient;

  constructor(app: App, box: BoxState, client: ModelClient) {
    this.#app = app;
    this.#box = box;
    this.#client = client;
  }

  get zone(): Zone {
    const length = this.#app.work.scenario.bait.length_mm;
    const tidy = (mm: number): number => Math.round(mm * 2) / 2;
    return {
      from: tidy(length * 0.1),
      to: tidy(length * 0.9),
      lowest: null,
      highest: null,
      wall: 1.5,
      clearance: 1,
      ...this.#zone,
    };
  }

  setZone(change: Partial<Zone>): void {
    this.#zone = { ...this.#zone, ...change };
  }

  forget(): void {
    this.#zone = {};
    this.answer = null;
    this.failure = null;
  }

  get #key(): string {
    return JSON.stringify([this.zone, this.places, this.replace]);
  }

  /** The answer is of other figures than stand here now. */
  get stale(): boolean {
    const { answer } = this;
    return (
      answer !== null &&
      (answer.of !== this.#app.work.scenario || answer.box !== this.#box.now || answer.key !== this.#key)
    );
  }

  async ask(): Promise<void> {
    const { work } = this.#app;
    work.settle();
    const of = work.scenario;
    const box = this.#box.now;
    const key = this.#key;
    const mm = (value: number): number => value / 1e3;
    const { from, to, lowest, highest, wall, clearance } = this.zone;
    this.failure = null;
    const stripped = this.replace ? withoutBallast(work.now) : ({ ok: true, scenario: of } as const);
    if (!stripped.ok) {
      this.answer = null;
      this.failure = stripped.why;
      return;
    }
    const onto = stripped.scenario;
    this.busy = true;
    try {
      const result = await this.#client.plan({
        scenario: onto,
        box,
        places: this.places,
        zone: {
          from: mm(from),
          to: mm(to),
          lowest: lowest === null ? null : mm(lowest),
          highest: highest === null ? null : mm(highest),
          wall: mm(wall),
          clearance: mm(clearance),
        },
      });
      // Null: a newer question has been asked, and speaks for itself.
      if (result === null) return;
      this.answer = { result, of, onto, box, key };
      this.busy = false;
    } catch (fault) {
      this.answer = null;
      this.failure = faultText(fault);
      this.busy = false;
    }
  }

  /** The plan's weights into the document: one step of undo. */
  adopt(plan: Plan): void {
    const { answer } = this;
    if (answer === null || answer.of !== this.#app.work.scenario) return;
    if (this.#app.work.edit("plan", "ballast plan", () => adoptPlan(answer.onto, plan)))
      this.#app.files.say("The plan's weights are in the document. Undo takes them out again.");
  }
}

/** What the Weigh view shows and what has been typed into it; outlives a change of view. */
export class WeighState {
  job = $state<Job>("account");
  /** How far the bait has been made. */
  stage = $state<Stage>("blank");
  /** The target was just set: its fields are opened. */
  targetOpened = $state(false);
  readonly under = new UnderWater();
  readonly scale = new OnScale();
  readonly box: BoxState;
  readonly plan: Planning;
  readonly effects = new Later<readonly SensitivityRow[]>();
  readonly riseBand = new Later<RiseBand>();
  readonly app: App;
  readonly #client = new ModelClient();
  #lineage: number;

  constructor(app: App) {
    this.app = app;
    this.#lineage = app.work.lineage;
    this.box = boxOf(app);
    this.plan = new Planning(app, this.box, this.#client);
  }

  /** Readings half taken and a zone belong to the bait that was open: with another document they begin anew. */
  open(lineage: number): void {
    if (lineage === this.#lineage) return;
    this.#lineage = lineage;
    this.stage = "blank";
    for (const one of [this.under, this.scale]) {
      one.clear();
      one.parts = ["body"];
      one.cut = [];
    }
    this.plan.forget();
  }

  /** Masses of the hooks in the box, kg. */
  get hooks(): readonly number[] {
    return this.box.now.things.flatMap((one) => {
      const piece = one.kind === "hook" ? pieceMass(one) : null;
      return piece === null ? [] : [piece.mass];
    });
  }

  askEffects(scenario: Scenario, hooks: readonly number[]): void {
    void this.effects.ask(() => this.#client.effects(scenario, hooks));
  }

  askRiseBand(scenario: Scenario): void {
    void this.riseBand.ask(() => this.#client.riseBand(scenario));
  }
}

/** The one state of the view in this page. */
export const weighOf = keptWith((app) => new WeighState(app));
