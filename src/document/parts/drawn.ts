/** How a maker puts each kind of part onto the drawing: its plain name, where a new one begins, and what a hand takes hold of. */

/** [station, height], mm. */
export type Place = readonly [number, number];

/** The body that a new part is put into, mm. */
export interface StartBody {
  readonly length: number;
  /** Heights of the edges and the half-breadth at a station. */
  at(station: number): { readonly top: number; readonly bottom: number; readonly half: number };
}

/** How far from its usual place a new part stands, mm: aft, and up. */
export interface Shift {
  readonly along: number;
  readonly up: number;
}

export const UNSHIFTED: Shift = { along: 0, up: 0 };

/** A place of a part that a hand drags. */
export interface PartHandle {
  readonly id: string;
  readonly at: Place;
  /** What the handle moves, in words. */
  readonly words: string;
}

export interface Drawn<Entry> {
  /** Plain name of the kind. */
  readonly words: string;
  /** A new one at its usual place in this body, or shifted from it. Sizes and masses are common practice, no source. */
  start(body: StartBody, by: Shift): Entry;
  /** Which ways a new one is shifted where its usual place is taken. */
  readonly ways: readonly (keyof Shift)[];
  /** The first handle moves the whole part. */
  handles(entry: Entry): readonly PartHandle[];
  drag(entry: Entry, handle: string, to: Place): Entry;
}

export const tenth = (mm: number): number => Number(mm.toFixed(1)) + 0;
export const copy = ([s, z]: Place): [number, number] => [s, z];

/** Height at a share of the way from the bottom edge to the top edge. */
export function heightAt(body: StartBody, station: number, share: number): number {
  const { top, bottom } = body.at(station);
  return tenth(bottom + share * (top - bottom));
}
