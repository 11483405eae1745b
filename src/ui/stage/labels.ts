import { Container, Text } from "pixi.js";
import { colourOf, cssOf, type Palette, type TextMark } from "../../drawing";

/**
 * Words on the stage. A label that was shown in the last picture is moved, not made again: making text is what
 * costs. Call `begin`, any number of `put`, `end`.
 */
export class Labels {
  readonly container = new Container();
  #shown = new Map<string, Text>();
  #before = new Map<string, Text>();
  #spare: Text[] = [];
  #palette: Palette;
  #resolution: number;

  constructor(palette: Palette, resolution: number) {
    this.#palette = palette;
    this.#resolution = resolution;
  }

  /** Forgets all made text: after a change of colours or of the screen's resolution. */
  reset(palette: Palette, resolution: number): void {
    this.#palette = palette;
    this.#resolution = resolution;
    for (const child of this.container.removeChildren()) child.destroy();
    this.#shown.clear();
    this.#before.clear();
    this.#spare = [];
  }

  begin(): void {
    [this.#before, this.#shown] = [this.#shown, this.#before];
    this.#shown.clear();
  }

  /** Shows a text at its place, at `scale` px to the drawing's unit. */
  put({ words, at, size, bold, anchor, fill, halo }: TextMark, scale: number): void {
    const colour = cssOf(fill ? colourOf(fill, this.#palette) : this.#palette.ink);
    const rim = halo ? cssOf(colourOf(halo, this.#palette)) : "";
    let key = `${words}|${size}|${colour}|${bold ? 1 : 0}|${rim}`;
    while (this.#shown.has(key)) key += "'";
    let text = this.#before.get(key);
    if (text) this.#before.delete(key);
    else {
      text = this.#spare.pop() ?? this.container.addChild(new Text());
      text.text = words;
      text.resolution = this.#resolution;
      text.style = {
        fontFamily: this.#palette.font,
        fontSize: size,
        fontWeight: bold ? "600" : "400",
        fill: colour,
        ...(halo ? { stroke: { color: rim, width: 3, join: "round" as const } } : {}),
      };
    }
    text.visible = true;
    text.anchor.set(anchor.x, anchor.y);
    // Whole device pixels keep small text crisp.
    const r = this.#resolution;
    text.position.set(Math.round(at.x * scale * r) / r, Math.round(-at.z * scale * r) / r);
    this.#shown.set(key, text);
  }

  end(): void {
    for (const text of this.#before.values()) {
      text.visible = false;
      this.#spare.push(text);
    }
    this.#before.clear();
    while (this.#spare.length > 40) this.#spare.pop()?.destroy();
  }
}
