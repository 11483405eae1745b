import { cbrt, pow } from "../base";
import type { Vec } from "../base";
import { above0, atLeast0, point } from "./checks";
import { disc } from "./figures";
import { named } from "./rows";
import { drawn } from "./spread";
import type { Hanging, Part } from "./types";
import { type ChangeWords, LITTLE_MASS, moved, type SmallChange } from "./small-changes";

/** An eye that carries a split ring, a hook, both or nothing. */
export interface HangerSpec {
  readonly name: string;
  readonly at: Vec;
  /** `weighed`: its mass was read off a scale; absent or false: a catalogue value, with its wide uncertainty. */
  readonly ring: { readonly mass: number; readonly density: number; readonly weighed?: boolean } | null;
  readonly hook: {
    readonly mass: number;
    readonly density: number;
    readonly size: string | null;
    /** From its eye to the bottom of its bend, and between shank and point, m, where the file says them. */
    readonly length?: number;
    readonly gape?: number;
    readonly weighed?: boolean;
  } | null;
}

/** Radius of an eye as it is drawn, m: it has no size of its own in the file. */
const EYE = 0.0011;

/**
 * How far a hook of mass m (kg, its ring with it) hangs below its eye, m: 16 mm at 0.37 g, as m^⅓ (from memory; ±20 %). The
 * forces, the swinging hooks of the swim and the drawing all use this length.
 */
export const hookLength = (mass: number): number => 0.016 * pow(mass / 0.37e-3, 1 / 3);

/**
 * Treble hooks by their size: from the eye to the bottom of the bend, and from a point to the shank, mm. From memory, no
 * source: patterns of one size differ by a quarter. Measure yours.
 */
const TREBLES: Readonly<Record<string, readonly [length: number, gape: number]>> = {
  "14": [12, 4],
  "12": [14, 4.7],
  "10": [16.5, 5.5],
  "8": [19, 6.5],
  "6": [22, 7.5],
  "4": [26, 9],
  "2": [31, 10.5],
  "1": [34, 11.5],
  "1/0": [38, 13],
  "2/0": [43, 14.5],
  "3/0": [49, 16.5],
  "4/0": [55, 18.5],
};

/** Of a gape that nobody has measured: share of the length (from memory: that of most of the trebles above). */
const GAPE = 0.34;
const MILLIMETRE = 1e-3;

