/** Where the page stood, over a reload of the same tab. It belongs to the tab, so the tab's own storage has it. */
const KEY = "trimwright/scroll";
/** How long the page may take to be as long again as it was, ms. */
const PATIENCE_MS = 3000;

/** What ends the coming back: from then on the hand decides. */
const HANDS = ["wheel", "touchstart", "pointerdown", "keydown"] as const;

/** Notes how far the panes are scrolled. `of`: what they show. */
export function leaveScroll(of: string, panes: readonly Element[]): void {
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ of, tops: panes.map((one) => one.scrollTop) }));
  } catch {
    // Forbidden or full: the page then opens at its top.
  }
}

/** Scrolls the panes to where they stood, as soon as they are long enough. Returns what ends it. */
export function comeBack(of: string, panes: readonly Element[]): () => void {
  const tops = topsOf(of);
  const until = performance.now() + PATIENCE_MS;
  let handle = 0;
  const step = (): void => {
    panes.forEach((one, i) => (one.scrollTop = tops[i] ?? 0));
    const there = panes.every((one, i) => Math.abs(one.scrollTop - (tops[i] ?? 0)) < 2);
    if (there || performance.now() > until) end();
    else handle = requestAnimationFrame(step);
  };
  const end = (): void => {
    cancelAnimationFrame(handle);
    for (const hand of HANDS) window.removeEventListener(hand, end);
  };
  if (tops.every((one) => one === 0)) return end;
  for (const hand of HANDS) window.addEventListener(hand, end, { passive: true });
  step();
  return end;
}

function topsOf(of: string): readonly number[] {
  try {
    const left = JSON.parse(sessionStorage.getItem(KEY) ?? "null") as Record<string, unknown> | null;
    const { tops } = left ?? {};
    if (left?.["of"] !== of || !Array.isArray(tops)) return [];
    return tops.map((one) => (typeof one === "number" && Number.isFinite(one) ? one : 0));
  } catch {
    return [];
  }
}
