import { inPane, lookedAt, movedView, wholeView } from "../../../drawing";
import type { boardBoxes, BoardLayout, Elevation } from "../../../drawing";
import type { Vec } from "../../../model/base";
import { onScreen } from "./spots";
import type { Spot } from "./spots";
import type { Board } from "./state.svelte";

/** What looking closer needs of the picture: the board as it shows the whole bait, and what its views have to hold. */
interface Ground {
  whole(): BoardLayout;
  boxes(): ReturnType<typeof boardBoxes>;
}

/** What is chosen by keys stays at least this far from the rim of its view, px. */
const RIM = 24;
/** What a px of the wheel does to the size, and px of a line of it. */
const WHEEL = 0.0015;
const LINE = 20;
/** Two fingers nearer than this do not change the size, px. */
const APART = 8;

const between = (a: Vec, b: Vec): Vec => ({ x: (a.x + b.x) / 2, z: (a.z + b.z) / 2 });

/** Closer, farther and along: all views of the board move together, at one scale. */
export class Look {
  readonly #board: Board;
  readonly #ground: Ground;

  constructor(board: Board, ground: Ground) {
    this.#board = board;
    this.#ground = ground;
  }

  get #view() {
    return this.#board.view ?? wholeView(this.#ground.boxes(), this.#ground.whole());
  }

  get #layout(): BoardLayout {
    return lookedAt(this.#ground.whole(), this.#board.view);
  }

  /** The view at a place of the board; between views, the one that a hand works in most. */
  #elevationAt(p: Vec): Elevation {
    const { panes, scale } = this.#layout;
    return (panes.find((one) => inPane(one, scale, p.x, p.z)) ?? panes[0])?.elevation ?? "side";
  }

  #move(elevation: Elevation, from: Vec, to: Vec, factor: number): void {
    const { boxes, whole } = { boxes: this.#ground.boxes(), whole: this.#ground.whole() };
    this.#board.view = movedView(this.#view, whole, boxes, elevation, { from, to, factor });
  }

  /** Closer or farther; what lies at a place of the board (px; null: in the middle of the first view) stays there. */
  zoom(factor: number, at: Vec | null): void {
    const p = at ?? this.#middle();
    this.#move(this.#elevationAt(p), p, p, factor);
  }

  #middle(): Vec {
    const layout = this.#layout;
    const [pane] = layout.panes;
    if (pane === undefined) return { x: 0, z: 0 };
    const { box, elevation } = pane;
    const at = { x: (box.minX + box.maxX) / 2, z: (box.minZ + box.maxZ) / 2 };
    return onScreen({ elevation, at }, layout);
  }

  /** Two fingers: what lay under them stays under them. */
  pinch([a, b]: readonly [Vec, Vec], [c, d]: readonly [Vec, Vec]): void {
    const [was, now] = [Math.hypot(a.x - b.x, a.z - b.z), Math.hypot(c.x - d.x, c.z - d.z)];
    const from = between(a, b);
    this.#move(this.#elevationAt(from), from, between(c, d), was > APART && now > APART ? now / was : 1);
  }

  /** Moves the drawing. False where the whole bait is shown: there is nothing to move then. */
  pan(from: Vec, to: Vec): boolean {
    if (this.#board.view === null) return false;
    const at = from.x === 0 && from.z === 0 ? this.#middle() : from;
    this.#move(this.#elevationAt(at), at, { x: at.x + to.x - from.x, z: at.z + to.z - from.z }, 1);
    return true;
  }

  /** The wheel: closer and farther where the pointer is, with Shift along. False: the page scrolls. */
  wheel({ deltaX, deltaY, deltaMode, shiftKey }: WheelEvent, at: Vec): boolean {
    const lines = deltaMode === 1 ? LINE : 1;
    if (shiftKey || Math.abs(deltaX) > Math.abs(deltaY)) {
      const along = lines * (shiftKey && deltaX === 0 ? deltaY : deltaX);
      return this.pan(at, { x: at.x - along, z: at.z });
    }
    const before = this.#view.scale;
    const whole = this.#board.view === null;
    this.zoom(Math.exp(-WHEEL * lines * deltaY), at);
    const now = this.#view.scale;
    // As far away as it goes: the page scrolls on.
    if (now === before && whole) this.#board.view = null;
    return now !== before;
  }

  whole(): void {
    this.#board.view = null;
  }

  /** Moves the drawing so far that a chosen grip is seen. */
  reveal(spot: Spot | null): void {
    if (spot === null || this.#board.view === null) return;
    const layout = this.#layout;
    const { elevation } = spot;
    const pane = layout.panes.find((one) => one.elevation === elevation);
    if (pane === undefined) return;
    const { box } = pane;
    const p = onScreen(spot, layout);
    const [low, high] = [
      onScreen({ elevation, at: { x: box.minX, z: box.maxZ } }, layout),
      onScreen({ elevation, at: { x: box.maxX, z: box.minZ } }, layout),
    ];
    const into = (v: number, least: number, most: number): number =>
      Math.min(most - RIM, Math.max(least + RIM, v));
    const to = { x: into(p.x, low.x, high.x), z: into(p.z, low.z, high.z) };
    if (to.x !== p.x || to.z !== p.z) this.#move(elevation, p, to, 1);
  }
}
