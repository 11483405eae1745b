import type { Bait, HangerSpec } from "../bait";
import { hookDragArea } from "../forces";
import type { HangingHook } from "./types";

/**
 * Sizes from masses, lengths with the cube root. From memory: a treble of 0.37 g is about 17 mm long, a split ring of
 * 0.10 g about 6 mm across. They set how fast a hook swings and how far it hangs, not how heavy it is.
 */
const TREBLE = { mass: 0.37e-3, length: 17e-3 };
const RING = { mass: 0.1e-3, across: 6e-3 };

/** A treble's centre of mass below its eye as a share of its length: the bends are heavier than the shank. From memory. */
const TREBLE_CENTRE = 0.6;

/** Cube root by Newton's rule, the same bits in every engine. */
function cubeRoot(x: number): number {
  if (x === 0) return 0;
  let y = x > 1 ? x : 1;
  for (;;) {
    const next = (2 * y + x / (y * y)) / 3;
    if (!(next < y)) return y;
    y = next;
  }
}

function hangingHook(hanger: HangerSpec): HangingHook | null {
  const { hook, ring, at, name } = hanger;
  const hookMass = hook?.mass ?? 0;
  const ringMass = ring?.mass ?? 0;
  const mass = hookMass + ringMass;
  if (mass === 0) return null;
  const across = RING.across * cubeRoot(ringMass / RING.mass);
  const length = TREBLE.length * cubeRoot(hookMass / TREBLE.mass);
  const hookCentre = across + TREBLE_CENTRE * length;
  const centre = (hookMass * hookCentre + (ringMass * across) / 2) / mass;
  // The treble as a rod, ml²/12, the ring as a hoop, m(d/2)², both about their common centre (Steiner).
  const inertia =
    hookMass * ((length * length) / 12 + (hookCentre - centre) ** 2) +
    ringMass * ((across / 2) ** 2 + (across / 2 - centre) ** 2);
  return {
    name,
    at,
    mass,
    displaced: (hook === null ? 0 : hook.mass / hook.density) + (ring === null ? 0 : ring.mass / ring.density),
    length: across + length,
    centre,
    inertia,
    dragArea: hook === null ? 0 : hookDragArea(hook.mass),
  };
}

/** The hooks that swing at their hangers, in the order of the hangers; a bare hanger has none. */
export function hangingHooks(bait: Bait): HangingHook[] {
  return bait.spec.hangers.map(hangingHook).filter((hook) => hook !== null);
}
