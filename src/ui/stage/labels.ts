import { Container, Text } from "pixi.js";
import { cssOf, type Palette, type Rgb } from "./palette";

export interface LabelStyle {
  /** px */
  readonly size: number;
  readonly colour: Rgb;
  readonly bold?: boolean;
  /** 0 left or top, 0.5 middle, 1 right or bottom. */
  readonly anchorX: number;
  readonly anchorY: number;
  /** A rim of this colour keeps the words readable over lines. */
  readonly halo?: Rgb;
}

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

  put(words: string, x: number, y: number, style: LabelStyle): void {
    const halo = style.halo ? cssOf(style.halo) : "";
    let key = `${words}|${style.size}|${cssOf(style.colour)}|${style.bold ? 1 : 0}|${halo}`;
    while (this.#shown.has(key)) key += "'";
    let text = this.#before.get(key);
    if (text) this.#before.delete(key);
    else {
      text = this.#spare.pop() ?? this.container.addChild(new Text());
      text.text = words;
      text.resolution = this.#resolution;
      text.style = {
        fontFamily: this.#palette.font,
        fontSize: style.size,
        fontWeight: style.bold ? "600" : "400",
        fill: cssOf(style.colour),
        ...(style.halo ? { stroke: { color: halo, width: 3, join: "round" as const } } : {}),
      };
    }
    text.visible = true;
    text.anchor.set(style.anchorX, style.anchorY);
    // Whole device pixels keep small text crisp.
    const r = this.#resolution;
    text.position.set(Math.round(x * r) / r, Math.round(y * r) / r);
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
