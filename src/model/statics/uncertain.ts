import { solveLinear } from "../base";
import { benchBodyMass, benchBodyVolume, MID, prepareBench } from "../bait";
import type { Bait, BallSide, PreparedReading, Sizes, Stuff } from "../bait";
import { makeShape } from "../shape";
import type { Edges } from "../shape";
import { BOXED, hasBalls, sideAt, wrap } from "./rest";

/** What one draw comes to. */
export interface Draw {
  /** kg */
  netBuoyancy: number;
  /** Rest trim, rad, and the distance BG, m. */
  pitch: number;
  BG: number;
}

const KITCHEN_SCALE = 1e-5; // kg, last digit
const UNIFORM = 1 / Math.sqrt(12); // standard deviation of a uniform error of width 1

/** The body with its length, height and breadth scaled. */
const scaled = (edges: Edges, l: number, h: number, b: number): Edges => ({
  length: edges.length * l,
  breaks: edges.breaks,
  top: (phi) => h * edges.top(phi),
  bottom: (phi) => h * edges.bottom(phi),
  halfBreadth: (phi) => b * edges.halfBreadth(phi),
  widest: (phi) => h * edges.widest(phi),
  exponentAbove: (phi) => edges.exponentAbove(phi),
  exponentBelow: (phi) => edges.exponentBelow(phi),
});

/** Powers with which the skin's area follows the body's length, height and breadth; they add up to 2. */
function skinPowers(bait: Bait): readonly [number, number, number] {
  const { edges, skinArea } = bait.drawn;
  const step = 1.02;
  const power = (l: number, h: number, b: number): number =>
    Math.log(makeShape(scaled(edges, l, h, b)).skinArea / skinArea) / Math.log(step);
  const l = power(step, 1, 1);
  const h = power(1, step, 1);
  return [l, h, 2 - l - h];
}

/**
 * The account as a function of its uncertain inputs (docs/model.md §3, Uncertainty): geometry is integrated once and then
 * scaled analytically, and the bench readings are reconciled anew for every draw, so that a body that was weighed and
 * displaced has a narrow band. Every input is an independent standard normal.
 *
 * Chosen where the page is silent:
 *  - a density is drawn item by item: two items of one material do not share their error;
 *  - drawn lengths: overall length, height and breadth of the body scale it as a whole; a chamber's three sides, the bib's
 *    length and width, and the station and height of ballast, chambers, hangers, fittings and the bib's root err each by
 *    themselves. A given hole counts as a cylinder as deep as wide. Diameters of wire and balls and the bib's thickness
 *    are catalogue values without an error here;
 *  - a mass in the file was read off a scale: resolution/√12, the resolution that of the finest bench weighing, else 0.01 g
 *    (common practice, no source). A hook or ring has the wide uncertainty of an unweighed one unless it says that it was
 *    weighed; a bench reading narrows it, alone on the scale or together with others;
 *  - a material that is neither wood, metal nor plastic (filler, paint, resin) errs as plastic does.
 */
export class Uncertain {
  /** Words for each input, in the order of the vector that `draw` takes. */
  readonly labels: string[] = [];
  readonly #models: (() => void)[] = [];
  readonly #bench: readonly PreparedReading[];
  /** Places in the vector of the readings' own errors. */
  readonly #readings: number[] = [];
  /** Rows of all but the body. Masses, volumes, and how far each has been moved. */
  readonly #n: number;
  readonly #mass: Float64Array;
  readonly #displaced: Float64Array;
  readonly #removed: Float64Array;
  readonly #own: Float64Array;
  readonly #dx: Float64Array;
  readonly #dz: Float64Array;
  readonly #sizes: Sizes;
  /** The draw being worked out, after what the bench says of it. */
  #x: Float64Array = new Float64Array(0);
  #gain: readonly (readonly number[])[] = [];
  #seen: readonly (readonly number[])[] = [];
  /** Places of the readings without the body. */
  readonly #partial: readonly number[];
  #scaleL = 1;
  #scaleH = 1;
  #scaleB = 1;
  #bodyDensity: number;
  readonly #balls: boolean;
  /** First moments (kg·m) by which the balls on a side differ from mid-length on the floor. */
  readonly #ballSides: readonly { readonly side: BallSide; readonly x: number; readonly z: number }[];

  constructor(
    readonly bait: Bait,
    readonly density: number,
  ) {
    const { spec, drawn } = bait;
    const { uncertainty } = spec;
    const fitted = bait.items.slice(1);
    const n = fitted.length;
    this.#n = n;
    this.#mass = new Float64Array(n);
    this.#displaced = new Float64Array(n);
    this.#removed = new Float64Array(n);
    this.#own = new Float64Array(n);
    this.#dx = new Float64Array(n);
    this.#dz = new Float64Array(n);
    const [mass, displaced, removed, own] = [this.#mass, this.#displaced, this.#removed, this.#own];
    const [dx, dz] = [this.#dx, this.#dz];
    this.#sizes = {
      mass: (i) => mass[i] ?? 0,
      displaced: (i) => displaced[i] ?? 0,
      ownVolume: (i) => own[i] ?? 0,
    };
    this.#bodyDensity = bait.bodyDensity;
    this.#bench = prepareBench(spec, fitted);
    this.#balls = hasBalls(bait);
    const mid = bait.itemsWith(MID);
    this.#ballSides = [...BOXED, { end: "mid", face: "roof" } as const].map((side) => {
      const rows = bait.itemsWith(side);
      const moment = (axis: "x" | "z"): number =>
        rows.reduce((s, r, i) => s + r.mass * (r.massCentre[axis] - (mid[i]?.massCentre[axis] ?? 0)), 0);
      return { side, x: moment("x"), z: moment("z") };
    });

