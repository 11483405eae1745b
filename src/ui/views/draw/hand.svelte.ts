import { fromSI, toSI } from "../../../units";
import type { CurveKey } from "../../../document";
import { inPane, onPane } from "../../../drawing";
import type { BoardLayout, Elevation, Mark, Pane } from "../../../drawing";
import type { Vec } from "../../../model/base";
import { frameOf } from "./frame";
import type { Frame } from "./frame";
import { keyOn } from "./keys";
import type { Look } from "./look";
import { stationHeight } from "./parts.svelte";
import { partAt } from "./pick";
import { sectionValue } from "./section";
import { snapTo } from "./snap";
import type { Snapped } from "./snap";
import { curvesShown, nearestSpot, onScreen } from "./spots";
import type { Grip, Spot } from "./spots";
import type { Board } from "./state.svelte";

/** A finger's and a pointer's reach, px: what is taken hold of by a finger is 44 px across. */
export const REACH = { coarse: 22, fine: 11 } as const;
/** A press that moves less than this is a choice, not a drag, px. */
const STILL = 2;
/** A drag keeps to another point or to the datum line from this near, px. */
const CATCH = 4;

/** What the hand needs of the picture. */
interface Picture {
  host(): HTMLElement | undefined;
  layout(): BoardLayout;
  spots(): readonly Spot[];
  /** The grip that is chosen, be it seen or not. */
  chosen(): Spot | null;
  drawings(): readonly { readonly elevation: Elevation; readonly marks: readonly Mark[] }[];
  /** Step that a drag snaps to, mm. */
  step(): number;
}

/** What a press has begun: a grip is dragged, a frame is drawn round points, or the drawing is moved. */
type Doing =
  | {
      readonly does: "grip";
      readonly grip: Grip;
      readonly pane: Pane;
      readonly from: Vec;
      /** From the press to the grip, so that nothing jumps. */
      readonly off: Vec;
      readonly scale: number;
      /** What the drag may keep to, mm. */
      readonly stations: readonly number[];
      readonly values: readonly number[];
    }
  | { readonly does: "frame"; readonly pane: Pane; readonly from: Vec; readonly more: boolean }
  | { readonly does: "pan"; readonly from: Vec };

/** The hand on the board: mouse, finger, pen and keys. It changes nothing itself; it calls the board's verbs. */
export class Hand {
  readonly #board: Board;
  readonly #picture: Picture;
  readonly #look: Look;
  /** True while something is dragged: the frame of the picture then stands still. */
  dragging = $state(false);
  frame = $state.raw<Frame | null>(null);
  #doing: Doing | null = null;
  /** Where the board lay on the page when the hand took hold: what moves above it must not move what is held. */
  #origin: Vec | null = null;
  #pointer: number | null = null;
  /** A drag that has begun to move. */
  #moved = false;
  #waiting = 0;
  #latest: PointerEvent | null = null;
  /** Fingers on the board, and where they were when they last moved the drawing. */
  #fingers: readonly (readonly [pointer: number, at: Vec])[] = [];
  #pinch: readonly [Vec, Vec] | null = null;
  /** Where the mouse is: keys look closer there. */
  #over: Vec | null = null;
  #space = false;

  constructor(board: Board, picture: Picture, look: Look) {
    this.#board = board;
    this.#picture = picture;
    this.#look = look;
  }

  get holding(): boolean {
    return this.#doing !== null;
  }

  /** A place of the page in px of the board. */
  local({ clientX, clientY }: { readonly clientX: number; readonly clientY: number }): Vec {
    const { x, z } = (this.#doing === null ? null : this.#origin) ?? this.#corner();
    return { x: clientX - x, z: clientY - z };
  }

  /** The board's upper left corner on the page, px. */
  #corner(): Vec {
    const box = this.#picture.host()?.getBoundingClientRect();
    return { x: box?.left ?? 0, z: box?.top ?? 0 };
  }

