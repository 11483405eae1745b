import type { Bait, HangerSpec } from "../bait";
import { hookDragArea, hookLength } from "../forces";
import type { HangingHook } from "./types";

/** Centre of mass below the eye as a share of the length: bends and points are heavier than shank and ring. From memory. */
const CENTRE = 0.6;

function hangingHook({ name, at, hook, ring }: HangerSpec): HangingHook | null {
  const mass = (hook?.mass ?? 0) + (ring?.mass ?? 0);
  if (mass === 0) return null;
  const length = hookLength(mass);
  return {
    name,
    at,
    mass,
    displaced:
      (hook === null ? 0 : hook.mass / hook.density) + (ring === null ? 0 : ring.mass / ring.density),
    length,
    centre: CENTRE * length,
    // as a rod of that length: it sets how fast a hook swings, not what it weighs
    inertia: (mass * length * length) / 12,
    dragArea: hook === null ? 0 : hookDragArea(hook.mass),
  };
}

/** The hooks that swing at their hangers, in the order of the hangers; a bare hanger has none. */
export function hangingHooks(bait: Bait): HangingHook[] {
  return bait.spec.hangers.map(hangingHook).filter((hook) => hook !== null);
}
