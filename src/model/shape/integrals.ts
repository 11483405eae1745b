import { newHalves, type Halves } from "./section";
import type { SectionTable } from "./table";

/** Volume (m³) and its first moments ∫x dV, ∫z dV (m⁴). */
export interface VolumeSum {
  volume: number;
  momentX: number;
  momentZ: number;
}

/** The integrals of whole sections from the nose to each panel end of the table. */
export interface Prefix {
  readonly volume: Float64Array;
  readonly momentX: Float64Array;
  readonly momentZ: Float64Array;
}

export function makePrefix(table: SectionTable): Prefix {
  const prefix: Prefix = {
    volume: new Float64Array(table.panels + 1),
    momentX: new Float64Array(table.panels + 1),
    momentZ: new Float64Array(table.panels + 1),
  };
  const sum: VolumeSum = { volume: 0, momentX: 0, momentZ: 0 };
  const { points } = table.rule;
  for (let p = 0; p < table.panels; p++) {
    for (let i = p * points; i < (p + 1) * points; i++)
      addSlice(table.halves[i] as Halves, table.x[i] as number, table.ds[i] as number, sum);
    prefix.volume[p + 1] = sum.volume;
    prefix.momentX[p + 1] = sum.momentX;
    prefix.momentZ[p + 1] = sum.momentZ;
  }
  return prefix;
}

/** Adds the whole sections between φ = a and φ = b: stored sums for whole panels, quadrature for the pieces at both ends. */
export function addWhole(table: SectionTable, prefix: Prefix, a: number, b: number, sum: VolumeSum): void {
  const { ends } = table;
  const pa = table.panelOf(a);
  const pb = table.panelOf(b);
  const first = a === ends[pa] ? pa : pa + 1; // the first and last whole panels' ends
  const last = b === ends[pb + 1] ? pb + 1 : pb;
  if (first > last) {
    addPiece(table, pa, a, b, sum);
    return;
  }
  if (first > pa) addPiece(table, pa, a, ends[first] as number, sum);
  sum.volume += (prefix.volume[last] as number) - (prefix.volume[first] as number);
  sum.momentX += (prefix.momentX[last] as number) - (prefix.momentX[first] as number);
  sum.momentZ += (prefix.momentZ[last] as number) - (prefix.momentZ[first] as number);
  if (last === pb) addPiece(table, pb, ends[last] as number, b, sum);
}

const here = newHalves();

function addPiece(table: SectionTable, panel: number, a: number, b: number, sum: VolumeSum): void {
  const { points, x, w } = table.rule;
  const mid = (a + b) / 2;
  const half = (b - a) / 2;
  for (let i = 0; i < points; i++) {
    const phi = mid + half * (x[i] as number);
    table.at(panel, phi, here);
    addSlice(here, table.xAt(phi), table.slope(phi) * half * (w[i] as number), sum);
  }
}

function addSlice(h: Halves, x: number, ds: number, sum: VolumeSum): void {
  const dV = 2 * h.halfBreadth * (h.up * h.cUp + h.down * h.cDown) * ds;
  sum.volume += dV;
  sum.momentX += dV * x;
  sum.momentZ += h.widest * dV + 2 * h.halfBreadth * (h.up * h.up * h.mUp - h.down * h.down * h.mDown) * ds;
}
