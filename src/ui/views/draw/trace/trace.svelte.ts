import { untrack } from "svelte";
import { freshId } from "../../../kept";
import {
  aCount,
  aFlag,
  aNumber,
  aText,
  faultText,
  groupOf,
  KEYS_REST_MS,
  keptWith,
  orNull,
} from "../../../state";
import type { App } from "../../../state";
import type { Told } from "../../../words/trace";
import { boardOf } from "../state.svelte";
import { aPx, isDrawing, keptPicture, PictureError, readPicture } from "./picture";
import type { Picture } from "./picture";
import { aroundRing, firstPlace, flipped, placeTrouble, SIGHTS } from "./place";
import type { MarkKey, PictureSize, Placement, Px, Sight } from "./place";
import { Proposal } from "./proposal.svelte";

/** A picture under the drawing: its name in the browser's database, its size in px, and where it lies. */
export interface Laid extends PictureSize {
  readonly id: string;
  readonly place: Placement;
  /** Which of a drawing's outlines is the bait. */
  readonly chosen: number;
}

/** A kept picture, and the address by which the page shows a photo. */
interface Shown {
  readonly id: string;
  readonly picture: Picture;
  readonly url: string | null;
}

const aPlace = groupOf<Placement>({
  nose: aPx,
  tail: aPx,
  from: aPx,
  to: aPx,
  whole: aFlag,
  apart: aNumber,
  mirrored: aFlag,
});
const aLaid = groupOf<Laid>({ id: aText, width: aNumber, height: aNumber, place: aPlace, chosen: aCount });
const laidOrNull = orNull((value: unknown) => {
  const laid = aLaid(value);
  return laid !== undefined && laid.place.apart > 0 && placeTrouble(laid.place) === null ? laid : undefined;
});

/** The pictures under the drawing. They stay in this browser: the bait's file has none of them. */
export class Trace {
  side = $state.raw<Laid | null>(null);
  above = $state.raw<Laid | null>(null);
  /** How strongly the picture shows, 0 to 1. */
  strength = $state(0.6);
  /** Which view the hand works on. */
  sight = $state<Sight>("side");
  /** A file is being read. */
  busy = $state(false);
  trouble = $state.raw<Told | null>(null);
  /** The place with its marks where the hand has them; the picture itself follows when the hand rests. */
  #draft = $state.raw<Placement | null>(null);
  #shown = $state.raw<Readonly<Record<Sight, Shown | null>>>({ side: null, above: null });
  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #app: App;
  readonly proposal: Proposal;

  constructor(app: App) {
    this.#app = app;
    this.proposal = new Proposal(this, boardOf(app));
    app.beside.keep<Pick<Trace, Sight | "strength">>("trace", "work", this, {
      side: laidOrNull,
      above: laidOrNull,
      strength: aNumber,
    });
    for (const sight of SIGHTS)
      $effect(() => {
        const id = this[sight]?.id ?? null;
        untrack(() => void this.#fetch(sight, id));
      });
  }

  /** The picture in hand. */
  get laid(): Laid | null {
    return this[this.sight];
  }

  /** By what the picture is drawn. */
  get place(): Placement | null {
    return this.laid?.place ?? null;
  }

  /** Where the marks are now. */
  get marked(): Placement | null {
    return this.#draft ?? this.place;
  }

  /** A picture under a view as it is kept; null: there is none, or it is still being fetched. */
  seen(sight: Sight): { readonly picture: Picture; readonly url: string | null } | null {
    const shown = this.#shown[sight];
    return shown !== null && shown.id === this[sight]?.id ? shown : null;
  }

  /** The picture in hand as it is kept. */
  get picture(): Picture | null {
    return this.seen(this.sight)?.picture ?? null;
  }

  look(sight: Sight): void {
    if (sight === this.sight) return;
    this.settle();
    this.proposal.leave();
    this.sight = sight;
    this.trouble = null;
  }

  /** Takes a picture, or an SVG drawing, that somebody picked, dropped or pasted. */
  take(file: File): Promise<void> {
    return file.type === "image/svg+xml" || /\.svg$/i.test(file.name)
      ? this.#lay(async () => drawingOf(await file.text()))
      : this.#lay(() => readPicture(file));
  }

  /** Takes the text of an SVG file or of one path. */
  takeText(text: string): Promise<void> {
    return this.#lay(() => drawingOf(text));
  }

  async #lay(read: () => Promise<Picture>): Promise<void> {
    const { sight } = this;
    const { baits, work } = this.#app;
    this.settle();
    this.proposal.leave();
    this.busy = true;
    this.trouble = null;
    try {
      const picture = await read();
      const { width, height } = picture;
      const id = freshId();
      const { length_mm } = work.scenario.bait;
      const ring = isDrawing(picture) ? picture.rings[0] : undefined;
      this.#show(sight, id, picture);
      const before = this[sight];
      const place =
        ring === undefined ? firstPlace(picture, length_mm) : aroundRing(ring, picture, length_mm);
      this[sight] = { id, width, height, place, chosen: 0 };
      await baits.store.putPicture(id, picture, baits.time);
      if (before !== null) await baits.store.removePicture(before.id, baits.id);
    } catch (fault) {
      this.trouble =
        fault instanceof PictureError
          ? fault.told
          : (words) => words.tell("picture.notKept", { why: faultText(fault) });
    } finally {
      this.busy = false;
    }
  }

