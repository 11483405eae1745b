import { fromSI, toSI } from "../../../units";
import {
  addPart,
  compileParts,
  doublePart,
  dragPart,
  fileEntries,
  partHandles,
  removePart,
  tidy,
} from "../../../document";
import type { FileEntry, Scenario, StandsFree } from "../../../document";
import type { Vec } from "../../../model/base";
import type { Bait } from "../../../model/bait";
import { roomIn } from "../../../model/checks";
import type { Worked } from "../../state";
import { STEPS } from "../../words/draw";

export type PartKey = FileEntry["key"];

/** A part of the bait, by its place in the document. The body and the tie eye stand in the list of parts too. */
export interface PartAt {
  readonly key: PartKey | "tie" | "body";
  readonly index: number;
}

/** A handle of a part on the board; in the side view. mm. */
export interface Handle {
  readonly part: PartAt;
  readonly id: string;
  readonly at: readonly [number, number];
  /** The part that it moves, and what of the part, in English; null where the part has this handle alone. */
  readonly name: string;
  readonly moves: string | null;
}

/** What the parts need of the board. */
interface Ground {
  /** A wall thinner than this is warned of, mm. */
  readonly leastWall_mm: number;
  readonly shown: Scenario;
  readonly work: { readonly now: Worked; readonly moving: string | null };
  move(id: string, label: string, write: (from: Scenario) => Scenario): boolean;
  edit(label: string, write: (from: Scenario) => Scenario): boolean;
  rest(): void;
}

const sameAt = (a: PartAt | null, b: PartAt | null): boolean => a?.key === b?.key && a?.index === b?.index;

/** The parts of the drawing: which one is chosen, and what the hand does with it. */
export class PartsBoard {
  readonly #board: Ground;
  at = $state.raw<PartAt | null>(null);
  /** The chosen part's handle that the keys move. */
  handle = $state.raw<string | null>(null);
  /** Parts that were put in where no free place was found, as they were then. */
  #crowded = $state.raw<readonly string[]>([]);
  #nudged: [number, number] = [0, 0];

  constructor(board: Ground) {
    this.#board = board;
  }

  get entries(): readonly FileEntry[] {
    return fileEntries(this.#board.shown.bait);
  }

  /** The chosen entry; null where none is, or where it is gone. */
  get entry(): FileEntry | null {
    const { at } = this;
    return this.entries.find((one) => one.key === at?.key && one.index === at.index) ?? null;
  }

  get handles(): readonly Handle[] {
    const eye = this.#board.shown.bait.tie_mm;
    return [
      ...this.entries.flatMap((entry) =>
        partHandles(entry).map((one): Handle => ({
          id: one.id,
          at: one.at,
          part: { key: entry.key, index: entry.index },
          name: nameOf(entry),
          moves: one.words,
        })),
      ),
      {
        part: { key: "tie", index: 0 },
        id: "place",
        at: eye,
        name: STEPS.tell("part.tie"),
        moves: null,
      },
    ];
  }

  /** The handle that the keys move. */
  get held(): Handle | null {
    const own = this.handles.filter((one) => sameAt(one.part, this.at));
    return own.find((one) => one.id === this.handle) ?? own[0] ?? null;
  }

  choose(at: PartAt | null, handle: string | null = null): void {
    this.at = at;
    this.handle = handle;
  }

  /** The part before or after the chosen one, handle by handle. */
  step(by: number): void {
    const all = this.handles;
    const { held } = this;
    const from = all.findIndex((one) => sameAt(one.part, held?.part ?? null) && one.id === held?.id);
    const next = all[from < 0 ? (by > 0 ? 0 : all.length - 1) : (from + by + all.length) % all.length];
    if (next !== undefined) this.choose(next.part, next.id);
  }

  add(key: PartKey): boolean {
    const { shown } = this.#board;
    const added = addPart(shown, key, this.#body(), this.#isFree());
    if (added === null) return false;
    this.#board.edit(STEPS.tell("add"), () => added.scenario);
    this.#show({ key, index: added.index }, added.free);
    return true;
  }

  #body(): Parameters<typeof addPart>[2] {
    return startBody(this.#board.work.now.compiled.bait);
  }

  #isFree(): StandsFree {
    const { shown, work, leastWall_mm } = this.#board;
    const { bait } = work.now.compiled;
    const spec = { ...compileParts(shown.bait), tie: bait.spec.tie };
    return roomIn({ drawn: bait.drawn, shape: bait.shape, spec }, toSI(leastWall_mm, "mm"));
  }

  #show(at: PartAt, free: boolean): void {
    this.choose(at);
    if (!free) this.#crowded = [...this.#crowded, this.#written(at)];
  }

