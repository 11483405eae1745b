import { pieceMass, pieceSize, stuffOf } from "./box";
import type { Box, BoxThing } from "./box-schema";
import { benchWithout, withNewParts, withoutPart } from "./onto";
import { baitSpec, compile } from "./compile";
import { tryCompile } from "./parse";
import type { Scenario, ScenarioBait } from "./schema";
import { stuffKeys, toGrams, toGramsPerMillilitre } from "./si";

/** A thing of the own box comes onto the bait, is counted there, and comes off again: each gives a new document. */

/** [station, height], mm. */
type At = readonly [number, number];

/** Where a thing of the box goes on the bait. */
export type PutPlace =
  | { readonly on: "hanger"; readonly index: number }
  | { readonly on: "new hanger"; readonly at: At }
  | { readonly on: "body"; readonly at: At; readonly where: "inside" | "outside" }
  /** The next coat, or the tie eye of a clip: there is only one place. */
  | { readonly on: "bait" };

/** Film of one coat where the box does not say, mm; common practice, no source. */
const COAT = 0.1;
/** Wood between a new weight and the skin, and how far a new hanger's eye stands under the belly, mm; common practice, no source. */
const WALL = 1.5;
const EYE = 3;
/** Stations at which a new weight is tried, as shares of the length: near the middle first. */
const TRIED = [0.42, 0.38, 0.46, 0.34, 0.5, 0.3, 0.55, 0.6, 0.65, 0.25];
const SIZE_LETTERS = 40;

const tidy = (mm: number): number => Number(mm.toFixed(1));

const sizeOf = (thing: BoxThing): string => thing.name.slice(0, SIZE_LETTERS);

function freeName(bait: ScenarioBait, wanted: string): string {
  const { ballast, fittings, coats, hangers, wires, chambers } = bait;
  const taken = new Set(
    [ballast, fittings, coats, hangers, wires, chambers].flatMap((list) => list.map((one) => one.name)),
  );
  let name = wanted;
  for (let k = 2; taken.has(name); k++) name = `${wanted} (${k})`;
  return name;
}

/** Mass (g) and density (g/mL) of one piece, and whether a scale gave the mass. The box's own rules see that it has them. */
function pieceOf(thing: BoxThing) {
  const piece = pieceMass(thing);
  if (piece === null) throw new Error(`${thing.name} has no mass.`);
  return { mass_g: toGrams(piece.mass), weighed: piece.weighed };
}

function stuffIn(thing: BoxThing) {
  const stuff = stuffOf(thing);
  if (stuff === null) throw new Error(`${thing.name} has neither a material nor a density.`);
  return stuff;
}

function hangersWith(bait: ScenarioBait, thing: BoxThing, place: PutPlace): ScenarioBait {
  const { mass_g, weighed } = pieceOf(thing);
  const part = {
    mass_g,
    density_g_ml: toGramsPerMillilitre(stuffIn(thing).density),
    ...(weighed ? { weighed } : {}),
  };
  const held = thing.kind === "hook" ? { hook: { ...part, size: sizeOf(thing) } } : { ring: part };
  if (place.on === "hanger") {
    const hangers = bait.hangers.map((one, i) => {
      if (i !== place.index) return one;
      // What goes on now comes on when the bait is dressed.
      const { stage: _, ...rest } = one;
      return { ...rest, ...held };
    });
    return { ...bait, hangers };
  }
  if (place.on !== "new hanger") throw new Error(`A ${thing.kind} goes on a hanger.`);
  const [s, z] = place.at;
  const one = { name: freeName(bait, "hanger"), at_mm: [s, z] as [number, number], ...held };
  return { ...bait, hangers: [...bait.hangers, one] };
}

