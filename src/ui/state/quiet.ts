/** How long one turn may take before the page is drawn again, ms. */
const TURN_MS = 5;

const waiting: (() => void)[] = [];
let asked = false;

/** Does work one piece after another while nothing else is to be done: so a long list still scrolls. */
export function quietly(work: () => void): void {
  waiting.push(work);
  ask();
}

function ask(): void {
  if (asked) return;
  asked = true;
  // Missing in some browsers.
  const { requestIdleCallback: idle } = window as {
    readonly requestIdleCallback?: typeof requestIdleCallback;
  };
  if (idle === undefined) setTimeout(() => turn(), 16);
  else idle(turn, { timeout: 500 });
}

function turn(deadline?: IdleDeadline): void {
  asked = false;
  // A browser that knows when the next picture is due says how long there is. At least one piece is done.
  const room = deadline === undefined || deadline.didTimeout ? TURN_MS : deadline.timeRemaining();
  const until = performance.now() + Math.min(TURN_MS, room);
  do waiting.shift()?.();
  while (waiting.length > 0 && performance.now() < until);
  if (waiting.length > 0) ask();
}

/** Lets the page draw and hear a hand between pieces of long work. */
export const breath = (): Promise<void> => new Promise((then) => setTimeout(then));
