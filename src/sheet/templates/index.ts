import { bibTemplate, wedgeTemplate } from "./bib";
import { drillTemplate } from "./drill";
import { halvesTemplate, sideTemplate, topTemplate } from "./outlines";
import { sectionsTemplate } from "./sections";
import type { Template, TemplateJob } from "./types";
import { wireTemplate } from "./wire";

export type { Template, TemplateJob } from "./types";

/** A template that can be made of a bait. */
export interface TemplateKind {
  readonly key: string;
  readonly label: string;
  /** A cutter can follow its lines: it is also written as SVG and DXF. */
  readonly cutter: boolean;
  /** Null: this bait has no such part. */
  make(job: TemplateJob): Template | null;
}

/** All templates, in the order in which they are printed. */
export const TEMPLATES = [
  { key: "side", label: "Side outline", cutter: true, make: sideTemplate },
  { key: "top", label: "Top outline", cutter: true, make: topTemplate },
  { key: "halves", label: "Two halves, inner faces", cutter: true, make: halvesTemplate },
  { key: "sections", label: "Section gauges", cutter: true, make: sectionsTemplate },
  { key: "bib", label: "Bib", cutter: true, make: bibTemplate },
  { key: "wedge", label: "Wedge for the slot's angle", cutter: true, make: wedgeTemplate },
  { key: "drill", label: "Drill map", cutter: false, make: drillTemplate },
  { key: "wire", label: "Wire", cutter: false, make: wireTemplate },
] as const satisfies readonly TemplateKind[];

export type TemplateKey = (typeof TEMPLATES)[number]["key"];
