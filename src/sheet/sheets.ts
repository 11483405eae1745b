import { buildSheet } from "./build/sheet";
import type { SheetJob } from "./job";
import { Flow, type PaperJob } from "./paper/flow";
import type { Page } from "./paper/page";
import { TEMPLATES, type TemplateKey, type TemplateKind, type Template } from "./templates";

const paperJob = ({ fonts, words, choice, scenario, fingerprint }: SheetJob): PaperJob => ({
  fonts,
  words,
  paper: choice.paper,
  measured: choice.measured,
  name: scenario.name,
  fingerprint: fingerprint.short,
});

const kindOf = (key: TemplateKey): TemplateKind => {
  const found = TEMPLATES.find((one) => one.key === key);
  if (!found) throw new RangeError(`There is no template ${key}.`);
  return found;
};

/** A template of the job's bait; null: it has no such part. */
export const templateOf = (
  { scenario, compiled, fonts, words, stations, drills }: SheetJob,
  key: TemplateKey,
): Template | null => kindOf(key).make({ scenario, bait: compiled.bait, fonts, words, stations, drills });

/** Puts one template onto the pages. */
function lay(flow: Flow, { title, notes, drawings, table }: Template): void {
  flow.part(title, notes, drawings[0]);
  flow.drawings(drawings);
  if (table) flow.table(table.columns, table.rows);
}

/** All chosen pages, in their order: first what is read, then what is cut. */
export function pagesOf(job: SheetJob): Page[] {
  const paper = paperJob(job);
  const build = new Flow(paper, "Build sheet");
  if (job.choice.build) buildSheet(build, job);
  const flow = new Flow(paper, "Templates");
  for (const { key } of TEMPLATES) {
    if (!job.choice.templates.includes(key)) continue;
    const template = templateOf(job, key);
    if (template) lay(flow, template);
  }
  const of = build.count + flow.count;
  return [...build.pages(1, of), ...flow.pages(1 + build.count, of)];
}
