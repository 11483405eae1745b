import { fromSI } from "../../../units";
import {
  addPoint,
  CURVES,
  hasCurve,
  movePoints,
  pointsOf,
  removePoints,
  setAt,
  setPoint,
  tidy,
  valueOn,
  withLength,
} from "../../../document";
import type { CurveKey, CurvePoint, Scenario } from "../../../document";
import type { BoardView, Elevation } from "../../../drawing";
import { USUAL_WALL } from "../../../model/checks";
import { aNumber, KEYS_REST_MS, keptWith } from "../../state";
import type { Worked, Workspace } from "../../state";
import { STEPS } from "../../words/draw";
import { aDraft } from "./draft";
import type { Draft } from "./draft";
import { PartsBoard } from "./parts.svelte";
import { SECTION_KEYS } from "./section";
import type { SectionKey } from "./section";
import type { SnapMark } from "./snap";

/** The view in which a curve is drawn; exponents are typed, or set at a section. */
export const elevationOf = (key: CurveKey): Elevation =>
  key === "halfBreadth" ? "above" : key === "above" || key === "below" ? "section" : "side";

/** What the hand works on. */
export const JOBS = ["outline", "trace", "section", "parts", "whole"] as const;
export type Job = (typeof JOBS)[number];

/** Chosen points, by their places in their curves. */
type Picked = Readonly<Partial<Record<CurveKey, readonly number[]>>>;

/** What is chosen on the board, and what the hand does with it. The document is the workspace's alone. */
export class Board {
  readonly work: Workspace;
  readonly parts: PartsBoard;
  job = $state<Job>("outline");
  curve = $state<CurveKey>("top");
  /** The chosen points of the curve in hand, and of others in the same view. */
  #picked = $state.raw<Picked>({});
  snap = $state(true);
  /** A press on a point adds it to what is chosen; a press beside the points draws a frame round some, by finger too. */
  several = $state(false);
  /** What the keys move in the section: its station, or one of its handles. */
  sectionGrip = $state<SectionKey | "station">("station");
  /** What the running drag keeps to. */
  snapped = $state.raw<SnapMark | null>(null);
  /** Where the board looks; null: at the whole bait. */
  view = $state.raw<BoardView | null>(null);
  /** There is room for one view only: this one. */
  narrow = $state(false);
  elevation = $state<Elevation>("side");
  /** The section's place, as a share of the length. */
  #share = $state(0.4);
  /** The bait as it was when the last change began; the figures say what has changed since. */
  before = $state.raw<Worked | null>(null);
  #nudged: [number, number] = [0, 0];
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(work: Workspace) {
    this.work = work;
    this.parts = new PartsBoard(this);
  }

  /** A wall thinner than this is warned of, mm. */
  leastWall_mm = $state(fromSI(USUAL_WALL, "mm"));

  /** The drawing that waits to be mended: it outlives the page. */
  get draft(): Draft | null {
    const { tried } = this.work;
    return tried === null ? null : { label: tried.label, scenario: tried.scenario };
  }
  set draft(kept: Draft | null) {
    if (kept !== null && this.work.moving === null) this.work.resume(kept.label, kept.scenario);
  }

  /** What is drawn: the document, or the drawing that waits to be mended. */
  get shown(): Scenario {
    return this.work.tried?.scenario ?? this.work.scenario;
  }

  get station(): number {
    return tidy(this.#share * this.shown.bait.length_mm);
  }
  set station(mm: number) {
    this.#share = Math.min(1, Math.max(0, mm / this.shown.bait.length_mm));
  }

  get points(): readonly CurvePoint[] {
    return pointsOf(this.shown.bait, this.curve);
  }

  /** The chosen points of the curve in hand that are there: an undo may have taken some away. */
  get held(): readonly number[] {
    return this.#heldOf(this.curve);
  }

  /** All chosen points, curve by curve: those of the curve in hand, and of the others in its view. */
  get groups(): readonly (readonly [key: CurveKey, which: readonly number[]])[] {
    return CURVES.filter((key) => key === this.curve || this.#sameView(key)).flatMap((key) => {
      const which = this.#heldOf(key);
      return which.length === 0 ? [] : [[key, which] as const];
    });
  }

  get picked(): Picked {
    return this.#picked;
  }

  /** Another choice ends a run of key presses: the next one is about other points. */
  set picked(next: Picked) {
    this.finish();
    this.#picked = next;
  }

  get count(): number {
    return this.groups.reduce((sum, [, which]) => sum + which.length, 0);
  }

