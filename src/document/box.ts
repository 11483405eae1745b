import { cbrt, cube, square } from "../model/base";
import type { SwapPart } from "../model/bench";
import type { Stuff } from "../model/bait";
import { material, nearestNames } from "../model/materials";
import type { PlanKind } from "../model/plan";
import { BOX_FORMAT, BOX_VERSION, boxSchema } from "./box-schema";
import type { Box, BoxThing } from "./box-schema";
import { placeOf } from "./formats";
import { problemsOf } from "./issues";
import { readJson } from "./json";
import { describe, nearestPlace, problem } from "./problem";
import type { Place, Problem } from "./problem";
import { print, withoutEmptyLists } from "./serialize";
import { grams, mm, stuff as stuffFrom } from "./si";

export type ParsedBox =
  { readonly ok: true; readonly box: Box } | { readonly ok: false; readonly problems: readonly Problem[] };

/** An empty box. */
export const emptyBox = (name = "My box"): Box => ({
  format: BOX_FORMAT,
  version: BOX_VERSION,
  name,
  drills_mm: [],
  things: [],
});

/** Reads the text of a box file: JSON, format and version, schema, rules between fields. */
export function parseBox(text: string): ParsedBox {
  const read = readJson(text);
  return read.ok ? readBox(read.value, read.place) : read;
}

/** The same for a value that is no text. */
export function readBox(value: unknown, place: (path: string) => Place | null = () => null): ParsedBox {
  const refuse = (one: Problem): ParsedBox => ({
    ok: false,
    problems: [problem(one.path, one.found, one.allowed, one.remedy, nearestPlace(one.path, place))],
  });
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return refuse(
      problem(
        "",
        describe(value),
        "a JSON object",
        `A box is a group of keys that begins with "format": "${BOX_FORMAT}".`,
      ),
    );
  const { format, version } = value as Record<string, unknown>;
  if (format !== BOX_FORMAT)
    return refuse(
      problem(
        "format",
        describe(format),
        `"${BOX_FORMAT}"`,
        placeOf(format) ?? "This is not a Trimwright box; open another file.",
      ),
    );
  if (version !== BOX_VERSION) {
    const newer = typeof version === "number" && version > BOX_VERSION;
    const remedy = newer
      ? "The file was saved by a newer release: update the program, or save it there for this version."
      : `Set "version": ${BOX_VERSION} if the file follows that version.`;
    return refuse(problem("version", describe(version), String(BOX_VERSION), remedy));
  }
  const result = boxSchema.safeParse(value);
  if (!result.success) {
    const near = (path: string) => nearestPlace(path, place);
    return { ok: false, problems: problemsOf(boxSchema, value, result.error.issues, near) };
  }
  const box: Box = result.data;
  const problems = boxRules(box);
  return problems.length === 0
    ? { ok: true, box }
    : {
        ok: false,
        problems: problems.map((one) =>
          problem(one.path, one.found, one.allowed, one.remedy, nearestPlace(one.path, place)),
        ),
      };
}

/** The text of a box file; reading it back gives an equal box. */
export const serializeBox = (box: Box): string =>
  `${print(withoutEmptyLists(boxSchema.parse(box)), 0, true)}\n`;

/** Usual materials where the box gives none (docs/model.md §3: hooks carbon steel, rings stainless). */
const USUAL: Partial<Record<BoxThing["kind"], string>> = {
  hook: "carbon steel",
  ring: "stainless steel",
  clip: "stainless steel",
};

/** Density and material of a thing, as a file with it on the bait has them; null where the box gives neither. */
export function stuffOf(thing: BoxThing): Stuff | null {
  const named = thing.material ?? USUAL[thing.kind];
  const known = named !== undefined && material(named) !== null;
  if (!known && thing.density_g_ml === undefined) return null;
  const made = { ...thing, ...(named === undefined ? {} : { material: named }) };
  return stuffFrom(made, thing.kind === "coat" ? "plastic" : "metal", thing.name);
}

/** Volume of one piece by its measures, m³; null where they do not say. */
function drawnVolume(thing: BoxThing): number | null {
  const cylinder = (d: number, l: number): number => (Math.PI / 4) * square(mm(d)) * mm(l);
  switch (thing.kind) {
    case "shot":
      return thing.diameter_mm === undefined ? null : (Math.PI / 6) * cube(mm(thing.diameter_mm));
    case "slug":
      return thing.length_mm === undefined ? null : cylinder(thing.diameter_mm, thing.length_mm);
    case "wire":
      return cylinder(thing.diameter_mm, thing.cut_mm);
    default:
      return null;
  }
}

/** Tenths of a milligram: finer than any scale here, and no tails of digits in a plan and in the file. */
const tidyMass = (kg: number): number => Math.round(kg * 1e7) / 1e7;

