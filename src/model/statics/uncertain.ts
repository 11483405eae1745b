import { atan2, cos, hypot, solveLinear, square } from "../base";
import type { Random } from "../base";
import {
  BaitError,
  benchBodyMass,
  benchBodyVolume,
  correctionsBefore,
  MID,
  prepareBench,
  rowsNamed,
} from "../bait";
import type { Bait, BallSide, CorrectionSpec, Item, PreparedReading, Sizes } from "../bait";
import { inputModels, UNIFORM } from "./inputs";
import type { DrawnBody, DrawnRows, NewInput } from "../parts";
import { BOXED, hasBalls, sideAt, wrap } from "./rest";

/** The result of one draw. */
export interface Draw {
  /** kg */
  netBuoyancy: number;
  /** Rest trim, rad, and the distance BG, m. */
  pitch: number;
  BG: number;
  /** False: what is cut out leaves no body, or nothing has mass. There is no such bait, and the other numbers mean nothing. */
  possible: boolean;
}

export const noDraw = (): Draw => ({ netBuoyancy: 0, pitch: 0, BG: 0, possible: true });

/** As many draws in a row may describe no bait; after that the uncertainties are refused. */
const TRIES = 1000;

/** Mass, displaced volume and their first moments. */
interface Sums {
  mass: number;
  mx: number;
  mz: number;
  volume: number;
  vx: number;
  vz: number;
}

/** What a correction adds in one draw: kg, kg·m. */
type Moved = Pick<Sums, "mass" | "mx" | "mz">;

/** A correction by a tub reading, ready to be drawn. */
interface TubModel {
  readonly spec: CorrectionSpec;
  /** Places of the rows that were not on the bait. */
  readonly without: readonly number[];
  /** Places of the earlier corrections that the account of the tested bait did not have. */
  readonly notYet: readonly number[];
  /** The reading's own error, kg and m; null where it says nothing. */
  readonly error: {
    readonly mass: (() => number) | null;
    readonly x: (() => number) | null;
    readonly z: (() => number) | null;
  };
  /** What the account of the file gives for the same bait. */
  own: { readonly net: number; readonly x: number; readonly z: number } | null;
}

function tubsOf(bait: Bait, fitted: readonly Item[], input: NewInput): TubModel[] {
  const rows = fitted.filter((r) => r.group === "corrections");
  const specs = bait.spec.corrections ?? [];
  const missing = specs.map(({ without }, k) =>
    rowsNamed(bait.spec, fitted, without, `corrections[${k}].without`),
  );
  const before = correctionsBefore(missing, fitted);
  return specs.map((spec, k) => {
    const label = rows[k]?.item ?? spec.name;
    const error = (sigma: number | null, what: string): (() => number) | null => {
      if (sigma === null) return null;
      const e = input(`${label}: ${what}`);
      return () => sigma * e();
    };
    const { mass, x, z } = spec.deviation;
    return {
      spec,
      without: missing[k] ?? [],
      notYet: specs.flatMap((_, j) => (j < k && before[k]?.includes(j) !== true ? [j] : [])),
      error: { mass: error(mass, "net"), x: error(x, "G along"), z: error(z, "height of G") },
      own: null,
    };
  });
}

/**
 * The account as a function of its uncertain inputs (docs/model.md §3, Uncertainty): geometry is integrated once and then
 * scaled analytically, and the bench readings are reconciled anew for every draw, so that a body that was weighed and
 * displaced has a narrow band. Every input is an independent standard normal; `inputModels` says what each does.
 */
export class Uncertain {
  /** Words for each input, in the order of the vector that `draw` takes. */
  readonly labels: string[] = [];
  readonly #models: readonly (() => void)[];
  readonly #bench: readonly PreparedReading[];
  /** Places in the vector of the readings' own errors. */
  readonly #readings: number[] = [];
  /** Places of the readings without the body. `#learn` computes once what they tell. */
  readonly #partial: readonly number[];
  #gain: readonly (readonly number[])[] = [];
  #seen: readonly (readonly number[])[] = [];
  readonly #rows: DrawnRows;
  readonly #body: DrawnBody;
  readonly #sizes: Sizes;
  readonly #tubs: readonly TubModel[];
  /** The present draw, after the bench readings have changed it. */
  #x: Float64Array = new Float64Array(0);
  readonly #balls: boolean;
  /** First moments (kg·m) by which the balls on a side differ from mid-length on the floor. */
  readonly #ballSides: readonly { readonly side: BallSide; readonly x: number; readonly z: number }[];

