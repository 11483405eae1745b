import type { SheetJob } from "./job";
import { boxOf, carried, sizeOf, type Box, type Drawing, type Item } from "./paper/page";
import { pagesOf, templateOf } from "./sheets";
import { TEMPLATES, type TemplateKey } from "./templates";
import { dxfFile } from "./write/dxf";
import { pdfOf } from "./write/pdf";
import { svgFile } from "./write/svg";

export interface MadeFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** A name for files: letters and digits of any script, the rest as one dash, and the document's fingerprint. */
export function stemOf({ scenario, fingerprint }: Pick<SheetJob, "scenario" | "fingerprint">): string {
  const plain = scenario.name
    .trim()
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 60);
  return `${plain === "" ? "bait" : plain}-${fingerprint.plain}`;
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What a file says of itself: bait, part, unit, scale and fingerprint. */
const titleOf = ({ scenario, fingerprint, words }: SheetJob, part: string): string =>
  words(
    `${scenario.name}: ${part}. Scale 1 : 1, unit mm, fingerprint ${fingerprint.short}, made by Trimwright`,
  );

/** All chosen pages as one PDF. */
export async function pdfFile(job: SheetJob): Promise<MadeFile> {
  const { fingerprint, choice, fonts } = job;
  const title = titleOf(job, "sheets");
  return {
    name: `${stemOf(job)}-${choice.paper}.pdf`,
    type: "application/pdf",
    bytes: await pdfOf(pagesOf(job), fonts, title, fingerprint.full.slice(0, 32)),
  };
}

const GAP = 6;

/** Drawings below each other, in one place. */
function stacked(drawings: readonly Drawing[]): { readonly items: readonly Item[]; readonly box: Box } {
  const items: Item[] = [];
  let y = 0;
  for (const { items: own, box } of drawings) {
    items.push(...carried(own, (p) => ({ x: p.x - box.minX, y: y + p.y - box.minY })));
    y += sizeOf(box).height + GAP;
  }
  const { minX, minY, maxX, maxY } = boxOf(items);
  const edge = 2;
  return {
    items,
    box: { minX: minX - edge, minY: minY - edge, maxX: maxX + edge, maxY: maxY + edge },
  };
}

/** A template for a cutter, as SVG or DXF: whole, however long, and not corrected for a printer. Null: no such part. */
export function cutterFile(job: SheetJob, key: TemplateKey, as: "svg" | "dxf"): MadeFile | null {
  const template = templateOf(job, key);
  if (template === null) return null;
  const { items, box } = stacked(template.drawings);
  const title = titleOf(job, template.title.toLowerCase());
  const name = `${stemOf(job)}-${key}.${as}`;
  return as === "svg"
    ? { name, type: "image/svg+xml", bytes: bytesOf(svgFile(items, box, title)) }
    : { name, type: "image/vnd.dxf", bytes: bytesOf(dxfFile(items, box, title)) };
}

/** Makes some of a bait's files; none where the bait has nothing for them. */
type Maker = (job: SheetJob) => Promise<readonly MadeFile[]>;

const printed: Maker = async (job) => {
  const files: MadeFile[] = [];
  for (const paper of ["A4", "Letter"] as const)
    files.push(await pdfFile({ ...job, choice: { ...job.choice, paper } }));
  return files;
};

const forCutters: Maker = (job) =>
  Promise.resolve(
    TEMPLATES.filter(({ key, cutter }) => cutter && job.choice.templates.includes(key)).flatMap(({ key }) =>
      (["svg", "dxf"] as const).flatMap((as) => cutterFile(job, key, as) ?? []),
    ),
  );

/** All that can be made of a bait: a new kind of file is one function here. */
const MAKERS: readonly Maker[] = [printed, forCutters];

/** Every file of a bait: what the headless command writes. */
export async function allFiles(job: SheetJob): Promise<MadeFile[]> {
  const files: MadeFile[] = [];
  for (const make of MAKERS) files.push(...(await make(job)));
  return files;
}
