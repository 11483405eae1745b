import type { Bait, Stuff } from "../bait";
import { makeShape } from "../shape";
import type { Edges } from "../shape";

/** Rows of all but the body in one draw, by their place: masses (kg), volumes (m³), and how far each has been moved (m). */
export interface DrawnRows {
  readonly mass: Float64Array;
  readonly displaced: Float64Array;
  readonly removed: Float64Array;
  readonly own: Float64Array;
  readonly dx: Float64Array;
  readonly dz: Float64Array;
}

/** The body in one draw: scales of its length, height and breadth, and the density of its material (kg/m³). */
export interface DrawnBody {
  length: number;
  height: number;
  breadth: number;
  density: number;
}

/** A new input of this name; the answer gives its error in the draw being worked out, in standard deviations. */
export type NewInput = (label: string) => () => number;

const KITCHEN_SCALE = 1e-5; // kg, last digit
export const UNIFORM = 1 / Math.sqrt(12); // standard deviation of a uniform error of width 1

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
 * The uncertain inputs of a bait (docs/model.md §3, Uncertainty), each an independent standard normal, and what each does to
 * the rows: functions that write one draw.
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
export function inputModels(
  bait: Bait,
  rows: DrawnRows,
  body: DrawnBody,
  input: NewInput,
  bodyWeighed: boolean,
): (() => void)[] {
  const { spec, drawn } = bait;
  const { uncertainty } = spec;
  const { mass, displaced, removed, own, dx, dz } = rows;
  const fitted = bait.items.slice(1);
  const models: (() => void)[] = [];
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
    models.push(() => {
      for (const k of i) {
        dx[k] = mm * s();
        dz[k] = mm * h();
      }
    });
  };
  const rowsOf = (group: string, index: number): number[] =>
    fitted.flatMap((r, i) => (r.group === group && r.index === index ? [i] : []));

  // Body.
  if (!bodyWeighed) {
    const e = input("body: density");
    // A body of no named class is taken for wood, the widest.
    const sigma = spec.body.kind === "other" ? uncertainty.wood : spread(spec.body);
    models.push(() => {
      body.density = bait.bodyDensity * (1 + sigma * e());
    });
  }
  const [eL, eH, eB] = [input("body: overall length"), input("body: height"), input("body: breadth")];
  models.push(() => {
    body.length = 1 + (mm / drawn.length) * eL();
    body.height = 1 + (mm / drawn.maxHeight) * eH();
    body.breadth = 1 + (mm / (2 * drawn.maxHalfBreadth)) * eB();
  });

  const skin = spec.coats.length > 0 ? skinPowers(bait) : ([1, 0.5, 0.5] as const);
  fitted.forEach((row, i) => {
    const { item, index } = row;
    switch (row.part === "item" ? row.group : row.part) {
      case "chambers": {
        const c = spec.chambers[index];
        if (!c) return;
        const [l, t, w] = [input(`${item}: length`), input(`${item}: tall`), input(`${item}: wide`)];
        models.push(() => {
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
        models.push(() => {
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
        models.push(() => {
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
        models.push(() => {
          mass[i] = row.mass * (1 + sigma * e());
        });
        return;
      }
      case "bib": {
        const b = spec.bib;
        if (!b) return;
        const [e, l, w] = [input("bib: density"), input("bib: length"), input("bib: width")];
        const sigma = spread(b.stuff);
        models.push(() => {
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
        models.push(() => {
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
        models.push(() => {
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
        models.push(() => {
          const rho = c.stuff.density * (1 + sigma * eDensity());
          if (c.thickness !== null) {
            const area = body.length ** skin[0] * body.height ** skin[1] * body.breadth ** skin[2];
            const v = row.displaced * area * (1 + uncertainty.coatThickness * eSize());
            displaced[i] = own[i] = v;
            mass[i] = v * rho;
          } else {
            mass[i] = (c.mass ?? 0) + weighed * eSize();
            displaced[i] = own[i] = (mass[i] ?? 0) / rho;
          }
          // The skin's centroid goes with the body's scales.
          dx[i] = row.massCentre.x * (body.length - 1);
          dz[i] = row.massCentre.z * (body.height - 1);
        });
        return;
      }
      case "corrections": // `Uncertain` draws these: what a tub showed replaces what was computed
        return;
      default:
        throw new Error(`no uncertainty is known for the item "${item}" of the group ${row.group}`);
    }
  });

  return models;
}
