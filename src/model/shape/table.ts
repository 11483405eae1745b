import { sin } from "../base";
import type { Edges, Section } from "./types";
import { sectionAt, stationOfPhi } from "./edges";
import { MOST_POINTS, ruleFor, type PanelRule } from "./panel-rule";
import { sectionIntegrals, type Halves, type SectionIntegrals } from "./section";
import { quarter } from "./superellipse";

/** Widest panel of the integrals along the body, rad. */
const PANEL = 0.45;

/** The curves kept for every panel. */
const CURVES: readonly ((h: Halves) => number)[] = [
  (h) => h.halfBreadth,
  (h) => h.widest,
  (h) => h.up,
  (h) => h.down,
  (h) => h.nUp,
  (h) => h.nDown,
  (h) => h.cUp,
  (h) => h.mUp,
  (h) => h.cDown,
  (h) => h.mDown,
];

/**
 * A body's sections, tabulated once: at Gauss stations of panels that end at the breaks and are at most 0.45 rad wide, and
 * between them as polynomials in φ through the stations of a panel. The cubics of drawn edges are
 * reproduced to round-off, smooth exact edges to about 1e-8. Full integrals of the quarters are tabulated with them.
 */
export class SectionTable {
  readonly length: number;
  /** Panel ends, from 0 to π. */
  readonly ends: Float64Array;
  readonly panels: number;
  /** Stations of each panel. */
  readonly rule: PanelRule;
  /** Sections at the stations, panel by panel. */
  readonly sections: readonly Section[];
  readonly halves: readonly Halves[];
  readonly integrals: readonly SectionIntegrals[];
  /** φ, x = −s, and the integration weights dφ and ds of each station. */
  readonly phi: Float64Array;
  readonly x: Float64Array;
  readonly dPhi: Float64Array;
  readonly ds: Float64Array;
  private readonly fits: Float64Array;

  constructor(readonly edges: Edges) {
    this.length = edges.length;
    this.ends = panelEnds(edges.breaks);
    this.panels = this.ends.length - 1;
    const widest = this.ends.reduce((most, end, p) => Math.max(most, end - (this.ends[p - 1] ?? 0)), 0);
    this.rule = ruleFor(widest);
    const { points, x, w } = this.rule;
    const n = this.panels * points;
    this.phi = new Float64Array(n);
    this.x = new Float64Array(n);
    this.dPhi = new Float64Array(n);
    this.ds = new Float64Array(n);
    this.fits = new Float64Array(this.panels * CURVES.length * MOST_POINTS);
    const sections: Section[] = [];
    const halves: Halves[] = [];
    const integrals: SectionIntegrals[] = [];
    for (let p = 0; p < this.panels; p++) {
      const a = this.ends[p] as number;
      const half = ((this.ends[p + 1] as number) - a) / 2;
      for (let i = 0; i < points; i++) {
        const phi = a + half * (1 + (x[i] as number));
        const section = sectionAt(edges, phi);
        const at = p * points + i;
        this.phi[at] = phi;
        this.x[at] = -section.s;
        this.dPhi[at] = half * (w[i] as number);
        this.ds[at] = this.slope(phi) * half * (w[i] as number);
        sections.push(section);
        halves.push(halvesOf(section));
        integrals.push(sectionIntegrals(section));
      }
      this.fit(p, halves.slice(-points));
    }
    this.sections = sections;
    this.halves = halves;
    this.integrals = integrals;
  }

  private fit(panel: number, lines: readonly Halves[]): void {
    const { points, toCoefficients } = this.rule;
    CURVES.forEach((curve, c) => {
      const at = (panel * CURVES.length + c) * MOST_POINTS;
      let constant = true;
      const first = curve(lines[0] as Halves);
      for (let i = 0; i < points; i++) {
        const value = curve(lines[i] as Halves);
        constant &&= value === first;
        for (let k = 0; k < points; k++)
          this.fits[at + k] =
            (this.fits[at + k] as number) + (toCoefficients[k * points + i] as number) * value;
      }
      // constant exactly: exponents 1 and 2 keep their closed forms
      if (constant) this.fits.fill(0, at, at + MOST_POINTS).fill(first, at, at + 1);
    });
  }

  /** The section at φ, which lies in the panel, into `out`. */
  at(panel: number, phi: number, out: Halves): void {
    const a = this.ends[panel] as number;
    const b = this.ends[panel + 1] as number;
    const t = (2 * phi - a - b) / (b - a);
    const k = panel * CURVES.length * MOST_POINTS;
    out.halfBreadth = Math.max(this.poly(k, t), 0);
    out.widest = this.poly(k + 6, t);
    out.up = Math.max(this.poly(k + 12, t), 0);
    out.down = Math.max(this.poly(k + 18, t), 0);
    out.nUp = this.poly(k + 24, t);
    out.nDown = this.poly(k + 30, t);
    out.cUp = this.poly(k + 36, t);
    out.mUp = this.poly(k + 42, t);
    out.cDown = this.poly(k + 48, t);
    out.mDown = this.poly(k + 54, t);
  }

  private poly(k: number, t: number): number {
    const f = this.fits;
    return (
      (f[k] as number) +
      t *
        ((f[k + 1] as number) +
          t *
            ((f[k + 2] as number) +
              t * ((f[k + 3] as number) + t * ((f[k + 4] as number) + t * (f[k + 5] as number)))))
    );
  }

  /** The panel that holds φ. */
  panelOf(phi: number): number {
    let p = 0;
    while (p < this.panels - 1 && phi > (this.ends[p + 1] as number)) p++;
    return p;
  }

  /** x = −s at φ, m. */
  xAt(phi: number): number {
    return -stationOfPhi(phi, this.length);
  }

  /** ds/dφ, m. */
  slope(phi: number): number {
    return (this.length / 2) * sin(phi);
  }
}

function halvesOf(s: Section): Halves {
  const up = quarter(s.exponentAbove);
  const down = quarter(s.exponentBelow);
  return {
    halfBreadth: s.halfBreadth,
    widest: s.widest,
    up: s.top - s.widest,
    down: s.widest - s.bottom,
    nUp: s.exponentAbove,
    nDown: s.exponentBelow,
    cUp: up.c,
    mUp: up.m,
    cDown: down.c,
    mDown: down.m,
  };
}

/** Panel ends in φ: the breaks, and at most `PANEL` rad between two. */
function panelEnds(breaks: readonly number[]): Float64Array {
  const ends = [0];
  for (let i = 0; i + 1 < breaks.length; i++) {
    const a = breaks[i] as number;
    const b = breaks[i + 1] as number;
    const steps = Math.ceil((b - a) / PANEL);
    for (let k = 1; k <= steps; k++) ends.push(k === steps ? b : a + ((b - a) * k) / steps);
  }
  return Float64Array.from(ends);
}
