/**
 * Keys go on where they were: a control that its own press takes away, or switches off, leaves the focus to what stands in its
 * place, else to what stands before it. Without this it would fall to the page, and a reader would lose its place. A press by
 * hand moves no focus: on a phone it would open the keyboard.
 */
export function keepsFocus(host: HTMLElement): { destroy: () => void } {
  let last: HTMLElement | null = null;
  let way: readonly Step[] = [];
  let byKey = false;
  let waiting = 0;

  const remember = ({ target }: FocusEvent): void => {
    last = target instanceof HTMLElement && host.contains(target) ? target : null;
    way = last === null ? [] : wayOut(last, host);
  };
  const look = (): void => {
    waiting = 0;
    const { activeElement: at } = document;
    if (!byKey || last === null || (last.isConnected && !isOff(last))) return;
    if (at === null || at === document.body || at === last) nearest(way)?.focus();
  };
  const changed = new MutationObserver(() => {
    if (waiting === 0) waiting = requestAnimationFrame(look);
  });
  changed.observe(host, { childList: true, subtree: true, attributeFilter: ["disabled"] });
  const key = (): void => {
    byKey = true;
  };
  const hand = (): void => {
    byKey = false;
  };
  document.addEventListener("focusin", remember);
  document.addEventListener("keydown", key, true);
  document.addEventListener("pointerdown", hand, true);
  return {
    destroy: () => {
      cancelAnimationFrame(waiting);
      changed.disconnect();
      document.removeEventListener("focusin", remember);
      document.removeEventListener("keydown", key, true);
      document.removeEventListener("pointerdown", hand, true);
    },
  };
}

/** An element around the one with the focus, and what stood before that one in it, the nearest first. */
interface Step {
  readonly around: Element;
  readonly before: readonly Element[];
}

/** From an element out to `host`, the nearest step first. */
function wayOut(from: Element, host: Element): readonly Step[] {
  const steps: Step[] = [];
  for (let at = from; at !== host && at.parentElement !== null; at = at.parentElement) {
    const before: Element[] = [];
    for (let one = at.previousElementSibling; one !== null; one = one.previousElementSibling)
      before.push(one);
    steps.push({ around: at.parentElement, before });
  }
  return steps;
}

const STOPS = "a[href], button, input, select, textarea, summary";

const isOff = (one: Element): boolean => one.matches(":disabled");

const stopsIn = (around: Element): readonly HTMLElement[] =>
  [...around.querySelectorAll<HTMLElement>(STOPS)].filter(
    (one) => one.tabIndex >= 0 && !isOff(one) && one.checkVisibility(),
  );

/** The first stop behind what stood before, in the nearest element that is still there and has one. */
function nearest(way: readonly Step[]): HTMLElement | null {
  for (const { around, before } of way) {
    const stops = around.isConnected ? stopsIn(around) : [];
    if (stops.length === 0) continue;
    const mark = before.find((one) => one.parentElement === around);
    const behind = (one: Element): boolean =>
      mark === undefined ||
      (!mark.contains(one) && (mark.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0);
    return stops.find(behind) ?? stops.at(-1) ?? null;
  }
  return null;
}
