import type { Bait, HangerSpec } from "../bait";
import { hookDragArea } from "../forces";
import { HOOK_CENTRE } from "../hydrostatics";
import { hookLength } from "../parts";
import type { HangingHook } from "./types";

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
    centre: HOOK_CENTRE * length,
    // as a rod of that length: it sets how fast a hook swings, not what it weighs
    inertia: (mass * length * length) / 12,
    dragArea: hook === null ? 0 : hookDragArea(hook.mass),
  };
}

/** The hooks that swing at their hangers, in the order of the hangers; a bare hanger has none. */
export function hangingHooks(bait: Bait): HangingHook[] {
  return bait.spec.hangers.map(hangingHook).filter((hook) => hook !== null);
}