  #heldOf(key: CurveKey): readonly number[] {
    const picked = this.picked[key] ?? [];
    if (picked.length === 0) return picked;
    const { length } = pointsOf(this.shown.bait, key);
    return picked.filter((i) => i < length);
  }

  #sameView(key: CurveKey): boolean {
    return elevationOf(key) !== "section" && elevationOf(key) === elevationOf(this.curve);
  }

  /** Starts anew with another document. */
  open(): void {
    this.picked = {};
    this.view = null;
    this.before = null;
    this.parts.choose(null);
    if (!hasCurve(this.shown.bait, this.curve)) this.curve = "top";
  }

  show(job: Job): void {
    this.finish();
    this.job = job;
    if (job === "section") this.elevation = "section";
    else if (this.elevation === "section") this.elevation = "side";
  }

  take(curve: CurveKey): void {
    if (curve !== this.curve) this.picked = {};
    this.#turn(curve);
  }

  #turn(curve: CurveKey): void {
    this.curve = curve;
    if (this.job === "outline" && this.elevation !== elevationOf(curve)) this.elevation = elevationOf(curve);
  }

  /** Turns to one view, where there is room for one only: the curve in hand is then one that it shows. */
  look(elevation: Elevation): void {
    if (this.job === "outline" && elevation !== "section" && elevationOf(this.curve) !== elevation)
      this.take(elevation === "above" ? "halfBreadth" : "top");
    this.elevation = elevation;
  }

  choose(curve: CurveKey, index: number, more: boolean): void {
    const held = this.#heldOf(curve);
    const inView = curve === this.curve || this.#sameView(curve);
    const without = held.filter((one) => one !== index);
    if (more && inView)
      this.picked = {
        ...this.picked,
        [curve]: without.length < held.length ? without : [...held, index].sort((a, b) => a - b),
      };
    // A press on one of several keeps all of them: a drag then moves them together.
    else if (!inView || !held.includes(index)) this.picked = { [curve]: [index] };
    this.#turn(curve);
  }

  /** Several points at once, of curves in one view; with `more` they join those that are chosen. */
  pick(found: Picked, more: boolean): void {
    const keys = CURVES.filter((key) => (found[key]?.length ?? 0) > 0);
    const [first] = keys;
    if (first === undefined) {
      if (!more) this.picked = {};
      return;
    }
    if (!keys.includes(this.curve)) {
      if (!this.#sameView(first)) this.picked = {};
      this.#turn(first);
    }
    const held = (key: CurveKey): readonly number[] => this.#heldOf(key);
    this.picked = {
      ...(more ? this.picked : {}),
      ...Object.fromEntries(
        keys.map((key) => [
          key,
          this.#all(key).filter((i) => found[key]?.includes(i) === true || (more && held(key).includes(i))),
        ]),
      ),
    };
  }

  /** All points of the curve in hand. */
  all(): void {
    this.picked = { [this.curve]: this.#all(this.curve) };
  }

  #all(key: CurveKey): readonly number[] {
    return pointsOf(this.shown.bait, key).map((_, i) => i);
  }

  /** The point before or after the chosen one; with `more` it joins what is chosen. */
  step(by: number, more = false): void {
    const { length } = this.points;
    const from = this.held.at(by > 0 ? -1 : 0);
    const next = from === undefined ? (by > 0 ? 0 : length - 1) : (from + by + length) % length;
    if (more) this.pick({ [this.curve]: [next] }, true);
    else this.picked = { [this.curve]: [next] };
  }

  /** Every change of the drawing goes through here: the first of a run keeps what the figures are compared with. */
  move(id: string, label: string, write: (from: Scenario) => Scenario): boolean {
    if (this.work.moving !== id) {
      this.work.settle();
      this.before = this.work.now;
      this.#nudged = [0, 0];
    }
    return this.work.move(id, label, write);
  }

  /** A change that is a step of its own. */
  edit(label: string, write: (from: Scenario) => Scenario): boolean {
    const taken = this.move("draw.edit", label, write);
    this.finish();
    return taken;
  }

  finish(): void {
    clearTimeout(this.#rest);
    if (this.work.moving !== null) this.work.settle();
  }

  /** Esc: a drag is taken back; without one, what is chosen is let go. True where there was something to do. */
  back(): boolean {
    clearTimeout(this.#rest);
    if (this.work.moving !== null || this.work.tried !== null) {
      this.work.drop();
      return true;
    }
    const some = this.count > 0 || this.parts.at !== null;
    this.picked = {};
    this.parts.choose(null);
    return some;
  }

  /** Ends a run of key presses when the keys rest. */
  rest(): void {
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.finish(), KEYS_REST_MS);
  }

  dragPoints(by: CurvePoint): void {
    const { curve, groups } = this;
    this.move(`draw.${curve}`, this.#step("move"), (from) =>
      groups.reduce((next, [key, which]) => movePoints(next, key, which, by), from),
    );
  }

  dragLength(mm: number): void {
    this.move("draw.length", STEPS.tell("length"), (from) => withLength(from, tidy(mm)));
  }

  nudge(ds: number, dv: number): void {
    const id = `draw.${this.curve}`;
    if (this.work.moving !== id) this.#nudged = [0, 0];
    const by: [number, number] = [tidy(this.#nudged[0] + ds), tidy(this.#nudged[1] + dv)];
    this.dragPoints(by);
    this.#nudged = by;
    this.rest();
  }

  /** The first and the last point of an edge: they keep their stations. */
  isEnd(key: CurveKey, index: number): boolean {
    return index === 0 || index === pointsOf(this.shown.bait, key).length - 1;
  }

  stepSection(by: number): void {
    const all = ["station", ...SECTION_KEYS] as const;
    const next = all.indexOf(this.sectionGrip) + by;
    this.sectionGrip = all[(next + all.length) % all.length] ?? "station";
  }

  /** Sets an exponent or the height of greatest breadth at the section's station. */
  turnSection(key: SectionKey, value: number): void {
    if (!Number.isFinite(value)) return;
    const s = this.station;
    this.move(`section.${key}`, STEPS.tell(`section.${key}`), (from) => setAt(from, key, s, value));
  }

  nudgeSection(key: SectionKey, by: number): void {
    const now = this.valueAt(key, this.station);
    if (now === null) return;
    const next = tidy(now + by);
    this.turnSection(key, key === "widest" ? next : Math.min(10, Math.max(1, next)));
    this.rest();
  }

  typed(index: number, place: CurvePoint): boolean {
    const { curve } = this;
    return this.edit(this.#step("move", curve, 1), (from) => setPoint(from, curve, index, place));
  }

  /** Adds a point on the curve at a station; `value` where the hand says it, else the curve's own there. */
  add(curve: CurveKey, station: number, value: number | null = null): boolean {
    const points = pointsOf(this.shown.bait, curve);
    const added = addPoint(this.shown, curve, [
      station,
      value ?? this.valueAt(curve, station) ?? points[0]?.[1] ?? 0,
    ]);
    if (added === null) return false;
    this.take(curve);
    this.edit(this.#step("add", curve, 1), () => added.scenario);
    this.picked = { [curve]: [added.index] };
    return true;
  }

  /** Adds a point in the middle between the chosen one and the next; without one, in the widest gap. */
  addBetween(): boolean {
    const { points } = this;
    const gap = (i: number): number => (points[i + 1]?.[0] ?? 0) - (points[i]?.[0] ?? 0);
    const widest = points.slice(1).reduce((best, _, i) => (gap(i) > gap(best) ? i : best), 0);
    const i = Math.min(this.held.at(-1) ?? widest, Math.max(0, points.length - 2));
    const [a, b] = [points[i], points[i + 1]];
    if (a === undefined) return false;
    return this.add(this.curve, tidy((a[0] + (b?.[0] ?? this.shown.bait.length_mm)) / 2));
  }

  remove(): boolean {
    const { groups, shown } = this;
    const next = groups.reduce((from, [key, which]) => removePoints(from, key, which), shown);
    const left = (key: CurveKey): number => pointsOf(next.bait, key).length;
    const gone = groups.reduce((sum, [key]) => sum + pointsOf(shown.bait, key).length - left(key), 0);
    if (gone === 0) return false;
    const [own = 0] = this.held;
    this.edit(this.#step("remove", groups.length === 1 ? groups[0]?.[0] : undefined, gone), () => next);
    this.picked = { [this.curve]: [Math.min(own, left(this.curve) - 1)] };
    return true;
  }

  /** A curve's value at a station, as drawn. */
  valueAt(curve: CurveKey, station: number): number | null {
    const value = valueOn(this.shown.bait, curve, station);
    return value === null ? null : tidy(value);
  }

  /** The name of a step of undo: what is done to how many points, of one curve or of several. */
  #step(
    verb: "move" | "add" | "remove",
    curve = this.groups.length === 1 ? this.groups[0]?.[0] : undefined,
    count = this.count,
  ): string {
    if (curve === undefined) return STEPS.tell(`points.${verb}`, { count });
    return STEPS.tell(`pointsOf.${verb}`, { count, curve: STEPS.tell(`curve.${curve}`) });
  }
}

export const boardOf = keptWith(({ work, beside }) => {
  const board = new Board(work);
  beside.keep<Pick<Board, "leastWall_mm" | "draft">>("draw", "work", board, {
    leastWall_mm: aNumber,
    draft: aDraft,
  });
  return board;
});
