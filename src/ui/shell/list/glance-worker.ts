import { tryCompile } from "../../../document";
import { thumbnailOf } from "../../../drawing";
import { MID } from "../../../model/bait";
import type { GlanceAsked, GlanceTold } from "./glance";

/** What is used of a worker's own scope. */
interface Scope {
  postMessage(told: GlanceTold): void;
  addEventListener(type: "message", then: (event: MessageEvent<GlanceAsked>) => void): void;
}
const scope = self as unknown as Scope;

scope.addEventListener("message", ({ data }) => scope.postMessage(glanceOf(data)));

/** A bait's small picture and its net buoyancy, kg: null where this release cannot build it. */
function glanceOf({ id, of, scenario, palette }: GlanceAsked): GlanceTold {
  try {
    const tried = tryCompile(scenario);
    if (!tried.ok) return { id, of, net: null, picture: null };
    const { bait, around } = tried.compiled;
    // Where loose balls lie changes neither mass nor volume.
    const { mass, displaced } = bait.rigid(MID);
    const svg = thumbnailOf(bait, palette);
    // An address of its own, which the page's policy allows for pictures.
    const picture = `data:image/svg+xml,${encodeURIComponent(svg)}`;
    return { id, of, net: around.density * displaced - mass, picture };
  } catch {
    return { id, of, net: null, picture: null };
  }
}