  /** Another outline of a drawing is the bait: nose and tail are its ends. */
  choose(chosen: number): void {
    const { laid, picture, sight } = this;
    const ring = picture !== null && isDrawing(picture) ? picture.rings[chosen] : undefined;
    if (laid === null || ring === undefined) return;
    this[sight] = { ...laid, chosen, place: aroundRing(ring, laid, laid.place.apart) };
  }

  async remove(): Promise<void> {
    const { laid, sight } = this;
    if (laid === null) return;
    this.#draft = null;
    this.trouble = null;
    this.proposal.leave();
    this[sight] = null;
    const { baits } = this.#app;
    await baits.store.removePicture(laid.id, baits.id).catch(() => undefined);
  }

  /** Sets where the picture lies. A place that is none is said, and not taken. */
  put(place: Placement): void {
    const { laid, sight } = this;
    if (laid === null) return;
    this.#draft = null;
    this.trouble = placeTrouble(place);
    if (this.trouble === null) this[sight] = { ...laid, place };
  }

  flip(): void {
    const { laid } = this;
    if (laid !== null) this.put(flipped(laid.place, laid));
  }

  /** Moves a mark in the picture; it stays within it. */
  mark(key: MarkKey, { u, v }: Px): void {
    const { laid, marked } = this;
    if (laid === null || marked === null) return;
    const within = (at: number, most: number): number => Math.min(Math.max(at, 0), most);
    this.#draft = { ...marked, [key]: { u: within(u, laid.width), v: within(v, laid.height) } };
  }

  /** The hand rests: the picture goes where its marks say. */
  settle(): void {
    clearTimeout(this.#rest);
    if (this.#draft !== null) this.put(this.#draft);
  }

  /** Takes the marks back to where they were. */
  drop(): boolean {
    clearTimeout(this.#rest);
    const moving = this.#draft !== null;
    this.#draft = null;
    return moving;
  }

  /** Ends a run of key presses when the keys rest. */
  rest(): void {
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.settle(), KEYS_REST_MS);
  }

  async #fetch(sight: Sight, id: string | null): Promise<void> {
    const shown = this.#shown[sight];
    if (id === null || shown?.id === id) {
      if (id === null && shown !== null) this.#show(sight, null, null);
      return;
    }
    let picture: Picture | null = null;
    try {
      picture = keptPicture(await this.#app.baits.store.picture(id));
    } catch {
      // Said below: it is not there.
    }
    if (this[sight]?.id !== id) return;
    this.#show(sight, id, picture);
    if (picture === null) this.trouble = (words) => words.tell("picture.gone");
  }

  #show(sight: Sight, id: string | null, picture: Picture | null): void {
    const old = this.#shown[sight];
    if (old !== null && old.url !== null) URL.revokeObjectURL(old.url);
    const url = (one: Picture): string | null =>
      isDrawing(one) ? null : URL.createObjectURL(new Blob([one.bytes], { type: one.type }));
    const next = id === null || picture === null ? null : { id, picture, url: url(picture) };
    this.#shown = { ...this.#shown, [sight]: next };
  }
}

export const traceOf = keptWith((app) => new Trace(app));

async function drawingOf(text: string): Promise<Picture> {
  const { readDrawing } = await import("./svg");
  const read = readDrawing(text);
  if (!read.ok) throw new PictureError(read.why);
  return read.drawing;
}
