/** A control of the page that the guide points at. */
export interface Pointed {
  readonly element: HTMLElement;
  /** It does the step itself; else it is on the way there. */
  readonly own: boolean;
  /** Its words on the page. */
  readonly name: string;
}

const wordsOf = (element: HTMLElement): string =>
  (element.getAttribute("aria-label") ?? element.textContent).replaceAll(/\s+/g, " ").trim();

/** The topmost window over the page; null: there is none. */
const windowNow = (): HTMLElement | null =>
  [...document.querySelectorAll<HTMLDialogElement>("dialog:modal")].at(-1) ?? null;

/** The first of the selectors that stands on the page now; in a window that is open, only what lies in it can be pressed. */
export function pointAt(selectors: readonly string[]): Pointed | null {
  const over = windowNow();
  const shown = (selector: string): HTMLElement | undefined =>
    [...(over ?? document).querySelectorAll<HTMLElement>(selector)].find((one) => one.checkVisibility());
  for (const [i, selector] of selectors.entries()) {
    const element = shown(selector);
    if (element !== undefined) return { element, own: i === 0, name: wordsOf(element) };
  }
  const close = over?.querySelector<HTMLElement>("button[data-close]");
  return close === null || close === undefined ? null : { element: close, own: false, name: wordsOf(close) };
}

/** Whether all of it lies within the page's window, and on a narrow page above the card at its foot. */
export function inSight(element: HTMLElement, foot: number): boolean {
  const { top, bottom } = element.getBoundingClientRect();
  return top >= 0 && bottom <= innerHeight - foot;
}
