import { wrap } from "comlink";
import { fromSI, toSI } from "../../../../units";
import { tidy, withBreadth, withOutline } from "../../../../document";
import type { CurvePoints } from "../../../../document";
import type { Knot } from "../../../../model/shape";
import type { TracedBreadth, TracedOutline } from "../../../../model/shaping";
import { drawnCurve } from "../../../../drawing";
import { faultText } from "../../../state";
import { FILE } from "../../../words/file";
import type { Told } from "../../../words/trace";
import { isDrawing, pixelsOf } from "./picture";
import type { Picture } from "./picture";
import { startTracer } from "./connection";
import { endsOf, isUntouched, offTips, standsOn } from "./ends";
import type { Ends } from "./ends";
import { inPicture, onBait, shifted } from "./place";
import type { PictureSize, Placement, Px, Sight } from "./place";
import type { Silhouette } from "./silhouette";
import type { TraceApi } from "./worker";
import type { Board } from "../state.svelte";

/** Curves that fit a silhouette, waiting to be taken. Lengths m. */
export interface Fit {
  readonly sight: Sight;
  readonly body: TracedOutline | TracedBreadth;
  /** Curves in the file's units, stations from the nose that was found. */
  readonly curves: readonly CurvePoints[];
  /** The same, drawn, in the picture's stations. */
  readonly lines: readonly CurvePoints[];
}

/** Nose and tail this near to the tips of an outline stand on them, mm: of a blunt end no tip is surer. */
const ON_TIPS = 0.5;

/** What it needs of the picture under the drawing. */
interface Traced {
  readonly picture: Picture | null;
  readonly place: Placement | null;
  readonly laid: (PictureSize & { readonly chosen: number }) | null;
  readonly sight: Sight;
  put(place: Placement): void;
}

/** The first outline that a picture gives: found, fitted, shown, taken or left. */
export class Proposal {
  /** Where bait and ground part, 0 to 1; null: by itself. */
  threshold = $state<number | null>(null);
  /** Greatest distance between picture and curves, mm. */
  tolerance = $state(0.3);
  /** The hand has asked for it. */
  open = $state(false);
  busy = $state(false);
  trouble = $state.raw<Told | null>(null);
  silhouette = $state.raw<Silhouette | null>(null);
  fit = $state.raw<Fit | null>(null);
  /** Where nose and tail were put on the ends of a silhouette by themselves. */
  #put = $state.raw<Placement | null>(null);
  readonly #trace: Traced;
  readonly #board: Board;
  #worker: Worker | null = null;
  #asked = 0;

  constructor(trace: Traced, board: Board) {
    this.#trace = trace;
    this.#board = board;
  }

