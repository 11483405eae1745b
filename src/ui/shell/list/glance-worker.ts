import { tryCompile } from "../../../document";
import { thumbnailFigures, thumbnailOf } from "../../../drawing";
import type { Palette } from "../../../drawing";
import { MID } from "../../../model/bait";
import type { Bait } from "../../../model/bait";
import { bitmapOf } from "./bitmap";
import type { GlanceAsked, GlancesAsked, GlanceTold } from "./glance";

/** What is used of a worker's own scope. */
interface Scope {
  postMessage(told: readonly GlanceTold[]): void;
  addEventListener(type: "message", then: (event: MessageEvent<GlancesAsked>) => void): void;
}
const scope = self as unknown as Scope;

scope.addEventListener("message", ({ data: { baits, palette } }) => {
  void Promise.all(baits.map((one) => glanceOf(one, palette))).then((told) => scope.postMessage(told));
});

/** The small picture as an address, which the page's policy allows for pictures. */
const pictureOf = (bait: Bait, palette: Palette): Promise<string> | string =>
  typeof OffscreenCanvas === "undefined"
    ? `data:image/svg+xml,${encodeURIComponent(thumbnailOf(bait, palette))}`
    : bitmapOf(thumbnailFigures(bait, palette));

/** A bait's small picture and its net buoyancy, kg: null where this release cannot build it. */
async function glanceOf({ id, of, scenario }: GlanceAsked, palette: Palette): Promise<GlanceTold> {
  try {
    const tried = tryCompile(scenario);
    if (!tried.ok) return { id, of, net: null, picture: null };
    const { bait, around } = tried.compiled;
    // Where loose balls lie changes neither mass nor volume.
    const { mass, displaced } = bait.rigid(MID);
    return { id, of, net: around.density * displaced - mass, picture: await pictureOf(bait, palette) };
  } catch {
    return { id, of, net: null, picture: null };
  }
}
