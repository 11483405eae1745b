import { distance, distanceToSegment } from "../../model/base";
import { hookLength } from "../../model/parts";
import { shapeOf } from "../../model/shape";
import type { Knot, Shape } from "../../model/shape";
import { bodyOfForm } from "../../model/shaping";
import { fromSI, toSI } from "../../units";
import { formOf } from "./answers";
import type { Answers } from "./answers";

/**
 * A plain lipped blank of the answers: its body, and on it what a maker usually puts there. Everything is placed by the body's
 * own edges, so it fits a body of any size. Where no source stands beside a number it is common practice, or invented.
 */

const tidy = (mm: number): number => Number(mm.toFixed(3));
const hundredth = (g: number): number => Math.max(0.01, Number(g.toFixed(2)));
const STEPS_PER_G = 1000;
/** Rounded down: a hook that just has room stays so. */
const thousandth = (g: number): number => Math.max(1, Math.floor(g * STEPS_PER_G)) / STEPS_PER_G;
const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** The length (mm) that the masses below were chosen at. */
const AT = 90;
/**
 * A hook at 90 mm, g, and by which power of the length it grows. From memory: trebles of about 0.2, 0.5 and 1.2 g go with baits
 * of 55, 90 and 140 mm.
 */
const HOOK = 0.5;
const POWER = 2;
/** A hook is no heavier than this for a millilitre of body, g: a slim or short body carries smaller ones. Invented. */
const CARRIED = 0.06;
/** A ring weighs this share of its hook; from memory. */
const RING = 0.16;
/** Both eyes at 90 mm, g; they are as large as the bait. */
const EYES = 0.1;
const ANGLE = 40;

/** Station of the belly eye as a share of the length, while nothing is in its way. */
export const BELLY = 0.4;

export interface Sized {
  readonly shape: Shape;
  /** Heights of back and belly at a station, half-breadth there; mm. */
  readonly back: (s: number) => number;
  readonly belly: (s: number) => number;
}

export interface Blank extends Sized {
  /** The bait of the file without hangers, wires and ballast. */
  readonly body: Record<string, unknown>;
  /** How far an eye stands out of the body, mm. */
  readonly eye: number;
  readonly wire: number;
  /** The bib's plate in the side view, mm. */
  readonly bib: { readonly root: readonly [number, number]; readonly end: readonly [number, number] };
}

export function blankOf(answers: Answers): Blank {
  const { length: L, breadth, height, form, wood } = answers;
  const spec = bodyOfForm({
    length: toSI(L, "mm"),
    height: toSI(height, "mm"),
    breadth: toSI(breadth, "mm"),
    ...formOf(form).form,
  });
  const shape = shapeOf(spec);
  const points = (knots: readonly Knot[]): [number, number][] =>
    knots.map(({ s, v }, i) => [i === knots.length - 1 ? L : tidy(fromSI(s, "mm")), tidy(fromSI(v, "mm"))]);
  const exponents = (knots: readonly Knot[]): [number, number][] =>
    knots.map(({ s, v }, i) => [i === knots.length - 1 ? L : fromSI(s, "mm"), v]);
  const back = (s: number): number => fromSI(shape.section(toSI(s, "mm")).top, "mm");
  const belly = (s: number): number => fromSI(shape.section(toSI(s, "mm")).bottom, "mm");
  const eye = between(1.5, 0.033 * L, 5);
  const wire = L < 50 ? 0.5 : L < 70 ? 0.7 : L > 120 ? 1.2 : 0.9;
  const root = 0.05 * L;
  const thickness = L < 60 ? 1 : L > 130 ? 2 : 1.5;
  // The tongue ends below the wire of the nose eye, which lies on the datum line.
  const room = -belly(root) - wire / 2 - thickness / 2 - 0.3;
  const plate = tidy(0.155 * L);
  const angle = toSI(ANGLE, "deg");
  const slot = Math.max(0, Math.min(0.04 * L, room / Math.sin(angle)));
  return {
    shape,
    back,
    belly,
    eye,
    wire,
    bib: {
      root: [root, belly(root)],
      end: [root - plate * Math.cos(angle), belly(root) - plate * Math.sin(angle)],
    },
    body: {
      length_mm: L,
      top: points(spec.top),
      bottom: points(spec.bottom),
      halfBreadth: points(spec.halfBreadth),
      roundover: { above: exponents(spec.exponentAbove), below: exponents(spec.exponentBelow) },
      body: { material: wood },
      bib: {
        root_mm: [tidy(root), tidy(belly(root))],
        angle_deg: ANGLE,
        length_mm: plate,
        width_mm: tidy(between(0.12 * L, breadth, 0.2 * L)),
        slot_mm: tidy(slot),
        thickness_mm: thickness,
        outline: "round",
        material: "polycarbonate",
      },
      tie_mm: [tidy(-eye), 0],
      fittings: [
        {
          name: "eyes",
          at_mm: [tidy(0.1 * L), tidy(0.4 * back(0.1 * L))],
          mass_g: hundredth(EYES * (L / AT) ** 3),
          density_g_ml: 1.2,
          where: "outside",
        },
      ],
      coats: [
        { name: "sealer and paint", thickness_mm: 0.1, density_g_ml: 1.3 },
        { name: "clear", thickness_mm: 0.15, material: "epoxy" },
      ],
    },
  };
}

