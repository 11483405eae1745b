import type { Fonts } from "./font";
import { frame, factorsOf, PAPERS, room, type Measured, type PaperKey } from "./frame";
import {
  carried,
  sizeOf,
  type Box,
  type Drawing,
  type Item,
  type LineRole,
  type Page,
  type Point,
  type Size,
  type Weight,
} from "./page";
import { plainFrame, plainRoom, type PlainWords } from "./plain";
import { inEnglish, Pen, TYPE, wrapped, type Letters, type Words } from "./pen";
import { tiles, turned, type Tile } from "./tile";

/** What all pages of one file have in common. */
export interface PaperJob {
  readonly fonts: Fonts;
  /** Absent: English. */
  readonly words?: Words;
  readonly paper: PaperKey;
  readonly measured: Measured;
  readonly name: string;
  readonly fingerprint: string;
  /** Nothing on it is cut: no rulers, and these words at its head. Absent: the frame with the rulers. */
  readonly plain?: PlainWords;
}

export interface Column {
  readonly head: string;
  /** Share of the width. */
  readonly share: number;
  readonly right?: boolean;
}

const TILED =
  "The drawing is longer than the page. Lay the sheets over each other so that the crosses with the same letter meet, and hold them against the light. Check with a long ruler before you cut.";

const LINE = 1.28;
const GAP = 4;

/** What stands on a page, and which parts begin or go on there. */
interface Sheet {
  readonly items: readonly Item[];
  readonly titles: readonly string[];
}

/** Fills pages from top to bottom; what does not fit goes to the next page. */
export class Flow {
  readonly #done: Sheet[] = [];
  #titles: string[] = [];
  #pen: Pen;
  #y: number;
  #title = "";
  readonly size: Size;
  readonly room: Box;

  constructor(
    readonly job: PaperJob,
    readonly name: string,
  ) {
    this.size = PAPERS[job.paper];
    this.room = job.plain === undefined ? room(this.size) : plainRoom(this.size);
    this.#pen = new Pen(job.fonts);
    this.#y = this.room.minY;
  }

  get width(): number {
    return this.room.maxX - this.room.minX;
  }

  get left(): number {
    return this.room.maxY - this.#y;
  }