function baitWith(bait: ScenarioBait, thing: BoxThing, place: PutPlace): ScenarioBait {
  if (thing.kind === "hook" || thing.kind === "ring") return hangersWith(bait, thing, place);
  const stuff = stuffKeys(stuffIn(thing));
  const name = freeName(bait, thing.name);
  if (thing.kind === "coat") {
    const coat = { name, thickness_mm: thing.thickness_mm ?? COAT, ...stuff };
    return { ...bait, coats: [...bait.coats, coat] };
  }
  const { mass_g, weighed } = pieceOf(thing);
  // Clips and strips go onto the finished bait.
  const last = { stage: "dressed" as const };
  if (thing.kind === "clip") {
    const clip = { name, at_mm: bait.tie_mm, mass_g, ...stuff, where: "outside" as const, ...last };
    return { ...bait, fittings: [...bait.fittings, clip] };
  }
  if (place.on !== "body") throw new Error("A weight needs its station and height.");
  const [s, z] = place.at;
  const weight = {
    name,
    at_mm: [s, z] as [number, number],
    mass_g,
    ...stuff,
    where: place.where,
    ...(weighed ? {} : { weighed }),
    ...(thing.kind === "strip" ? last : {}),
  };
  return { ...bait, ballast: [...bait.ballast, weight] };
}

/** The document with one piece of a thing of the box on the bait. What hung at its place comes off. */
export function putOn(scenario: Scenario, thing: BoxThing, place: PutPlace): Scenario {
  let { bench } = scenario;
  if (place.on === "hanger" && (thing.kind === "hook" || thing.kind === "ring"))
    bench = benchWithout(
      scenario,
      baitSpec(scenario),
      (row) => row.group === "hangers" && row.index === place.index && row.part === thing.kind,
    );
  const next = { ...scenario, bench, bait: baitWith(scenario.bait, thing, place) };
  return withNewParts(next, { ...scenario, bench });
}

/** A part of the bait that pieces of the box make up. */
export interface Taken {
  readonly group: "ballast" | "fittings" | "hangers" | "coats";
  readonly index: number;
  readonly part: "item" | "hook" | "ring";
  readonly pieces: number;
}

