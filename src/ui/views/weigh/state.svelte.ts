import { adoptPlan, boxLeft, MOMENTS, pieceMass } from "../../../document";
import type { Box, Moment, Scenario } from "../../../document";
import type { RiseBand, SensitivityRow } from "../../../model/bench";
import type { Plan, PlanResult } from "../../../model/plan";
import { ModelClient } from "../../../runner";
import { loadOf } from "../../maker";
import {
  aFlag,
  aNumber,
  aRecord,
  aText,
  boxOf,
  faultText,
  groupOf,
  keptWith,
  Later,
  listOf,
  oneOf,
  orNull,
} from "../../state";
import type { App, BoxState } from "../../state";
import { toSI } from "../../../units";
import { withoutBallast } from "./plan";
import type { Said } from "./plan";

/** What the bench can show: the jobs of its steps, and what is looked at at any time. */
const JOBS = [
  "target",
  "box",
  "weighings",
  "volume",
  "plan",
  "lay out",
  "close",
  "coats",
  "account",
  "effects",
  "bands",
] as const;
export type Job = (typeof JOBS)[number];

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

/** How many weights a plan may have. */
const PLACES = [1, 2, 3] as const;

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

/** What of a zone has been said, as the browser kept it. */
const readZone = (value: unknown): Partial<Zone> | undefined => {
  const read = aRecord(orNull(aNumber))(value);
  if (read === undefined) return undefined;
  const { from, to, lowest, highest, wall, clearance } = read;
  const sized = { from, to, wall, clearance };
  const entries = Object.entries(sized).filter(([, one]) => one !== undefined && one !== null);
  return {
    ...(Object.fromEntries(entries) as Partial<Zone>),
    ...(lowest === undefined ? {} : { lowest }),
    ...(highest === undefined ? {} : { highest }),
  };
};

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
  asked = $state.raw<Partial<Zone>>({});
  places = $state(3);
  /** The ballast that is there makes room. */
  replace = $state(true);
  answer = $state.raw<Planned | null>(null);
  /** The plan that was taken, and the document as it then stood. */
  adopted = $state.raw<{ readonly plan: Plan; readonly scenario: Scenario } | null>(null);
  busy = $state(false);
  /** Why there is no answer, to be told in the language that is read. */
  failure = $state.raw<Said | null>(null);
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
      ...this.asked,
    };
  }

  setZone(change: Partial<Zone>): void {
    this.asked = { ...this.asked, ...change };
  }

  forget(): void {
    this.answer = null;
    this.adopted = null;
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
    const mm = (value: number): number => toSI(value, "mm");
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
        // A piece that is on the bait already is not in the box.
        box: boxLeft(box, onto.bait),
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
      const why = faultText(fault);
      this.failure = (_, file) => file.of(why);
      this.busy = false;
    }
  }

  /** The plan whose weights are on the bait as it stands now; null: none, or something has changed since. */
  get taken(): Plan | null {
    const { adopted } = this;
    return adopted !== null && adopted.scenario === this.#app.work.scenario ? adopted.plan : null;
  }

  /** The plan's weights into the document, in place of those of a plan that has just been taken: one step of undo. */
  adopt(plan: Plan): void {
    const { answer } = this;
    const { work } = this.#app;
    if (answer === null || (answer.of !== work.scenario && this.taken === null)) return;
    if (!work.edit("plan", "ballast plan", () => adoptPlan(answer.onto, plan))) return;
    this.adopted = { plan, scenario: work.scenario };
  }
}

/** What the Weigh view shows and what has been typed into it; outlives a change of view. */
export class WeighState {
  job = $state<Job>("target");
  /** How far the bait has been made; it may hang in the tub for its first test. */
  stage = $state<Moment>("blank");
  /** The part of the picture that is lit: the one whose row of the account is pointed at. */
  lit = $state.raw<string | null>(null);
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
    this.#keep();
  }

  /** What comes back with the bait: readings half taken; and where one was. The scale and its tools stay with the maker. */
  #keep(): void {
    const { beside } = this.app;
    const names = listOf(aText);
    const readings = listOf(aNumber);
    const wet = groupOf({ diameter: aNumber, depth: aNumber, count: aNumber });
    beside.keep("weigh/under", "work", this.under, {
      way: oneOf("held", "hung", "sample"),
      checked: names,
      readings,
      inAir: readings,
      parts: names,
      cut: names,
    });
    beside.keep("weigh/scale", "work", this.scale, { readings, parts: names, cut: names });
    beside.keep("weigh/under/tools", "place", this.under, {
      resolution: aNumber,
      tap: aNumber,
      pins: wet,
      thread: wet,
      air: aFlag,
    });
    beside.keep("weigh/scale/tools", "place", this.scale, { resolution: aNumber, air: aFlag });
    beside.keep<Pick<Planning, "asked" | "places" | "replace">>("weigh/plan", "work", this.plan, {
      asked: readZone,
      places: (value) => PLACES.find((one) => one === value),
      replace: aFlag,
    });
    beside.keep<Pick<WeighState, "job" | "stage">>("weigh", "place", this, {
      job: oneOf(...JOBS),
      stage: oneOf(...MOMENTS),
    });
  }

  /** A zone for weights belongs to the bait that was open: with another document it begins anew. */
  open(lineage: number): void {
    if (lineage === this.#lineage) return;
    this.#lineage = lineage;
    this.plan.forget();
  }

  /** Puts weights of usual sizes for this bait into the box, and drills for them. */
  addUsual(): void {
    const { scenario, now } = this.app.work;
    this.box.addUsual(loadOf(scenario, now.compiled));
  }

  /** Masses of the hooks in the box, kg. */
  get hooks(): readonly number[] {
    return this.box.now.things.flatMap((one) => {
      const piece = one.kind === "hook" ? pieceMass(one) : null;
      return piece === null ? [] : [piece.mass];
    });
  }

  askEffects(scenario: Scenario, hooks: readonly number[]): Promise<readonly SensitivityRow[] | null> {
    return this.#client.effects(scenario, hooks);
  }

  askRiseBand(scenario: Scenario): Promise<RiseBand | null> {
    return this.#client.riseBand(scenario);
  }
}

/** The one state of the view in this page. */
export const weighOf = keptWith((app) => new WeighState(app));
