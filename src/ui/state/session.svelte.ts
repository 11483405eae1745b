import { untrack } from "svelte";
import type { Vec } from "../../model/base";
import type { Snapshot } from "../../model/motion";
import type { ModelClient, RunJob, Tub } from "../../runner";
import { afterPaint, Player } from "../stage";
import type { Compare } from "./compare.svelte";
import { Pace } from "./rest";
import { retrieveSpeed } from "./retrieve";
import { RunSlot } from "./runs.svelte";
import type { Shown } from "./runs.svelte";
import { Trace } from "./trace";
import type { Worked, Workspace } from "./workspace.svelte";

/** One way of running the open document (in the tub, or on the line), with its clock and its recordings. */
export class Session {
  readonly kind: "tub" | "swim";
  readonly player = new Player();
  readonly run: RunSlot;
  readonly ghost: RunSlot;
  /** How the tub's release is wished to begin; not part of the document. */
  tub = $state.raw<Tub>({ depth: 0.5, pitch: "rest", duration: 12 });
  /** The deepest release that the document's water allows, m: the bait is clear of the floor in any attitude. */
  readonly deepest = $derived.by(() => {
    const { bait, around } = this.#work.now.compiled;
    const clear = around.depth - 0.7 * bait.shape.length;
    return clear > 0 ? clear : around.depth / 2;
  });
  /** How it begins, in the water of the document. */
  readonly release = $derived<Tub>(
    this.tub.depth <= this.deepest ? this.tub : { ...this.tub, depth: this.deepest },
  );
  readonly #work: Workspace;
  readonly #compare: Compare;
  readonly #calm: boolean;
  #made: { readonly worked: Worked; readonly tub: Tub } | null = null;
  /**
   * What was turned last changes numbers that need no run: the net buoyancy of the bait or, on the line, the depth of the steady
   * tow, which follows the speed at once.
   */
  #tellsAtOnce = false;
  #lineage = -1;
  #first = true;
  readonly #pace = new Pace();
  /** What is shown, at the length that is wished; null where more than the length differs. A view of releases has its own. */
  watched: (shown: Shown, tub: Tub) => Shown | null = () => null;

  /** `calm`: nothing starts to move by itself. */
  constructor(kind: "tub" | "swim", client: ModelClient, work: Workspace, compare: Compare, calm: boolean) {
    this.kind = kind;
    this.#work = work;
    this.#compare = compare;
    this.#calm = calm;
    const looking = (): number => this.player.time;
    // Where what is turned changes such numbers, these are what the hand looks at; else it is those of the run.
    this.run = new RunSlot(client, `${kind} run`, looking, {
      moving: () => work.moving !== null && this.#tellsAtOnce,
    });
    this.ghost = new RunSlot(client, `${kind} pinned`, () => 0);
  }

  /** The moment on the screen; null until the first frame has come, or where the bait's parts have changed since. */
  readonly snapshot = $derived.by((): Snapshot | null => {
    const { shown, frames } = this.run;
    if (shown === null || frames === 0) return null;
    return sameParts(shown.worked, this.#work.now) ? shown.recording.at(this.player.time) : null;
  });

  readonly ghostSnapshot = $derived.by((): Snapshot | null => {
    const { shown, frames } = this.ghost;
    return shown === null || frames === 0 ? null : shown.recording.at(this.player.time);
  });

  #path: Trace | null = null;
  /** Where G came from. */
  readonly trace = $derived.by((): readonly Vec[] => {
    const { recording } = this.run;
    if (recording === null || this.snapshot === null) return [];
    if (this.#path === null || !this.#path.follows(recording)) this.#path = new Trace(recording);
    return this.#path.until(this.snapshot);
  });

  /** Follows the document and the clock for the life of the component that calls it. */
  follow(): void {
    $effect(() => {
      const { now } = this.#work;
      const tub = this.release;
      const lineage = this.#work.lineage;
      return untrack(() => this.#ask(now, tub, lineage));
    });
    $effect(() => {
      const { shown } = this.run;
      untrack(() => this.#load(shown !== null));
    });
    $effect(() => {
      const { available } = this.run;
      untrack(() => this.player.extend(available));
    });
    // On the line the variants have runs of their own (Rivals).
    if (this.kind === "tub")
      $effect(() => {
        const { pinned } = this.#compare;
        const tub = this.release;
        untrack(() => this.#ghost(pinned, tub));
      });
    $effect(() => () => this.player.pause());
  }

  #ask(worked: Worked, tub: Tub, lineage: number): (() => void) | undefined {
    if (lineage !== this.#lineage) {
      this.#lineage = lineage;
      this.run.clear();
      this.#made = null;
    }
    if (this.#made?.worked === worked && (this.kind === "swim" || this.#made.tub === tub)) {
      if (!this.#calm) this.player.play();
      return undefined;
    }
    const { shown } = this.run;
    const begun = shown?.worked === worked ? this.watched(shown, tub) : null;
    if (begun !== null) {
      this.run.take(begun);
      if (begun.recording.complete) {
        this.#made = { worked, tub };
        return undefined;
      }
    }
    return this.#pace.start(() => {
      const before = this.#made?.worked;
      this.#tellsAtOnce =
        before !== undefined &&
        (before.statics.netBuoyancy !== worked.statics.netBuoyancy ||
          (this.kind === "swim" && retrieveSpeed(before.scenario) !== retrieveSpeed(worked.scenario)));
      this.#made = { worked, tub };
      const record = (): Promise<void> => this.run.record(this.#job(worked, tub), worked, begun?.recording);
      // They are painted before the run takes its share of the machine.
      const first = this.#tellsAtOnce && this.#work.moving !== null;
      return first ? new Promise((then) => afterPaint(() => then(record()))) : record();
    });
  }

  /** Starts the same run again, after a fault. */
  again(): void {
    const { now } = this.#work;
    this.#made = { worked: now, tub: this.release };
    void this.run.record(this.#job(now, this.release), now);
  }

  #load(there: boolean): void {
    if (!there) {
      this.player.load(0, 0, false);
      this.#first = true;
      return;
    }
    const { duration, available, recording } = this.run;
    this.player.frameRate = recording?.frameRate ?? 60;
    this.player.load(duration, available, !this.#first);
    if (this.#first && !this.#calm) this.player.play();
    this.#first = false;
  }

  #ghost(pinned: Worked | null, tub: Tub): void {
    const { shown } = this.run;
    if (pinned === null) this.ghost.clear();
    else if (
      shown !== null &&
      shown.worked === pinned &&
      shown.recording.complete &&
      this.#made?.tub === tub
    ) {
      this.ghost.adopt(shown);
    } else void this.ghost.record(this.#job(pinned, tub), pinned);
  }

  #job({ scenario }: Worked, tub: Tub): RunJob {
    return this.kind === "tub" ? { kind: "tub", scenario, tub } : { kind: "swim", scenario };
  }
}

/** A snapshot of one bait can be drawn on another where both have the same loose parts. */
function sameParts(a: Worked, b: Worked): boolean {
  const hooks = (one: Worked): number => one.compiled.spec.hangers.length;
  const balls = (one: Worked): number =>
    one.compiled.spec.chambers.reduce((sum, chamber) => sum + (chamber.balls?.count ?? 0), 0);
  return hooks(a) === hooks(b) && balls(a) === balls(b);
}