/** "2 × shot (3)": two pieces of “shot”. */
function piecesNamed(name: string, thing: string): number {
  const plain = name.replace(/ \(\d+\)$/, "");
  if (name === thing || plain === thing) return 1;
  const many = /^(\d+) × (.*)$/.exec(plain);
  return many !== null && (many[2] === thing || name.endsWith(`× ${thing}`)) ? Number(many[1]) : 0;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/**
 * What of the box is on this bait: for each of its things the parts that it makes up. Weights, clips, strips and coats are known
 * by their names, a hook by its size too. A ring has no name: its mass and its density tell.
 */
export function onBait(things: readonly BoxThing[], bait: ScenarioBait): readonly (readonly Taken[])[] {
  const claimed = new Set<string>();
  return things.map((thing) => {
    const found: Taken[] = [];
    const claim = (one: Taken): void => {
      const key = `${one.group} ${one.index} ${one.part}`;
      if (one.pieces === 0 || claimed.has(key)) return;
      claimed.add(key);
      found.push(one);
    };
    if (thing.kind === "hook" || thing.kind === "ring") {
      const { kind } = thing;
      const piece = pieceMass(thing);
      const stuff = stuffOf(thing);
      bait.hangers.forEach((hanger, index) => {
        const held = hanger[kind];
        if (held === undefined || piece === null || stuff === null) return;
        const size = kind === "hook" ? hanger.hook?.size : undefined;
        const same = things.some((one) => one.kind === "hook" && sizeOf(one) === size)
          ? sizeOf(thing) === size
          : near(held.mass_g, toGrams(piece.mass)) &&
            near(held.density_g_ml ?? NaN, toGramsPerMillilitre(stuff.density));
        if (same) claim({ group: "hangers", index, part: kind, pieces: 1 });
      });
    }
    const lists = thing.kind === "coat" ? (["coats"] as const) : (["ballast", "fittings"] as const);
    for (const group of lists)
      bait[group].forEach((one, index) => {
        // A second ring is a fitting named by its hanger and itself.
        const second = thing.kind === "ring" && one.name.endsWith(` ${thing.name}`) ? 1 : 0;
        claim({ group, index, part: "item", pieces: Math.max(second, piecesNamed(one.name, thing.name)) });
      });
    return found;
  });
}

export const piecesOf = (taken: readonly Taken[]): number => taken.reduce((sum, one) => sum + one.pieces, 0);

/** The document without a part: off the bait, off the scale, and its hole closed. */
export function takeOff(scenario: Scenario, { group, index, part }: Omit<Taken, "pieces">): Scenario {
  const { bait } = scenario;
  const without = <T>(list: readonly T[]): T[] => list.filter((_, i) => i !== index);
  const next: ScenarioBait =
    group === "hangers" && part !== "item"
      ? {
          ...bait,
          hangers: bait.hangers.map((one, i) => {
            if (i !== index) return one;
            const { [part]: _, ...rest } = one;
            return rest;
          }),
        }
      : { ...bait, [group]: without<unknown>(bait[group]) };
  return withoutPart(
    { ...scenario, bait: next },
    scenario,
    (row) =>
      row.group === group &&
      row.index === index &&
      (group !== "hangers" || part === "item" || row.part === part),
  );
}

/** Where a thing of the box would go if the maker does not say: a place that the bait has room for. */
export function startPlace(scenario: Scenario, thing: BoxThing): PutPlace {
  const { length_mm: length } = scenario.bait;
  const bottom = bottomOf(scenario);
  if (thing.kind === "hook" || thing.kind === "ring") {
    const free = scenario.bait.hangers.findIndex((one) => one[thing.kind] === undefined);
    if (free >= 0) return { on: "hanger", index: free };
    if (scenario.bait.hangers.length > 0) return { on: "hanger", index: 0 };
    return newHanger(scenario);
  }
  if (thing.kind === "coat" || thing.kind === "clip") return { on: "bait" };
  const flat = thing.kind === "strip" || thing.kind === "sheet";
  const asked = "where" in thing ? thing.where : undefined;
  const where = asked === "outside" || (asked === undefined && flat) ? "outside" : "inside";
  const half = (pieceSize(thing)?.across ?? 0) * 500;
  const places = TRIED.map((share): PutPlace => {
    const s = tidy(share * length);
    const lowest = Math.max(...[s - half, s, s + half].map(bottom));
    // A weight of its own volume in a hole, or with its middle on the skin.
    return { on: "body", at: [s, tidy(where === "inside" ? lowest + WALL + half : bottom(s))], where };
  });
  const warned = new Set(tryWarnings(scenario));
  return (
    places.find((one) =>
      (tryWarnings(putOn(scenario, thing, one)) ?? [...warned, ""]).every((text) => warned.has(text)),
    ) ??
    places[0] ?? { on: "body", at: [tidy(0.42 * length), 0], where }
  );
}

/** What the model warns of; null: such a bait cannot be. */
function tryWarnings(scenario: Scenario): readonly string[] | null {
  const tried = tryCompile(scenario);
  return tried.ok ? tried.compiled.bait.warnings.map((one) => `${one.path} ${one.text}`) : null;
}

/** Height of the belly at a station, mm. */
function bottomOf(scenario: Scenario): (station: number) => number {
  const { drawn } = compile(scenario).bait;
  return (mm) => drawn.section(Math.min(Math.max(mm / 1e3, 0), drawn.length)).bottom * 1e3;
}

/** Where a thing goes that a maker adds by hand: a hook or ring that finds no free hanger gets one of its own. */
export function handPlace(scenario: Scenario, thing: BoxThing): PutPlace {
  const place = startPlace(scenario, thing);
  if (place.on !== "hanger") return place;
  const { hangers } = scenario.bait;
  if ((thing.kind === "hook" || thing.kind === "ring") && hangers[place.index]?.[thing.kind] === undefined)
    return place;
  return newHanger(scenario);
}

/** The box without what of it is on this bait already. */
export const boxLeft = (box: Box, bait: ScenarioBait): Box => {
  const used = onBait(box.things, bait).map(piecesOf);
  return {
    ...box,
    things: box.things.map((one, i) => ({ ...one, count: Math.max(0, one.count - (used[i] ?? 0)) })),
  };
};

/** A hanger whose eye is clear of the others, below the belly. */
function newHanger(scenario: Scenario): PutPlace {
  const { hangers, length_mm: length } = scenario.bait;
  const bottom = bottomOf(scenario);
  const far = (s: number): number => Math.min(Infinity, ...hangers.map((one) => Math.abs(one.at_mm[0] - s)));
  const [s] = TRIED.map((share) => tidy(share * length)).sort((a, b) => far(b) - far(a));
  return { on: "new hanger", at: [s ?? 0, tidy(bottom(s ?? 0) - EYE)] };
}
