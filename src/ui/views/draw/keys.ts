import type { Vec } from "../../../model/base";
import type { Look } from "./look";
import { SECTION_KEYS } from "./section";
import type { Board } from "./state.svelte";

/** What one press of + or − does to the size of the drawing. */
const CLOSER = 1.25;
/** How far arrows move the drawing, px. */
const STRIDE = 40;

type Press = Pick<KeyboardEvent, "key" | "shiftKey" | "ctrlKey" | "metaKey" | "altKey">;

/** A hand that holds something while a key is pressed. */
interface Holding {
  /** Takes the drag back. */
  cancel(): void;
  /** The drawing is shown closer or farther now: what is held stays under the hand. */
  looked(): void;
}

/** Keys that would choose or change something else. */
const CHANGES = /^(Page(Up|Down)|Delete|Backspace|Insert|Arrow\w+)$/;

/**
 * The keys of the board. `at`: where + and − look closer, px; null: in the middle. While a hand holds something (`holding`), keys
 * look closer or take the drag back, and no other: another choice would put something else into the hand. True where the key
 * meant something.
 */
export function keyOn(
  board: Board,
  look: Look,
  press: Press,
  at: Vec | null,
  holding: Holding | null = null,
): boolean {
  if (holding === null) return keyOf(board, look, press, at);
  const { key } = press;
  if (key === "Escape") holding.cancel();
  else if (press.ctrlKey || press.metaKey) return key === "a";
  else if (!CHANGES.test(key)) {
    const meant = keyOf(board, look, press, at);
    if (meant) holding.looked();
    return meant;
  }
  return true;
}

function keyOf(board: Board, look: Look, press: Press, at: Vec | null): boolean {
  const { key, shiftKey: shift } = press;
  if (press.ctrlKey || press.metaKey) {
    if (key !== "a" || board.job !== "outline") return false;
    board.all();
    return true;
  }
  const parts = board.job === "parts";
  switch (key) {
    case "PageDown":
    case "PageUp": {
      const on = key === "PageDown" ? 1 : -1;
      if (parts) board.parts.step(on);
      else if (board.job === "section") board.stepSection(on);
      else board.step(on, shift);
      return true;
    }
    case "Delete":
    case "Backspace":
      return parts ? board.parts.remove() : board.remove();
    case "Insert":
      return !parts && board.addBetween();
    case "Escape":
      return board.back();
    case "+":
    case "=":
      look.zoom(CLOSER, at);
      return true;
    case "-":
    case "−":
      look.zoom(1 / CLOSER, at);
      return true;
    case "0":
      look.whole();
      return true;
    default:
      return arrow(board, look, key, shift);
  }
}

/** The nose is to the right: to the left is aft. */
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function arrow(board: Board, look: Look, key: string, shift: boolean): boolean {
  const way = ARROWS[key];
  if (way === undefined) return false;
  const [aft, up] = way;
  const by = shift ? 1 : 0.1;
  if (board.job === "section") {
    const grip = SECTION_KEYS.find((one) => one === board.sectionGrip);
    if (grip === undefined) board.station += 10 * by * aft;
    else board.nudgeSection(grip, (up === 0 ? 0 - aft : up) * by);
  } else if (board.job === "parts" && board.parts.held !== null) board.parts.nudge(aft * by, up * by);
  else if (board.job === "outline" && board.count > 0) board.nudge(aft * by, up * by);
  else return look.pan({ x: 0, z: 0 }, { x: STRIDE * aft, z: STRIDE * up });
  return true;
}
