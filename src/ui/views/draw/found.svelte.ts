import { toSI } from "../../../units";
import { atRest, keptWith } from "../../state";
import type { App } from "../../state";
import { lookAt, remarksOf } from "./remarks";
import type { Looked, Remark } from "./remarks";
import { boardOf } from "./state.svelte";

/** What is odd about the drawing. It is looked for when the hand rests: a drag never waits for it. */
class Found {
  looked = $state.raw<Looked | null>(null);
}

const foundOf = keptWith(() => new Found());

/** Looks anew whenever the bait has changed, for the life of the component that calls it. */
export function lookFollowing(the: App): void {
  const { work } = the;
  const found = foundOf(the);
  $effect(() => {
    const { now, moving } = work;
    return atRest(() => {
      if (found.looked?.now !== now) found.looked = lookAt(now);
    }, moving !== null);
  });
}

/** What was found last, in words, with its place in the document. */
export function remarksNow(the: App): readonly Remark[] {
  const { looked } = foundOf(the);
  const least = toSI(boardOf(the).leastWall_mm, "mm");
  return looked === null ? [] : remarksOf(looked, least, the.units, the.prefs.language);
}