/** Length and gape of a hook of a size such as “6” or “#1/0”, m; null: the table does not have it. */
export function hookOfSize(size: string): { readonly length: number; readonly gape: number } | null {
  const found = TREBLES[size.replace(/^\s*(?:#|no\.?|size)?\s*/i, "").trim()];
  return found === undefined ? null : { length: found[0] * MILLIMETRE, gape: found[1] * MILLIMETRE };
}

/** A split ring of 0.10 g is about 6 mm across (from memory), others by the cube root of their mass, m. */
const ringAcross = (mass: number): number => 6e-3 * cbrt(mass / 0.1e-3);

/** How far a ring lets its hook hang from the eye, m: a ring of 0.10 g is about 6 mm across (from memory), three quarters of it. */
const ringHangs = (mass: number): number => 0.0045 * pow(mass / 0.1e-3, 1 / 3);

/** How far a hook reaches as it swings, and how wide it stands out. */
export interface HookMeasure {
  /** From the hanger's eye to the bottom of the bend, ring included, m. */
  readonly reach: number;
  readonly gape: number;
  /** What says the length: the file, the table by size, or the mass. */
  readonly by: "length" | "size" | "mass";
}

/** Null: there is no hook. */
export function hookMeasure({ hook, ring }: HangerSpec): HookMeasure | null {
  if (hook === null || hook.mass === 0) return null;
  const hangs = ring === null || ring.mass === 0 ? 0 : ringHangs(ring.mass);
  const sized = hook.size === null ? null : hookOfSize(hook.size);
  if (hook.length !== undefined)
    return { reach: hook.length + hangs, gape: hook.gape ?? GAPE * hook.length, by: "length" };
  if (sized !== null) return { reach: sized.length + hangs, gape: hook.gape ?? sized.gape, by: "size" };
  const reach = hookLength(hook.mass + (ring?.mass ?? 0));
  return { reach, gape: hook.gape ?? GAPE * (reach - hangs), by: "mass" };
}

/** How much of the length a ring takes, in its radii: it hangs in the eye, and the hook in it. */
export const RING_TAKES = 1.5;

/** A hook is as long as the file says; else it hangs as far below its eye as the model has it, its ring included. */
function hangingFrom({ name, at, ring, hook }: HangerSpec): Hanging {
  const ringMass = ring?.mass ?? 0;
  const hookMass = hook?.mass ?? 0;
  const ringRadius = ringMass > 0 ? ringAcross(ringMass) / 2 : null;
  return {
    name,
    at,
    ringRadius,
    hookLength:
      hookMass > 0
        ? (hook?.length ?? hookLength(hookMass + ringMass) - RING_TAKES * (ringRadius ?? 0))
        : null,
    gape: hook?.gape ?? null,
  };
}

/** What a hanger may carry, in the order of the account. */
const CARRIED = ["ring", "hook"] as const;

/** A hook size up or down where the box has no such hook, as a share of the mass (docs/model.md §3). */
const HOOK_STEP = 0.25;

export const hanger: Part<HangerSpec, "hangers", "ring" | "hook", true> = {
  many: true,
  groups: ["hangers"],
  pieces: CARRIED,
  word: "hanger",
  hung: true,
  name: (h) => h.name,

  check(h, path) {
    point(`${path}.at_mm`, h.at);
    for (const piece of CARRIED) {
      const it = h[piece];
      if (!it) continue;
      atLeast0(`${path}.${piece}.mass_g`, it.mass, "kg");
      above0(`${path}.${piece}.density_g_ml`, it.density, "kg/m³");
    }
    if (h.hook?.length !== undefined) above0(`${path}.hook.length_mm`, h.hook.length, "m");
    if (h.hook?.gape !== undefined) above0(`${path}.hook.gape_mm`, h.hook.gape, "m");
  },

  rows: (h) =>
    CARRIED.flatMap((piece) => {
      const it = h[piece];
      if (!it) return [];
      const volume = it.mass / it.density;
      return [
        {
          item: named(h.name, piece),
          group: "hangers" as const,
          part: piece,
          mass: it.mass,
          massCentre: h.at,
          displaced: volume,
          immersing: { as: "always" as const, at: h.at, volume },
          ownVolume: volume,
          apart: "hooks" as const,
        },
      ];
    }),

  shown: (h) => `hook:${h.name}`,

  // The ring and the hook swing: a drawing hangs them from the eye.
  sketch(h) {
    const eye = { role: "eye", layer: "front" } as const;
    return {
      figures: [disc(eye, h.at, EYE)],
      above: () => [disc(eye, { x: h.at.x, z: 0 }, EYE)],
      across: () => [],
      hanging: hangingFrom(h),
      dimensions: [],
    };
  },

  keepOuts: (h) => [{ is: "eye", at: h.at }],

  only: (h, has) => ({ ...h, ring: has("ring") ? h.ring : null, hook: has("hook") ? h.hook : null }),

  changes(h, next) {
    const { hook, ring } = h;
    if (!(hook ?? ring)) return [];
    const change = (
      piece: "hook" | "ring",
      words: ChangeWords,
      spec: HangerSpec,
    ): SmallChange<HangerSpec, "hook" | "ring"> => ({ piece, change: words, at: h.at, entries: [spec] });
    if (!hook)
      return [
        change("ring", "0.1 g more", { ...h, ring: ring && { ...ring, mass: ring.mass + LITTLE_MASS } }),
        ...moved<HangerSpec, "hook" | "ring">(h, null),
      ];
    const near = next();
    const withMass = (mass: number): HangerSpec => ({ ...h, hook: { ...hook, mass } });
    return [
      change("hook", "0.1 g more", withMass(hook.mass + LITTLE_MASS)),
      change("hook", "one hook size up", withMass(near?.up ?? hook.mass * (1 + HOOK_STEP))),
      change("hook", "one hook size down", withMass(near?.down ?? hook.mass * (1 - HOOK_STEP))),
      ...moved<HangerSpec, "hook" | "ring">(h, null),
    ];
  },

  uncertain(h, draw) {
    const { row, at, rows, uncertainty, weighed } = draw;
    const it = row.part === "hook" ? h.hook : h.ring;
    if (!it) return;
    const e = draw.input(`${row.item}: mass`);
    const sigma = it.weighed === true ? weighed : uncertainty.hook * it.mass;
    draw.model(() => {
      rows.mass[at] = drawn(it.mass, sigma, e());
      rows.displaced[at] = rows.own[at] = (rows.mass[at] ?? 0) / it.density;
    });
    // Ring and hook move together with their eye.
    if (draw.siblings[0] === at) draw.place(draw.siblings, `${h.name} hanger`);
  },
};
