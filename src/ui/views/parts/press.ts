/**
 * A field is left by the press on what comes next. What it then takes may move that next thing, or wake it, between the
 * press and the release, and the press would be lost. So a field that is left by a press waits for the press's end.
 */
let down = false;
/** Where a finger or a mouse last pressed. */
let pressed = { clientX: 0, clientY: 0 };

const ENDS = ["mouseup", "dragend"] as const;

if ("addEventListener" in globalThis) {
  addEventListener(
    "mousedown",
    (event) => {
      down = true;
      pressed = event;
    },
    true,
  );
  for (const end of ENDS) addEventListener(end, () => (down = false), true);
}

/** Does it at once; while a press is under way, at its end, before what is pressed hears of the click. */
export function afterPress(then: () => void): void {
  if (!down) {
    then();
    return;
  }
  let done = false;
  const now = (): void => {
    if (done) return;
    done = true;
    removeEventListener("click", now, true);
    for (const end of ENDS) removeEventListener(end, soon, true);
    then();
  };
  // A press that ends elsewhere than it began is no click.
  const soon = (): void => void setTimeout(now);
  addEventListener("click", now, true);
  for (const end of ENDS) addEventListener(end, soon, true);
}

/**
 * A field is left by a press or by a key, and not because it, or the page, goes. What has come back into it with the page is
 * no change of the field's: only leaving it tells that it is meant.
 */
export const leftByHand = (event: FocusEvent): boolean => down || event.relatedTarget !== null;

/** A second press so soon is none, ms; common practice, no source. */
export const BOUNCE_MS = 300;
/** Two presses so near each other are at one place, px; common practice, no source. */
const NEAR = 12;

/**
 * The press that is under way puts something else under the finger. A wet finger presses twice: a press at the same place that
 * begins before anybody can have seen what lies there now was not meant for it.
 */
export function onePress(): void {
  const { clientX: x, clientY: y } = pressed;
  let seen = false;
  let begun = false;
  const second = (event: MouseEvent): void => {
    const begins = event.type === "mousedown";
    if (seen && begins) end();
    // A click by a key has no count.
    if ((seen && begins) || event.detail === 0 || Math.hypot(event.clientX - x, event.clientY - y) > NEAR)
      return;
    // Pressed down it would mark the words there.
    event.preventDefault();
    event.stopPropagation();
    begun = begins;
    if (seen) end();
  };
  const end = (): void => {
    for (const kind of ["mousedown", "click"] as const) removeEventListener(kind, second, true);
  };
  for (const kind of ["mousedown", "click"] as const) addEventListener(kind, second, true);
  // A slow machine shows it late.
  requestAnimationFrame(() =>
    setTimeout(() => {
      seen = true;
      // A press that began before ends as it began.
      if (!begun) end();
    }, BOUNCE_MS),
  );
}

/** Leads to the first field of a form whose number was not taken; true: there is one, and nothing is to be sent. */
export function leadsToRefused(form: Element): boolean {
  const refused = form.querySelector<HTMLElement>('[aria-invalid="true"]');
  refused?.focus();
  return refused !== null;
}
