import { scaleLinear } from "d3-scale";
import type { ReachCell, ReachVariable } from "../../../runner";
import { degrees } from "../../state";
import type { Units } from "../../state";
import { FILE } from "../../words/file";
import type { ReachWords } from "../../words/reach";
import { contour, reasonsIn, regions } from "./contour";
import { roundStep } from "./figures";
import { reasonOf, reasonText } from "./reasons";
import type { ReachState } from "./state.svelte";
import { formOf, nearest } from "./variables";

/** A node of the map: its column and row. */
export interface GridNode {
  readonly i: number;
  readonly j: number;
}

/** Room round the map's fields, and its whole height, px. */
export const LEFT = 46;
const RIGHT = 10;
export const TOP = 22;
const BOTTOM = 36;
export const HEIGHT = 340;

/** The map as it lies in its picture: where its nodes are, what is drawn over them, and what is said of each. */
export class MapGrid {
  readonly #of: () => ReachState;
  readonly #units: Units;
  readonly #words: () => ReachWords;
  /** Width of the picture, px. */
  width = $state(560);

  constructor(of: () => ReachState, units: Units, words: () => ReachWords) {
    this.#of = of;
    this.#units = units;
    this.#words = words;
  }

  get #reach(): ReachState {
    return this.#of();
  }

  readonly map = $derived.by(() => this.#reach.map);
  readonly forms = $derived.by(() => ({
    x: formOf(this.#reach.scenario, this.#reach.across),
    y: formOf(this.#reach.scenario, this.#reach.up),
  }));
  readonly columns = $derived(this.map?.xs.length ?? 0);
  readonly rows = $derived(this.map?.ys.length ?? 0);
  readonly inner = $derived({ w: Math.max(60, this.width - LEFT - RIGHT), h: HEIGHT - TOP - BOTTOM });
  /** Size of a field, px. */
  readonly cw = $derived(this.columns > 0 ? this.inner.w / this.columns : 0);
  readonly ch = $derived(this.rows > 0 ? this.inner.h / this.rows : 0);

  /** Nodes stand in the middles of their fields; the shown unit is a straight conversion. */
  readonly toX = $derived.by(() => this.#units.converter(this.forms.x.unit));
  readonly toY = $derived.by(() => this.#units.converter(this.forms.y.unit));
  readonly x = $derived(
    scaleLinear(
      [this.toX(this.map?.xs[0] ?? 0), this.toX(this.map?.xs.at(-1) ?? 1)],
      [LEFT + this.cw / 2, LEFT + this.inner.w - this.cw / 2],
    ),
  );
  readonly y = $derived(
    scaleLinear(
      [this.toY(this.map?.ys[0] ?? 0), this.toY(this.map?.ys.at(-1) ?? 1)],
      [TOP + this.inner.h - this.ch / 2, TOP + this.ch / 2],
    ),
  );
  gridX(i: number): number {
    return LEFT + this.cw * (i + 0.5);
  }
  gridY(j: number): number {
    return TOP + this.inner.h - this.ch * (j + 0.5);
  }

  cellAt(i: number, j: number): ReachCell | null {
    return this.map?.cells[i * this.rows + j] ?? null;
  }
  /** m; null where there is none. */
  readonly depthAt = (i: number, j: number): number | null => this.cellAt(i, j)?.depth ?? null;
  /** Why a node does not run; null where it does or is not known. */
  readonly whyAt = (i: number, j: number): string | null => {
    const cell = this.cellAt(i, j);
    return cell === null || cell.runs ? null : reasonOf(cell);
  };

  /** m */
  readonly deepest = $derived(Math.max(0, ...(this.map?.cells ?? []).map((cell) => cell?.depth ?? 0)));
  readonly #toDepth = $derived.by(() => this.#units.converter("m"));
  /** From contour to contour, in the unit shown: the depths written at them are round numbers. */
  readonly #step = $derived(this.deepest > 0 ? roundStep(this.#toDepth(this.deepest), 6) : 1);
  /** Digits of the depths written at the contours. */
  readonly digits = $derived(Math.max(0, -Math.floor(Math.log10(this.#step) + 1e-9)));
  /** Contours are drawn when the whole map is there: on half of one they would be wrong at its rim. */
  readonly whole = $derived(this.map !== null && this.map.done === this.map.of);
  readonly isolines = $derived.by(() => {
    if (!this.whole) return [];
    // Metre and foot both begin at 0: one factor converts the step.
    const step = this.#step / this.#toDepth(1);
    const count = Math.floor(this.deepest / step + 1e-9);
    const levels = Array.from({ length: count }, (_, i) => (i + 1) * step);
    return levels.flatMap((level) =>
      contour(this.columns, this.rows, this.depthAt, level).map((line) => ({ level, line })),
    );
  });
  /** Lines at the depth that is wanted. */
  readonly wanted = $derived.by(() => {
    const { wanted } = this.#reach;
    return this.whole && wanted !== null ? contour(this.columns, this.rows, this.depthAt, wanted) : [];
  });
  /** Patches of nodes that do not run, each with its reason. */
  readonly patches = $derived(this.map === null ? [] : regions(this.columns, this.rows, this.whyAt));
  readonly reasons = $derived(reasonsIn(this.patches));
  /** Some run along the bottom. */
  readonly bottomed = $derived(
    (this.map?.cells ?? []).some((cell) => cell?.runs === true && cell.why !== null),
  );

  /** The node nearest to the mark. */
  readonly node = $derived.by((): GridNode | null => {
    const { map } = this;
    if (map === null) return null;
    const reach = this.#reach;
    return {
      i: nearest(map.xs, reach.markedValue(reach.across)),
      j: nearest(map.ys, reach.markedValue(reach.up)),
    };
  });

  /** The node at a place in the picture, px. */
  nodeAt(px: number, py: number): GridNode | null {
    const i = Math.floor((px - LEFT) / this.cw);
    const j = Math.floor((TOP + this.inner.h - py) / this.ch);
    if (i < 0 || j < 0 || i >= this.columns || j >= this.rows) return null;
    return { i, j };
  }

  /** The values of a node, for the mark. */
  valuesAt({ i, j }: GridNode): Readonly<Partial<Record<ReachVariable, number>>> | null {
    const [vx, vy] = [this.map?.xs[i], this.map?.ys[j]];
    if (vx === undefined || vy === undefined) return null;
    return { [this.#reach.across]: vx, [this.#reach.up]: vy };
  }

  /** A node in words. */
  say({ i, j }: GridNode): string {
    const { map, forms } = this;
    const units = this.#units;
    if (map === null) return "";
    const words = this.#words();
    return words.tell("node", {
      across: words.tell(`variable.${forms.x.variable}`),
      x: units.show(map.xs[i] ?? NaN, forms.x.unit, forms.x.digits),
      up: words.tell(`inside.${forms.y.variable}`),
      y: units.show(map.ys[j] ?? NaN, forms.y.unit, forms.y.digits),
      what: this.#sayCell(this.cellAt(i, j), words),
    });
  }

  #sayCell(cell: ReachCell | null, words: ReachWords): string {
    const units = this.#units;
    if (cell === null) return words.tell("notYet");
    if (!cell.runs) {
      const why = reasonText(reasonOf(cell), words);
      return cell.built ? words.tell("notBecause", { why }) : why;
    }
    const deep = {
      depth: units.show(cell.depth ?? NaN, "m", 2),
      pitch: units.show(degrees(cell.pitch ?? NaN), "°", 1, true),
      tension: units.show(cell.tension ?? NaN, "N", 2),
    };
    return cell.why === null
      ? words.tell("deep", deep)
      : words.tell("deepWhy", { ...deep, why: FILE.in(words.language).of(cell.why) });
  }
}