  constructor(
    readonly bait: Bait,
    readonly density: number,
  ) {
    const { spec } = bait;
    const fitted = bait.items.slice(1);
    const column = (): Float64Array => new Float64Array(fitted.length);
    const rows: DrawnRows = {
      mass: column(),
      displaced: column(),
      removed: column(),
      own: column(),
      dx: column(),
      dz: column(),
    };
    this.#rows = rows;
    this.#body = { length: 1, height: 1, breadth: 1, density: bait.bodyDensity };
    this.#sizes = {
      mass: (i) => rows.mass[i] ?? 0,
      displaced: (i) => rows.displaced[i] ?? 0,
      removed: (i) => rows.removed[i] ?? 0,
      ownVolume: (i) => rows.own[i] ?? 0,
    };
    this.#bench = prepareBench(spec, fitted);
    this.#balls = hasBalls(bait);
    const mid = bait.itemsWith(MID);
    this.#ballSides = [...BOXED, { end: "mid", face: "roof" } as const].map((side) => {
      const moment = (axis: "x" | "z"): number =>
        bait
          .itemsWith(side)
          .reduce((s, r, i) => s + r.mass * (r.massCentre[axis] - (mid[i]?.massCentre[axis] ?? 0)), 0);
      return { side, x: moment("x"), z: moment("z") };
    });

    /** A new input: answers its error in standard deviations of this draw. */
    const input = (label: string): (() => number) => {
      const place = this.labels.push(label) - 1;
      return () => this.#x[place] ?? 0;
    };
    this.#models = inputModels(
      bait,
      this.#rows,
      this.#body,
      input,
      this.#bench.some((r) => r.reading.kind === "weighing" && r.hasBody),
    );

    this.#tubs = tubsOf(bait, fitted, input);

    this.#partial = this.#bench.flatMap((r, i) => (r.hasBody ? [] : [i]));
    this.#bench.forEach((r, i) => {
      this.#readings.push(this.labels.push(`${r.reading.kind} reading ${i + 1}`) - 1);
    });
    this.#x = new Float64Array(this.labels.length);
    this.#learn();
    // What the account gives for each tub's bait, with every input as in the file.
    for (const tub of this.#tubs) tub.own = null;
    this.draw(new Float64Array(this.size), noDraw());
  }

  /** Size of the vector of standard normals. */
  get size(): number {
    return this.labels.length;
  }

  /**
   * What readings without the body (for example hooks alone on the scale) tell about the inputs: linear Gaussian
   * conditioning. With the prior x ~ N(0, 1) and a reading H·x + ε, ε ~ N(0, R), x' = x − Hᵀ(HHᵀ + R)⁻¹(H·x + ε) has the
   * conditional spread about the values of the file. (A reading does not move these values: its residual is shown.)
   */
  #learn(): void {
    if (this.#partial.length === 0) return;
    const size = this.size;
    const x = new Float64Array(size);
    const shownBy = (r: PreparedReading): number => {
      this.#work(x);
      return r.others.reduce(
        (s, k) =>
          s + (r.reading.kind === "weighing" ? this.#sizes.mass(k) : r.tap * this.#sizes.ownVolume(k)),
        0,
      );
    };
    const H = this.#partial.map((p) => {
      const r = this.#bench[p];
      return Array.from({ length: size }, (_, k) => {
        if (!r || this.#readings.includes(k)) return 0;
        x[k] = 1;
        const up = shownBy(r);
        x[k] = -1;
        const down = shownBy(r);
        x[k] = 0;
        return (up - down) / 2;
      });
    });
    const R = this.#partial.map((p) => square((this.#bench[p]?.reading.resolution ?? 0) * UNIFORM));
    const S = H.map((a, i) =>
      H.map((b, j) => a.reduce((s, v, k) => s + v * (b[k] ?? 0), 0) + (i === j ? (R[i] ?? 0) : 0)),
    );
    // Gain Hᵀ S⁻¹, one column a reading.
    this.#gain = this.#partial.map((_, j) => {
      const unit = this.#partial.map((_r, i) => (i === j ? 1 : 0));
      const column = solveLinear(
        S.map((row) => [...row]),
        unit,
      );
      return Array.from({ length: size }, (_v, k) =>
        H.reduce((s, row, i) => s + (row[k] ?? 0) * (column[i] ?? 0), 0),
      );
    });
    this.#seen = H;
  }

  /** Sets masses, volumes and places for inputs as they are. */
  #work(x: Float64Array): void {
    this.#x = x;
    const { items } = this.bait;
    const { mass, displaced, removed, own, dx, dz } = this.#rows;
    for (let i = 0; i < mass.length; i++) {
      const row = items[i + 1];
      if (!row) continue;
      mass[i] = row.mass;
      displaced[i] = row.displaced;
      removed[i] = row.removed;
      own[i] = row.ownVolume;
      dx[i] = 0;
      dz[i] = 0;
    }
    for (const model of this.#models) model();
  }

  /**
   * Draws at random until a draw describes a bait. (With very large errors a draw may leave nothing of the body; such a
   * draw tells nothing.)
   *
   * @throws BaitError where hardly any draw leaves a body
   */
  next(chance: Random, normals: Float64Array, out: Draw): Draw {
    for (let i = 0; i < TRIES; i++) {
      for (let k = 0; k < normals.length; k++) normals[k] = chance.normal();
      if (this.draw(normals, out).possible) return out;
    }
    throw new BaitError(
      "uncertainty",
      "with errors so large hardly any draw leaves a body",
      "Give smaller uncertainties, or weigh and measure the bait",
    );
  }

  /** Computes one draw from standard normals; 0 everywhere is the bait of the file. */
  draw(normals: Float64Array, out: Draw): Draw {
    const x = Float64Array.from(normals);
    this.#partial.forEach((p, j) => {
      const row = this.#seen[j];
      const resolution = (this.#bench[p]?.reading.resolution ?? 0) * UNIFORM;
      let innovation = resolution * (normals[this.#readings[p] ?? -1] ?? 0);
      for (let k = 0; k < x.length; k++) innovation += (row?.[k] ?? 0) * (normals[k] ?? 0);
      for (let k = 0; k < x.length; k++) x[k] = (x[k] ?? 0) - (this.#gain[j]?.[k] ?? 0) * innovation;
    });
    this.#work(x);
    const { bait } = this;
    const body = this.#body;
    const { mass, removed, dx, dz } = this.#rows;
    const shown = (i: number): number => {
      const r = this.#bench[i]?.reading;
      return r ? r.reading + r.resolution * UNIFORM * (x[this.#readings[i] ?? -1] ?? 0) : 0;
    };
    const V =
      benchBodyVolume(this.#bench, this.#sizes, shown) ??
      bait.shape.volume * body.length * body.height * body.breadth;
    const cx = bait.drawn.centroid.x * body.length;
    const cz = bait.drawn.centroid.z * body.height;
    const sums: Sums = { mass: 0, mx: 0, mz: 0, volume: V, vx: V * cx, vz: V * cz };
    let R = 0;
    let Rx = 0;
    let Rz = 0;
    for (let i = 0; i < mass.length; i++) {
      const row = bait.items[i + 1];
      if (!row || row.group === "corrections") continue;
      const sx = dx[i] as number;
      const sz = dz[i] as number;
      const r = removed[i] as number;
      R += r;
      Rx += r * (row.removedCentre.x + sx);
      Rz += r * (row.removedCentre.z + sz);
      this.#add(sums, i, 1);
    }
    const left = V - R;
    if (!(V > 0 && left > 0)) {
      out.possible = false;
      return out;
    }
    const bodyMass = benchBodyMass(this.#bench, this.#sizes, V, left, shown) ?? body.density * left;
    sums.mass += bodyMass;
    sums.mx += (bodyMass * (V * cx - Rx)) / left;
    sums.mz += (bodyMass * (V * cz - Rz)) / left;
    const made: Moved[] = [];
    for (const tub of this.#tubs) made.push(this.#correct(sums, tub, made));
    const { mass: m, mx, mz, volume: d, vx: ddx, vz: ddz } = sums;
    out.possible = m > 0 && d > 0;
    if (!out.possible) return out;
    out.netBuoyancy = this.density * d - m;
    this.#trim(ddx / d - mx / m, ddz / d - mz / m, m, out);
    return out;
  }

  /** Adds a fitted row, as it is in this draw, to sums, or takes it off them. */
  #add(sums: Sums, i: number, sign: 1 | -1): void {
    const row = this.bait.items[i + 1];
    if (!row) return;
    const sx = this.#rows.dx[i] as number;
    const sz = this.#rows.dz[i] as number;
    const mi = sign * (this.#rows.mass[i] as number);
    sums.mass += mi;
    sums.mx += mi * (row.massCentre.x + sx);
    sums.mz += mi * (row.massCentre.z + sz);
    const di = sign * (this.#rows.displaced[i] as number);
    sums.volume += di;
    sums.vx += di * (row.displacedCentre.x + sx);
    sums.vz += di * (row.displacedCentre.z + sz);
  }

  /**
   * A correction in one draw. The tub showed the net buoyancy and the offset of G from B of what was on the bait then. So
   * the correction cancels whatever the inputs of this draw change in these, and only the reading's own error is left. Its
   * mass and its moment are those of the tested bait (`correctionRows`), and the bait keeps them through all later stages.
   */
  #correct(sums: Sums, tub: TubModel, earlier: readonly Moved[]): Moved {
    const seen = { ...sums };
    for (const i of tub.without) this.#add(seen, i, -1);
    for (const k of tub.notYet) {
      const off = earlier[k];
      if (!off) continue;
      seen.mass -= off.mass;
      seen.mx -= off.mx;
      seen.mz -= off.mz;
    }
    const net = this.density * seen.volume - seen.mass;
    const Gx = seen.mx / seen.mass;
    const Gz = seen.mz / seen.mass;
    const x = Gx - seen.vx / seen.volume;
    const z = Gz - seen.vz / seen.volume;
    tub.own ??= { net, x, z };
    const { spec, error } = tub;
    const mass = spec.mass + (error.mass ? net - tub.own.net + error.mass() : 0);
    const dx = spec.shift.x + (error.x ? tub.own.x - x + error.x() : 0);
    const dz = spec.shift.z + (error.z ? tub.own.z - z + error.z() : 0);
    const all = seen.mass + mass;
    const moved = { mass, mx: mass * Gx + all * dx, mz: mass * Gz + all * dz };
    sums.mass += moved.mass;
    sums.mx += moved.mx;
    sums.mz += moved.mz;
    return moved;
  }

  /** Rest trim from B − G with the balls at mid-length on the floor, by the rule of `restTrim`. */
  #trim(x: number, z: number, mass: number, out: Draw): void {
    out.pitch = atan2(x, z);
    out.BG = hypot(x, z);
    if (!this.#balls) return;
    let mid = out.pitch;
    let best = Infinity;
    const roofMid = this.#ballSides[this.#ballSides.length - 1];
    if (cos(mid) < 0 && roofMid) mid = atan2(x - roofMid.x / mass, z - roofMid.z / mass);
    for (const b of this.#ballSides) {
      if (b.side.end === "mid") continue;
      const bx = x - b.x / mass;
      const bz = z - b.z / mass;
      const pitch = atan2(bx, bz);
      const own = sideAt(pitch);
      if (own.end !== b.side.end || own.face !== b.side.face) continue;
      const far = Math.abs(wrap(pitch - mid));
      if (far >= best) continue;
      best = far;
      out.pitch = pitch;
      out.BG = hypot(bx, bz);
    }
  }
}
