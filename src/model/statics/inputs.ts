import { log, pow } from "../base";
import type { Bait, Stuff } from "../bait";
import { bodyUncertain, densitySpread, entryFinder } from "../parts";
import type { DrawnBody, DrawnRows, NewInput } from "../parts";
import { makeShape } from "../shape";
import type { Edges } from "../shape";

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
    log(makeShape(scaled(edges, l, h, b)).skinArea / skinArea) / log(step);
  const l = power(step, 1, 1);
  const h = power(1, step, 1);
  return [l, h, 2 - l - h];
}

/**
 * The uncertain inputs of a bait (docs/model.md §3, Uncertainty). Each is an independent standard normal, and each kind of part
 * says what its inputs do to its rows (`Part.uncertain`). The answer is the list of functions that write one draw.
 *
 * Chosen where the page is silent:
 *  - a density is drawn item by item: two items of one material do not share their error;
 *  - drawn lengths: overall length, height and breadth of the body scale it as a whole. A chamber's three sides, the bib's
 *    length and width, and the station and height of ballast, chambers, hangers, fittings and the bib's root err each by
 *    themselves. Diameters of wire and balls and the bib's thickness are catalogue values without an error here;
 *  - a mass in the file was read off a scale: resolution/√12, the resolution that of the finest bench weighing, else 0.01 g
 *    (common practice, no source). A hook or ring has the wide uncertainty of an unweighed one unless it says that it was
 *    weighed. A bench reading narrows it, alone on the scale or together with others;
 *  - a material that is neither wood, metal nor plastic (filler, paint, resin) errs as plastic does, a body of such a
 *    material as wood does; a material of the table whose published spread is wider errs by that (`densitySpread`).
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
  const fitted = bait.items.slice(1);
  const models: (() => void)[] = [];
  const model = (write: () => void): void => {
    models.push(write);
  };
  const spread = (stuff: Stuff): number => densitySpread(uncertainty, stuff, "plastic");
  const scaleDigit = spec.bench.reduce(
    (least, r) => (r.kind === "weighing" ? Math.min(least, r.resolution) : least),
    Infinity,
  );
  const weighed = (Number.isFinite(scaleDigit) ? scaleDigit : KITCHEN_SCALE) * UNIFORM;
  const mm = uncertainty.drawnLength;
  const place = (places: readonly number[], label: string): void => {
    const s = input(`${label}: station`);
    const h = input(`${label}: height`);
    model(() => {
      for (const k of places) {
        rows.dx[k] = mm * s();
        rows.dz[k] = mm * h();
      }
    });
  };
  let powers: readonly [number, number, number] | null = null;
  const skinArea = (): number => {
    powers ??= skinPowers(bait);
    return pow(body.length, powers[0]) * pow(body.height, powers[1]) * pow(body.breadth, powers[2]);
  };

  bodyUncertain(
    { stuff: spec.body, drawn, density: bait.bodyDensity, weighed: bodyWeighed },
    body,
    uncertainty,
    input,
    model,
  );
  const find = entryFinder(spec);
  const entries = fitted.map(find);
  fitted.forEach((row, at) => {
    const entry = entries[at];
    if (!entry) return; // a correction: `Uncertain` draws it, since what a tub showed replaces what was computed
    entry.part.uncertain(entry.spec, {
      row,
      at,
      siblings: fitted.flatMap((_, k) => (entries[k] === entry ? [k] : [])),
      rows,
      body,
      uncertainty,
      weighed,
      spread,
      input,
      model,
      place,
      skinArea,
    });
  });
  return models;
}
