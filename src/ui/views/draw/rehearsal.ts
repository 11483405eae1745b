import { flushSync, mount, unmount } from "svelte";
import { BesideState, quietly, Workspace } from "../../state";
import type { App } from "../../state";
import Rehearsed from "./Rehearsed.svelte";
import { boardOf } from "./state.svelte";

/**
 * A browser runs code fast only after some tens of rounds. So that the first moves of a hand are as quick as the later ones,
 * the board goes through some by itself while the page rests: on a copy of the bait, in a board that is not on the page.
 * Nothing of it is seen, kept or undone.
 */
const MOVES = 36;
/** After each of these a closer look. */
const LOOKS = 3;

let done = false;

/** Once for each load of the page. Gives the function that ends it. */
export function rehearse(the: App): () => void {
  if (done) return () => undefined;
  let ended = false;
  let end = (): void => undefined;
  const stop = (): void => {
    ended = true;
    end();
    end = () => undefined;
  };
  const copy = Object.create(the) as App;
  const moves = function* (): Generator<undefined> {
    const own = { work: new Workspace(the.work.scenario), beside: new BesideState() };
    for (const [key, value] of Object.entries(own)) Object.defineProperty(copy, key, { value });
    yield;
    const board = boardOf(copy);
    const made = mount(Rehearsed, { target: document.createElement("div"), props: { the: copy } });
    end = () => void unmount(made);
    flushSync();
    yield;
    const middle = Math.floor(board.points.length / 2);
    board.choose(board.curve, middle, false);
    for (let k = 1; k <= MOVES; k++) {
      // Up and down so far that a bait that is nearly neutral floats for half of the moves: that takes the longest to work out.
      board.dragPoints([0.8 * Math.sin(k / 5), 0.8 * Math.sin(k / 5)]);
      flushSync();
      yield;
      if (k % LOOKS !== 0) continue;
      board.view = { scale: 6000 + 60 * k, at: { x: -0.03, y: 0, z: 0 } };
      flushSync();
      yield;
    }
    done = true;
  };
  const steps = moves();
  const step = (): void => {
    if (ended) return;
    // A hand is at work: it goes first.
    if (the.work.moving !== null) return void setTimeout(() => quietly(step), 500);
    if (steps.next().done === true) stop();
    else quietly(step);
  };
  quietly(step);
  return stop;
}
