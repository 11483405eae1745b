import { baitAt, MOMENTS, momentsOf } from "../../../document";
import type { Moment } from "../../../document";
import type { Bait } from "../../../model/bait";
import { sideAt, staticsOf } from "../../../model/statics";
import type { Statics } from "../../../model/statics";
import type { Snapshot } from "../../../model/motion";
import { ModelClient } from "../../../runner";
import type { Righting } from "../../../runner";
import { keptWith, Later, oneOf } from "../../state";
import type { App, Session } from "../../state";
import { USUAL_SEASON } from "./season";
import { tubSession } from "./session";
import { noseAfloat, noseAtDepth, stillSnapshot } from "./still";
import { atLength } from "./watched";

/** A hand that lets go less than this share of the length under where it took hold has not pushed the bait under. */
const UNDER = 0.5;

/** The bait in the tub at a stage of making: lying still, in the hand, or on its way. */
export class FloatState {
  readonly app: App;
  readonly session: Session;
  readonly client = new ModelClient();
  /** Moment of making in the tub: a stage, or the first tub test. */
  stage = $state.raw<Moment>("dressed");
  /** Depth of the tie eye in the hand, m; null: nobody holds it. */
  held = $state<number | null>(null);
  readonly righting = new Later<Righting>();
  /** Season, °C, of a document whose target names none. */
  season = $state.raw<{ readonly coldest: number; readonly warmest: number }>(USUAL_SEASON);
  #from = 0;
  /** What the run showed before the hand let go: the next one is awaited. */
  #awaited = $state.raw<{ readonly before: unknown } | null>(null);

  constructor(app: App) {
    this.app = app;
    app.beside.keep<Pick<FloatState, "stage">>("float", "place", this, { stage: oneOf(...MOMENTS) });
    this.session = tubSession(app);
    this.session.watched = atLength;
  }

  /** Stages at which something comes onto this bait, its first tub test, and the last. */
  readonly stages = $derived.by((): readonly Moment[] => {
    const { scenario, compiled } = this.app.work.now;
    return momentsOf(scenario.bait, compiled.bait);
  });

  readonly bait = $derived.by((): Bait => {
    const { scenario, compiled } = this.app.work.now;
    return baitAt(scenario, compiled.bait, this.stage);
  });

  readonly statics = $derived.by((): Statics => {
    const { statics, compiled } = this.app.work.now;
    return this.bait === compiled.bait ? statics : staticsOf(this.bait, compiled.around.density);
  });

  /** Nothing moves: the bait lies as statics say, or is in the hand. */
  readonly still = $derived.by((): boolean => {
    const { player } = this.session;
    return this.held !== null || this.#awaited !== null || (player.time === 0 && !player.playing);
  });

  /** The attitude in which the hand holds it under water, rad. */
  get #pitchUnder(): number {
    const { pitch } = this.session.release;
    return pitch === "rest" ? (this.statics.rest.pitch ?? 0) : pitch;
  }

  /** At rest by statics: afloat, or, where it sinks, held under water at the depth of the release. */
  readonly atRest = $derived(this.#lying(this.bait, this.statics));

  /** The pinned variant at rest, finished. */
  readonly pinnedAtRest = $derived.by((): Snapshot | null => {
    const { pinned } = this.app.compare;
    return pinned === null || this.stage !== "dressed"
      ? null
      : this.#lying(pinned.compiled.bait, pinned.statics);
  });

  #lying(bait: Bait, { floating, rest }: Statics): Snapshot {
    if (floating === null) {
      const { pitch: wished, depth } = this.session.release;
      const pitch = wished === "rest" ? (rest.pitch ?? 0) : wished;
      const side = pitch === rest.pitch ? rest.side : sideAt(pitch);
      return stillSnapshot(bait, { nose: noseAtDepth(bait, pitch, depth), pitch, side, B: null });
    }
    const { pitch, surface, side, B } = floating;
    return stillSnapshot(bait, { nose: noseAfloat(bait, pitch, surface.level), pitch, side, B });
  }

  readonly snapshot = $derived.by((): Snapshot | null => {
    if (!this.still) return this.session.snapshot;
    if (this.held === null) return this.atRest;
    const pitch = this.#pitchUnder;
    const nose = noseAtDepth(this.bait, pitch, this.held);
    return stillSnapshot(this.bait, { nose, pitch, side: sideAt(pitch), B: null });
  });

  choose(stage: Moment): void {
    this.stage = stage;
    this.session.player.pause();
    this.session.player.seek(0);
    this.session.tub = { ...this.session.tub, stage };
  }

  /** The bait is taken in hand where it is. */
  take(): void {
    const now = this.snapshot;
    if (now === null) return;
    this.session.player.pause();
    this.#awaited = null;
    this.held = -now.eye.z;
    this.#from = this.held;
  }

  /** The hand moves it, m, up positive; never out of the water nor to the floor. */
  move(by: number): void {
    if (this.held === null) return;
    const { deepest } = this.session;
    this.held = Math.min(deepest, Math.max(Math.min(this.#from, 0), this.held - by));
  }

  /** The hand opens: from under water it goes its way; hardly moved, it lies as before. */
  open(): void {
    const depth = this.held;
    this.held = null;
    if (depth === null) return;
    if (depth - this.#from < UNDER * this.bait.shape.length) {
      this.session.player.seek(0);
      return;
    }
    this.letGo(Number(depth.toFixed(3)));
  }

  /** Pushed under to a depth of the tie eye, m (that of the release where none is given), and let go. */
  letGo(depth: number = this.session.release.depth): void {
    const { session } = this;
    const { player, run } = session;
    player.pause();
    player.seek(0);
    if (depth === session.release.depth && run.shown !== null && !run.busy) {
      player.play();
      return;
    }
    session.tub = { ...session.tub, depth };
    this.held = depth;
    this.#awaited = { before: run.shown };
    session.again();
  }

  /** Lies still again. */
  calm(): void {
    this.held = null;
    this.#awaited = null;
    this.session.player.pause();
    this.session.player.seek(0);
  }

  /** Follows the document for the life of the component that calls it. */
  follow(): void {
    this.session.follow();
    $effect(() => {
      const { run, player } = this.session;
      if (this.#awaited === null) return;
      // A run that stopped has nothing to show; its message stands beside the clock.
      if (run.failure !== null && !run.busy) {
        this.calm();
        return;
      }
      if (run.shown === null || run.shown === this.#awaited.before || run.frames < 2) return;
      this.#awaited = null;
      this.held = null;
      player.seek(0);
      player.play();
    });
    this.righting.follow(
      () => ({ scenario: this.app.work.now.scenario, stage: this.stage }),
      ({ scenario, stage }) => this.client.righting(scenario, stage),
    );
    // A stage that an edit has emptied is left for the finished bait.
    $effect(() => {
      if (!this.stages.includes(this.stage)) this.choose("dressed");
    });
  }
}

/** The state of this view, kept while the page lives. */
export const floatOf = keptWith((app) => new FloatState(app));
