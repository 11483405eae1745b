import { MOST_MOVES, movesOf, writtenOut } from "../../document";
import type { ScenarioEntry, ScenarioMove, ScenarioRepeat } from "../../document";
import { legsOf, timeline } from "../../model/motion";
import type { Leg, Timeline } from "../../model/motion";
import {
  asked,
  doubled,
  gathered,
  inserted,
  lasting,
  lengthInput,
  moveAt,
  newMove,
  reelBy,
  rhythm,
  RHYTHMS,
  shifted,
  SHORTEST,
  spelledOut,
  withCadence,
  without,
} from "./cadence";
import type { Chosen, MoveKind, Often } from "./cadence";
import { moveSteps, withValue } from "./inputs";
import type { MoveSteps } from "./inputs";
import type { Workspace } from "./workspace.svelte";

/** Where refusals of the editor's own changes are shown. */
export const CADENCE = "cadence";

/** An entry of the cadence in time: its legs from `from` up to, not including, `to`, and how often its moves are done. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly rounds: number;
}

/**
 * The cadence under the hand: which moves are chosen, and what can be done with them. An entry is a move, or a block of moves
 * that are repeated; `inner` is the chosen move of a block. Each verb is one step of undo.
 */
export class CadenceEditor {
  #anchor = $state<number | null>(null);
  #head = $state(0);
  #inner = $state<number | null>(null);
  readonly #work: Workspace;

  constructor(work: Workspace) {
    this.#work = work;
  }

  /** The chosen entries by their first and last, as the hand chose them; empty where none is. */
  get ends(): readonly number[] {
    return this.#anchor === null ? [] : [this.#anchor, this.#head];
  }
  set ends([anchor, head]: readonly number[]) {
    this.#anchor = anchor ?? null;
    this.#head = head ?? anchor ?? 0;
  }

  get entries(): readonly ScenarioEntry[] {
    return this.#work.scenario.cadence;
  }

