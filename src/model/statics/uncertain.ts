import { solveLinear } from "../base";
import { benchBodyMass, benchBodyVolume, MID, prepareBench } from "../bait";
import type { Bait, BallSide, PreparedReading, Sizes } from "../bait";
import { inputModels, UNIFORM } from "./inputs";
import type { DrawnBody, DrawnRows } from "./inputs";
import { BOXED, hasBalls, sideAt, wrap } from "./rest";

/** What one draw comes to. */
export interface Draw {
  /** kg */
  netBuoyancy: number;
  /** Rest trim, rad, and the distance BG, m. */
  pitch: number;
  BG: number;
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
  /** Places of the readings without the body; what they are worth is worked out once, by `#learn`. */
  readonly #partial: readonly number[];
  #gain: readonly (readonly number[])[] = [];
  #seen: readonly (readonly number[])[] = [];
  readonly #rows: DrawnRows;
  readonly #body: DrawnBody;
  readonly #sizes: Sizes;
  /** The draw being worked out, after what the bench says of it. */
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

    this.#partial = this.#bench.flatMap((r, i) => (r.hasBody ? [] : [i]));
    this.#bench.forEach((r, i) => {
      this.#readings.push(this.labels.push(`${r.reading.kind} reading ${i + 1}`) - 1);
    });
    this.#x = new Float64Array(this.labels.length);
    this.#learn();
  }

  /** Size of the vector of standard normals. */
  get size(): number {
    return this.labels.length;
  }

  /**
   * What readings without the body (hooks alone on the scale …) say about the inputs: linear Gaussian conditioning. With
   * prior x ~ N(0, 1) and a reading H·x + ε, ε ~ N(0, R): x' = x − Hᵀ(HHᵀ + R)⁻¹(H·x + ε) has the conditional spread about
   * the values of the file (which a reading does not move: its residual is shown).
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
    const R = this.#partial.map((p) => ((this.#bench[p]?.reading.resolution ?? 0) * UNIFORM) ** 2);
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

  /** Works out one draw of standard normals; 0 everywhere is the bait of the file. */
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
    const { mass, displaced, removed, dx, dz } = this.#rows;
    const shown = (i: number): number => {
      const r = this.#bench[i]?.reading;
      return r ? r.reading + r.resolution * UNIFORM * (x[this.#readings[i] ?? -1] ?? 0) : 0;
    };
    const V =
      benchBodyVolume(this.#bench, this.#sizes, shown) ??
      bait.shape.volume * body.length * body.height * body.breadth;
    const cx = bait.drawn.centroid.x * body.length;
    const cz = bait.drawn.centroid.z * body.height;
    let R = 0;
    let Rx = 0;
    let Rz = 0;
    let m = 0;
    let mx = 0;
    let mz = 0;
    let d = V;
    let ddx = V * cx;
    let ddz = V * cz;
    for (let i = 0; i < mass.length; i++) {
      const row = bait.items[i + 1];
      if (!row) continue;
      const sx = dx[i] as number;
      const sz = dz[i] as number;
      const r = removed[i] as number;
      R += r;
      Rx += r * (row.removedCentre.x + sx);
      Rz += r * (row.removedCentre.z + sz);
      const mi = mass[i] as number;
      m += mi;
      mx += mi * (row.massCentre.x + sx);
      mz += mi * (row.massCentre.z + sz);
      const di = displaced[i] as number;
      d += di;
      ddx += di * (row.displacedCentre.x + sx);
      ddz += di * (row.displacedCentre.z + sz);
    }
    const left = V - R;
    const bodyMass = benchBodyMass(this.#bench, this.#sizes, V, shown) ?? body.density * left;
    m += bodyMass;
    mx += (bodyMass * (V * cx - Rx)) / left;
    mz += (bodyMass * (V * cz - Rz)) / left;
    out.netBuoyancy = this.density * d - m;
    this.#trim(ddx / d - mx / m, ddz / d - mz / m, m, out);
    return out;
  }

  /** Rest trim from B − G with the balls at mid-length on the floor, by the rule of `restTrim`. */
  #trim(x: number, z: number, mass: number, out: Draw): void {
    out.pitch = Math.atan2(x, z);
    out.BG = Math.hypot(x, z);
    if (!this.#balls) return;
    let mid = out.pitch;
    let best = Infinity;
    const roofMid = this.#ballSides[this.#ballSides.length - 1];
    if (Math.cos(mid) < 0 && roofMid) mid = Math.atan2(x - roofMid.x / mass, z - roofMid.z / mass);
    for (const b of this.#ballSides) {
      if (b.side.end === "mid") continue;
      const bx = x - b.x / mass;
      const bz = z - b.z / mass;
      const pitch = Math.atan2(bx, bz);
      const own = sideAt(pitch);
      if (own.end !== b.side.end || own.face !== b.side.face) continue;
      const far = Math.abs(wrap(pitch - mid));
      if (far >= best) continue;
      best = far;
      out.pitch = pitch;
      out.BG = Math.hypot(bx, bz);
    }
  }
}
