import type { ScenarioMove } from "../../document";
import { legsOf, timeline } from "../../model/motion";
import type { Leg, Timeline } from "../../model/motion";
import {
  inserted,
  kindLabel,
  lasting,
  lengthInput,
  MOST_MOVES,
  newMove,
  asked,
  reelBy,
  repeated,
  rhythm,
  RHYTHMS,
  shifted,
  SHORTEST,
  withCadence,
  without,
} from "./cadence";
import type { Chosen, MoveKind } from "./cadence";
import { withValue } from "./inputs";
import type { Workspace } from "./workspace.svelte";

/** Where refusals of the editor's own changes are shown. */
export const CADENCE = "cadence";

/** The cadence under the hand: which moves are chosen, and what can be done with them. Each verb is one step of undo. */
export class CadenceEditor {
  #anchor = $state<number | null>(null);
  #head = $state(0);
  readonly #work: Workspace;

  constructor(work: Workspace) {
    this.#work = work;
  }

  /** The chosen moves by their first and last, as the hand chose them; empty where none is. */
  get ends(): readonly number[] {
    return this.#anchor === null ? [] : [this.#anchor, this.#head];
  }
  set ends([anchor, head]: readonly number[]) {
    this.#anchor = anchor ?? null;
    this.#head = head ?? anchor ?? 0;
  }

  get moves(): readonly ScenarioMove[] {
    return this.#work.scenario.cadence;
  }

  /** The moves as they are done with this tackle. */
  readonly legs = $derived.by((): readonly Leg[] => {
    const { cadence, tackle } = this.#work.now.compiled;
    return legsOf(cadence, tackle);
  });
  /** Rod and reel in time, seen from the rod tip's place at the start. */
  get timeline(): Timeline {
    const { cadence, tackle } = this.#work.now.compiled;
    return timeline(cadence, tackle, { x: 0, z: tackle.rodTip });
  }
  readonly duration = $derived(this.legs.at(-1)?.end ?? 0);

  /** The chosen moves, in order; null where none is. */
  readonly chosen = $derived.by((): Chosen | null => {
    const last = this.moves.length - 1;
    if (this.#anchor === null || last < 0) return null;
    const [a, b] = [Math.min(this.#anchor, last), Math.min(this.#head, last)];
    return { first: Math.min(a, b), last: Math.max(a, b) };
  });
  /** The one move that is chosen; null where none or several are. */
  readonly single = $derived(
    this.chosen !== null && this.chosen.first === this.chosen.last ? this.chosen.first : null,
  );
  /** The move that keys start from. */
  get head(): number {
    return Math.max(0, Math.min(this.#head, this.moves.length - 1));
  }

  choose(index: number, extend = false): void {
    if (!extend || this.#anchor === null) this.#anchor = index;
    this.#head = index;
  }

  /** Chooses the move beside; `extend`: keeps those that are chosen already. */
  go(by: -1 | 1, extend: boolean): void {
    if (this.moves.length === 0) return;
    this.choose(
      Math.max(0, Math.min(this.moves.length - 1, this.head + (this.#anchor === null ? 0 : by))),
      extend,
    );
  }

  clear(): void {
    this.#anchor = null;
  }

  add(kind: MoveKind): void {
    const at = (this.chosen?.last ?? this.moves.length - 1) + 1;
    // After a release nothing can pull: what is added goes before it.
    const released = this.moves.findIndex((move) => move.do === "release");
    const place = released >= 0 && at > released ? released : at;
    if (
      this.#put(
        `add ${kindLabel(kind).toLowerCase()}`,
        inserted(this.moves, place, [newMove(kind, this.moves)]),
      )
    )
      this.choose(place);
  }

  duplicate(): void {
    const { chosen } = this;
    if (chosen === null) return;
    if (!this.#put("duplicate", repeated(this.moves, chosen, 2))) return;
    const count = chosen.last - chosen.first + 1;
    this.choose(chosen.first + count);
    this.choose(chosen.last + count, true);
  }

  /** The chosen moves (all, where none is) `times` times in a row. */
  repeat(times: number): void {
    const chosen = this.chosen ?? { first: 0, last: this.moves.length - 1 };
    if (this.moves.length === 0 || times < 2) return;
    this.#put(`repeat ${times} times`, repeated(this.moves, chosen, times));
  }

  /** How often the chosen moves can stand in a row. */
  readonly mostRepeats = $derived.by((): number => {
    const count = this.chosen === null ? this.moves.length : this.chosen.last - this.chosen.first + 1;
    return count === 0 ? 1 : Math.floor((MOST_MOVES - this.moves.length) / count) + 1;
  });

  remove(): void {
    const { chosen } = this;
    if (chosen === null || !this.#put("delete move", without(this.moves, chosen))) return;
    if (this.moves.length === 0) this.clear();
    else this.choose(Math.min(chosen.first, this.moves.length - 1));
  }

  /** Puts the chosen moves before what stands at `to` (the length: at the end). */
  shift(to: number): void {
    const { chosen } = this;
    if (chosen === null || (to >= chosen.first && to <= chosen.last + 1)) return;
    const next = shifted(this.moves, chosen, Math.max(0, Math.min(this.moves.length, to)));
    if (!this.#put("move in the cadence", next.cadence)) return;
    this.choose(next.first);
    this.choose(next.first + chosen.last - chosen.first, true);
  }

  /** One place earlier or later. */
  nudge(by: -1 | 1): void {
    const { chosen } = this;
    if (chosen === null) return;
    const to = by < 0 ? chosen.first - 1 : chosen.last + 2;
    if (to >= 0 && to <= this.moves.length) this.shift(to);
  }

  /** A drag of a move's end: `seconds` long now. `settle` ends the drag. */
  stretch(index: number, seconds: number): void {
    this.#work.turn(lengthInput(index), Math.max(SHORTEST, Math.round(seconds * 20) / 20));
  }
  settle(): void {
    this.#work.settle();
  }

  /** A tenth of a second longer or shorter, by key. */
  lengthen(by: number): void {
    const { single } = this;
    const move = single === null ? undefined : this.moves[single];
    if (single === null || move === undefined) return;
    this.#work.edit(CADENCE, "length of a move", (from) =>
      withValue(from, ["cadence", single], lasting(move, asked(move) + by)),
    );
  }

  reelBy(index: number, by: "time" | "line"): void {
    const move = this.moves[index];
    if (move === undefined) return;
    this.#work.edit(CADENCE, "reel by time or line", (from) =>
      withValue(from, ["cadence", index], reelBy(move, by)),
    );
  }

  /** Another cadence in this one's place, by its rhythm. */
  play(key: string): void {
    const { lineOut_m, rodTip_m } = this.#work.scenario.tackle;
    const label = RHYTHMS.find((one) => one.key === key)?.label.toLowerCase() ?? key;
    if (this.#put(`rhythm: ${label}`, rhythm(key, lineOut_m, rodTip_m))) this.clear();
  }

  #put(label: string, cadence: readonly ScenarioMove[]): boolean {
    return this.#work.edit(CADENCE, label, (from) => withCadence(from, cadence));
  }
}
