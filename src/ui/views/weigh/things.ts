import { pieceMass } from "../../../document";
import type { BoxThing } from "../../../document";

/** A measure that a kind of thing has, mm. */
export interface Measure {
  readonly key: "diameter" | "length" | "cut" | "across" | "thickness";
  readonly needed: boolean;
}

/** The kinds of things in a box: the material that is usual, and what is measured on them. */
export const KINDS: Readonly<
  Record<
    BoxThing["kind"],
    {
      readonly usual: string;
      readonly weight: boolean;
      readonly measures: readonly Measure[];
    }
  >
> = {
  shot: {
    usual: "tungsten",
    weight: true,
    measures: [{ key: "diameter", needed: false }],
  },
  slug: {
    usual: "brass",
    weight: true,
    measures: [
      { key: "diameter", needed: true },
      { key: "length", needed: false },
    ],
  },
  wire: {
    usual: "brass",
    weight: true,
    measures: [
      { key: "diameter", needed: true },
      { key: "cut", needed: true },
    ],
  },
  sheet: {
    usual: "tin",
    weight: true,
    measures: [{ key: "across", needed: false }],
  },
  strip: { usual: "tungsten", weight: true, measures: [] },
  hook: { usual: "carbon steel", weight: false, measures: [] },
  ring: { usual: "stainless steel", weight: false, measures: [] },
  clip: { usual: "stainless steel", weight: false, measures: [] },
  coat: {
    usual: "epoxy",
    weight: false,
    measures: [{ key: "thickness", needed: false }],
  },
};

/** A thing as it is typed; numbers that are not known yet are null. */
export interface Draft {
  readonly kind: BoxThing["kind"];
  readonly name: string;
  readonly size: string;
  readonly count: number;
  readonly weighedCount: number | null;
  readonly together: number | null;
  readonly resolution: number;
  readonly mass: number | null;
  /** A name of the table; "" for a density of one's own. */
  readonly material: string;
  readonly density: number | null;
  readonly where: "inside" | "outside" | "both" | "";
  readonly measures: Readonly<Partial<Record<Measure["key"], number>>>;
}

export const emptyDraft = (kind: BoxThing["kind"]): Draft => ({
  kind,
  name: "",
  size: "",
  count: 10,
  weighedCount: 10,
  together: null,
  resolution: 0.01,
  mass: null,
  material: KINDS[kind].usual,
  density: null,
  where: "",
  measures: {},
});

export function draftOf(thing: BoxThing): Draft {
  const measures: Partial<Record<Measure["key"], number>> = {};
  const take = (key: Measure["key"], value: number | undefined): void => {
    if (value !== undefined) measures[key] = value;
  };
  if ("diameter_mm" in thing) take("diameter", thing.diameter_mm);
  if ("length_mm" in thing) take("length", thing.length_mm);
  if ("cut_mm" in thing) take("cut", thing.cut_mm);
  if ("across_mm" in thing) take("across", thing.across_mm);
  if ("thickness_mm" in thing) take("thickness", thing.thickness_mm);
  return {
    kind: thing.kind,
    name: thing.name,
    size: ("size" in thing ? thing.size : undefined) ?? "",
    count: thing.count,
    weighedCount: thing.weighed?.count ?? null,
    together: thing.weighed?.together_g ?? null,
    resolution: thing.weighed?.resolution_g ?? 0.01,
    mass: thing.mass_g ?? null,
    material: thing.material ?? (thing.density_g_ml === undefined ? KINDS[thing.kind].usual : ""),
    density: thing.density_g_ml ?? null,
    where: ("where" in thing ? thing.where : undefined) ?? "",
    measures,
  };
}

/** What a draft lacks to be a thing; the catalogue has the sentence under this key. */
export type Lack = "name" | "taken" | "count" | "slug" | "wire" | "stuff" | "mass";

/**
 * The thing that a draft describes, or what is missing, in the form's own words: the box's rules look at it again, and speak
 * of a file. `others`: names of the other things in the box.
 */
export function thingOf(
  draft: Draft,
  others: readonly string[],
): { readonly ok: true; readonly thing: BoxThing } | { readonly ok: false; readonly lacks: Lack } {
  const { kind, name, size, count, weighedCount, together, resolution, mass, material, density, where } =
    draft;
  const no = (lacks: Lack) => ({ ok: false, lacks }) as const;
  const { diameter, length, cut, across, thickness } = draft.measures;
  if (name.trim() === "") return no("name");
  if (others.includes(name.trim())) return no("taken");
  if ((together === null) !== (weighedCount === null) && together !== null) return no("count");
  const common = {
    name: name.trim(),
    count,
    ...(together === null || weighedCount === null
      ? {}
      : { weighed: { count: weighedCount, together_g: together, resolution_g: resolution } }),
    ...(mass === null ? {} : { mass_g: mass }),
    ...(material === "" ? {} : { material }),
    ...(density === null ? {} : { density_g_ml: density }),
  };
  const seat = where === "" ? {} : { where };
  const sized = size.trim() === "" ? {} : { size: size.trim() };
  const yes = (thing: BoxThing) => {
    // Of hooks, rings and clips the usual metal is meant.
    const usual = kind === "hook" || kind === "ring" || kind === "clip";
    if (!usual && material === "" && density === null) return no("stuff");
    return kind !== "coat" && pieceMass(thing) === null ? no("mass") : ({ ok: true, thing } as const);
  };
  switch (kind) {
    case "hook":
    case "ring":
      return yes({ kind, ...common, ...sized });
    case "clip":
      return yes({ kind, ...common });
    case "strip":
      return yes({ kind, ...common, ...seat });
    case "shot":
      return yes({ kind, ...common, ...seat, ...(diameter === undefined ? {} : { diameter_mm: diameter }) });
    case "slug":
      if (diameter === undefined) return no("slug");
      return yes({
        kind,
        ...common,
        ...seat,
        diameter_mm: diameter,
        ...(length === undefined ? {} : { length_mm: length }),
      });
    case "wire":
      if (diameter === undefined || cut === undefined) return no("wire");
      return yes({ kind, ...common, ...seat, diameter_mm: diameter, cut_mm: cut });
    case "sheet":
      return yes({ kind, ...common, ...seat, ...(across === undefined ? {} : { across_mm: across }) });
    case "coat":
      return yes({ kind, ...common, ...(thickness === undefined ? {} : { thickness_mm: thickness }) });
  }
}