  /** The moves as they are done with this tackle. */
  readonly legs = $derived.by((): readonly Leg[] => {
    const { cadence, tackle } = this.#work.now.compiled;
    return legsOf(cadence, tackle);
  });
  /** Which legs are whose, an item an entry. */
  readonly spans = $derived.by((): readonly Span[] => {
    const done = writtenOut(this.#work.scenario);
    return this.entries.map((_, i) => {
      const own = done.filter(({ entry }) => entry === i);
      const from = done.findIndex(({ entry }) => entry === i);
      return { from, to: from + own.length, rounds: (own.at(-1)?.round ?? 0) + 1 };
    });
  });
  /** Rod and reel in time, seen from the rod tip's place at the start. */
  get timeline(): Timeline {
    const { cadence, tackle } = this.#work.now.compiled;
    return timeline(cadence, tackle, { x: 0, z: tackle.rodTip });
  }
  readonly duration = $derived(this.legs.at(-1)?.end ?? 0);

  /** The chosen entries, in order; null where none is. */
  readonly chosen = $derived.by((): Chosen | null => {
    const last = this.entries.length - 1;
    if (this.#anchor === null || last < 0) return null;
    const [a, b] = [Math.min(this.#anchor, last), Math.min(this.#head, last)];
    return { first: Math.min(a, b), last: Math.max(a, b) };
  });
  /** The one entry that is chosen; null where none or several are. */
  readonly single = $derived(
    this.chosen !== null && this.chosen.first === this.chosen.last ? this.chosen.first : null,
  );
  /** The one block that is chosen; null where none is. */
  readonly block = $derived.by((): ScenarioRepeat | null => {
    const entry = this.single === null ? undefined : this.entries[this.single];
    return entry?.do === "repeat" ? entry : null;
  });
  /** The chosen move of that block, by its place in it; null where none is. */
  readonly inner = $derived(
    this.block === null || this.#inner === null ? null : Math.min(this.#inner, this.block.moves.length - 1),
  );
  /** Where the one move stands whose numbers are turned; null where none is chosen. */
  readonly at = $derived.by((): MoveSteps | null => {
    if (this.single === null || (this.block !== null && this.inner === null)) return null;
    return moveSteps(this.single, this.inner);
  });
  /** The entry that keys start from. */
  get head(): number {
    return Math.max(0, Math.min(this.#head, this.entries.length - 1));
  }

  choose(index: number, extend = false): void {
    if (!extend || this.#anchor === null) this.#anchor = index;
    this.#head = index;
    this.#inner = null;
  }

  /** Chooses a move of the chosen block; null: the block as a whole. */
  chooseInner(index: number | null): void {
    const { block } = this;
    this.#inner =
      index === null || block === null ? null : Math.max(0, Math.min(block.moves.length - 1, index));
  }

  /** Chooses the entry beside; `extend`: keeps those that are chosen already. */
  go(by: -1 | 1, extend: boolean): void {
    if (this.entries.length === 0) return;
    this.choose(
      Math.max(0, Math.min(this.entries.length - 1, this.head + (this.#anchor === null ? 0 : by))),
      extend,
    );
  }

  clear(): void {
    this.#anchor = null;
    this.#inner = null;
  }

  add(kind: MoveKind): void {
    const label = `add ${kind === "release" ? "let go" : kind}`;
    const move = newMove(kind, movesOf(this.entries));
    const { block, inner } = this;
    if (block !== null && inner !== null) {
      if (this.#within(label, inserted(block.moves, inner + 1, [move]))) this.chooseInner(inner + 1);
      return;
    }
    const at = (this.chosen?.last ?? this.entries.length - 1) + 1;
    // After a release nothing can pull: what is added goes before it.
    const released = this.entries.findIndex((entry) => entry.do === "release");
    const place = released >= 0 && at > released ? released : at;
    if (this.#put(label, inserted(this.entries, place, [move]))) this.choose(place);
  }

  duplicate(): void {
    const { chosen, block, inner } = this;
    if (chosen === null) return;
    if (block !== null && inner !== null) {
      if (this.#within("duplicate", doubled(block.moves, { first: inner, last: inner })))
        this.chooseInner(inner + 1);
      return;
    }
    if (!this.#put("duplicate", doubled(this.entries, chosen))) return;
    const count = chosen.last - chosen.first + 1;
    this.choose(chosen.first + count);
    this.choose(chosen.last + count, true);
  }

  /** The chosen entries (all, where none is) become one block that is repeated. A chosen block gets the new count. */
  repeat(often: Often): void {
    const chosen = this.chosen ?? { first: 0, last: this.entries.length - 1 };
    if (this.entries.length === 0) return;
    const label = often === "line in" ? "repeat until the line is in" : `repeat ${often} times`;
    if (this.#put(label, gathered(this.#work.scenario, chosen, often))) this.choose(chosen.first);
  }

  /** How often the chosen entries can be done in a row. */
  readonly mostRepeats = $derived.by((): number => {
    const { first, last } = this.chosen ?? { first: 0, last: this.entries.length - 1 };
    const [a, b] = [this.spans[first], this.spans[last]];
    if (a === undefined || b === undefined || b.to <= a.from) return 1;
    const count = this.block?.moves.length ?? b.to - a.from;
    return Math.floor((MOST_MOVES - (this.legs.length - (b.to - a.from))) / count);
  });

  /** One round more or fewer of the chosen block. One that went on until the line is in is counted from then on. */
  count(by: -1 | 1): void {
    const { single, block } = this;
    const rounds = single === null ? undefined : this.spans[single]?.rounds;
    if (block !== null && rounds !== undefined) this.repeat(Math.max(1, (block.times ?? rounds) + by));
  }

  /** The chosen block as single moves. */
  writeOut(): void {
    const { single, block } = this;
    if (single === null || block === null) return;
    const moves = spelledOut(this.#work.scenario, single);
    const count = moves.length - this.entries.length + 1;
    if (!this.#put("write out as single moves", moves)) return;
    this.choose(single);
    this.choose(single + count - 1, true);
  }

  remove(): void {
    const { chosen, block, inner } = this;
    if (chosen === null) return;
    if (block !== null && inner !== null && block.moves.length > 1) {
      if (this.#within("delete move", without(block.moves, { first: inner, last: inner })))
        this.chooseInner(Math.min(inner, block.moves.length - 2));
      return;
    }
    if (!this.#put("delete move", without(this.entries, chosen))) return;
    if (this.entries.length === 0) this.clear();
    else this.choose(Math.min(chosen.first, this.entries.length - 1));
  }

  /** Puts the chosen entries before what stands at `to` (the length: at the end). */
  shift(to: number): void {
    const { chosen } = this;
    if (chosen === null || (to >= chosen.first && to <= chosen.last + 1)) return;
    const next = shifted(this.entries, chosen, Math.max(0, Math.min(this.entries.length, to)));
    if (!this.#put("move in the cadence", next.list)) return;
    this.choose(next.first);
    this.choose(next.first + chosen.last - chosen.first, true);
  }

  /** What would be moved by `nudge` has a place there. */
  canNudge(by: -1 | 1): boolean {
    const { chosen, block, inner } = this;
    if (chosen === null) return false;
    const [first, last, all] =
      block !== null && inner !== null
        ? [inner, inner, block.moves.length]
        : [chosen.first, chosen.last, this.entries.length];
    return by < 0 ? first > 0 : last < all - 1;
  }

  /** One place earlier or later. */
  nudge(by: -1 | 1): void {
    const { chosen, block, inner } = this;
    if (chosen === null || !this.canNudge(by)) return;
    if (block === null || inner === null) this.shift(by < 0 ? chosen.first - 1 : chosen.last + 2);
    else {
      const next = shifted(block.moves, { first: inner, last: inner }, by < 0 ? inner - 1 : inner + 2);
      if (this.#within("move in the cadence", next.list)) this.chooseInner(next.first);
    }
  }

  /** A drag of an entry's end: `seconds` long now. `settle` ends the drag. */
  stretch(index: number, seconds: number): void {
    this.#work.turn(lengthInput(index), Math.max(SHORTEST, Math.round(seconds * 20) / 20));
  }
  settle(): void {
    this.#work.settle();
  }

  /** A tenth of a second longer or shorter, by key; a block that is chosen as a whole by one round. */
  lengthen(by: -1 | 1): void {
    const { at } = this;
    if (at === null) {
      this.count(by);
      return;
    }
    this.#work.edit(CADENCE, "length of a move", (from) => {
      const move = moveAt(from, at);
      return withValue(from, at, lasting(move, asked(move) + 0.1 * by));
    });
  }

  reelBy(by: "time" | "line"): void {
    const { at } = this;
    if (at === null) return;
    this.#work.edit(CADENCE, "reel by time or line", (from) =>
      withValue(from, at, reelBy(moveAt(from, at), by)),
    );
  }

  /** Another cadence in this one's place, by its rhythm. */
  play(key: string): void {
    const label = RHYTHMS.find((one) => one.key === key)?.name ?? key;
    if (this.#put(`rhythm: ${label}`, rhythm(key, this.#work.scenario))) this.clear();
  }

  #put(label: string, cadence: readonly ScenarioEntry[]): boolean {
    return this.#work.edit(CADENCE, label, (from) => withCadence(from, cadence));
  }

  /** Other moves in the chosen block. */
  #within(label: string, moves: readonly ScenarioMove[]): boolean {
    const { single } = this;
    return (
      single !== null &&
      this.#work.edit(CADENCE, label, (from) => withValue(from, ["cadence", single, "moves"], moves))
    );
  }
}
