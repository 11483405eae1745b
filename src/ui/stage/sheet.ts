import type { Vec } from "../../model/base";
import type { Rulers, Size, View } from "./camera";
import type { Labels } from "./labels";
import type { Palette } from "./palette";

/** A place on the screen, px, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What every part of one picture is drawn by. */
export interface Sheet {
  readonly size: Size;
  readonly rulers: Rulers;
  readonly view: View;
  readonly palette: Palette;
  readonly labels: Labels;
  /** World to screen. */
  readonly at: (p: Vec) => Point;
}
