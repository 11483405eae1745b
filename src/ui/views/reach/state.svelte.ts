import { untrack } from "svelte";
import { withMoves } from "../../../document";
import type { Scenario } from "../../../document";
import { ModelClient, REACH_NAMES, REACH_PATHS, towHere, variableOf } from "../../../runner";
import type { MeasuredDepth, ReachCell, ReachMapJob, ReachVariable } from "../../../runner";
import { atRest, faultText, keptWith, oneOf, retrieveSpeed } from "../../state";
import type { App, Worked } from "../../state";
import type { Asked, Calibrated, Mark } from "./types";
import { atMark, variablesOf, wantedInput } from "./variables";
import { ANGLES, fieldOf, speedsOf } from "./which";
import type { AngleField } from "./which";
import {
  CELLS,
  curveOf,
  type CurveShown,
  mapOf,
  type MapShown,
  type SpeedLimit,
  speedLimitsOf,
} from "./working";

/** Workers for maps and curves. Nearly every machine has two cores; the small cores of a phone gain nothing from more. */
const WORKERS = 2;

/** What the Reach view shows: maps and curves of the open document, and a mark on them. */
export class ReachState {
  readonly #app: App;
  readonly #client: ModelClient;
  /** m/s; belongs to the view, not to the document. */
  speed = $state(1);
  /** A wanted depth where the document has no target to keep it, m. */
  #wanted = $state<number | null>(null);
  across = $state<ReachVariable>("bibAngle");
  up = $state<ReachVariable>("speed");
  mark = $state.raw<Mark>({});

  /** At the present setting, and what that was. */
  now = $state.raw<ReachCell | null>(null);
  nowOf = $state.raw<Asked | null>(null);
  nowStale = $state(false);
  marked = $state.raw<ReachCell | null>(null);
  markedOf = $state.raw<Asked | null>(null);
  markedStale = $state(false);
  /** The pinned variant at the same speed. */
  pinned = $state.raw<ReachCell | null>(null);
  map = $state.raw<MapShown | null>(null);
  mapStale = $state(false);
  /** Curves that show an older document. */
  curvesStale = $state.raw<readonly ReachVariable[]>([]);
  /** Cells worked out of the map under way. */
  progress = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  stopped = $state(false);
  curves = $state.raw<Readonly<Partial<Record<ReachVariable, CurveShown>>>>({});
  limits = $state.raw<readonly SpeedLimit[]>([]);
  /** Depths over bib angle and speed, for the sentence that names the angle; and what it was worked out for. */
  field = $state.raw<(Asked & { readonly field: AngleField }) | null>(null);
  failure = $state.raw<string | null>(null);
  calibration = $state.raw<Calibrated | null>(null);
  calibrating = $state(false);
  #lineage = -1;
  #turn = 0;

  constructor(app: App, client = new ModelClient({ workers: WORKERS })) {
    this.#app = app;
    this.#client = client;
    const one = oneOf(...(["speed", ...Object.keys(REACH_PATHS)] as ReachVariable[]));
    app.beside.keep<Pick<ReachState, "across" | "up">>("reach", "place", this, { across: one, up: one });
  }

  get scenario(): Scenario {
    return this.#app.work.scenario;
  }

  get variables(): readonly ReachVariable[] {
    return variablesOf(this.scenario);
  }

  /** m, or null where none is wished. */
  get wanted(): number | null {
    return this.scenario.target?.depth_m ?? this.#wanted;
  }

