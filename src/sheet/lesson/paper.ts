import { sha256 } from "../sha256";
import type { MadeFile } from "../files";
import type { Fonts } from "../paper/font";
import { Flow, type Column } from "../paper/flow";
import { AS_PRINTED, type PaperKey } from "../paper/frame";
import type { Page } from "../paper/page";
import type { PlainWords } from "../paper/plain";
import { TYPE } from "../paper/pen";
import type { Pen } from "../paper/pen";
import { pdfOf } from "../write/pdf";

/** One piece of a paper for a class. Its words come in the language of the class. */
export type Block =
  | { readonly kind: "title" | "heading" | "text" | "small"; readonly words: string }
  /** What is asked for on one line, with room to write. */
  | { readonly kind: "fields"; readonly words: readonly string[] }
  /** Room for a number, then its unit. */
  | { readonly kind: "number"; readonly words: string; readonly unit: string }
  /** A bait to draw an arrow on, from its middle; its nose is on the right. */
  | { readonly kind: "arrow" }
  /** Answers to tick. */
  | { readonly kind: "ticks"; readonly words: readonly string[] }
  /** Lines to write on. */
  | { readonly kind: "lines"; readonly count: number }
  /** Words in bold, each with its text below. */
  | { readonly kind: "terms"; readonly rows: readonly (readonly [term: string, text: string])[] }
  | {
      readonly kind: "table";
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
    };

/** A paper for a class: the worksheet of one student, the answers to all, the plan of a lesson. It begins on a new page. */
export interface ClassPaper {
  /** What it belongs to, at the head of its pages. */
  readonly name: string;
  readonly part: string;
  readonly blocks: readonly Block[];
}

export interface ClassJob {
  readonly fonts: Fonts;
  readonly paper: PaperKey;
  readonly words: PlainWords;
}

/** Height of a line to write on by hand, mm (ruled school paper has 8 to 10; common practice). */
const RULED = 9;
/** Room to write a number in, mm. */
const NUMBER = 45;
const TICK = 3.2;
const INDENT = 6;
/** Room for an arrow: half its length each way, and the bait in it, mm. */
const ARROW = { reach: 20, long: 17, high: 4 } as const;
/** Corners of a drawn oval. */
const ROUND = 48;

function bait(pen: Pen): void {
  const { reach, long, high } = ARROW;
  const middle = { x: reach + INDENT, y: reach };
  pen.line("axis", { x: middle.x - reach, y: middle.y }, { x: middle.x + reach, y: middle.y });
  pen.line("axis", { x: middle.x, y: 0 }, { x: middle.x, y: 2 * reach });
  pen.ring(
    "mark",
    Array.from({ length: ROUND }, (_, i) => ({
      x: middle.x + long * Math.cos((2 * Math.PI * i) / ROUND),
      y: middle.y - high * Math.sin((2 * Math.PI * i) / ROUND),
    })),
  );
  // Its eye: so one sees where its nose is.
  pen.circle("mark", { x: middle.x + 0.75 * long, y: middle.y - 0.25 * high }, 0.7);
}

function put(flow: Flow, block: Block): void {
  switch (block.kind) {
    case "title":
      flow.part(block.words, []);
      return;
    case "heading":
      flow.heading(block.words, 25);
      return;
    case "text":
      flow.paragraph(block.words, { size: 3.6 });
      flow.space(1);
      return;
    case "small":
      flow.paragraph(block.words, { size: TYPE.small, grey: 0.25 });
      return;
    case "fields":
      flow.block(RULED, (pen, width) => {
        const each = width / block.words.length;
        block.words.forEach((words, i) => {
          const from = pen.text({ x: i * each, y: 6 }, words, { size: 3.6, within: each - 6 });
          pen.line("rule", { x: i * each + from.width + 1.5, y: 6.6 }, { x: (i + 1) * each - 4, y: 6.6 });
        });
      });
      return;
    case "number":
      flow.block(RULED, (pen) => {
        const from = pen.text({ x: 0, y: 6 }, block.words, { size: 3.6 }).width + 1.5;
        pen.line("rule", { x: from, y: 6.6 }, { x: from + NUMBER, y: 6.6 });
        pen.text({ x: from + NUMBER + 1.5, y: 6 }, block.unit, { size: 3.6 });
      });
      return;
    case "arrow":
      flow.block(2 * ARROW.reach + 3, bait);
      return;
    case "ticks":
      for (const words of block.words) {
        flow.need(TICK + 4);
        flow.block(0, (pen) => pen.rect("ruler", 0.2, 0.3, TICK, TICK));
        flow.paragraph(words, { size: 3.6, indent: INDENT });
        flow.space(0.6);
      }
      return;
    case "lines":
      for (let i = 0; i < block.count; i++)
        flow.block(RULED, (pen, width) => pen.line("rule", { x: 0, y: RULED }, { x: width, y: RULED }));
      flow.space(3);
      return;
    case "terms":
      for (const [term, text] of block.rows) {
        flow.need(12);
        flow.paragraph(term, { size: 3.6, weight: "bold" });
        flow.paragraph(text, { size: 3.6, indent: INDENT });
        flow.space(1.5);
      }
      return;
    case "table":
      flow.table(block.columns, block.rows, TYPE.text, 7);
  }
}

/** The papers on pages, each counted by itself: they are handed out one by one. */
export function classPages(papers: readonly ClassPaper[], { fonts, paper, words }: ClassJob): Page[] {
  return papers.flatMap(({ name, part, blocks }) => {
    const flow = new Flow({ fonts, paper, measured: AS_PRINTED, name, fingerprint: "", plain: words }, part);
    for (const block of blocks) put(flow, block);
    return flow.pages();
  });
}

/** The papers as one PDF. The same papers give the same bytes. */
export async function classPdf(
  papers: readonly ClassPaper[],
  job: ClassJob,
  { title, name }: { readonly title: string; readonly name: string },
): Promise<MadeFile> {
  const id = sha256(new TextEncoder().encode(JSON.stringify(papers))).slice(0, 32);
  return {
    name: `${name}-${job.paper}.pdf`,
    type: "application/pdf",
    bytes: await pdfOf(classPages(papers, job), job.fonts, title, id),
  };
}
