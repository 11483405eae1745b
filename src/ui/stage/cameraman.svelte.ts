import type { Vec } from "../../model/base";
import { type Scene, type Size, rulerSizes, type View } from "../../drawing";
import { eased, framed, NO_OFFSET, offsetOf, scaleLimits, seen, settled, type Offset } from "./camera";
import type { Framing } from "./types";

/** What there is to look at. */
export interface Subject {
  readonly scene: Scene;
  readonly size: Size;
  /** Middle of the bait and of what hangs on it, world. */
  readonly around: Vec;
  /** End of the line, world; null without one. */
  readonly rodTip: Vec | null;
  /** Keep it in view. */
  readonly follow: boolean;
}

/**
 * The stage's camera: a framing, the user's own zoom and shift on top, and the way from one to the next. It goes with
 * the bait without lag; only what the user changes is travelled.
 */
export class Cameraman {
  framing = $state<Framing>("close");
  zoom = $state(1);
  shift = $state.raw<Vec>({ x: 0, z: 0 });
  view = $state.raw<View>({ x: 0, z: 0, scale: 5000 });
  #subject: Subject | null = null;
  #anchor: { around: Vec; rodTip: Vec | null } | null = null;
  #offset: Offset = NO_OFFSET;
  #turn: "cut" | "travel" | null = "cut";

  /** The user has zoomed or shifted away from the framing. */
  get astray(): boolean {
    return this.zoom !== 1 || this.shift.x !== 0 || this.shift.z !== 0;
  }

  /** The picture will be another one at once. */
  cut(): void {
    this.#turn = "cut";
  }

  frame(framing: Framing): void {
    this.framing = framing;
    this.zoom = 1;
    this.shift = { x: 0, z: 0 };
    this.#anchor = null;
    this.#turn = "travel";
  }

  zoomBy(factor: number): void {
    if (!this.#subject) return;
    const { scene, size } = this.#subject;
    const base = this.#framed(this.#subject).scale;
    const [least, most] = scaleLimits(scene, size);
    this.zoom = Math.max(least / base, Math.min(most / base, this.zoom * factor));
    this.#turn = "travel";
    // From far off, zooming in goes to the bait rather than to the middle of the water.
    if (this.framing !== "close" && factor > 1 && base * this.zoom * scene.length > 0.3 * size.width)
      this.frame("close");
  }

  /** Shifts the picture by pixels, at once. */
  pan(dx: number, dy: number): void {
    this.shift = { x: this.shift.x - dx / this.view.scale, z: this.shift.z + dy / this.view.scale };
    this.#turn = "cut";
  }

  /** Aims at the subject and goes `dt` seconds of the way there. True once it has arrived. */
  shoot(subject: Subject, dt: number): boolean {
    const before = this.#subject;
    if (before && before.follow !== subject.follow) this.#turn ??= "travel";
    if (before && (before.size !== subject.size || before.scene.name !== subject.scene.name))
      this.#turn = "cut";
    this.#subject = subject;
    if (subject.follow || !this.#anchor) this.#anchor = { around: subject.around, rodTip: subject.rodTip };
    const base = this.#framed(subject);
    const [least, most] = scaleLimits(subject.scene, subject.size);
    const goal: View = {
      x: base.x + this.shift.x,
      z: base.z + this.shift.z,
      scale: Math.max(least, Math.min(most, base.scale * this.zoom)),
    };
    if (this.#turn !== null) this.#offset = this.#turn === "cut" ? NO_OFFSET : offsetOf(this.view, goal);
    this.#turn = null;
    this.#offset = eased(this.#offset, dt);
    if (settled(this.#offset, goal)) this.#offset = NO_OFFSET;
    this.view = seen(goal, this.#offset);
    return this.#offset === NO_OFFSET;
  }

  #framed({ scene, size, around, rodTip }: Subject): View {
    const anchor = this.#anchor ?? { around, rodTip };
    return framed(this.framing, scene, size, rulerSizes(size), anchor.around, anchor.rodTip);
  }
}