  get #words(): Words {
    return this.job.words ?? inEnglish;
  }

  /** A new part with its notes. It begins on a new page where its first drawing would not fit below them. */
  part(title: string, notes: readonly string[], first?: Drawing): void {
    const { fonts } = this.job;
    const lines = notes.map(
      (note) => wrapped(fonts, this.#words(note), this.width, TYPE.text).length * LINE * TYPE.text + 1,
    );
    const k = factorsOf(this.job.measured);
    const height = first ? sizeOf(first.box).height * k.y : 0;
    const wide = first !== undefined && sizeOf(first.box).width * k.x > this.width;
    const own = 12 + lines.reduce((sum, one) => sum + one, 0) + height;
    if (this.#y > this.room.minY) {
      if (wide || own + GAP > this.left) this.#turn();
      else this.#y += GAP;
    }
    this.#title = this.#words(title);
    this.#titles.push(this.#title);
    this.#heading(this.#title, TYPE.title);
    for (const note of notes) this.paragraph(note);
    this.space(2);
  }

  heading(words: string, keep = 12): void {
    this.need(keep + TYPE.heading * 2);
    if (this.#y > this.room.minY) this.#y += 2;
    this.#heading(this.#words(words), TYPE.heading);
  }

  #heading(words: string, size: number): void {
    for (const line of wrapped(this.job.fonts, words, this.width, size, "bold")) {
      this.#pen.text({ x: this.room.minX, y: this.#y + 0.8 * size }, line, { size, weight: "bold" });
      this.#y += LINE * size;
    }
    this.#y += 1.2;
  }

  /** @param letters `own`: a person's words, which stay in their language */
  paragraph(
    words: string,
    letters: Pick<Letters, "size" | "weight" | "grey"> & { indent?: number; own?: boolean } = {},
  ): void {
    const { size = TYPE.text, weight = "regular", grey = 0, indent = 0, own = false } = letters;
    const lines = wrapped(
      this.job.fonts,
      own ? words : this.#words(words),
      this.width - indent,
      size,
      weight,
    );
    // One line is not left alone on a page.
    this.need(Math.min(lines.length, 2) * LINE * size);
    for (const line of lines) {
      this.need(LINE * size);
      this.#pen.text({ x: this.room.minX + indent, y: this.#y + 0.8 * size }, line, { size, weight, grey });
      this.#y += LINE * size;
    }
    this.#y += 1;
  }

  space(height: number): void {
    this.#y = Math.min(this.#y + height, this.room.maxY);
  }

  /** Goes to the next page where less than this height is left. */
  need(height: number): void {
    if (this.left < height && this.#y > this.room.minY) this.#next();
  }

  /** What belongs together goes to the next page as a whole where it does not fit here. It is laid out twice: once to measure. */
  together(lay: (flow: Flow) => void): void {
    const probe = new Flow(this.job, this.name);
    lay(probe);
    if (probe.count === 1) this.need(probe.#y - probe.room.minY);
    lay(this);
  }

  /** Room of this height, to draw in: 0, 0 is its upper left corner. */
  block(height: number, draw: (pen: Pen, width: number) => void): void {
    this.need(height);
    const pen = new Pen(this.job.fonts, this.#words);
    draw(pen, this.width);
    this.#put(pen.items, { x: this.room.minX, y: this.#y });
    this.#y += height;
  }

  /** @param least least height of a row, mm: room to write in */
  table(
    columns: readonly Column[],
    rows: readonly (readonly string[])[],
    size: number = TYPE.small,
    least = 0,
  ): void {
    const { fonts } = this.job;
    const pad = 1;
    const edges = columns.reduce<number[]>(
      (sofar, { share }) => [...sofar, (sofar.at(-1) ?? 0) + share * this.width],
      [0],
    );
    const cells = (row: readonly string[], weight: Weight): string[][] =>
      columns.map((_, i) => {
        const width = (edges[i + 1] ?? 0) - (edges[i] ?? 0) - 2 * pad;
        return wrapped(fonts, this.#words(row[i] ?? ""), width, size, weight);
      });
    const heightOf = (lines: readonly (readonly string[])[], low = least): number =>
      Math.max(low, Math.max(1, ...lines.map((one) => one.length)) * LINE * size + 1.2);
    const draw = (
      lines: readonly (readonly string[])[],
      weight: Weight,
      role: LineRole,
      low?: number,
    ): void => {
      lines.forEach((one, i) => {
        const right = columns[i]?.right === true;
        const x = this.room.minX + (right ? (edges[i + 1] ?? 0) - pad : (edges[i] ?? 0) + pad);
        one.forEach((words, k) => {
          const y = this.#y + 0.6 + 0.85 * size + k * LINE * size;
          this.#pen.text({ x, y }, words, { size, weight, anchor: right ? 1 : 0 });
        });
      });
      this.#y += heightOf(lines, low);
      this.#pen.line(role, { x: this.room.minX, y: this.#y }, { x: this.room.maxX, y: this.#y });
    };
    const head = cells(
      columns.map((one) => one.head),
      "bold",
    );
    const headed = columns.some((one) => one.head !== "");
    const begin = (): void => {
      if (headed) draw(head, "bold", "ruler", 0);
    };
    const body = rows.map((row) => cells(row, "regular"));
    this.need(heightOf(head, 0) + heightOf(body[0] ?? []));
    begin();
    for (const row of body) {
      if (this.left < heightOf(row)) {
        this.#next();
        begin();
      }
      draw(row, "regular", "rule");
    }
    this.#y += 2;
  }

  /** Drawings at 1 : 1 beside and below each other, turned or on several sheets where the page is too small. */
  drawings(list: readonly Drawing[]): void {
    const k = factorsOf(this.job.measured);
    const scaled = ({ width, height }: Size): Size => ({ width: width * k.x, height: height * k.y });
    let [x, row] = [this.room.minX, 0];
    const newRow = (): void => {
      if (row > 0) this.#y += row + GAP;
      [x, row] = [this.room.minX, 0];
    };
    for (const one of list) {
      const whole = this.room.maxY - this.room.minY - 2 * LINE * TYPE.title;
      const fits = ({ width, height }: Size): boolean => width <= this.width && height <= whole;
      const across = turned(one);
      const chosen = fits(scaled(sizeOf(one.box))) ? one : fits(scaled(sizeOf(across.box))) ? across : null;
      if (chosen === null) {
        newRow();
        this.#tiled(one);
        continue;
      }
      const { width, height } = scaled(sizeOf(chosen.box));
      if (x > this.room.minX && x + width > this.room.maxX) newRow();
      if (this.#y + height > this.room.maxY) {
        [x, row] = [this.room.minX, 0];
        this.#next();
      }
      this.#put(chosen.items, { x: x - chosen.box.minX * k.x, y: this.#y - chosen.box.minY * k.y }, k);
      x += width + GAP;
      row = Math.max(row, height);
    }
    newRow();
  }

  #tiled(drawing: Drawing): void {
    const k = factorsOf(this.job.measured);
    const lines = wrapped(this.job.fonts, this.#words(TILED), this.width, TYPE.text).length;
    const head = LINE * TYPE.title + lines * LINE * TYPE.text + 4;
    const cut = (room: number): readonly Tile[] =>
      tiles(this.job.fonts, drawing, { width: this.width / k.x, height: (room - head) / k.y });
    const whole = cut(this.room.maxY - this.room.minY);
    // The first sheet stands below the part's notes where that takes no sheet more.
    const lower = this.left > 2 * head ? cut(this.left) : [];
    const below = this.#y > this.room.minY && lower.length === whole.length;
    (below ? lower : whole).forEach(({ label, items }, i) => {
      const first = below && i === 0;
      if (this.#y > this.room.minY && !first) this.#turn();
      if (this.#titles.length === 0) this.#titles.push(this.#title);
      const top = this.#y;
      this.#heading(`${this.#title}: ${this.#words(label)}`, first ? TYPE.heading : TYPE.title);
      this.paragraph(TILED);
      this.#put(items, { x: this.room.minX, y: top + head }, k);
      this.#y = this.room.maxY;
    });
  }

  #put(
    items: readonly Item[],
    at: Point,
    k: { readonly x: number; readonly y: number } = { x: 1, y: 1 },
  ): void {
    this.#pen.items.push(...carried(items, (p) => ({ x: at.x + p.x * k.x, y: at.y + p.y * k.y })));
  }

  #turn(): void {
    this.#done.push({ items: this.#pen.items, titles: this.#titles });
    this.#titles = [];
    this.#pen = new Pen(this.job.fonts);
    this.#y = this.room.minY;
  }

  /** The next page, which says what it goes on with. */
  #next(): void {
    this.#turn();
    if (this.#title === "") return;
    this.#titles.push(this.#title);
    const { plain } = this.job;
    const words = plain?.continued(this.#title) ?? `${this.#title}, ${this.#words("continued")}`;
    this.#heading(words, TYPE.heading);
  }

  /** All pages in their frames; the first of them is page `first` of `of`. */
  pages(first = 1, of = this.count): Page[] {
    const { name, fonts, fingerprint, measured, plain } = this.job;
    return this.#all.map(({ items, titles }, i) => {
      const words = { name, part: this.name, page: first + i, of, fingerprint, measured, told: this.#words };
      return {
        size: this.size,
        label: this.#words(`Page ${words.page} of ${of}: ${titles.join(", ")}`),
        items: [
          ...(plain === undefined
            ? frame(fonts, this.size, words)
            : plainFrame(fonts, this.size, { name, part: this.name, paging: plain.paging(words.page, of) })),
          ...items,
        ],
      };
    });
  }

  get count(): number {
    return this.#all.length;
  }

  get #all(): readonly Sheet[] {
    const { items } = this.#pen;
    return items.length > 0 ? [...this.#done, { items, titles: this.#titles }] : this.#done;
  }
}