/** Mass of one piece: weighed together over their count, else the catalogue's, else by measures and density. kg. */
export function pieceMass(thing: BoxThing): { readonly mass: number; readonly weighed: boolean } | null {
  if (thing.weighed) return { mass: grams(thing.weighed.together_g) / thing.weighed.count, weighed: true };
  if (thing.mass_g !== undefined) return { mass: grams(thing.mass_g), weighed: false };
  const volume = drawnVolume(thing);
  const stuff = stuffOf(thing);
  return volume !== null && stuff ? { mass: tidyMass(volume * stuff.density), weighed: false } : null;
}

function boxRules(box: Box): Problem[] {
  const names = new Map<string, number>();
  return box.things.flatMap((thing, i): Problem[] => {
    const path = `things[${i}]`;
    const out: Problem[] = [];
    const twin = names.get(thing.name);
    if (twin !== undefined)
      out.push(
        problem(
          `${path}.name`,
          describe(thing.name),
          "a name of its own",
          `things[${twin}] has it already: change one.`,
        ),
      );
    names.set(thing.name, i);
    if (
      thing.material !== undefined &&
      material(thing.material) === null &&
      thing.density_g_ml === undefined
    ) {
      const near = nearestNames(thing.material);
      const hint = near.length > 0 ? `Did you mean ${near.map((n) => `"${n}"`).join(" or ")}? ` : "";
      out.push(
        problem(
          `${path}.material`,
          describe(thing.material),
          "a name from the table of materials",
          `${hint}A material of your own needs its density beside it.`,
        ),
      );
    } else if (stuffOf(thing) === null)
      out.push(
        problem(
          path,
          "neither a material nor a density",
          "one of the two",
          'Add "material" (a name from the table) or "density_g_ml": its volume matters.',
        ),
      );
    else if (thing.kind !== "coat" && pieceMass(thing) === null)
      out.push(
        problem(
          path,
          "no mass",
          "weighed, mass_g, or measures that give it",
          'Weigh some together ("weighed"), or add "mass_g".',
        ),
      );
    return out;
  });
}

/** Lead, by the material's name. */
const isLead = (stuff: Stuff): boolean => /^lead\b/i.test(stuff.name);

/** Breadth across its hole and length along it, m. */
function sizeOf(thing: BoxThing, volume: number): { readonly across: number; readonly along: number } {
  // A lump that the box does not measure: a cylinder as long as wide (common practice, no source).
  const lump = cbrt((4 * volume) / Math.PI);
  const rod = (across: number) => ({ across, along: volume / ((Math.PI / 4) * square(across)) });
  switch (thing.kind) {
    case "shot": {
      const d = thing.diameter_mm === undefined ? cbrt((6 * volume) / Math.PI) : mm(thing.diameter_mm);
      return { across: d, along: d };
    }
    case "slug": {
      const across = mm(thing.diameter_mm);
      return thing.length_mm === undefined ? rod(across) : { across, along: mm(thing.length_mm) };
    }
    case "wire":
      return { across: mm(thing.diameter_mm), along: mm(thing.cut_mm) };
    case "sheet":
      return thing.across_mm === undefined ? { across: lump, along: lump } : rod(mm(thing.across_mm));
    default:
      return { across: lump, along: lump };
  }
}

/** The same of one piece, from the mass that the box knows; null where it knows none. */
export function pieceSize(thing: BoxThing): { readonly across: number; readonly along: number } | null {
  const piece = pieceMass(thing);
  const stuff = stuffOf(thing);
  return piece && stuff && sizeOf(thing, piece.mass / stuff.density);
}

/** Weights for a ballast plan, with the place of each in the box's list. Things without pieces are left out. */
export function planKinds(box: Box): readonly (PlanKind & { readonly thing: number })[] {
  return box.things.flatMap((thing, index) => {
    if (!["shot", "slug", "wire", "sheet", "strip"].includes(thing.kind) || thing.count === 0) return [];
    const stuff = stuffOf(thing);
    const piece = pieceMass(thing);
    if (!stuff || !piece || (box.leadAllowed === false && isLead(stuff))) return [];
    const { across, along } = sizeOf(thing, piece.mass / stuff.density);
    const usual = thing.kind === "sheet" || thing.kind === "strip" ? "outside" : "inside";
    const where = ("where" in thing ? thing.where : undefined) ?? usual;
    return [
      {
        thing: index,
        name: thing.name,
        stuff,
        mass: piece.mass,
        weighed: piece.weighed,
        count: thing.count,
        lead: isLead(stuff),
        across,
        along,
        inside: where !== "outside",
        outside: where !== "inside",
      },
    ];
  });
}

/** Hooks, rings, clips and strips for swaps. */
export function swapParts(box: Box): readonly SwapPart[] {
  return box.things.flatMap((thing) => {
    if (thing.kind !== "hook" && thing.kind !== "ring" && thing.kind !== "clip" && thing.kind !== "strip")
      return [];
    const stuff = stuffOf(thing);
    const piece = pieceMass(thing);
    if (!stuff || !piece || thing.count === 0 || (box.leadAllowed === false && isLead(stuff))) return [];
    return [
      {
        name: thing.name,
        use: thing.kind,
        mass: piece.mass,
        density: stuff.density,
        count: thing.count,
        weighed: piece.weighed,
        lead: isLead(stuff),
      },
    ];
  });
}