  /** Whether a part still stands at its usual place because no free one was found. */
  isCrowded(at: PartAt): boolean {
    return this.#crowded.includes(this.#written(at));
  }

  #written(at: PartAt): string {
    const found = this.entries.find((one) => one.key === at.key && one.index === at.index);
    return JSON.stringify([at.key, at.index, found?.entry]);
  }

  double(): void {
    const { entry } = this;
    if (entry === null) return;
    const added = doublePart(this.#board.shown, entry.key, entry.index, this.#body(), this.#isFree());
    if (added === null) return;
    this.#board.edit(STEPS.tell("double", { part: nameOf(entry) }), () => added.scenario);
    this.#show({ key: entry.key, index: added.index }, added.free);
  }

  remove(): boolean {
    const { entry } = this;
    if (entry === null) return false;
    this.#board.edit(STEPS.tell("remove", { part: nameOf(entry) }), (from) =>
      removePart(from, entry.key, entry.index),
    );
    this.choose(null);
    return true;
  }

  drag(handle: Handle, to: readonly [number, number]): void {
    const place: [number, number] = [tidy(to[0]), tidy(to[1])];
    const { key, index } = handle.part;
    const { name: part, moves } = handle;
    const label =
      moves === null ? STEPS.tell("move", { part }) : STEPS.tell("moveBy", { part, handle: moves });
    this.#board.move(`draw.${key}.${index}.${handle.id}`, label, (from) =>
      key === "tie"
        ? { ...from, bait: { ...from.bait, tie_mm: place } }
        : key === "body"
          ? from
          : dragPart(from, key, index, handle.id, place),
    );
  }

  nudge(ds: number, dz: number): void {
    const { held } = this;
    if (held === null) return;
    const id = `draw.${held.part.key}.${held.part.index}.${held.id}`;
    if (this.#board.work.moving !== id) this.#nudged = [held.at[0], held.at[1]];
    this.#nudged = [tidy(this.#nudged[0] + ds), tidy(this.#nudged[1] + dz)];
    const to = this.#nudged;
    this.drag(held, to);
    this.#nudged = to;
    this.#board.rest();
  }
}

/** A part by its name. The bib, which has none, is called so in English here. */
export const nameOf = ({ key, entry }: Pick<FileEntry, "key" | "entry">): string =>
  (entry as { readonly name?: string }).name ?? (key === "bib" ? STEPS.tell("part.bib") : key);

/** The body that a new part is put into, mm. */
function startBody({ drawn }: Bait): Parameters<typeof addPart>[2] {
  const length = fromSI(drawn.length, "mm");
  return {
    length,
    at(station) {
      const one = drawn.section(Math.min(drawn.length, Math.max(0, toSI(station, "mm"))));
      return {
        top: fromSI(one.top, "mm"),
        bottom: fromSI(one.bottom, "mm"),
        half: fromSI(one.halfBreadth, "mm"),
      };
    },
  };
}

/** A place of the side view (m, x forward) as station and height, mm. */
export const stationHeight = (p: Vec): [number, number] => [0 - fromSI(p.x, "mm"), fromSI(p.z, "mm")];
