import {
  segmentedLine,
  type LineSpec,
  type LineWater,
  type RodEnd,
  type SegmentOptions,
} from "../../../src/model/line";

export const NYLON: LineSpec = { material: "nylon", diameter: 0.25e-3, density: 1140, EA: 100 };
export const FRESH: LineWater = { density: 998.2, viscosity: 1.002e-3, gravity: 9.80665 };
/** As good as nothing: a line in it feels its own weight alone. */
export const AIR: LineWater = { density: 1e-9, viscosity: 1e-5, gravity: 9.80665 };

export interface Moment {
  readonly t: number;
  readonly x: number;
  readonly z: number;
  readonly vx: number;
  readonly vz: number;
}

/** A point mass on a segmented line, in the caller's leapfrog steps. */
export interface Trial {
  readonly spec: LineSpec;
  readonly water: LineWater;
  readonly options?: SegmentOptions;
  /** kg */
  readonly mass: number;
  readonly from: { readonly x: number; readonly z: number };
  /** Force on the mass without the line, N. */
  force(m: Moment): { x: number; z: number };
  rod(t: number): Omit<RodEnd, "lengthRate"> & { readonly lengthRate?: number };
  readonly duration: number;
  readonly rate?: number;
}

export interface Sample extends Moment {
  readonly tension: number;
  readonly pull: { readonly x: number; readonly z: number };
}

/** Runs it; every step is kept. */
export function run(trial: Trial, each?: (s: Sample, line: ReturnType<typeof segmentedLine>) => void) {
  const h = 1 / (trial.rate ?? 960);
  const line = segmentedLine(trial.spec, trial.water, trial.options);
  let { x, z } = trial.from;
  let vx = 0;
  let vz = 0;
  const out = { x: 0, z: 0, tension: 0, slack: true };
  const samples: Sample[] = [];
  const w = 1 / trial.mass;
  for (let i = 0; i < trial.duration / h; i++) {
    const t = i * h;
    const f = trial.force({ t, x, z, vx, vz });
    const [ax, az] = [f.x * w, f.z * w];
    line.pull(h, { x, z, vx, vz, ax, az, wxx: w, wxz: 0, wzz: w }, { lengthRate: 0, ...trial.rod(t) }, out);
    vx += h * (ax + w * out.x);
    vz += h * (az + w * out.z);
    const sample = { t, x, z, vx, vz, tension: out.tension, pull: { x: out.x, z: out.z } };
    samples.push(sample);
    each?.(sample, line);
    x += h * vx;
    z += h * vz;
  }
  return { samples, line };
}