/** A hook stays so far from what it could reach, mm. Invented. */
const CLEAR_OF = 0.5;
type Place = readonly [station: number, height: number];

/** Places of the eyes, the mass of a usual hook for this body, and how far a hook may reach, mm. */
function eyesOf({ shape, eye, belly, bib }: Blank, station: number) {
  const L = fromSI(shape.length, "mm");
  const below: Place = [tidy(station), tidy(belly(station) - 0.7 * eye)];
  const tail: Place = [tidy(L + eye), 0];
  const vec = ([s, z]: Place) => ({ x: 0 - s, z });
  const free = [below, tail].map((one) => distanceToSegment(vec(one), vec(bib.root), vec(bib.end)));
  const tie = distance(vec(below), { x: eye, z: 0 });
  const reach = Math.min(...free, tie, distance(vec(below), vec(tail)) / 2) - CLEAR_OF;
  const usual = Math.min(HOOK * (L / AT) ** POWER, CARRIED * fromSI(shape.volume, "mL"));
  return { L, below, tail, usual, reach };
}

/**
 * Share of the usual hook's length that has room on this bait, at most 1: as it swings, it shall reach neither the bib nor the
 * tie eye nor the other hook.
 */
export function hookRoom(blank: Blank, station: number): number {
  const { usual, reach } = eyesOf(blank, station);
  const long = fromSI(hookLength(toSI(usual * (1 + RING), "g")), "mm");
  return Math.min(1, Math.max(0, reach / long));
}

/** Wire eyes, and hangers with hooks that nobody has weighed; the belly eye stands at a station (mm). */
export function hungOn(blank: Blank, station: number): Record<string, unknown> {
  const { eye, wire, belly } = blank;
  const { L, below, tail, usual } = eyesOf(blank, station);
  // A hook is as heavy as the cube of its length.
  const room = hookRoom(blank, station);
  const hook = room < 1 ? thousandth(usual * room ** 3) : hundredth(usual);
  const one = (name: string, path: readonly Place[]) => ({
    name,
    path_mm: path,
    diameter_mm: wire,
    material: "stainless steel",
  });
  const hanger = (name: string, at: Place) => ({
    name,
    at_mm: at,
    ring: { mass_g: room < 1 ? thousandth(RING * hook) : hundredth(RING * hook) },
    hook: { mass_g: hook },
  });
  return {
    wires: [
      one("nose eye", [
        [tidy(-eye), 0],
        [tidy(0.13 * L), 0],
      ]),
      one("belly eye", [[below[0], tidy(0.25 * belly(station))], below]),
      one("tail eye", [[tidy(0.87 * L), 0], tail]),
    ],
    hangers: [hanger("belly", below), hanger("tail", tail)],
  };
}