  near(p: Vec, reach: number): Spot | null {
    return nearestSpot(this.#picture.spots(), p, reach, this.#picture.layout(), this.#board.curve);
  }

  /** Whether a finger here works on the drawing; elsewhere it scrolls the page. */
  takes(touches: ArrayLike<{ readonly clientX: number; readonly clientY: number }>): boolean {
    const [finger] = Array.from(touches);
    if (touches.length !== 1 || finger === undefined) return touches.length === 2;
    const board = this.#board;
    const framing = board.several && board.job === "outline";
    return board.view !== null || framing || this.near(this.local(finger), REACH.coarse) !== null;
  }

  down(event: PointerEvent): void {
    const p = this.local(event);
    if (event.pointerType === "touch") {
      this.#fingers = [...this.#fingers, [event.pointerId, p]];
      if (this.#fingers.length === 2) this.#startPinch();
      if (this.#fingers.length > 1) return;
    }
    if (this.#doing !== null || event.button > 1) return;
    const board = this.#board;
    const host = this.#picture.host();
    host?.focus({ preventScroll: true });
    board.finish();
    this.#pointer = event.pointerId;
    this.#moved = false;
    this.#origin = this.#corner();
    if (event.button === 1 || this.#space) {
      event.preventDefault();
      this.#doing = { does: "pan", from: p };
    } else {
      const spot = this.near(p, event.pointerType === "mouse" ? REACH.fine : REACH.coarse);
      this.#doing = (spot === null ? null : this.#take(spot, p, event)) ?? this.#beside(p, event);
    }
    if (this.#doing !== null) host?.setPointerCapture(event.pointerId);
    else this.#pick(p);
  }

  #take(spot: Spot, p: Vec, event: PointerEvent): Doing | null {
    const board = this.#board;
    const { grip, elevation } = spot;
    const { scale, panes } = this.#picture.layout();
    const pane = panes.find((one) => one.elevation === elevation);
    if (pane === undefined) return null;
    if (grip.kind === "point")
      board.choose(grip.key, grip.index, event.shiftKey || (board.several && !spot.chosen));
    if (grip.kind === "part") board.parts.choose(grip.handle.part, grip.handle.id);
    if (grip.kind === "section") board.sectionGrip = grip.key;
    if (grip.kind === "station") board.sectionGrip = "station";
    const at = onPane(pane, scale, p.x, p.z);
    const others = this.#picture
      .spots()
      .filter((one) => one.elevation === elevation && one !== spot && !one.chosen)
      .filter(({ grip: { kind } }) => kind === "point" || kind === "part" || kind === "length")
      .map((one) => stationHeight(one.at));
    return {
      does: "grip",
      grip,
      pane,
      from: spot.at,
      off: { x: spot.at.x - at.x, z: spot.at.z - at.z },
      scale,
      stations: others.map(([s]) => s),
      values: others.map(([, v]) => v),
    };
  }

  /** What a press beside all grips begins: a frame round points, or moving the drawing. */
  #beside(p: Vec, event: PointerEvent): Doing | null {
    const board = this.#board;
    const { panes, scale } = this.#picture.layout();
    const pane = panes.find((one) => inPane(one, scale, p.x, p.z));
    if (pane === undefined) return null;
    const frames =
      board.job === "outline" &&
      pane.elevation !== "section" &&
      (board.several || event.pointerType !== "touch");
    if (frames) return { does: "frame", pane, from: p, more: event.shiftKey || board.several };
    return board.view === null ? null : { does: "pan", from: p };
  }

  /** A press beside all grips chooses the part that lies there, or lets go of what is chosen. */
  #pick(p: Vec): void {
    const board = this.#board;
    const { scale, panes } = this.#picture.layout();
    const pane = panes.find((one) => inPane(one, scale, p.x, p.z));
    const drawn = this.#picture.drawings().find(({ elevation }) => elevation === pane?.elevation);
    board.picked = {};
    if (pane !== undefined && drawn !== undefined && board.job === "parts")
      board.parts.choose(partAt(board, drawn.marks, onPane(pane, scale, p.x, p.z), scale));
  }

  move(event: PointerEvent): void {
    if (event.pointerType === "mouse") this.#over = this.local(event);
    this.#fingers = this.#fingers.map(([id, at]) => [id, id === event.pointerId ? this.local(event) : at]);
    if (this.#pinch === null) {
      if (this.#doing === null || this.#pointer !== event.pointerId) return;
      this.#latest = event;
    }
    // One change a drawn frame: what comes between would never be seen.
    if (this.#waiting === 0) this.#waiting = requestAnimationFrame(() => this.#follow());
  }

  /** A second finger: what the first one dragged goes back, and both move the drawing. */
  #startPinch(): void {
    this.cancel();
    const [a, b] = this.#fingers.map(([, at]) => at);
    this.#pinch = a === undefined || b === undefined ? null : [a, b];
  }

  #follow(): void {
    cancelAnimationFrame(this.#waiting);
    this.#waiting = 0;
    if (this.#pinch !== null) {
      const [a, b] = this.#fingers.map(([, at]) => at);
      if (a === undefined || b === undefined) return;
      this.#look.pinch(this.#pinch, [a, b]);
      this.#pinch = [a, b];
      return;
    }
    const event = this.#latest;
    const doing = this.#doing;
    this.#latest = null;
    if (doing === null || event === null) return;
    const p = this.local(event);
    if (doing.does === "pan") {
      this.#moved ||= Math.hypot(p.x - doing.from.x, p.z - doing.from.z) >= STILL;
      if (!this.#moved) return;
      this.#look.pan(doing.from, p);
      this.#doing = { ...doing, from: p };
    } else if (doing.does === "frame") {
      this.#moved ||= Math.hypot(p.x - doing.from.x, p.z - doing.from.z) >= 2 * STILL;
      if (this.#moved) this.frame = frameOf(doing.from, p);
    } else this.#drag(doing, p, event.altKey);
  }

  #drag(doing: Extract<Doing, { does: "grip" }>, p: Vec, free: boolean): void {
    const { grip, pane, off, from, scale } = doing;
    const at = onPane(pane, scale, p.x, p.z);
    const to = { x: at.x + off.x, z: at.z + off.z };
    if (!this.#moved && Math.hypot(to.x - from.x, to.z - from.z) * scale < STILL) return;
    this.#moved = true;
    this.dragging = true;
    const board = this.#board;
    const snaps = board.snap && !free;
    const [s, v] = stationHeight(to);
    const [s0, v0] = stationHeight(from);
    if (grip.kind === "section") {
      board.turnSection(grip.key, sectionValue(board, grip.key, 0 - s, v, snaps));
      return;
    }
    const ground = { step: this.#picture.step(), reach: fromSI(CATCH / scale, "mm") };
    const snap = (mm: number, others: readonly number[], datum: boolean): Snapped | null =>
      snaps ? snapTo(mm, { ...ground, others }, datum) : null;
    const fixed = grip.kind === "point" && board.isEnd(grip.key, grip.index);
    const along = fixed ? null : snap(s, doing.stations, false);
    const up = grip.kind === "station" || grip.kind === "length" ? null : snap(v, doing.values, true);
    board.snapped = snaps ? { elevation: pane.elevation, s: along, v: up } : null;
    const [toS, toV] = [along?.at ?? s, up?.at ?? v];
    switch (grip.kind) {
      case "station":
        board.station = toS;
        break;
      case "length":
        board.dragLength(toS);
        break;
      case "part":
        board.parts.drag(grip.handle, [toS, toV]);
        break;
      case "point":
        board.dragPoints([toS - s0, toV - v0]);
    }
  }

  up(event: PointerEvent): void {
    if (this.#pinch !== null) this.#follow();
    this.#fingers = this.#fingers.filter(([id]) => id !== event.pointerId);
    if (this.#pinch !== null) {
      // The finger that stays moves nothing: it would make the drawing jump.
      this.#pinch = null;
      return;
    }
    if (this.#pointer !== event.pointerId) return;
    if (this.#latest !== null) this.#follow();
    const doing = this.#doing;
    const moved = this.#moved;
    this.#release();
    const board = this.#board;
    if (doing === null) return;
    if (doing.does === "grip") board.finish();
    else if (!moved) {
      if (doing.does === "frame" && doing.more) return;
      this.#pick(this.local(event));
    } else if (doing.does === "frame")
      board.pick(this.#inside(doing.pane, doing.from, this.local(event)), doing.more);
  }

  /** Points within a frame that was drawn in a view. */
  #inside(pane: Pane, from: Vec, to: Vec): Partial<Record<CurveKey, number[]>> {
    const { x, y, width, height } = frameOf(from, to);
    const layout = this.#picture.layout();
    const found: Partial<Record<CurveKey, number[]>> = {};
    for (const spot of this.#picture.spots()) {
      if (spot.grip.kind !== "point" || spot.elevation !== pane.elevation) continue;
      const p = onScreen(spot, layout);
      if (p.x < x || p.x > x + width || p.z < y || p.z > y + height) continue;
      (found[spot.grip.key] ??= []).push(spot.grip.index);
    }
    return found;
  }

  #release(): void {
    this.#doing = null;
    this.#pointer = null;
    this.#latest = null;
    this.dragging = false;
    this.frame = null;
    this.#board.snapped = null;
  }

  /** Takes a drag back. */
  cancel(): void {
    if (this.#doing === null) return;
    this.#release();
    if (this.#board.work.moving !== null) this.#board.back();
  }

  /** The page takes a finger away, to scroll. */
  lost(event: PointerEvent): void {
    this.#fingers = this.#fingers.filter(([id]) => id !== event.pointerId);
    this.#pinch = null;
    this.cancel();
  }

  leave(): void {
    this.#over = null;
  }

  /** A double press on a curve adds a point there. */
  double(event: MouseEvent): void {
    const board = this.#board;
    if (board.job !== "outline") return;
    const { panes, scale } = this.#picture.layout();
    const p = this.local(event);
    const pane = panes.find((one) => inPane(one, scale, p.x, p.z));
    if (pane === undefined) return;
    const [s, v] = stationHeight(onPane(pane, scale, p.x, p.z));
    const near = curvesShown(board, pane.elevation)
      .map((key) => {
        const height = key === "halfBreadth" ? Math.abs(v) : v;
        return { key, off: Math.abs((board.valueAt(key, s) ?? Infinity) - height) };
      })
      .sort((a, b) => a.off - b.off)[0];
    if (near === undefined || toSI(near.off, "mm") * scale > REACH.coarse) return;
    const step = this.#picture.step();
    board.add(near.key, board.snap && !event.altKey ? Math.round(s / step) * step : s);
  }

  keys(event: KeyboardEvent): void {
    if (event.key === " ") this.#space = event.type === "keydown";
    else if (event.type === "keydown") {
      const holds = this.#doing !== null;
      const meant = keyOn(this.#board, this.#look, event, this.lookedAt, holds ? this : null);
      if (!meant) return;
      if (!holds) this.#look.reveal(this.#picture.chosen());
    }
    event.preventDefault();
    event.stopPropagation();
  }

  /** The drawing is shown closer or farther while something is held: it stays under the hand. */
  looked(): void {
    const doing = this.#doing;
    if (doing?.does !== "grip") return;
    const { panes, scale } = this.#picture.layout();
    const pane = panes.find(({ elevation }) => elevation === doing.pane.elevation);
    if (pane !== undefined) this.#doing = { ...doing, pane, scale };
  }

  /** Where keys look closer, px: at the pointer, else at what is chosen. */
  get lookedAt(): Vec | null {
    if (this.#over !== null) return this.#over;
    const spot = this.#picture.chosen();
    return spot === null ? null : onScreen(spot, this.#picture.layout());
  }
}