  /** Looks at the picture in hand and fits curves to it. What was asked before is given up. */
  async propose(): Promise<void> {
    const { picture, laid, sight } = this.#trace;
    let { place } = this.#trace;
    this.open = true;
    this.trouble = null;
    if (picture === null || place === null || laid === null) return;
    this.#worker?.terminate();
    const worker = startTracer();
    this.#worker = worker;
    const ask = ++this.#asked;
    this.busy = true;
    try {
      const api = wrap<TraceApi>(worker);
      let ring: readonly Px[];
      if (isDrawing(picture)) {
        this.silhouette = null;
        ring = picture.rings[laid.chosen] ?? picture.rings[0] ?? [];
      } else {
        const { data, width, height } = await pixelsOf(picture);
        const found = await api.findSilhouette({ data, width, height }, this.threshold);
        if (ask !== this.#asked) return;
        this.silhouette = found.ok ? found.silhouette : null;
        if (!found.ok) {
          this.fit = null;
          const { why } = found;
          this.trouble = (words) => words.tell(why);
          return;
        }
        ({ ring } = found.silhouette);
        place = this.#onItsEnds(ring, place, laid);
      }
      const lies = place;
      const knots = ring.map((px): Knot => {
        const [s, v] = onBait(lies, px);
        return { s: toSI(s, "mm"), v: toSI(v, "mm") };
      });
      const tolerance = toSI(this.tolerance, "mm");
      const body =
        sight === "side"
          ? await api.tracedOutline(knots, tolerance)
          : await api.tracedBreadth(knots, tolerance);
      if (ask === this.#asked) this.fit = shown(sight, body);
    } catch (fault) {
      if (ask !== this.#asked) return;
      this.fit = null;
      this.trouble = (words) => words.tell("no.fit", { why: FILE.in(words.language).of(faultText(fault)) });
    } finally {
      if (ask === this.#asked) {
        this.busy = false;
        worker.terminate();
        this.#worker = null;
      }
    }
  }

  /** Nose and tail on the ends of a silhouette, unless a hand has put them somewhere. */
  #onItsEnds(ring: readonly Px[], place: Placement, size: PictureSize): Placement {
    if (!isUntouched(place, size, this.#put)) return place;
    const ends = endsOf(ring, place.mirrored);
    if (ends === null || standsOn(place, ends)) return place;
    const next = { ...place, ...ends };
    this.#put = next;
    this.#trace.put(next);
    return next;
  }

  /** Nose and tail stand on the ends of what was found, and no hand has moved them since. */
  get isOnItsEnds(): boolean {
    const { place, laid } = this.#trace;
    return this.#put !== null && place !== null && laid !== null && isUntouched(place, laid, this.#put);
  }

  /**
   * The tips of a drawing's outline, where nose and tail lie beside them. A drawing keeps its own level line, until the hand
   * turns it; a photo is turned at once.
   */
  readonly tips = $derived.by((): Ends | null => {
    const { picture, place, laid } = this.#trace;
    if (picture === null || place === null || laid === null || !isDrawing(picture)) return null;
    const ends = endsOf(picture.rings[laid.chosen] ?? [], place.mirrored);
    return ends !== null && offTips(place, ends) > ON_TIPS ? ends : null;
  });

  /** Turns a drawing: the datum line is then the line between its tips. */
  onTips(): void {
    const { place } = this.#trace;
    if (this.tips !== null && place !== null) this.#trace.put({ ...place, ...this.tips });
  }

  /** Takes the curves into the drawing, as one step of undo; the picture's nose comes to lie at station 0. */
  take(): boolean {
    const { fit } = this;
    const { place } = this.#trace;
    if (fit === null || place === null) return false;
    const { body } = fit;
    const taken =
      "top" in body
        ? this.#board.edit("take the traced outline", (from) => withOutline(from, body))
        : this.#board.edit("take the traced half-breadth", (from) => withBreadth(from, body));
    this.#trace.put(shifted(place, [0 - fromSI(body.start, "mm"), 0]));
    this.leave();
    return taken;
  }

  /** Puts nose and tail on the ends of the outline that was found: then the known length is its own. */
  onEnds(): void {
    const { fit } = this;
    const { place } = this.#trace;
    if (fit === null || place === null) return;
    const at = (s: number): Px => inPicture(place, [fromSI(s, "mm"), 0]);
    const { start, length } = fit.body;
    this.#trace.put({ ...place, nose: at(start), tail: at(start + length) });
  }

  leave(): void {
    this.#asked += 1;
    this.#worker?.terminate();
    this.#worker = null;
    this.busy = false;
    this.open = false;
    this.fit = null;
    this.silhouette = null;
    this.trouble = null;
    this.threshold = null;
    this.#put = null;
  }
}

function shown(sight: Sight, body: TracedOutline | TracedBreadth): Fit {
  const mm = (knots: readonly Knot[]): CurvePoints =>
    knots.map(({ s, v }): readonly [number, number] => [tidy(fromSI(s, "mm")), tidy(fromSI(v, "mm"))]);
  const length = tidy(fromSI(body.length, "mm"));
  const start = fromSI(body.start, "mm");
  const curves = "top" in body ? [mm(body.top), mm(body.bottom)] : [mm(body.halfBreadth)];
  const lines = curves.map((points): CurvePoints =>
    (drawnCurve(points, length) ?? points).map(([s, v]): readonly [number, number] => [s + start, v]),
  );
  return { sight, body, curves, lines };
}
