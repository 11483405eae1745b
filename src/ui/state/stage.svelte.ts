import type { ArrowScale } from "../../drawing";
import type { StageOptions } from "../stage";

/** What can be switched on and off in the drawing. */
export type StageSwitch = Exclude<keyof StageOptions, "arrows">;

/** What the drawing shows. */
export class StageState {
  options = $state.raw<StageOptions>({
    forces: false,
    arrows: "linear",
    sum: false,
    labels: true,
    xray: true,
    follow: true,
  });

  toggle(key: StageSwitch): void {
    this.options = { ...this.options, [key]: !this.options[key] };
  }

  measure(arrows: ArrowScale): void {
    this.options = { ...this.options, arrows };
  }
}
