import type { Point } from "../../drawing";
import type { Cameraman } from "./cameraman.svelte";

/** The bait in hand: how far it is moved, m, up positive. */
export interface Hold {
  start(): void;
  move(by: number): void;
  end(): void;
}

/** What the pointers act on. */
export interface Target {
  element(): HTMLElement | undefined;
  /** What of the bait lies at a place in the element, or within so many px of it. */
  whatAt(p: Point, within: number): string | null;
  pick(what: string): void;
  /** Undefined where the bait cannot be taken in hand. */
  hold(): Hold | undefined;
}

/** How near counts as on it, px: for a pointer, for a finger. */
const POINTER = 4;
const FINGER = 18;

/** One pointer drags the picture (a finger leaves scrolling to the page), two pinch, ctrl and wheel zoom. */
export class Pointers {
  /** What the mouse is over, and where. */
  hovered = $state.raw<{ readonly what: string; readonly x: number; readonly y: number } | null>(null);
  /** The pointer that has the bait in hand. */
  #inHand = $state<number | null>(null);
  #held: readonly { readonly id: number; readonly x: number; readonly y: number }[] = [];
  #moved = 0;
  readonly #camera: Cameraman;
  readonly #target: Target;

  constructor(camera: Cameraman, target: Target) {
    this.#camera = camera;
    this.#target = target;
  }

  /** The bait can be taken hold of, or is in hand. */
  get grasping(): boolean {
    return this.#target.hold() !== undefined && (this.hovered !== null || this.#inHand !== null);
  }

  readonly down = (event: PointerEvent): void => {
    const at = this.#local(event);
    this.#held = [...this.#held.filter((p) => p.id !== event.pointerId), { id: event.pointerId, ...at }];
    this.#moved = 0;
    const within = event.pointerType === "touch" ? FINGER : POINTER;
    const hold = this.#target.hold();
    if (hold && this.#held.length === 1 && this.#target.whatAt(at, within) !== null) {
      this.#inHand = event.pointerId;
      this.hovered = null;
      hold.start();
    }
    if (event.pointerType !== "touch" || this.#inHand !== null)
      this.#target.element()?.setPointerCapture(event.pointerId);
  };

  readonly move = (event: PointerEvent): void => {
    const now = this.#local(event);
    const then = this.#held.find((p) => p.id === event.pointerId);
    if (!then) {
      if (event.pointerType !== "mouse") return;
      const what = this.#target.whatAt(now, POINTER);
      this.hovered = what === null ? null : { what, x: now.x, y: now.y };
      return;
    }
    this.hovered = null;
    const other = this.#held.find((p) => p.id !== event.pointerId);
    if (this.#inHand !== null) {
      if (event.pointerId === this.#inHand)
        this.#target.hold()?.move((then.y - now.y) / this.#camera.view.scale);
    } else if (other) {
      const d0 = Math.hypot(then.x - other.x, then.y - other.y);
      const d1 = Math.hypot(now.x - other.x, now.y - other.y);
      if (d0 > 8 && d1 > 8) this.#camera.zoomBy(d1 / d0);
    } else if (event.pointerType !== "touch") {
      this.#camera.pan(now.x - then.x, now.y - then.y);
    }
    this.#moved += Math.hypot(now.x - then.x, now.y - then.y);
    this.#held = [...this.#held.filter((p) => p.id !== event.pointerId), { id: event.pointerId, ...now }];
  };

  readonly up = (event: PointerEvent): void => {
    const down = this.#held.some((p) => p.id === event.pointerId);
    this.#held = this.#held.filter((p) => p.id !== event.pointerId);
    if (this.#inHand === event.pointerId) {
      this.#inHand = null;
      this.#target.hold()?.end();
    }
    if (!down || event.type !== "pointerup" || this.#moved >= 6) return;
    const what = this.#target.whatAt(this.#local(event), POINTER);
    if (what !== null) this.#target.pick(what);
  };

  readonly leave = (): void => {
    this.hovered = null;
  };

  /** Listens to what markup could listen to only passively. Returns what ends it. */
  listen(element: HTMLElement): () => void {
    // A pinch on a touch pad must not zoom the page as well.
    const onwheel = (event: WheelEvent): void => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      this.#camera.zoomBy(Math.exp(-0.005 * event.deltaY));
    };
    // Nor does the page scroll under a finger that has the bait in hand.
    const ontouchmove = (event: TouchEvent): void => {
      if (this.#inHand !== null) event.preventDefault();
    };
    element.addEventListener("wheel", onwheel, { passive: false });
    element.addEventListener("touchmove", ontouchmove, { passive: false });
    return () => {
      element.removeEventListener("wheel", onwheel);
      element.removeEventListener("touchmove", ontouchmove);
    };
  }

  #local(event: PointerEvent): Point {
    const box = this.#target.element()?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  }
}