  /** The wish goes into the document's target where there is one. */
  want(depth: number | null): void {
    const { target } = this.scenario;
    if (target === undefined) {
      this.#wanted = depth;
      return;
    }
    this.#app.work.edit("target.depth_m", "depth wanted", (from) => {
      const { depth_m: _, ...rest } = from.target ?? target;
      return { ...from, target: depth === null ? rest : { ...rest, depth_m: depth } };
    });
  }

  /** A turn of the wish's slider: one step of undo until it settles. */
  turnWanted(depth: number): void {
    const { target } = this.scenario;
    if (target === undefined) {
      this.#wanted = depth;
      return;
    }
    this.#app.work.turn(wantedInput(target, depth), depth);
  }

  /** The speed that the wanted depth belongs to, m/s: the target's, else the tow's. */
  get wantedSpeed(): number {
    return this.scenario.target?.speed_m_s ?? this.speed;
  }

  /** The variable's value in the document, or the tow's speed. */
  valueOf(variable: ReachVariable): number {
    return variable === "speed" ? this.speed : (variableOf(this.scenario, variable) ?? NaN);
  }

  /** The value at the mark; the present one where the mark says nothing of it. */
  markedValue(variable: ReachVariable): number {
    return this.mark[variable] ?? this.valueOf(variable);
  }

  readonly isMarked = $derived.by(() => Object.keys(this.mark).length > 0);

  /** Puts the mark; what equals the present value says nothing. */
  place(mark: Mark): void {
    const entries = (Object.entries(mark) as [ReachVariable, number][]).filter(
      ([variable, value]) => value !== this.valueOf(variable),
    );
    this.mark = Object.fromEntries(entries);
  }

  clearMark(): void {
    this.mark = {};
  }

  /** Takes the design at the mark: one step of undo (the speed of the tow stands in no document). */
  adopt(): void {
    const { speed, ...rest } = this.mark;
    const changes = Object.keys(rest) as ReachVariable[];
    if (changes.length > 0) {
      const names = changes.map((variable) => REACH_NAMES[variable].toLowerCase());
      const taken = this.#app.work.edit("reach", names.join(" and "), (from) => atMark(from, rest));
      if (!taken) return;
    }
    if (speed !== undefined) this.speed = speed;
    this.mark = {};
  }

  /** Why the design was not taken. */
  get refusal(): string | null {
    const { refusal } = this.#app.work;
    return refusal?.id === "reach" ? refusal.text : null;
  }

  /** Gives the tow's speed to every retrieve of the cadence that has that of the first. */
  retrieveAtThisSpeed(): void {
    const first = retrieveSpeed(this.scenario);
    const { speed } = this;
    this.#app.work.edit("cadence", "retrieve speed", (from) => ({
      ...from,
      cadence: withMoves(from.cadence, (move) =>
        move.do === "reel" && move.speed_m_s === first ? { ...move, speed_m_s: speed } : move,
      ),
    }));
  }

  pair(across: ReachVariable, up: ReachVariable): void {
    if (across === up) [this.across, this.up] = [this.up, this.across];
    else [this.across, this.up] = [across, up];
    this.mark = {};
  }

  stop(): void {
    this.#turn += 1;
    for (const lane of LANES) this.#client.cancel(lane);
    this.stopped = true;
    this.progress = null;
  }

  goOn(): void {
    void this.#bands(this.scenario, this.speed);
    void this.#work(this.scenario, this.speed, this.across, this.up);
  }

  async calibrate(measured: MeasuredDepth): Promise<void> {
    this.calibrating = true;
    try {
      const { scenario } = this;
      const found = await this.#client.calibrate(scenario, measured, "calibrate");
      const { bait, tackle, water } = scenario;
      if (found !== null) this.calibration = { measured, found, bait, tackle, water };
      this.failure = null;
    } catch (fault) {
      this.failure = faultText(fault);
    } finally {
      this.calibrating = false;
    }
  }

  /** Writes the factor that was found, and the run that it was found by, into the document: one step of undo. */
  useFactor(): void {
    const { calibration } = this;
    if (typeof calibration?.found.factor !== "number") return;
    const { factor } = calibration.found;
    const { speed, lineOut, depth } = calibration.measured;
    this.#app.work.edit("calibration", "bib factor by a measured run", (from) => ({
      ...from,
      calibration: {
        bibFactor: Number(factor.toFixed(4)),
        measured: { speed_m_s: speed, lineOut_m: lineOut, depth_m: depth },
      },
    }));
  }

  forgetFactor(): void {
    this.calibration = null;
    this.#app.work.edit("calibration", "bib factor back to 1", (from) => {
      const { calibration: _, ...rest } = from;
      return rest;
    });
  }

  /** Follows the document for the life of the component that calls it. */
  follow(): void {
    $effect.pre(() => {
      const { lineage } = this.#app.work;
      untrack(() => this.#open(lineage));
    });
    $effect(() => {
      const { scenario, speed, across, up } = this;
      this.nowStale = true;
      this.mapStale = true;
      this.curvesStale = variablesOf(scenario);
      return atRest(() => void this.#work(scenario, speed, across, up), untrack(() => this.now) !== null);
    });
    // The depth of the present tow is worked out on the spot; its bands take seven times as long, and come from a worker.
    $effect(() => {
      const { now } = this.#app.work;
      const { speed } = this;
      const waiting = untrack(() => this.now) !== null;
      untrack(() => this.#here(now, speed));
      return atRest(() => void this.#bands(now.scenario, speed), waiting);
    });
    $effect(() => {
      const { scenario, speed, mark } = this;
      void this.#look(scenario, speed, mark);
    });
    $effect(() => {
      const { pinned } = this.#app.compare;
      const { speed } = this;
      void this.#lookPinned(pinned?.scenario ?? null, speed);
    });
    $effect(() => () => {
      this.#turn += 1;
      for (const lane of LANES) this.#client.cancel(lane);
      this.progress = null;
    });
  }

  #open(lineage: number): void {
    if (lineage === this.#lineage) return;
    this.#lineage = lineage;
    const { scenario } = this;
    this.speed = retrieveSpeed(scenario);
    this.mark = {};
    this.#wanted = null;
    this.calibration = null;
    const known = this.variables;
    if (!known.includes(this.across) || !known.includes(this.up))
      [this.across, this.up] = [scenario.bait.bib === undefined ? "tieHeight" : "bibAngle", "speed"];
    this.now = this.nowOf = this.marked = this.markedOf = this.map = null;
    this.curves = {};
    this.limits = [];
    this.field = null;
  }

  async #work(scenario: Scenario, speed: number, across: ReachVariable, up: ReachVariable): Promise<void> {
    const turn = ++this.#turn;
    const current = (): boolean => turn === this.#turn;
    this.stopped = false;
    this.failure = null;
    const plain: ReachMapJob = { scenario, speed, vary: [], bands: false, whole: false };
    try {
      if (scenario.bait.bib !== undefined) {
        const asked = scenario.target?.speed_m_s ?? speed;
        const speeds = speedsOf(asked);
        const vary = [
          { variable: "bibAngle" as const, values: ANGLES },
          { variable: "speed" as const, values: speeds },
        ];
        const cells = await this.#client.map({ ...plain, vary }, "which");
        if (cells === null || !current()) return;
        this.field = { scenario, speed: asked, field: fieldOf(speeds, cells) };
      }

      await this.#mapOut(plain, across, up, current);
      if (!current()) return;
      this.mapStale = false;
      for (const variable of variablesOf(scenario)) {
        const curve = await curveOf(this.#client, plain, variable);
        if (curve === null || !current()) return;
        this.curves = { ...this.curves, [variable]: curve };
        this.curvesStale = this.curvesStale.filter((one) => one !== variable);
        if (variable === "speed") {
          const limits = await speedLimitsOf(this.#client, plain, curve);
          if (limits === null || !current()) return;
          this.limits = limits;
        }
      }
    } catch (fault) {
      if (!current()) return;
      this.failure = faultText(fault);
      this.progress = null;
    }
  }

  #here({ scenario, compiled }: Worked, speed: number): void {
    try {
      this.#show(towHere(scenario, compiled, speed), scenario, speed);
    } catch (fault) {
      this.failure = faultText(fault);
    }
  }

  #show(cell: ReachCell, scenario: Scenario, speed: number): void {
    this.now = cell;
    this.nowOf = { scenario, speed };
    this.nowStale = false;
  }

  async #bands(scenario: Scenario, speed: number): Promise<void> {
    try {
      const job = { scenario, speed, vary: [], bands: true, whole: true };
      const [cell] = (await this.#client.map(job, "bands")) ?? [];
      // Bands of what was asked before are of no use.
      if (cell !== undefined && scenario === this.scenario && speed === this.speed)
        this.#show(cell, scenario, speed);
    } catch (fault) {
      this.failure = faultText(fault);
    }
  }

  async #mapOut(
    plain: ReachMapJob,
    across: ReachVariable,
    up: ReachVariable,
    current: () => boolean,
  ): Promise<void> {
    const fits = this.map?.across === across && this.map.up === up;
    if (!fits) this.map = null;
    this.progress = { done: 0, of: CELLS };
    const whole = await mapOf(this.#client, plain, across, up, (map) => {
      if (!current()) return;
      this.progress = { done: map.done, of: map.of };
      // An older map of the pair stays in sight until the new one is whole.
      if (!fits || map.done === map.of) this.map = map;
    });
    if (whole && current()) this.progress = null;
  }

  async #look(scenario: Scenario, speed: number, mark: Mark): Promise<void> {
    if (Object.keys(mark).length === 0) {
      this.#client.cancel("mark");
      this.marked = this.markedOf = null;
      this.markedStale = false;
      return;
    }
    const other = atMark(scenario, mark);
    this.markedStale = true;
    const job = { scenario: other, speed: mark.speed ?? speed, vary: [], bands: true, whole: true };
    try {
      const found = await this.#client.map(job, "mark");
      if (found === null) return;
      this.marked = found[0] ?? null;
      this.markedOf = { scenario: other, speed: job.speed };
      this.markedStale = false;
    } catch (fault) {
      this.failure = faultText(fault);
    }
  }

  async #lookPinned(scenario: Scenario | null, speed: number): Promise<void> {
    if (scenario === null) {
      this.pinned = null;
      return;
    }
    try {
      const job = { scenario, speed, vary: [], bands: false, whole: true };
      const found = await this.#client.map(job, "pinned");
      if (found !== null) this.pinned = found[0] ?? null;
    } catch (fault) {
      this.failure = faultText(fault);
    }
  }
}

const LANES = ["bands", "which", "map", "curve", "limits", "mark", "pinned"] as const;

/** The state of this view, kept while the page lives. */
export const reachOf = keptWith((app) => new ReachState(app));