    /** A new input: answers its error in standard deviations of this draw. */
    const input = (label: string): (() => number) => {
      const place = this.labels.push(label) - 1;
      return () => this.#x[place] ?? 0;
    };
    const spread = (s: Stuff): number =>
      s.kind === "wood" ? uncertainty.wood : s.kind === "metal" ? uncertainty.metal : uncertainty.plastic;
    const scaleDigit = spec.bench.reduce(
      (least, r) => (r.kind === "weighing" ? Math.min(least, r.resolution) : least),
      Infinity,
    );
    const weighed = (Number.isFinite(scaleDigit) ? scaleDigit : KITCHEN_SCALE) * UNIFORM;
    const mm = uncertainty.drawnLength;
    const place = (i: readonly number[], label: string): void => {
      const s = input(`${label}: station`);
      const h = input(`${label}: height`);
      this.#models.push(() => {
        for (const k of i) {
          dx[k] = mm * s();
          dz[k] = mm * h();
        }
      });
    };
    const rowsOf = (group: string, index: number): number[] =>
      fitted.flatMap((r, i) => (r.group === group && r.index === index ? [i] : []));

    // Body.
    if (!this.#bench.some((r) => r.reading.kind === "weighing" && r.hasBody)) {
      const e = input("body: density");
      // A body of no named class is taken for wood, the widest.
      const sigma = spec.body.kind === "other" ? uncertainty.wood : spread(spec.body);
      this.#models.push(() => {
        this.#bodyDensity = bait.bodyDensity * (1 + sigma * e());
      });
    }
    const [eL, eH, eB] = [input("body: overall length"), input("body: height"), input("body: breadth")];
    this.#models.push(() => {
      this.#scaleL = 1 + (mm / drawn.length) * eL();
      this.#scaleH = 1 + (mm / drawn.maxHeight) * eH();
      this.#scaleB = 1 + (mm / (2 * drawn.maxHalfBreadth)) * eB();
    });

    const skin = spec.coats.length > 0 ? skinPowers(bait) : ([1, 0.5, 0.5] as const);
    fitted.forEach((row, i) => {
      const { item, index } = row;
      switch (row.part === "item" ? row.group : row.part) {
        case "chambers": {
          const c = spec.chambers[index];
          if (!c) return;
          const [l, t, w] = [input(`${item}: length`), input(`${item}: tall`), input(`${item}: wide`)];
          this.#models.push(() => {
            removed[i] =
              row.removed *
              (1 + (mm / (c.to - c.from)) * l()) *
              (1 + (mm / c.tall) * t()) *
              (1 + (mm / c.wide) * w());
          });
          place([i, ...rowsOf("balls", index)], item);
          return;
        }
        case "balls": {
          const s = spec.chambers[index]?.balls?.stuff;
          if (!s) return;
          const e = input(`${item}: density`);
          const sigma = spread(s);
          this.#models.push(() => {
            mass[i] = row.mass * (1 + sigma * e());
          });
          return;
        }
        case "ballast": {
          const b = spec.ballast[index];
          if (!b) return;
          const [eMass, eDensity] = [input(`${item}: mass`), input(`${item}: density`)];
          const sigma = spread(b.stuff);
          const inside = b.where === "inside";
          const hole = inside ? b.hole : null;
          const eHole = hole ? input(`${item}: hole`) : null;
          // A cylinder as deep as wide, V = π d³/4; its width counts twice, its depth once: σ_V/V = √5 σ/d.
          const holeSigma = hole ? (Math.sqrt(5) * mm) / Math.cbrt((4 * hole) / Math.PI) : 0;
          const eFiller = hole && b.filler > 0 ? input(`${item}: filler`) : null;
          this.#models.push(() => {
            const m = b.mass + weighed * eMass();
            const v = m / (b.stuff.density * (1 + sigma * eDensity()));
            const room = hole === null ? (inside ? v : 0) : hole * (1 + holeSigma * (eHole?.() ?? 0));
            const filler = b.filler * (1 + uncertainty.plastic * (eFiller?.() ?? 0));
            mass[i] = m + Math.max(0, room - v) * filler;
            displaced[i] = Math.max(0, v - room);
            removed[i] = room;
            own[i] = v;
          });
          place([i], item);
          return;
        }
        case "wires": {
          const w = spec.wires[index];
          if (!w) return;
          const e = input(`${item}: density`);
          const sigma = spread(w.stuff);
          this.#models.push(() => {
            mass[i] = row.mass * (1 + sigma * e());
          });
          return;
        }
        case "bib": {
          const b = spec.bib;
          if (!b) return;
          const [e, l, w] = [input("bib: density"), input("bib: length"), input("bib: width")];
          const sigma = spread(b.stuff);
          this.#models.push(() => {
            const grown = (1 + (mm / b.length) * l()) * (1 + (mm / b.width) * w());
            displaced[i] = row.displaced * grown;
            own[i] = row.removed + row.displaced * grown;
            mass[i] = (own[i] ?? 0) * b.stuff.density * (1 + sigma * e());
          });
          place([i], item);
          return;
        }
        case "ring":
        case "hook": {
          const h = spec.hangers[index];
          const it = row.part === "hook" ? h?.hook : h?.ring;
          if (!it) return;
          const e = input(`${item}: mass`);
          const sigma = it.weighed === true ? weighed : uncertainty.hook * it.mass;
          this.#models.push(() => {
            mass[i] = it.mass + sigma * e();
            displaced[i] = own[i] = (mass[i] ?? 0) / it.density;
          });
          if (rowsOf("hangers", index)[0] === i) place(rowsOf("hangers", index), `${h?.name ?? ""} hanger`);
          return;
        }
        case "fittings": {
          const f = spec.fittings[index];
          if (!f) return;
          const [eMass, eDensity] = [input(`${item}: mass`), input(`${item}: density`)];
          const sigma = spread(f.stuff);
          this.#models.push(() => {
            mass[i] = f.mass + weighed * eMass();
            own[i] = (mass[i] ?? 0) / (f.stuff.density * (1 + sigma * eDensity()));
            (f.where === "outside" ? displaced : removed)[i] = own[i] ?? 0;
          });
          place([i], item);
          return;
        }
        case "coats": {
          const c = spec.coats[index];
          if (!c) return;
          const [eSize, eDensity] = [
            input(`${item}: ${c.thickness === null ? "mass" : "thickness"}`),
            input(`${item}: density`),
          ];
          const sigma = spread(c.stuff);
          this.#models.push(() => {
            const rho = c.stuff.density * (1 + sigma * eDensity());
            if (c.thickness !== null) {
              const area = this.#scaleL ** skin[0] * this.#scaleH ** skin[1] * this.#scaleB ** skin[2];
              const v = row.displaced * area * (1 + uncertainty.coatThickness * eSize());
              displaced[i] = own[i] = v;
              mass[i] = v * rho;
            } else {
              mass[i] = (c.mass ?? 0) + weighed * eSize();
              displaced[i] = own[i] = (mass[i] ?? 0) / rho;
            }
            // The skin's centroid goes with the body's scales.
            dx[i] = row.massCentre.x * (this.#scaleL - 1);
            dz[i] = row.massCentre.z * (this.#scaleH - 1);
          });
          return;
        }
        default:
          throw new Error(`no uncertainty is known for the item "${item}" of the group ${row.group}`);
      }
    });

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
        (s, k) => s + (r.reading.kind === "weighing" ? (this.#mass[k] ?? 0) : r.tap * (this.#own[k] ?? 0)),
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
    for (let i = 0; i < this.#n; i++) {
      const row = items[i + 1];
      if (!row) continue;
      this.#mass[i] = row.mass;
      this.#displaced[i] = row.displaced;
      this.#removed[i] = row.removed;
      this.#own[i] = row.ownVolume;
      this.#dx[i] = 0;
      this.#dz[i] = 0;
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
    const shown = (i: number): number => {
      const r = this.#bench[i]?.reading;
      return r ? r.reading + r.resolution * UNIFORM * (x[this.#readings[i] ?? -1] ?? 0) : 0;
    };
    const V =
      benchBodyVolume(this.#bench, this.#sizes, shown) ??
      bait.shape.volume * this.#scaleL * this.#scaleH * this.#scaleB;
    const cx = bait.drawn.centroid.x * this.#scaleL;
    const cz = bait.drawn.centroid.z * this.#scaleH;
    let R = 0;
    let Rx = 0;
    let Rz = 0;
    let m = 0;
    let mx = 0;
    let mz = 0;
    let d = V;
    let ddx = V * cx;
    let ddz = V * cz;
    for (let i = 0; i < this.#n; i++) {
      const row = bait.items[i + 1];
      if (!row) continue;
      const sx = this.#dx[i] as number;
      const sz = this.#dz[i] as number;
      const r = this.#removed[i] as number;
      R += r;
      Rx += r * (row.removedCentre.x + sx);
      Rz += r * (row.removedCentre.z + sz);
      const mi = this.#mass[i] as number;
      m += mi;
      mx += mi * (row.massCentre.x + sx);
      mz += mi * (row.massCentre.z + sz);
      const di = this.#displaced[i] as number;
      d += di;
      ddx += di * (row.displacedCentre.x + sx);
      ddz += di * (row.displacedCentre.z + sz);
    }
    const left = V - R;
    const bodyMass = benchBodyMass(this.#bench, this.#sizes, V, shown) ?? this.#bodyDensity * left;
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
