import { z } from "zod";
import { above, list, maybe, name, point, text } from "../fields";
import { stage } from "../schema-bench";
import { copy, heightAt, tenth } from "./drawn";
import { densityOr, grams, mm, place } from "../si";
import { density, mass, weighed } from "./common";
import { stretchPoint } from "./types";
import { USUAL } from "./usual";
import type { PartFile, Read, Turned } from "./types";

/** kg/m³: carbon steel hooks and stainless steel rings unless a density is given (docs/model.md §3). */
const HOOK_STEEL = 7820;
const RING_STEEL = 8000;

const ring = z
  .strictObject({ mass_g: mass("Ring mass", [0, 1, 0.01]), density_g_ml: density(), weighed: weighed() })
  .meta({ title: "Split ring" });
const hook = z
  .strictObject({
    mass_g: mass("Hook mass", [0, 5, 0.01], "Weigh it: hooks of one size number differ by a factor of two."),
    size: maybe(text("Hook size", 40)),
    length_mm: maybe(
      above(
        "Hook length",
        "mm",
        [0, 200],
        [8, 60, 0.5],
        "From its eye to the bottom of its bend; absent: usual for its size, else for its mass.",
      ),
    ),
    gape_mm: maybe(above("Gape", "mm", [0, 100], [3, 25, 0.5], "Between shank and point.")),
    density_g_ml: density(),
    weighed: weighed(),
  })
  .meta({ title: "Hook" });
const schema = z
  .strictObject({
    name: name("Name"),
    at_mm: point("Eye"),
    ring: maybe(ring),
    hook: maybe(hook),
    stage: stage(),
  })
  .meta({ title: "Hanger" });

const field = list("Hangers", schema, 12);

export const hangers: PartFile<"hangers", Read<typeof schema>, typeof field> = {
  field,
  compile: ({ name, at_mm, ring, hook }) => ({
    name,
    at: place(at_mm),
    ring: ring
      ? {
          mass: grams(ring.mass_g),
          density: densityOr(ring.density_g_ml, RING_STEEL),
          weighed: ring.weighed ?? false,
        }
      : null,
    hook: hook
      ? {
          mass: grams(hook.mass_g),
          density: densityOr(hook.density_g_ml, HOOK_STEEL),
          size: hook.size ?? null,
          ...(hook.length_mm === undefined ? {} : { length: mm(hook.length_mm) }),
          ...(hook.gape_mm === undefined ? {} : { gape: mm(hook.gape_mm) }),
          weighed: hook.weighed ?? false,
        }
      : null,
  }),
  usualStage: () => "dressed",
  stretch: (one, by) => ({ ...one, at_mm: stretchPoint(by, one.at_mm) }),
  section: { key: "hooks", title: "Hooks and rings" },
  turned: (one) => [
    ...(one.hook === undefined ? [] : [{ path: ["hook", "mass_g"], slider: "field" } satisfies Turned]),
    ...(one.ring === undefined ? [] : [{ path: ["ring", "mass_g"], slider: "field" } satisfies Turned]),
  ],
  gist: (one) => (one.hook?.mass_g ?? 0) + (one.ring?.mass_g ?? 0),
  board: {
    words: "Hook with ring",
    // It stays below the bottom edge.
    ways: ["along"],
    start(body, { along }) {
      const station = tenth(0.42 * body.length + along);
      return {
        name: "hook",
        at_mm: [station, tenth(heightAt(body, station, 0) - 1.5)],
        ring: { ...USUAL.ring },
        hook: { ...USUAL.hook, size: "6" },
      };
    },
    handles: (one) => [{ id: "place", at: one.at_mm, words: "the hanger's eye" }],
    drag: (one, _, to) => ({ ...one, at_mm: copy(to) }),
  },
  counts: "Hooks and rings hang in the water: they count by what they exceed the water they displace.",
};
