import type { Page } from "@playwright/test";

/** How a slider of the column of inputs does: times from a move of it to the painted change of a number, ms. */
export interface SliderTimes {
  readonly slider: string;
  readonly times: readonly number[];
}

/**
 * Unfolds the column of inputs, moves the slider of that name, else the first slider of the column (else of the view) that
 * changes a number, and waits each time until the changed number is painted: the frame after the change has been drawn when
 * the task that follows it begins. A move comes at any moment of a frame.
 *
 * The script stands as text: what runs this file adds helpers to named functions, which a page does not have.
 */
const MOVE_SLIDERS = `(async (moves, named) => {
  const numbers = () => [...document.querySelectorAll("button[aria-label$='Why?'], main output")]
    .map((one) => one.textContent).join("|");
  const painted = () => new Promise((then) => requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => then(performance.now());
    channel.port2.postMessage(0);
  }));
  const rest = (ms) => new Promise((then) => setTimeout(then, ms));
  const move = (slider, by) => {
    const step = Number(slider.step) || 1;
    const was = slider.valueAsNumber;
    slider.value = String(was + by * step);
    if (slider.valueAsNumber === was) slider.value = String(was - by * step);
    slider.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const changes = async (slider, by, patience) => {
    const before = numbers();
    const since = performance.now();
    move(slider, by);
    for (;;) {
      const at = await painted();
      if (numbers() !== before) return at - since;
      if (at - since > patience) return null;
    }
  };
  for (const fold of document.querySelectorAll("aside details")) fold.open = true;
  for (const fold of document.querySelectorAll("aside button[aria-expanded=false]")) fold.click();
  await rest(500);
  const of = (part) => [...document.querySelectorAll(part + " input[type=range]")];
  for (const slider of [...of("aside"), ...of("main")]) {
    if (slider.getClientRects().length === 0) continue;
    if (named !== null && slider.getAttribute("aria-label") !== named) continue;
    if ((await changes(slider, 1, 400)) === null) continue;
    const times = [];
    for (let i = 0; i < moves; i++) {
      await rest(30 + ((i * 37) % 50));
      const took = await changes(slider, i % 20 < 10 ? 1 : -1, 2000);
      if (took !== null) times.push(took);
    }
    slider.dispatchEvent(new Event("change", { bubbles: true }));
    return { slider: slider.getAttribute("aria-label") ?? "", times };
  }
  return null;
})`;

export const moveSlider = (
  page: Page,
  moves: number,
  named: string | null = null,
): Promise<SliderTimes | null> =>
  page.evaluate<SliderTimes | null>(`${MOVE_SLIDERS}(${String(moves)}, ${JSON.stringify(named)})`);
